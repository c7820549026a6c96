# As people talk: "it" for the only formula, a misspelt fruit, an undo of an undo.
@after opening

Ana: new grapefruit mist: 12 ml grapefruit oil, 20 ml pg, 70 ml 96% spirit
  grapefruit mist is in the book.
  grapefruit mist: aroma mist, version 1
    grapefruit oil  12 ml
    pg              20 ml
    spirit 96 %     70 ml
  Makes 102 ml at 65.9 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: borderline, it may cloud, by
  estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, pg
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
  [Undo]
Ana: how strong will that be
  Read as: strength grapefruit mist
  grapefruit mist: 65.9 % vol
    Poured in       102 ml
    Makes           102 ml
    Ethanol in it  67.2 ml
  Added without contraction, as ideal volumes:
  grapefruit oil, pg.
  It can light from about 16 °C upwards: highly
  flammable (category 2: flashes below 23 °C).
  An estimate, some degrees off either way.
  [Scale] [Another spirit]
Ana: chucked 5 graprfruits gone off
  graprfruits is new here. A fruit?
  [New fruit: grapefruit]
  [New fruit: graprfruit]
  [Cancel]
Ana taps [New fruit: grapefruit]
  (edited)
  Logged: 5 grapefruits, mouldy.
  No price for grapefruit: not in the cost.
  [Undo] [More waste]
  [Price of grapefruit]
Ana: not 5, 6
  Corrected: 6 grapefruits instead of 5, still
  mouldy
  No price for grapefruit: not in the cost.
  [Undo] [More waste]
  [Price of grapefruit]
Ana: undo
  Undone: 6 grapefruits, mouldy
  [Put it back]
Ana: undo that undo
  Put back: 6 grapefruits, mouldy
  [Undo]
Ana: the oil cost me 12 bucks for 30 mils
  Read as: price grapefruit oil 30 mils 12
  Nothing is logged yet. Tap if that is right.
  [price grapefruit oil 30 mils 12]
Ana: no waste tonight
  Waste of tonight is in the log: undo that
  first.
  [Log] [Today]
# Dictation ends a line with a full stop.
Ana: waste 2 limes mouldy.
  Logged: 2 limes, mouldy.
  No price for lime: not in the cost.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
Ana: undo.
  Undone: 2 limes, mouldy
  [Put it back]
Ana: put it back.
  Put back: 2 limes, mouldy
  [Undo]
# What the bar does not know yet comes in.
Ana: bought 2 kg honey 12
  honey is new here. Right?
  [New ingredient: honey]
  [Cancel]
Ana taps [New ingredient: honey]
  (edited)
  Bought: 2 kg honey, €12.00.
  Price from now on: €12.00 for 2 kg.
  [Undo] [More that came in]
Ana: bought agave syrup
  agave syrup is new here. Right?
  [New ingredient: agave syrup]
  [Cancel]
Ana taps [New ingredient: agave syrup]
  (edited)
  How much of agave syrup?
  [Back] [Cancel]
