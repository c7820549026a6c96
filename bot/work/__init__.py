"""Use cases: one function for each action of a person.

Subjects import downward only, from the bottom: reminders, people, formulas, safety, money, fruit, stock,
batches, liquids, spray, trials, labels, planning, savings, transfer, log. Imported by chat, channels and the
clock; imports trade, documents and storage.
"""
