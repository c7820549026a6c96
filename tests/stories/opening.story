# Ana opens the bar with what is offered first.

Ana: /start
  What is your bar called? Add the city if you
  like: The Blue Door, Boston
  I keep a small bar's amounts, batches and
  fruit waste, and remind you in time.
  [Ana's bar]
  [Cancel]
Ana: The Copper Gull
  Which city are you in?
  [London] [New York]
  [Chicago] [Los Angeles]
  [Sydney]
  [Back] [Cancel]
Ana: Lisbon
  I'd set your bar up like this. Right?
  Clock: Lisbon time
  Food rules: European Union
  Money: EUR
  Measures: ml and grams
  Night ends by: 05:00
  Language: English
  [Looks right]
  [Change something]
  [Back] [Cancel]
Ana taps [Looks right]
  (edited)
  The Copper Gull is open.
  ml and grams · EUR · Europe/Lisbon · a day
  ends at 05:00
  At 04:30 I ask you what was thrown out.
  Another time: bar close reminder 03:30
  All of it can be changed with /bar. Next:
  write down what you make.
  [Add a formula] [Propose one]
  [Set a price] [Log waste]
