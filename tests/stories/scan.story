# A scan of a label opens the batch with the likely next step, at each stage of its life.
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
Ana: /start b_1_1
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
@clock +25 h
Ana: /start b_1_1
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
  Discard after 24 May 2027, 179 days left (the
  usual time for its kind)
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Clear] [Hazy] [Split]
  [Open it]
  [Discard] [Label] [Note a lot]
Ana taps [Clear]
  (edited)
  Batch 1, Grapefruit mist: clear.
  It can be bottled and used.
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Open it] [Undo]
Ana: /start b_1_1
  Batch 1: Grapefruit mist, ready
  Next: label it, then open it.
    grapefruit oil        50 ml
    propylene glycol      92 ml
    neutral spirit 96 %  260 ml
  402 ml made Wed, 25 Nov 18:00 by Ana, version
  1
  62.1 % vol
  Discard after 24 May 2027, 179 days left (the
  usual time for its kind)
  No listed allergen by name. Contains citrus.
  Thu, 26 Nov: checked, clear (Ana)
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Open it] [Check]
  [Discard] [Label] [Note a lot]
Ana taps [Open it]
  (edited)
  Batch 1, Grapefruit mist, is in use.
  Opening it started another clock: time since
  the bottle was opened.
  Discard after 24 Feb 2027, 90 days left
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Used up] [Undo]
Ana: /start b_1_1
  Batch 1: Grapefruit mist, in use
  Next: note when it is used up.
    grapefruit oil        50 ml
    propylene glycol      92 ml
    neutral spirit 96 %  260 ml
  402 ml made Wed, 25 Nov 18:00 by Ana, version
  1
  62.1 % vol
  Opened Thu, 26 Nov 19:00
  Discard after 24 Feb 2027, 90 days left (time
  since the bottle was opened)
  No listed allergen by name. Contains citrus.
  Thu, 26 Nov: checked, clear (Ana)
  Thu, 26 Nov: opened (Ana)
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Used up] [Check]
  [Discard] [Label] [Note a lot]
@clock +300 days
Ana: /start b_1_1
  Batch 1: Grapefruit mist, in use
  Next: discard it.
    grapefruit oil        50 ml
    propylene glycol      92 ml
    neutral spirit 96 %  260 ml
  402 ml made Wed 25 Nov 2026 18:00 by Ana,
  version 1
  62.1 % vol
  Opened Thu 26 Nov 2026 19:00
  Past its discard date, 24 Feb 2027 (time since
  the bottle was opened)
  No listed allergen by name. Contains citrus.
  Thu 26 Nov 2026: checked, clear (Ana)
  Thu 26 Nov 2026: opened (Ana)
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Discard]
  [Used up] [Check]
  [Label] [Note a lot]
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
Ana: /start b_1_1
  Batch 1: Grapefruit mist, in use
  Next: discard it.
    grapefruit oil        50 ml
    propylene glycol      92 ml
    neutral spirit 96 %  260 ml
  402 ml made Wed 25 Nov 2026 18:00 by Ana,
  version 1
  62.1 % vol
  Opened Thu 26 Nov 2026 19:00
  Past its discard date, 24 Feb 2027 (time since
  the bottle was opened)
  No listed allergen by name. Contains citrus.
  Thu 26 Nov 2026: checked, clear (Ana)
  Thu 26 Nov 2026: opened (Ana)
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Discard]
  [Used up] [Check]
  [Label] [Note a lot]

# Neither a stranger nor a label of nowhere learns or tells anything.
Eve: /start b_1_1
  I can show that label's batch only to members
  of its bar.
Eve: /start b_9_9
  I can show that label's batch only to members
  of its bar.
Ana: /start b_1_99
  There is no batch 99 here any more.
