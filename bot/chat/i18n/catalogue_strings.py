"""Texts that rules and use cases carry as data, collected here for extraction to the catalogues."""

from __future__ import annotations

from typing import Final

from bot.trade.words import N_

KINDS: Final = (
    N_("aroma mist"),
    N_("tincture"),
    N_("infusion"),
    N_("syrup"),
    N_("cordial"),
    N_("juice"),
    N_("acid-adjusted juice"),
    N_("saline"),
    N_("other"),
    N_("citrus oil"),
    N_("spirit"),
    N_("propylene glycol"),
    N_("glycerol"),
    N_("carrier oil"),
    N_("water"),
    N_("sugar"),
    N_("acid"),
    N_("fruit"),
    N_("volume"),
    N_("mass"),
    N_("count"),
)
"""Kinds of preparation and of ingredient, and the measures of ingredients."""

REASONS: Final = (
    N_("mouldy"),
    N_("dried out"),
    N_("peeled and not used"),
    N_("over-prepped"),
    N_("damaged on delivery"),
    N_("other"),
)
"""The default waste reasons of a bar without its own."""

SAID: Final = (N_("yes"),)
"""Words accepted as a value."""

FORGOTTEN: Final = N_("former member")
"""The name shown for a forgotten person."""

DETAILS: Final = (
    N_("rest"),
    N_("discard"),
    N_("sprays"),
    N_("kind"),
    N_("replaces"),
    N_("remove"),
    N_("graded"),
)
"""The text of a formula line that names no ingredient."""

LIMIT_UNITS: Final = (N_("mg/L"), N_("mg/kg"), N_("mg per kg of body weight a day"))
"""The units of limits."""

NAMES: Final = (
    N_("bar"),
    N_("bar name"),
    N_("batch"),
    N_("best-before day"),
    N_("currency"),
    N_("day"),
    N_("day of opening"),
    N_("drink"),
    N_("event"),
    N_("file"),
    N_("first label"),
    N_("formula"),
    N_("ingredient"),
    N_("ingredient name"),
    N_("other name"),
    N_("second ingredient"),
    N_("ingredients"),
    N_("joining code"),
    N_("log entry"),
    N_("measured acidity of"),
    N_("note"),
    N_("member"),
    N_("number of days"),
    N_("number of drinks"),
    N_("number of ingredients"),
    N_("number of labels"),
    N_("number of packs"),
    N_("number of people"),
    N_("number of variants"),
    N_("number of weighings"),
    N_("peeled fruit"),
    N_("reminder"),
    N_("wording"),
    N_("service days"),
    N_("settings"),
    N_("sprayer"),
    N_("sprayer name"),
    N_("formula name"),
    N_("text"),
    N_("time zone"),
    N_("trial"),
    N_("units"),
    N_("variant"),
    N_("version"),
    N_("waste line"),
)
"""The things that use cases name in their errors."""

QUANTITIES: Final = (
    N_("accounted"),
    N_("acidity"),
    N_("amount"),
    N_("amount of money"),
    N_("batch cost"),
    N_("before"),
    N_("body weight"),
    N_("bought"),
    N_("capacity of a tool"),
    N_("citric share"),
    N_("confidence"),
    N_("days to use a bottle"),
    N_("degrees of freedom"),
    N_("probability"),
    N_("shape"),
    N_("density"),
    N_("deviation"),
    N_("discard"),
    N_("draws"),
    N_("drink"),
    N_("drinks"),
    N_("fractile"),
    N_("garnish"),
    N_("glass"),
    N_("high"),
    N_("hours"),
    N_("house measure"),
    N_("mass after"),
    N_("mean"),
    N_("minute of the day"),
    N_("nominal spray"),
    N_("on hand"),
    N_("opened"),
    N_("overage"),
    N_("pack"),
    N_("pieces"),
    N_("price"),
    N_("priming sprays"),
    N_("recheck"),
    N_("rest"),
    N_("results"),
    N_("salvage"),
    N_("scale step"),
    N_("share"),
    N_("spoiled share"),
    N_("spray"),
    N_("spray per drink"),
    N_("sprays"),
    N_("step of a tool"),
    N_("stock"),
    N_("strength"),
    N_("sugar and water"),
    N_("tastings"),
    N_("temperature"),
    N_("total volume"),
    N_("underage"),
    N_("use"),
    N_("wanted"),
    N_("warning"),
    N_("waste"),
    N_("week"),
    N_("weeks"),
    N_("d"),
    N_("days"),
    N_("g/L"),
    N_("g/ml"),
    N_("h"),
    N_("min"),
)
"""Quantities outside the range of a rule, and their units."""
