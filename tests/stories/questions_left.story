# A line that is wholly something else leaves a question for a name, and undo means what was noted last.
@after mist

Ana: serve
  Which drink?
  [Cancel]
Ana: undo
  Cancelled. Nothing was logged.
Ana: serve
  Which drink?
  [Cancel]
Ana: menu
  No drinks are on the list yet.
  Put one on it: serve negroni: 2 orange mist,
  90 ml
  [Add a drink]
Ana: new formula
  What is it called?
  [Cancel]
Ana: new formula
  What is it called?
  [Cancel]
Ana: Test mist
  Type the ingredients, a line each: grapefruit
  oil 10 ml
  [Back] [Cancel]
Ana: waste 2 limes mouldy
  Logged: 2 limes, mouldy.
  No price for lime: not in the cost.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
  --
  Type the ingredients, a line each: grapefruit
  oil 10 ml
  [Back] [Cancel]
Ana: undo
  Undone: 2 limes, mouldy
  [Put it back]
  --
  Type the ingredients, a line each: grapefruit
  oil 10 ml
  [Back] [Cancel]
Ana: undo
  What is it called?
  [Cancel]
Ana: cancel
  Cancelled. Nothing was logged.
Ana: waste 3 zarbs
  zarbs is new here. A fruit?
  [New fruit: zarb]
  [Not a fruit: zarb]
  [Cancel]
Ana: undo
  Nothing was logged.
Ana: waste 3 zarbs
  zarbs is new here. A fruit?
  [New fruit: zarb]
  [Not a fruit: zarb]
  [Cancel]
Ana: nvm
  Nothing was logged.
Ana: waste 600 limes
  600 limes?
  [Yes, 600 limes]
  [Change] [Cancel]
Ana: yes
  Logged: 600 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: yes
  Nothing is waiting for a yes.
Ana: waste 4 lemons
  Logged: 4 lemons.
  No price for lemon: not in the cost.
  Why? One tap is enough.
  New here: lemon.
  [Undo] [More waste]
  [Price of lemon]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: sorry, 2 lemons not 4
  Corrected: 2 lemons instead of 4
  No price for lemon: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lemon]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: the lemons were dried out
  Corrected: 2 lemons, dried out
  No price for lemon: not in the cost.
  [Undo] [More waste]
  [Price of lemon]
Ana: waste 2 kg lemons
  Logged: 2 kg lemons.
  No price for lemon: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lemon]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: sorry, 3 lemons not 2 kg
  Corrected: 3 lemons instead of 2 kg lemons
  No price for lemon: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lemon]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
