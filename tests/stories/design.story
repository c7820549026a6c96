# A spray to order: what one wishes, what holds, its others, and what to give up where nothing does.
@after opening

Ana: scale
  This bar has no formulas yet.
  Write the first one down: its name, then a
  line for each ingredient.
  [Add a formula] [Propose one]
Ana taps [Propose one]
  (edited)
  Which fruit should it smell of?
  [orange] [lemon]
  [lime] [grapefruit]
  [Cancel]
Ana taps [orange]
  (edited)
  Orange mist: 10 % oil, 18 % glycol
    orange oil           10 ml
    propylene glycol     18 ml
    neutral spirit 96 %  72 ml
  Makes 100 ml at 69.1 % vol
  Clear at 15 °C by both models, with a tenth
  more oil too: the rested bottle decides.
  Glycol: up to 0.93 g/l in 60 ml with 2 to 3
  sprays, limit 1 g/l.
  It can light from about 15 °C upwards: highly
  flammable (category 2: flashes below 23 °C).
  An estimate, some degrees off either way.
  More aroma: 14 % oil, 6 % glycol.
  Lighter: 7 % oil, 19 % glycol.
  [Write it down]
  [More aroma]
  [Lighter]
Ana taps [Write it down]
  (edited)
  Orange mist is in the book.
  Orange mist: aroma mist, version 1
    orange oil           10 ml
    propylene glycol     18 ml
    neutral spirit 96 %  72 ml
  Makes 100 ml at 69.1 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each,
  instead of fresh orange
  Clearing: should stay clear, by estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: orange oil,
  propylene glycol
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [orange oil: food grade] [Not sure]
  [Undo]
Ana: undo
  Undone: new formula Orange mist
  [Put it back]
Ana: design orange mist with 10 ml oil 8 x 50 ml
  Orange mist: 2.5 % oil, 19 % glycol
    orange oil            10 ml
    propylene glycol      76 ml
    neutral spirit 96 %  315 ml
  Makes 401 ml at 75.4 % vol
  Clear at 15 °C by both models, with a tenth
  more oil too: the rested bottle decides.
  Glycol: up to 0.98 g/l in 60 ml with 2 to 3
  sprays, limit 1 g/l.
  It can light from about 16 °C upwards: highly
  flammable (category 2: flashes below 23 °C).
  An estimate, some degrees off either way.
  More aroma: 14 % oil, 6 % glycol.
  Lighter: 2 % oil, 19 % glycol.
  [Write it down]
  [More aroma]
  [Lighter]
Ana: design orange mist with 12 % oil with 75.5 % spirit
  No orange mist meets all of that.
  Give up one:
  Oil: at most 2 % of it.
  Spirit: at least 92 % vol.
  [2 % oil]
  [92 % spirit]
Ana taps [2 % oil]
  Orange mist: 2 % oil, 19 % glycol
    orange oil             2 ml
    propylene glycol      19 ml
    strong spirit 75.5 %  79 ml
  Makes 100 ml at 59.6 % vol
  Clear at 15 °C by both models, with a tenth
  more oil too: the rested bottle decides.
  Glycol: up to 0.98 g/l in 60 ml with 2 to 3
  sprays, limit 1 g/l.
  It can light from about 21 °C upwards: highly
  flammable (category 2: flashes below 23 °C).
  An estimate, some degrees off either way.
  Lighter: 1 % oil, 19 % glycol.
  [Write it down]
  [Lighter]
Ana: design lime mist at most 500 mg/l glycol in 60 ml with 3 sprays at 5 C
  Lime mist: 10 % oil, 9 % glycol
    lime oil             10 ml
    propylene glycol      9 ml
    neutral spirit 96 %  81 ml
  Makes 100 ml at 77.8 % vol
  Clear at 5 °C by both models, with a tenth
  more oil too: the rested bottle decides.
  Glycol: up to 0.46 g/l in 60 ml with 3 sprays,
  limit 0.5 g/l.
  It can light from about 14 °C upwards: highly
  flammable (category 2: flashes below 23 °C).
  An estimate, some degrees off either way.
  More aroma: 14 % oil, 5 % glycol.
  Lighter: 7 % oil, 9 % glycol.
  [Write it down]
  [More aroma]
  [Lighter]
Ana: price orange oil 10 ml 7.90
  orange oil: €7.90 for 10 ml
  [Undo] [Another price]
Ana: price propylene glycol 1 l 18
  propylene glycol: €18.00 for 1 l
  [Undo] [Another price]
Ana: price neutral spirit 1 l 22
  neutral spirit: €22.00 for 1 l
  [Undo] [Another price]
Ana: bar coldest 8 C
  Coldest storage: 8 °C
  [Measuring]
  [All settings] [Undo]
Ana: design orange mist 8 x 50 ml, cheapest
  Orange mist: 10 % oil, 16 % glycol
    orange oil            40 ml
    propylene glycol      64 ml
    neutral spirit 96 %  300 ml
  Makes 404 ml at 71.3 % vol, €39.35
  Clear at 8 °C by both models, with a tenth
  more oil too: the rested bottle decides.
  Glycol: up to 0.82 g/l in 60 ml with 2 to 3
  sprays, limit 1 g/l.
  It can light from about 15 °C upwards: highly
  flammable (category 2: flashes below 23 °C).
  An estimate, some degrees off either way.
  More aroma: 14 % oil, 5 % glycol, €51.75.
  Lasts longer: 7 % oil, 19 % glycol, €30.09.
  [Write it down]
  [More aroma]
  [Lasts longer]
Ana taps [More aroma]
  (edited)
  Orange mist 2 is in the book.
  Orange mist 2: aroma mist, version 1
    orange oil            56 ml
    propylene glycol      20 ml
    neutral spirit 96 %  325 ml
  Makes 401 ml at 77.8 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each,
  instead of fresh orange
  Clearing: should stay clear, by estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: orange oil,
  propylene glycol
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [orange oil: food grade] [Not sure]
  [Undo]
Ana: design gin mist
  I design sprays of citrus oil. Which fruit?
  [orange] [lemon] [lime] [grapefruit]
Ana: design orange mist with 45 ml oil 100 ml with 40 % spirit
  No orange mist meets all of that.
  Give up one:
  Oil and spirit: at most 17 % oil, with 96 %
  vol.
  [17 % oil, 96 % spirit]
