# What came in and what lies there tell what was used, and what the log does not explain.
@after opening

Ana: bought 2 cases oranges 80 each 34.00
  Bought: 160 oranges (2 packs of 80), €68.00.
  Understood: €34.00 a pack.
  Price from now on: €34.00 for 80 pieces.
  New here: orange.
  [€34.00 was for all]
  [Undo] [More that came in]
Ana taps [€34.00 was for all]
  (edited)
  Bought: 160 oranges (2 packs of 80), €34.00.
  Understood: €17.00 a pack.
  Price from now on: €17.00 for 80 pieces.
  [€34.00 was for one]
  [Undo] [More that came in]
Ana: count oranges 150
  Counted: 150 oranges.
  First count. After the next one I'll know what
  you used.
  [Undo] [Count more]
@clock + 24 h
Ana: peeled 10 oranges, 4 limes
  Peeled, good until Fri, 27 Nov 18:00:
    10 oranges  820 ml
    4 limes     170 ml
  With the juice to expect; I will remind you
  before.
  New here: lime.
  [Undo orange] [Undo lime]
  [More peeled]
Ana: waste 6 oranges mouldy
  Logged: 6 oranges, mouldy, €1.28.
  Thu, 26 Nov so far: €1.28
  [Undo] [More waste]
Ana: bought 40 oranges 18.00; 60 limes 15
  2 deliveries logged.
  Bought: 40 oranges, €18.00. Price from now on:
  €18.00 for 40 pieces. 111.8 % more than
  before. Should be on hand: 184 oranges
  Bought: 60 limes, €15.00. Price from now on:
  €15.00 for 60 pieces.
  [Undo orange] [Undo lime]
  [More that came in]
Ana: count oranges 160
  Counted: 160 oranges.
    before, Wed, 25 Nov  150
    + bought              40
    - wasted               6
    - on hand            160
    = used                24
  The log explains 10 of it; unexplained loss:
  14.
  [Undo] [Count more]
Ana: fruit
  Between the last two counts of each
    fruit   used  wasted  lost
    orange    24       6    14
  “Lost” is used and not explained by what was
  logged; “?” where nothing was.
  [orange]
Ana: fruit lime
  lime was not counted twice yet.
  Count it at close: count limes 24
  [Count]
Ana: count oranges 170, limes 50
  Counted: 2 things.
            counted  used  lost
    orange      170     0     ?
    lime         50
  10 oranges more than there can be: a delivery
  or a count is missing.
  “Lost” is used and not explained by what was
  logged; “?” where nothing was.
  [Undo orange] [Undo lime]
  [Count more]
Ana taps [Undo lime]
  Undone: 50 limes counted
  [Put it back]
Ana: bought 40 oranges 18.00; limes
  In “limes” I miss an amount. Nothing of the
  message was logged.
  Such as: 80 oranges 34.00; 40 limes 8.00
Ana: count 30
  Got “30”. Which ingredient?
  For example: count oranges 24, limes 30
  [Step by step] [More examples]
Ana: count bananas 3
  Counted: 3 bananas.
  First count. After the next one I'll know what
  you used.
  New here: banana.
  [Undo] [Count more]
