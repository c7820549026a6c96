# A question swallows no words: what cannot be done is said before asking, a refused dialogue is closed, and
# a line of waste is that while something else is asked.
@after mist

Ana: batch grapefruit mist to 400 ml
  Batch 1: Grapefruit mist, 402 ml
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
Ana: used 1
  Batch 1, Grapefruit mist, is used up.
  It lasted less than an hour.
  [Make it again] [Undo]
Ana: discard 1
  Batch 1 is used up.
Ana: 4 grapefruits
  Logged: 4 grapefruits.
  No price for grapefruit: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of grapefruit]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: check 1
  Batch 1 is used up.
Ana: open 1
  Batch 1 is used up.
Ana: bar closing hour
  What should closing hour be?
  Now: 05:00
  [05:00] [04:00]
  [03:00] [02:00]
  [Back] [Cancel]
Ana: 4 grapefruits
  Logged: 4 grapefruits.
  No price for grapefruit: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of grapefruit]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  --
  What should closing hour be?
  Now: 05:00
  [05:00] [04:00]
  [03:00] [02:00]
  [Back] [Cancel]
Ana: 04:00
  Closing hour: 04:00
  [Hours and reminders]
  [All settings] [Undo]
Ana: bar waste reasons
  What should waste reasons be?
  Now: mouldy, dried out, peeled and not used,
  over-prepped, damaged on delivery, other
  [usual]
  [Back] [Cancel]
Ana: 3 limes
  Logged: 3 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  --
  What should waste reasons be?
  Now: mouldy, dried out, peeled and not used,
  over-prepped, damaged on delivery, other
  [usual]
  [Back] [Cancel]
Ana: cancel
  Cancelled. Nothing was logged.
Ana: waste
  What was thrown out?
  [grapefruit] [lime]
  [orange] [lemon]
  [Cancel]
Ana: oranges
  How many oranges?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana: 2
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ana: 4 grapefruits
  Logged: 4 grapefruits.
  No price for grapefruit: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of grapefruit]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  --
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ana: mouldy
  Logged: 2 oranges, mouldy.
  No price for orange: not in the cost.
  [Undo] [More waste]
  [Price of orange]
Ana: count oranges
  How many oranges?
  [0] [6] [12]
  [24] [40] [80]
  [Other number]
  [Back] [Cancel]
Ana: 4 grapefruits
  Read as: waste 4 grapefruits
  Nothing is logged yet. Tap if that is right.
  [waste 4 grapefruits]
  --
  How many oranges?
  [0] [6] [12]
  [24] [40] [80]
  [Other number]
  [Back] [Cancel]
Ana: used
  There is no batch with anything left in it.
  [Make a batch]
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
Ana: discard 2
  How much goes?
  [all of it (201 ml)]
  [half (100.5 ml)]
  [a quarter (50.2 ml)]
  [Back] [Cancel]
Ana: 4 grapefruits
  Logged: 4 grapefruits.
  No price for grapefruit: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of grapefruit]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  --
  How much goes?
  [all of it (201 ml)]
  [half (100.5 ml)]
  [a quarter (50.2 ml)]
  [Back] [Cancel]
Ana: 40 ml
  Why?
  [past its date] [split]
  [smells off] [spilt]
  [Back] [Cancel]
Ana: spilt
  Batch 2, Grapefruit mist, is discarded: 40 ml.
  Why: spilt
  Caution: Soak rags wet with citrus oil or shut
  them in a metal bin: in a heap they can light
  themselves.
  [Make it again] [Undo]
# A whole command logs, and the question of another stays; what is dropped is said.
Ana: bar closing hour
  What should closing hour be?
  Now: 04:00
  [05:00] [04:00]
  [03:00] [02:00]
  [Back] [Cancel]
Ana: waste 4 limes mouldy
  Logged: 4 limes, mouldy.
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]
  --
  What should closing hour be?
  Now: 04:00
  [05:00] [04:00]
  [03:00] [02:00]
  [Back] [Cancel]
Ana: 05:00
  Closing hour: 05:00
  [Hours and reminders]
  [All settings] [Undo]
Ana: waste
  What was thrown out?
  [grapefruit] [lime]
  [orange] [lemon]
  [Cancel]
Ana: oranges
  How many oranges?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana: waste 4 limes mouldy
  Logged: 4 limes, mouldy.
  No price for lime: not in the cost.
  Unfinished and dropped: waste oranges
  [Undo] [More waste]
  [Price of lime]
Ana: scale
  How much of Grapefruit mist?
  [4 x 50 ml] [8 x 50 ml] [4 x 100 ml]
  [as written] [double]
  [Cancel]
Ana: waste 4 limes mouldy
  Logged: 4 limes, mouldy.
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]
  --
  How much of Grapefruit mist?
  [4 x 50 ml] [8 x 50 ml] [4 x 100 ml]
  [as written] [double]
  [Cancel]
Ana: peeled lemons
  How many lemons?
  Unfinished and dropped: scale Grapefruit mist
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana: cancel
  Cancelled. Nothing was logged.
