"""Mutation tests: small faults put into the rules and use cases, and whether a test notices."""
