# What is due in one screen, own reminders and notes, who closes, and the morning message.
@after mist

Ana: today
  Nothing is due today.
  Nobody has said who closes tonight.
  [I close]
  [Reminders] [Leave a note]
@clock 2026-11-25 12:00 Europe/Lisbon
Ana: batch grapefruit mist to 400 ml
  Batch 1: Grapefruit mist, 402 ml
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
Ana: remind me tomorrow 16:00 order limes
  I will remind you Thu, 26 Nov 16:00: order
  limes
  [Other time] [Undo]
Ana: remind the team every Monday 15:00 count fruit
  I will remind the team every Mon 15:00: count
  fruit
  [Other time] [Undo]
Ana: remind me to call the oil merchant in 2 hours
  I will remind you Wed, 25 Nov 14:00: call the
  oil merchant
  [Other time] [Undo]
Ana: note for tomorrow: sprayer two drips
  Noted for Thu, 26 Nov: sprayer two drips
  It shows under today until somebody ticks it.
  [Today] [Undo]
Ana: peeled 6 grapefruits
  Peeled: 6 grapefruits, good until Thu, 26 Nov
  12:00.
  24 h is common practice (/bar peeled fruit); I
  will remind you before.
  About 1,130 ml juice (840 ml to 1,410 ml;
  published yield).
  To lime strength: 18.5 g citric + 11.6 g malic
  acid.
  [Juiced] [Binned] [In a batch]
  [Undo] [Acid for it]
Ana: par grapefruit 40
  grapefruit: I remind you below 40 pieces.
  It was never counted, so count it once: stock
  grapefruit 1.4 l
  [Undo] [All stock]
Ana: count 12 grapefruits
  Counted: 12 grapefruits.
  First count. After the next one I'll know what
  you used.
  [Undo] [Count more]
Ana: reminders
  11 reminders planned
  Wed, 25 Nov 12:00: runs low: grapefruit
  Wed, 25 Nov 14:00: call the oil merchant
  Thu, 26 Nov 04:30: what was thrown out tonight
  note for Thu, 26 Nov: sprayer two drips
  Thu, 26 Nov 11:00: peeled fruit, before it is
  lost
  Thu, 26 Nov 12:00: batch 1, Grapefruit mist:
  has it rested?
  Thu, 26 Nov 16:00: order limes
  every Mon 15:00: count fruit
  and 3 more
  Tap one to change or stop it.
  [runs low: grapefruit] [call the oil merchant]
  [what was thrown out tonight] [sprayer two drips]
  [peeled fruit, before it is…] [batch 1, Grapefruit mist: h…]
  [order limes] [count fruit]
  [Add one]
Ana taps [order limes]
  (edited)
  Thu, 26 Nov 16:00: order limes
  For Ana.
  [Other time] [Stop it] [All reminders]
Ana taps [Other time]
  (edited)
  When?
  [In an hour] [Today 18:00]
  [Tomorrow 16:00] [Every Monday 15:00]
  [Back] [Cancel]
Ana taps [Tomorrow 16:00]
  (edited)
  Moved to Thu, 26 Nov 16:00: order limes
  [All reminders] [Undo]
Ana: reminders
  11 reminders planned
  Wed, 25 Nov 12:00: runs low: grapefruit
  Wed, 25 Nov 14:00: call the oil merchant
  Thu, 26 Nov 04:30: what was thrown out tonight
  note for Thu, 26 Nov: sprayer two drips
  Thu, 26 Nov 11:00: peeled fruit, before it is
  lost
  Thu, 26 Nov 12:00: batch 1, Grapefruit mist:
  has it rested?
  Thu, 26 Nov 16:00: order limes
  every Mon 15:00: count fruit
  and 3 more
  Tap one to change or stop it.
  [runs low: grapefruit] [call the oil merchant]
  [what was thrown out tonight] [sprayer two drips]
  [peeled fruit, before it is…] [batch 1, Grapefruit mist: h…]
  [order limes] [count fruit]
  [Add one]
Ana taps [count fruit]
  (edited)
  every Mon 15:00: count fruit
  For the team.
  [Other time] [Stop it] [All reminders]
Ana taps [Stop it]
  (edited)
  Stopped: count fruit
  [All reminders] [Undo]
