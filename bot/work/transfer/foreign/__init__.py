"""Read tables in other formats: the meaning of columns, number and day formats, conversion of rows.

Imported by `import_file` and the chat through `tables`.
"""
