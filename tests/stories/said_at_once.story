# A question answered with more than was asked, and something else looked up while it waits.
@after mist

Ana: waste
  What was thrown out?
  [grapefruit] [orange]
  [lemon] [lime]
  [Cancel]
Ana: 3 lemons mouldy
  Logged: 3 lemons, mouldy.
  No price for lemon: not in the cost.
  New here: lemon.
  [Undo] [More waste]
  [Price of lemon]
Ana: undo
  Undone: 3 lemons, mouldy
  [Put it back]
Ana: waste
  What was thrown out?
  [lemon] [grapefruit]
  [orange] [lime]
  [Cancel]
Ana: 6 oranges mouldy, 2 limes
  Logged 2 lines
    6 oranges  mouldy  no price
    2 limes            no price
  No price for lime, orange: not in the cost.
  Why the 2 limes? One tap is enough.
  New here: orange, lime.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste
  What was thrown out?
  [lemon] [lime]
  [orange] [grapefruit]
  [Cancel]
Ana: 3 limez
  limez: limes, or a new fruit?
  [limes]
  [New fruit: limez]
  [Cancel]
Ana: limes
  How many limes?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana: 4 limes over-prepped
  Logged: 4 limes, over-prepped.
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]
Ana: waste
  What was thrown out?
  [lime] [lemon]
  [orange] [grapefruit]
  [Cancel]
Ana: lemon
  How many lemons?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana: cautions grapefruit mist
  Cautions for Grapefruit mist (1 to 5 of 32)
  1. Use only what is sold as food grade: the
  same thing is sold for cosmetics and cleaning
  too.
  2. Use only spirit sold for drinking:
  cleaning, surgical and denatured alcohol is
  poison. (1 to 2: common practice, no source)
  3. Wear gloves and keep neat citrus oil off
  skin and out of eyes; rinse at once if it
  splashes. (hazard statements H315 and H317
  notified for d-limonene and lemon oil, a
  supplier's sheet)
  4. Note when each oil was opened and keep it
  cold: aged oil irritates skin and tastes
  stale. (patch tests with oxidised limonene, 2
  to 3 % positive, abstracts (one of 2021))
  5. Ask about allergies before serving, and say
  what house-made things a drink holds. (common
  practice, no source)
  [More]
  --
  How many lemons?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana: 5
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ana: mouldy
  Logged: 5 lemons, mouldy.
  No price for lemon: not in the cost.
  [Undo] [More waste]
  [Price of lemon]
Ana: week
  Waste: no prices yet
  Mon, 23 Nov to Sun, 29 Nov, still running
    lemon   5  no price
    lime    6  no price
    orange  6  no price
    no reason given   2  no price
    mouldy           11  no price
    over-prepped      4  no price
  Without a price, so not counted: lemon, lime,
  orange.
  Nothing logged to compare with: Mon, 16 Nov to
  Wed, 18 Nov.
  [More] [Picture]
  [Last week] [Log waste]
