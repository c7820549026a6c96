# Nothing changes except what was said.
@after mist

Ana: new formula Pale mist: grapefruit oil 5 ml, neutral spirit 75 % 60 ml, kind aroma mist
  Your neutral spirit is 96 %. Another spirit,
  or has it changed?
  [Another spirit: neutral spirit 75 %]
  [It is 75 % now]
  [Cancel]
Ana taps [Another spirit: neutral spirit 75 %]
  (edited)
  Pale mist is in the book.
  Pale mist: aroma mist, version 1
    grapefruit oil        5 ml
    neutral spirit 75 %  60 ml
  Makes 65 ml at 69.2 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: borderline, it may cloud, by
  estimate
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
Ana: strength neutral spirit
  neutral spirit: 96 % vol
    Density at 20 °C   0.8074 g/ml
    Ethanol by weight      93.84 %
  It can light from about 14 °C upwards: highly
  flammable (category 2: flashes below 23 °C).
  An estimate, some degrees off either way.
  [Water it down]
Ana: new formula Weak mist: grapefruit oil 5 ml, neutral spirit 70 % 60 ml, kind aroma mist
  Your neutral spirit is 96 %. Another spirit,
  or has it changed?
  [Another spirit: neutral spirit 70 %]
  [It is 70 % now]
  [Cancel]
Ana taps [It is 70 % now]
  (edited)
  Weak mist is in the book.
  Weak mist: aroma mist, version 1
    grapefruit oil        5 ml
    neutral spirit 70 %  60 ml
  Makes 65 ml at 64.6 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: borderline, it may cloud, by
  estimate
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
Ana: strength neutral spirit
  neutral spirit: 70 % vol
    Density at 20 °C   0.8856 g/ml
    Ethanol by weight      62.39 %
  It can light from about 21 °C upwards: highly
  flammable (category 2: flashes below 23 °C).
  An estimate, some degrees off either way.
Ana: undo
  Undone: new formula Weak mist
  neutral spirit: 96 % vol
  [Put it back]
Ana: strength neutral spirit
  neutral spirit: 96 % vol
    Density at 20 °C   0.8074 g/ml
    Ethanol by weight      93.84 %
  It can light from about 14 °C upwards: highly
  flammable (category 2: flashes below 23 °C).
  An estimate, some degrees off either way.
  [Water it down]
Ana: undo
  Undone: new formula Pale mist
  [Put it back]
Ana taps [Put it back]
  Put back: new formula Pale mist
  [Undo]
Ana: strength neutral spirit
  neutral spirit: 96 % vol
    Density at 20 °C   0.8074 g/ml
    Ethanol by weight      93.84 %
  It can light from about 14 °C upwards: highly
  flammable (category 2: flashes below 23 °C).
  An estimate, some degrees off either way.
  [Water it down]
Ana: change grapefruit mist: neutral spirit 80 % 260 ml
  Your neutral spirit is 96 %. Another spirit,
  or has it changed?
  [Another spirit: neutral spirit 80 %]
  [It is 80 % now]
  [Cancel]
Ana taps [It is 80 % now]
  (edited)
  Grapefruit mist is now version 2. Batches keep
  the version they were made with.
  Grapefruit mist: aroma mist, version 2
    grapefruit oil        12 ml
    propylene glycol      22 ml
    neutral spirit 80 %  260 ml
  Makes 294 ml at 70.7 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each,
  instead of fresh grapefruit
  Clearing: should stay clear, by estimate
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
Ana: undo
  Undone: change of Grapefruit mist
  neutral spirit: 96 % vol
  [Put it back]
Ana: strength neutral spirit
  neutral spirit: 96 % vol
    Density at 20 °C   0.8074 g/ml
    Ethanol by weight      93.84 %
  It can light from about 14 °C upwards: highly
  flammable (category 2: flashes below 23 °C).
  An estimate, some degrees off either way.
  [Water it down]
Ana: change pale mist: 0.1 ml a spray
  Got “pale mist: 0.1 ml a”. What about “spray”?
  For example: change grapefruit mist:
  grapefruit oil 14 ml
  [Step by step] [More examples]
Ana: new formula Bloom mist: orris tincture 5 ml, neutral spirt 60 ml, kind aroma mist
  New here: orris tincture, neutral spirt.
  Right?
  [Yes, new]
  [neutral spirt is neutral spirit]
  [Cancel]
Ana taps [neutral spirt is neutral spirit]
  New here: orris tincture. Right?
  [Yes, new]
  [Cancel]
Ana taps [Yes, new]
  (edited)
  Bloom mist is in the book.
  Bloom mist: aroma mist, version 1
    orris tincture        5 ml
    neutral spirit 96 %  60 ml
  Makes 65 ml at 88.6 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Caution: Use only spirit sold for drinking:
  cleaning, surgical and denatured alcohol is
  poison.
  [Scale] [Cost] [Make]
  [Change] [More]
  [Undo]
# The expiry of a lot is an expiry.
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
Ana: lot 1 pg 77-B exp 2027-05
  Batch 1: propylene glycol is lot 77-B.
  Best before 31 May 2027.
  [Another lot] [Undo]
Ana: lot 1 grapefruit oil A1 exp 12/2026
  Batch 1: grapefruit oil is lot A1.
  Best before 31 Dec 2026.
  The batch goes by that day too, instead of 24
  May 2027.
  [Another lot] [Undo]
Ana: batch 1
  Batch 1: Grapefruit mist, resting
    grapefruit oil [A1, best
    before 31 Dec 2026]        50 ml
    propylene glycol [77-B,
    best before 31 May 2027]   92 ml
    neutral spirit 96 %       260 ml
  402 ml made Wed, 25 Nov 18:00 by Ana, version
  3
  62.1 % vol
  Rests until Thu, 26 Nov 18:00, 24 hours more
  Discard after 31 Dec 2026, 36 days left (the
  earliest date among what went into it,
  grapefruit oil)
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Clear] [Hazy] [Split]
  [Open it]
  [Discard] [Label] [Note a lot]
Ana: undo
  Undone: lot A1 in batch 1
  Discard after 24 May 2027, 180 days left
  [Put it back]
Ana: lot 1 pg 77-B expires soon
  When does lot 77-B expire? Write it as
  2027-05, or 2027-05-31.
Ana: check 1 hazy
  Batch 1, Grapefruit mist: hazy.
  Next: let it rest.
  Leave it closed at room temperature until Thu,
  26 Nov 18:00, then look again.
  Clear then: it only needed time. Still not:
  the next test.
  I will ask again in a day.
  [What would mend it?]
  [Discard] [Undo]
Ana: open 1
  Batch 1, Grapefruit mist, is in use.
  It is still resting, until Thu, 26 Nov 18:00.
  It was hazy at the last check. Nobody has seen
  it clear yet.
  Opening it started another clock: time since
  the bottle was opened.
  Discard after 23 Feb 2027, 90 days left
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Used up] [Undo]
