# What came out of an infusion after straining: its strength with the water of the peel, and its label.
@after opening

Ana: new formula Orange infusion\
orange peel 80 g\
neutral spirit 96 % 500 ml\
kind infusion
  Orange infusion is in the book.
  Orange infusion: infusion, version 1
    orange peel            80 g
    neutral spirit 96 %  500 ml
  Makes 500 ml at 96 % vol
  Rests 48 hours, discard after 30 days
  Weak or fresh: keep it refrigerated and ask
  your inspector how long.
  No listed allergen by name. Contains citrus.
  Caution: Use only spirit sold for drinking:
  cleaning, surgical and denatured alcohol is
  poison.
  [Scale] [Cost] [Make]
  [Change] [More]
  [Undo]
Ana: batch orange infusion x1
  Batch 1: Orange infusion, 500 ml
  Resting until Fri, 27 Nov 18:00. I will remind
  you.
  Check it again on 26 Nov 2026.
  Discard after 25 Dec 2026: weak or fresh, so
  shorter than its kind.
  Keep refrigerated.
  How long it may be kept where you are: ask
  your inspector.
  Caution: Keep it tightly closed, labelled,
  upright, cool and dark, away from heat and
  open bar bottles.
  [Show batch 1]
  [Note a lot] [Undo]
@clock +49 h
@reminders
  (to private ana)
  Closing The Copper Gull, Thu, 26 Nov: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  I didn't ask about 1 earlier night.
  Late: this was due Fri, 27 Nov 04:30.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
  --
  (to private ana)
  Batch 1, Orange infusion: time for another
  look. How is it?
  500 ml
  Late: this was due Thu, 26 Nov 16:00.
  [Clear] [Hazy] [Split]
  [Tomorrow] [Discard]
  --
  (to private ana)
  Batch 1, Orange infusion, has rested. Strain
  it: how much comes out?
  500 ml, discard after 25 Dec 2026
  Late: this was due Fri, 27 Nov 18:00.
  [Strained]
  [In 2 hours] [Tomorrow]
Ana: batch 1
  Batch 1: Orange infusion, resting
  Next: strain it.
    orange peel            80 g
    neutral spirit 96 %  500 ml
  500 ml made Wed, 25 Nov 18:00 by Ana, version
  1
  96 % vol
  Rested since Fri, 27 Nov 18:00: check how it
  looks
  Discard after 25 Dec 2026, 28 days left (weak
  or fresh, so shorter than its kind)
  No listed allergen by name. Contains citrus.
  Caution: Keep it tightly closed, labelled,
  upright, cool and dark, away from heat and
  open bar bottles.
  [Strained]
  [Clear] [Hazy] [Split]
  [Open it]
  [Discard] [Label] [Note a lot]
Ana taps [Strained]
  (edited)
  How much came out after straining? 500 ml went
  in.
  [Back] [Cancel]
Ana: 430 ml
  Batch 1, Orange infusion: 430 ml came out.
  86 to 96 % vol: the fruit gave it water, all
  of it at the lower end. The label says so too.
  [Check] [Label] [Undo]
Ana: make it 440 ml
  Corrected: straining of batch 1
  Batch 1, Orange infusion: 440 ml came out.
  86 to 96 % vol: the fruit gave it water, all
  of it at the lower end. The label says so too.
  [Check] [Label] [Undo]
Ana: batch 1
  Batch 1: Orange infusion, resting
  Next: check how it looks.
    orange peel            80 g
    neutral spirit 96 %  500 ml
  500 ml made Wed, 25 Nov 18:00 by Ana, version
  1
  440 ml of it came out after straining
  86 to 96 % vol
  Rested since Fri, 27 Nov 18:00: check how it
  looks
  Discard after 25 Dec 2026, 28 days left (weak
  or fresh, so shorter than its kind)
  No listed allergen by name. Contains citrus.
  Fri, 27 Nov: strained (Ana)
  Caution: Keep it tightly closed, labelled,
  upright, cool and dark, away from heat and
  open bar bottles.
  [Clear] [Hazy] [Split]
  [Open it]
  [Discard] [Label] [Note a lot]
Ana: strength batch 1
  Batch 1, Orange infusion: 86 to 96 % vol
    Poured in      500 ml
    Makes          500 ml
    Ethanol in it  480 ml
  Not counted: orange peel.
  As poured 96 % vol; the fruit's water is in it
  now.
  It can light from about 14 °C upwards: highly
  flammable (category 2: flashes below 23 °C).
  An estimate, some degrees off either way.
Ana: undo
  Undone: straining of batch 1
  [Put it back]
Ana: strained 1, 700 ml
  At most 557 ml can come out, with all the
  water of the fruit. Measure it again.
Ana: strained 1 0 ml
  An amount above zero, please, such as 40 ml.
Ana: strained 1 530 ml
  Batch 1, Orange infusion: 530 ml came out.
  86 to 91 % vol: the fruit gave it water, all
  of it at the lower end. The label says so too.
  [Check] [Label] [Undo]
Ana: log
  Log of The Copper Gull, newest first
  #6 Fri, 27 Nov 19:00, Ana: strained batch 1:
  530 ml
  #5 Fri, 27 Nov 19:00, Ana: undid #4
  #4 Fri, 27 Nov 19:00, Ana: strained batch 1:
  440 ml (instead of #3) (undone by #5)
  #3 Fri, 27 Nov 19:00, Ana: strained batch 1:
  430 ml (now #4)
  #2 Wed, 25 Nov 18:00, Ana: made batch 1,
  Orange infusion
  #1 Wed, 25 Nov 18:00, Ana: wrote down Orange
  infusion
  [Undo #6]
