"""Groups of English words that mean much the same behind a bar, for the reader of free lines.

The words are without accents. A word may stand in several groups.
"""

from __future__ import annotations

from typing import Final

CONCEPTS: Final[dict[str, str]] = {
    "also": "and also plus then oh",
    "throw": (
        "bin binned binning toss tossed tossing chuck chucked chucking dump dumped dumping trash "
        "trashed trashing bung bunged biff biffed ditch ditched lob lobbed scrap scrapped "
        "scrapping discard discarded pitch pitched junk junked rubbish garbage skip tip tipped "
        "turf turfed yeet yeeted waste wasted wastage threw throw thrown throwing chucked-out 86 "
        "86d 86'd eighty-six compost composted write-off"
    ),
    "lose": "lost lose losing loss gone missing vanished unaccounted shrinkage",
    "spoil": (
        "mouldy moldy mold mould rotten rotted rot rotting spoiled spoilt manky minging furry "
        "fuzzy slimy squishy mushy soft soggy bruised squashed crushed shrivelled dried overripe "
        "brown black off stale skanky nasty fungus hairy"
    ),
    "fruit": "fruit fruits citrus lemons limes oranges grapefruits grapefruit mandarins",
    "buy": (
        "bought buy buying ordered order arrived arrive arrives delivered delivery deliveries "
        "came received receive restock restocked restocking picked purchase purchased landed "
        "invoice haul shipment dropped supplier grocer market"
    ),
    "price": (
        "price prices priced cost costs costing paid pay paying charge charged charging quid euro "
        "euros dollar dollars bucks cents pence p expensive cheap cheaper cheapest rate tariff "
        "fee"
    ),
    "worth": "worth save saved saving savings pays payback profit benefit paying-off saves difference",
    "howmuch": "much many amount amounts quantity quantities enough",
    "make": (
        "make making made makes mix mixed mixing batch batched batching cook cooked cooking brew "
        "brewed prep prepped prepping whip whipped knock knocked produce produced build"
    ),
    "size": (
        "double triple half halve quarter twice times scale scaled up down multiply bigger "
        "smaller litre litres liter liters ml bottles bottle"
    ),
    "strong": (
        "strong strength abv proof percent alcohol dilute diluted diluting water proofing "
        "hydrometer vinometer refractometer"
    ),
    "clear": (
        "clear cloudy cloud clouding hazy haze milky murky louche louching split splitting "
        "separate separated separating separates bright transparent"
    ),
    "look": "look looks looking looked seems appears checked check checking inspected eyeballed",
    "reasonwhy": "why reason cause",
    "swap": (
        "swap swapped instead substitute replace replacing replaced use using alternative vodka everclear"
    ),
    "dose": "dose dosage drink drinks intake limit limits legal mg exposure glass serve serving",
    "weigh": "weigh weighs weighed weighing weight scale scales grams gram g heavy density gravity",
    "sprayer": (
        "sprayer sprayers spray sprays atomizer atomizers atomiser atomisers mister misters pump "
        "pumps squirt squirts spritz spritzes nozzle trigger puff puffs"
    ),
    "calibrate": "calibrate calibration calibrating recalibrate measure",
    "ready": "ready rested resting rest done finished finish matured settle settling waiting",
    "expire": (
        "expire expires expired expiring expiry dated date use-by best-before discard last shelf "
        "keep keeps turn"
    ),
    "open": ("open opened opening cracked crack tapped broke started start starting unsealed popped using"),
    "empty": "empty emptied finished finish drained killed kicked polished done used gone dry last",
    "label": "label labels sticker stickers tag tags print printed printing reprint tape qr",
    "lot": "lot lots number code barcode",
    "trace": "trace which contain contains containing recall",
    "photo": "photo photos picture pictures pic pics image images snap snaps album shot shots",
    "recipe": "recipe recipes spec specs formula formulas formulae ingredients book card method",
    "new": "new add adding create created write written note jot",
    "change": (
        "change changed changing edit tweak adjust modify alter update updated bump reduce "
        "increase cut lower raise swap"
    ),
    "name": "name named rename renamed call called title",
    "archive": "archive archived retire retired remove shelve drop delete hide bury stop",
    "nothing": "nothing none zero nil nada zip clean no nowt naught",
    "peel": (
        "peel peeled peeling zest zested zesting naked bald twist twists garnish garnishes "
        "garnished nude skinned stripped"
    ),
    "juice": "juice juiced juicing squeeze squeezed squeezing press pressed yield yielded oj",
    "acid": "acid acids acidify acidified acidity citric malic sour tart lime-strength super",
    "week": (
        "week weeks weekly month months monthly monday tuesday wednesday thursday friday saturday "
        "sunday yesterday october november september august july june report summary figures "
        "stats totals total overview tally"
    ),
    "count": "count counted counting stocktake inventory tally shelf",
    "stock": "stock hand left remaining inventory supply",
    "par": "par minimum min least alert threshold keep never below",
    "plan": "plan next schedule planning upcoming should when",
    "shop": "shopping shop buy order list groceries need needed run running low",
    "morning": "morning tomorrow opening prep",
    "sold": "sold sell poured pour served serve drinks cocktails covers",
    "trial": "trial try trying test experiment variant variants version versions tweak blind sample",
    "taste": (
        "taste tasted tasting score scored scoring rate rated rating notes brightness bitterness aroma points"
    ),
    "safe": (
        "safe flammable fire flame gloves ventilation fumes eyes skin hazard hazards dangerous "
        "danger caution cautions handling precautions careful burn burns"
    ),
    "food": "food grade food-grade edible kosher approved certified",
    "allergy": (
        "allergen allergens allergic allergy allergies gluten nuts nut sulphites celiac coeliac vegan"
    ),
    "remind": (
        "remind reminder reminders reminded ping nudge snooze notify notification notifications "
        "alarm poke nag alert"
    ),
    "who": "who whom whose",
    "log": "log logged logging record recorded history audit trail entered entry entries wrote",
    "undo": "undo scrap scratch cancel revert delete remove mistake wrong oops back rollback",
    "correct": "correct correction actually meant sorry not should wrong fix typo",
    "again": "again same repeat more another also plus too",
    "team": "team crew staff people members member colleagues everyone squad roster",
    "join": "invite add join joining barback bartender starter hire hired onboard",
    "leave": "leave quit kick fire fired remove left leaving",
    "set": ("set setting settings configure closing close hours currency timezone zone units metric ounces"),
    "lang": "language english spanish español french speak speaks translate german",
    "data": "data privacy personal gdpr store stored know keep about me mine",
    "export": "export download backup csv excel spreadsheet file files copy dump everything",
    "import": "import upload load read file spreadsheet csv excel attach attached",
    "help": "help can what how work works use explain guide tutorial instructions",
    "thanks": (
        "thanks thank cheers ta ok okay great nice perfect cool lovely done sorted hello hi hey bye good"
    ),
    "today": "today tonight due todo tasks task agenda now",
    "canmake": "can could able possible",
    "avail": "here with got have",
}
