"""Peel Ledger: amounts, batches, fruit and money for bars that make their own."""
