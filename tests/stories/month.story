# A month: think first, log two weeks, switch, log two weeks, and look at what it shows.
@after mist

@clock 2026-10-05 15:00 Europe/Lisbon
Ana: price grapefruit oil 10 ml 7.90
  grapefruit oil: €7.90 for 10 ml
  [Undo] [Another price]
Ana: price propylene glycol 1 l 12
  propylene glycol: €12.00 for 1 l
  [Undo] [Another price]
Ana: price neutral spirit 1 l 24
  neutral spirit: €24.00 for 1 l
  [Undo] [Another price]
Ana: price grapefruits 0.90 each, 8 garnishes each
  grapefruit: €0.90 each
  8 garnishes each: €0.112 a garnish before
  waste
  [Undo] [Another price]
Ana: price lemons 0.40 each
  lemon: €0.40 each
  New here: lemon.
  [Undo] [Another price]
Ana: bar garnish minutes 0.3
  Garnish minutes: 0.3 min
  [Money and work]
  [All settings] [Undo]
Ana: bar batch minutes 25
  Batch minutes: 25 min
  [Money and work]
  [All settings] [Undo]
Ana: bar outlay 45
  Outlay: €45.00
  [Money and work]
  [All settings] [Undo]
Ana: switch grapefruit
  What does one grapefruit cost?
  [€0.90]
  [Back] [Cancel]
Ana taps [€0.90]
  (edited)
  How many garnishes do you cut from one?
  [3] [4] [5]
  [6] [8] [10]
  [Other number]
  [Back] [Cancel]
Ana taps [8]
  (edited)
  How many drinks a week take it?
  [50] [100] [200]
  [300] [500] [800]
  [Other number]
  [Back] [Cancel]
Ana taps [300]
  (edited)
  How many grapefruits do you throw out a week?
  [0] [5] [10]
  [20] [40] [80]
  [Other number]
  [Back] [Cancel]
Ana taps [40]
  (edited)
  Cash: €49 to €75 a week saved, as a guess
  Fresh grapefruit costs €69.75 a week now, a
  spray about €5.40 to €9.88.
  The spray is your Grapefruit mist at your
  prices: €0.016 to €0.035 a drink.
  Time, apart: 65 min less a week.
  Nobody knows yet, and it matters most: fruit
  thrown out a week (moves it by €36) and drinks
  a week (moves it by €10).
  To show a drop 8 times in 10, beside another
  fruit, log so long before and again after:
    30 % less  96 nights  14 weeks
    50 % less  29 nights   5 weeks
    70 % less  14 nights   2 weeks
  I took counts to vary 2 times as much as by
  chance: common practice, no source.
  Stop if the spray costs over €0.232 a drink,
  if tasters can tell and mind, or if those
  nights show no drop.
  [Log waste] [What Grapefruit mist costs]
# Two weeks with fresh peels.
@nights Ana 23:30 Europe/Lisbon\
2026-10-05 bought 80 grapefruits 72\
2026-10-05 waste 6 grapefruits peeled and not used, 5 lemons mouldy\
2026-10-06 waste 5 grapefruits peeled and not used, 4 lemons mouldy\
2026-10-07 waste 8 grapefruits peeled and not used, 5 lemons mouldy\
2026-10-08 waste 10 grapefruits peeled and not used, 3 lemons mouldy\
2026-10-09 waste 6 grapefruits peeled and not used, 3 lemons mouldy\
2026-10-10 waste 4 grapefruits peeled and not used, 4 lemons mouldy\
2026-10-11 waste 7 grapefruits peeled and not used, 5 lemons mouldy\
2026-10-12 bought 76 grapefruits 68.40\
2026-10-12 waste 7 grapefruits peeled and not used, 7 lemons mouldy\
2026-10-13 waste 8 grapefruits peeled and not used, 2 lemons mouldy\
2026-10-14 waste 7 grapefruits peeled and not used, 3 lemons mouldy\
2026-10-15 waste 5 grapefruits peeled and not used, 6 lemons mouldy\
2026-10-16 waste 5 grapefruits peeled and not used, 1 lemon mouldy\
2026-10-17 waste 7 grapefruits peeled and not used, 4 lemons mouldy\
2026-10-18 waste 3 grapefruits peeled and not used, 3 lemons mouldy
  2026-10-05 Bought: 80 grapefruits, €72.00.
  2026-10-05 Logged 2 lines
  2026-10-06 Logged 2 lines
  2026-10-07 Logged 2 lines
  2026-10-08 Logged 2 lines
  2026-10-09 Logged 2 lines
  2026-10-10 Logged 2 lines
  2026-10-11 Logged 2 lines
  2026-10-12 Bought: 76 grapefruits, €68.40.
  2026-10-12 Logged 2 lines
  2026-10-13 Logged 2 lines
  2026-10-14 Logged 2 lines
  2026-10-15 Logged 2 lines
  2026-10-16 Logged 2 lines
  2026-10-17 Logged 2 lines
  2026-10-18 Logged 2 lines
# The mist is made on Saturday and sprayed from Monday.
@clock 2026-10-17 16:00 Europe/Lisbon
Ana: batch grapefruit mist 400 ml
  Batch 1: Grapefruit mist, 402 ml
  Resting until Sun, 18 Oct 16:00. I will remind
  you.
  Check it again on 16 Nov 2026.
  Discard after 15 Apr 2027: the usual time for
  its kind.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 1]
  [Note a lot] [Undo]
