"""Dialogues as text files, with the exact replies. Review them like any other copy.

A story is played from top to bottom against a real database:

    # a remark
    @after opening            first play another story (its replies are compared in its own test)
    @clock + 24 h             advance the clock: min, h, days
    @clock 2026-11-25 23:50 Europe/Lisbon
    @reminders                send due reminders
    @restart                  a new process on the same database
    Ana: scale grapefruit mist to 8 x 50 ml
    Ana taps [Log this batch]
    Ana in Team: /week        a group: only commands and answers reach the bot there
    Ana in Team answers: 6 limes
    Ana sends a photo: check 1 hazy

A line that ends in a backslash continues on the next. The indented text below a step is the bot's answer,
wrapped as on a phone, with its buttons in [brackets]. -- separates messages; (edited) marks a message that
replaces one with buttons. ‹code› is the last joining code. `pytest tests/stories --update-stories` rewrites
the answers.
"""
