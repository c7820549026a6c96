"""Commands and wording for bars, settings, team, privacy and joining.

May be imported by planning and log.
"""
