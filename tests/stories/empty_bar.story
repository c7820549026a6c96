# A file into an empty bar: the dry run names every setting that it would change.
@after mist

Ana: bar closing hour 02:00
  Closing hour: 02:00
  [Hours and reminders]
  [All settings] [Undo]
Ana: bar currency USD
  Currency: USD
  Prices and waste logged before keep their
  numbers: they are not converted.
  [Money and work]
  [All settings] [Undo]
Ana: export
  All of The Copper Gull, as files.
    formulas  1
    prices    0
    waste     0
    batches   0
  The JSON file holds everything and can be sent
  back to me; the tables are for reading.
  <file formulas.csv>
  <file prices.csv>
  <file waste.csv>
  <file batches.csv>
  <file peel-ledger.json>
Ben: start
  What is your bar called? Add the city if you
  like: The Blue Door, Boston
  I keep a small bar's amounts, batches and
  fruit waste, and remind you in time.
  [Ben's bar]
  [Cancel]
Ben: what is this?
  That looks like a question. What is the bar
  called? For help: help
  What is your bar called? Add the city if you
  like: The Blue Door, Boston
  I keep a small bar's amounts, batches and
  fruit waste, and remind you in time.
  [Ben's bar]
  [Cancel]
Ben: Second Bar
  Which city are you in?
  [London] [New York]
  [Chicago] [Los Angeles]
  [Sydney]
  [Back] [Cancel]
Ben: Lisbon
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
Ben taps [Looks right]
  (edited)
  Second Bar is open.
  ml and grams · EUR · Europe/Lisbon · a day
  ends at 05:00
  At 04:30 I ask you what was thrown out.
  Another time: bar close reminder 03:30
  All of it can be changed with /bar. Next:
  write down what you make.
  [Add a formula] [Propose one]
  [Set a price] [Log waste]
Ben sends peel-ledger.json
  peel-ledger.json would add 5 new rows. Nothing
  is added yet.
                 new  here
    ingredients    4     0
    formulas       1     0
  This bar's book is empty, so the settings in
  the file come in too.
  currency: USD instead of EUR
  closing hour: 02:00 instead of 05:00
  close reminder: 01:30 instead of 04:30
  [Import it]
Ben taps [Import it]
  (edited)
  5 rows of peel-ledger.json are in.
                 new  here
    ingredients    4     0
    formulas       1     0
  This bar's book is empty, so the settings in
  the file come in too.
  currency: USD instead of EUR
  closing hour: 02:00 instead of 05:00
  close reminder: 01:30 instead of 04:30
  [Undo]
  [Formulas] [Batches] [Week]
Ben: bar closing hour
  What should closing hour be?
  Now: 02:00
  [05:00] [04:00]
  [03:00] [02:00]
  [Back] [Cancel]
Ben: cancel
  Cancelled. Nothing was logged.
Ben: undo
  Undone: import of peel-ledger.json
  It had added 5 rows.
Ben: bar
  Second Bar
  closing hour: 05:00
  close reminder: 04:30
  time zone: Europe/Lisbon
  units: ml and grams
  currency: EUR
  rules: European Union
  language: English
  All of them are on these pages. Or type: bar
  currency EUR
  [Hours and reminders]
  [Measuring]
  [Money and work]
  [The bar, labels, waste]
