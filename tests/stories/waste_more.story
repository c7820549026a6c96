# Waste of what is not fruit: juice, a tray, a spilt batch, a broken bottle.
@after mist

Ana: price grapefruit oil 10 ml 7.90
  grapefruit oil: €7.90 for 10 ml
  [Undo] [Another price]
Ana: price propylene glycol 1 l 12
  propylene glycol: €12.00 for 1 l
  [Undo] [Another price]
Ana: price neutral spirit 1 l 24
  neutral spirit: €24.00 for 1 l
  [Undo] [Another price]
Ana: waste 200 ml lime juice
  lime juice is new here. Right?
  [New ingredient: lime juice]
  [Cancel]
Ana taps [New ingredient: lime juice]
  (edited)
  Logged: 200 ml lime juice.
  No price for lime juice: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lime juice]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: price lime juice 1 l 6
  lime juice: €6.00 for 1 l
  [Undo] [Another price]
Ana: waste 200 ml lime juice, 3 limes mouldy
  Logged 2 lines
    200 ml lime
    juice                      €1.20
    3 limes         mouldy  no price
  No price for lime: not in the cost.
  Wed, 25 Nov so far: €1.20
  Why the 200 ml lime juice? One tap is enough.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste 1 garnish tray
  garnish tray is new here. Right?
  [New ingredient: garnish tray]
  [Cancel]
Ana taps [New ingredient: garnish tray]
  (edited)
  Logged: 1 garnish tray.
  No price for garnish tray: not in the cost.
  Wed, 25 Nov so far: €1.20
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of garnish tray]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste 200 ml oranges
  Fruit is counted or weighed: 6, or 1.2 kg.
  Volumes do not fit.
@clock 2026-11-25 12:00 Europe/Lisbon
Ana: batch grapefruit mist to 400 ml
  Batch 1: Grapefruit mist, 402 ml
  Resting until Thu, 26 Nov 12:00. I will remind
  you.
  Check it again on 25 Dec 2026.
  Discard after 24 May 2027: the usual time for
  its kind.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 1]
  [Note a lot] [Undo]
Ana: bottled 1 8 x 50 ml
  Batch 1, Grapefruit mist, in bottles: 8 x 50
  ml.
  Now: 8 of 8 x 50 ml unopened, 2 ml not
  bottled.
  [8 labels] [Open one]
  [Undo]
Ana: waste 1 bottle of batch 1
  Batch 1, Grapefruit mist: 50 ml lost, €5.83.
  Now: 7 of 8 x 50 ml unopened, 2 ml not
  bottled, 50 ml lost.
  [Show batch 1] [Undo]
Ana: waste 20 ml grapefruit mist
  Batch 1, Grapefruit mist: 20 ml lost, €2.33.
  Now: 7 of 8 x 50 ml unopened, 70 ml lost.
  [Show batch 1] [Undo]
Ana: undo
  Undone: 20 ml lost of batch 1
  [Put it back]
Ana: waste 9 bottles of batch 1
  Batch 1 has fewer: 7 of 8 x 50 ml unopened, 2
  ml not bottled, 50 ml lost.
Ana: batch grapefruit mist to 100 ml
  Batch 2: Grapefruit mist, 100.5 ml
  Resting until Thu, 26 Nov 12:00. I will remind
  you.
  Check it again on 25 Dec 2026.
  Discard after 24 May 2027: the usual time for
  its kind.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 2]
  [Note a lot] [Undo]
Ana: waste 20 ml grapefruit mist
  Which batch of Grapefruit mist?
  [Batch 1]
  [Batch 2]
Ana taps [Batch 2]
  (edited)
  Batch 2, Grapefruit mist: 20 ml lost, €2.33.
  Now: 80.5 ml not bottled, 20 ml lost.
  [Show batch 2] [Undo]
Ana: waste 2 l lime juice peeled and not used
  Logged: 2,000 ml lime juice, peeled and not
  used, €12.00.
  Wed, 25 Nov so far: €13.20
  [Undo] [More waste]
