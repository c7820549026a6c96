# What is said next means the last thing that was said: it is corrected, repeated, undone, and named.
@after opening

Ana: waste 6 limes
  Logged: 6 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: that was 5 not 6
  Corrected: 5 limes instead of 6
  No price for lime: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: sorry, lemons
  Corrected: 5 lemons instead of 5 limes
  No price for lemon: not in the cost.
  Why? One tap is enough.
  New here: lemon.
  [Undo] [More waste]
  [Price of lemon]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: make it 4
  Corrected: 4 lemons instead of 5
  No price for lemon: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lemon]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: mouldy not dried out
  “mouldy not dried out” does not fit what you
  logged last: 4 lemons.
  [Undo]
Ana: it was mouldy
  Corrected: 4 lemons, mouldy
  No price for lemon: not in the cost.
  [Undo] [More waste]
  [Price of lemon]
Ana: half of it
  Corrected: 2 lemons instead of 4, still mouldy
  No price for lemon: not in the cost.
  [Undo] [More waste]
  [Price of lemon]
Ana: and 3 limes
  Logged: 3 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: same again
  Logged: 3 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: delete the last one
  Undone: 3 limes
  [Put it back]
Ana: undo that
  Undone: 3 limes
  [Put it back]
Ana: make it 4
  Corrected: 4 lemons instead of 2, still mouldy
  No price for lemon: not in the cost.
  [Undo] [More waste]
  [Price of lemon]
Ana: undo
  Undone: 4 lemons, mouldy
  [Put it back]
Ana: undo
  There is nothing of yours to undo.
Ana: make it 5
  You have logged nothing here tonight.
Ana: same again
  You have logged nothing here tonight.
Ana: and 3 limes
  You have logged nothing here tonight.
  [waste 3 limes]
# An earlier thing of the same night is offered, never changed by itself.
Ana: waste 6 limes mouldy
  Logged: 6 limes, mouldy.
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]
Ana: price lemons 0.50 each
  lemon: €0.50 each
  [Undo] [Another price]
Ana: that was 0.55
  Corrected: price of lemon, €0.55 each instead
  of price of lemon, €0.50 each
  lemon: €0.55 each
  [Undo] [Another price]
Ana: no, 5 limes not 6
  “5 limes not 6” does not fit what you logged
  last: price of lemon, €0.55 each.
  Did you mean:
  [6 limes, mouldy]
Ana taps [6 limes, mouldy]
  (edited)
  Corrected: 5 limes instead of 6, still mouldy
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]

# Several things in one message: the one that the words name, or a question.
Ana: waste 2 oranges, 4 limes dried out
  Logged 2 lines
    2 oranges             no price
    4 limes    dried out  no price
  No price for lime, orange: not in the cost.
  Why the 2 oranges? One tap is enough.
  New here: orange.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: 5 limes not 4
  Corrected: 5 limes instead of 4, still dried
  out
    2 oranges             no price
    5 limes    dried out  no price
  No price for lime, orange: not in the cost.
  Why the 2 oranges? One tap is enough.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: make it 3
  Which one do you mean?
  2 oranges; 5 limes, dried out
  [2 oranges]
  [5 limes]
Ana taps [2 oranges]
  (edited)
  Corrected: 3 oranges instead of 2
    3 oranges             no price
    5 limes    dried out  no price
  No price for lime, orange: not in the cost.
  Why the 3 oranges? One tap is enough.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: double it
  Which one do you mean?
  3 oranges; 5 limes, dried out
  [3 oranges]
  [5 limes]

# A reply means the entry that it answers.
Ana: waste 7 oranges
  Logged: 7 oranges.
  No price for orange: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of orange]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana answers: make it 8
  Corrected: 8 oranges instead of 7
  No price for orange: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of orange]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana answers: delete that
  Undone: 8 oranges
  [Put it back]

# Other things than waste.
Ana: drinks 120
  Wed, 25 Nov: 120 drinks.
  [Undo] [By weekday] [Plan]
