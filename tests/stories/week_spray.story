# The week by fruit, reason and shift, as a share of what was bought, and against the time before the spray.
@after opening

@clock 2026-11-02 20:00 Europe/Lisbon
Ana: price oranges 0.50 each, 5 garnishes each
  orange: €0.50 each
  5 garnishes each: €0.100 a garnish before
  waste
  New here: orange.
  [Undo] [Another price]
Ana: bar late shift 22:00
  Late shift: from 22:00
  [Hours and reminders]
  [All settings] [Undo]
Ana: bought 100 oranges 50
  Bought: 100 oranges, €50.00.
  Price from now on: €50.00 for 100 pieces.
  The same as before.
  [Undo] [More that came in]
Ana: waste 9 oranges dried out
  Logged: 9 oranges, dried out, €4.50.
  Mon, 2 Nov so far: €4.50
  [Undo] [More waste]
@clock 2026-11-04 23:30 Europe/Lisbon
Ana: waste 8 oranges peeled and not used
  Logged: 8 oranges, peeled and not used, €4.00.
  Wed, 4 Nov so far: €4.00
  [Undo] [More waste]
@clock 2026-11-06 23:30 Europe/Lisbon
Ana: waste 7 oranges peeled and not used
  Logged: 7 oranges, peeled and not used, €3.50.
  Fri, 6 Nov so far: €3.50
  [Undo] [More waste]
@clock 2026-11-10 20:00 Europe/Lisbon
Ana: bought 60 oranges 30
  Bought: 60 oranges, €30.00.
  Price from now on: €30.00 for 60 pieces.
  The same as before.
  [Undo] [More that came in]
Ana: waste 1 orange mouldy
  Logged: 1 orange, mouldy, €0.50.
  Tue, 10 Nov so far: €0.50
  [Undo] [More waste]
@clock 2026-11-12 23:30 Europe/Lisbon
Ana: waste 2 oranges peeled and not used
  Logged: 2 oranges, peeled and not used, €1.00.
  Thu, 12 Nov so far: €1.00
  [Undo] [More waste]
# From the ninth on the spray is used in place of peel.
Ana: spraying orange since 2026-11-09
  orange: sprayed since 9 Nov 2026.
  /week compares its waste with the twelve weeks
  before.
  [Undo] [Week]
Ana: week
  Waste: €1.50
  Mon, 9 Nov to Sun, 15 Nov, still running
    orange  3  €1.50
    peeled and not used  2  €1.00
    mouldy               1  €0.50
  Of what was bought: orange 5 %
  First 4 days of the week before: €8.50, too
  few nights to say
  Orange, sprayed since 9 Nov 2026: no verdict
  yet. In whole weeks 3 nights were logged
  before and 0 since; it takes 14 each.
  <picture waste-2026-W46.png>
  [More] [Picture]
  [Last week] [Log waste]
Ana taps [More]
  Waste: €1.50
  Mon, 9 Nov to Sun, 15 Nov, still running
    peeled and not used  2  €1.00
    mouldy               1  €0.50
    early shift  1  €0.50
    late shift   2  €1.00
  Share of what was bought:
    orange  5 %
  Orange, sprayed since 9 Nov 2026: no verdict
  yet. In whole weeks 3 nights were logged
  before and 0 since; it takes 14 each.
  [Picture]
Ana: week 2026-W45 more
  Waste: €12.00
  Mon, 2 Nov to Sun, 8 Nov
    peeled and not used  15  €7.50
    dried out             9  €4.50
    early shift   9  €4.50
    late shift   15  €7.50
  Share of what was bought:
    orange  24 %
  To compare with the time before the spray:
  spraying orange since 2026-10-20
  [Picture]
Ana: month
  Waste: €13.50
  Sun, 1 Nov to Mon, 30 Nov, still running
    orange  27  €13.50
    peeled and not used  17  €8.50
    dried out             9  €4.50
    mouldy                1  €0.50
  Of what was bought: orange 17 %
  Nothing logged to compare with: Thu, 1 Oct to
  Mon, 12 Oct.
  Orange, sprayed since 9 Nov 2026: no verdict
  yet. In whole weeks 3 nights were logged
  before and 0 since; it takes 14 each.
  <picture waste-2026-W46.png>
  [More] [Picture]
  [Last month] [Log waste]
Ana: waste report 2026-11-01 to 2026-11-08
  Waste: €12.00
  Sun, 1 Nov to Sun, 8 Nov
    orange  24  €12.00
    peeled and not used  15  €7.50
    dried out             9  €4.50
  Of what was bought: orange 24 %
  Nothing logged to compare with: Sat, 24 Oct to
  Sat, 31 Oct.
  <picture waste-2026-W45.png>
  [More] [Picture]
  [Log waste]
Ana: week picture
  Waste by week, up to 15 Nov 2026
  <picture waste-2026-W46.png>
Ana: spraying
  Sprayed instead of cut, since
    orange  9 Nov 2026  as said
  Another day: spraying orange since 2026-10-20
