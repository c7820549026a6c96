"""Commands and wording for stock: counts, deliveries, pars.

May be imported by planning and fruit.
"""
