# From a bottle used up and drinks counted to the next batch and the shopping list.
@after mist

Ana: plan
  I can't plan yet: I don't know how much you
  use.
  Say it: bar drinks a week 300. Or count a
  night: drinks 60 Grapefruit mist
  [Batches] [Fruit]
Ana: drinks
  No drinks were counted yet.
  At close: drinks 140. Or for the night before:
  drinks 140 yesterday
  With one formula or garnish: drinks 60
  Grapefruit mist
Ana: price neutral spirit 1 l 24
  neutral spirit: €24.00 for 1 l
  [Undo] [Another price]
Ana: price grapefruit oil 10 ml 7.90
  grapefruit oil: €7.90 for 10 ml
  [Undo] [Another price]
Ana: batch grapefruit mist to 200 ml
  Batch 1: Grapefruit mist, 201 ml
  Resting until Thu, 26 Nov 18:00. I will remind
  you.
  Check it again on 25 Dec 2026.
  Discard after 24 May 2027: the usual time for
  its kind.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 1]
  [Note a lot] [Undo]
@clock + 25 h
Ana: open 1
  Batch 1, Grapefruit mist, is in use.
  Nobody has seen it clear yet.
  Opening it started another clock: time since
  the bottle was opened.
  Discard after 24 Feb 2027, 90 days left
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Used up] [Undo]
Ana: drinks 100
  Thu, 26 Nov: 100 drinks.
  [Undo] [By weekday] [Plan]
@clock + 1 day
Ana: drinks 240
  Fri, 27 Nov: 240 drinks.
  [Undo] [By weekday] [Plan]
@clock + 1 day
Ana: drinks 260
  Sat, 28 Nov: 260 drinks.
  [Undo] [By weekday] [Plan]
Ana: drinks 120 2026-11-25
  Wed, 25 Nov: 120 drinks.
  [Undo] [By weekday] [Plan]
Ana: drinks 12 soon
  “soon” is not on the drink list.
  [Add soon] [Drink list]
Ana: drinks
  Drinks a night, by weekday
         mean  nights
    Wed   120       1
    Thu   100       1
    Fri   240       1
    Sat   260       1
  Last: Sat, 28 Nov, 260
  [Plan]
@clock + 5 days
Ana: used 1
  Batch 1, Grapefruit mist, is used up.
  It lasted 7 days.
  [Make it again] [Undo]
Ana: plan
  Make 380 ml Grapefruit mist today.
    Grapefruit
    mist          Thu, 3 Dec  380 ml
  You'll run out before the next is ready:
  Grapefruit mist
  Less than a week counted, so a rough guess:
  Grapefruit mist
  [Grapefruit mist]
  [Shopping list] [Fruit]
Ana taps [Grapefruit mist]
  Make 380 ml Grapefruit mist on Thu, 3 Dec.
  What you have lasts to Wed, 2 Dec. The new one
  is ready Fri, 4 Dec; discard it after 1 Jun
  2027.
  You'd use about 2,580 ml before it expires (9
  in 10).
  1 day without it: it rests longer than your
  stock lasts.
  You use about, a day:
    Mon  27 ml
    Tue  27 ml
    Wed  23 ml
    Thu  17 ml
    Fri  32 ml
    Sat  34 ml
    Sun  27 ml
  From 3 nights counted: 9 in 10 between 12 ml
  and 47 ml a day.
  [Make it] [Shopping list] [Plan]
Ana taps [Shopping list]
  To buy by Thu, 10 Dec: €63.50
    grapefruit
    oil            5 x 10 ml  €39.50
    propylene
    glycol           87.1 ml       ?
    neutral
    spirit           1 x 1 l  €24.00
  For: Grapefruit mist 380 ml
  Less than a week counted, so a rough guess:
  Grapefruit mist
  Never counted, so I assume none: grapefruit
  oil, propylene glycol, neutral spirit
  No price, so not in the sum: propylene glycol
  [Plan] [Stock]
Ana: drinks 60 grapefruit mist
  Thu, 3 Dec: 60 drinks with Grapefruit mist.
  [Undo] [By weekday] [Plan]
Ana: undo
  Undone: 60 drinks
  [Put it back]
# Fresh fruit: what too few and too many cost, by the nights that were counted.
Ana: fruit par
  I cannot say yet how much fruit to have.
  Count what is there at close, log what is
  peeled, or count drinks: drinks 45 grapefruit
Ana: price oranges 0.60 each, 5 garnishes each
  orange: €0.60 each
  5 garnishes each: €0.120 a garnish before
  waste
  New here: orange.
  [Undo] [Another price]
Ana: drinks 40 orange
  Thu, 3 Dec: 40 drinks with orange.
  [Undo] [By weekday] [Plan]
Ana: drinks 52 orange yesterday
  Wed, 2 Dec: 52 drinks with orange.
  [Undo] [By weekday] [Plan]
Ana: drinks 30 orange 2 days ago, ran out
  Tue, 1 Dec: 30 drinks with orange.
  It ran out, so people may have wanted more.
  [Undo] [By weekday] [Plan]
Ana: plan fruit
  Fruit to have in the morning
  orange: Tue 6, Wed 11, Thu 8
  Few weeks of data, so a rough guess: orange
  [orange]
  [Plan]
Ana taps [orange]
  orange: how many to have in the morning
         have  between  nights
    Tue    6+      ?-?       1
    Wed    11      ?-?       1
    Thu     8      ?-?       1
  By drinks counted with this garnish.
  Nobody counts what is left at close, so I
  assume all of it is lost.
  Running one short costs 2 times its price, so
  have enough on 67 % of nights.
  Few weeks of data, so a rough guess; the best
  number is in that range, about 4 chances in 5.
  “?”: too few nights yet to say where it ends.
  It ran out on some nights (+): the true number
  may be higher.
  [All fruit] [Plan]
