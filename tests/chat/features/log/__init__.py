"""Tests of the log's commands, undo and the thread of a talk."""
