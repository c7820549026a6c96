# One's own data as a file, a name forgotten, and a bar deleted only by its name, with a warning before.
@after mist

Ana: bar close reminder off
  Close reminder: off
  [Hours and reminders]
  [All settings] [Undo]
Ana: invite
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
Ben: waste 3 limes mouldy
  Logged: 3 limes, mouldy.
  No price for lime: not in the cost.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
Ben: export me
  Everything The Copper Gull keeps about you: 3
  rows.
  Photos stay with the chat; here are only their
  numbers.
  <file my-data.json>
  [Forget me]
Ben: forget me
  Leave The Copper Gull and take your name out
  of it? It cannot be undone.
  What you logged stays, under “former member”.
  [Yes, forget me]
  [Stay]
Ben taps [Yes, forget me]
  You have left The Copper Gull, and your name
  is gone from it.
Ana: log
  Log of The Copper Gull, newest first
  #5 Wed, 25 Nov 18:00, former member: forgot a
  member's name
  #4 Wed, 25 Nov 18:00, former member: waste: 3
  limes, mouldy
  #3 Wed, 25 Nov 18:00, Ana: made a joining code
  #2 Wed, 25 Nov 18:00, Ana: settings: close
  reminder
  #1 Wed, 25 Nov 18:00, Ana: wrote down
  Grapefruit mist
  [Undo #4] [Undo #2] [Undo #1]
Ana: forget me
  You own this bar: hand it over first, or
  delete it.
  [Team]
Ana: invite
  Send this to your new member:
  join ‹code›
  Good for 1 person until Wed, 2 Dec 18:00. Only
  you can see it.
Cleo: join ‹code›
  Welcome to The Copper Gull.
  You can scale, make batches and log waste
  here.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Cleo: delete bar
  Only the owner of the bar can do that.
Ana: delete bar
  To delete The Copper Gull with all its
  formulas, batches and waste, type its name.
  [Cancel]
Ana: The Silver Gull
  That is not its name. Nothing is deleted.
  To delete The Copper Gull with all its
  formulas, batches and waste, type its name.
  [Cancel]
Ana: the copper  gull
  The Copper Gull will be deleted on Wed, 2 Dec
  18:00.
  Until then all works as before, and you can
  keep it after all.
  I will warn the team a day before. Take a copy
  first: export
  [Keep the bar]
@clock +143 h
@reminders
  (nothing)
@clock +1 h
@reminders
  (to private ana)
  The Copper Gull will be deleted on Wed, 2 Dec
  18:00, with everything in it.
  Its owner can keep it until then. A copy:
  export. Your own data: export me.
  [Keep the bar]
  --
  (to private cleo)
  The Copper Gull will be deleted on Wed, 2 Dec
  18:00, with everything in it.
  Its owner can keep it until then. A copy:
  export. Your own data: export me.
Cleo: keep bar
  Only the owner of the bar can do that.
Ana taps [Keep the bar]
  The Copper Gull stays.
Ana: start
  You are at The Copper Gull, Ana.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
@clock +2 days
@reminders
  (nothing)
