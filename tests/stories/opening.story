# Ana opens the bar with what is offered first.

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
Ana taps [European Union]
  (edited)
  Which money do you count in?
  [EUR] [USD] [GBP]
  [Back] [Cancel]
Ana taps [EUR]
  (edited)
  How do you measure?
  [ml and grams]
  [US fluid ounces]
  [imperial fluid ounces]
  [Back] [Cancel]
Ana taps [ml and grams]
  (edited)
  When is a night surely over? What is logged
  before then counts for the day before.
  [05:00] [04:00] [03:00]
  [02:00] [01:00] [06:00]
  [Back] [Cancel]
Ana taps [05:00]
  (edited)
  The Copper Gull is open.
  ml and grams · EUR · Europe/Lisbon · a day
  ends at 05:00
  At 04:30 I ask you what was thrown out.
  Another time: bar close reminder 03:30
  All of it can be changed with /bar. Next:
  write down what you make.
  [Add a formula]
  [Set a price] [Log waste]
