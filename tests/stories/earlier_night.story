# What happened on an earlier night is logged to it, at the price of then, and the answer says the day.
@after opening

Ana: price oranges 0.50 each
  orange: €0.50 each
  New here: orange.
  [Undo] [Another price]
@clock 2026-11-26 18:00 Europe/Lisbon
Ana: price oranges 0.60 each
  orange: €0.60 each
  20 % more than before.
  [Undo] [Another price]
Ana: waste 3 oranges yesterday
  Logged for Wed, 25 Nov: 3 oranges, €1.50.
  Wed, 25 Nov so far: €1.50
  Why? One tap is enough.
  [Undo] [More waste]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste 3 oranges mouldy last night
  Logged for Wed, 25 Nov: 3 oranges, mouldy,
  €1.50.
  Wed, 25 Nov so far: €3.00
  [Undo] [More waste]
Ana: 2 oranges on Tuesday
  Logged for Tue, 24 Nov: 2 oranges.
  No price for orange: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of orange]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste 4 oranges 24 Nov, 2 limes dried out
  Logged 2 lines for Tue, 24 Nov
    4 oranges             no price
    2 limes    dried out  no price
  No price for lime, orange: not in the cost.
  Why the 4 oranges? One tap is enough.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: wasted on the 24th of November: 1 orange
  Logged for Tue, 24 Nov: 1 orange.
  No price for orange: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of orange]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste 3 oranges yesterday, 2 limes today
  Got “3 oranges yesterday, 2 limes”. What about
  “today”?
  For example: waste 6 oranges mouldy
  [Step by step] [More examples]
Ana: waste 3 oranges 27 Nov
  Fri, 27 Nov is still to come.
Ana: waste 3 oranges 2024-11-01
  1 Nov 2024 is too long ago: I log up to 400
  days back.
Ana: waste 3 oranges 5/12
  Which day is 5/12?
  [Fri 5 Dec 2025]
  [Tue, 12 May]
Ana: waste 3 oranges on 31 Feb
  “on 31 Feb” is no day of the calendar.
Ana: bought 80 oranges 34.00 yesterday
  Wed, 25 Nov. Bought: 80 oranges, €34.00.
  [Undo] [More that came in]
Ana: count oranges 24 last night
  Wed, 25 Nov. Counted: 24 oranges.
  First count. After the next one I'll know what
  you used.
  [Undo] [Count more]
Ana: count oranges 20
  Counted: 20 oranges.
    before, Wed, 25 Nov  24
    + bought              0
    - wasted              0
    - on hand            20
    = used                4
  Nothing says where it went: log peeled and
  juiced fruit to see losses.
  [Undo] [Count more]
Ana: waste 2 oranges yesterday
  Logged for Wed, 25 Nov: 2 oranges, €1.00.
  Wed, 25 Nov so far: €4.00
  Why? One tap is enough.
  [Undo] [More waste]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: stock
  1 ingredient on hand
    orange  20 pieces
  [Count something] [Bought]
  [What can I make?] [Shopping list]
Ana: peeled 4 oranges yesterday
  Wed, 25 Nov. Peeled: 4 oranges, lost since
  Thu, 26 Nov 12:00.
  About 330 ml juice (250 ml to 410 ml;
  published yield).
  To lime strength: 6.4 g citric + 4 g malic
  acid.
  [Juiced] [Binned] [In a batch]
  [Undo] [Acid for it]
Ana: juiced 4 oranges 280 ml on Tuesday
  Tue, 24 Nov. Juiced: 4 oranges gave 280 ml, 70
  ml each.
  To be expected: 250 ml to 410 ml (published
  yield).
  I'll now assume 79 ml per orange, counting 4
  of your own.
  [Undo] [Acid for it]
Ana: drinks 140 on Monday
  Mon, 23 Nov: 140 drinks.
  [Undo] [By weekday] [Plan]
Ana: waste yesterday
  What was thrown out on Wed, 25 Nov?
  [orange] [lime]
  [lemon] [grapefruit]
  [Cancel]
Ana taps [orange]
  (edited)
  How many oranges?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana taps [3]
  (edited)
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ana taps [mouldy]
  (edited)
  Logged for Wed, 25 Nov: 3 oranges, mouldy,
  €1.50.
  Wed, 25 Nov so far: €5.50
  [Undo] [More waste]
Ana: week
  Waste: €5.50
  Mon, 23 Nov to Sun, 29 Nov, still running
    orange  18     €5.50
    lime     2  no price
    mouldy            6     €3.00
    no reason given  12     €2.50
    dried out         2  no price
  Without a price, so not counted: orange (7 of
  18), lime.
  Of what was bought: orange 22 %
  Nothing logged to compare with: Mon, 16 Nov to
  Wed, 18 Nov.
  <picture waste-2026-W48.png>
  [More] [Picture]
  [Last week] [Log waste]
Ana: waste 1 orange 3 days ago
  Logged for Mon, 23 Nov: 1 orange.
  No price for orange: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of orange]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
# The prompt carries its night, whatever the hour at which it is answered.
Ana: bar closing hour 02:00
  Closing hour: 02:00
  [Hours and reminders]
  [All settings] [Undo]
@clock 2026-11-27 01:30 Europe/Lisbon
@reminders
  (to private ana)
  Closing The Copper Gull, Thu, 26 Nov: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  I didn't ask about 1 earlier night.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
@clock 2026-11-27 02:45 Europe/Lisbon
Ana taps [Log waste]
  (edited)
  What was thrown out on Thu, 26 Nov?
  [orange] [lime]
  [lemon] [grapefruit]
  [Cancel]
Ana taps [orange]
  (edited)
  How many oranges?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana taps [2]
  (edited)
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ana taps [Back]
  (edited)
  How many oranges?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana taps [4]
  (edited)
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ana taps [mouldy]
  (edited)
  Logged for Thu, 26 Nov: 4 oranges, mouldy,
  €2.40.
  Thu, 26 Nov so far: €2.40
  [Undo] [More waste]
Ana taps [More waste]
  (edited)
  What was thrown out on Thu, 26 Nov?
  [orange] [lime]
  [lemon] [grapefruit]
  [Cancel]
