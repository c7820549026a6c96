# A hazy batch: which test comes next, what to add, and what the bar's own looks then say.
@after mist

Ana: price neutral spirit 700 ml 14.00
  neutral spirit: €14.00 for 700 ml
  [Undo] [Another price]
Ana: price grapefruit oil 100 ml 18.00
  grapefruit oil: €18.00 for 100 ml
  [Undo] [Another price]
Ana: price propylene glycol 1 l 12.00
  propylene glycol: €12.00 for 1 l
  [Undo] [Another price]
Ana: batch grapefruit mist to 8 x 50 ml
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
@clock + 6 h
Ana: why hazy 1
  Batch 1, hazy: let it rest
  Leave it closed at room temperature until Thu,
  26 Nov 18:00, then look again.
  Clear then: it only needed time. Still not:
  the next test.
  All tests:
    1 rested long enough    now
    2 room temperature    20 °C
    3 wax                 to do
    4 spirit's strength   to do
    5 water in glassware  to do
    6 too much oil        to do
  [Clear] [Hazy] [Split]
  [Next test]
@clock + 24 h
Ana: check 1 hazy at 5 C, straight from the fridge
  Batch 1, Grapefruit mist: hazy.
  Next: warm it.
  Stand it closed at 20 °C for some hours,
  swirl, and look: check 1 clear at 20 °C
  Clear then: the cold did it, so keep it
  warmer, or filter it cold. Still not: the next
  test.
  I will ask again in a day.
  Noted: straight from the fridge
  [What would mend it?]
  [Discard] [Undo]
Ana: check 1 hazy
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
Ana taps [What would mend it?]
  Batch 1, hazy: filter a sample
  Filter a glass of it through paper, and look
  the next day.
  Clear and stays so: it was wax or fine solids,
  so filter the rest: filtered 1, lost 12 ml
  Hazy again: not wax; the next test.
  All tests:
    1 rested long enough    yes
    2 room temperature    20 °C
    3 wax                   now
    4 spirit's strength   to do
    5 water in glassware  to do
    6 too much oil        to do
  [Clear] [Hazy] [Split]
  [Next test]
Ana taps [Next test]
  (edited)
  Batch 1, hazy: weigh the spirit
  Weigh 100 ml of neutral spirit at 20 °C: 96 %
  weighs 80.7 g.
  From 87 g on it is 76 % or weaker, too weak
  here. Lighter: the next test.
  All tests:
    1 rested long enough    yes
    2 room temperature    20 °C
    3 wax                 to do
    4 spirit's strength     now
    5 water in glassware  to do
    6 too much oil        to do
  [Clear] [Hazy] [Split]
  [Next test]
Ana: why hazy 1 4
  Batch 1, hazy: weigh the spirit
  Weigh 100 ml of neutral spirit at 20 °C: 96 %
  weighs 80.7 g.
  From 87 g on it is 76 % or weaker, too weak
  here. Lighter: the next test.
  All tests:
    1 rested long enough    yes
    2 room temperature    20 °C
    3 wax                 to do
    4 spirit's strength     now
    5 water in glassware  to do
    6 too much oil        to do
  [Clear] [Hazy] [Split]
  [Next test]
Ana: why hazy 1, 5
  Batch 1, hazy: make a dry sample
  Make 10 ml of it from the same bottles in dry
  glass, let it rest, and look.
  Clear: water was in the glassware; dry it, and
  add spirit to this batch. Not: the next test.
  About 31 ml of water are enough to cloud a
  batch of this size.
  All tests:
    1 rested long enough    yes
    2 room temperature    20 °C
    3 wax                 to do
    4 spirit's strength   to do
    5 water in glassware    now
    6 too much oil        to do
  [Clear] [Hazy] [Split]
  [Next test]
Ana: filtered 1, lost 10 ml
  Batch 1 filtered: 392 ml left.
  What went in cost €15.30, €3.90 for 100 ml.
  Swirl it, let it stand a day, and look again:
  I will ask.
  Caution: Keep it tightly closed, labelled,
  upright, cool and dark, away from heat and
  open bar bottles.
  [Clear] [Hazy] [Split]
  [Label] [Undo]
Ana: make it 12 ml
  Corrected: filtering of batch 1
  Batch 1 filtered: 390 ml left.
  What went in cost €15.30, €3.92 for 100 ml.
  Swirl it, let it stand a day, and look again:
  I will ask.
  Caution: Keep it tightly closed, labelled,
  upright, cool and dark, away from heat and
  open bar bottles.
  [Clear] [Hazy] [Split]
  [Label] [Undo]
Ana: check 1 hazy
  Batch 1, Grapefruit mist: hazy.
  Next: weigh the spirit.
  Weigh 100 ml of neutral spirit at 20 °C: 96 %
  weighs 80.7 g.
  From 87 g on it is 76 % or weaker, too weak
  here. Lighter: the next test.
  I will ask again in a day.
  [What would mend it?]
  [Discard] [Undo]
Ana: why hazy 1 6
  Batch 1, hazy: try more spirit on a sample
  Add 1 ml of neutral spirit to 10 ml of it,
  swirl, and wait an hour.
  Clear: add 39 ml to the batch. Not: make it
  anew with less oil.
  All tests:
    1 rested long enough    yes
    2 room temperature    20 °C
    3 wax                  done
    4 spirit's strength   to do
    5 water in glassware  to do
    6 too much oil          now
  [Add 39 ml neutral spirit]
  [Clear] [Hazy] [Split]
