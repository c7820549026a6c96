# Fruit that was weighed leaves parts of a fruit in the book; and a book that says less than nothing.
@after mist

Ana: count limes 40
  Counted: 40 limes.
  First count. After the next one I'll know what
  you used.
  New here: lime.
  [Undo] [Count more]
Ana: waste 250 g limes mouldy
  Logged: 250 g limes, mouldy.
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]
Ana: stock limes
  lime: 37 pieces on hand.
  Counted Wed, 25 Nov, less what batches took
  since.
  [Count it] [Bought]
  [Par] [All stock]
Ana: waste 45 limes mouldy
  Logged: 45 limes, mouldy.
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]
Ana: stock limes
  lime: 0 pieces on hand.
  Counted Wed, 25 Nov, less what batches took
  since.
  8.1 pieces more used than came in: please
  count it.
  [Count it] [Bought]
  [Par] [All stock]
Ana: stock
  1 ingredient on hand
    lime  0 pieces
  More used than came in, so please count: lime
  [Count something] [Bought]
  [What can I make?] [Shopping list]