Ana: undo
  Undone: stopped reminder: count fruit
  [Put it back]
@clock 2026-11-26 12:30 Europe/Lisbon
@reminders
  (to private ana)
  grapefruit runs low: 12 left, par 40.
  Late: this was due Wed, 25 Nov 12:00.
  [Bought] [Count it]
  [Tomorrow] [Done]
  --
  (to private ana)
  call the oil merchant
  Late: this was due Wed, 25 Nov 14:00.
  [Done] [In an hour] [Tomorrow]
  --
  (to private ana)
  Closing The Copper Gull, Wed, 25 Nov: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  Late: this was due Thu, 26 Nov 04:30.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
  --
  (to private ana)
  Peeled: 6 grapefruits still there, no good
  after Thu, 26 Nov 12:00. What happened to
  them?
  Late: this was due Thu, 26 Nov 11:00.
  [Juiced] [Binned] [In a batch]
  [In 2 hours]
  --
  (to private ana)
  Batch 1, Grapefruit mist, has rested. How does
  it look?
  402 ml, discard after 24 May 2027
  Late: this was due Thu, 26 Nov 12:00.
  [Clear] [Hazy] [Split]
  [In 2 hours] [Tomorrow]
Ana: today
  Thu, 26 Nov: 6 things to do
  6 grapefruits peeled, lost since Thu, 26 Nov
  12:00
  Batch 1, Grapefruit mist, has rested: check
  how it looks
  Note: sprayer two drips
  16:00: order limes
  1 thing to buy by Thu, 3 Dec
  Runs low: grapefruit 12
  Nobody has said who closes tonight.
  [Binned: 6 grapefruits] [Check 1]
  [✓ sprayer two drips] [order limes]
  [Shopping list] [Stock]
  [I close]
  [Reminders] [Leave a note]
Ana taps [✓ sprayer two drips]
  (edited)
  Done: sprayer two drips
  Thu, 26 Nov: 5 things to do
  6 grapefruits peeled, lost since Thu, 26 Nov
  12:00
  Batch 1, Grapefruit mist, has rested: check
  how it looks
  16:00: order limes
  1 thing to buy by Thu, 3 Dec
  Runs low: grapefruit 12
  Nobody has said who closes tonight.
  [Binned: 6 grapefruits] [Check 1]
  [order limes] [Shopping list]
  [Stock] [I close]
  [Reminders] [Leave a note] [Undo]
Ana: undo
  Undone: ticked note: sprayer two drips
  [Put it back]
Ana taps [I close]
  (edited)
  Ana closes tonight.
  I ask at closing what was thrown out.
  [Today] [Undo]
Ana: today
  Thu, 26 Nov: 6 things to do
  6 grapefruits peeled, lost since Thu, 26 Nov
  12:00
  Batch 1, Grapefruit mist, has rested: check
  how it looks
  Note: sprayer two drips
  16:00: order limes
  1 thing to buy by Thu, 3 Dec
  Runs low: grapefruit 12
  Ana closes tonight.
  [Binned: 6 grapefruits] [Check 1]
  [✓ sprayer two drips] [order limes]
  [Shopping list] [Stock]
  [Reminders] [Leave a note]
@clock 2026-11-26 16:00 Europe/Lisbon
@reminders
  (to private ana)
  order limes
  [Done] [In an hour] [Tomorrow]
