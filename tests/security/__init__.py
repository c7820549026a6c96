"""Tests of access rights and of attacks: see the threat table in the security notes."""
