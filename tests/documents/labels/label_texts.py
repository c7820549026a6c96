"""Label texts shared by tests."""

from __future__ import annotations

from dataclasses import replace

from bot.documents.labels.labels import LabelText

LINK = "https://t.me/corner_bar_ledger_bot?start=b_7Hq2kX9m"

PLAIN = LabelText(
    name="Grapefruit mist",
    batch="Batch 12",
    bar="The Corner Bar",
    made="Made 1 Mar 2026",
    clear_checked="Checked clear 3 Mar 2026",
    discard_by="Discard by 1 Sep 2026",
    strength="78.4 % vol",
    volume="50 mL",
    ingredients="Grain spirit 96 %, pink grapefruit oil (cold-pressed), propylene glycol, water",
    allergens="Allergens: none of the list",
    flammable="FLAMMABLE",
    storage="Store closed, upright, cool and dark",
    made_by="Made by Ana",
    cautions=("No flame or smoking while spraying", "Not on skin before sunlight"),
    link=LINK,
    numbering="{number} of {total}",
    continued="continued",
    language="en",
)

LONG = replace(
    PLAIN,
    name="Cold-pressed bergamot, pink grapefruit and folded lemon winter aroma mist, 2nd run",
    ingredients="Grain spirit 96 % vol, cold-pressed bergamot oil (furocoumarin free), cold-pressed "
    "pink grapefruit oil, lemon oil folded five times, propylene glycol, glycerol, water, sodium "
    "chloride, citric acid, malic acid, gum arabic",
)

SCRIPTS = {
    "Greek": "Άρωμα γκρέιπφρουτ για σπρέι",
    "Cyrillic": "Спрей грейпфрутовый, зимний",
    "Vietnamese": "Sương bưởi hồng ép lạnh đặc biệt",
    "Turkish and Polish": "İğde şırası, żółć, ÅØÆ ñ ç ß",
    "Hebrew": "תרסיס אשכולית ורודה",
    "Arabic": "رذاذ الجريب فروت الوردي",
}
IDEOGRAPHS = {
    "Japanese": "柚子とグレープフルーツの霧、冬の特別版",
    "Chinese": "冷榨粉红葡萄柚喷雾（冬季特别版）",
    "Korean": "자몽 향 스프레이 겨울 특별판",
}
