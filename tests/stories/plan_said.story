# A plan from what was said, and what a bottle emptied at once or a slip of the thumb does to it: nothing.
@after mist

Ana: bar drinks a week 300
  Drinks a week: 300
  [Money and work]
  [All settings] [Undo]
Ana: plan
  Make 120 ml Grapefruit mist today.
    Grapefruit
    mist         Wed, 25 Nov  120 ml
  You'll run out before the next is ready:
  Grapefruit mist
  From what you said, nothing counted yet:
  Grapefruit mist
  [Grapefruit mist]
  [Shopping list] [Fruit]
Ana: batch grapefruit mist to 50 ml
  Batch 1: Grapefruit mist, 50.2 ml
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
@clock + 25 h
Ana: open 1
  Batch 1, Grapefruit mist, is in use.
  Nobody has seen it clear yet.
  Opening it started another clock: time since
  the bottle was opened.
  Discard after 24 Feb 2027, 90 days left
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Used up] [Undo]
@clock + 1 min
Ana: used 1
  Batch 1, Grapefruit mist, is used up.
  It lasted less than an hour.
  [Make it again] [Undo]
Ana: plan
  Make 120 ml Grapefruit mist today.
    Grapefruit
    mist         Thu, 26 Nov  120 ml
  You'll run out before the next is ready:
  Grapefruit mist
  From what you said, nothing counted yet:
  Grapefruit mist
  [Grapefruit mist]
  [Shopping list] [Fruit]
Ana: drinks 4000 grapefruit mist
  4,000 drinks with Grapefruit mist?
  [Yes, 4,000 drinks with Grapefruit mist]
  [Change] [Cancel]
Ana taps [Yes, 4,000 drinks with Grapefruit mist]
  (edited)
  Thu, 26 Nov: 4,000 drinks with Grapefruit
  mist.
  [Undo] [By weekday] [Plan]
Ana: plan grapefruit mist
  Make 120 ml Grapefruit mist on Thu, 26 Nov.
  What you have lasts to Wed, 25 Nov. The new
  one is ready Fri, 27 Nov; discard it after 25
  May 2027.
  You'd use about 840 ml before it expires (9 in
  10).
  1 day without it: it rests longer than your
  stock lasts.
  You use about 8.9 ml a day.
  From what you said: 300 drinks a week.
  Thu, 26 Nov, 4,000 drinks: 93 times what you
  said, not counted.
  Batch 1 was empty within 4 hours: not counted.
  [Drinks a week]
  [Make it] [Shopping list] [Plan]
Ana taps [Shopping list]
  To buy by Thu, 3 Dec: no price yet
    grapefruit oil      15 ml  ?
    propylene glycol  27.5 ml  ?
    neutral spirit    77.5 ml  ?
  For: Grapefruit mist 120 ml
  From what you said, nothing counted yet:
  Grapefruit mist
  Far more logged than you said, not counted:
  Grapefruit mist
  Never counted, so I assume none: grapefruit
  oil, propylene glycol, neutral spirit
  No price, so not in the sum: grapefruit oil,
  propylene glycol, neutral spirit
  [Plan] [Stock]
Ana: plan grapefruit mist
  Make 120 ml Grapefruit mist on Thu, 26 Nov.
  What you have lasts to Wed, 25 Nov. The new
  one is ready Fri, 27 Nov; discard it after 25
  May 2027.
  You'd use about 840 ml before it expires (9 in
  10).
  1 day without it: it rests longer than your
  stock lasts.
  You use about 8.9 ml a day.
  From what you said: 300 drinks a week.
  Thu, 26 Nov, 4,000 drinks: 93 times what you
  said, not counted.
  Batch 1 was empty within 4 hours: not counted.
  [Drinks a week]
  [Make it] [Shopping list] [Plan]
Ana taps [Drinks a week]
  (edited)
  What should drinks a week be?
  Now: 300
  [off]
  [Another number]
  [Back] [Cancel]
Ana: 320
  Drinks a week: 320
  [Money and work]
  [All settings] [Undo]
Ana: undo
  Undone: settings: drinks a week
  Drinks a week: 300
  [Put it back]
Ana: put it back
  Put back: settings: drinks a week
  Drinks a week: 320
  [Undo]
# A week of nights counted, and what was said fades.
@clock + 1 day
Ana: drinks 30 grapefruit mist
  Fri, 27 Nov: 30 drinks with Grapefruit mist.
  [Undo] [By weekday] [Plan]
@clock + 1 day
Ana: drinks 44 grapefruit mist
  Sat, 28 Nov: 44 drinks with Grapefruit mist.
  [Undo] [By weekday] [Plan]
@clock + 1 day
Ana: drinks 20 grapefruit mist
  Sun, 29 Nov: 20 drinks with Grapefruit mist.
  [Undo] [By weekday] [Plan]
@clock + 1 day
Ana: drinks 22 grapefruit mist
  Mon, 30 Nov: 22 drinks with Grapefruit mist.
  [Undo] [By weekday] [Plan]
@clock + 1 day
Ana: drinks 25 grapefruit mist
  Tue, 1 Dec: 25 drinks with Grapefruit mist.
  [Undo] [By weekday] [Plan]
@clock + 1 day
Ana: drinks 38 grapefruit mist
  Wed, 2 Dec: 38 drinks with Grapefruit mist.
  [Undo] [By weekday] [Plan]
@clock + 1 day
Ana: drinks 55 grapefruit mist
  Thu, 3 Dec: 55 drinks with Grapefruit mist.
  [Undo] [By weekday] [Plan]
Ana: plan grapefruit mist
  Make 140 ml Grapefruit mist on Thu, 3 Dec.
  What you have lasts to Wed, 2 Dec. The new one
  is ready Fri, 4 Dec; discard it after 1 Jun
  2027.
  You'd use about 970 ml before it expires (9 in
  10).
  1 day without it: it rests longer than your
  stock lasts.
  You use about, a day:
  [Drinks a week]
  [Make it] [Shopping list] [Plan]
  [More]
Ana: plan
  Make 140 ml Grapefruit mist today.
    Grapefruit
    mist          Thu, 3 Dec  140 ml
  You'll run out before the next is ready:
  Grapefruit mist
  Far more logged than you said, not counted:
  Grapefruit mist
  [Grapefruit mist]
  [Drinks a week]
  [Shopping list] [Fruit]
