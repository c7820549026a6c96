# Inviting, roles, handing the bar over, removal at once, and who did what.
@after opening

Ana: team
  The Copper Gull: 1 in the team
  Ana, owner, since 25 Nov 2026
  [Invite a member]
  [Invite a manager]
  [Log] [Leave]
Ana taps [Invite a manager]
  (edited)
  For how many people?
  [1] [3] [10]
  [Back] [Cancel]
Ana taps [1]
  (edited)
  For how long?
  [1 day] [7 days] [30 days]
  [Back] [Cancel]
Ana taps [30 days]
  (edited)
  Send this to your new manager:
  join ‹code›
  Good for 1 person until Fri, 25 Dec 18:00.
  Only you can see it.
Ben: join ‹code›
  Welcome to The Copper Gull.
  You can scale, make batches and log waste
  here.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Ana: invite 2 people 1 day
  Send this to your new member:
  join ‹code›
  Good for 2 people until Thu, 26 Nov 18:00.
  Only you can see it.
Cleo: join ‹code›
  Welcome to The Copper Gull.
  You can scale, make batches and log waste
  here.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Ben: price limes 0.30 each
  lime: €0.30 each
  New here: lime.
  [Undo] [Another price]
Cleo: price limes 0.50 each
  lime: €0.50 each
  66.7 % more than before.
  [Undo] [Another price]
Ben: team
  The Copper Gull: 3 in the team
  Ana, owner, since 25 Nov 2026
  Ben, manager, since 25 Nov 2026
  Cleo, member, since 25 Nov 2026
  [Invite a member]
  [Remove Cleo]
  [Log] [Leave]
Ana: team
  The Copper Gull: 3 in the team
  Ana, owner, since 25 Nov 2026
  Ben, manager, since 25 Nov 2026
  Cleo, member, since 25 Nov 2026
  [Invite a member]
  [Invite a manager]
  [Remove Ben] [Make Ben member]
  [Remove Cleo] [Make Cleo manager]
  [Log] [Leave]
Ana taps [Make Cleo manager]
  Cleo is now manager.
Ana: team owner Ben
  Hand the bar over to Ben? Only the owner can
  give it back.
  [Yes, make Ben the owner]
Ana taps [Yes, make Ben the owner]
  Ben is now the owner, and you are a manager.
Ana: team remove Ben
  Only the owner of the bar can do that.
Ben: team
  The Copper Gull: 3 in the team
  Ben, owner, since 25 Nov 2026
  Ana, manager, since 25 Nov 2026
  Cleo, manager, since 25 Nov 2026
  [Invite a member]
  [Invite a manager]
  [Remove Ana] [Make Ana member]
  [Remove Cleo] [Make Cleo member]
  [Log] [Leave]
Ben taps [Remove Cleo]
  Cleo is out of the bar now.
  [Forget the name too]
Cleo: batches
  You are not in a bar yet.
  Open your own, or join one with the code a
  manager gives you: join CODE
  [Open a bar] [Join with a code]
Ben: log
  Log of The Copper Gull, newest first
  #7 Wed, 25 Nov 18:00, Ben: took Cleo out of
  the bar
  #6 Wed, 25 Nov 18:00, Ana: made Ben the owner
  #5 Wed, 25 Nov 18:00, Ana: made Cleo manager
  #4 Wed, 25 Nov 18:00, Cleo: price of lime,
  €0.50 each
  #3 Wed, 25 Nov 18:00, Ben: price of lime,
  €0.30 each
  #2 Wed, 25 Nov 18:00, Ana: made a joining code
  #1 Wed, 25 Nov 18:00, Ana: made a joining code
  [Undo #4] [Undo #3]
Ben: leave
  You own this bar: hand it over first.
  Say: team owner, and a name. Or delete the
  bar: delete bar
  [Team]
Ana: leave
  Leave The Copper Gull? You will need a new
  code to come back.
  [Yes, leave]
  [Stay]
Ana taps [Yes, leave]
  You have left The Copper Gull.
  What you logged stays in its log under your
  name.
  [All of it as a file] [Forget me]
Ana: week
  You are not in a bar yet.
  Open your own, or join one with the code a
  manager gives you: join CODE
  [Open a bar] [Join with a code]
