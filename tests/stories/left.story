# Who left, or was removed, still gets what is kept of them, and can have their name taken out.
@after mist

Ana: invite 2 people
  Send this to your new member:
  join ‹code›
  Good for 2 people until Wed, 2 Dec 18:00. Only
  you can see it.
Ben: join ‹code›
  Welcome to The Copper Gull.
  You can scale, make batches and log waste
  here.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Cleo: join ‹code›
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
Cleo: waste 2 limes mouldy
  Logged: 2 limes, mouldy.
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]
Ben: leave yes
  You have left The Copper Gull.
  What you logged stays in its log under your
  name.
  [All of it as a file] [Forget me]
Ben taps [All of it as a file]
  Still kept of you at The Copper Gull, with
  your name, number and language.
  <file my-data.json>
  [Forget me]
Ben: privacy
  I keep your name, your number in this chat's
  service, your language, and what you logged.
  A bar you left still shows your name beside
  what you logged there.
  Whoever runs this bot holds the database and
  its backups.
  [All of it as a file] [Forget me]
Ben: forget me
  Take your name out of The Copper Gull? It
  cannot be undone.
  What you logged stays, under “former member”.
  [Yes, forget me]
Ben taps [Yes, forget me]
  Your name is gone from The Copper Gull.
Ana: team remove cleo
  Cleo is out of the bar now.
  [Forget the name too]
Cleo: waste 2 limes
  You are not in a bar yet.
  Open your own, or join one with the code a
  manager gives you: join CODE
  [Open a bar] [Join with a code]
Cleo: export me
  Still kept of you at The Copper Gull, with
  your name, number and language.
  <file my-data.json>
  [Forget me]
# With a bar of her own by now, what the other still holds of her is in the file as well.
Cleo: start
  What is your bar called? Add the city if you
  like: The Blue Door, Boston
  I keep a small bar's amounts, batches and
  fruit waste, and remind you in time.
  [Cleo's bar]
  [Cancel]
Cleo taps [Open a bar]
  (edited)
  What is your bar called? Add the city if you
  like: The Blue Door, Boston
  I keep a small bar's amounts, batches and
  fruit waste, and remind you in time.
  [Cleo's bar]
  [Cancel]
Cleo: The Blue Heron
  Which city are you in?
  [London] [New York]
  [Chicago] [Los Angeles]
  [Sydney]
  [Back] [Cancel]
Cleo: New York
  I'd set your bar up like this. Right?
  Clock: New York time
  Food rules: United States
  Money: USD
  Measures: US fluid ounces
  Night ends by: 05:00
  Language: English
  [Looks right]
  [Change something]
  [Back] [Cancel]
Cleo taps [Change something]
  (edited)
  Which country's food and drink rules? Limits
  and cautions follow them.
  [United States] [European Union]
  [United Kingdom] [your own country's]
  [Back] [Cancel]

Cleo: US
  Which currency?
  [USD] [EUR] [GBP]
  [Back] [Cancel]
Cleo: $
  How do you measure?
  [US fluid ounces]
  [ml and grams]
  [imperial fluid ounces]
  [Back] [Cancel]
Cleo: US fluid ounces
  What's the latest you finish? Anything before
  then counts for the night before.
  [05:00] [04:00] [03:00]
  [02:00] [01:00] [06:00]
  [Back] [Cancel]
Cleo: 04:00
  The Blue Heron is open.
  US fluid ounces · USD · America/New York · a
  day ends at 04:00
  At 03:30 I ask you what was thrown out.
  Another time: bar close reminder 02:30
  All of it can be changed with /bar. Next:
  write down what you make.
  [Add a formula] [Propose one]
  [Set a price] [Log waste]
Cleo: export me
  Everything The Blue Heron keeps about you: 2
  rows.
  Photos stay with the chat; here are only their
  numbers.
  It also has what is still kept of you at The
  Copper Gull.
  <file my-data.json>
  [Forget me]
  [Forget me where I left]
Cleo taps [Forget me where I left]
  Take your name out of The Copper Gull? It
  cannot be undone.
  What you logged stays, under “former member”.
  [Yes, forget me]
Cleo taps [Yes, forget me]
  Your name is gone from The Copper Gull.
Cleo: forget me where i left
  No bar that you left holds your name.
Ana: log
  Log of The Copper Gull, newest first
  #8 Wed, 25 Nov 18:00, former member: forgot a
  member's name
  #7 Wed, 25 Nov 18:00, Ana: took former member
  out of the bar
  #6 Wed, 25 Nov 18:00, former member: forgot a
  member's name
  #5 Wed, 25 Nov 18:00, former member: left the
  bar
  #4 Wed, 25 Nov 18:00, former member: waste: 2
  limes, mouldy
  #3 Wed, 25 Nov 18:00, former member: waste: 3
  limes, mouldy
  #2 Wed, 25 Nov 18:00, Ana: made a joining code
  #1 Wed, 25 Nov 18:00, Ana: wrote down
  Grapefruit mist
  [Undo #4] [Undo #3] [Undo #1]
# Of somebody who never was in a bar there is little.
Dan: export me
  I keep your name, your number here and your
  language.
  <file my-data.json>
  [Forget me]
Dan: forget me
  Forget your name, your number here and your
  language?
  [Yes, forget me]
