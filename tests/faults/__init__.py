"""What can go wrong, made to go wrong, and what came of it counted: python -m tests.faults.

The program runs in processes of its own at the Bot API server of `tests/api`; people write entries that
can be told apart, the fault happens, and at the end the database and the people's phones are compared.
"""
