"""Commands and wording for fruit: waste, weekly reports, peeled fruit, juice and acid.

May be imported by stock, savings and log.
"""
