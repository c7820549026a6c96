# A stranger is refused politely; a code lets a member in, once; a second bar sees nothing of the first.
@after opening

Cleo: waste 6 oranges
  You are not in a bar yet.
  Open your own, or join one with the code a
  manager gives you: join CODE
  [Open a bar] [Join with a code]
Cleo: join 1-1-AAAAAAAAAA
  That joining code does not work: it may have
  been used, or its time may be over.
  Ask a manager for a new one.
Cleo: join
  What is the joining code? A manager of the bar
  makes one with /team.
  [Cancel]
Cleo: cancel
  Cancelled. Nothing was logged.
Ana: team
  The Copper Gull: 1 in the team
  Ana, owner, since 25 Nov 2026
  [Invite a member]
  [Invite a manager]
  [Log] [Leave]
Ana taps [Invite a member]
  (edited)
  For how many people?
  [1] [3] [10]
  [Back] [Cancel]
Ana taps [1]
  (edited)
  For how long?
  [1 day] [7 days] [30 days]
  [Back] [Cancel]
Ana taps [7 days]
  (edited)
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
Dan: join ‹code›
  That joining code does not work: it may have
  been used, or its time may be over.
  Ask a manager for a new one.
Cleo: team
  The Copper Gull: 2 in the team
  Ana, owner, since 25 Nov 2026
  Cleo, member, since 25 Nov 2026
  [Log] [Leave]
Cleo: team invite
  Only a manager can do that. Ask one to do it,
  or to make you a manager.
Cleo: bar currency USD
  Only a manager can do that. Ask one to do it,
  or to make you a manager.
Cleo: bar
  The Copper Gull
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
Cleo: formulas
  This bar has no formulas yet.
  Write the first one down: its name, then a
  line for each ingredient.
  [Propose one]
Ana: team
  The Copper Gull: 2 in the team
  Ana, owner, since 25 Nov 2026
  Cleo, member, since 25 Nov 2026
  [Invite a member]
  [Invite a manager]
  [Remove Cleo] [Make Cleo manager]
  [Log] [Leave]
Ana taps [Make Cleo manager]
  Cleo is now manager.
Cleo: team invite
  Send this to your new member:
  join ‹code›
  Good for 1 person until Wed, 2 Dec 18:00. Only
  you can see it.
Ana: team
  The Copper Gull: 2 in the team
  Ana, owner, since 25 Nov 2026
  Cleo, manager, since 25 Nov 2026
  [Invite a member]
  [Invite a manager]
  [Remove Cleo] [Make Cleo member]
  [Log] [Leave]
Ana taps [Remove Cleo]
  Cleo is out of the bar now.
  [Forget the name too]
Cleo: waste 6 oranges
  You are not in a bar yet.
  Open your own, or join one with the code a
  manager gives you: join CODE
  [Open a bar] [Join with a code]

# Dan opens a bar of his own: nothing of The Copper Gull is in it.
Ana: new formula Grapefruit mist\
grapefruit oil 12 ml\
neutral spirit 96 % 62 ml\
kind aroma mist
  Grapefruit mist is in the book.
  Grapefruit mist: aroma mist, version 1
    grapefruit oil       12 ml
    neutral spirit 96 %  62 ml
  Makes 74 ml at 80.4 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: should stay clear, by estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
  [Undo]
Ana: waste 3 limes
  Logged: 3 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Dan: start
  What is your bar called? Add the city if you
  like: The Blue Door, Boston
  I keep a small bar's amounts, batches and
  fruit waste, and remind you in time.
  [Dan's bar]
  [Cancel]
Dan: The Low Tide
  Which city are you in?
  [London] [New York]
  [Chicago] [Los Angeles]
  [Sydney]
  [Back] [Cancel]
Dan: Porto
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
Dan: EU
  The Low Tide is open.
  ml and grams · EUR · Europe/Lisbon · a day
  ends at 05:00
  At 04:30 I ask you what was thrown out.
  Another time: bar close reminder 03:30
  All of it can be changed with /bar. Next:
  write down what you make.
  [Add a formula] [Propose one]
  [Set a price] [Log waste]
Dan: formulas
  This bar has no formulas yet.
  Write the first one down: its name, then a
  line for each ingredient.
  [Add a formula] [Propose one]
Dan: scale grapefruit mist x2
  I know no formula called “grapefruit mist”.
  [Formulas]
Dan: week
  No waste logged
  Mon, 23 Nov to Sun, 29 Nov, still running
  Nothing logged to compare with: Mon, 16 Nov to
  Tue, 17 Nov.
  [Last week] [Log waste]
Dan: batch 1
  There is no batch 1 in this bar.
Dan: undo
  There is nothing of yours to undo.
Dan: team
  The Low Tide: 1 in the team
  Dan, owner, since 25 Nov 2026
  [Invite a member]
  [Invite a manager]
  [Log] [Leave]
