# A second bar of the same owner, and what is kept of a person.
@after mist

Ana: bars
  You are in 1 bar
  The Copper Gull, owner, you are here
  [Open another bar]
Ana taps [Open another bar]
  (edited)
  What is your bar called? Add the city if you
  like: The Blue Door, Boston
  I keep a small bar's amounts, batches and
  fruit waste, and remind you in time.
  [Ana's bar]
  [Cancel]
Ana: The Blue Heron
  Which city are you in?
  [London] [New York]
  [Chicago] [Los Angeles]
  [Sydney]
  [Back] [Cancel]
Ana: week
  No waste logged
  Mon, 23 Nov to Sun, 29 Nov, still running
  Nothing logged to compare with: Mon, 16 Nov to
  Tue, 17 Nov.
  [Last week] [Log waste]
  --
  Which city are you in?
  [London] [New York]
  [Chicago] [Los Angeles]
  [Sydney]
  [Back] [Cancel]
Ana: New York
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
Ana taps [Change something]
  (edited)
  Which country's food and drink rules? Limits
  and cautions follow them.
  [United States] [European Union]
  [United Kingdom] [your own country's]
  [Back] [Cancel]

Ana: US
  Which currency?
  [USD] [EUR] [GBP]
  [Back] [Cancel]
Ana: $
  How do you measure?
  [US fluid ounces]
  [ml and grams]
  [imperial fluid ounces]
  [Back] [Cancel]
Ana: US fluid ounces
  What's the latest you finish? Anything before
  then counts for the night before.
  [05:00] [04:00] [03:00]
  [02:00] [01:00] [06:00]
  [Back] [Cancel]
Ana: 04:00
  The Blue Heron is open.
  US fluid ounces · USD · America/New York · a
  day ends at 04:00
  At 03:30 I ask you what was thrown out.
  Another time: bar close reminder 02:30
  All of it can be changed with /bar. Next:
  write down what you make.
  [Add a formula] [Propose one]
  [Set a price] [Log waste]
Ana: formulas
  This bar has no formulas yet.
  Write the first one down: its name, then a
  line for each ingredient.
  [Add a formula] [Propose one]
Ana: bars
  You are in 2 bars
  The Copper Gull, owner
  The Blue Heron, owner, you are here
  [The Copper Gull]
  [Open another bar]
Ana taps [The Copper Gull]
  You are now at The Copper Gull.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Ana: grapefruit mist
  Grapefruit mist: aroma mist, version 1
    grapefruit oil       12 ml
    propylene glycol     22 ml
    neutral spirit 96 %  62 ml
  Makes 96 ml at 62 % vol
  Rests 24 hours, discard after 180 days
  Clearing: borderline, it may cloud, by
  estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
Ana in Bar: /another bar
  Not here: write that to me in our private
  chat.
Ana: privacy
  I keep your name, your number in this chat's
  service, your language, and what you logged.
  People at The Copper Gull see your name beside
  what you logged. Other bars see nothing.
  Whoever runs this bot holds the database and
  its backups.
  [All of it as a file] [Forget me]
Ana taps [Forget me]
  You own this bar: hand it over first, or
  delete it.
  [Team]
Ana: new bar called The Pier, Boston
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
Ana taps [Looks right]
  (edited)
  The Pier is open.
  US fluid ounces · USD · America/New York · a
  day ends at 05:00
  At 04:30 I ask you what was thrown out.
  Another time: bar close reminder 03:30
  All of it can be changed with /bar. Next:
  write down what you make.
  [Add a formula] [Propose one]
  [Set a price] [Log waste]
