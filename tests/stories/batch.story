# From a scale reply by one tap; rested, reminded, clear, in use, used up.
@after mist

Ana: scale grapefruit mist to 8 x 50 ml
  Grapefruit mist: 8 x 50 ml
    grapefruit oil     50 ml
    propylene glycol   92 ml
    neutral spirit    260 ml
  Makes 402 ml at 62.1 % vol
  Enough for 1,300 to 3,000 drinks
  Fills 8 x 50 ml, 2 ml over
  Rounded to 50 ml cylinder, 100 ml cylinder,
  500 ml cylinder: the ratio is off by 0.6 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana taps [Log this batch]
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
Ana: batches
  1 resting
  1 Grapefruit mist: resting until Thu, 26 Nov
  18:00
  [1 Grapefruit mist]
  [Make a batch] [Past batches]
@clock + 20 h
@reminders
  (to private ana)
  Closing The Copper Gull, Wed, 25 Nov: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  Late: this was due Thu, 26 Nov 04:30.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
@clock + 4 h
@reminders
  (to private ana)
  Batch 1, Grapefruit mist, has rested. How does
  it look?
  402 ml, discard after 24 May 2027
  [Clear] [Hazy] [Split]
  [In 2 hours] [Tomorrow]
Ana taps [Clear]
  (edited)
  Batch 1, Grapefruit mist: clear.
  It can be bottled and used.
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Open it] [Undo]
Ana taps [Open it]
  (edited)
  Batch 1, Grapefruit mist, is in use.
  Opening it started another clock: time since
  the bottle was opened.
  Discard after 24 Feb 2027, 90 days left
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Used up] [Undo]
Ana: batch 1
  Batch 1: Grapefruit mist, in use
  Next: note when it is used up.
    grapefruit oil        50 ml
    propylene glycol      92 ml
    neutral spirit 96 %  260 ml
  402 ml made Wed, 25 Nov 18:00 by Ana, version
  1
  62.1 % vol
  Opened Thu, 26 Nov 18:00
  Discard after 24 Feb 2027, 90 days left (time
  since the bottle was opened)
  No listed allergen by name. Contains citrus.
  Thu, 26 Nov: checked, clear (Ana)
  Thu, 26 Nov: opened (Ana)
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Used up] [Check]
  [Discard] [Label] [Note a lot]
@clock + 12 days
Ana taps [Used up]
  (edited)
  Batch 1, Grapefruit mist, is used up.
  It lasted 12 days.
  [Make it again] [Undo]
Ana taps [Undo]
  Undone: batch 1 used up
  [Put it back]
Ana: batches
  1 in use
  1 Grapefruit mist: in use
  [1 Grapefruit mist]
  [Make a batch] [Past batches]
Ana: used 1
  Batch 1, Grapefruit mist, is used up.
  It lasted 12 days.
  [Make it again] [Undo]
Ana: batches
  No batch is resting or in use.
  Make one from a formula: batch Grapefruit mist
  to 400 ml
  [Make a batch] [Formulas]
Ana: batches all
  All batches
  1 Grapefruit mist: used up
  [1 Grapefruit mist]
  [Make a batch]
