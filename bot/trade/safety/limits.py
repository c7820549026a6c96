"""Published limits for the contents of a sprayed drink, each with source, date and how it is known.

A limit is a rule about the contents of a drink, or a committee's daily amount; neither says how a guest may
feel, and being under one is no clearance.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.sources import HowKnown, Source
from bot.trade.words import N_

_SEEN = date(2026, 11, 25)

# 'Near' a limit begins at this share of it; our own choice, stated in every reply that uses it.
NEAR_SHARE = 0.8


class Part(StrEnum):
    """The parts of a mix whose dose is computed."""

    OIL = "oil"
    GLYCOL = "glycol"
    ETHANOL = "ethanol"


class LimitKind(StrEnum):
    """The scope of a limit: the composition of a drink, or the daily intake of one person."""

    COMPOSITION = "composition of a drink"
    INTAKE = "daily intake"


class LimitUnit(StrEnum):
    """The unit of a limit."""

    MG_PER_LITRE = "mg/L"
    MG_PER_KG = "mg/kg"
    MG_PER_KG_BODY_WEIGHT = "mg per kg of body weight a day"


@dataclass(frozen=True, slots=True)
class Limit:
    """One published limit: `value` in `unit`, for one part of the mix, in the jurisdictions named.

    `alcoholic` says which drinks it covers: True those with alcohol, False those
    without, None both.
    """

    id: str
    part: Part
    kind: LimitKind
    value: float
    unit: LimitUnit
    jurisdictions: frozenset[Jurisdiction]
    alcoholic: bool | None
    text: str
    note: str
    source: Source


_ALL = frozenset(Jurisdiction)

LIMITS: tuple[Limit, ...] = (
    Limit(
        id="eu-e1520-beverages",
        part=Part.GLYCOL,
        kind=LimitKind.COMPOSITION,
        value=1000.0,
        unit=LimitUnit.MG_PER_LITRE,
        jurisdictions=frozenset({Jurisdiction.EU, Jurisdiction.UK}),
        alcoholic=None,
        text=N_("Propylene glycol (E 1520) in a beverage, from all sources: 1 g/L"),
        note=N_(
            "A limit on what is in the drink, not a toxic dose; glycol from other flavourings in the same "
            "drink counts too, and cream liqueurs are excepted."
        ),
        source=Source(
            N_(
                "Regulation (EC) No 1333/2008, Annex III, Part 4 (before it Directive 95/2/EC): the figure "
                "was read in the trade press of 29 October 2014, the annex is from memory; that the United "
                "Kingdom keeps the same text is from memory too"
            ),
            HowKnown.READ_SECOND_HAND,
            _SEEN,
        ),
    ),
    Limit(
        id="us-184.1666-alcoholic",
        part=Part.GLYCOL,
        kind=LimitKind.COMPOSITION,
        value=50_000.0,
        unit=LimitUnit.MG_PER_KG,
        jurisdictions=frozenset({Jurisdiction.US}),
        alcoholic=True,
        text=N_("Propylene glycol in an alcoholic beverage, as served: 5 %"),
        note=N_("The 5 % is read as by mass, 50 g/kg; the ingredient must meet the Food Chemicals Codex."),
        source=Source("21 CFR 184.1666(d)", HowKnown.READ, _SEEN),
    ),
    Limit(
        id="us-184.1666-other",
        part=Part.GLYCOL,
        kind=LimitKind.COMPOSITION,
        value=20_000.0,
        unit=LimitUnit.MG_PER_KG,
        jurisdictions=frozenset({Jurisdiction.US}),
        alcoholic=False,
        text=N_("Propylene glycol in a drink without alcohol, as served: 2 % (all other food categories)"),
        note=N_("The 2 % is read as by mass, 20 g/kg; the ingredient must meet the Food Chemicals Codex."),
        source=Source(
            N_("21 CFR 184.1666(d), as quoted in the FDA inventory of GRAS notices, GRN 302"),
            HowKnown.READ_SECOND_HAND,
            _SEEN,
        ),
    ),
    Limit(
        id="adi-propylene-glycol",
        part=Part.GLYCOL,
        kind=LimitKind.INTAKE,
        value=25.0,
        unit=LimitUnit.MG_PER_KG_BODY_WEIGHT,
        jurisdictions=_ALL,
        alcoholic=None,
        text=N_("Propylene glycol, acceptable daily intake: 25 mg per kg of body weight"),
        note=N_("From everything a person eats and drinks in a day, over a life; children weigh less."),
        source=Source(
            N_("EFSA Journal 2018;16(4):5235, abstract, keeps the figure; JECFA 0 to 25 (1973), second-hand"),
            HowKnown.READ,
            _SEEN,
        ),
    ),
)

LIMONENE_NOTE = N_(
    "No figure limits the oil itself here: JECFA set no numerical daily intake for d-limonene "
    "(41st meeting, 1993)."
)
LIMONENE_SOURCE = Source(
    N_("JECFA monograph on d-limonene, 41st meeting, 1993, WHO Food Additives Series 32"),
    HowKnown.READ,
    _SEEN,
)

NO_LIMIT_ON_FILE = N_("No composition limit is on file for this bar's rules: ask the food authority.")


def limits_for(jurisdiction: Jurisdiction, *, alcoholic: bool = True) -> list[Limit]:
    """Return the limits that apply to a drink served under these rules, composition limits first.

    `alcoholic` says whether the drink itself contains alcohol, apart from the spray. For a bar that follows
    other rules only the daily intake is given; see `has_composition_limit`.
    """
    chosen = [
        limit
        for limit in LIMITS
        if jurisdiction in limit.jurisdictions and limit.alcoholic in {None, alcoholic}
    ]
    return sorted(chosen, key=lambda limit: limit.kind is not LimitKind.COMPOSITION)


def has_composition_limit(jurisdiction: Jurisdiction) -> bool:
    """Whether any composition limit is on file for these rules; if not, say NO_LIMIT_ON_FILE."""
    return any(
        limit.kind is LimitKind.COMPOSITION and jurisdiction in limit.jurisdictions for limit in LIMITS
    )


def find_limit(limit_id: str) -> Limit:
    """Return the limit with this id; raises KeyError for an id that is not on file."""
    return {limit.id: limit for limit in LIMITS}[limit_id]
