"""Tables that were not made here: which column means what, how numbers and days are written, rows as ours.

Imported by `import_tables` only.
"""
