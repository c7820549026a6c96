"""Peel Ledger: amounts, batches, fruit and money for bars that make their own."""

__version__ = "0.1.0"
