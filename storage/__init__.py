"""Tables, unit of work, migrations and backups."""
