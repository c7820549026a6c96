"""The handling cautions: plain sentences that defer to local codes and licensed professionals."""

from __future__ import annotations

from datetime import date
from functools import partial

from bot.trade.formulas.kinds import IngredientKind as Kind
from bot.trade.formulas.kinds import Preparation
from bot.trade.formulas.perishables import is_fat_egg_milk_or_garlic
from bot.trade.liquids.flash import COMPUTED_SOURCE, FLAMMABLE_UP_TO_C, PUBLISHED_SOURCE, WARM_ROOM_C
from bot.trade.safety.allergens import EU_SOURCE, UK_SOURCE, US_SOURCE
from bot.trade.safety.caution import Caution, Step
from bot.trade.safety.grade import LIST_SOURCE
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.sources import HowKnown, Source
from bot.trade.words import N_

_SEEN = date(2026, 11, 25)


_read = partial(Source, how_known=HowKnown.READ, seen=_SEEN)
_second_hand = partial(Source, how_known=HowKnown.READ_SECOND_HAND, seen=_SEEN)

_OIL = frozenset({Kind.CITRUS_OIL})
_SPIRIT = frozenset({Kind.SPIRIT})
_SPRAYED = frozenset({Preparation.AROMA_MIST, Preparation.OTHER})
_COLD = frozenset({
    Preparation.SYRUP, Preparation.CORDIAL, Preparation.JUICE, Preparation.ACID_ADJUSTED_JUICE,
    Preparation.OTHER,
})  # fmt: skip
_JUICES = frozenset({Preparation.JUICE, Preparation.ACID_ADJUSTED_JUICE})
_SOLIDS = frozenset({Kind.FRUIT, Kind.OTHER})
_US, _EU, _UK = (frozenset({j}) for j in (Jurisdiction.US, Jurisdiction.EU, Jurisdiction.UK))

_LIMONENE_SHEET = _second_hand(
    N_("hazard statements H315 and H317 notified for d-limonene and lemon oil, a supplier's sheet")
)

FIRE_CAUTIONS: tuple[Caution, ...] = (
    Caution(
        "no-flame",
        N_("Put out every flame and keep sparks away: the vapour lights in a warm room."),
        ((Step.MIXING, 1), (Step.BOTTLING, 1), (Step.STORING, 2)),
        kinds=_SPIRIT,
        up_to_flash_c=WARM_ROOM_C,
        source=COMPUTED_SOURCE,
    ),
    Caution(
        "no-heat",
        N_("Never warm spirit on a flame or a bare hot plate: even a weak one gives vapour that lights."),
        ((Step.MIXING, 3), (Step.RESTING, 3)),
        kinds=_SPIRIT,
        from_percent=10.0,
        source=PUBLISHED_SOURCE,
    ),
    Caution(
        "flame-at-spray",
        N_("No flame, candle, torch or flamed garnish near the spray while it is used."),
        ((Step.SPRAYING, 1),),
        kinds=_SPIRIT | _OIL,
        source=PUBLISHED_SOURCE,
    ),
    Caution(
        "flame-after-spray",
        N_("Never flame a garnish over a drink that was just sprayed, nor serve it beside an open flame."),
        ((Step.SERVING, 1),),
        kinds=_SPIRIT | _OIL,
        preparations=_SPRAYED,
        source=PUBLISHED_SOURCE,
    ),
    Caution(
        "ventilation",
        N_("Work where air moves, away from the stove and out of cupboards: its vapour is heavy."),
        ((Step.MIXING, 4), (Step.BOTTLING, 4), (Step.SPRAYING, 5)),
        kinds=_SPIRIT | _OIL,
        source=_second_hand(N_("lower flammable limit of ethanol 3.1 % vol in air, IEC 60079-20-1 (2010)")),
    ),
    Caution(
        "sealed-storage",
        N_("Keep it tightly closed, labelled, upright, cool and dark, away from heat and open bar bottles."),
        ((Step.RESTING, 1), (Step.STORING, 1)),
        kinds=_SPIRIT | _OIL,
    ),
    Caution(
        "fire-quantity",
        N_("Keep no more than a shift or two needs: your fire code says how much may be held, so ask."),
        ((Step.STORING, 3),),
        kinds=_SPIRIT,
        up_to_flash_c=WARM_ROOM_C,
    ),
    Caution(
        "large-batch",
        N_("This is a large batch for a bar: ask what your fire code lets you mix and hold in one place."),
        ((Step.MIXING, 7),),
        kinds=_SPIRIT,
        up_to_flash_c=WARM_ROOM_C,
        from_ml=1000.0,
    ),
    Caution(
        "fire-quantity-uk",
        N_(
            "Official guidance keeps only what half a day or a shift needs at the work place, the rest in a "
            "fire-resisting cupboard of at most 50 L; ask your fire risk assessor."
        ),
        ((Step.STORING, 4),),
        kinds=_SPIRIT,
        jurisdictions=_UK,
        up_to_flash_c=WARM_ROOM_C,
        source=_second_hand(N_("HSE guidance under the DSEAR regulations of 2002, as quoted")),
    ),
    Caution(
        "transport",
        N_(
            "Before you send any, ask your carrier: the rules read here are for beverages by road, a spray "
            "with oil may not count as one, and air rules start lower."
        ),
        ((Step.LABELLING, 6), (Step.STORING, 8)),
        kinds=_SPIRIT | _OIL,
        up_to_flash_c=FLAMMABLE_UP_TO_C,
        source=_second_hand(N_("ADR, UN 3065, special provisions 144 and 145, as quoted; no air rule read")),
    ),
    Caution(
        "oily-rags",
        N_("Soak rags wet with citrus oil or shut them in a metal bin: in a heap they can light themselves."),
        ((Step.DISCARDING, 1), (Step.MIXING, 6)),
        kinds=_OIL,
        source=_read(N_("an Australian guidance text on the hazards of limonene")),
    ),
    Caution(
        "no-drain",
        N_("Do not pour oil or strong spirit down the drain: ask who takes flammable waste where you are."),
        ((Step.DISCARDING, 2),),
        kinds=_SPIRIT | _OIL,
    ),
)  # fmt: skip