Ana: undo
  Undone: 2,000 ml lime juice, peeled and not
  used
  [Put it back]
Ana: week
  Waste: €1.20
  Mon, 23 Nov to Sun, 29 Nov, still running
    lime juice    400 ml     €1.20
    garnish tray       1  no price
    lime               3  no price
    no reason
    given       1 + 400 ml     €1.20
    mouldy               3  no price
  Lost of batches, besides: 70 ml, €8.16
  Without a price, so not counted: lime juice
  (200 ml of 400 ml), garnish tray, lime.
  Nothing logged to compare with: Mon, 16 Nov to
  Wed, 18 Nov.
  <picture waste-2026-W48.png>
  [More] [Picture]
  [Last week] [Log waste]
Ana: log
  Log of The Copper Gull, newest first
  #19 Wed, 25 Nov 12:00, Ana: undid #18
  #18 Wed, 25 Nov 12:00, Ana: waste: 2,000 ml
  lime juice, peeled and not used (undone by
  #19)
  #17 Wed, 25 Nov 12:00, Ana: 20 ml lost of
  batch 2
  #16 Wed, 25 Nov 12:00, Ana: made batch 2,
  Grapefruit mist
  #15 Wed, 25 Nov 12:00, Ana: undid #14
  #14 Wed, 25 Nov 12:00, Ana: 20 ml lost of
  batch 1 (undone by #15)
  #13 Wed, 25 Nov 12:00, Ana: 50 ml lost of
  batch 1
  #12 Wed, 25 Nov 12:00, Ana: bottled batch 1: 8
  bottles, 0 ml lost
  #11 Wed, 25 Nov 12:00, Ana: made batch 1,
  Grapefruit mist
  #10 Wed, 25 Nov 18:00, Ana: waste: 1 garnish
  tray
  [Undo #17] [Undo #16] [Undo #13]
  [Older]
# juice and cut pieces are not the fruit they come from; a jug says no volume
Ana: waste 300 ml lemon juice
  lemon juice: lime juice, or a new ingredient?
  [lime juice]
  [New ingredient: lemon juice]
  [Cancel]
Ana: waste 40 lime wedges
  lime wedges is new here. Right?
  [New ingredient: lime wedges]
  [Cancel]
Ana: waste a jug of lemon juice
  How much is it? Write the volume: 300 ml lemon
  juice.
Ana: waste 6 lime cordial
  lime cordial is new here. Right?
  [New ingredient: lime cordial]
  [Cancel]
# Half a case is half of what a case holds: by its price, or as answered.
Ana: price oranges 88 for 30
  orange: €30.00 for 88 pieces
  New here: orange.
  [Undo] [Another price]
Ana: waste half a case of oranges mouldy
  Logged: 44 oranges, mouldy, €15.00.
  A case is 88 oranges.
  Wed, 25 Nov so far: €16.20
  [Undo] [More waste]
Ana: half a case of limes mouldy
  Read as: waste 0.5 case limes mouldy
  Nothing is logged yet. Tap if that is right.
  [waste 0.5 case limes mouldy]
Ana taps [waste 0.5 case limes mouldy]
  (edited)
  How much is in each case of limes? Such as:
  80, or 5 kg
  [Back] [Cancel]
Ana: 54
  Logged: 27 limes, mouldy.
  No price for lime: not in the cost.
  Wed, 25 Nov so far: €16.20
  [Undo] [More waste]
  [Price of lime]
Ana: count half a case of oranges
  Counted: 44 oranges.
  A case is 88 oranges.
  First count. After the next one I'll know what
  you used.
  [Undo] [Count more]
Ana: bought half a case of oranges
  Bought: 44 oranges (0.5 packs of 88).
  Should be on hand: 88 oranges
  [Undo] [More that came in]
Ana: waste half a jug of lime juice
  How much is in one? Such as: 70 cl, or 1 kg
  [Back] [Cancel]
Ana: 1 l
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ana: cancel
  Cancelled. Nothing was logged.
