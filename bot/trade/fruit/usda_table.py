"""Citrus portions of the USDA National Nutrient Database, release 28, as published.

Source: USDA National Nutrient Database for Standard Reference, Release 28 (2015), files FOOD_DES and WEIGHT;
public domain, seen. Grams are the edible part only (its documentation, "Weights and Measures");
`refuse_percent` is the share of the fruit as purchased that is refuse, by mass.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal


@dataclass(frozen=True, slots=True)
class Food:
    """One food: `refuse` names the part thrown away, `refuse_percent` its share of the purchased mass."""

    ndb_number: str
    name: str
    refuse: str
    refuse_percent: Decimal


@dataclass(frozen=True, slots=True)
class Portion:
    """One weighed portion: `amount` times `portion` holds `grams` of edible part.

    `samples` is the number weighed and `grams_sd` their standard deviation in
    grams; None where the database does not say.
    """

    ndb_number: str
    amount: Decimal
    portion: str
    grams: Decimal
    samples: int | None
    grams_sd: Decimal | None


# Number | food | refuse | percent refuse
_FOODS = """
09111|Grapefruit, raw, pink and red and white, all areas|Peel, seeds, core, and membrane|50
09128|Grapefruit juice, white, raw||0
09150|Lemons, raw, without peel|45% peel, 2% seeds|47
09152|Lemon juice, raw||0
09156|Lemon peel, raw||0
09159|Limes, raw|Peel and seeds|16
09160|Lime juice, raw||0
09200|Oranges, raw, all commercial varieties|Peel and seeds|27
09201|Oranges, raw, California, valencias|Peel and seeds|25
09202|Oranges, raw, navels|Peel and navel|32
09203|Oranges, raw, Florida|Peel and seeds|26
09206|Orange juice, raw||0
09216|Orange peel, raw||0
09218|Tangerines, (mandarin oranges), raw|Peel and seeds|26
09404|Grapefruit juice, pink, raw||0
"""

# Number | amount | portion | grams | number weighed | standard deviation
_PORTIONS = """
09111|1|cup sections, with juice|230||
09111|0.5|large (approx 4-1/2" dia)|166||
09111|0.5|medium (approx 4" dia)|128||
09111|0.5|small (approx 3-1/2" dia)|100||
09128|1|cup|247||
09128|1|fl oz|30.9||
09128|1|fruit yields|196||
09150|1|cup, sections|212||
09150|1|fruit (2-1/8" dia)|58||
09150|1|fruit (2-3/8" dia)|84||
09150|1|wedge or slice (1/8 of one 2-1/8" dia lemon)|7.0||
09150|1|NLEA serving|58||
09152|1|cup|244||
09152|1|fl oz|30.5||
09152|1|lemon yields|48|70|
09152|1|wedge yields|5.9||
09156|1|tbsp|6.0||
09156|1|tsp|2.0||
09159|1|fruit (2" dia)|67||
09159|1|NLEA serving|67||
09160|1|cup|242|4|13.114
09160|1|fl oz|30.8||
09160|1|lime yields|44|12|11.031
09200|1|cup, sections|180||
09200|1|large (3-1/16" dia)|184||
09200|1|small (2-3/8" dia)|96||
09200|1|fruit (2-5/8" dia)|131||
09201|1|cup sections, without membranes|180||
09201|1|fruit (2-5/8" dia)|121||
09202|1|cup sections, without membranes|165||
09202|1|fruit (2-7/8" dia)|140||
09202|1|NLEA serving|154||
09203|1|cup sections, without membranes|185||
09203|1|fruit (2-5/8" dia)|141||
09203|1|fruit (2-11/16" dia)|151||
09206|1|cup|248||
09206|1|fl oz|31.0||
09206|1|fruit yields|86||
09216|1|tbsp|6.0||
09216|1|tsp|2.0||
09218|1|cup, sections|195||
09218|1|small (2-1/4" dia)|76|4|7.253
09218|1|medium (2-1/2" dia)|88|4|7.74
09218|1|large (2-3/4" dia)|120|4|26.241
09218|1|NLEA serving|109||
09404|1|cup|247||
09404|1|fruit yields|196||
"""


def _rows(table: str) -> list[list[str]]:
    return [line.split("|") for line in table.strip().splitlines()]


FOODS = {number: Food(number, name, refuse, Decimal(share)) for number, name, refuse, share in _rows(_FOODS)}

PORTIONS = tuple(
    Portion(
        number,
        Decimal(amount),
        portion,
        Decimal(grams),
        int(samples) if samples else None,
        Decimal(sd) if sd else None,
    )
    for number, amount, portion, grams, samples, sd in _rows(_PORTIONS)
)
