"""Tests of help."""
