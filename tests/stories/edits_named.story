# The new words of an edit name something new: what the tap logs stands in the place of the old entry.
@after opening

Ana: waste 6 limes mouldy
  Logged: 6 limes, mouldy.
  No price for lime: not in the cost.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
Ana edits: waste 4 soft limes mouldy
  soft limes: limes, or a new fruit?
  Nothing changed.
  [limes]
  [New fruit: soft lime]
  [Cancel]
  [Undo]
Ana taps [limes]
  (edited)
  Corrected: 4 limes instead of 6, still mouldy
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]
Ana: log
  Log of The Copper Gull, newest first
  #3 Wed, 25 Nov 18:00, Ana: waste: 4 limes,
  mouldy (instead of #1)
  #2 Wed, 25 Nov 18:00, Ana: soft limes means
  lime
  #1 Wed, 25 Nov 18:00, Ana: waste: 6 limes,
  mouldy (now #3)
  [Undo #3] [Undo #2]
Ana: week
  Waste: no prices yet
  Mon, 23 Nov to Sun, 29 Nov, still running
    lime  4  no price
    mouldy  4  no price
  Without a price, so not counted: lime.
  Nothing logged to compare with: Mon, 16 Nov to
  Wed, 18 Nov.
  [More] [Picture]
  [Last week] [Log waste]

# So does an amount that is confirmed by a tap.
Ana: waste 2 limes
  Logged: 2 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana edits: waste 5000 limes
  5,000 limes?
  Nothing changed.
  [Yes, 5,000 limes]
  [Cancel]
  [Undo]
Ana taps [Yes, 5,000 limes]
  (edited)
  Corrected: 5,000 limes instead of 2
  No price for lime: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: week
  Waste: no prices yet
  Mon, 23 Nov to Sun, 29 Nov, still running
    lime  5,004  no price
    no reason given  5,000  no price
    mouldy               4  no price
  Without a price, so not counted: lime.
  Nothing logged to compare with: Mon, 16 Nov to
  Wed, 18 Nov.
  [More] [Picture]
  [Last week] [Log waste]

# And a correction in words.
Ana: waste 3 lemons mouldy
  Logged: 3 lemons, mouldy.
  No price for lemon: not in the cost.
  New here: lemon.
  [Undo] [More waste]
  [Price of lemon]
Ana: sorry, squashy limes
  squashy limes: limes, or a new fruit?
  [limes]
  [New fruit: squashy lime]
  [Cancel]
Ana taps [limes]
  (edited)
  Corrected: 3 limes instead of 3 lemons, still
  mouldy
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]
Ana: week
  Waste: no prices yet
  Mon, 23 Nov to Sun, 29 Nov, still running
    lime  5,007  no price
    no reason given  5,000  no price
    mouldy               7  no price
  Without a price, so not counted: lime.
  Nothing logged to compare with: Mon, 16 Nov to
  Wed, 18 Nov.
  [More] [Picture]
  [Last week] [Log waste]

# A message that logged two things is edited to one.
Ana: waste 1 lime mouldy\
price limes 0.30 each
  Logged: 1 lime, mouldy.
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]
  --
  lime: €0.30 each
  It counts from now on: the 5,008 thrown out
  before stay without a price.
  [Undo] [Another price]
Ana edits: waste 2 tired limes mouldy
  tired limes: limes, or a new fruit?
  Nothing changed.
  [limes]
  [New fruit: tired lime]
  [Cancel]
  [Undo]
Ana taps [limes]
  (edited)
  Corrected: 2 limes instead of 1, still mouldy
  Undone: price of lime, €0.30 each
  Logged: 2 limes, mouldy.
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]
Ana: log
  Log of The Copper Gull, newest first
  #13 Wed, 25 Nov 18:00, Ana: undid #10
  #12 Wed, 25 Nov 18:00, Ana: waste: 2 limes,
  mouldy (instead of #9)
  #11 Wed, 25 Nov 18:00, Ana: tired limes means
  lime
  #10 Wed, 25 Nov 18:00, Ana: price of lime,
  €0.30 each (undone by #13)
  #9 Wed, 25 Nov 18:00, Ana: waste: 1 lime,
  mouldy (now #12)
  #8 Wed, 25 Nov 18:00, Ana: waste: 3 limes,
  mouldy (instead of #6)
  #7 Wed, 25 Nov 18:00, Ana: squashy limes means
  lime
  #6 Wed, 25 Nov 18:00, Ana: waste: 3 lemons,
  mouldy (now #8)
  #5 Wed, 25 Nov 18:00, Ana: waste: 5,000 limes
  (instead of #4)
  #4 Wed, 25 Nov 18:00, Ana: waste: 2 limes (now
  #5)
  [Undo #12] [Undo #11] [Undo #8]
  [Older]
