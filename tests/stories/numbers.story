# Number forms. A comma before three digits is a thousand where the bar's decimal mark is a point.
@after mist

Ana: scale grapefruit mist to 36,5 ml
  Grapefruit mist: 36.5 ml
    grapefruit oil     4.6 ml
    propylene glycol   8.5 ml
    neutral spirit    23.5 ml
  Makes 36.6 ml at 61.6 % vol
  Enough for 120 to 270 drinks
  Rounded to 5 ml syringe, 10 ml syringe, 50 ml
  cylinder: the ratio is off by 1.9 % at most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist to 36.5 ml
  Grapefruit mist: 36.5 ml
    grapefruit oil     4.6 ml
    propylene glycol   8.5 ml
    neutral spirit    23.5 ml
  Makes 36.6 ml at 61.6 % vol
  Enough for 120 to 270 drinks
  Rounded to 5 ml syringe, 10 ml syringe, 50 ml
  cylinder: the ratio is off by 1.9 % at most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist to 1,000 ml
  Grapefruit mist: 1,000 ml
    grapefruit oil    124 ml
    propylene glycol  230 ml
    neutral spirit    650 ml
  Makes 1,004 ml at 62.2 % vol
  Enough for 3,300 to 7,500 drinks
  Rounded to 250 ml cylinder, 1 l cylinder: the
  ratio is off by 1.5 % at most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist to 1.000 ml
  Grapefruit mist: 1 ml
    grapefruit oil     0.1 ml
    propylene glycol  0.25 ml
    neutral spirit    0.65 ml
  Makes 1 ml at 62.4 % vol
  Enough for 3 to 7 drinks
  With 1 ml syringe the ratio is 36 % off: weigh
  it in grams, or make more of it.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist to 1 000 ml
  Got “grapefruit mist to 1”. What about “000
  ml”? I take a unit such as ml, g or oz there.
  For example: scale grapefruit mist to 8 x 50
  ml
  [Step by step] [More examples]
Ana: scale grapefruit mist x1 1/2
  Grapefruit mist: x 1.5
    grapefruit oil    18 ml
    propylene glycol  33 ml
    neutral spirit    93 ml
  Makes 144 ml at 62 % vol
  Enough for 480 to 1,000 drinks
  Exact with: 50 ml cylinder, 100 ml cylinder.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist x1½
  Grapefruit mist: x 1.5
    grapefruit oil    18 ml
    propylene glycol  33 ml
    neutral spirit    93 ml
  Makes 144 ml at 62 % vol
  Enough for 480 to 1,000 drinks
  Exact with: 50 ml cylinder, 100 ml cylinder.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist x ½
  Grapefruit mist: x 0.5
    grapefruit oil     6 ml
    propylene glycol  11 ml
    neutral spirit    31 ml
  Makes 48 ml at 62 % vol
  Enough for 160 to 360 drinks
  Exact with: 10 ml syringe, 50 ml cylinder.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist to 12 x 50ml
  Grapefruit mist: 12 x 50 ml
    grapefruit oil     75 ml
    propylene glycol  138 ml
    neutral spirit    390 ml
  Makes 603 ml at 62.1 % vol
  Enough for 2,000 to 4,500 drinks
  Fills 12 x 50 ml, 3 ml over
  Rounded to 100 ml cylinder, 250 ml cylinder,
  500 ml cylinder: the ratio is off by 0.6 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist to 12x50ml
  Grapefruit mist: 12 x 50 ml
    grapefruit oil     75 ml
    propylene glycol  138 ml
    neutral spirit    390 ml
  Makes 603 ml at 62.1 % vol
  Enough for 2,000 to 4,500 drinks
  Fills 12 x 50 ml, 3 ml over
  Rounded to 100 ml cylinder, 250 ml cylinder,
  500 ml cylinder: the ratio is off by 0.6 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist to 12 × 50 ml
  Grapefruit mist: 12 x 50 ml
    grapefruit oil     75 ml
    propylene glycol  138 ml
    neutral spirit    390 ml
  Makes 603 ml at 62.1 % vol
  Enough for 2,000 to 4,500 drinks
  Fills 12 x 50 ml, 3 ml over
  Rounded to 100 ml cylinder, 250 ml cylinder,
  500 ml cylinder: the ratio is off by 0.6 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist to twelve bottles of 50 ml
  Grapefruit mist: 12 x 50 ml
    grapefruit oil     75 ml
    propylene glycol  138 ml
    neutral spirit    390 ml
  Makes 603 ml at 62.1 % vol
  Enough for 2,000 to 4,500 drinks
  Fills 12 x 50 ml, 3 ml over
  Rounded to 100 ml cylinder, 250 ml cylinder,
  500 ml cylinder: the ratio is off by 0.6 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist to 1 dozen bottles of 50 ml
  Got “grapefruit mist to 1 dozen”. What about
  “bottles of 50 ml”?
  For example: scale grapefruit mist to 8 x 50
  ml
  [Step by step] [More examples]
