# An event served from a batch on hand: what it used goes off that batch by one tap.
@after mist

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
Ana: bottled 1 8 x 50 ml
  Batch 1, Grapefruit mist, in bottles: 8 x 50
  ml.
  Now: 8 of 8 x 50 ml unopened, 2 ml not
  bottled.
  [8 labels] [Open one]
  [Undo]
Ana: event 300 guests 5 Dec, 2 drinks each, grapefruit mist
  Sat, 5 Dec: 300 guests, about 600 drinks
    Grapefruit
    mist           200 ml  4 x 50 ml
  With a margin of 25 %: enough nine times in
  ten.
  Grapefruit mist: 155 ml in batch 1, good until
  Mon 24 May 2027
  Nobody has seen batch 1 clear yet: check it
  before you pack it.
  I don't know what the bar uses until then of:
  Grapefruit mist
  Nothing to make: what you have is enough.
  <picture packing-2026-12-05.png>
  <file packing-2026-12-05.pdf>
  [Change] [Reminders] [Undo]
@clock 2026-12-06 10:00 Europe/Lisbon
Ana: came back 120 ml
  Noted for Sat, 5 Dec: what came back.
  Grapefruit mist: used 80 ml of 200 ml, 0.13 ml
  a drink; 125 ml were likely.
  80 ml Grapefruit mist came from stock. Take it
  off the batch:
  [80 ml off batch 1]
  [Show the event] [Undo]
Ana taps [80 ml off batch 1]
  (edited)
  Batch 1, Grapefruit mist: 80 ml used at the
  event on Sat, 5 Dec.
  Now: 6 of 8 x 50 ml unopened, 22 ml not
  bottled, 80 ml used at events.
  [Show batch 1] [Undo]
Ana: undo
  Undone: 80 ml of batch 1 used at event 1
  [Put it back]
Ana: put back
  Put back: 80 ml of batch 1 used at event 1
  [Undo]
Ana: used 20 ml of 1 at the event 1
  All that the event on Sat, 5 Dec used is off
  its batches.
Ana: used 1 20 ml
  I take a part of a batch off only after an
  event, once what came back is noted.
  [Batch 1 is used up]
Ana: events 1
  Sat, 5 Dec: 300 guests, about 600 drinks
    Grapefruit
    mist           200 ml  4 x 50 ml
  Grapefruit mist: used 80 ml of 200 ml, 0.13 ml
  a drink; 125 ml were likely.
  [What came back] [Events]
Ana: batch 1
  Batch 1: Grapefruit mist, resting
  Next: check how it looks.
    grapefruit oil        50 ml
    propylene glycol      92 ml
    neutral spirit 96 %  260 ml
  402 ml made Wed, 25 Nov 18:00 by Ana, version
  1
  62.1 % vol
  Rested since Thu, 26 Nov 18:00: check how it
  looks
  6 of 8 x 50 ml unopened, 22 ml not bottled, 80
  ml used at events
  Discard after 24 May 2027, 169 days left (the
  usual time for its kind)
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Clear] [Hazy] [Split]
  [Open it]
  [Discard] [Label] [Note a lot]
Ana: log
  Log of The Copper Gull, newest first
  #8 Sun, 6 Dec 10:00, Ana: put back: 80 ml of
  batch 1 used at event 1
  #7 Sun, 6 Dec 10:00, Ana: undid #6
  #6 Sun, 6 Dec 10:00, Ana: 80 ml of batch 1
  used at event 1 (undone by #7)
  #5 Sun, 6 Dec 10:00, Ana: noted what came back
  from event 1
  #4 Wed, 25 Nov 18:00, Ana: planned an event,
  300 guests on Sat, 5 Dec
  #3 Wed, 25 Nov 18:00, Ana: bottled batch 1: 8
  bottles, 0 ml lost
  #2 Wed, 25 Nov 18:00, Ana: made batch 1,
  Grapefruit mist
  #1 Wed, 25 Nov 18:00, Ana: wrote down
  Grapefruit mist
  [Undo #8] [Undo #5]
