# The first formula, typed in one message: a line for each ingredient.
@after opening

Ana: new formula Grapefruit mist\
grapefruit oil 12 ml\
propylene glycol 22 ml\
neutral spirit 96 % 62 ml\
kind aroma mist\
replaces grapefruit\
sprays 2-3
  Grapefruit mist is in the book.
  Grapefruit mist: aroma mist, version 1
    grapefruit oil       12 ml
    propylene glycol     22 ml
    neutral spirit 96 %  62 ml
  Makes 96 ml at 62 % vol
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
