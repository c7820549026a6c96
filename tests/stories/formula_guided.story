# A formula written down by answering questions, a line at a time.
@after opening

Ana: new formula
  What is it called?
  [Cancel]
Ana: Bay syrup
  Type the ingredients, a line each: lime oil 10
  ml
  [Back] [Cancel]
Ana: sugar 500 g
  More ingredients? Tap Done when it is
  complete.
  · sugar (new) 500 g
  [Done] [Back] [Cancel]
Ana: water 500 ml
  More ingredients? Tap Done when it is
  complete.
  · sugar (new) 500 g
  · water (new) 500 ml
  [Done] [Back] [Cancel]
Ana: bay leaf 6 each
  More ingredients? Tap Done when it is
  complete.
  · sugar (new) 500 g
  · water (new) 500 ml
  · bay leaf (new) 6
  [Done] [Back] [Cancel]
Ana: a pinch of luck
  1 what of pinch of luck? Add a unit, such as 1
  ml or 1 g.
  More ingredients? Tap Done when it is
  complete.
  · sugar (new) 500 g
  · water (new) 500 ml
  · bay leaf (new) 6
  [Done] [Back] [Cancel]
Ana taps [Back]
  (edited)
  More ingredients? Tap Done when it is
  complete.
  · sugar (new) 500 g
  · water (new) 500 ml
  [Done] [Back] [Cancel]
Ana: bay leaves 8 each
  More ingredients? Tap Done when it is
  complete.
  · sugar (new) 500 g
  · water (new) 500 ml
  · bay leaves (new) 8
  [Done] [Back] [Cancel]
Ana taps [Done]
  (edited)
  How long does it rest before use?
  [not at all] [24 hours]
  [48 hours]
  [Back] [Cancel]
Ana taps [24 hours]
  (edited)
  How long does it keep?
  [14 days] [7 days]
  [30 days] [180 days]
  [Back] [Cancel]
Ana: 10 days
  Bay syrup is in the book.
  Bay syrup: syrup, version 1
    sugar        500 g
    water       500 ml
    bay leaves       8
  Makes 815 ml
  Rests 24 hours, discard after 10 days
  Caution: Ask about allergies before serving,
  and say what house-made things a drink holds.
  [Scale] [Cost] [Make]
  [Change] [More]
  [Undo]
Ana: formulas
  1 formula in the book
  [Bay syrup (syrup)]
  [Add a formula]
Ana taps [Bay syrup (syrup)]
  Bay syrup: syrup, version 1
    sugar        500 g
    water       500 ml
    bay leaves       8
  Makes 815 ml
  Rests 24 hours, discard after 10 days
  Caution: Ask about allergies before serving,
  and say what house-made things a drink holds.
  [Scale] [Cost] [Make]
  [Change] [More]
