# A line typed after closing says to which night it counts, with the night before one tap away.
@after opening

Ana: bar closing hour 02:00
  Closing hour: 02:00
  [Hours and reminders]
  [All settings] [Undo]
Ana: waste 2 oranges mouldy
  Logged: 2 oranges, mouldy.
  No price for orange: not in the cost.
  New here: orange.
  [Undo] [More waste]
  [Price of orange]
@clock 2026-11-26 01:45 Europe/Lisbon
Ana: 1 orange mouldy
  Logged: 1 orange, mouldy.
  No price for orange: not in the cost.
  [Undo] [More waste]
  [Price of orange]
@clock 2026-11-26 02:45 Europe/Lisbon
Ana: waste 3 oranges mouldy
  Logged: 3 oranges, mouldy.
  No price for orange: not in the cost.
  Counted for Thu, 26 Nov: it is after closing.
  [Undo] [More waste]
  [Price of orange]
  [It was Wed, 25 Nov]
Ana: week
  Waste: no prices yet
  Mon, 23 Nov to Sun, 29 Nov, still running
    orange  6  no price
    mouldy  6  no price
  Without a price, so not counted: orange.
  Nothing logged to compare with: Mon, 16 Nov to
  Thu, 19 Nov.
  [More] [Picture]
  [Last week] [Log waste]
Ana taps [It was Wed, 25 Nov]
  (edited)
  Corrected: 3 oranges, mouldy, for Wed, 25 Nov
  No price for orange: not in the cost.
  [Undo] [More waste]
  [Price of orange]
Ana: log
  Log of The Copper Gull, newest first
  #5 Thu, 26 Nov 02:45, Ana: waste: 3 oranges,
  mouldy (instead of #4)
  #4 Thu, 26 Nov 02:45, Ana: waste: 3 oranges,
  mouldy (now #5)
  #3 Thu, 26 Nov 01:45, Ana: waste: 1 orange,
  mouldy
  #2 Wed, 25 Nov 18:00, Ana: waste: 2 oranges,
  mouldy
  #1 Wed, 25 Nov 18:00, Ana: settings: closing
  hour
  [Undo #5] [Undo #3] [Undo #2]
Ana: undo
  Undone: 3 oranges, mouldy
  [Put it back]
Ana: 4 limes
  Logged: 4 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  Counted for Thu, 26 Nov: it is after closing.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [It was Wed, 25 Nov]
Ana taps [dried out]
  (edited)
  4 limes: dried out.
  Counted for Thu, 26 Nov: it is after closing.
  [Undo] [More waste]
  [It was Wed, 25 Nov]
Ana taps [It was Wed, 25 Nov]
  (edited)
  Corrected: 4 limes, dried out, for Wed, 25 Nov
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]
Ana: peeled 6 lemons
  Peeled: 6 lemons, good until Fri, 27 Nov
  02:45.
  24 h is common practice (/bar peeled fruit); I
  will remind you before.
  About 280 ml juice (210 ml to 350 ml;
  published yield).
  Counted for Thu, 26 Nov: it is after closing.
  New here: lemon.
  [Juiced] [Binned] [In a batch]
  [Undo] [Acid for it]
  [It was Wed, 25 Nov]
Ana taps [It was Wed, 25 Nov]
  (edited)
  Corrected: 6 lemons peeled
  Wed, 25 Nov. Peeled: 6 lemons, good until Thu,
  26 Nov 12:00.
  24 h is common practice (/bar peeled fruit); I
  will remind you before.
  About 280 ml juice (210 ml to 350 ml;
  published yield).
  [Juiced] [Binned] [In a batch]
  [Undo] [Acid for it]
Ana: peeled 4 lemons, 2 oranges
  Peeled, good until Fri, 27 Nov 02:45:
    4 lemons   190 ml
    2 oranges  160 ml
  With the juice to expect; I will remind you
  before.
  Counted for Thu, 26 Nov: it is after closing.
  [Undo lemon] [Undo orange]
  [More peeled]
  [It was Wed, 25 Nov]
Ana taps [It was Wed, 25 Nov]
  (edited)
  Corrected: 4 lemons peeled
  Corrected: 2 oranges peeled
  Wed, 25 Nov. Peeled, good until Thu, 26 Nov
  12:00:
    4 lemons   190 ml
    2 oranges  160 ml
  With the juice to expect; I will remind you
  before.
  [Undo lemon] [Undo orange]
  [More peeled]
Ana: log
  Log of The Copper Gull, newest first
  #15 Thu, 26 Nov 02:45, Ana: peeled 2 oranges
  (instead of #13)
  #14 Thu, 26 Nov 02:45, Ana: peeled 4 lemons
  (instead of #12)
  #13 Thu, 26 Nov 02:45, Ana: peeled 2 oranges
  (now #15)
  #12 Thu, 26 Nov 02:45, Ana: peeled 4 lemons
  (now #14)
  #11 Thu, 26 Nov 02:45, Ana: peeled 6 lemons
  (instead of #10)
  #10 Thu, 26 Nov 02:45, Ana: peeled 6 lemons
  (now #11)
  #9 Thu, 26 Nov 02:45, Ana: waste: 4 limes,
  dried out (instead of #8)
  #8 Thu, 26 Nov 02:45, Ana: gave a reason: 4
  limes, dried out (now #9)
  #7 Thu, 26 Nov 02:45, Ana: waste: 4 limes (now
  #8)
  #6 Thu, 26 Nov 02:45, Ana: undid #5
  [Undo #15] [Undo #14] [Undo #11]
  [Older]
Ana: drinks 140
  Thu, 26 Nov: 140 drinks.
  Counted for Thu, 26 Nov: it is after closing.
  [Undo] [By weekday] [Plan]
  [It was Wed, 25 Nov]
Ana taps [It was Wed, 25 Nov]
  (edited)
  Corrected: 140 drinks
  Wed, 25 Nov: 140 drinks.
  [Undo] [By weekday] [Plan]
Ana: waste 3 oranges mouldy yesterday
  Logged for Wed, 25 Nov: 3 oranges, mouldy.
  No price for orange: not in the cost.
  [Undo] [More waste]
  [Price of orange]
Ana: waste 1 lime mouldy today
  Logged: 1 lime, mouldy.
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]
@clock 2026-11-26 05:30 Europe/Lisbon
Ana: waste 1 orange mouldy
  Logged: 1 orange, mouldy.
  No price for orange: not in the cost.
  [Undo] [More waste]
  [Price of orange]