BODY_CAUTIONS: tuple[Caution, ...] = (
    Caution(
        "neat-oil-contact",
        N_("Wear gloves and keep neat citrus oil off skin and out of eyes; rinse at once if it splashes."),
        ((Step.ADDING, 3), (Step.MIXING, 2), (Step.BOTTLING, 3)),
        kinds=_OIL,
        source=_LIMONENE_SHEET,
    ),
    Caution(
        "spray-away-from-faces",
        N_("Spray down into the drink or glass, away from faces, and not beside a guest who has asthma."),
        ((Step.SPRAYING, 2),),
    ),
    Caution(
        "sunlight-on-skin",
        N_(
            "Cold-pressed lime, bergamot, lemon, bitter orange and grapefruit oil on skin can burn it in "
            "sunlight: wash hands before going out."
        ),
        ((Step.SPRAYING, 6), (Step.MIXING, 5)),
        kinds=_OIL,
        source=_second_hand(N_("IFRA limits for bergapten and published skin maxima, as quoted")),
    ),
    Caution(
        "old-oil",
        N_("Note when each oil was opened and keep it cold: aged oil irritates skin and tastes stale."),
        ((Step.ADDING, 5), (Step.STORING, 5)),
        kinds=_OIL,
        source=_read(N_("patch tests with oxidised limonene, 2 to 3 % positive, abstracts (one of 2021)")),
    ),
    Caution(
        "acid-contact",
        N_("Keep acid powder out of eyes and off wet hands, and do not breathe its dust."),
        ((Step.MIXING, 3),),
        kinds=frozenset({Kind.ACID}),
    ),
    Caution(
        "hot-sugar",
        N_("Hot syrup sticks and burns: let it cool before it is poured, and keep hands clear."),
        ((Step.MIXING, 4), (Step.BOTTLING, 5)),
        kinds=frozenset({Kind.SUGAR}),
    ),
    Caution(
        "not-a-drink",
        N_("Never keep it in a bottle that could be taken for a drink, nor where children reach."),
        ((Step.BOTTLING, 2), (Step.STORING, 6)),
        kinds=_SPIRIT | _OIL,
    ),
    Caution(
        "not-clear",
        N_("Do not spray a mix that is cloudy or in layers: the nozzle may give oil alone."),
        ((Step.RESTING, 2), (Step.SPRAYING, 3)),
        kinds=_OIL,
    ),
    Caution(
        "plastic",
        N_("Use glass, steel or a plastic made for oils: citrus oil softens many plastics and seals."),
        ((Step.BOTTLING, 6), (Step.RESTING, 4)),
        kinds=_OIL,
    ),
)  # fmt: skip

