"""Commands and wording for reminders.

May be imported by the clock.
"""
