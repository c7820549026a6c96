"""The pictures in the README: drawn by the program itself from the demo bar, in light and in dark.

python -m tests.pictures            says which are not what the program draws today
python -m tests.pictures --write    draws them all
"""
