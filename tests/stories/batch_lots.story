# Lots, and which batches they went into; a hazy batch is asked about again; discard with a reason.
@after mist

Ana: batch grapefruit mist to 400 ml
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
Ana: lot 1 grapefruit oil A2231
  Batch 1: grapefruit oil is lot A2231.
  [Another lot] [Undo]
Ana: lot 1
  Whose lot?
  [grapefruit oil]
  [propylene glycol]
  [neutral spirit]
  [Back] [Cancel]
Ana taps [neutral spirit]
  (edited)
  What does the bottle say? Type the lot.
  [Back] [Cancel]
Ana: L-88/4
  Batch 1: neutral spirit is lot L-88/4.
  [Another lot] [Undo]
Ana: batch 1
  Batch 1: Grapefruit mist, resting
    grapefruit oil [A2231]     50 ml
    propylene glycol           92 ml
    neutral spirit 96 %
    [L-88/4]                  260 ml
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
Ana: which batches used lot A2231
  Lot A2231 is in 1 batch
  1 Grapefruit mist: resting, Wed, 25 Nov
  [1 Grapefruit mist]
Ana: which A999
  No batch holds lot A999.
@clock + 24 h
Ana: check 1 hazy, a thin skin on top
  Batch 1, Grapefruit mist: hazy.
  Next: filter a sample.
  Filter a glass of it through paper, and look
  the next day.
  Clear and stays so: it was wax or fine solids,
  so filter the rest: filtered 1, lost 12 ml
  Hazy again: not wax; the next test.
  I will ask again in a day.
  Noted: a thin skin on top
  [What would mend it?]
  [Discard] [Undo]
Ana sends a photo: check 1 split
  Batch 1, Grapefruit mist: split.
  Two layers spray unevenly, so do not use it.
  Next: weigh the spirit.
  Weigh 100 ml of neutral spirit at 20 °C: 96 %
  weighs 80.7 g.
  From 87 g on it is 76 % or weaker, too weak
  here. Lighter: the next test.
  I will ask again in a day.
  The photo is kept with it.
  [What would mend it?]
  [Discard] [Undo]
Ana: batch 1
  Batch 1: Grapefruit mist, resting
  Next: check how it looks.
    grapefruit oil [A2231]     50 ml
    propylene glycol           92 ml
    neutral spirit 96 %
    [L-88/4]                  260 ml
  402 ml made Wed, 25 Nov 18:00 by Ana, version
  1
  62.1 % vol
  Rested since Thu, 26 Nov 18:00: check how it
  looks
  Discard after 24 May 2027, 179 days left (the
  usual time for its kind)
  No listed allergen by name. Contains citrus.
  Thu, 26 Nov: checked, hazy (Ana): a thin skin
  on top
  Thu, 26 Nov: checked, split (Ana) [photo]
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [What would mend it?]
  [Clear] [Hazy] [Split]
  [Open it]
  [Discard] [Label] [Note a lot]
  [Photos]
@clock + 24 h
@reminders
  (to private ana)
  Closing The Copper Gull, Thu, 26 Nov: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  I didn't ask about 1 earlier night.
  Late: this was due Fri, 27 Nov 04:30.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
  --
  (to private ana)
  Batch 1, Grapefruit mist, was not clear. How
  does it look now?
  402 ml
  [Clear] [Hazy] [Split]
  [Tomorrow] [Discard]
Ana taps [Discard]
  (edited)
  How much goes?
  [all of it (402 ml)]
  [half (201 ml)]
  [a quarter (100.5 ml)]
  [Back] [Cancel]
Ana taps [all of it (402 ml)]
  (edited)
  Why?
  [past its date] [split]
  [smells off] [spilt]
  [Back] [Cancel]
Ana taps [split]
  (edited)
  Batch 1, Grapefruit mist, is discarded: 402
  ml.
  Why: split
  Caution: Soak rags wet with citrus oil or shut
  them in a metal bin: in a heap they can light
  themselves.
  [Make it again] [Undo]
Ana taps [Undo]
  Undone: discarding of batch 1
  [Put it back]
Ana: discard 1 40 ml, smelt of old oil
  Batch 1, Grapefruit mist, is discarded: 40 ml.
  Why: smelt of old oil
  Caution: Soak rags wet with citrus oil or shut
  them in a metal bin: in a heap they can light
  themselves.
  [Make it again] [Undo]
Ana: check 1 clear
  Batch 1 is discarded.
Ana: open 1
  Batch 1 is discarded.
Ana: batch 7
  There is no batch 7 in this bar.
Ana: batch grapefruit mist to 400 ml
  Batch 2: Grapefruit mist, 402 ml
  Resting until Sat, 28 Nov 18:00. I will remind
  you.
  Check it again on 27 Dec 2026.
  Discard after 26 May 2027: the usual time for
  its kind.
  Clearing: split here when last looked at
  (batch 1)
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 2]
  [Note a lot] [Undo]
Ana taps [Undo]
  Undone: batch 2, Grapefruit mist
  [Put it back]
Ana: batches
  No batch is resting or in use.
  Make one from a formula: batch Grapefruit mist
  to 400 ml
  [Make a batch] [Formulas]
Ana: batch 2
  There is no batch 2 in this bar.