@clock 2026-10-19 17:00 Europe/Lisbon
Ana: owner
  No page yet: it takes a whole week before a
  spray and one since.
  Grapefruit, sprayed since 18 Oct 2026: no
  verdict yet. In whole weeks 7 nights were
  logged before and 0 since; it takes 14 each.
  [Before deciding] [Week]
Ana: spraying grapefruit since 2026-10-19
  grapefruit: sprayed since 19 Oct 2026.
  /week compares its waste with the twelve weeks
  before.
  [Undo] [Week]
# Two weeks with the spray.
@nights Ana 23:30 Europe/Lisbon\
2026-10-19 bought 10 grapefruits 9\
2026-10-19 waste 4 lemons mouldy\
2026-10-20 waste 1 grapefruit peeled and not used, 5 lemons mouldy\
2026-10-21 waste 6 lemons mouldy\
2026-10-22 waste 3 lemons mouldy\
2026-10-23 waste 1 grapefruit peeled and not used, 5 lemons mouldy\
2026-10-24 waste 1 grapefruit peeled and not used, 4 lemons mouldy\
2026-10-25 waste 1 grapefruit peeled and not used, 5 lemons mouldy\
2026-10-26 bought 8 grapefruits 7.20\
2026-10-26 waste 2 grapefruits peeled and not used, 3 lemons mouldy\
2026-10-27 waste 2 grapefruits peeled and not used, 3 lemons mouldy\
2026-10-28 waste 1 grapefruit peeled and not used, 3 lemons mouldy\
2026-10-29 waste 1 grapefruit peeled and not used, 3 lemons mouldy\
2026-10-30 waste 6 lemons mouldy\
2026-10-31 waste 6 lemons mouldy\
2026-11-01 waste 1 grapefruit peeled and not used, 5 lemons mouldy
  2026-10-19 Bought: 10 grapefruits, €9.00.
  2026-10-19 Logged: 4 lemons, mouldy, €1.60.
  2026-10-20 Logged 2 lines
  2026-10-21 Logged: 6 lemons, mouldy, €2.40.
  2026-10-22 Logged: 3 lemons, mouldy, €1.20.
  2026-10-23 Logged 2 lines
  2026-10-24 Logged 2 lines
  2026-10-25 Logged 2 lines
  2026-10-26 Bought: 8 grapefruits, €7.20.
  2026-10-26 Logged 2 lines
  2026-10-27 Logged 2 lines
  2026-10-28 Logged 2 lines
  2026-10-29 Logged 2 lines
  2026-10-30 Logged: 6 lemons, mouldy, €2.40.
  2026-10-31 Logged: 6 lemons, mouldy, €2.40.
  2026-11-01 Logged 2 lines
@clock 2026-11-03 18:00 Europe/Lisbon
Ana: waste 2 lemons mouldy
  Logged: 2 lemons, mouldy, €0.80.
  Tue, 3 Nov so far: €0.80
  [Undo] [More waste]
Ana: bar drinks a week 300
  Drinks a week: 300
  [Money and work]
  [All settings] [Undo]
Ana: week
  Waste: €0.80
  Mon, 2 Nov to Sun, 8 Nov, still running
    lemon  2  €0.80
    mouldy  2  €0.80
  First 2 days of the week before: €6.00, too
  few nights to say
  Since the spray, beside lemon: grapefruit 88 %
  less (68 to 96 %)
  More than chance. It doesn't show why: a new
  menu would look the same.
  <picture waste-2026-W45.png>
  [More] [Picture]
  [Last week] [Log waste]
Ana: month last month
  Waste: €132.60
  Thu, 1 Oct to Sat, 31 Oct
    grapefruit   98  €88.20
    lemon       111  €44.40
    peeled and not used   98  €88.20
    mouldy               111  €44.40
  Of what was bought: grapefruit 56 %
  Nothing logged to compare with: Tue, 1 Sept to
  Wed, 30 Sept.
  Grapefruit, sprayed since 19 Oct 2026: no
  verdict yet. In whole weeks 14 nights were
  logged before and 7 since; it takes 14 each.
  <picture waste-2026-W44.png>
  [More] [Picture]
  [Log waste]
Ana taps [More]
  Waste: €132.60
  Thu, 1 Oct to Sat, 31 Oct
    peeled and not used   98  €88.20
    mouldy               111  €44.40
    early shift    0    €0.00
    late shift   209  €132.60
  Share of what was bought:
    grapefruit  56 %
  Grapefruit, sprayed since 19 Oct 2026: no
  verdict yet. In whole weeks 14 nights were
  logged before and 7 since; it takes 14 each.
  [Picture]
Ana: owner
  Cash: €32.36 ahead after 2 whole weeks
  A week: €38.68 less paid for fruit and spray
  (€271.21 more to €348.56 less), may be chance
  Time, apart: grapefruit 85 to 87 min less a
  week.
  Grapefruit: 88 % less (68 to 96 %)
  More than chance. It doesn't show why: a new
  menu would look the same.
  <picture owner-2026-11-03.png>
  <file owner-2026-11-03.pdf>
