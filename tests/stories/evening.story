# A Friday from the morning message to the close: two people, their phones and the team's group.
@after mist

Ana in Team: /start
  This chat is now The Copper Gull's own:
  reminders for the team come here.
  Here, start with a slash or answer one of my
  messages: I read nothing else.
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
Ana: price grapefruit oil 10 ml 8.20
  grapefruit oil: €8.20 for 10 ml
  [Undo] [Another price]
Ana: price propylene glycol 500 ml 9.50
  propylene glycol: €9.50 for 500 ml
  [Undo] [Another price]
Ana: price neutral spirit 96% 1 l 21
  neutral spirit: €21.00 for 1 l
  [Undo] [Another price]
Ana: price lime 0.25 each
  lime: €0.25 each
  New here: lime.
  [Undo] [Another price]
Ana: bar morning message 11:00
  Morning message: 11:00
  [Hours and reminders]
  [All settings] [Undo]
Ana: batch grapefruit mist to 412 ml
  Batch 1: Grapefruit mist, 411 ml
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
Ana: serve paloma: 2 grapefruit mist, 180 ml
  paloma: 2 sprays Grapefruit mist in 180 ml
  Instead of fresh grapefruit
  The aroma costs €0.016 to €0.024 a drink
  Dose of one drink, all of it together: under
  the limits
  No listed allergen by name. Contains citrus.
  Carries alcohol: say so to guests who drink
  none.
  Carries grapefruit oil: ask about allergies
  and medicines.
  Ask, and tell them what is in it.
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Count drinks] [Dose] [Drink list]
  [Take it off] [Undo]
# Friday, 27 November
@clock 2026-11-27 11:30 Europe/Lisbon
@reminders
  (to Team)
  Closing The Copper Gull, Thu, 26 Nov: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  I didn't ask about 1 earlier night.
  Late: this was due Fri, 27 Nov 04:30.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
  --
  (to Team)
  Fri, 27 Nov: 1 thing to do
  Batch 1, Grapefruit mist, has rested: check
  how it looks
  Nobody has said who closes tonight.
  [Check 1] [I close]
  [Reminders] [Leave a note]
  --
  (to Team)
  Batch 1, Grapefruit mist, has rested. How does
  it look?
  411 ml, discard after 24 May 2027
  Late: this was due Thu, 26 Nov 18:00.
  [Clear] [Hazy] [Split]
  [In 2 hours] [Tomorrow]
Ana: today
  Fri, 27 Nov: 1 thing to do
  Batch 1, Grapefruit mist, has rested: check
  how it looks
  Nobody has said who closes tonight.
  [Check 1] [I close]
  [Reminders] [Leave a note]
Ana: grapefruit mist is clear
  Read as: check grapefruit mist is clear
  Nothing is logged yet. Tap if that is right.
  [check grapefruit mist is clear]
Ana taps [check grapefruit mist is clear]
  (edited)
  Batch 1, Grapefruit mist: clear.
  It can be bottled and used.
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Open it] [Undo]
Ana: bottled 8 x 50 ml, lost 9 ml
  Which batch?
  [1 Grapefruit mist]
  [Back] [Cancel]
Ana taps [1 Grapefruit mist]
  (edited)
  Batch 1, Grapefruit mist, in bottles: 8 x 50
  ml.
  Now: 8 of 8 x 50 ml unopened, 2 ml not
  bottled, 9 ml lost.
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
Ana taps [A4, 21 labels of 63.5 x 38.1 mm]
  (edited)
  8 labels for batch 1, Grapefruit mist
  A4, 21 labels of 63.5 x 38.1 mm
  Print at 100 %, not “fit to page”.
  Caution: Local rules on labels differ: ask
  your inspector what yours must say.
  <picture batch-1-labels.png>
  <file batch-1-labels.pdf>
  [A4, 14 labels of 99.1 x 38.1 mm]
  [A4, 8 labels of 99.1 x 67.7 mm]
  [Show batch 1] [Always this paper]
Ben: I close
  Ben closes tonight.
  I ask at closing what was thrown out.
  [Today] [Undo]
Ana: peeled 6 limes
  Peeled: 6 limes, good until Sat, 28 Nov 11:30.
  24 h is common practice (/bar peeled fruit); I
  will remind you before.
  About 260 ml juice (190 ml to 320 ml;
  published yield).
  [Juiced] [Binned] [In a batch]
  [Undo] [Acid for it]
