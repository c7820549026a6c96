# How many pieces, in words: halves, dozens, names from another language, and far too many.
@after opening

Ana: waste 0.5 lemons
  Logged: half a lemon.
  No price for lemon: not in the cost.
  Why? One tap is enough.
  New here: lemon.
  [Undo] [More waste]
  [Price of lemon]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste half an orange mouldy
  Logged: half an orange, mouldy.
  No price for orange: not in the cost.
  New here: orange.
  [Undo] [More waste]
  [Price of orange]
Ana: waste 0.3 limes
  Logged: 0.3 lime.
  No price for lime: not in the cost.
  Why? One tap is enough.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste 1.5 lemons mouldy
  Logged: 1.5 lemons, mouldy.
  No price for lemon: not in the cost.
  [Undo] [More waste]
  [Price of lemon]
Ana: waste 1 dozen lemon mouldy
  Logged: 12 lemons, mouldy.
  No price for lemon: not in the cost.
  [Undo] [More waste]
  [Price of lemon]
Ana: waste 4 limóns
  limóns: lemons, limes, or a new fruit?
  [lemons]
  [limes]
  [New fruit: limón]
  [Cancel]
Ana: waste 2 limones mouldy
  limones: lemons, limes, or a new fruit?
  [lemons]
  [limes]
  [New fruit: limón]
  [Cancel]
Ana: waste 1000000 limes
  That is too much for one entry: 100,000 at
  most.
Ana: waste 0 limes
  An amount above zero, please: 6, or 1.2 kg.
Ana: week
  Waste: no prices yet
  Mon, 23 Nov to Sun, 29 Nov, still running
    lemon    14  no price
    lime    0.3  no price
    orange  0.5  no price
    no reason given  0.8  no price
    mouldy            14  no price
  Without a price, so not counted: lemon, lime,
  orange.
  Nothing logged to compare with: Mon, 16 Nov to
  Wed, 18 Nov.
  [More] [Picture]
  [Last week] [Log waste]
