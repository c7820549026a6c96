"""Migration steps, one per file, in order."""
