# Bottles of a batch go to another bar of the same owner, and come back by an undo.
@after mist

@clock 2026-11-25 12:00 Europe/Lisbon
Ana: price grapefruit oil 10 ml 7.90
  grapefruit oil: €7.90 for 10 ml
  [Undo] [Another price]
Ana: price propylene glycol 1 l 12
  propylene glycol: €12.00 for 1 l
  [Undo] [Another price]
Ana: price neutral spirit 1 l 24
  neutral spirit: €24.00 for 1 l
  [Undo] [Another price]
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
Ana: moved 3 bottles of 1 to the annex
  You run no other bar.
  Bottles go only to a bar that you run too, as
  its owner or a manager.
  [Open another bar]
Ana: bars
  You are in 1 bar
  The Copper Gull, owner, you are here
  [Open another bar]
Ana taps [Open another bar]
  (edited)
  What is your bar called? Add the city if you
  like: The Blue Door, Boston
  I keep a small bar's amounts, batches and
  fruit waste, and remind you in time.
  [Ana's bar]
  [Cancel]
Ana: The Gull Annex, Lisbon
  I'd set your bar up like this. Right?
  Clock: Lisbon time
  Food rules: European Union
  Money: EUR
  Measures: ml and grams
  Night ends by: 05:00
  Language: English
  [Looks right]
  [Change something]
  [Back] [Cancel]
Ana taps [Looks right]
  (edited)
  The Gull Annex is open.
  ml and grams · EUR · Europe/Lisbon · a day
  ends at 05:00
  At 04:30 I ask you what was thrown out.
  Another time: bar close reminder 03:30
  All of it can be changed with /bar. Next:
  write down what you make.
  [Add a formula] [Propose one]
  [Set a price] [Log waste]
Ana: bars
  You are in 2 bars
  The Gull Annex, owner, you are here
  The Copper Gull, owner
  [The Copper Gull]
  [Open another bar]
Ana taps [The Copper Gull]
  You are now at The Copper Gull.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Ana: lot 1 grapefruit oil A2231
  Batch 1: grapefruit oil is lot A2231.
  [Another lot] [Undo]
@clock 2026-11-26 13:00 Europe/Lisbon
Ana: check 1 clear
  Batch 1, Grapefruit mist: clear.
  It can be bottled and used.
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Open it] [Undo]
Ana: moved 3 bottles of 1 to the annex
  Batch 1 has no bottles logged. Say ml, or log
  them:
  [Bottles]
Ana: bottled 1 8 x 50 ml, lost 12 ml
  Batch 1, Grapefruit mist, in bottles: 8 x 50
  ml.
  Now: 8 of 8 x 50 ml unopened, 12 ml lost.
  [8 labels] [Open one]
  [Undo]
Ana: took 3 bottles of 1 over to the annex
  Read as: moved 3 bottles of batch 1 to The
  Gull Annex
  Nothing is logged yet. Tap if that is right.
  [moved 3 bottles of batch 1 to The Gull Annex]
Ana: moved 9 bottles of 1 to the annex
  Batch 1 has fewer: 8 of 8 x 50 ml unopened, 12
  ml lost.
Ana: moved 3 bottles of 1 to the cellar
  You run no other bar called “cellar”. To which
  one?
  [The Gull Annex]
Ana: moved 3 bottles of 1 to the annex
  Move 3 x 50 ml of batch 1, Grapefruit mist, to
  The Gull Annex?
  The Gull Annex has no Grapefruit mist yet: I'd
  put the formula in its book, with the
  ingredients it lacks.
  [Move it]
Ana taps [Move it]
  (edited)
  3 x 50 ml of batch 1, Grapefruit mist, moved
  to The Gull Annex.
  There it is batch 1.
  Its cost went along: €17.73.
  Now: 5 of 8 x 50 ml unopened, 12 ml lost, 150
  ml moved.
  [Show batch 1]
  [Go to The Gull Annex] [Undo]
Ana: batch 1
  Batch 1: Grapefruit mist, ready
  Next: label it, then open it.
    grapefruit oil [A2231]   52 ml
    propylene glycol         94 ml
    neutral spirit 96 %     265 ml
  411 ml made Wed, 25 Nov 12:00 by Ana, version
  1
  61.9 % vol
  5 of 8 x 50 ml unopened, 12 ml lost, 150 ml
  moved
  Discard after 24 May 2027, 179 days left (the
  usual time for its kind)
  No listed allergen by name. Contains citrus.
  Thu, 26 Nov: checked, clear (Ana)
  Thu, 26 Nov: moved (Ana): 3 x 50 ml, The Gull
  Annex
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Open it] [Check]
  [Discard] [Label] [Note a lot]