GUEST_CAUTIONS: tuple[Caution, ...] = (
    Caution(
        "guest-allergies",
        N_("Ask about allergies before serving, and say what house-made things a drink holds."),
        ((Step.SERVING, 2), (Step.SPRAYING, 4), (Step.ADDING, 6)),
    ),
    Caution(
        "guest-no-alcohol",
        N_("It carries alcohol: leave it out for guests who avoid alcohol, or tell them first."),
        ((Step.SERVING, 3), (Step.SPRAYING, 7)),
        kinds=_SPIRIT,
    ),
    Caution(
        "count-sprays",
        N_("Count the sprays: a short drink reaches the limit for glycol sooner than a long one."),
        ((Step.SPRAYING, 8), (Step.SERVING, 5)),
        kinds=frozenset({Kind.PROPYLENE_GLYCOL}),
        preparations=_SPRAYED,
    ),
    Caution(
        "grapefruit-medicines",
        N_(
            "Grapefruit, bitter orange and lime change how some medicines act: name them on the menu, so "
            "that a guest can ask a pharmacist."
        ),
        ((Step.SERVING, 4),),
        kinds=_OIL | {Kind.JUICE, Kind.FRUIT},
        source=_second_hand(N_("CMAJ 2013;185(4):309-316, as described: about juice, not oil")),
    ),
)  # fmt: skip

FOOD_CAUTIONS: tuple[Caution, ...] = (
    Caution(
        "food-grade",
        N_("Use only what is sold as food grade: the same thing is sold for cosmetics and cleaning too."),
        ((Step.ADDING, 1),),
        kinds=_OIL | {Kind.PROPYLENE_GLYCOL, Kind.GLYCEROL, Kind.CARRIER_OIL, Kind.ACID},
    ),
    Caution(
        "only-drinking-spirit",
        N_("Use only spirit sold for drinking: cleaning, surgical and denatured alcohol is poison."),
        ((Step.ADDING, 1),),
        kinds=_SPIRIT,
    ),
    Caution(
        "unlisted-oil",
        N_("Stop at an essential oil that no list of flavouring oils names: not all are for drinking."),
        ((Step.ADDING, 7),),
        kinds=frozenset({Kind.OTHER}),
        source=LIST_SOURCE,
    ),
    Caution(
        "wash-fruit",
        N_("Wash fruit whose peel is used, and choose untreated peel: wax and sprays sit on the skin."),
        ((Step.ADDING, 4), (Step.MIXING, 6)),
        kinds=frozenset({Kind.FRUIT, Kind.JUICE}),
    ),
    Caution(
        "solids-covered",
        N_("Keep peel and herbs under the spirit and strain them on time: what stands above it can spoil."),
        ((Step.RESTING, 5),),
        kinds=_SOLIDS,
        preparations=frozenset({Preparation.INFUSION, Preparation.TINCTURE}),
    ),
    Caution(
        "fat-egg-milk-garlic",
        N_(
            "Fat, egg, milk and garlic can carry germs that nobody smells: keep it at 5 °C or below, use it "
            "within days, and ask your food inspector."
        ),
        ((Step.RESTING, 0), (Step.STORING, 0), (Step.BOTTLING, 1), (Step.MIXING, 2)),
        for_name=is_fat_egg_milk_or_garlic,
        source=_second_hand(N_("FDA Food Code, foods that need time and temperature control, as reprinted")),
    ),
    Caution(
        "clean-bottles",
        N_("Fill clean, dry, scalded bottles, and never top up an old batch with a new one."),
        ((Step.BOTTLING, 7),),
    ),
    Caution(
        "keep-cold",
        N_("Keep it at 5 °C or below and write the day it was made on it."),
        ((Step.STORING, 1), (Step.RESTING, 1)),
        preparations=_COLD,
    ),
    Caution(
        "food-code-juice",
        N_(
            "Where the Food Code covers it, seven days at 5 °C count from the day of making as day one; "
            "fresh citrus juice is not named there, so ask your inspector."
        ),
        ((Step.STORING, 2), (Step.BOTTLING, 4)),
        preparations=_JUICES,
        jurisdictions=_US,
        source=_read(N_("FDA Food Code 3-501.17, as adopted in Minnesota Rules 4626.0400")),
    ),
    Caution(
        "ask-inspector",
        N_("How long juice and cut fruit may be kept differs from place to place: ask your food inspector."),
        ((Step.STORING, 3),),
        preparations=_COLD,
        jurisdictions=frozenset({Jurisdiction.EU, Jurisdiction.UK, Jurisdiction.OTHER}),
    ),
    Caution(
        "record-discard",
        N_("Throw out what is past its date even if it looks fine, and log what was lost and why."),
        ((Step.DISCARDING, 3),),
    ),
)  # fmt: skip

