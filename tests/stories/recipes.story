# Recipes as people write them: the strength before the spirit, no units, a spread of sprays, no colon.
@after opening

Ana: new grapefruit mist: 12 ml grapefruit oil, 20 ml pg, 58 ml 96% spirit
  grapefruit mist is in the book.
  grapefruit mist: aroma mist, version 1
    grapefruit oil  12 ml
    pg              20 ml
    spirit 96 %     58 ml
  Makes 90 ml at 61.9 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: borderline, it may cloud, by
  estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, pg
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
  [Undo]

Ana: new lemon mist: 10 lemon oil, 20 pg and 70 spirit, 2 or 3 sprays, for lemons
  lemon mist is in the book.
  lemon mist: aroma mist, version 1
    lemon oil    10 ml
    pg           20 ml
    spirit 96 %  70 ml
  Makes 100 ml at 67.2 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each,
  instead of fresh lemon
  Clearing: should stay clear, by estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: lemon oil,
  pg
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [lemon oil: food grade] [Not sure]
  [Undo]

Ana: new lime mist 10 ml lime oil 20 ml pg 70 ml of 96 % spirit
  Is “lime mist” the name, and the rest what
  goes in?
  Tap it, or write: name, colon, then the
  ingredients with commas.
  [lime mist: 10 ml lime oil, 20 ml pg, 70 ml of 96 % spirit]

Ana taps [lime mist: 10 ml lime oil, 20 ml pg, 70 ml of 96 % spirit]
  lime mist is in the book.
  lime mist: aroma mist, version 1
    lime oil     10 ml
    pg           20 ml
    spirit 96 %  70 ml
  Makes 100 ml at 67.2 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: should stay clear, by estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: lime oil,
  pg
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [lime oil: food grade] [Not sure]
  [Undo]

Ana: new honey syrup: 2 lemons, 100 g sugar
  2 what of lemon? Add a unit, such as 2 ml or 2
  g.

Ana: new house syrup 2 to 1
  Type the ingredients, a line each: grapefruit
  oil 10 ml
  [Back] [Cancel]

Ana: cancel
  Cancelled. Nothing was logged.
