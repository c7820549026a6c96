# Recipes as people paste them: bullets, dashes, remarks in brackets, bottles, shares of the whole.
@after opening

Ana: new formula
  What is it called?
  [Cancel]
Ana: Orange mist
  Type the ingredients, a line each: lime oil 10
  ml
  [Back] [Cancel]
Ana: 10 ml sweet orange oil (one bottle)\
190 ml 96% alcohol
  More ingredients? Tap Done when it is
  complete.
  · sweet orange oil (new) 10 ml
  · alcohol 96 % (new) 190 ml
  [Done] [Back] [Cancel]
Ana: water 28%
  Got “water 28%”. How many?
  More ingredients? Tap Done when it is
  complete.
  · sweet orange oil (new) 10 ml
  · alcohol 96 % (new) 190 ml
  [Done] [Back] [Cancel]
Ana: kind mist
  More ingredients? Tap Done when it is
  complete.
  · sweet orange oil (new) 10 ml
  · alcohol 96 % (new) 190 ml
  · kind aroma mist
  [Done] [Back] [Cancel]
Ana taps [Done]
  (edited)
  How long does it rest before use?
  [24 hours] [not at all]
  [48 hours]
  [Back] [Cancel]
Ana taps [24 hours]
  (edited)
  How long does it keep?
  [180 days] [7 days]
  [30 days]
  [Back] [Cancel]
Ana taps [180 days]
  (edited)
  How many sprays per drink?
  [1] [2] [2-3] [3]
  [Back] [Cancel]
Ana taps [2]
  (edited)
  Which fruit's peel does it stand in for?
  [oranges]
  [None]
  [Back] [Cancel]
Ana taps [oranges]
  (edited)
  Orange mist is in the book.
  Orange mist: aroma mist, version 1
    sweet orange oil   10 ml
    alcohol 96 %      190 ml
  Makes 200 ml at 91.2 % vol
  Rests 24 hours, discard after 180 days
  2 sprays a drink, 0.067 to 0.1 ml each,
  instead of fresh orange
  Clearing: should stay clear, by estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: sweet
  orange oil, alcohol
  Not kept: (one bottle)
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [sweet orange oil: food grade] [Not sure]
  [Undo]

Ana: new formula
  What is it called?
  [Cancel]
Ana: Lemon mist: - 10 ml lemon oil, 100 ml alcohol (96%)
  Lemon mist is in the book.
  Lemon mist: aroma mist, version 1
    lemon oil      10 ml
    alcohol 96 %  100 ml
  Makes 110 ml at 87.3 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: should stay clear, by estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: lemon oil,
  alcohol
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [lemon oil: food grade] [Not sure]
  [Undo]

Ana: new Lime mist: 2% lime oil, 70% alcohol 96%, 20% water
  Those shares add up to 92 %, not to 100 %.
  Write all of them, such as: 2% lime oil, 70%
  spirit 96%, 28% water. Or amounts: 10 ml lime
  oil
Ana: new Lime mist: 2% lime oil, 70% alcohol 96%, 28% water
  Lime mist is in the book.
  Lime mist: aroma mist, version 1
    lime oil       2 ml
    alcohol 96 %  70 ml
    water         28 ml
  Makes 97.5 ml at 68.9 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: should stay clear, by estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: lime oil,
  alcohol
  Shares by volume, written down for 100 ml.
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [lime oil: food grade] [Not sure]
  [Undo]
Ana: recipe Grapefruit mist: one bottle of grapefruit oil 10 ml, 200 ml alcohol 96%
  Read as: new Grapefruit mist: one bottle of
  grapefruit oil 10 ml, 200 ml alcohol 96%
  Nothing is logged yet. Tap if that is right.
  [new Grapefruit mist: one bottle of grapefruit oil 10 ml, 200 ml alcohol 96%]
Ana taps [new Grapefruit mist: one bottle of grapefruit oil 10 ml, 200 ml alcohol 96%]
  Grapefruit mist is in the book.
  Grapefruit mist: aroma mist, version 1
    grapefruit oil   10 ml
    alcohol 96 %    200 ml
  Makes 210 ml at 91.4 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: should stay clear, by estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, alcohol
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
  [Undo]
Ana: new 10 ml lime oil\
100 ml alcohol
  “10 ml lime oil” is an amount. What is the
  formula called?
Ana: new Bad mist: 10 ml lime oil, some of that thing, 5 ml water
  Got “Bad mist: 10 ml lime oil, some of that
  thing”. What about “, 5 ml water”?
  For example: new formula Lime tincture
  lime oil 10 ml
  neutral spirit 96 % 90 ml
  kind tincture
  rest 14 days
  [Step by step] [More examples]
