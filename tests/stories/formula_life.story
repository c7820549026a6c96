# A change makes a new version, old batches keep theirs; rename, put away, bring back.
@after mist

Ana: batch grapefruit mist x1
  Batch 1: Grapefruit mist, 96 ml
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
Ana: change grapefruit mist: grapefruit oil 10 ml, neutral spirit 64 ml
  Grapefruit mist is now version 2. Batches keep
  the version they were made with.
  Grapefruit mist: aroma mist, version 2
    grapefruit oil       10 ml
    propylene glycol     22 ml
    neutral spirit 96 %  64 ml
  Makes 96 ml at 64 % vol
  Rests 24 hours, discard after 180 days
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
Ana: batch grapefruit mist x1
  Batch 2: Grapefruit mist, 96 ml
  Resting until Thu, 26 Nov 18:00. I will remind
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
Ana: batch 1
  Batch 1: Grapefruit mist, resting
    grapefruit oil       12 ml
    propylene glycol     22 ml
    neutral spirit 96 %  62 ml
  96 ml made Wed, 25 Nov 18:00 by Ana, version 1
  62 % vol
  Rests until Thu, 26 Nov 18:00, 24 hours more
  Discard after 24 May 2027, 180 days left (the
  usual time for its kind)
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Clear] [Hazy] [Split]
  [Open it]
  [Discard] [Label] [Note a lot]
Ana: batch 2
  Batch 2: Grapefruit mist, resting
    grapefruit oil       10 ml
    propylene glycol     22 ml
    neutral spirit 96 %  64 ml
  96 ml made Wed, 25 Nov 18:00 by Ana, version 2
  64 % vol
  Rests until Thu, 26 Nov 18:00, 24 hours more
  Discard after 24 May 2027, 180 days left (the
  usual time for its kind)
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Clear] [Hazy] [Split]
  [Open it]
  [Discard] [Label] [Note a lot]
Ana: formula grapefruit mist version 1
  Grapefruit mist: aroma mist, version 1
    grapefruit oil       12 ml
    propylene glycol     22 ml
    neutral spirit 96 %  62 ml
  Makes 96 ml at 62 % vol
  Rests 24 hours, discard after 180 days
  Clearing: borderline, it may cloud, by
  estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
Ana: undo
  Undone: batch 2, Grapefruit mist
  [Put it back]
Ana: change grapefruit mist
  What changes in Grapefruit mist? A line each:
  grapefruit oil 12 ml, remove water, rest 24 h,
  sprays 2-3
    grapefruit oil       10 ml
    propylene glycol     22 ml
    neutral spirit 96 %  64 ml
  [Back] [Cancel]
Ana: remove propylene glycol
  Grapefruit mist is now version 3. Batches keep
  the version they were made with.
  Grapefruit mist: aroma mist, version 3
    grapefruit oil       10 ml
    neutral spirit 96 %  64 ml
  Makes 74 ml at 83 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each,
  instead of fresh grapefruit
  Clearing: should stay clear, by estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
  [Undo]
Ana: change grapefruit mist: remove sugar
  I know no ingredient called “sugar”.
Ana: rename grapefruit mist to Pink haze
  Grapefruit mist is now called Pink haze.
  [Undo]
Ana: rename pink haze
  What is it called?
  [Back] [Cancel]
Ana: Pale haze
  Pink haze is now called Pale haze.
  [Undo]
Ana taps [Undo]
  Undone: Pink haze renamed to Pale haze
  [Put it back]
Ana: archive pink haze
  Pink haze is put away. Its batches and history
  stay.
  [Undo] [Bring back]
Ana: formulas
  This bar has no formulas yet.
  Write the first one down: its name, then a
  line for each ingredient.
  [Add a formula] [Propose one]
Ana: scale pink haze x2
  I know no formula called “pink haze”.
  [Formulas]
Ana: new formula pink haze
  There is a formula called Pink haze, put away.
  Bring it back with: restore Pink haze
  [Bring back]
Ana: cancel
  Nothing was logged.
Ana: restore pink haze
  Pink haze: aroma mist, version 3
    grapefruit oil       10 ml
    neutral spirit 96 %  64 ml
  Makes 74 ml at 83 % vol
  Rests 24 hours, discard after 180 days
  Clearing: should stay clear, by estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
Ana: formulas
  1 formula in the book
  [Pink haze (aroma mist)]
  [Add a formula]
Ana: new formula Pink Haze\
lime oil 3 ml
  There is already a formula called Pink haze.
