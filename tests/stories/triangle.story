# A triangle test of a mist against the fresh peel, led by the bot, until its answer is in.
@after mist

Ana: team invite
  Send this to your new member:
  join ‹code›
  Good for 1 person until Wed, 2 Dec 18:00. Only
  you can see it.
Ben: join ‹code›
  Welcome to The Copper Gull.
  You can scale, make batches and log waste
  here.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Ana: trial grapefruit mist against fresh
  Trial 1: Grapefruit mist against fresh
  grapefruit
  Three glasses, two alike. Each taster taps the
  odd one; guessing is right 1 time in 3.
  It ends by itself, after 30 tastings at most.
  Errors: 5 % of tests say they can tell when
  nobody can, 6 % say they can't when 50 % can.
  Who pours? They tap Pour in their own chat
  with me, and don't taste those glasses.
  [Pour] [Taste]
  [End it]
  [Undo]
Ana: taste
  Nobody has poured these glasses yet.
  [Pour]
Ben: taste #1
  Nobody has poured these glasses yet.
  [Pour]
Ben: trial pour 1
  Glasses 1, from left to right
    698  fresh grapefruit
    846   Grapefruit mist
    901   Grapefruit mist
  The same drink in the same glass, out of
  sight. You can't taste these.
  The taster says: taste #1
Ben: taste #1
  You poured these glasses, so somebody else
  tastes them.
Ana: trial key 1
  Trial 1 is a triangle test: its glasses are
  known when it ends.
  [See the trial]
Ana: trial made 1
  Trial 1 is a triangle test: its glasses are
  known when it ends.
  [See the trial]
Ana: promote #1 A
  Trial 1 is a triangle test: its glasses are
  known when it ends.
  [See the trial]
Ana: trial add 1
  Trial 1 is a triangle test: its glasses are
  known when it ends.
  [See the trial]
Ana: trial grapefruit mist against fresh
  Trial 1: Grapefruit mist against fresh
  grapefruit
  Nobody has tasted yet.
  Blind: the answer comes when it ends.
  [Pour] [Taste]
  [End it]
Ana: taste
  Which glass is the odd one?
  [698] [846] [901]
  [Cancel]
Ana taps [Cancel]
  (edited)
  Cancelled. Nothing was logged.
Ana: taste #1 999
  These glasses are 698, 846, 901.
Ana: trials 1
  Trial 1: Grapefruit mist against fresh
  grapefruit
  Nobody has tasted yet.
  Blind: the answer comes when it ends.
  [Pour] [Taste]
  [End it]
Ana: taste #1 698
  Noted.
  1 tasting so far.
  [Pour]
  [Undo]
Ben: pour
  Glasses 2, from left to right
    739   Grapefruit mist
    557  fresh grapefruit
    754   Grapefruit mist
  The same drink in the same glass, out of
  sight. You can't taste these.
  The taster says: taste #1
Ana: taste #1 557
  Noted.
  2 tastings so far.
  [Pour]
  [Undo]
Ben: trial pour 1
  Glasses 3, from left to right
    321  fresh grapefruit
    777   Grapefruit mist
    828  fresh grapefruit
  The same drink in the same glass, out of
  sight. You can't taste these.
  The taster says: taste #1
Ana: taste #1 777
  Noted.
  3 tastings so far.
  [Pour]
  [Undo]
Ben: trial pour 1
  Glasses 4, from left to right
    250  fresh grapefruit
    778  fresh grapefruit
    921   Grapefruit mist
  The same drink in the same glass, out of
  sight. You can't taste these.
  The taster says: taste #1
Ana: taste #1 921
  Noted.
  4 tastings so far.
  [Pour]
  [Undo]
Ben: trial pour 1
  Glasses 5, from left to right
    172   Grapefruit mist
    516  fresh grapefruit
    903  fresh grapefruit
  The same drink in the same glass, out of
  sight. You can't taste these.
  The taster says: taste #1
Ana: taste #1 172
  Trial 1: Grapefruit mist against fresh
  grapefruit, over
  They can tell: 5 of 5 picked the odd glass,
  chance gives 2.
  It doesn't say which is better.
  Errors: 5 % of tests say they can tell when
  nobody can, 6 % say they can't when 50 % can.
  1 person tasted, so it speaks for them.
  [Formula]
  [Undo]
Ana taps [Undo]
  Undone: tasting of trial 1
  [Put it back]
Ana taps [Put it back]
  Put back: tasting of trial 1
  [Undo]
Ana: taste #1
  Trial 1 is over.
Ana: log
  Log of The Copper Gull, newest first
  #15 Wed, 25 Nov 18:00, Ana: put back: tasted
  the glasses of trial 1
  #14 Wed, 25 Nov 18:00, Ana: undid #13
  #13 Wed, 25 Nov 18:00, Ana: tasted the glasses
  of trial 1 (undone by #14)
  #12 Wed, 25 Nov 18:00, Ben: poured the glasses
  of trial 1
  #11 Wed, 25 Nov 18:00, Ana: tasted the glasses
  of trial 1
  #10 Wed, 25 Nov 18:00, Ben: poured the glasses
  of trial 1
  #9 Wed, 25 Nov 18:00, Ana: tasted the glasses
  of trial 1
  #8 Wed, 25 Nov 18:00, Ben: poured the glasses
  of trial 1
  #7 Wed, 25 Nov 18:00, Ana: tasted the glasses
  of trial 1
  #6 Wed, 25 Nov 18:00, Ben: poured the glasses
  of trial 1
  [Undo #15] [Undo #11] [Undo #9]
  [Older]
