# 'It', 'that' and 'the other one' after a line that only showed something.
@after mist

Ana: new formula Orange mist\
orange oil 12 ml\
neutral spirit 96 % 62 ml\
propylene glycol 22 ml\
kind aroma mist
  Orange mist is in the book.
  Orange mist: aroma mist, version 1
    orange oil           12 ml
    neutral spirit 96 %  62 ml
    propylene glycol     22 ml
  Makes 96 ml at 62 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: borderline, it may cloud, by
  estimate
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
Ana: what does that cost
  Read as: cost
  Which formula?
  [Grapefruit mist] [Orange mist]
  [Cancel]
Ana: cancel
  Cancelled. Nothing was logged.
Ana: scale orange mist to 400 ml
  Orange mist: 400 ml
    orange oil         50 ml
    neutral spirit    260 ml
    propylene glycol   92 ml
  Makes 402 ml at 62.1 % vol
  Enough for 1,300 to 3,000 drinks
  Rounded to 50 ml cylinder, 500 ml cylinder,
  100 ml cylinder: the ratio is off by 0.6 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: double that
  Orange mist: 800 ml
    orange oil        100 ml
    neutral spirit    520 ml
    propylene glycol  184 ml
  Makes 804 ml at 62.1 % vol
  Enough for 2,600 to 6,000 drinks
  Rounded to 100 ml cylinder, 1 l cylinder, 250
  ml cylinder: the ratio is off by 0.6 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: the other one
  Grapefruit mist: 800 ml
    grapefruit oil    100 ml
    propylene glycol  184 ml
    neutral spirit    520 ml
  Makes 804 ml at 62.1 % vol
  Enough for 2,600 to 6,000 drinks
  Rounded to 100 ml cylinder, 250 ml cylinder, 1
  l cylinder: the ratio is off by 0.6 % at most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: half of it
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
Ana: how strong is it
  Read as: strength Grapefruit mist
  Grapefruit mist: 62 % vol
    Poured in        96 ml
    Makes            96 ml
    Ethanol in it  59.5 ml
  Added without contraction, as ideal volumes:
  grapefruit oil, propylene glycol.
  It can light from about 16 °C upwards: highly
  flammable (category 2: flashes below 23 °C).
  An estimate, some degrees off either way.
  [Scale] [Another spirit]
Ana: and the other one
  Orange mist: 62 % vol
    Poured in        96 ml
    Makes            96 ml
    Ethanol in it  59.5 ml
  Added without contraction, as ideal volumes:
  orange oil, propylene glycol.
  It can light from about 16 °C upwards: highly
  flammable (category 2: flashes below 23 °C).
  An estimate, some degrees off either way.
  [Scale] [Another spirit]
Ana: price oranges
  What does orange cost? Such as: 0.60 each
  [Back] [Cancel]
Ana: cancel
  Cancelled. Nothing was logged.

# What was logged since is what 'that' means.
Ana: 2 lemons mouldy
  Logged: 2 lemons, mouldy.
  No price for lemon: not in the cost.
  New here: lemon.
  [Undo] [More waste]
  [Price of lemon]
Ana: double that
  Corrected: 4 lemons instead of 2, still mouldy
  No price for lemon: not in the cost.
  [Undo] [More waste]
  [Price of lemon]
Ana: 3 limes mouldy
  Logged: 3 limes, mouldy.
  No price for lime: not in the cost.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
Ana: undo the other one
  Undone: 4 lemons, mouldy
  [Put it back]
Ana: undo the other one
  Undone: 3 limes, mouldy
  [Put it back]

# An ingredient on hand is counted, or asked what it is enough for.
Ana: i have 10 ml grapefruit oil
  Do you want to count it, or see what it is
  enough for?
  [count grapefruit oil 10 ml]
  [scale Grapefruit mist with 10 ml grapefruit oil]
Ana taps [scale Grapefruit mist with 10 ml grapefruit oil]
  Grapefruit mist: 80 ml
    grapefruit oil      10 ml
    propylene glycol  18.5 ml
    neutral spirit      52 ml
  Makes 80.5 ml at 62 % vol
  Enough for 260 to 600 drinks
  Rounded to 10 ml syringe, 50 ml cylinder, 100
  ml cylinder: the ratio is off by 0.9 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
