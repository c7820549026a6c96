# A price that comes after the waste counts from then on; the report says which part has none.
@after opening

Ana: waste 3 limes mouldy
  Logged: 3 limes, mouldy.
  No price for lime: not in the cost.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
Ana taps [Price of lime]
  (edited)
  What does lime cost? Such as: 0.60 each
  [Back] [Cancel]
Ana: 0.30
  How many garnishes per fruit?
  [4] [5] [6]
  [8] [10] [12]
  [Back] [Cancel]
Ana taps [5]
  (edited)
  lime: €0.30 each
  5 garnishes each: €0.060 a garnish before
  waste
  It counts from now on: the 3 thrown out before
  stay without a price.
  [Undo] [Another price]
Ana: waste 2 limes mouldy
  Logged: 2 limes, mouldy, €0.60.
  Wed, 25 Nov so far: €0.60
  [Undo] [More waste]
Ana: week
  Waste: €0.60
  Mon, 23 Nov to Sun, 29 Nov, still running
    lime  5  €0.60
    mouldy  5  €0.60
  Without a price, so not counted: lime (3 of
  5).
  Nothing logged to compare with: Mon, 16 Nov to
  Wed, 18 Nov.
  <picture waste-2026-W48.png>
  [More] [Picture]
  [Last week] [Log waste]

# Last week said in other words is last week.
Ana: report of last week
  Read as: week last week
  No waste logged
  Mon, 16 Nov to Sun, 22 Nov
  Nothing logged to compare with: Mon, 9 Nov to
  Sun, 15 Nov.
  [Log waste]
Ana: how did last month go
  Read as: month last month
  No waste logged
  Thu, 1 Oct to Sat, 31 Oct
  Nothing logged to compare with: Tue, 1 Sept to
  Wed, 30 Sept.
  [Log waste]

# A spray with its own prices is no guess.
Ana: new grapefruit mist: 10 ml grapefruit oil, 190 ml neutral spirit
  grapefruit mist is in the book.
  grapefruit mist: aroma mist, version 1
    grapefruit oil   10 ml
    neutral spirit  190 ml
  Makes 200 ml
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  How strong is neutral spirit? Say: strength
  neutral spirit 96
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
  [Undo]
Ana: change grapefruit mist: replaces grapefruit
  grapefruit mist is now version 2. Batches keep
  the version they were made with.
  grapefruit mist: aroma mist, version 2
    grapefruit oil   10 ml
    neutral spirit  190 ml
  Makes 200 ml
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each,
  instead of fresh grapefruit
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  How strong is neutral spirit? Say: strength
  neutral spirit 96
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
  [Undo]
Ana: par grapefruit oil 50 ml
  grapefruit oil: I remind you below 50 ml.
  It was never counted, so count it once: stock
  grapefruit oil 1.4 l
  [Undo] [All stock]
Ana: shopping
  To buy by Wed, 2 Dec: no price yet
    grapefruit oil  50 ml  ?
  Never counted, so I assume none: grapefruit
  oil
  No price, so not in the sum: grapefruit oil
  [Plan] [Stock]
Ana: switch grapefruit: 1.10, 6, 120, 5
  Cash: €18 to €27 a week saved, as a guess
  Fresh grapefruit costs €27.50 a week now, a
  spray about €2.15 to €9.11.
  I took a drink's spray to cost 5 to 50 % of a
  cut garnish: a guess, no source. With a price
  for grapefruit oil and neutral spirit I use
  your grapefruit mist instead.
  Time, apart: from 6 min more to 16 min less a
  week.
  Nobody knows yet, and it matters most: what
  the spray costs (moves it by €9.90) and drinks
  a week (moves it by €7.33).
  To show a drop 8 times in 10, beside another
  fruit, log so long before and again after:
    30 % less  766 nights  110 weeks
    50 % less  229 nights   33 weeks
    70 % less   97 nights   14 weeks
  I took counts to vary 2 times as much as by
  chance: common practice, no source.
  Stop if the spray costs over €0.229 a drink,
  if tasters can tell and mind, or if those
  nights show no drop.
  [Log waste] [What grapefruit mist costs]
Ana: price grapefruit oil 10 ml 9.90
  grapefruit oil: €9.90 for 10 ml
  [Undo] [Another price]
Ana: price neutral spirit 1 l 18
  neutral spirit: €18.00 for 1 l
  [Undo] [Another price]
Ana: switch grapefruit: 1.10, 6, 120, 5
  Cash: €22 to €29 a week saved, as a guess
  Fresh grapefruit costs €27.50 a week now, a
  spray about €1.23 to €2.25.
  The spray is your grapefruit mist at your
  prices: €0.009 to €0.020 a drink.
  Time, apart: from 6 min more to 16 min less a
  week.
  Nobody knows yet, and it matters most: drinks
  a week (moves it by €8.11) and fruit thrown
  out a week (moves it by €5.50).
  To show a drop 8 times in 10, beside another
  fruit, log so long before and again after:
    30 % less  766 nights  110 weeks
    50 % less  229 nights   33 weeks
    70 % less   97 nights   14 weeks
  I took counts to vary 2 times as much as by
  chance: common practice, no source.
  Stop if the spray costs over €0.229 a drink,
  if tasters can tell and mind, or if those
  nights show no drop.
  [Log waste] [What grapefruit mist costs]
Ana: cost grapefruit mist for 1 drink
  grapefruit mist, 1 drink: €0.021
    grapefruit oil  €0.015
    neutral spirit  €0.005
    Contents of a
    50 ml bottle               €3.26
    a spray         €0.004 to €0.007
    a drink         €0.009 to €0.020
  The sum is for the most you spray, 3 a drink,
  in amounts your tools measure.
  Cash for 2 whole packs: €27.90
  To compare with fresh grapefruit, say: price
  grapefruit 0.60 each, 5 garnishes each
  [Amounts] [Log this batch]
