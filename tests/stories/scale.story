# Every target.
@after mist

Ana: scale grapefruit mist to 8 x 50 ml
  Grapefruit mist: 8 x 50 ml
    grapefruit oil     50 ml
    propylene glycol   92 ml
    neutral spirit    260 ml
  Makes 402 ml at 62.1 % vol
  Enough for 1,300 to 3,000 drinks
  Fills 8 x 50 ml, 2 ml over
  Rounded to 50 ml cylinder, 100 ml cylinder,
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
Ana taps [In grams]
  Grapefruit mist: 8 x 50 ml
    grapefruit oil     42.7 g
    propylene glycol     95 g
    neutral spirit    208.6 g
    Total             346.3 g
  Makes 400 ml at 62 % vol
  Enough for 1,300 to 3,000 drinks
  Fills 8 x 50 ml
  In place of ml measured at 20 °C.
  grapefruit oil: 42.5 g to 42.9 g, the range
  its standard allows.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In ml] [Densities]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana taps [Cost]
  Grapefruit mist: no prices yet
  No price for grapefruit oil, propylene glycol,
  neutral spirit: not counted, so the true cost
  is higher.
  To compare with fresh grapefruit, say: price
  grapefruit 0.60 each, 5 garnishes each
  [Price of grapefruit oil]
  [Price of propylene glycol]
  [Price of neutral spirit]
  [Amounts] [Log this batch]
Ana: scale grapefruit mist x3
  Grapefruit mist: x 3
    grapefruit oil     36 ml
    propylene glycol   66 ml
    neutral spirit    186 ml
  Makes 288 ml at 62 % vol
  Enough for 960 to 2,100 drinks
  Exact with: 50 ml cylinder, 100 ml cylinder,
  250 ml cylinder.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist double
  Grapefruit mist: x 2
    grapefruit oil     24 ml
    propylene glycol   44 ml
    neutral spirit    124 ml
  Makes 192 ml at 62 % vol
  Enough for 640 to 1,400 drinks
  Exact with: 50 ml cylinder, 250 ml cylinder.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist to 400 ml
  Grapefruit mist: 400 ml
    grapefruit oil     50 ml
    propylene glycol   92 ml
    neutral spirit    260 ml
  Makes 402 ml at 62.1 % vol
  Enough for 1,300 to 3,000 drinks
  Rounded to 50 ml cylinder, 100 ml cylinder,
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
Ana: scale grapefruit mist to 1 l
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
Ana: scale grapefruit mist to 8 x 50 ml, 5 % loss
  Grapefruit mist: 8 x 50 ml
    grapefruit oil     53 ml
    propylene glycol   97 ml
    neutral spirit    275 ml
  Makes 425 ml at 62.1 % vol
  Enough for 1,300 to 3,000 drinks
  Fills 8 x 50 ml, 5 % lost on the way, 3.75 ml
  over
  Rounded to 100 ml cylinder, 500 ml cylinder:
  the ratio is off by 0.6 % at most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist with 30 ml grapefruit oil
  Grapefruit mist: 240 ml
    grapefruit oil     30 ml
    propylene glycol   55 ml
    neutral spirit    156 ml
  Makes 241 ml at 62.1 % vol
  Enough for 800 to 1,800 drinks
  Rounded to 50 ml cylinder, 100 ml cylinder,
  250 ml cylinder: the ratio is off by 0.6 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist with 30 ml oil
  Grapefruit mist: 240 ml
    grapefruit oil     30 ml
    propylene glycol   55 ml
    neutral spirit    156 ml
  Makes 241 ml at 62.1 % vol
  Enough for 800 to 1,800 drinks
  Rounded to 50 ml cylinder, 100 ml cylinder,
  250 ml cylinder: the ratio is off by 0.6 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist with 30 ml grapefruit oil and 40 ml propylene glycol
  Grapefruit mist: 174.5 ml
    grapefruit oil     22 ml
    propylene glycol   40 ml
    neutral spirit    112 ml
  Makes 174 ml at 61.8 % vol
  propylene glycol runs out first.
  Enough for 580 to 1,300 drinks
  Rounded to 50 ml cylinder, 250 ml cylinder:
  the ratio is off by 1.5 % at most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist for 600 drinks
  Grapefruit mist: 600 drinks
    grapefruit oil    22.5 ml
    propylene glycol  41.5 ml
    neutral spirit     116 ml
  Makes 180 ml at 61.9 % vol
  Enough for 600 to 1,300 drinks
  Rounded to 50 ml cylinder, 250 ml cylinder:
  the ratio is off by 0.8 % at most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist for 600 drinks, 10 % loss
  Grapefruit mist: 600 drinks
    grapefruit oil     25 ml
    propylene glycol   46 ml
    neutral spirit    130 ml
  Makes 201 ml at 62.1 % vol, 10 % lost on the
  way
  Enough for 600 to 1,300 drinks
  Rounded to 50 ml cylinder, 250 ml cylinder:
  the ratio is off by 0.6 % at most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist to 300 g
  Grapefruit mist: 346.5 ml
    grapefruit oil    43.5 ml
    propylene glycol    79 ml
    neutral spirit     224 ml
  Makes 346.5 ml at 62.1 % vol
  Enough for 1,100 to 2,500 drinks
  Rounded to 50 ml cylinder, 100 ml cylinder,
  250 ml cylinder: the ratio is off by 0.9 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist to 400 ml in grams
  Grapefruit mist: 400 ml
    grapefruit oil     42.7 g
    propylene glycol     95 g
    neutral spirit    208.6 g
    Total             346.3 g
  Makes 400 ml at 62 % vol
  Enough for 1,300 to 3,000 drinks
  In place of ml measured at 20 °C.
  grapefruit oil: 42.5 g to 42.9 g, the range
  its standard allows.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In ml] [Densities]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale
  How much of Grapefruit mist?
  [4 x 50 ml] [8 x 50 ml] [4 x 100 ml]
  [as written] [double]
  [Cancel]
Ana taps [4 x 100 ml]
  (edited)
  Grapefruit mist: 4 x 100 ml
    grapefruit oil     50 ml
    propylene glycol   92 ml
    neutral spirit    260 ml
  Makes 402 ml at 62.1 % vol
  Enough for 1,300 to 3,000 drinks
  Fills 4 x 100 ml, 2 ml over
  Rounded to 50 ml cylinder, 100 ml cylinder,
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
Ana taps [Other size]
  (edited)
  How much of Grapefruit mist?
  [4 x 50 ml] [8 x 50 ml] [4 x 100 ml]
  [as written] [double]
  [Back] [Cancel]
Ana: half
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
# bottles without a size are asked for one
Ana: scale 8 bottles of grapefruit mist
  Bottles of what size? Such as: 8 x 50 ml
  [8 x 50 ml] [8 x 100 ml]
Ana taps [8 x 50 ml]
  Grapefruit mist: 8 x 50 ml
    grapefruit oil     50 ml
    propylene glycol   92 ml
    neutral spirit    260 ml
  Makes 402 ml at 62.1 % vol
  Enough for 1,300 to 3,000 drinks
  Fills 8 x 50 ml, 2 ml over
  Rounded to 50 ml cylinder, 100 ml cylinder,
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
Ana: cost grapefruit mist 4 bottles
  Bottles of what size? Such as: 4 x 50 ml
  [4 x 50 ml] [4 x 100 ml]
