# The owner's page needs a whole week on either side of the switch.
@after opening

@clock 2026-11-02 20:00 Europe/Lisbon
Ana: price oranges 0.50 each, 5 garnishes each
  orange: €0.50 each
  5 garnishes each: €0.100 a garnish before
  waste
  New here: orange.
  [Undo] [Another price]
Ana: owner
  No page yet: it takes a whole week before a
  spray and one since.
  Log waste every night, and say when you
  switched: spraying orange since 2026-10-20
  [Before deciding] [Week]
Ana: bought 100 oranges 50
  Bought: 100 oranges, €50.00.
  Price from now on: €50.00 for 100 pieces.
  The same as before.
  [Undo] [More that came in]
Ana: waste 20 oranges peeled and not used
  Logged: 20 oranges, peeled and not used,
  €10.00.
  Mon, 2 Nov so far: €10.00
  [Undo] [More waste]
@clock 2026-11-09 20:00 Europe/Lisbon
Ana: bought 100 oranges 50
  Bought: 100 oranges, €50.00.
  Price from now on: €50.00 for 100 pieces.
  [Undo] [More that came in]
Ana: waste 22 oranges peeled and not used
  Logged: 22 oranges, peeled and not used,
  €11.00.
  Mon, 9 Nov so far: €11.00
  [Undo] [More waste]
@clock 2026-11-16 20:00 Europe/Lisbon
Ana: spraying orange since 2026-11-16
  orange: sprayed since 16 Nov 2026.
  /week compares its waste with the twelve weeks
  before.
  [Undo] [Week]
Ana: owner
  No page yet: it takes a whole week before a
  spray and one since.
  Orange: sprayed since 16 Nov 2026.
  Log waste every night.
  [Before deciding] [Week]
Ana: bought 20 oranges 10
  Bought: 20 oranges, €10.00.
  Price from now on: €10.00 for 20 pieces.
  The same as before.
  [Undo] [More that came in]
Ana: waste 2 oranges peeled and not used
  Logged: 2 oranges, peeled and not used, €1.00.
  Mon, 16 Nov so far: €1.00
  [Undo] [More waste]
@clock 2026-11-23 20:00 Europe/Lisbon
Ana: bought 20 oranges 10
  Bought: 20 oranges, €10.00.
  Price from now on: €10.00 for 20 pieces.
  [Undo] [More that came in]
Ana: waste 4 oranges peeled and not used
  Logged: 4 oranges, peeled and not used, €2.00.
  Mon, 23 Nov so far: €2.00
  [Undo] [More waste]
@clock 2026-12-01 20:00 Europe/Lisbon
Ana: waste 1 orange mouldy
  Logged: 1 orange, mouldy, €0.50.
  Tue, 1 Dec so far: €0.50
  [Undo] [More waste]
Ana: owner
  Cash so far: €80.00 less paid, too few nights
  to say
  It takes 14 nights logged in whole weeks,
  before any spray and with all of them.
  Orange, sprayed since 16 Nov 2026: no verdict
  yet. In whole weeks 2 nights were logged
  before and 2 since; it takes 14 each.
  <picture owner-2026-12-01.png>
  <file owner-2026-12-01.pdf>
