# A bar that measures in US fluid ounces.
@after opening_changed

Bea: new formula Orange mist\
orange oil 1/2 oz\
propylene glycol 1 oz\
neutral spirit 95 % 2 3/4 oz\
kind aroma mist\
replaces orange
  Orange mist is in the book.
  Orange mist: aroma mist, version 1
    orange oil             1/2 oz
    propylene glycol         1 oz
    neutral spirit 95 %  2 3/4 oz
  Makes 4 1/4 oz at 61.5 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each,
  instead of fresh orange
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
Bea: scale orange mist to 8 x 2 oz
  Orange mist: 8 x 2 oz
    orange oil    1 3/4 oz + 3/4 tsp
    propylene
    glycol                  3 3/4 oz
    neutral
    spirit                 10 1/2 oz
  Makes 16.12 oz at 61.9 % vol
  Enough for 1,500 to 3,500 drinks
  Fills 8 x 2 oz, 1/8 oz over
  Rounded to jigger, measuring spoons, measuring
  cup: the ratio is off by 1.8 % at most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapor lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Bea: scale orange mist
  How much of Orange mist?
  [4 x 2 oz] [8 x 2 oz] [4 x 4 oz]
  [as written] [double]
  [Back] [Cancel]
Bea taps [4 x 2 oz]
  (edited)
  Orange mist: 4 x 2 oz
    orange oil             5 3/4 tsp
    propylene
    glycol        1 3/4 oz + 3/4 tsp
    neutral
    spirit                  5 1/4 oz
  Makes 8.08 oz at 61.7 % vol
  Enough for 790 to 1,700 drinks
  Fills 4 x 2 oz, 0.083 oz over
  Rounded to measuring spoons, jigger: the ratio
  is off by 2.2 % at most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapor lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Bea: scale orange mist with 1½ oz orange oil
  Orange mist: 12 3/4 oz
    orange oil              1 1/2 oz
    propylene
    glycol                      3 oz
    neutral spirit  8 oz + 1 1/2 tsp
  Makes 12 3/4 oz at 61.5 % vol
  Enough for 1,200 to 2,800 drinks
  Exact with: jigger, measuring cup, measuring
  spoons.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapor lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Bea: scale orange mist to 36,5 ml
  Orange mist: 1.23 oz
    orange oil      1/8 oz + 0.02 oz
    propylene
    glycol                 1 3/4 tsp
    neutral spirit         4 3/4 tsp
  Makes 1.23 oz at 61.2 % vol
  Enough for 120 to 270 drinks
  Rounded to measuring spoons, 1 ml syringe: the
  ratio is off by 1.3 % at most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapor lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Bea: scale orange mist to 1,000 ml
  Orange mist: 33.81 oz
    orange oil         4 oz
    propylene glycol   8 oz
    neutral spirit    22 oz
  Makes 34 oz at 61.5 % vol
  Enough for 3,300 to 7,500 drinks
  Exact with: measuring cup, quart jug.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapor lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Bea: price orange oil 4 oz 31.00
  orange oil: €31.00 for 4 oz
  [Undo] [Another price]
Bea: price orange oil 1/2 lb 60
  orange oil: €60.00 for 0.5 lb
  [Undo] [Another price]
Bea: batch orange mist to 8 x 2 oz
  Batch 1: Orange mist, 16.12 oz
  Resting until Thu, Nov 26 1:00 PM. I will
  remind you.
  Check it again on Dec 25, 2026.
  Discard after May 24, 2027: the usual time for
  its kind.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Food grade not confirmed: orange oil,
  propylene glycol
  [Show batch 1]
  [Note a lot] [Undo]
Bea: waste 3 lb limes
  Logged: 3 lb limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
  [moldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
# Weighed, and back to what this bar measures in.
Bea: scale orange mist to 16 oz in grams
  Orange mist: 16 oz
    orange oil           47 g
    propylene glycol  115.4 g
    neutral spirit    248.4 g
    Total             410.9 g
  Makes 16 oz at 61.5 % vol
  Enough for 1,500 to 3,500 drinks
  In place of ml measured at 68 °F.
  orange oil: 46.8 g to 47.2 g, the range its
  standard allows.
  propylene glycol: 115.3 g to 115.5 g, the
  range its standard allows.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapor lights in a warm room.
  [Log this batch]
  [In oz] [Densities]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Bea taps [In oz]
  Orange mist: 16 oz
    orange oil    1 3/4 oz + 3/4 tsp
    propylene
    glycol                  3 3/4 oz
    neutral
    spirit                 10 1/2 oz
  Makes 16.12 oz at 61.9 % vol
  Enough for 1,500 to 3,500 drinks
  Rounded to jigger, measuring spoons, measuring
  cup: the ratio is off by 1.8 % at most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapor lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
