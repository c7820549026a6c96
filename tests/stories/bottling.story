# Bottles of a batch: filled, labelled, opened one by one, spilt, emptied, undone.
@after mist

@clock 2026-11-25 12:00 Europe/Lisbon
Ana: batch grapefruit mist to 412 ml
  Batch 1: Grapefruit mist, 411 ml
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
@clock 2026-11-26 13:00 Europe/Lisbon
Ana: check 1 clear
  Batch 1, Grapefruit mist: clear.
  It can be bottled and used.
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Open it] [Undo]
Ana: bottled 1 8 bottles, 50 ml each, lost 12 ml
  Batch 1, Grapefruit mist, in bottles: 8 x 50
  ml.
  Now: 8 of 8 x 50 ml unopened, 12 ml lost.
  [8 labels] [Open one]
  [Undo]
Ana taps [8 labels]
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
Ana: batch 1
  Batch 1: Grapefruit mist, ready
  Next: label it, then open it.
    grapefruit oil        52 ml
    propylene glycol      94 ml
    neutral spirit 96 %  265 ml
  411 ml made Wed, 25 Nov 12:00 by Ana, version
  1
  61.9 % vol
  8 of 8 x 50 ml unopened, 12 ml lost
  Discard after 24 May 2027, 179 days left (the
  usual time for its kind)
  No listed allergen by name. Contains citrus.
  Thu, 26 Nov: checked, clear (Ana)
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  Unfinished and dropped: label 1 x8
  [Open it] [Check]
  [Discard] [Label] [Note a lot]
Ana: open 1
  Batch 1, Grapefruit mist, is in use.
  Now: 7 of 8 x 50 ml unopened, 1 open, 12 ml
  lost.
  Opening it started another clock: time since
  the bottle was opened.
  Discard after 24 Feb 2027, 90 days left
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Used up] [Undo]
Ana: undo
  Undone: opening of batch 1
  [Put it back]
Ana: open 1
  Batch 1, Grapefruit mist, is in use.
  Now: 7 of 8 x 50 ml unopened, 1 open, 12 ml
  lost.
  Opening it started another clock: time since
  the bottle was opened.
  Discard after 24 Feb 2027, 90 days left
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Used up] [Undo]
@clock 2026-11-27 20:00 Europe/Lisbon
Ana: used 1
  A bottle of batch 1, Grapefruit mist, is
  empty.
  Now: 7 of 8 x 50 ml unopened, 12 ml lost.
  [Open the next] [Undo]
Ana taps [Open the next]
  (edited)
  Batch 1, Grapefruit mist, is in use.
  Now: 6 of 8 x 50 ml unopened, 1 open, 12 ml
  lost.
  Opening it started another clock: time since
  the bottle was opened.
  Discard after 25 Feb 2027, 90 days left
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Used up] [Undo]
Ana: spilt 1 5 ml
  Batch 1, Grapefruit mist: 5 ml lost.
  Now: 6 of 8 x 50 ml unopened, 1 open, 17 ml
  lost.
  [Show batch 1] [Undo]
Ana: undo
  Undone: 5 ml lost of batch 1
  [Put it back]
Ana: bottled
  Which batch?
  [1 Grapefruit mist]
  [Cancel]
Ana: bottled 1 20 x 100 ml
  Batch 1 has 0 ml to bottle, and this is 2,000
  ml.
Ana: batches
  1 in use
  1 Grapefruit mist: in use, 6 x 50 ml
  [1 Grapefruit mist]
  [Make a batch] [Past batches]
@clock 2026-11-28 20:00 Europe/Lisbon
Ana: used 1
  A bottle of batch 1, Grapefruit mist, is
  empty.
  Now: 6 of 8 x 50 ml unopened, 12 ml lost.
  [Open the next] [Undo]
Ana: log
  Log of The Copper Gull, newest first
  #12 Sat, 28 Nov 20:00, Ana: a bottle of batch
  1 emptied
  #11 Fri, 27 Nov 20:00, Ana: undid #10
  #10 Fri, 27 Nov 20:00, Ana: 5 ml lost of batch
  1 (undone by #11)
  #9 Fri, 27 Nov 20:00, Ana: opened batch 1
  #8 Fri, 27 Nov 20:00, Ana: a bottle of batch 1
  emptied
  #7 Thu, 26 Nov 13:00, Ana: opened batch 1
  #6 Thu, 26 Nov 13:00, Ana: undid #5
  #5 Thu, 26 Nov 13:00, Ana: opened batch 1
  (undone by #6)
  #4 Thu, 26 Nov 13:00, Ana: bottled batch 1: 8
  bottles, 12 ml lost
  #3 Thu, 26 Nov 13:00, Ana: checked batch 1
  [Undo #12]
  [Older]
Ana: export
  All of The Copper Gull, as files.
    formulas  1
    prices    0
    waste     0
    batches   1
  The JSON file holds everything and can be sent
  back to me; the tables are for reading.
  <file formulas.csv>
  <file prices.csv>
  <file waste.csv>
  <file batches.csv>
  <file peel-ledger.json>
