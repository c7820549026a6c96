# What is logged after midnight counts for the night that is closing.
@after opening

Ana: price oranges 0.60 each
  orange: €0.60 each
  New here: orange.
  [Undo] [Another price]
@clock 2026-11-25 23:50 Europe/Lisbon
Ana: waste 2 oranges
  Logged: 2 oranges, €1.20.
  Wed, 25 Nov so far: €1.20
  Why? One tap is enough.
  [Undo] [More waste]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
@clock 2026-11-26 02:30 Europe/Lisbon
Ana: waste 3 oranges
  Logged: 3 oranges, €1.80.
  Wed, 25 Nov so far: €3.00
  Why? One tap is enough.
  [Undo] [More waste]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
@clock 2026-11-26 04:59 Europe/Lisbon
Ana: waste 1 orange
  Logged: 1 orange, €0.60.
  Wed, 25 Nov so far: €3.60
  Why? One tap is enough.
  [Undo] [More waste]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
@clock 2026-11-26 05:00 Europe/Lisbon
Ana: waste 4 oranges
  Logged: 4 oranges, €2.40.
  Thu, 26 Nov so far: €2.40
  Why? One tap is enough.
  Counted for Thu, 26 Nov: it is after closing.
  [Undo] [More waste]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [It was Wed, 25 Nov]
