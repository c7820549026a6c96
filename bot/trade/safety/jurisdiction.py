"""Whose rules a bar says it follows."""

from __future__ import annotations

from enum import StrEnum


class Jurisdiction(StrEnum):
    """The body of rules a bar chose for itself; the values are stored in the database."""

    US = "US"
    EU = "EU"
    UK = "UK"
    OTHER = "other"