@clock 2026-11-27 18:05 Europe/Lisbon
Ben: open the grapefruit mist
  Batch 1, Grapefruit mist, is in use.
  Now: 7 of 8 x 50 ml unopened, 1 open, 2 ml not
  bottled, 9 ml lost.
  Opening it started another clock: time since
  the bottle was opened.
  Discard after 25 Feb 2027, 90 days left
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Used up] [Undo]
Ben: what's in the paloma
  paloma: 2 sprays Grapefruit mist in 180 ml
  Instead of fresh grapefruit
  The aroma costs €0.016 to €0.024 a drink
  Dose of one drink, all of it together: under
  the limits
  No listed allergen by name. Contains citrus.
  Carries alcohol: say so to guests who drink
  none.
  Carries grapefruit oil: ask about allergies
  and medicines.
  Ask, and tell them what is in it.
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Count drinks] [Dose] [Drink list]
Ben: allergens in the paloma
  paloma: 2 sprays Grapefruit mist in 180 ml
  Instead of fresh grapefruit
  The aroma costs €0.016 to €0.024 a drink
  Dose of one drink, all of it together: under
  the limits
  No listed allergen by name. Contains citrus.
  Carries alcohol: say so to guests who drink
  none.
  Carries grapefruit oil: ask about allergies
  and medicines.
  Ask, and tell them what is in it.
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Count drinks] [Dose] [Drink list]
Ben: lost 1 bottle of grapefruit mist
  Batch 1, Grapefruit mist: 50 ml lost, €6.08.
  Now: 6 of 8 x 50 ml unopened, 1 open, 2 ml not
  bottled, 59 ml lost.
  [Show batch 1] [Undo]
Ben: spilt 5 ml of grapefruit mist
  Batch 1, Grapefruit mist: 5 ml lost, €0.61.
  Now: 6 of 8 x 50 ml unopened, 1 open, 64 ml
  lost.
  [Show batch 1] [Undo]
Ben: note for tomorrow: sprayer two drips
  Noted for Sat, 28 Nov: sprayer two drips
  It shows under today until somebody ticks it.
  [Today] [Undo]
@clock 2026-11-28 02:20 Europe/Lisbon
Ben: drinks 46 paloma
  Fri, 27 Nov: 46 paloma.
  That took about: Grapefruit mist 8 ml.
  [Undo] [By weekday] [Plan]
Ben: juiced 4 limes 120 ml
  Juiced: 4 limes gave 120 ml, 30 ml each.
  To be expected: 130 ml to 220 ml (published
  yield).
  I'll now assume 40 ml per lime, counting 4 of
  your own.
  [Undo] [Acid for it]
Ben: binned 2 limes, 300 ml lime juice
  lime juice is new here. Right?
  [New ingredient: lime juice]
  [Cancel]
Ben taps [New ingredient: lime juice]
  (edited)
  Logged 2 lines
    2 limes                 €0.50
    300 ml lime juice    no price
  No price for lime juice: not in the cost.
  Fri, 27 Nov so far: €0.50
  [Undo] [More waste]
  [Price of lime juice]
Ben: undo
  Undone: 2 limes; 300 ml lime juice
  [Put it back]
@clock 2026-11-28 04:31 Europe/Lisbon
@reminders
  (to Team)
  Ben: Closing The Copper Gull, Fri, 27 Nov:
  what was thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
Ben in Team taps [Nothing tonight]
  (edited)
  Noted: no waste tonight.
  [Undo]
# Saturday
@clock 2026-11-28 11:01 Europe/Lisbon
@reminders
  (to Team)
  Sat, 28 Nov: 2 things to do
  2 limes peeled, good until Sat, 28 Nov 11:30
  Note: sprayer two drips
  Nobody has said who closes tonight.
  [Juiced: 2 limes] [✓ sprayer two drips]
  [I close]
  [Reminders] [Leave a note]
  --
  (to Team)
  Peeled: 2 limes still there, no good after
  Sat, 28 Nov 11:30. What happened to them?
  [Juiced] [Binned] [In a batch]
  [In 2 hours]
Ana: batch 1
  Batch 1: Grapefruit mist, in use
  Next: note when it is used up.
    grapefruit oil        52 ml
    propylene glycol      94 ml
    neutral spirit 96 %  265 ml
  411 ml made Wed, 25 Nov 18:00 by Ana, version
  1
  61.9 % vol
  6 of 8 x 50 ml unopened, 1 open, 64 ml lost
  Opened Fri, 27 Nov 18:05
  Discard after 25 Feb 2027, 89 days left (time
  since the bottle was opened)
  No listed allergen by name. Contains citrus.
  Fri, 27 Nov: checked, clear (Ana)
  Fri, 27 Nov: opened (Ben)
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Used up] [Check]
  [Discard] [Label] [Note a lot]
Ana: log
  Log of The Copper Gull, newest first
  #24 Sat, 28 Nov 04:31, Ben: no waste on Fri,
  27 Nov
  #23 Sat, 28 Nov 02:20, Ben: undid #22
  #22 Sat, 28 Nov 02:20, Ben: waste: 2 limes;
  300 ml lime juice (undone by #23)
  #21 Sat, 28 Nov 02:20, Ben: new: lime juice
  #20 Sat, 28 Nov 02:20, Ben: juiced 4 limes
  #19 Sat, 28 Nov 02:20, Ben: counted 46 drinks
  #18 Fri, 27 Nov 18:05, Ben: left a note:
  sprayer two drips
  #17 Fri, 27 Nov 18:05, Ben: 5 ml lost of batch
  1
  #16 Fri, 27 Nov 18:05, Ben: 50 ml lost of
  batch 1
  #15 Fri, 27 Nov 18:05, Ben: opened batch 1
  [Undo #24] [Undo #21] [Undo #20]
  [Older]
