"""Use cases for designing a formula to order."""
