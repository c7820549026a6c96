# Guided, four taps from the first: Log waste, lemon, 6, mouldy.
@after opening

Ana: start
  You are at The Copper Gull, Ana.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Ana taps [Log waste]
  (edited)
  What was thrown out?
  [orange] [lemon]
  [lime] [grapefruit]
  [Cancel]
Ana taps [lemon]
  (edited)
  How many lemons?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana taps [6]
  (edited)
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ana taps [mouldy]
  (edited)
  Logged: 6 lemons, mouldy.
  No price for lemon: not in the cost.
  [Undo] [More waste]
  [Price of lemon]
Ana taps [More waste]
  (edited)
  What was thrown out?
  [lemon] [orange]
  [lime] [grapefruit]
  [Cancel]
Ana taps [lime]
  (edited)
  How many limes?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana taps [Other number]
  (edited)
  How many limes?
  [1] [2] [3]
  [4] [5] [6]
  [7] [8] [9]
  [0]
  [Back] [Cancel]
Ana taps [1]
  (edited)
  How many limes? 1_
  [1] [2] [3]
  [4] [5] [6]
  [7] [8] [9]
  [Erase] [0] [OK]
  [Back] [Cancel]
Ana taps [4]
  (edited)
  How many limes? 14_
  [1] [2] [3]
  [4] [5] [6]
  [7] [8] [9]
  [Erase] [0] [OK]
  [Back] [Cancel]
Ana taps [OK]
  (edited)
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ana taps [dried out]
  (edited)
  Logged: 14 limes, dried out.
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]
Ana taps [More waste]
  (edited)
  What was thrown out?
  [lime] [lemon]
  [orange] [grapefruit]
  [Cancel]
Ana taps [lime]
  (edited)
  How many limes?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana: 30
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ana: whatever
  “whatever” is not one of this bar's reasons.
  Tap one:
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ana taps [Cancel]
  (edited)
  Cancelled. Nothing was logged.
