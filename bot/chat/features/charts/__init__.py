"""Charts of the bar with its own words, money and colours.

May be imported by the features that send pictures.
"""
