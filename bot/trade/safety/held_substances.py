"""Substances that food law limits in drinks or bans, by the ingredients that hold them.

One table for the cautions, the question of food grade and the dose. A name tells only what may be in it:
nobody can compute from it how much, so no amount is compared with these limits.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from bot.trade.formulas.ingredient_names.reading import read_name
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.sources import PRACTICE, HowKnown, Source
from bot.trade.words import N_


@dataclass(frozen=True, slots=True)
class Rule:
    """What the law says about a substance, in the jurisdictions named."""

    text: str
    jurisdictions: frozenset[Jurisdiction]
    source: Source


@dataclass(frozen=True, slots=True)
class HeldSubstance:
    """A substance, the words of ingredients that hold it, and the caution.

    `spared` are words of ingredients from which it was removed; `stops` are names that stop a formula until
    somebody has seen the papers.
    """

    id: str
    name: str
    words: re.Pattern[str]
    text: str
    rules: tuple[Rule, ...] = ()
    source: Source = PRACTICE
    spared: re.Pattern[str] | None = None
    stops: re.Pattern[str] | None = None

    def is_in(self, ingredient: str) -> bool:
        """Whether an ingredient's name is that of something that holds the substance."""
        plain = read_name(ingredient)
        if self.spared is not None and self.spared.search(plain):
            return False
        return bool(self.words.search(plain))

    def stops_at(self, ingredient: str) -> bool:
        """Whether a formula stops at an ingredient until somebody has seen its papers."""
        return (
            self.stops is not None
            and self.is_in(ingredient)
            and bool(self.stops.search(read_name(ingredient)))
        )

    def rules_in(self, jurisdiction: Jurisdiction) -> list[Rule]:
        """Return the rules on file for a jurisdiction."""
        return [rule for rule in self.rules if jurisdiction in rule.jurisdictions]


_SEEN = date(2026, 11, 30)
_EUROPE = frozenset({Jurisdiction.EU, Jurisdiction.UK})
_US = frozenset({Jurisdiction.US})
_ANNEX_III = Source(
    N_(
        "Regulation (EC) No 1334/2008, Annex III, Part B: the figures were read in the trade press on the "
        "proposal, the annex in force and the British text are from memory"
    ),
    HowKnown.READ_SECOND_HAND,
    _SEEN,
)
_ANNEX_III_MEMORY = Source(N_("Regulation (EC) No 1334/2008, Annex III"), HowKnown.MEMORY)


def _in_europe(text: str, source: Source = _ANNEX_III) -> Rule:
    return Rule(text, _EUROPE, source)


def _in_us(text: str, title: str) -> Rule:
    return Rule(text, _US, Source(title, HowKnown.READ, _SEEN))


def _words(*alternatives: str) -> re.Pattern[str]:
    return re.compile(r"\b(?:" + "|".join(alternatives) + r")\b")


