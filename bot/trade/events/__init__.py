"""Rules for events: amounts with a margin, days and bottles. They import only numbers."""
