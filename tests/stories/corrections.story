# An entry has one current state. Reasons, edits, undo and put back change that one.
@after opening

Ana: price lemons 0.50 each
  lemon: €0.50 each
  New here: lemon.
  [Undo] [Another price]
Ana: price limes 0.30 each
  lime: €0.30 each
  New here: lime.
  [Undo] [Another price]
Ana: price oranges 0.60 each
  orange: €0.60 each
  New here: orange.
  [Undo] [Another price]

# A reason tapped, then the message edited: two lemons, and the reason stays.
Ana: waste 3 lemons
  Logged: 3 lemons, €1.50.
  Wed, 25 Nov so far: €1.50
  Why? One tap is enough.
  [Undo] [More waste]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana taps [dried out]
  (edited)
  3 lemons: dried out.
  [Undo] [More waste]
Ana edits: waste 2 lemons
  Corrected: 2 lemons instead of 3, still dried
  out
  Wed, 25 Nov so far: €1.00
  [Undo] [More waste]
Ana: week
  Waste: €1.00
  Mon, 23 Nov to Sun, 29 Nov, still running
    lemon  2  €1.00
    dried out  2  €1.00
  Nothing logged to compare with: Mon, 16 Nov to
  Wed, 18 Nov.
  <picture waste-2026-W48.png>
  [More] [Picture]
  [Last week] [Log waste]

# Only the reason changes.
Ana edits the one before: waste 2 lemons mouldy
  Corrected: 2 lemons, mouldy instead of dried
  out
  Wed, 25 Nov so far: €1.00
  [Undo] [More waste]
Ana: week
  Waste: €1.00
  Mon, 23 Nov to Sun, 29 Nov, still running
    lemon  2  €1.00
    mouldy  2  €1.00
  Nothing logged to compare with: Mon, 16 Nov to
  Wed, 18 Nov.
  <picture waste-2026-W48.png>
  [More] [Picture]
  [Last week] [Log waste]

# Undo under a reason undoes the whole entry.
Ana: waste 3 limes
  Logged: 3 limes, €0.90.
  Wed, 25 Nov so far: €1.90
  Why? One tap is enough.
  [Undo] [More waste]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana taps [dried out]
  (edited)
  3 limes: dried out.
  [Undo] [More waste]
Ana taps [Undo]
  Undone: 3 limes, dried out
  [Put it back]
Ana: week
  Waste: €1.00
  Mon, 23 Nov to Sun, 29 Nov, still running
    lemon  2  €1.00
    mouldy  2  €1.00
  Nothing logged to compare with: Mon, 16 Nov to
  Wed, 18 Nov.
  <picture waste-2026-W48.png>
  [More] [Picture]
  [Last week] [Log waste]
Ana taps [Put it back]
  Put back: 3 limes, dried out
  [Undo]
Ana: week
  Waste: €1.90
  Mon, 23 Nov to Sun, 29 Nov, still running
    lemon  2  €1.00
    lime   3  €0.90
    mouldy     2  €1.00
    dried out  3  €0.90
  Nothing logged to compare with: Mon, 16 Nov to
  Wed, 18 Nov.
  <picture waste-2026-W48.png>
  [More] [Picture]
  [Last week] [Log waste]

# Each undo goes one further back and never returns.
Ana: waste 7 oranges
  Logged: 7 oranges, €4.20.
  Wed, 25 Nov so far: €6.10
  Why? One tap is enough.
  [Undo] [More waste]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana taps [mouldy]
  (edited)
  7 oranges: mouldy.
  [Undo] [More waste]
Ana: undo
  Undone: 7 oranges, mouldy
  [Put it back]
Ana: undo
  Undone: 3 limes, dried out
  [Put it back]
Ana: undo
  Undone: 2 lemons, mouldy
  [Put it back]
Ana: week
  No waste logged
  Mon, 23 Nov to Sun, 29 Nov, still running
  Nothing logged to compare with: Mon, 16 Nov to
  Tue, 17 Nov.
  [Last week] [Log waste]
Ana: put it back
  Put back: 2 lemons, mouldy
  [Undo]
