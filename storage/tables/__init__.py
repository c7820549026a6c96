"""All tables as typed models.

Tables of one bar start their primary key with the bar's id, and so does every unique key and every reference:
a row cannot point into another bar. The few tables used before the bar is known (bar, person, room, question,
inbox) are the directory; a test lists them by name.
"""

from __future__ import annotations

from storage.tables.base import Base, Correctable, InBar, Numbered, WideId
from storage.tables.counting import (
    Delivery,
    DrinksCount,
    Juicing,
    PeeledFruit,
    PeeledUse,
    Price,
    StockCount,
    StockPar,
    Waste,
)
from storage.tables.keeping import Entry, Imported, Inbox, Question, Reminder, Upload, Wording
from storage.tables.making import (
    Batch,
    BatchEvent,
    BatchLine,
    Bottling,
    Formula,
    FormulaLine,
    FormulaVersion,
    Ingredient,
    OtherName,
    Trial,
    TrialScore,
    TrialVariant,
)
from storage.tables.people import Bar, Counter, Invite, Member, Person, Room
from storage.tables.serving import Event, MenuDrink, MenuLine
from storage.tables.spraying import FormulaSprayer, Sprayer, SprayerRun

__all__ = [
    "Bar",
    "Base",
    "Batch",
    "BatchEvent",
    "BatchLine",
    "Bottling",
    "Correctable",
    "Counter",
    "Delivery",
    "DrinksCount",
    "Entry",
    "Event",
    "Formula",
    "FormulaLine",
    "FormulaSprayer",
    "FormulaVersion",
    "Imported",
    "InBar",
    "Inbox",
    "Ingredient",
    "Invite",
    "Juicing",
    "Member",
    "MenuDrink",
    "MenuLine",
    "Numbered",
    "OtherName",
    "PeeledFruit",
    "PeeledUse",
    "Person",
    "Price",
    "Question",
    "Reminder",
    "Room",
    "Sprayer",
    "SprayerRun",
    "StockCount",
    "StockPar",
    "Trial",
    "TrialScore",
    "TrialVariant",
    "Upload",
    "Waste",
    "WideId",
    "Wording",
]
