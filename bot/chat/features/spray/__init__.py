"""Commands and wording for sprayers, dose and drinks served.

Nothing imports it.
"""