Ana taps [Go to The Gull Annex]
  You are now at The Gull Annex.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Ana: batches
  1 ready
  1 Grapefruit mist: ready, 3 x 50 ml
  [1 Grapefruit mist]
  [Make a batch] [Past batches]
Ana: batch 1
  Batch 1: Grapefruit mist, ready
  Next: label it, then open it.
    grapefruit oil [A2231]    19 ml
    propylene glycol        34.3 ml
    neutral spirit 96 %     96.7 ml
  150 ml, made Wed, 25 Nov 12:00 at The Copper
  Gull as batch 1
  61.9 % vol
  3 of 3 x 50 ml unopened
  Discard after 24 May 2027, 179 days left (the
  usual time for its kind)
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Open it] [Check]
  [Discard] [Label] [Note a lot]
Ana: log
  Log of The Gull Annex, newest first
  #1 Thu, 26 Nov 13:00, Ana: 3 x 50 ml
  Grapefruit mist came from The Copper Gull:
  batch 1
Ana: undo
  That came from The Copper Gull: undo it there,
  or move it back.
  [My bars]
Ana: bars
  You are in 2 bars
  The Gull Annex, owner, you are here
  The Copper Gull, owner
  [The Copper Gull]
  [Open another bar]
Ana taps [The Copper Gull]
  You are now at The Copper Gull.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Ana: undo
  Undone: 3 x 50 ml of batch 1 moved to The Gull
  Annex
  [Put it back]
Ana: put back
  Put back: 3 x 50 ml of batch 1 moved to The
  Gull Annex
  [Undo]
Ana: moved
  Which batch?
  [1 Grapefruit mist]
  [Cancel]
Ana taps [1 Grapefruit mist]
  (edited)
  How much of batch 1, Grapefruit mist?
  [1 x 50 ml] [2 x 50 ml] [3 x 50 ml]
  [4 x 50 ml] [5 x 50 ml]
  [Back] [Cancel]
Ana taps [2 x 50 ml]
  (edited)
  To which bar?
  [The Gull Annex]
  [Back] [Cancel]
Ana taps [The Gull Annex]
  (edited)
  2 x 50 ml of batch 1, Grapefruit mist, moved
  to The Gull Annex.
  There it is batch 2.
  Its cost went along: €11.82.
  Now: 3 of 8 x 50 ml unopened, 12 ml lost, 250
  ml moved.
  [Show batch 1]
  [Go to The Gull Annex] [Undo]
Ana: undo
  Undone: 2 x 50 ml of batch 1 moved to The Gull
  Annex
  [Put it back]
Ana: waste 2 limes mouldy
  Logged: 2 limes, mouldy.
  No price for lime: not in the cost.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
Ana: week
  Waste: no prices yet
  Mon, 23 Nov to Sun, 29 Nov, still running
    lime  2  no price
    mouldy  2  no price
  Lost of batches, besides: 12 ml, €1.42
  Moved to other bars: 150 ml, €17.73
  Without a price, so not counted: lime.
  Nothing logged to compare with: Mon, 16 Nov to
  Thu, 19 Nov.
  [More] [Picture]
  [Last week] [Log waste]
Ana: move 2 bottles of grapefruit mist to annex
  2 x 50 ml of batch 1, Grapefruit mist, moved
  to The Gull Annex.
  There it is batch 3.
  Its cost went along: €11.82.
  Now: 3 of 8 x 50 ml unopened, 12 ml lost, 250
  ml moved.
  [Show batch 1]
  [Go to The Gull Annex] [Undo]
Ana: moved all of 1 to the annex
  3 x 50 ml of batch 1, Grapefruit mist, moved
  to The Gull Annex.
  There it is batch 4.
  Its cost went along: €17.73.
  Now: 0 of 8 x 50 ml unopened, 12 ml lost, 400
  ml moved.
  [Show batch 1]
  [Go to The Gull Annex] [Undo]