Ana: log
  Log of The Copper Gull, newest first
  #15 Thu, 26 Nov 12:30, Ana: Ana closes on Thu,
  26 Nov
  #14 Thu, 26 Nov 12:30, Ana: undid #13
  #13 Thu, 26 Nov 12:30, Ana: ticked a note:
  sprayer two drips (undone by #14)
  #12 Wed, 25 Nov 12:00, Ana: undid #11
  #11 Wed, 25 Nov 12:00, Ana: stopped a
  reminder: count fruit (undone by #12)
  #10 Wed, 25 Nov 12:00, Ana: moved a reminder:
  order limes
  #9 Wed, 25 Nov 12:00, Ana: counted 12
  grapefruits
  #8 Wed, 25 Nov 12:00, Ana: set the par of
  grapefruit
  #7 Wed, 25 Nov 12:00, Ana: peeled 6
  grapefruits
  #6 Wed, 25 Nov 12:00, Ana: left a note:
  sprayer two drips
  [Undo #15]
  [Older]
@clock 2026-11-27 04:30 Europe/Lisbon
@reminders
  (to private ana)
  Ana: Closing The Copper Gull, Thu, 26 Nov:
  what was thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
Ana: bar morning message 10:00
  Morning message: 10:00
  [Hours and reminders]
  [All settings] [Undo]
@clock 2026-11-30 15:00 Europe/Lisbon
@reminders
  (to private ana)
  Mon, 30 Nov: 6 things to do
  6 grapefruits peeled, lost since Thu, 26 Nov
  12:00
  Batch 1, Grapefruit mist, has rested: check
  how it looks
  Note: sprayer two drips
  15:00: count fruit
  1 thing to buy by Mon, 7 Dec
  Runs low: grapefruit 12
  Nobody has said who closes tonight.
  [Binned: 6 grapefruits] [Check 1]
  [✓ sprayer two drips] [count fruit]
  [Shopping list] [Stock]
  [I close]
  [Reminders] [Leave a note]
  --
  (to private ana)
  Closing The Copper Gull, Sun, 29 Nov: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  I didn't ask about 2 earlier nights.
  Late: this was due Mon, 30 Nov 04:30.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
  --
  (to private ana)
  count fruit
  [Done] [In an hour] [Tomorrow]
  [Stop it]
@clock 2026-12-14 15:30 Europe/Lisbon
@reminders
  (to private ana)
  Closing The Copper Gull, Sun, 13 Dec: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  I didn't ask about 13 earlier nights.
  Late: this was due Mon, 14 Dec 04:30.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
  --
  (to private ana)
  Mon, 14 Dec: 6 things to do
  6 grapefruits peeled, lost since Thu, 26 Nov
  12:00
  Batch 1, Grapefruit mist, has rested: check
  how it looks
  Note: sprayer two drips
  Mon, 7 Dec 15:00: count fruit
  1 thing to buy by Mon, 21 Dec
  Runs low: grapefruit 12
  Nobody has said who closes tonight.
  [Binned: 6 grapefruits] [Check 1]
  [✓ sprayer two drips] [count fruit]
  [Shopping list] [Stock]
  [I close]
  [Reminders] [Leave a note]
  --
  (to private ana)
  count fruit
  Late: this was due Mon, 7 Dec 15:00.
  [Done] [In an hour] [Tomorrow]
  [Stop it]
Ana: remind
  What should I remind you of?
  [Cancel]
Ana: check the ice machine
  When?
  [In an hour] [Today 18:00]
  [Tomorrow 16:00] [Every Monday 15:00]
  [Back] [Cancel]
Ana taps [Every Monday 15:00]
  (edited)
  I will remind you every Mon 15:00: check the
  ice machine
  [Other time] [Undo]
Ana: remind me yesterday to order limes
  When?
  [In an hour] [Today 18:00]
  [Tomorrow 16:00] [Every Monday 15:00]
  [Back] [Cancel]
Ana: note
  What should the note say?
  Unfinished and dropped: remind yesterday to
  order limes
  [Cancel]
Ana: the tonic is flat
  Noted for Mon, 14 Dec: the tonic is flat
  It shows under today until somebody ticks it.
  [Today] [Undo]
Ana: due
  Mon, 14 Dec: 6 things to do
  6 grapefruits peeled, lost since Thu, 26 Nov
  12:00
  Batch 1, Grapefruit mist, has rested: check
  how it looks
  Note: sprayer two drips
  Note: the tonic is flat
  1 thing to buy by Mon, 21 Dec
  Runs low: grapefruit 12
  Nobody has said who closes tonight.
  [Binned: 6 grapefruits] [Check 1]
  [✓ sprayer two drips] [✓ the tonic is flat]
  [Shopping list] [Stock]
  [I close]
  [Reminders] [Leave a note]
# Every week, and a day in figures, as they are said.
Ana: remind everyone on mondays at 3 count the fruit
  I will remind the team every Mon 15:00: count
  the fruit
  [Other time] [Undo]
Ana: remind me 3/4 order limes
  I will remind you Sat 3 Apr 2027 16:00: order
  limes
  [Other time] [Undo]
