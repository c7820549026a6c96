# A loud bar: something else to log while a formula is half written down, and a slip of the tongue.
@after mist

Ana: new formula
  What is it called?
  [Cancel]
Ana: Lime mist
  Type the ingredients, a line each: grapefruit
  oil 10 ml
  [Back] [Cancel]
Ana: lime oil 10 ml
  More ingredients? Tap Done when it is
  complete.
  · lime oil (new) 10 ml
  [Done] [Back] [Cancel]
Ana: waste 3 limes mouldy
  Logged: 3 limes, mouldy.
  No price for lime: not in the cost.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
  --
  More ingredients? Tap Done when it is
  complete.
  · lime oil (new) 10 ml
  [Done] [Back] [Cancel]
Ana: propylene glicol 22 ml
  More ingredients? Tap Done when it is
  complete.
  · lime oil (new) 10 ml
  · propylene glycol 22 ml
  [Done] [Back] [Cancel]
Ana: undo
  More ingredients? Tap Done when it is
  complete.
  · lime oil (new) 10 ml
  [Done] [Back] [Cancel]
Ana: propylene glycol 22 ml
  More ingredients? Tap Done when it is
  complete.
  · lime oil (new) 10 ml
  · propylene glycol 22 ml
  [Done] [Back] [Cancel]
Ana: batch 7
  There is no batch 7 in this bar.
  --
  More ingredients? Tap Done when it is
  complete.
  · lime oil (new) 10 ml
  · propylene glycol 22 ml
  [Done] [Back] [Cancel]
Ana: neutral spirit 70 ml
  More ingredients? Tap Done when it is
  complete.
  · lime oil (new) 10 ml
  · propylene glycol 22 ml
  · neutral spirit 70 ml
  [Done] [Back] [Cancel]
Ana: discard 40
  There is no batch 40 in this bar.
  --
  More ingredients? Tap Done when it is
  complete.
  · lime oil (new) 10 ml
  · propylene glycol 22 ml
  · neutral spirit 70 ml
  [Done] [Back] [Cancel]
Ana: language es
  Desde ahora hablo español contigo.
  Para los chats de todo el bar: bar idioma
  español
  [Anotar merma] [Lotes]
  [Escalar] [Coste] [Semana]
  [Ayuda]
Ana: listo
  Para servirte.
Ana: language en
  I speak English with you from now on.
  For the whole bar's chats: bar language
  English
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
# The same thing said anew takes the place of what was half said.
Ana: waste
  What was thrown out?
  [lime] [grapefruit]
  [orange] [lemon]
  [Cancel]
Ana: limes
  How many limes?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana: waste 2 lemons mouldy
  Logged: 2 lemons, mouldy.
  No price for lemon: not in the cost.
  New here: lemon.
  Unfinished and dropped: waste limes
  [Undo] [More waste]
  [Price of lemon]
Ana: undo
  Undone: 2 lemons, mouldy
  [Put it back]
# At once, after a colon.
Ana: new formula Lime cordial: lime juice 500 ml, sugar 500 g, kind cordial
  Lime cordial is in the book.
  Lime cordial: cordial, version 1
    lime juice  500 ml
    sugar        500 g
  Makes 815 ml
  Rests 24 hours, discard after 21 days
  No listed allergen by name. Contains citrus.
  Caution: Wash fruit whose peel is used, and
  choose untreated peel: wax and sprays sit on
  the skin.
  [Scale] [Cost] [Make]
  [Change] [More]
  [Undo]
# What begins like a command and answers no question is weighed as a free line.
Ana: waste limes
  How many limes?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana: wedding next saturday 120 people, 2 drinks each, lime cordial
  Sat, 28 Nov: 120 guests, about 240 drinks
    Lime cordial  500 ml  1 x 500 ml
  With a margin of 20 %: enough nine times in
  ten.
  Make by Wed, 25 Nov, with time for the rest
  and a second try: Lime cordial
  2 things to buy by Wed, 25 Nov
  No price, so not in the sum: lime juice, sugar
  Unfinished and dropped: waste limes
  <picture packing-2026-11-28.png>
  <file packing-2026-11-28.pdf>
  [Make Lime cordial]
  [Change] [Reminders] [Undo]
Ana: what do i pack
  Read as: packing list
  Sat, 28 Nov: 120 guests, about 240 drinks
    Lime cordial  500 ml  1 x 500 ml
  With a margin of 20 %: enough nine times in
  ten.
  Make by Wed, 25 Nov, with time for the rest
  and a second try: Lime cordial
  2 things to buy by Wed, 25 Nov
  No price, so not in the sum: lime juice, sugar
  <picture packing-2026-11-28.png>
  <file packing-2026-11-28.pdf>
  [Make Lime cordial]
  [Change] [Reminders]
Ana: cancel
  Nothing is in progress.
# Words before a colon.
Ana: put a drink on the menu: gimlet, 2 sprays lime cordial, 90 ml
  Read as: serve gimlet, 2 sprays lime cordial,
  90 ml
  Nothing is logged yet. Tap if that is right.
  [serve gimlet, 2 sprays lime cordial, 90 ml]
Ana taps [serve gimlet, 2 sprays lime cordial, 90 ml]
  Is that the name, and what goes on it?
  [serve gimlet: 2 sprays lime cordial, 90 ml]
