# A fruit named in another language than the bar's is no new word, and may be one of two.
@after opening

Ana: waste 4 limones
  Which limones?
  [lemon]
  [lime]
  [Cancel]
Ana taps [lime]
  (edited)
  Logged: 4 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste 2 limones mouldy
  Logged: 2 limes, mouldy.
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]
Ana: waste 3 soft limones
  soft limones: limes, or a new fruit?
  [limes]
  [New fruit: soft limón]
  [Cancel]
Ana: waste 2 limons
  Logged: 2 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
