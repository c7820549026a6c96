# Everything as files, for a manager and in private only.
@after mist

Ana: waste 6 oranges mouldy
  Logged: 6 oranges, mouldy.
  No price for orange: not in the cost.
  New here: orange.
  [Undo] [More waste]
  [Price of orange]
Ana: export
  All of The Copper Gull, as files.
    formulas  1
    prices    0
    waste     1
    batches   0
  The JSON file holds everything and can be sent
  back to me; the tables are for reading.
  <file formulas.csv>
  <file prices.csv>
  <file waste.csv>
  <file batches.csv>
  <file peel-ledger.json>
Ana: import
  Send me the file: the JSON of an export, or a
  table of formulas, prices or waste as CSV.
  I first show what it would add, and add
  nothing until you say yes.
  In the terminal: import FILE
Ana: import waste.csv
  I find no file “waste.csv” here.
  In a chat, send me the file itself, up to 5
  MB.
Ana: import #7
  I no longer have that file: send it again.
Ana in Team: /start
  This chat is now The Copper Gull's own:
  reminders for the team come here.
  Here, start with a slash or answer one of my
  messages: I read nothing else.
Ana in Team: /export
  Not here: write that to me in our private
  chat.
