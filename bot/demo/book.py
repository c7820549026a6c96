"""Data of the demo bar: its people, stock, formulas and prices. All of it is invented.

The data is separate from the story: story.py uses it, night by night. Amounts are strings so that they stay
exact; `nights_ago` counts service nights back from the last one.
"""

from __future__ import annotations

from dataclasses import dataclass

from bot.trade.formulas.kinds import IngredientKind, Preparation

BAR = "The Copper Gull"
ZONE = "Europe/Lisbon"
CURRENCY = "EUR"
CLOSING_MINUTE = 5 * 60
SERVICE_DAYS = 0b1111110  # Tuesday to Sunday
WEEKS = 12
NIGHTS = 6 * WEEKS
SPRAY_SINCE = 30  # in service nights ago: five weeks

OWNER, MANAGER, MEMBER = "owner", "manager", "member"
TEAM = ((MANAGER, "Ines"), (MEMBER, "Caio"))  # in addition to the owner


@dataclass(frozen=True, slots=True)
class Stock:
    """An item that the bar buys; `graded` says whether its food grade was confirmed (None: not asked)."""

    name: str
    kind: IngredientKind
    strength_percent: str | None = None
    graded: bool | None = None
    nights_ago: int = NIGHTS


@dataclass(frozen=True, slots=True)
class Spec:
    """A formula: its lines as (ingredient, amount, unit), and the fruit whose garnish it replaces."""

    name: str
    preparation: Preparation
    lines: tuple[tuple[str, str, str], ...]
    nights_ago: int
    garnish: str | None = None
    rest_hours: int | None = None
    discard_days: int | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class Change:
    """A new version of a formula: lines with other amounts, and ingredients left out."""

    formula: str
    nights_ago: int
    clock: str
    lines: tuple[tuple[str, str, str], ...]
    without: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Paid:
    """The price of a pack from one night on; `garnishes` is the number from one piece of fruit."""

    name: str
    nights_ago: int
    amount: str
    unit: str
    price: str
    garnishes: tuple[str, str] | None = None


_FRUIT, _OTHER = IngredientKind.FRUIT, IngredientKind.OTHER
MIST_WRITTEN = SPRAY_SINCE + 4
ORANGE_WRITTEN = SPRAY_SINCE - 1

STOCK = (
    Stock("orange", _FRUIT),
    Stock("grapefruit", _FRUIT),
    Stock("lemon", _FRUIT),
    Stock("lime", _FRUIT),
    Stock("water", IngredientKind.WATER),
    Stock("caster sugar", IngredientKind.SUGAR),
    Stock("fine salt", _OTHER),
    Stock("citric acid", IngredientKind.ACID, graded=True),
    Stock("malic acid", IngredientKind.ACID, graded=True),
    Stock("orange juice", IngredientKind.JUICE),
    Stock("cardamom pods", _OTHER),
    Stock("neutral spirit", IngredientKind.SPIRIT, "96"),
    Stock("grapefruit oil", IngredientKind.CITRUS_OIL, graded=True, nights_ago=MIST_WRITTEN),
    Stock("sweet orange oil", IngredientKind.CITRUS_OIL, graded=False, nights_ago=MIST_WRITTEN),
    Stock("propylene glycol", IngredientKind.PROPYLENE_GLYCOL, graded=True, nights_ago=MIST_WRITTEN),
    Stock("glycerol", IngredientKind.GLYCEROL, graded=True, nights_ago=MIST_WRITTEN),
)

SYRUP, SALINE, SOUR_ORANGE = "House syrup", "Saline", "Lime-strength orange"
CARDAMOM, GRAPEFRUIT_MIST, ORANGE_MIST = "Cardamom tincture", "Grapefruit mist", "Orange mist"

