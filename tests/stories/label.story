# Labels by taps: paper, number, the preview and the sheet; the paper is set once for the bar.
@after mist

Ana: label
  There is no batch with anything left in it.
  [Make a batch]
Ana: batch grapefruit mist to 8 x 50 ml
  Batch 1: Grapefruit mist, 402 ml
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
Ana: batch 1
  Batch 1: Grapefruit mist, resting
    grapefruit oil        50 ml
    propylene glycol      92 ml
    neutral spirit 96 %  260 ml
  402 ml made Wed, 25 Nov 18:00 by Ana, version
  1
  62.1 % vol
  Rests until Thu, 26 Nov 18:00, 24 hours more
  Discard after 24 May 2027, 180 days left (the
  usual time for its kind)
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Clear] [Hazy] [Split]
  [Open it]
  [Discard] [Label] [Note a lot]
Ana taps [Label]
  (edited)
  Which labels are in the printer?
  [A4, 14 labels of 99.1 x 38.1 mm]
  [A4, 8 labels of 99.1 x 67.7 mm]
  [A4, 21 labels of 63.5 x 38.1 mm]
  [A4, 24 labels of 70 x 37 mm]
  [A4, 40 labels of 48.5 x 25.4 mm]
  [A4, 65 labels of 38.1 x 21.2 mm]
  [roll 62 mm wide, cut to length]
  [roll of labels, 50 x 30 mm]
  [Back] [Cancel]
Ana taps [A4, 14 labels of 99.1 x 38.1 mm]
  (edited)
  How many labels?
  [8 (one per bottle)]
  [1 (one)]
  [14 (a whole sheet)]
  [Another number]
  [Back] [Cancel]
Ana taps [8 (one per bottle)]
  (edited)
  8 labels for batch 1, Grapefruit mist
  A4, 14 labels of 99.1 x 38.1 mm
  Print at 100 %, not “fit to page”.
  Nobody has seen it clear yet, so the label
  does not say so.
  Caution: Local rules on labels differ: ask
  your inspector what yours must say.
  <picture batch-1-labels.png>
  <file batch-1-labels.pdf>
  [A4, 8 labels of 99.1 x 67.7 mm]
  [A4, 21 labels of 63.5 x 38.1 mm]
  [Show batch 1] [Always this paper]
Ana taps [Always this paper]
  Label paper: A4, 14 labels of 99.1 x 38.1 mm
  [The bar, labels, waste]
  [All settings] [Undo]
Ana: label 1 x2 from 9
  2 labels for batch 1, Grapefruit mist
  A4, 14 labels of 99.1 x 38.1 mm
  Print at 100 %, not “fit to page”.
  Nobody has seen it clear yet, so the label
  does not say so.
  Caution: Local rules on labels differ: ask
  your inspector what yours must say.
  <picture batch-1-labels.png>
  <file batch-1-labels.pdf>
  [A4, 8 labels of 99.1 x 67.7 mm]
  [A4, 21 labels of 63.5 x 38.1 mm]
  [Show batch 1]
Ana: label 1 roll-62 x1
  1 label for batch 1, Grapefruit mist
  roll 62 mm wide, cut to length
  Nobody has seen it clear yet, so the label
  does not say so.
  Caution: Local rules on labels differ: ask
  your inspector what yours must say.
  <picture batch-1-labels.png>
  <file batch-1-labels.pdf>
  [A4, 14 labels of 99.1 x 38.1 mm]
  [A4, 8 labels of 99.1 x 67.7 mm]
  [Show batch 1] [Always this paper]
Ana: label 1 a4-2x7 x2 from 15
  A whole number from 1 to 14, please.
Ana: label 7
  There is no batch 7 in this bar.
