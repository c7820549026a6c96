"""Tests mirror the tree; see also api, outside, stories and bench."""
