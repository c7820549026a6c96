# A group with privacy on: the bot sees commands and answers to its messages only.
@after mist

Ana in Team: hello everyone
  (nothing)
Ana in Team: /start
  This chat is now The Copper Gull's own:
  reminders for the team come here.
  Here, start with a slash or answer one of my
  messages: I read nothing else.
Ana in Team: /start@peel_ledger_bot
  You are at The Copper Gull, Ana.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Zoe in Team: /week
  This chat belongs to no bar that you are in.
  Ask a manager for a joining code, or write to
  me in a private chat.
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
Ben in Team: /waste@peel_ledger_bot 6 oranges mouldy
  Logged: 6 oranges, mouldy.
  No price for orange: not in the cost.
  New here: orange.
  [Undo] [More waste]
  [Price of orange]
Ben in Team: /waste
  What was thrown out?
  [orange] [grapefruit]
  [lemon] [lime]
  [Cancel]
Ben in Team answers: limes
  How many limes?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana in Team: /week
  Waste: no prices yet
  Mon, 23 Nov to Sun, 29 Nov, still running
    orange  6  no price
    mouldy  6  no price
  Without a price, so not counted: orange.
  Nothing logged to compare with: Mon, 16 Nov to
  Wed, 18 Nov.
  [More] [Picture]
  [Last week] [Log waste]
Ben in Team answers: 4
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ben in Team taps [mouldy]
  (edited)
  Logged: 4 limes, mouldy.
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]
Ben in Team: /batch grapefruit mist to 400 ml
  Batch 1: Grapefruit mist, 402 ml
  Resting until Thu, 26 Nov 18:00. I will remind
  you.
  Check it again on 25 Dec 2026.
  Discard after 24 May 2027: the usual time for
  its kind.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 1]
  [Note a lot] [Undo]
@clock + 24 h
@reminders
  (to Team)
  Closing The Copper Gull, Wed, 25 Nov: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  Late: this was due Thu, 26 Nov 04:30.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
  --
  (to Team)
  Batch 1, Grapefruit mist, has rested. How does
  it look?
  402 ml, discard after 24 May 2027
  [Clear] [Hazy] [Split]
  [In 2 hours] [Tomorrow]
Zoe in Team taps [Clear]
  This chat belongs to no bar that you are in.
  Ask a manager for a joining code, or write to
  me in a private chat.
Ben in Team taps [Clear]
  (edited)
  Batch 1, Grapefruit mist: clear.
  It can be bottled and used.
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Open it] [Undo]
