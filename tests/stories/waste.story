# Waste in one line, in several, in kilograms, with words nobody knew.
@after opening

Ana: waste 6 oranges mouldy
  Logged: 6 oranges, mouldy.
  No price for orange: not in the cost.
  New here: orange.
  [Undo] [More waste]
  [Price of orange]
Ana taps [Price of orange]
  (edited)
  What does orange cost? Such as: 0.60 each
  [Back] [Cancel]
Ana: 0.60 each
  How many garnishes per fruit?
  [4] [5] [6]
  [8] [10] [12]
  [Back] [Cancel]
Ana taps [5]
  (edited)
  orange: €0.60 each
  5 garnishes each: €0.120 a garnish before
  waste
  It counts from now on: the 6 thrown out before
  stay without a price.
  [Undo] [Another price]
Ana: waste 6 oranges mouldy
  Logged: 6 oranges, mouldy, €3.60.
  Wed, 25 Nov so far: €3.60
  [Undo] [More waste]
Ana: waste 1.2 kg lemons
  Logged: 1.2 kg lemons.
  No price for lemon: not in the cost.
  Wed, 25 Nov so far: €3.60
  Why? One tap is enough.
  New here: lemon.
  [Undo] [More waste]
  [Price of lemon]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana taps [dried out]
  (edited)
  1.2 kg lemons: dried out.
  [Undo] [More waste]
Ana: waste 6 oranges mouldy, 2 limes dried out\
1.5 kg grapefruits
  Logged 3 lines
    6 oranges       mouldy     €3.60
    2 limes      dried out  no price
    1.5 kg
    grapefruits             no price
  No price for grapefruit, lime: not in the
  cost.
  Wed, 25 Nov so far: €7.20
  Why the 1.5 kg grapefruits? One tap is enough.
  New here: lime, grapefruit.
  [Undo] [More waste]
  [Price of grapefruit]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: undo
  Undone: 6 oranges, mouldy; 2 limes, dried out;
  1.5 kg grapefruits
  [Put it back]
Ana: waste 4 limes rotten
  Logged: 4 limes, mouldy.
  No price for lime: not in the cost.
  Wed, 25 Nov so far: €3.60
  [Undo] [More waste]
  [Price of lime]
Ana taps [Undo]
  Undone: 4 limes, mouldy
  [Put it back]
Ana taps [Undo]
  You undid that at 18:00.
  [Put it back]
Ana: waste 3 dragonfruit
  dragonfruit is new here. A fruit?
  [New fruit: dragonfruit]
  [Not a fruit: dragonfruit]
  [Cancel]
Ana: waste 3 tyres
  tyres is new here. A fruit?
  [New fruit: tyre]
  [Not a fruit: tyre]
  [Cancel]
Ana taps [New fruit: tyre]
  (edited)
  Logged: 3 tyres.
  No price for tyre: not in the cost.
  Wed, 25 Nov so far: €3.60
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of tyre]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste 6 ornages
  ornages: oranges, or a new fruit?
  [oranges]
  [New fruit: ornage]
  [Cancel]
Ana taps [oranges]
  (edited)
  Logged: 6 oranges, €3.60.
  Wed, 25 Nov so far: €7.20
  Why? One tap is enough.
  [Undo] [More waste]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste 6 oranges exploded
  “exploded” is not one of this bar's reasons.
  Tap one:
  Nothing is logged until you tap.
  [mouldy]
  [dried out]
  [peeled and not used]
  [over-prepped]
  [damaged on delivery]
  [other]
Ana taps [other]
  Logged: 6 oranges, other, €3.60.
  Wed, 25 Nov so far: €10.80
  [Undo] [More waste]
Ana: waste oranges
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
  Logged: 3 oranges, mouldy, €1.80.
  Wed, 25 Nov so far: €12.60
  [Undo] [More waste]
Ana: waste 200 ml oranges
  Fruit is counted or weighed: 6, or 1.2 kg.
  Volumes do not fit.
Ana: waste 0 oranges
  An amount above zero, please: 6, or 1.2 kg.
Ana: waste 6
  What was thrown out?
  [orange] [lime]
  [lemon] [grapefruit]
  [tyre]
  [Back] [Cancel]
Ana: waste 6 oranges, 2
  In “2” I miss a fruit. Nothing of the message
  was logged.
  Such as: 6 oranges mouldy, 2 limes
# numbers in words, as dictated; a line that is not read whole is not said to be
Ana: waste twenty five oranges mouldy
  Logged: 25 oranges, mouldy, €15.00.
  Wed, 25 Nov so far: €27.60
  [Undo] [More waste]
Ana: 3 oranges dried out, 2 lemmons bruised
  Read as: waste 3 oranges dried out, 2 lemon
  bruised
  Nothing is logged yet. Tap if that is right.
  [waste 3 oranges dried out, 2 lemon bruised]
