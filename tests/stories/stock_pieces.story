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
# 'at' prices one, 'for' prices all of it, and a measure prices that measure; the other meaning is a tap
Ana: bought 80 oranges at 0.40
  Bought: 80 oranges, €32.00.
  Price from now on: €0.40 each.
  New here: orange.
  [€0.40 was for all]
  [Undo] [More that came in]
Ana taps [€0.40 was for all]
  (edited)
  Bought: 80 oranges, €0.40.
  Price from now on: €0.40 for 80 pieces.
  [€0.40 was for one]
  [Undo] [More that came in]
Ana taps [€0.40 was for one]
  (edited)
  Bought: 80 oranges, €32.00.
  Price from now on: €0.40 each.
  [Undo] [More that came in]
Ana: bought 2 kg limes at 3.20 a kg
  Bought: 2 kg limes, €6.40.
  Price from now on: €3.20 for 1 kg.
  Should be on hand: 16.9 limes
  [Undo] [More that came in]
Ana: bought 24 oranges 3 a kg
  That price is not in the measure of the
  amount.
  Write what it cost in all, such as: 80 oranges
  34.00
Ana: we got 2 boxes of oranges 40 each for 16
  Read as: bought 2 boxes of oranges 40 each for
  16
  Nothing is logged yet. Tap if that is right.
  [bought 2 boxes of oranges 40 each for 16]
Ana: price neutral spirit 22 per l
  neutral spirit: €22.00 for 1 l
  [Undo] [Another price]
