"""Rules for trials: blind codes and scores.

Imported by work and chat; imports rules only.
"""