Ana: batch 1
  Batch 1: Grapefruit mist, moved away
    grapefruit oil [A2231]   52 ml
    propylene glycol         94 ml
    neutral spirit 96 %     265 ml
  411 ml made Wed, 25 Nov 12:00 by Ana, version
  1
  61.9 % vol
  Thu, 26 Nov: checked, clear (Ana)
  Thu, 26 Nov: moved (Ana): 3 x 50 ml, The Gull
  Annex
  Thu, 26 Nov: moved (Ana): 2 x 50 ml, The Gull
  Annex
  Thu, 26 Nov: moved (Ana): 3 x 50 ml, The Gull
  Annex
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Make it again]
Ana: moved 1 bottle of 1 to the annex
  Batch 1 is moved away.
Ana: log
  Log of The Copper Gull, newest first
  #16 Thu, 26 Nov 13:00, Ana: 3 x 50 ml of batch
  1 moved to The Gull Annex
  #15 Thu, 26 Nov 13:00, Ana: 2 x 50 ml of batch
  1 moved to The Gull Annex
  #14 Thu, 26 Nov 13:00, Ana: waste: 2 limes,
  mouldy
  #13 Thu, 26 Nov 13:00, Ana: undid #12
  #12 Thu, 26 Nov 13:00, Ana: 2 x 50 ml of batch
  1 moved to The Gull Annex (undone by #13)
  #11 Thu, 26 Nov 13:00, Ana: put back: 3 x 50
  ml of batch 1 moved to The Gull Annex
  #10 Thu, 26 Nov 13:00, Ana: undid #9
  #9 Thu, 26 Nov 13:00, Ana: 3 x 50 ml of batch
  1 moved to The Gull Annex (undone by #10)
  #8 Thu, 26 Nov 13:00, Ana: bottled batch 1: 8
  bottles, 12 ml lost
  #7 Thu, 26 Nov 13:00, Ana: checked batch 1
  [Undo #16] [Undo #14]
  [Older]
Ana: undo
  Undone: 3 x 50 ml of batch 1 moved to The Gull
  Annex
  [Put it back]
Ana taps [Put it back]
  Put back: 3 x 50 ml of batch 1 moved to The
  Gull Annex
  [Undo]
Ana: bars
  You are in 2 bars
  The Gull Annex, owner
  The Copper Gull, owner, you are here
  [The Gull Annex]
  [Open another bar]
Ana taps [The Gull Annex]
  You are now at The Gull Annex.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Ana: open 4
  Batch 4, Grapefruit mist, is in use.
  Now: 2 of 3 x 50 ml unopened, 1 open.
  Opening it started another clock: time since
  the bottle was opened.
  Discard after 24 Feb 2027, 90 days left
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Used up] [Undo]
Ana: bars
  You are in 2 bars
  The Gull Annex, owner, you are here
  The Copper Gull, owner
  [The Copper Gull]
  [Open another bar]
Ana taps [The Copper Gull]
  You are now at The Copper Gull.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Ana: undo
  The Gull Annex has used some of it already, so
  that stays.
  Move back what is left: there it is batch 4.
Ana: bars
  You are in 2 bars
  The Gull Annex, owner
  The Copper Gull, owner, you are here
  [The Gull Annex]
  [Open another bar]
Ana taps [The Gull Annex]
  You are now at The Gull Annex.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Ana: waste 1 lime mouldy
  Logged: 1 lime, mouldy.
  No price for lime: not in the cost.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
Ana: week
  Waste: no prices yet
  Mon, 23 Nov to Sun, 29 Nov, still running
    lime  1  no price
    mouldy  1  no price
  Came from other bars: 400 ml, €47.27
  Without a price, so not counted: lime.
  Nothing logged to compare with: Mon, 16 Nov to
  Thu, 19 Nov.
  [More] [Picture]
  [Last week] [Log waste]
Ana: moved 1 bottle of 4 to the copper gull
  1 x 50 ml of batch 4, Grapefruit mist, moved
  to The Copper Gull.
  There it is batch 2.
  Its cost went along: €5.91.
  Now: 1 of 3 x 50 ml unopened, 1 open, 50 ml
  moved.
  [Show batch 4]
  [Go to The Copper Gull] [Undo]
Ana: batches
  2 ready, 1 in use
  4 Grapefruit mist: in use, 1 x 50 ml
  1 Grapefruit mist: ready, 3 x 50 ml
  3 Grapefruit mist: ready, 2 x 50 ml
  [4 Grapefruit mist]
  [1 Grapefruit mist]
  [3 Grapefruit mist]
  [Make a batch] [Past batches]
