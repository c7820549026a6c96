"""The jurisdictions that a bar can choose."""

from __future__ import annotations

from enum import StrEnum


class Jurisdiction(StrEnum):
    """The jurisdiction that a bar chose; the values are stored in the database."""

    US = "US"
    EU = "EU"
    UK = "UK"
    OTHER = "other"
