# Back, cancel, another command in the middle, and a new process in the middle of a question.
@after mist

Ana: waste
  What was thrown out?
  [grapefruit] [orange]
  [lemon] [lime]
  [Cancel]
Ana taps [orange]
  (edited)
  How many oranges?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana taps [Back]
  (edited)
  What was thrown out?
  [grapefruit] [orange]
  [lemon] [lime]
  [Cancel]
Ana taps [lemon]
  (edited)
  How many lemons?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana: cancel
  Cancelled. Nothing was logged.
Ana: cancel
  Nothing is in progress.
Ana: batch
  How much of Grapefruit mist?
  [4 x 50 ml] [8 x 50 ml] [4 x 100 ml]
  [as written] [double]
  [Cancel]
@restart
Ana: 8 x 50 ml
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
Ana: waste
  What was thrown out?
  [grapefruit] [lemon]
  [orange] [lime]
  [Cancel]
Ana: scale grapefruit mist x2
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
Ana: 3 lemons
  Logged: 3 lemons.
  No price for lemon: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lemon]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: 6 oranges mouldy, 2 limes
  Logged 2 lines
    6 oranges  mouldy  no price
    2 limes            no price
  No price for lime, orange: not in the cost.
  Why the 2 limes? One tap is enough.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: 12 ml grapefruit oil
  I'm not sure what you want. One of these?
  For example: waste 6 limes mouldy
  [bought 12 ml grapefruit oil]
  [count grapefruit oil 12 ml]
  [density Grapefruit mist]
Ana: waste
  What was thrown out?
  [lime] [orange]
  [lemon] [grapefruit]
  [Cancel]
Ana: limes
  How many limes?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana: scale grapefruit mist x2
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
  --
  How many limes?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana: waste 4 limes
  Logged: 4 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: discard
  Which batch?
  [1 Grapefruit mist]
  [Cancel]
Ana taps [1 Grapefruit mist]
  (edited)
  How much goes?
  [all of it (402 ml)]
  [half (201 ml)]
  [a quarter (100.5 ml)]
  [Back] [Cancel]
Ana taps [Back]
  (edited)
  Which batch?
  [1 Grapefruit mist]
  [Cancel]
Ana taps [1 Grapefruit mist]
  (edited)
  How much goes?
  [all of it (402 ml)]
  [half (201 ml)]
  [a quarter (100.5 ml)]
  [Back] [Cancel]
Ana taps [half (201 ml)]
  (edited)
  Why?
  [past its date] [split]
  [smells off] [spilt]
  [Back] [Cancel]
Ana: /cancel
  Cancelled. Nothing was logged.