Ana: log
  Log of The Copper Gull, newest first
  #17 Wed, 25 Nov 18:00, Ana: put back: waste: 2
  lemons, mouldy
  #16 Wed, 25 Nov 18:00, Ana: undid #7
  #15 Wed, 25 Nov 18:00, Ana: undid #11
  #14 Wed, 25 Nov 18:00, Ana: undid #13
  #13 Wed, 25 Nov 18:00, Ana: gave a reason: 7
  oranges, mouldy (undone by #14)
  #12 Wed, 25 Nov 18:00, Ana: waste: 7 oranges
  (now #13)
  #11 Wed, 25 Nov 18:00, Ana: put back: waste: 3
  limes, dried out (undone by #15)
  #10 Wed, 25 Nov 18:00, Ana: undid #9
  #9 Wed, 25 Nov 18:00, Ana: gave a reason: 3
  limes, dried out (undone by #10)
  #8 Wed, 25 Nov 18:00, Ana: waste: 3 limes (now
  #9)
  [Undo #17]
  [Older]

# Any number of the chain means the chain.
Ana: waste 4 oranges
  Logged: 4 oranges, €2.40.
  Wed, 25 Nov so far: €3.40
  Why? One tap is enough.
  [Undo] [More waste]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana taps [dried out]
  (edited)
  4 oranges: dried out.
  [Undo] [More waste]
Ana: undo 17
  Undone: 2 lemons, mouldy
  [Put it back]
Ana: undo 18
  Undone: 4 oranges, dried out
  [Put it back]
Ana: undo 17
  You undid that at 18:00.
  [Put it back]
Ana: undo 19
  You undid that at 18:00.
  [Put it back]
Ana: undo 19
  You undid that at 18:00.
  [Put it back]
Ana: waste 5 oranges
  Logged: 5 oranges, €3.00.
  Wed, 25 Nov so far: €3.00
  Why? One tap is enough.
  [Undo] [More waste]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: undo
  Undone: 5 oranges
  [Put it back]
Ana edits the one before: waste 6 oranges
  What that message logged was undone at 18:00.
  Send it as a new message to log it.
  [Put it back]

# Several lines: only the changed one changes.
Ana: waste 1 lime mouldy\
drinks 120\
waste 2 oranges mouldy
  Logged: 1 lime, mouldy, €0.30.
  Wed, 25 Nov so far: €0.30
  [Undo] [More waste]
  --
  Wed, 25 Nov: 120 drinks.
  [Undo] [By weekday] [Plan]
  --
  Logged: 2 oranges, mouldy, €1.20.
  Wed, 25 Nov so far: €1.50
  [Undo] [More waste]
Ana edits: waste 1 lime mouldy\
drinks 140\
waste 2 oranges mouldy
  Corrected: 140 drinks instead of 120 drinks
  Wed, 25 Nov: 140 drinks.
  [Undo] [By weekday] [Plan]
Ana: log
  Log of The Copper Gull, newest first
  #27 Wed, 25 Nov 18:00, Ana: counted 140 drinks
  (instead of #25)
  #26 Wed, 25 Nov 18:00, Ana: waste: 2 oranges,
  mouldy
  #25 Wed, 25 Nov 18:00, Ana: counted 120 drinks
  (now #27)
  #24 Wed, 25 Nov 18:00, Ana: waste: 1 lime,
  mouldy
  #23 Wed, 25 Nov 18:00, Ana: undid #22
  #22 Wed, 25 Nov 18:00, Ana: waste: 5 oranges
  (undone by #23)
  #21 Wed, 25 Nov 18:00, Ana: undid #19
  #20 Wed, 25 Nov 18:00, Ana: undid #17
  #19 Wed, 25 Nov 18:00, Ana: gave a reason: 4
  oranges, dried out (undone by #21)
  #18 Wed, 25 Nov 18:00, Ana: waste: 4 oranges
  (now #19)
  [Undo #27] [Undo #26] [Undo #24]
  [Older]

# Several fruits in one line: only what changed is said.
Ana: waste 2 oranges, 4 limes dried out
  Logged 2 lines
    2 oranges             €1.20
    4 limes    dried out  €1.20
  Wed, 25 Nov so far: €3.90
  Why the 2 oranges? One tap is enough.
  [Undo] [More waste]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana edits: waste 2 oranges, 3 limes
  Corrected: 3 limes instead of 4, still dried
  out
    2 oranges             €1.20
    3 limes    dried out  €0.90
  Wed, 25 Nov so far: €3.60
  Why the 2 oranges? One tap is enough.
  [Undo] [More waste]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana edits: waste 3 limes, 1 lemon mouldy
  Corrected: 1 lemon instead of 2 oranges,
  mouldy
    3 limes  dried out  €0.90
    1 lemon     mouldy  €0.50
  Wed, 25 Nov so far: €2.90
  [Undo] [More waste]

# What was changed later has to be undone first.
Ana: par limes 20
  lime: I remind you below 20 pieces.
  It was never counted, so count it once: stock
  lime 1.4 l
  [Undo] [All stock]
Ana: par limes 30
  lime: I remind you below 30 pieces.
  It was never counted, so count it once: stock
  lime 1.4 l
  [Undo] [All stock]
@restart
Ana: undo 31
  You changed the same at 18:00.
  Undo that first: undo 32
  [Undo #32]
Ana taps [Undo #32]
  Undone: par of lime
  [Put it back]
Ana: undo 31
  Undone: par of lime
  [Put it back]

# Two people.
Ana: team invite
  Send this to your new member:
  join ‹code›
  Good for 1 person until Wed, 2 Dec 18:00. Only
  you can see it.
Ben: join ‹code›
  Welcome to The Copper Gull.
  You can scale, make batches and log waste
  here.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Ben: waste 6 lemons mouldy
  Logged: 6 lemons, mouldy, €3.00.
  Wed, 25 Nov so far: €5.90
  [Undo] [More waste]
Ana: undo 36
  Undone: 6 lemons, mouldy
  [Put it back]
Ben: undo
  There is nothing of yours to undo.
Ben: undo 36
  Ana undid that at 18:00.
Ben: undo 37
  Only a manager or Ana can change that.
Ana taps [Put it back]
  Put back: 6 lemons, mouldy
  [Undo]
Ben: undo
  Undone: 6 lemons, mouldy
  [Put it back]
