"""Spanish names of ingredients, for the rules to read as English ones."""

from __future__ import annotations

from typing import Final

from bot.trade.formulas.ingredient_names.reading import IngredientNames

# Plain form (lower case, no accents) to English. Only words without another meaning in English are listed.
_WORDS: Final[dict[str, str]] = {
    "aceite": "oil", "aceite esencial": "oil", "zumo": "juice", "jugo": "juice", "jarabe": "syrup",
    "sirope": "syrup", "almibar": "syrup", "leche": "milk", "nata": "cream", "crema": "cream",
    "mantequilla": "butter", "queso": "cheese", "yogur": "yogurt", "suero de leche": "whey",
    "huevo": "egg", "clara de huevo": "egg white", "yema": "egg yolk", "miel": "honey", "agua": "water",
    "hielo": "ice", "sal": "salt", "salina": "saline", "azucar": "sugar", "sacarosa": "sucrose",
    "glucosa": "glucose", "fructosa": "fructose", "vinagre": "vinegar", "pure": "puree",
    "acido citrico": "citric acid", "acido malico": "malic acid", "acido tartarico": "tartaric acid",
    "acido lactico": "lactic acid", "acido fosforico": "phosphoric acid", "acido ascorbico": "ascorbic acid",
    "acido": "acid", "cremor tartaro": "cream of tartar", "crema de tartaro": "cream of tartar",
    "alcohol neutro": "neutral spirit", "alcohol isopropilico": "isopropyl alcohol",
    "alcohol desnaturalizado": "denatured alcohol", "alcohol metilico": "methyl alcohol",
    "alcohol sanitario": "rubbing alcohol", "alcohol de quemar": "methylated spirit",
    "alcohol de limpieza": "denatured alcohol", "metanol": "methanol", "isopropanol": "isopropanol",
    "alcohol de farmacia": "rubbing alcohol", "alcohol de botiquin": "rubbing alcohol",
    "alcohol de curacion": "rubbing alcohol", "alcohol de curar": "rubbing alcohol",
    "alcohol industrial": "denatured alcohol", "desnaturalizado": "denatured", "isopropilico": "isopropyl",
    "aguardiente": "spirit", "ginebra": "gin", "ron": "rum", "etanol": "ethanol", "licor": "liqueur",
    "vino": "wine", "cerveza": "beer", "sidra": "cider", "jerez": "sherry", "vermut": "vermouth",
    "propilenglicol": "propylene glycol", "propilen glicol": "propylene glycol",
    "etilenglicol": "ethylene glycol", "dietilenglicol": "diethylene glycol",
    "anticongelante": "antifreeze", "glicol": "glycol", "glicerina": "glycerine", "glicerol": "glycerol",
    "trigliceridos de cadena media": "medium chain triglycerides",
    "trigliceridos": "triglycerides", "girasol": "sunflower", "oliva": "olive", "colza": "rapeseed",
    "vegetal": "vegetable", "maiz": "corn", "pepita de uva": "grape seed", "cartamo": "safflower",
    "naranja amarga": "bitter orange", "naranja agria": "bitter orange", "naranja dulce": "sweet orange",
    "naranja": "orange", "limon persa": "persian lime", "limon verde": "lime", "limon": "lemon",
    "lima": "lime", "toronja": "grapefruit", "bergamota": "bergamot", "mandarina": "mandarin",
    "tangerina": "tangerine", "clementina": "clementine", "citrico": "citrus", "cidra": "citron",
    "limoneno": "limonene", "hierba limon": "lemongrass", "limoncillo": "lemongrass",
    "hierbaluisa": "lemon verbena", "azahar": "orange flower", "flor de azahar": "orange flower",
    "manzana": "apple", "pina": "pineapple", "melocoton": "peach", "durazno": "peach",
    "ciruela": "plum", "cereza": "cherry", "fresa": "strawberry", "frambuesa": "raspberry",
    "arandano": "blueberry", "uva": "grape", "pepino": "cucumber", "platano": "banana", "higo": "fig",
    "ruibarbo": "rhubarb", "maracuya": "passion fruit", "sandia": "watermelon", "tomate": "tomato",
    "piel": "peel", "cascara": "peel", "corteza": "rind", "ralladura": "zest", "hoja": "leaf",
    "flor": "flower", "semilla": "seed", "menta": "mint", "hierbabuena": "mint", "albahaca": "basil",
    "tomillo": "thyme", "romero": "rosemary", "eucalipto": "eucalyptus", "canela": "cinnamon",
    "clavo": "clove", "jengibre": "ginger", "lavanda": "lavender", "vainilla": "vanilla",
    "almendra amarga": "bitter almond", "almendras amargas": "bitter almond",
    "almendra": "almond", "avellana": "hazelnut", "nuez": "nut", "nueces": "nuts", "anacardo": "cashew",
    "pistacho": "pistachio", "pecana": "pecan", "pinon": "pine nut", "castana": "chestnut",
    "mazapan": "marzipan", "cacahuete": "peanut", "cacahuate": "peanut", "mani": "peanut",
    "soja": "soy", "lecitina": "lecithin", "trigo": "wheat", "cebada": "barley", "centeno": "rye",
    "avena": "oat", "malta": "malt", "harina": "flour", "pescado": "fish", "anchoa": "anchovy",
    "gamba": "prawn", "camaron": "shrimp", "langostino": "prawn", "cangrejo": "crab", "langosta": "lobster",
    "almeja": "clam", "ostra": "oyster", "mejillon": "mussel", "calamar": "squid", "pulpo": "octopus",
    "apio": "celery", "mostaza": "mustard", "sesamo": "sesame", "ajonjoli": "sesame",
    "altramuz": "lupin", "altramuces": "lupin", "sulfito": "sulphite", "metabisulfito": "metabisulphite",
    "hueso de albaricoque": "apricot kernel", "hueso de melocoton": "peach kernel",
    "hueso de cereza": "cherry kernel", "cumarina": "coumarin", "asperula": "woodruff",
    "ajenjo": "wormwood", "artemisa": "mugwort", "tanaceto": "tansy", "salvia": "sage",
    "quinina": "quinine", "quina": "cinchona", "cuasia": "quassia", "sasafras": "sassafras",
    "poleo": "pennyroyal", "calamo": "calamus", "calamo aromatico": "calamus", "teucrio": "germander",
    "estragon": "tarragon", "laurel": "bay", "tabaco": "tobacco", "nicotina": "nicotine",
    "coco": "coconut", "pasas": "raisins", "destilado": "distilled", "destilada": "distilled",
    "prensado en frio": "cold-pressed",
}  # fmt: skip

NAMES: Final = IngredientNames(
    "es",
    _WORDS,
    ending="e?s",
    of="(?:de|del) (?:la |el |los |las )?",
    # This is a grapefruit in Spain but another fruit in English, so it counts only beside Spanish words.
    false_friends={"pomelo": "grapefruit"},
    surely=r"(?:(?:de|del) pomelo|pomelo (?:rosa|rosado|rojo|blanco))s?|pomelos",
)
