# Money by its sign: taken where only one currency has it, or where it is the land's own.
Ana: /start
  What is your bar called? Add the city if you
  like: The Blue Door, Boston
  I keep a small bar's amounts, batches and
  fruit waste, and remind you in time.
  [Ana's bar]
  [Cancel]
Ana: The Copper Gull
  Which city are you in?
  [London] [New York]
  [Chicago] [Los Angeles]
  [Sydney]
  [Back] [Cancel]
Ana: Lisbon
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
Ana taps [Change something]
  (edited)
  Which country's food and drink rules? Limits
  and cautions follow them.
  [European Union] [United States]
  [United Kingdom] [your own country's]
  [Back] [Cancel]

Ana: EU
  Which currency?
  [EUR] [USD] [GBP]
  [Back] [Cancel]
Ana: $
  “$” is no currency in use. Write its three
  letters, such as EUR.
  Which currency?
  [EUR] [USD] [GBP]
  [Back] [Cancel]
Ana: €
  How do you measure?
  [ml and grams]
  [US fluid ounces]
  [imperial fluid ounces]
  [Back] [Cancel]
Bea: /start
  What is your bar called? Add the city if you
  like: The Blue Door, Boston
  I keep a small bar's amounts, batches and
  fruit waste, and remind you in time.
  [Bea's bar]
  [Cancel]
Bea: Anchor
  Which city are you in?
  [London] [New York]
  [Chicago] [Los Angeles]
  [Sydney]
  [Back] [Cancel]
Bea: New York
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
Bea taps [Change something]
  (edited)
  Which country's food and drink rules? Limits
  and cautions follow them.
  [United States] [European Union]
  [United Kingdom] [your own country's]
  [Back] [Cancel]

Bea: US
  Which currency?
  [USD] [EUR] [GBP]
  [Back] [Cancel]
Bea: $
  How do you measure?
  [US fluid ounces]
  [ml and grams]
  [imperial fluid ounces]
  [Back] [Cancel]
# Asking something else meanwhile: the word of a command is no kind of measure.
Bea: help
  I keep a bar's own preparations: amounts,
  cost, batches, reminders and fruit waste.
  Open a bar with start, or join one with: join
  CODE
  [Open a bar] [Join with a code]
  --
  How do you measure?
  [US fluid ounces]
  [ml and grams]
  [imperial fluid ounces]
  [Back] [Cancel]
Bea: week
  You are not in a bar yet.
  Open your own, or join one with the code a
  manager gives you: join CODE
  [Open a bar] [Join with a code]
  --
  How do you measure?
  [US fluid ounces]
  [ml and grams]
  [imperial fluid ounces]
  [Back] [Cancel]