PAPER_CAUTIONS: tuple[Caution, ...] = (
    Caution(
        "label-full",
        N_("Label every bottle with name, strength, made-on and discard-by dates, and who made it."),
        ((Step.LABELLING, 2), (Step.RESTING, 6), (Step.BOTTLING, 8)),
    ),
    Caution(
        "flammable-label",
        N_("Write 'flammable' on the label where it can be seen from the front."),
        ((Step.LABELLING, 1),),
        kinds=_SPIRIT | _OIL,
        up_to_flash_c=FLAMMABLE_UP_TO_C,
        source=COMPUTED_SOURCE,
    ),
    Caution(
        "grade-on-label",
        N_("Until its food grade is confirmed, an oil or glycol is marked so on the label."),
        ((Step.LABELLING, 3),),
        kinds=_OIL | {Kind.PROPYLENE_GLYCOL},
    ),
    Caution(
        "allergens-us",
        N_("Name the nine major allergens and sulphites a drink holds; local codes may ask for more."),
        ((Step.LABELLING, 4),),
        jurisdictions=_US,
        source=US_SOURCE,
    ),
    Caution(
        "allergens-eu",
        N_("Have the fourteen allergens in writing for every drink, also for drinks made to order."),
        ((Step.LABELLING, 4),),
        jurisdictions=_EU,
        source=EU_SOURCE,
    ),
    Caution(
        "allergens-uk",
        N_("Have the fourteen allergens in writing for every drink; one bottled for sale needs a label."),
        ((Step.LABELLING, 4),),
        jurisdictions=_UK,
        source=UK_SOURCE,
    ),
    Caution(
        "allergens-other",
        N_("Ask your food authority which allergens have to be named, and keep them in writing."),
        ((Step.LABELLING, 4),),
        jurisdictions=frozenset({Jurisdiction.OTHER}),
    ),
    Caution(
        "house-licence",
        N_("House infusions and spirit mixes need permission in some places: ask your licensing authority."),
        ((Step.MIXING, 8), (Step.SERVING, 6), (Step.LABELLING, 5)),
        kinds=_SPIRIT,
    ),
    Caution(
        "advance-mixing-us",
        N_(
            "Federal rules let a bar mix spirits ahead only for orders expected at once; many states add "
            "their own on infusions, so ask your state authority."
        ),
        ((Step.MIXING, 9),),
        kinds=_SPIRIT,
        jurisdictions=_US,
        source=_read("27 CFR 31.233"),
    ),
    Caution(
        "compounding-uk",
        N_(
            "Mixing spirit with anything but water into a new spirit for sale can count as compounding: "
            "ask HMRC whether you need approval."
        ),
        ((Step.MIXING, 9),),
        kinds=_SPIRIT,
        jurisdictions=_UK,
        source=_second_hand(N_("HMRC's definition of a compounder, as quoted in March 2021")),
    ),
    Caution(
        "excise-eu",
        N_("Work only with spirit whose duty is paid, and ask your customs office about mixing it for sale."),
        ((Step.MIXING, 9),),
        kinds=_SPIRIT,
        jurisdictions=_EU,
    ),
)  # fmt: skip
