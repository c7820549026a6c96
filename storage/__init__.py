"""Tables, unit of work and migrations."""
