# Said the short way, as one does with wet hands and a queue.
@after mist

Ana: grapefruit 6x50
  Read as: scale Grapefruit mist 6x50 ml
  Grapefruit mist: 6 x 50 ml
    grapefruit oil    37.5 ml
    propylene glycol    69 ml
    neutral spirit     194 ml
  Makes 300.5 ml at 62 % vol
  Enough for 1,000 to 2,200 drinks
  Fills 6 x 50 ml, 0.5 ml over
  Rounded to 50 ml cylinder, 100 ml cylinder,
  250 ml cylinder: the ratio is off by 0.4 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: 6x50 grapefruit mist
  Read as: scale 6x50 ml Grapefruit mist
  Grapefruit mist: 6 x 50 ml
    grapefruit oil    37.5 ml
    propylene glycol    69 ml
    neutral spirit     194 ml
  Makes 300.5 ml at 62 % vol
  Enough for 1,000 to 2,200 drinks
  Fills 6 x 50 ml, 0.5 ml over
  Rounded to 50 ml cylinder, 100 ml cylinder,
  250 ml cylinder: the ratio is off by 0.4 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: is the grapefruit mist ready?
  I'm not sure what you want. One of these?
  For example: waste 6 grapefruits mouldy
  [batches Grapefruit mist]
  [formula Grapefruit mist]
  [strength Grapefruit mist]
Ana: price limes 30c each
  lime: €0.30 each
  New here: lime.
  [Undo] [Another price]
Ana: price limes 3 for 1.20
  lime: €1.20 for 3 pieces
  33.3 % more than before.
  [Undo] [Another price]
Ana: price grapefruit oil 10 ml for 8.50
  grapefruit oil: €8.50 for 10 ml
  [Undo] [Another price]
Ana: price picture limes
  Price of lime
  <picture price.png>
# Behind the bar '86' says that there is none left, or it counts them: asked, never guessed.
Ana: 86 the limes
  Did you mean:
  [stock limes 0]
  [waste 86 limes]
Ana taps [stock limes 0]
  lime: 0 pieces on hand.
  [Undo] [Par] [All stock]
Ana: 86 limes
  Did you mean:
  [stock limes 0]
  [waste 86 limes]
Ana: 4 limes gone off
  Logged: 4 limes, mouldy, €1.60.
  Wed, 25 Nov so far: €1.60
  [Undo] [More waste]
Ana: six limes and a lemon mouldy
  Logged 2 lines
    6 limes             €2.40
    1 lemon  mouldy  no price
  No price for lemon: not in the cost.
  Wed, 25 Nov so far: €4.00
  Why the 6 limes? One tap is enough.
  New here: lemon.
  [Undo] [More waste]
  [Price of lemon]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana taps [dried out]
  (edited)
  6 limes: dried out.
  [Undo] [More waste]
Ana: waste half a case of oranges
  How much is in each case of oranges? Such as:
  80, or 5 kg
  [Back] [Cancel]
Ana: cancel
  Cancelled. Nothing was logged.
Ana: 300 ml limes
  Fruit is counted or weighed: 6, or 1.2 kg.
  Volumes do not fit.
Ana: peach mist 750 ml
  I'm not sure what you want. One of these?
  For example: waste 6 limes mouldy
  [scale Grapefruit mist to 750 ml]
  [batch Grapefruit mist to 750 ml]
  [change Grapefruit mist]
Ana: price limes 30 bucks
  lime: €30.00 for 3 pieces
  2,400 % more than before.
  [Undo] [Another price]
Ana: what did we waste this week
  Waste: €4.00
  Mon, 23 Nov to Sun, 29 Nov, still running
    lime   10     €4.00
    lemon   1  no price
    dried out  6  €2.40
    mouldy     5  €1.60
  Without a price, so not counted: lemon.
  Nothing logged to compare with: Mon, 16 Nov to
  Wed, 18 Nov.
  <picture waste-2026-W48.png>
  [More] [Picture]
  [Last week] [Log waste]
Ana: the batches
  No batch is resting or in use.
  Make one from a formula: batch Grapefruit mist
  to 400 ml
  [Make a batch] [Formulas]
Ana: batch grapefruit mist to 200 ml
  Batch 1: Grapefruit mist, 201 ml
  Resting until Thu, 26 Nov 18:00. I will remind
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
Ana: label 1 on A4 14 labels
  Got “1 on”. What about “A4 14 labels”?
  For example: label 12
  [Step by step] [More examples]
