"""The pictures in the README, drawn by the program from the demo bar, in light and in dark.

python -m tests.pictures            lists the outdated ones
python -m tests.pictures --write    draws all of them
"""
