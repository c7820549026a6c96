# An edited message is a correction: the log follows, and shows both.
@after mist

Ana: price limes 0.30 each
  lime: €0.30 each
  New here: lime.
  [Undo] [Another price]
Ana: waste 6 limes mouldy
  Logged: 6 limes, mouldy, €1.80.
  Wed, 25 Nov so far: €1.80
  [Undo] [More waste]
Ana edits: waste 4 limes mouldy
  Corrected: 4 limes instead of 6, still mouldy
  Wed, 25 Nov so far: €1.20
  [Undo] [More waste]
Ana edits: waste 4 limes dried out
  Corrected: 4 limes, dried out instead of
  mouldy
  Wed, 25 Nov so far: €1.20
  [Undo] [More waste]
Ana: week
  Waste: €1.20
  Mon, 23 Nov to Sun, 29 Nov, still running
    lime  4  €1.20
    dried out  4  €1.20
  Nothing logged to compare with: Mon, 16 Nov to
  Wed, 18 Nov.
  <picture waste-2026-W48.png>
  [More] [Picture]
  [Last week] [Log waste]
Ana: log
  Log of The Copper Gull, newest first
  #5 Wed, 25 Nov 18:00, Ana: waste: 4 limes,
  dried out (instead of #4)
  #4 Wed, 25 Nov 18:00, Ana: waste: 4 limes,
  mouldy (instead of #3) (now #5)
  #3 Wed, 25 Nov 18:00, Ana: waste: 6 limes,
  mouldy (now #4)
  #2 Wed, 25 Nov 18:00, Ana: price of lime,
  €0.30 each
  #1 Wed, 25 Nov 18:00, Ana: wrote down
  Grapefruit mist
  [Undo #5] [Undo #2] [Undo #1]

# What cannot be read changes nothing.
Ana: waste 2 lemons
  Logged: 2 lemons.
  No price for lemon: not in the cost.
  Wed, 25 Nov so far: €1.20
  Why? One tap is enough.
  New here: lemon.
  [Undo] [More waste]
  [Price of lemon]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana edits: waste two or three lemoons, maybe
  or three lemoons: lemons, or a new fruit?
  Nothing changed.
  [lemons]
  [New fruit: or three lemoon]
  [Cancel]
  [Undo]
Ana edits: good night
  I couldn't read the edit.
  Nothing changed.
  [Undo]

# An answer to a question in progress.
Ana: scale
  How much of Grapefruit mist?
  [4 x 50 ml] [8 x 50 ml] [4 x 100 ml]
  [as written] [double]
  [Cancel]
Ana: grapefruit mist
  Read as: formula Grapefruit mist
  Grapefruit mist: aroma mist, version 1
    grapefruit oil       12 ml
    propylene glycol     22 ml
    neutral spirit 96 %  62 ml
  Makes 96 ml at 62 % vol
  Rests 24 hours, discard after 180 days
  Clearing: borderline, it may cloud, by
  estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
Ana edits: grapefrut fog
  I'm not sure what you want. One of these?
  For example: waste 6 limes mouldy
  [Will it stay clear?]
  [The language I speak with you]
Ana: cancel
  Nothing was logged.
Ana: waste
  What was thrown out?
  [lime] [lemon]
  [grapefruit] [orange]
  [Cancel]
Ana: lemons
  How many lemons?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana edits: limes
  How many limes?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana: 3
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ana edits the one before: lemons
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ana: mouldy
  Logged: 3 lemons, mouldy.
  No price for lemon: not in the cost.
  Wed, 25 Nov so far: €1.20
  [Undo] [More waste]
  [Price of lemon]

# A day later it is too late.
Ana: waste 1 lime mouldy
  Logged: 1 lime, mouldy, €0.30.
  Wed, 25 Nov so far: €1.50
  [Undo] [More waste]
@clock +25 h
Ana edits: waste 2 limes mouldy
  That was logged more than 24 hours ago and
  stays as it is.
  Log the opposite instead, so that the record
  shows both.
