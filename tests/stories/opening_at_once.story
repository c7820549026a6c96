# A bar whose name comes with its city; the proposal taken but for what differs.

Bea: /start
  What is your bar called? Add the city if you
  like: The Blue Door, Boston
  I keep a small bar's amounts, batches and
  fruit waste, and remind you in time.
  [Bea's bar]
  [Cancel]

Bea: The Salt Stair, Boston
  I'd set your bar up like this. Right?
  Clock: New York time
  Food rules: United States
  Money: USD
  Measures: US fluid ounces
  Night ends by: 05:00
  Language: English
  [Looks right]
  [Change something]
  [Back] [Cancel]

Bea: what?
  I can't tell what “what?” changes. Type it
  like: we close at 2am, euros, ml
  I'd set your bar up like this. Right?
  Clock: New York time
  Food rules: United States
  Money: USD
  Measures: US fluid ounces
  Night ends by: 05:00
  Language: English
  [Looks right]
  [Change something]
  [Back] [Cancel]

Bea: we close at 2am and euros
  The Salt Stair is open.
  US fluid ounces · EUR · America/New York · a
  day ends at 02:00
  At 01:30 I ask you what was thrown out.
  Another time: bar close reminder 00:30
  All of it can be changed with /bar. Next:
  write down what you make.
  [Add a formula] [Propose one]
  [Set a price] [Log waste]

Bea: bar currency dollars
  Currency: USD
  Prices and waste logged before keep their
  numbers: they are not converted.
  [Money and work]
  [All settings] [Undo]

Dan: start
  What is your bar called? Add the city if you
  like: The Blue Door, Boston
  I keep a small bar's amounts, batches and
  fruit waste, and remind you in time.
  [Dan's bar]
  [Cancel]

Dan: La Sal
  Which city are you in?
  [London] [New York]
  [Chicago] [Los Angeles]
  [Sydney]
  [Back] [Cancel]

Dan: Valencia
  Which “Valencia”?
  Which city are you in?
  [Valencia, Venezuela]
  [Valencia, Spain]
  [Valencia, California, United States]
  [Valencia, Ecuador]
  [London] [New York]
  [Chicago] [Los Angeles]
  [Sydney]
  [Back] [Cancel]
