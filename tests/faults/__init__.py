"""Fault injection: cause each fault and count the results: python -m tests.faults.

The program runs in its own processes at the Bot API server of `tests/api`; people write distinguishable
entries, the fault happens, and at the end the database and the people's phones are compared.
"""
