# A batch is named by its formula: the only open one is meant, of several one is asked.
@after mist

Ana: made 12 bottles of grapefruit mist 50 ml
  Got “12 bottles of grapefruit mist”. What
  about “50 ml”?
  For example: batch grapefruit mist to 400 ml
  [Step by step] [More examples]
Ana: make 12 bottles of grapefruit mist, 50 ml each
  Grapefruit mist: 12 x 50 ml
    grapefruit oil     75 ml
    propylene glycol  138 ml
    neutral spirit    390 ml
  Makes 603 ml at 62.1 % vol
  Enough for 2,000 to 4,500 drinks
  Fills 12 x 50 ml, 3 ml over
  Rounded to 100 ml cylinder, 250 ml cylinder,
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
Ana: batch grapefruit mist to 100 ml
  Batch 1: Grapefruit mist, 100.5 ml
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
@clock + 1 day 2 h
Ana: spilt half a bottle of 1
  Whole bottles only: please write a part of one
  in ml, such as 25 ml.
Ana: check the grapefruit mist clear
  Batch 1, Grapefruit mist: clear.
  It can be bottled and used.
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Open it] [Undo]
Ana: open a bottle of grapefruit mist
  Batch 1, Grapefruit mist, is in use.
  Opening it started another clock: time since
  the bottle was opened.
  Discard after 24 Feb 2027, 90 days left
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Used up] [Undo]
Ana: spilt 5 ml of grapefruit mist
  Batch 1, Grapefruit mist: 5 ml lost.
  Now: 95.5 ml not bottled, 5 ml lost.
  [Show batch 1] [Undo]
Ana: used up grapefruit mist
  Batch 1, Grapefruit mist, is used up.
  It lasted less than an hour.
  [Make it again] [Undo]
Ana: open grapefruit mist
  No batch of Grapefruit mist has anything left
  in it.
Ana: batch grapefruit mist to 100 ml
  Batch 2: Grapefruit mist, 100.5 ml
  Resting until Fri, 27 Nov 20:00. I will remind
  you.
  Check it again on 26 Dec 2026.
  Discard after 25 May 2027: the usual time for
  its kind.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 2]
  [Note a lot] [Undo]
Ana: batch grapefruit mist to 200 ml
  Batch 3: Grapefruit mist, 201 ml
  Resting until Fri, 27 Nov 20:00. I will remind
  you.
  Check it again on 26 Dec 2026.
  Discard after 25 May 2027: the usual time for
  its kind.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 3]
  [Note a lot] [Undo]
Ana: waste 20 ml grapefruit mist
  Which batch of Grapefruit mist?
  [Batch 2]
  [Batch 3]
Ana taps [Batch 3]
  (edited)
  Batch 3, Grapefruit mist: 20 ml lost.
  Now: 181 ml not bottled, 20 ml lost.
  [Show batch 3] [Undo]
Ana: discard
  Which batch?
  [2 Grapefruit mist]
  [3 Grapefruit mist]
  [Cancel]
Ana: grapefruit mist
  Which batch of Grapefruit mist?
  Which batch?
  [Batch 2]
  [Batch 3]
  [2 Grapefruit mist]
  [3 Grapefruit mist]
  [Cancel]
Ana taps [Batch 2]
  (edited)
  How much goes?
  [all of it (100.5 ml)]
  [half (50.2 ml)]
  [a quarter (25.1 ml)]
  [Back] [Cancel]
Ana: log
  Log of The Copper Gull, newest first
  #9 Thu, 26 Nov 20:00, Ana: 20 ml lost of batch
  3
  #8 Thu, 26 Nov 20:00, Ana: made batch 3,
  Grapefruit mist
  #7 Thu, 26 Nov 20:00, Ana: made batch 2,
  Grapefruit mist
  #6 Thu, 26 Nov 20:00, Ana: batch 1 used up
  #5 Thu, 26 Nov 20:00, Ana: 5 ml lost of batch
  1
  #4 Thu, 26 Nov 20:00, Ana: opened batch 1
  #3 Thu, 26 Nov 20:00, Ana: checked batch 1
  #2 Wed, 25 Nov 18:00, Ana: made batch 1,
  Grapefruit mist
  #1 Wed, 25 Nov 18:00, Ana: wrote down
  Grapefruit mist
  [Undo #9] [Undo #8] [Undo #7]
  --
  How much goes?
  [all of it (100.5 ml)]
  [half (50.2 ml)]
  [a quarter (25.1 ml)]
  [Back] [Cancel]
