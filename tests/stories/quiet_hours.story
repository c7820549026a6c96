# A batch that has rested at six in the morning waits for eleven; what was done in time is not asked for.
@after mist

@clock 2026-11-25 06:10 Europe/Lisbon
Ana: batch grapefruit mist to 400 ml
  Batch 1: Grapefruit mist, 402 ml
  Resting until Thu, 26 Nov 06:10. I will remind
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
Ana: batch grapefruit mist to 200 ml
  Batch 2: Grapefruit mist, 201 ml
  Resting until Thu, 26 Nov 06:10. I will remind
  you.
  Check it again on 25 Dec 2026.
  Discard after 24 May 2027: the usual time for
  its kind.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 2]
  [Note a lot] [Undo]
@clock 2026-11-26 06:10 Europe/Lisbon
@reminders
  (to private ana)
  Closing The Copper Gull, Wed, 25 Nov: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  Late: this was due Thu, 26 Nov 04:30.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
@clock 2026-11-26 10:59 Europe/Lisbon
Ana: check 2 clear
  Batch 2, Grapefruit mist: clear.
  It can be bottled and used.
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Open it] [Undo]
@reminders
  (nothing)
@clock 2026-11-26 11:00 Europe/Lisbon
@reminders
  (to private ana)
  Batch 1, Grapefruit mist, has rested. How does
  it look?
  402 ml, discard after 24 May 2027
  [Clear] [Hazy] [Split]
  [In 2 hours] [Tomorrow]
@reminders
  (nothing)