HELD_SUBSTANCES: tuple[HeldSubstance, ...] = (
    HeldSubstance(
        "hydrogen-cyanide",
        N_("hydrogen cyanide (prussic acid)"),
        _words(
            "bitter almonds?", "(?=.*bitter)almonds?", "noyaux?",
            "(?:apricot|peach|cherry|plum|stone) ?(?:fruit )?(?:kernels?|pits?|stones?)",
        ),
        N_(
            "Bitter almond and the kernels of stone fruit give hydrogen cyanide (prussic acid), a poison: "
            "stop, unless the supplier's papers say free from prussic acid (FFPA)."
        ),
        (
            _in_europe(N_("Hydrogen cyanide in alcoholic drinks: 35 mg/kg")),
            _in_us(
                N_("Bitter almond oil is on the list of flavouring oils only free from prussic acid"),
                "21 CFR 182.20",
            ),
        ),
        Source("21 CFR 182.20", HowKnown.READ, _SEEN),
        spared=_words(
            "ffpa",
            "(?:free (?:from|of)|without|sin|libre de) (?:prussic|acid prusico)",
            "prussic acid[- ]free",
        ),
        stops=_words("oils?", "essence"),
    ),
    HeldSubstance(
        "coumarin",
        N_("coumarin"),
        _words("tonka", "coumarin", "woodruff"),
        N_(
            "Tonka and woodruff hold coumarin, and nobody can see how much comes out: ask a licensed adviser "
            "before you serve it."
        ),
        (
            _in_us(
                N_("Food with coumarin added, also as tonka beans or their extract, counts as adulterated"),
                "21 CFR 189.130",
            ),
            _in_europe(
                N_("Coumarin may not be added as such; no maximum for drinks is on file"), _ANNEX_III_MEMORY
            ),
        ),
        Source("21 CFR 189.130", HowKnown.READ, _SEEN),
    ),
    HeldSubstance(
        "thujone",
        N_("thujone"),
        _words(
            "wormwood", "absinthium", "mugwort", "southernwood", "artemisia", "genepi", "genepy", "tansy",
            "thuja", "thujone", "(?<!clary )sage",
        ),
        N_(
            "Wormwood, tansy and sage hold thujone, which acts on the nerves, and nobody can see how much "
            "comes out: ask a licensed adviser before you serve it."
        ),
        (
            _in_europe(
                N_("Thujone (alpha and beta) in alcoholic drinks: 10 mg/kg, 35 if made from wormwood")
            ),
            _in_us(
                N_("Wormwood may flavour food only if the finished food is free from thujone"),
                "21 CFR 172.510",
            ),
        ),
        _ANNEX_III,
    ),
    HeldSubstance(
        "quinine",
        N_("quinine"),
        _words("cinchona", "quinine", "quina", "jesuit'?s bark", "peruvian bark"),
        N_(
            "Cinchona bark gives quinine, and too much of it makes people ill: name it on the menu, keep it "
            "from pregnant guests, and ask a licensed adviser before you serve it."
        ),
        (
            _in_us(
                N_("Quinine in carbonated drinks: 83 parts per million, and the label names it"),
                "21 CFR 172.575",
            ),
            Rule(
                N_("The label of a drink names quinine; no maximum is on file"),
                _EUROPE,
                Source(N_("Regulation (EU) No 1169/2011, Annex VII"), HowKnown.MEMORY),
            ),
        ),
        Source("21 CFR 172.575", HowKnown.READ, _SEEN),
    ),
    HeldSubstance(
        "quassin",
        N_("quassin"),
        _words("quassia", "quassin", "picrasma"),
        N_("Quassia holds quassin, which food law limits: ask a licensed adviser before you serve it."),
        (_in_europe(N_("Quassin in alcoholic drinks: 1.5 mg/kg, in others 0.5")),),
        _ANNEX_III,
    ),
    HeldSubstance(
        "safrole",
        N_("safrole"),
        _words("sassafras", "safrole", "ocotea"),
        N_("Sassafras holds safrole, which food law bans or limits: stop, and ask a licensed adviser."),
        (
            _in_europe(N_("Safrole in drinks without alcohol: 1 mg/kg, and it may not be added as such")),
            Rule(
                N_("Food with safrole or oil of sassafras added counts as adulterated"),
                _US,
                Source("21 CFR 189.180", HowKnown.MEMORY),
            ),
        ),
        _ANNEX_III,
    ),
    HeldSubstance(
        "methyleugenol",
        N_("methyleugenol or estragole"),
        _words("methyl ?eugenol", "estragole", "(?:tarragon|basil|bay) (?:leaf )?oils?"),
        N_("Tarragon, basil and bay oil hold methyleugenol or estragole, which food law limits: ask a "
            "licensed adviser."),
        (_in_europe(N_("In drinks without alcohol: methyleugenol 1 mg/kg, estragole 10 mg/kg")),),
        _ANNEX_III,
    ),
    HeldSubstance(
        "pulegone",
        N_("pulegone"),
        _words("pennyroyal", "pulegone", "buchu"),
        N_("Pennyroyal holds pulegone, which harms the liver: stop, and ask a licensed adviser."),
        (_in_europe(N_("Pulegone in alcoholic drinks with mint: 100 mg/kg"), _ANNEX_III_MEMORY),),
    ),
    HeldSubstance(
        "beta-asarone",
        N_("beta-asarone"),
        _words("calamus", "sweet flag", "acorus"),
        N_("Calamus holds beta-asarone, which food law bans or limits: stop, and ask a licensed adviser."),
        (
            _in_europe(N_("Beta-asarone in alcoholic drinks: 1 mg/kg")),
            _in_us(N_("Food with calamus, its oil or its extract counts as adulterated"), "21 CFR 189.110"),
        ),
        Source("21 CFR 189.110", HowKnown.READ, _SEEN),
    ),
    HeldSubstance(
        "teucrin-a",
        N_("teucrin A"),
        _words("germander", "teucrium"),
        N_("Germander holds teucrin A, which harms the liver: stop, and ask a licensed adviser."),
        (_in_europe(N_("Teucrin A in alcoholic drinks: 2 mg/kg")),),
        _ANNEX_III,
    ),
    HeldSubstance(
        "nicotine",
        N_("nicotine"),
        _words("tobacco", "nicotine"),
        N_("Tobacco gives nicotine to spirit at once, and little of it poisons: do not serve it."),
    ),
)  # fmt: skip


def held_in(ingredients: Iterable[str]) -> list[HeldSubstance]:
    """Return the substances that ingredients of these names hold, in the order of the table."""
    names = list(ingredients)
    return [one for one in HELD_SUBSTANCES if any(map(one.is_in, names))]
