"""Commands and wording for cautions, food grade and allergens.

May be imported by every feature.
"""