Ana: batch 1 add 29 ml spirit
  Batch 1: 29 ml neutral spirit added, now 419
  ml.
  64.4 % vol, from 62.1 % vol: print its label
  anew.
  What went in cost €15.88, €3.79 for 100 ml.
  Swirl it, let it stand a day, and look again:
  I will ask.
  Caution: Keep it tightly closed, labelled,
  upright, cool and dark, away from heat and
  open bar bottles.
  [Clear] [Hazy] [Split]
  [Label] [Undo]
Ana: batch 1
  Batch 1: Grapefruit mist, resting
  Next: check how it looks.
    grapefruit oil        50 ml
    propylene glycol      92 ml
    neutral spirit 96 %  289 ml
  419 ml made Wed, 25 Nov 18:00 by Ana, version
  1
  64.4 % vol
  Rested since Thu, 26 Nov 18:00: check how it
  looks
  Discard after 24 May 2027, 179 days left (the
  usual time for its kind)
  No listed allergen by name. Contains citrus.
  Fri, 27 Nov: checked, hazy (Ana)
  Fri, 27 Nov: filtered (Ana): −12 ml
  Fri, 27 Nov: checked, hazy (Ana)
  Fri, 27 Nov: added (Ana): 29 ml neutral spirit
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Clear] [Hazy] [Split]
  [Open it]
  [Discard] [Label] [Note a lot]
Ana: undo
  Undone: 29 ml neutral spirit in batch 1
  [Put it back]
Ana: put back
  Put back: 29 ml neutral spirit in batch 1
  [Undo]
Ana: undo
  Undone: 29 ml neutral spirit in batch 1
  [Put it back]
Ana: batch 1
  Batch 1: Grapefruit mist, resting
  Next: check how it looks.
    grapefruit oil        50 ml
    propylene glycol      92 ml
    neutral spirit 96 %  260 ml
  390 ml made Wed, 25 Nov 18:00 by Ana, version
  1
  62.1 % vol
  Rested since Thu, 26 Nov 18:00: check how it
  looks
  Discard after 24 May 2027, 179 days left (the
  usual time for its kind)
  No listed allergen by name. Contains citrus.
  Fri, 27 Nov: checked, hazy, 5 °C (Ana):
  straight from the fridge
  Fri, 27 Nov: checked, hazy (Ana)
  Fri, 27 Nov: filtered (Ana): −12 ml
  Fri, 27 Nov: checked, hazy (Ana)
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [What would mend it?]
  [Clear] [Hazy] [Split]
  [Open it]
  [Discard] [Label] [Note a lot]
Ana: undo
  Undone: check of batch 1
  [Put it back]
Ana: log
  Log of The Copper Gull, newest first
  #15 Fri, 27 Nov 00:00, Ana: undid #10
  #14 Fri, 27 Nov 00:00, Ana: undid #13
  #13 Fri, 27 Nov 00:00, Ana: put back: added 29
  ml neutral spirit to batch 1 (undone by #14)
  #12 Fri, 27 Nov 00:00, Ana: undid #11
  #11 Fri, 27 Nov 00:00, Ana: added 29 ml
  neutral spirit to batch 1 (undone by #12)
  #10 Fri, 27 Nov 00:00, Ana: checked batch 1
  (undone by #15)
  #9 Fri, 27 Nov 00:00, Ana: filtered batch 1,
  12 ml lost (instead of #8)
  #8 Fri, 27 Nov 00:00, Ana: filtered batch 1,
  10 ml lost (now #9)
  #7 Fri, 27 Nov 00:00, Ana: checked batch 1
  #6 Fri, 27 Nov 00:00, Ana: checked batch 1
  [Undo #9]
  [Older]
Ana: batch 1 add 29 ml spirit
  Batch 1: 29 ml neutral spirit added, now 419
  ml.
  64.4 % vol, from 62.1 % vol: print its label
  anew.
  What went in cost €15.88, €3.79 for 100 ml.
  Swirl it, let it stand a day, and look again:
  I will ask.
  Caution: Keep it tightly closed, labelled,
  upright, cool and dark, away from heat and
  open bar bottles.
  [Clear] [Hazy] [Split]
  [Label] [Undo]
Ana: check 1 clear
  Batch 1, Grapefruit mist: clear.
  It can be bottled and used.
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Open it] [Undo]
Ana: why hazy 1
  Batch 1 was clear at the last look. How is it
  now?
  [Clear] [Hazy] [Split]
Ana: clear grapefruit mist
  Grapefruit mist: hazy here when last looked at
  (batch 1)
  Seen here: hazy after 1 day (batch 1), hazy
  after 1 day (batch 1).
  By the models and 3 looks at this oil: clear
  about 3 times in 10.
  The hopeful model keeps it clear, the cautious
  one does not.
  Weakest spirit that clears it: 76 % by one
  model, none is strong enough by the other
  (yours 96 %)
  [Change to 9.5 ml grapefruit oil]
  [Change to 9.1 ml propylene glycol]
  [Change to 75 ml neutral spirit]
  [Scale it] [Aroma] [Map] [Another spirit]
  [More]
Ana: clear grapefruit mist picture
  Grapefruit mist: hazy here when last looked at
  (batch 1)
  By the models alone, drawn around your
  formula; the rested bottle decides.
  <picture clearing.png>
  [Will it clear?]
Ana: batch 1 add 10 ml gin
  I know no ingredient called “gin”.
Ana: filtered 1
  How much stayed in the filter?
  [0 ml] [10 ml] [20 ml]
  [Back] [Cancel]
Ana: filtered 1, lost 900 ml
  Batch 1 has only 419 ml.
Ana: why hazy 99
  There is no batch 99 in this bar.
