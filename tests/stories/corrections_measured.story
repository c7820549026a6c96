# A correction keeps the unit and the size of what was logged, and a reason said later is one.
@after mist

Ana: batch grapefruit mist to 412 ml
  Batch 1: Grapefruit mist, 411 ml
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
Ana: check 1 clear
  Batch 1, Grapefruit mist: clear.
  It rests until Thu, 26 Nov 18:00 all the same;
  check once more then.
  [Open it] [Undo]
Ana: bottled 1 4 x 50 ml, lost 12 ml
  Batch 1, Grapefruit mist, in bottles: 4 x 50
  ml.
  Now: 4 of 4 x 50 ml unopened, 199 ml not
  bottled, 12 ml lost.
  [4 labels] [Open one]
  [Undo]
Ana: sorry 3 bottles
  Corrected: bottling of batch 1
  Batch 1, Grapefruit mist, in bottles: 3 x 50
  ml.
  Now: 3 of 3 x 50 ml unopened, 249 ml not
  bottled, 12 ml lost.
  [3 labels] [Open one]
  [Undo]
Ana: spilled 100 ml of batch 1
  Batch 1, Grapefruit mist: 100 ml lost.
  Now: 3 of 3 x 50 ml unopened, 149 ml not
  bottled, 112 ml lost.
  [Show batch 1] [Undo]
Ana: sorry, 150
  Corrected: 150 ml lost of batch 1 instead of
  100 ml lost of batch 1
  Batch 1, Grapefruit mist: 150 ml lost.
  Now: 3 of 3 x 50 ml unopened, 99 ml not
  bottled, 162 ml lost.
  [Show batch 1] [Undo]
Ana: undo
  Undone: 150 ml lost of batch 1
  [Put it back]
Ana: waste 2 kg lemons
  Logged: 2 kg lemons.
  No price for lemon: not in the cost.
  Why? One tap is enough.
  New here: lemon.
  [Undo] [More waste]
  [Price of lemon]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: sorry, 2 lemons not 2 kg
  Corrected: 2 lemons instead of 2 kg lemons
  No price for lemon: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lemon]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: the lemons were dried out
  Corrected: 2 lemons, dried out
  No price for lemon: not in the cost.
  [Undo] [More waste]
  [Price of lemon]
Ana: waste 3 limes
  Logged: 3 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: the lemons were mouldy
  Corrected: 2 lemons, mouldy instead of dried
  out
  No price for lemon: not in the cost.
  [Undo] [More waste]
  [Price of lemon]
Ana: they were 3 lemons, not 2
  Corrected: 3 lemons instead of 2, still mouldy
  No price for lemon: not in the cost.
  [Undo] [More waste]
  [Price of lemon]