FORMULAS = (
    Spec(SYRUP, Preparation.SYRUP, (("caster sugar", "1", "kg"), ("water", "1", "l")), NIGHTS),
    Spec(SALINE, Preparation.SALINE, (("fine salt", "20", "g"), ("water", "80", "ml")), NIGHTS),
    Spec(
        SOUR_ORANGE,
        Preparation.ACID_ADJUSTED_JUICE,
        (("orange juice", "1", "l"), ("citric acid", "31", "g"), ("malic acid", "18", "g")),
        NIGHTS,
        note="Stir until the acid is gone, then taste against lime.",
    ),
    Spec(
        CARDAMOM,
        Preparation.TINCTURE,
        (("neutral spirit", "130", "ml"), ("water", "70", "ml"), ("cardamom pods", "24", "g")),
        NIGHTS,
        note="Crack the pods, shake every day, strain through paper.",
    ),
    Spec(
        GRAPEFRUIT_MIST,
        Preparation.AROMA_MIST,
        (("grapefruit oil", "8", "ml"), ("propylene glycol", "12", "ml"), ("neutral spirit", "80", "ml")),
        MIST_WRITTEN,
        garnish="grapefruit",
    ),
    Spec(
        ORANGE_MIST,
        Preparation.AROMA_MIST,
        (
            ("sweet orange oil", "7", "ml"),
            ("glycerol", "3", "ml"),
            ("water", "20", "ml"),
            ("neutral spirit", "70", "ml"),
        ),
        ORANGE_WRITTEN,
        garnish="orange",
        discard_days=120,
    ),
)
# The orange mist with water split, a case where the clearing models disagree too; the grapefruit mist got a
# little more oil. Batches made before keep the first versions.
CHANGES = (
    Change(ORANGE_MIST, ORANGE_WRITTEN - 1, "17:40", (("neutral spirit", "90", "ml"),), ("water",)),
    Change(GRAPEFRUIT_MIST, 18, "15:40", (("grapefruit oil", "9", "ml"),)),
)

# Malic acid has no price: a gap as every bar has, which the cost must name.
PRICES = (
    Paid("orange", 72, "1", "each", "0.42", ("6", "6")),
    Paid("orange", 55, "1", "each", "0.38"),
    Paid("orange", 34, "1", "each", "0.45"),
    Paid("orange", 12, "1", "each", "0.52"),
    Paid("orange", 3, "1", "each", "0.48"),
    Paid("grapefruit", 72, "1", "each", "0.90", ("8", "10")),
    Paid("grapefruit", 44, "1", "each", "1.05"),
    Paid("grapefruit", 20, "1", "each", "0.95"),
    Paid("lemon", 72, "1", "dozen", "3.60", ("7", "8")),
    Paid("lemon", 29, "1", "dozen", "4.10"),
    Paid("lime", 72, "1", "kg", "2.80"),
    Paid("lime", 58, "1", "kg", "3.45"),
    Paid("lime", 38, "1", "kg", "2.95"),
    Paid("lime", 9, "1", "kg", "3.20"),
    Paid("caster sugar", 72, "5", "kg", "6.90"),
    Paid("caster sugar", 21, "1", "kg", "1.45"),
    Paid("fine salt", 72, "1", "kg", "0.85"),
    Paid("citric acid", 72, "1", "kg", "8.40"),
    Paid("orange juice", 72, "1", "l", "2.60"),
    Paid("orange juice", 26, "1", "l", "2.75"),
    Paid("cardamom pods", 72, "250", "g", "15.50"),
    Paid("cardamom pods", 5, "100", "g", "6.90"),
    Paid("neutral spirit", 72, "1", "l", "19.90"),
    Paid("neutral spirit", 19, "5", "l", "91.00"),
    Paid("grapefruit oil", MIST_WRITTEN, "30", "ml", "16.80"),
    Paid("grapefruit oil", 19, "100", "ml", "47.50"),
    Paid("grapefruit oil", 6, "100", "ml", "49.90"),
    Paid("sweet orange oil", ORANGE_WRITTEN, "50", "ml", "9.60"),
    Paid("propylene glycol", MIST_WRITTEN, "1", "l", "13.20"),
    Paid("glycerol", ORANGE_WRITTEN, "50", "cl", "6.10"),
)

# Mean pieces on a night of average trade, before and since the spray: sprayed drinks need no peel, so fewer
# peeled oranges and grapefruits are left over.
WASTE_RATES: tuple[tuple[str, str, float, float], ...] = (
    ("orange", "peeled and not used", 4.2, 1.0),
    ("orange", "dried out", 1.1, 0.5),
    ("orange", "mouldy", 0.5, 0.4),
    ("grapefruit", "peeled and not used", 2.1, 0.4),
    ("grapefruit", "mouldy", 0.4, 0.3),
    ("lemon", "over-prepped", 1.2, 1.1),
    ("lemon", "dried out", 0.7, 0.7),
    ("lime", "over-prepped", 1.8, 1.7),
    ("lime", "dried out", 0.8, 0.8),
)
# Monday to Sunday; nothing is sold on Monday.
TRADE_BY_WEEKDAY = (0.0, 0.6, 0.7, 0.9, 1.4, 1.6, 0.8)
