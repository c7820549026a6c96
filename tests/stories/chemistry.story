# Where the chemistry is not sure it errs on the strict side, and says so.
@after mist

Ana: new Orange mist: orange oil 8 ml, propylene glycol 30 ml, neutral spirit 40 ml, rest 24 h, aroma mist
  Orange mist is in the book.
  Orange mist: aroma mist, version 1
    orange oil            8 ml
    propylene glycol     30 ml
    neutral spirit 96 %  40 ml
  Makes 78 ml at 49.2 % vol
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
Ana: strength orange mist
  Orange mist: 49.2 % vol
    Poured in        78 ml
    Makes            78 ml
    Ethanol in it  38.4 ml
  Added without contraction, as ideal volumes:
  orange oil, propylene glycol.
  It can light from about 18 °C upwards: highly
  flammable (category 2: flashes below 23 °C).
  An estimate, some degrees off either way.
  [Scale] [Another spirit]
Ana: clear orange mist at 5 C
  Orange mist: borderline, it may cloud
  The hopeful model keeps it clear, the cautious
  one does not.
  Weakest spirit that clears it: 70 % by one
  model, none is strong enough by the other
  (yours 96 %)
  Most oil that stays clear: 6.4 % to 14 %
  (yours 10.3 %)
  To mend it, one of these for the formula as
  written:
  [Change to 4.8 ml orange oil]
  [Change to 62 ml neutral spirit]
  [Change to 3.1 ml propylene glycol]
  [Scale it] [Aroma] [Map] [Another spirit]
  [More]
Ana: new Weak mist: orange oil 1 ml, neutral spirit 148 ml, water 700 ml, rest 24 h, aroma mist
  Weak mist is in the book.
  Weak mist: aroma mist, version 1
    orange oil             1 ml
    neutral spirit 96 %  148 ml
    water                700 ml
  Makes 838.6 ml at 16.9 % vol
  Rests 24 hours, discard after 6 days
  Weak or fresh: keep it refrigerated and ask
  your inspector how long.
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: will split, by estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: orange oil
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [orange oil: food grade] [Not sure]
  [Undo]
Ana: scale weak mist x1
  Weak mist: as written
    orange oil        1 ml
    neutral spirit  148 ml
    water           700 ml
  Makes 838.6 ml at 16.9 % vol
  Enough for 2,700 to 6,200 drinks
  Exact with: 1 ml syringe, 250 ml cylinder, 1 l
  cylinder.
  Clearing: will split, by estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: clear weak mist
  Weak mist: will split
  The cautious model sees it part in two; the
  hopeful one has no say in this much water,
  where it dissolves far too much oil.
  Weakest spirit that clears it: none is strong
  enough (yours 96 %)
  Most oil that stays clear: next to none (yours
  0.12 %)
  To mend it, one of these for the formula as
  written:
    more spirit  410 ml (+260 ml)
    less water   140 ml (−560 ml)
  At 20 °C, original and Dortmund UNIFAC. An
  estimate: real oils hold polar parts that help
  and waxes that drop out. The rested bottle
  decides.
  [Change to 410 ml neutral spirit]
  [Change to 140 ml water]
  [Scale it] [Aroma] [Map] [Another spirit]
Ana: new Gin punch: gin 40 % 90 ml, lime juice 500 ml, milk 410 ml, rest 1 h, infusion
  Gin punch is in the book.
  Gin punch: infusion, version 1
    gin 40 %     90 ml
    lime juice  500 ml
    milk        410 ml
  Makes 1,000 ml at 3.6 % vol
  Rests 1 hour, discard after 6 days
  Weak or fresh: keep it refrigerated and ask
  your inspector how long.
  Allergens to declare: milk. Also contains
  citrus.
  Caution: Use only spirit sold for drinking:
  cleaning, surgical and denatured alcohol is
  poison.
  [Scale] [Cost] [Make]
  [Change] [More]
  [Undo]
Ana: batch gin punch x1
  Batch 1: Gin punch, 1,000 ml
  Resting until Wed, 25 Nov 19:00. I will remind
  you.
  Check it again on 26 Nov 2026.
  Discard after 1 Dec 2026: weak or fresh, so
  shorter than its kind.
  Keep refrigerated.
  How long it may be kept where you are: ask
  your inspector.
  Caution: Fat, egg, milk and garlic can carry
  germs that nobody smells: keep it at 5 °C or
  below, use it within days, and ask your food
  inspector.
  [Show batch 1]
  [Note a lot] [Undo]
Ana: formula gin punch
  Gin punch: infusion, version 1
    gin 40 %     90 ml
    lime juice  500 ml
    milk        410 ml
  Makes 1,000 ml at 3.6 % vol
  Rests 1 hour, discard after 6 days
  Weak or fresh: keep it refrigerated and ask
  your inspector how long.
  Allergens to declare: milk. Also contains
  citrus.
  Caution: Use only spirit sold for drinking:
  cleaning, surgical and denatured alcohol is
  poison.
  [Scale] [Cost] [Make]
  [Change] [More]