Ana: scale grapefruit mist to 50 ml x 12
  Grapefruit mist: 12 x 50 ml
    grapefruit oil     75 ml
    propylene glycol  138 ml
    neutral spirit    390 ml
  Makes 603 ml at 62.1 % vol
  Enough for 2,000 to 4,500 drinks
  Fills 12 x 50 ml, 3 ml over
  Rounded to 100 ml cylinder, 250 ml cylinder,
  500 ml cylinder: the ratio is off by 0.6 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist for 1,200 drinks
  Grapefruit mist: 1,200 drinks
    grapefruit oil     45 ml
    propylene glycol   83 ml
    neutral spirit    232 ml
  Makes 360 ml at 61.9 % vol
  Enough for 1,200 to 2,700 drinks
  Rounded to 50 ml cylinder, 100 ml cylinder,
  250 ml cylinder: the ratio is off by 0.8 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: waste 2 dozen limes
  Logged: 24 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste half a dozen lemons
  Logged: 6 lemons.
  No price for lemon: not in the cost.
  Why? One tap is enough.
  New here: lemon.
  [Undo] [More waste]
  [Price of lemon]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste 1 1/2 kg oranges
  Logged: 1.5 kg oranges.
  No price for orange: not in the cost.
  Why? One tap is enough.
  New here: orange.
  [Undo] [More waste]
  [Price of orange]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste 1½ grapefruits
  Logged: 1.5 grapefruits.
  No price for grapefruit: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of grapefruit]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: change grapefruit mist: sprays 2–3
  Grapefruit mist is now version 2. Batches keep
  the version they were made with.
  Grapefruit mist: aroma mist, version 2
    grapefruit oil       12 ml
    propylene glycol     22 ml
    neutral spirit 96 %  62 ml
  Makes 96 ml at 62 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each,
  instead of fresh grapefruit
  Clearing: borderline, it may cloud, by
  estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
  [Undo]
Ana: change grapefruit mist: sprays 2 to 3
  Grapefruit mist is now version 3. Batches keep
  the version they were made with.
  Grapefruit mist: aroma mist, version 3
    grapefruit oil       12 ml
    propylene glycol     22 ml
    neutral spirit 96 %  62 ml
  Makes 96 ml at 62 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each,
  instead of fresh grapefruit
  Clearing: borderline, it may cloud, by
  estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
  [Undo]
Ana: price grapefruits 0.90 each, 6-8 garnishes each
  grapefruit: €0.90 each
  6 to 8 garnishes each: €0.150 a garnish before
  waste
  It counts from now on: the 1.5 thrown out
  before stay without a price.
  [Undo] [Another price]
Ana: scale grapefruit mist to 9999999999999 ml
  “9999999999999” is not a number I can read.
  Write 12, 1.5, 1 1/2 or ½.
Ana: scale grapefruit mist to 0 ml
  Total 0 ml is out of range: it has to be above
  0.
Ana: scale grapefruit mist to -50 ml
  Got “grapefruit mist to”. What about “-50 ml”?
  For example: scale grapefruit mist to 8 x 50
  ml
  [Step by step] [More examples]