Ana: that was 130
  Corrected: 130 drinks instead of 120 drinks
  Wed, 25 Nov: 130 drinks.
  [Undo] [By weekday] [Plan]
Ana: count limes 24
  Counted: 24 limes.
  First count. After the next one I'll know what
  you used.
  [Undo] [Count more]
Ana: and 12 lemons
  Counted: 12 lemons.
  First count. After the next one I'll know what
  you used.
  [Undo] [Count more]
Ana: sorry, 14
  Corrected: 14 lemons counted instead of 12
  lemons counted
  Counted: 14 lemons.
  First count. After the next one I'll know what
  you used.
  [Undo] [Count more]
Ana: that was yesterday
  Corrected: 14 lemons counted
  Tue, 24 Nov. Counted: 14 lemons.
  First count. After the next one I'll know what
  you used.
  [Undo] [Count more]
Ana: peeled 4 oranges
  Peeled: 4 oranges, good until Thu, 26 Nov
  18:00.
  24 h is common practice (/bar peeled fruit); I
  will remind you before.
  About 330 ml juice (250 ml to 410 ml;
  published yield).
  To lime strength: 6.4 g citric + 4 g malic
  acid.
  [Juiced] [Binned] [In a batch]
  [Undo] [Acid for it]
Ana: it was 5, not 4
  Corrected: 5 oranges peeled instead of 4
  oranges peeled
  Peeled: 5 oranges, good until Thu, 26 Nov
  18:00.
  24 h is common practice (/bar peeled fruit); I
  will remind you before.
  About 410 ml juice (310 ml to 510 ml;
  published yield).
  To lime strength: 7.9 g citric + 5 g malic
  acid.
  [Juiced] [Binned] [In a batch]
  [Undo] [Acid for it]

# Answers to a question in progress.
Ana: waste
  What was thrown out?
  [lime] [lemon]
  [orange] [grapefruit]
  [Cancel]
Ana: limes
  How many limes?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana: sorry, lemons
  How many lemons?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana: 3
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ana: no, i meant 4
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ana: mouldy
  Logged: 4 lemons, mouldy, €2.20.
  Wed, 25 Nov so far: €2.20
  [Undo] [More waste]

# Another night: asked, and one tap away.
@clock +11 h
Ana: make it 6
  You have logged nothing here tonight.
  Do you mean this, of Wed, 25 Nov 18:00?
  [4 lemons, mouldy]
Ana: same again
  You have logged nothing here tonight.
  Do you mean this, of Wed, 25 Nov 18:00?
  [4 lemons, mouldy]
Ana: undo that
  You have logged nothing here tonight.
  Do you mean this, of Wed, 25 Nov 18:00?
  [4 lemons, mouldy]
Ana: and 2 limes
  You have logged nothing here tonight.
  Do you mean this, of Wed, 25 Nov 18:00?
  [4 lemons, mouldy]
Ana taps [4 lemons, mouldy]
  Logged: 2 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  Counted for Thu, 26 Nov: it is after closing.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [It was Wed, 25 Nov]

# Chat among people is not taken for it.
Ana: sorry about that
  I'm not sure what you want. One of these?
  For example: waste 6 limes mouldy
  [Change the last thing you logged]
  [Undo the last thing you logged]
  [The owner's page: what the spray saves]
Ana: actually i am tired
  I'm not sure what you want. One of these?
  For example: waste 6 limes mouldy
  [Change the last thing you logged]
  [Undo the last thing you logged]
  [Who is in the bar; invite someone]
Ana: no limes left
  I'm not sure what you want. One of these?
  For example: waste 6 limes mouldy
  [stock limes]
  [count limes]
  [Note that a batch is used up]
Ana: and then we went home
  That sounded like talk, so I did nothing. Or
  did you want one of these?
  For example: waste 6 limes mouldy
  [Note what came back from an event]
  [Log the same once more]
  [See and change the bar's settings]
