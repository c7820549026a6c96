"""The command that designs a formula to order, and its wording."""
