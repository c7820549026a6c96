# Money by its sign: taken where only one currency has it, or where it is the land's own.
Ana: /start
  What is your bar called?
  [Ana's bar]
  [Cancel]
Ana: The Copper Gull
  Which city's time does it keep? Tap one, or
  type another city.
  [London] [New York]
  [Chicago] [Los Angeles]
  [Sydney]
  [Back] [Cancel]
Ana: Lisbon
  Whose food and drink rules apply there? Limits
  and cautions follow this.
  [European Union] [United States]
  [United Kingdom] [somewhere else]
  [Back] [Cancel]
Ana: EU
  Which money do you count in?
  [EUR] [USD] [GBP]
  [Back] [Cancel]
Ana: $
  “$” is no currency in use. Write its three
  letters, such as EUR.
  Which money do you count in?
  [EUR] [USD] [GBP]
  [Back] [Cancel]
Ana: €
  How do you measure?
  [ml and grams]
  [US fluid ounces]
  [imperial fluid ounces]
  [Back] [Cancel]
Bea: /start
  What is your bar called?
  [Bea's bar]
  [Cancel]
Bea: Anchor
  Which city's time does it keep? Tap one, or
  type another city.
  [London] [New York]
  [Chicago] [Los Angeles]
  [Sydney]
  [Back] [Cancel]
Bea: New York
  Whose food and drink rules apply there? Limits
  and cautions follow this.
  [United States] [European Union]
  [United Kingdom] [somewhere else]
  [Back] [Cancel]
Bea: US
  Which money do you count in?
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
