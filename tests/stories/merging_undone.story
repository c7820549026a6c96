# A formula version written after a merging goes on from an older one: an undo gives it the old name too.
@after opening

Ana: new formula Sour mist\
grapefruit oil 12 ml\
neutral spirit 96 % 62 ml\
glycol blend 22 ml\
kind aroma mist
  Sour mist is in the book.
  Sour mist: aroma mist, version 1
    grapefruit oil       12 ml
    neutral spirit 96 %  62 ml
    glycol blend         22 ml
  Makes 96 ml at 62 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: borderline, it may cloud, by
  estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, glycol blend
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
  [Undo]
Ana: new formula Other mist\
orange oil 12 ml\
neutral spirit 96 % 62 ml\
propylene glycol 22 ml\
kind aroma mist
  Other mist is in the book.
  Other mist: aroma mist, version 1
    orange oil           12 ml
    neutral spirit 96 %  62 ml
    propylene glycol     22 ml
  Makes 96 ml at 62 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: borderline, it may cloud, by
  estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: orange oil,
  propylene glycol
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [orange oil: food grade] [Not sure]
  [Undo]
Ana: merge glycol blend into propylene glycol
  glycol blend is now propylene glycol.
  Its waste, prices, deliveries, counts,
  formulas and batches went with it.
  [Undo] [Stock of propylene glycol]
Ana: change sour mist: grapefruit oil 13 ml
  Sour mist is now version 2. Batches keep the
  version they were made with.
  Sour mist: aroma mist, version 2
    grapefruit oil       13 ml
    neutral spirit 96 %  62 ml
    propylene glycol     22 ml
  Makes 97 ml at 61.4 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
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
Ana: change other mist: orange oil 13 ml
  Other mist is now version 2. Batches keep the
  version they were made with.
  Other mist: aroma mist, version 2
    orange oil           13 ml
    neutral spirit 96 %  62 ml
    propylene glycol     22 ml
  Makes 97 ml at 61.4 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: borderline, it may cloud, by
  estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: orange oil,
  propylene glycol
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [orange oil: food grade] [Not sure]
  [Undo]
Ana: formula sour mist
  Sour mist: aroma mist, version 2
    grapefruit oil       13 ml
    neutral spirit 96 %  62 ml
    propylene glycol     22 ml
  Makes 97 ml at 61.4 % vol
  Rests 24 hours, discard after 180 days
  Clearing: borderline, it may cloud, by
  estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
Ana: undo 3
  Undone: glycol blend merged into propylene
  glycol
  [Put it back]
Ana: formula sour mist
  Sour mist: aroma mist, version 2
    grapefruit oil       13 ml
    neutral spirit 96 %  62 ml
    glycol blend         22 ml
  Makes 97 ml at 61.4 % vol
  Rests 24 hours, discard after 180 days
  Clearing: borderline, it may cloud, by
  estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, glycol blend
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
Ana: formula other mist
  Other mist: aroma mist, version 2
    orange oil           13 ml
    neutral spirit 96 %  62 ml
    propylene glycol     22 ml
  Makes 97 ml at 61.4 % vol
  Rests 24 hours, discard after 180 days
  Clearing: borderline, it may cloud, by
  estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: orange oil,
  propylene glycol
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [orange oil: food grade] [Not sure]
