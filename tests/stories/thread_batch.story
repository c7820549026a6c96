# A look at a batch, after its reminder or in a reply to it.
@after mist

Ana: its clear
  There is no batch with anything left in it.
  [Make a batch]
Ana: batch grapefruit mist to 400 ml
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
@clock +25 h
@reminders
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
  Batch 1, Grapefruit mist, has rested. How does
  it look?
  402 ml, discard after 24 May 2027
  Late: this was due Thu, 26 Nov 18:00.
  [Clear] [Hazy] [Split]
  [In 2 hours] [Tomorrow]
Ana: its hazy
  Batch 1, Grapefruit mist: hazy.
  Next: filter a sample.
  Filter a glass of it through paper, and look
  the next day.
  Clear and stays so: it was wax or fine solids,
  so filter the rest: filtered 1, lost 12 ml
  Hazy again: not wax; the next test.
  I will ask again in a day.
  [What would mend it?]
  [Discard] [Undo]
Ana: sorry, clear
  Corrected: check of batch 1
  Batch 1, Grapefruit mist: clear.
  It can be bottled and used.
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Open it] [Undo]
Ana: undo that
  Undone: check of batch 1
  [Put it back]
Ana: batch grapefruit mist to 200 ml
  Batch 2: Grapefruit mist, 201 ml
  Resting until Fri, 27 Nov 19:00. I will remind
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
Ana: batch grapefruit mist to 300 ml
  Batch 3: Grapefruit mist, 300.5 ml
  Resting until Fri, 27 Nov 19:00. I will remind
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
@clock +25 h
@reminders
  (to private ana)
  Closing The Copper Gull, Thu, 26 Nov: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  Late: this was due Fri, 27 Nov 04:30.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
  --
  (to private ana)
  Batch 1, Grapefruit mist, was not clear. How
  does it look now?
  402 ml
  Late: this was due Fri, 27 Nov 19:00.
  [Clear] [Hazy] [Split]
  [Tomorrow] [Discard]
  --
  (to private ana)
  Batch 2, Grapefruit mist, has rested. How does
  it look?
  201 ml, discard after 25 May 2027
  Late: this was due Fri, 27 Nov 19:00.
  [Clear] [Hazy] [Split]
  [In 2 hours] [Tomorrow]
  --
  (to private ana)
  Batch 3, Grapefruit mist, has rested. How does
  it look?
  300.5 ml, discard after 25 May 2027
  Late: this was due Fri, 27 Nov 19:00.
  [Clear] [Hazy] [Split]
  [In 2 hours] [Tomorrow]
Ana answers: still hazy
  Batch 3, Grapefruit mist: hazy.
  Next: filter a sample.
  Filter a glass of it through paper, and look
  the next day.
  Clear and stays so: it was wax or fine solids,
  so filter the rest: filtered 3, lost 12 ml
  Hazy again: not wax; the next test.
  I will ask again in a day.
  [What would mend it?]
  [Discard] [Undo]
Ana: looks clear
  Which batch?
  [1 Grapefruit mist]
  [2 Grapefruit mist]
  [3 Grapefruit mist]
  [Back] [Cancel]
Ana: 1
  Batch 1, Grapefruit mist: clear.
  It can be bottled and used.
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Open it] [Undo]
Ana: it's clear now
  Batch 2, Grapefruit mist: clear.
  It can be bottled and used.
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Open it] [Undo]
Ana: batch grapefruit mist to 200 ml
  Batch 4: Grapefruit mist, 201 ml
  Resting until Sat, 28 Nov 20:00. I will remind
  you.
  Check it again on 27 Dec 2026.
  Discard after 26 May 2027: the usual time for
  its kind.
  Clearing: hazy here when last looked at (batch
  3)
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 4]
  [Note a lot] [Undo]
Ana: make it 300 ml
  Corrected: batch 5, Grapefruit mist instead of
  batch 4, Grapefruit mist
  Batch 5: Grapefruit mist, 300.5 ml
  Resting until Sat, 28 Nov 20:00. I will remind
  you.
  Check it again on 27 Dec 2026.
  Discard after 26 May 2027: the usual time for
  its kind.
  Clearing: hazy here when last looked at (batch
  3)
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 5]
  [Note a lot] [Undo]
Ana: double it
  Corrected: batch 6, Grapefruit mist instead of
  batch 5, Grapefruit mist
  Batch 6: Grapefruit mist, 603 ml
  Resting until Sat, 28 Nov 20:00. I will remind
  you.
  Check it again on 27 Dec 2026.
  Discard after 26 May 2027: the usual time for
  its kind.
  Clearing: hazy here when last looked at (batch
  3)
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 6]
  [Note a lot] [Undo]
Ana: same again
  Batch 7: Grapefruit mist, 603 ml
  Resting until Sat, 28 Nov 20:00. I will remind
  you.
  Check it again on 27 Dec 2026.
  Discard after 26 May 2027: the usual time for
  its kind.
  Clearing: hazy here when last looked at (batch
  3)
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 7]
  [Note a lot] [Undo]
