"""Calibration of the probability of clearing: simulated bars, and published mixes held out.

python -m tests.calibration            shows the table
python -m tests.calibration --write    renews TABLE.md
"""
