# A blind trial in one line; who did not taste a bottle is not counted for it.
@after mist

Ana: blind tasting 1 against 2
  There is no batch 1 in this bar.
Ana: batch grapefruit mist to 100 ml
  Batch 1: Grapefruit mist, 100.5 ml
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
Ana: batch grapefruit mist to 200 ml
  Batch 2: Grapefruit mist, 201 ml
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
Ana: blind tasting 1 against 2
  I can't set two batches against each other.
  A blind trial sets a formula against a variant
  of it: the bottles carry letters in random
  order until it ends. Or it sets a spray
  against fresh fruit.
  [Blind trial of Grapefruit mist]
Ana: blind trial grapefruit mist: grapefruit oil 14 ml
  How much of each?
  [20 ml] [50 ml] [100 ml]
  [Back] [Cancel]
Ana taps [50 ml]
  (edited)
  Trial 1 of Grapefruit mist begins.
  Whoever fills them checks the letters; tasters
  don't.
  Against the formula: grapefruit oil 14 ml
  50 ml of each.
  [Taste] [Another variant]
  [Log the batches] [Which is which?]
  [Undo]
Ana: taste A 4 3 5 2
  A is scored.
  aroma 4, brightness 3, how long it lasts 5,
  bitterness 2.
  [Taste B] [See the trial]
  [Undo]
Ana: trial close 1
  Trial 1, Grapefruit mist: A, B, over
  50 ml of each.
                          A        B
    grapefruit oil   6.2 ml     7 ml
    propylene
    glycol          11.5 ml    11 ml
    neutral spirit  32.5 ml  31.5 ml
                A
    aroma       4
    brightness  3
    lasting     5
    bitterness  2
  Not all tasted every bottle. Tasters: A 1, B
  0.
  [Formula]
  [Promote B]
  [Undo]
Ana: compare grapefruit mist with fresh grapefruit
  Can't compare Grapefruit mist with fresh yet.
  Price the fruit: price grapefruit 0.60 each, 5
  garnishes each
  [Cost]