Ana: batch grapefruit mist x1
  Batch 2: Grapefruit mist, 96 ml
  Resting until Thu, 26 Nov 18:00. I will remind
  you.
  Check it again on 25 Dec 2026.
  Discard after 24 May 2027: the usual time for
  its kind.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 2]
  [Note a lot] [Undo]
Ana: check 2 split
  Batch 2, Grapefruit mist: split.
  Two layers spray unevenly, so do not use it.
  Next: let it rest.
  Leave it closed at room temperature until Thu,
  26 Nov 18:00, then look again.
  Clear then: it only needed time. Still not:
  the next test.
  I will ask again in a day.
  [What would mend it?]
  [Discard] [Undo]
Ana taps [What would mend it?]
  Batch 2, split: let it rest
  Leave it closed at room temperature until Thu,
  26 Nov 18:00, then look again.
  Clear then: it only needed time. Still not:
  the next test.
  All tests:
    1 rested long enough    now
    2 room temperature    20 °C
    3 spirit's strength   to do
    4 water in glassware  to do
    5 too much oil        to do
    6 wax                 to do
  [Clear] [Hazy] [Split]
  [Next test]
Ana: dose grapefruit mist in 90 ml
  Grapefruit mist in 90 ml, 1 drink: under the
  limits
    mg in    a drink
    oil        14-32
    glycol     32-71
    ethanol   65-150
  Most that stays within it: 0.38 ml a drink (3
  sprays).
  Caution: Never flame a garnish over a drink
  that was just sprayed, nor serve it beside an
  open flame.
  [Sources]
  [In 60 ml] [In 150 ml] [2 drinks]
  [Weigh the sprayer]
  [More]
Ana: dose grapefruit mist in 90 ml, 3 drinks + 5 ml orange mist
  Grapefruit mist in 90 ml, 3 drinks: over a
  limit
    mg in
      a drink  3 drinks
    oil
      450-470  1,300-1,400
    glycol
      2,000-2,100  6,100-6,200
    ethanol
      2,000-2,100  6,000-6,300
  Most that stays within it: 0 ml a drink (0
  sprays); or a drink of 2,060 ml or at most 0 %
  glycol in the mix.
  Caution: Never flame a garnish over a drink
  that was just sprayed, nor serve it beside an
  open flame.
  [Sources]
  [In 60 ml] [In 150 ml] [4 drinks]
  [Weigh the sprayer]
  [More]
Ana: scale grapefruit mist to 400 ml in grams at 30 C
  Grapefruit mist: 400 ml
    grapefruit oil     42.3 g
    propylene glycol   94.3 g
    neutral spirit    206.3 g
    Total             342.9 g
  Makes 400 ml at 62 % vol
  Enough for 1,300 to 3,000 drinks
  In place of ml measured at 30 °C.
  What it makes is measured at 30 °C too; at 20
  °C it is 396 ml.
  grapefruit oil: 42.1 g to 42.5 g, the range
  its standard allows.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In ml] [Densities]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: weigh Blue 152.31 150.55 148.85 147.21 145.62 144.10 20 sprays with grapefruit mist
  Blue: 0.0948 ml a spray (5 runs)
    mean                   0.0948 ml
    spread of runs         0.0054 ml
    95 % interval   0.0881-0.1016 ml
    drinks in 50
    ml                       164-283
  Each run gives less than the one before, 14 %
  less by the last: is the nozzle clogging?
  With Grapefruit mist in it. Not in use yet.
  [Next run from 144.1 g] [Undo]
  [Use it for Grapefruit mist]
  [Use it for all sprays]
Ana: new Lemon spirit: neutral spirit 500 ml, lemon peel 80 g, rest 48 h, infusion
  Lemon spirit is in the book.
  Lemon spirit: infusion, version 1
    neutral spirit 96 %  500 ml
    lemon peel             80 g
  Makes 500 ml at 96 % vol
  Rests 48 hours, discard after 30 days
  Weak or fresh: keep it refrigerated and ask
  your inspector how long.
  No listed allergen by name. Contains citrus.
  Caution: Use only spirit sold for drinking:
  cleaning, surgical and denatured alcohol is
  poison.
  [Scale] [Cost] [Make]
  [Change] [More]
  [Undo]
Ana: strength lemon spirit
  Lemon spirit: 96 % vol
    Poured in      500 ml
    Makes          500 ml
    Ethanol in it  480 ml
  Not counted: lemon peel.
  Fresh fruit gives it water: 86 to 96 % vol
  once strained. Measure what comes out.
  It can light from about 14 °C upwards: highly
  flammable (category 2: flashes below 23 °C).
  An estimate, some degrees off either way.
  [Scale] [Another spirit]
