"""Commands and wording for printed labels.

May be imported by people, for the label stock setting.
"""
