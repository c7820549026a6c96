"""Dialogues as text files: who says what, and the exact replies. Review them as you would copy.

A story is played from top to bottom against a real database:

    # a remark
    @after opening            first play another story (its replies are compared in its own test)
    @clock + 24 h             turn the clock on: min, h, days
    @clock 2026-11-25 23:50 Europe/Lisbon
    @reminders                send what is due
    @restart                  a new process on the same database
    Ana: scale grapefruit mist to 8 x 50 ml
    Ana taps [Log this batch]
    Ana in Team: /week        a group: only commands and answers reach the bot there
    Ana in Team answers: 6 limes
    Ana sends a photo: check 1 hazy

A line that ends in a backslash goes on in the next. What is indented below a step is what the bot
answers, wrapped as on a phone, with its buttons in [brackets]. After --, there is a second message;
(edited) stands where a message with buttons was replaced. ‹code› is the last joining code given out.
`pytest tests/stories --update-stories` writes the answers anew.
"""
