# Rested, discard near and last day, close prompt on service days, late ones, snooze, done, quiet hours.
@after mist

Ana: bar service days wed-sun
  Service days: Wed Thu Fri Sat Sun
  [Hours and reminders]
  [All settings] [Undo]
Ana: change grapefruit mist: discard 10 days
  Grapefruit mist is now version 2. Batches keep
  the version they were made with.
  Grapefruit mist: aroma mist, version 2
    grapefruit oil       12 ml
    propylene glycol     22 ml
    neutral spirit 96 %  62 ml
  Makes 96 ml at 62 % vol
  Rests 24 hours, discard after 10 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each,
  instead of fresh grapefruit
  Clearing: borderline, it may cloud, by
  estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
  [Undo]
# Made at noon, rested at noon.
@clock 2026-11-25 12:00 Europe/Lisbon
Ana: batch grapefruit mist to 400 ml
  Batch 1: Grapefruit mist, 402 ml
  Resting until Thu, 26 Nov 12:00. I will remind
  you.
  Discard after 5 Dec 2026: this formula's own
  time.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 1]
  [Note a lot] [Undo]
@clock 2026-11-26 04:30 Europe/Lisbon
@reminders
  (to private ana)
  Closing The Copper Gull, Wed, 25 Nov: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
Ana taps [Nothing tonight]
  (edited)
  Noted: no waste tonight.
  [Undo]
@clock 2026-11-26 12:00 Europe/Lisbon
@reminders
  (to private ana)
  Batch 1, Grapefruit mist, has rested. How does
  it look?
  402 ml, discard after 5 Dec 2026
  [Clear] [Hazy] [Split]
  [In 2 hours] [Tomorrow]
Ana taps [In 2 hours]
  (edited)
  I will remind you again Thu, 26 Nov 14:00.
@clock 2026-11-26 13:59 Europe/Lisbon
@reminders
  (nothing)
@clock 2026-11-26 14:00 Europe/Lisbon
@reminders
  (to private ana)
  Batch 1, Grapefruit mist, has rested. How does
  it look?
  402 ml, discard after 5 Dec 2026
  [Clear] [Hazy] [Split]
  [In 2 hours] [Tomorrow]
Ana taps [Hazy]
  (edited)
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
@clock 2026-11-27 04:30 Europe/Lisbon
@reminders
  (to private ana)
  Closing The Copper Gull, Thu, 26 Nov: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
Ana taps [In half an hour]
  (edited)
  I will remind you again Fri, 27 Nov 05:00.
@clock 2026-11-27 05:00 Europe/Lisbon
@reminders
  (to private ana)
  Closing The Copper Gull, Thu, 26 Nov: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
# Nothing is sent twice, whatever happens in between.
@restart
@reminders
  (nothing)
@clock 2026-11-27 14:00 Europe/Lisbon
@reminders
  (to private ana)
  Batch 1, Grapefruit mist, was not clear. How
  does it look now?
  402 ml
  [Clear] [Hazy] [Split]
  [Tomorrow] [Discard]
Ana taps [Clear]
  (edited)
  Batch 1, Grapefruit mist: clear.
  It can be bottled and used.
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Open it] [Undo]
# Three days without power: only the latest night is asked about, and it says so.
@clock 2026-12-02 16:30 Europe/Lisbon
@reminders
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
  Batch 1, Grapefruit mist: discard after 5 Dec
  2026, 3 days left.
  402 ml
  Late: this was due Wed, 2 Dec 16:00.
  [Used up] [Discard]
  [Tomorrow] [Done]
Ana taps [Done]
  (edited)
  Thanks, Ana: done.
@clock 2026-12-05 16:00 Europe/Lisbon
@reminders
  (to private ana)
  Closing The Copper Gull, Fri, 4 Dec: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  I didn't ask about 2 earlier nights.
  Late: this was due Sat, 5 Dec 04:30.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
  --
  (to private ana)
  Batch 1, Grapefruit mist: today is its last
  day.
  402 ml
  [Used up] [Discard]
  [Tomorrow] [Done]
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
Ana taps [past its date]
  (edited)
  Batch 1, Grapefruit mist, is discarded: 402
  ml.
  Why: past its date
  Caution: Soak rags wet with citrus oil or shut
  them in a metal bin: in a heap they can light
  themselves.
  [Make it again] [Undo]
