# Bea runs a bar in the United States and changes what is offered; a wrong answer is asked again.

Bea: start
  What is your bar called? Add the city if you
  like: The Blue Door, Boston
  I keep a small bar's amounts, batches and
  fruit waste, and remind you in time.
  [Bea's bar]
  [Cancel]
Bea: The Salt Stair
  Which city are you in?
  [London] [New York]
  [Chicago] [Los Angeles]
  [Sydney]
  [Back] [Cancel]
Bea: Nowhereville
  I don't know a city “Nowhereville”. Type a
  larger one near you, such as Madrid.
  Which city are you in?
  [London] [New York]
  [Chicago] [Los Angeles]
  [Sydney]
  [Back] [Cancel]
Bea: chicago
  I'd set your bar up like this. Right?
  Clock: Chicago time
  Food rules: United States
  Money: USD
  Measures: US fluid ounces
  Night ends by: 05:00
  Language: English
  [Looks right]
  [Change something]
  [Back] [Cancel]
Bea taps [Back]
  (edited)
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

Bea: mars
  Please answer US, EU, UK or other.
  Which country's food and drink rules? Limits
  and cautions follow them.
  [United States] [European Union]
  [United Kingdom] [your own country's]
  [Back] [Cancel]
Bea taps [United States]
  (edited)
  Which currency?
  [USD] [EUR] [GBP]
  [Back] [Cancel]
Bea: dollars
  How do you measure?
  [US fluid ounces]
  [ml and grams]
  [imperial fluid ounces]
  [Back] [Cancel]
Bea: us
  What's the latest you finish? Anything before
  then counts for the night before.
  [05:00] [04:00] [03:00]
  [02:00] [01:00] [06:00]
  [Back] [Cancel]
Bea: half past two
  Please write a time from 00:00 to 12:00, such
  as 05:00.
  What's the latest you finish? Anything before
  then counts for the night before.
  [05:00] [04:00] [03:00]
  [02:00] [01:00] [06:00]
  [Back] [Cancel]
Bea: 3 am
  The Salt Stair is open.
  US fluid ounces · USD · America/New York · a
  day ends at 03:00
  At 02:30 I ask you what was thrown out.
  Another time: bar close reminder 01:30
  All of it can be changed with /bar. Next:
  write down what you make.
  [Add a formula] [Propose one]
  [Set a price] [Log waste]
Bea: bar
  The Salt Stair
  closing hour: 3:00 AM
  close reminder: 2:30 AM
  time zone: America/New York
  units: US fluid ounces
  currency: USD
  rules: United States
  language: English
  All of them are on these pages. Or type: bar
  currency EUR
  [Hours and reminders]
  [Measuring]
  [Money and work]
  [The bar, labels, waste]
Bea: bar closing hour 04:00
  Closing hour: 4:00 AM
  [Hours and reminders]
  [All settings] [Undo]
Bea taps [Undo]
  Undone: settings: closing hour
  Closing hour: 3:00 AM
  [Put it back]
Bea: bar service days tue-sat
  Service days: Tue Wed Thu Fri Sat
  [Hours and reminders]
  [All settings] [Undo]
Bea taps [All settings]
  The Salt Stair
  closing hour: 3:00 AM
  close reminder: 2:30 AM
  time zone: America/New York
  units: US fluid ounces
  currency: USD
  rules: United States
  language: English
  All of them are on these pages. Or type: bar
  currency EUR
  [Hours and reminders]
  [Measuring]
  [Money and work]
  [The bar, labels, waste]
Bea taps [Hours and reminders]
  (edited)
  Hours and reminders
  closing hour: 3:00 AM
  service days: Tue Wed Thu Fri Sat
  late shift: from 10:00 PM
  close reminder: 2:30 AM
  morning message: off
  quiet hours: 5:00 AM - 11:00 AM
  discard warning: 3 days before
  time zone: America/New York
  [closing hour] [service days]
  [late shift] [close reminder]
  [close reminder: off] [morning message]
  [quiet hours] [discard warning]
  [time zone]
  [All settings]
Bea taps [quiet hours]
  (edited)
  What should quiet hours be?
  Now: 5:00 AM - 11:00 AM
  [5:00 AM - 11:00 AM] [4:00 AM - 12:00 PM]
  [none]
  [Back] [Cancel]
Bea: midnight
  Write two times, such as: 05:00-11:00
  What should quiet hours be?
  Now: 5:00 AM - 11:00 AM
  [5:00 AM - 11:00 AM] [4:00 AM - 12:00 PM]
  [none]
  [Back] [Cancel]
Bea: 05:00-12:00
  Quiet hours: 5:00 AM - 12:00 PM
  closing hour: 3:00 AM
  service days: Tue Wed Thu Fri Sat
  late shift: from 10:00 PM
  close reminder: 2:30 AM
  morning message: off
  quiet hours: 5:00 AM - 12:00 PM
  discard warning: 3 days before
  time zone: America/New York
  [closing hour] [service days]
  [late shift] [close reminder]
  [close reminder: off] [morning message]
  [quiet hours] [discard warning]
  [time zone]
  [All settings] [Undo]
Bea: bar currency XQQ
  “XQQ” is no currency in use. Write its three
  letters, such as EUR.
Bea: bar currency XAU
  “XAU” is no currency in use. Write its three
  letters, such as EUR.
Bea: bar currency EUR
  Currency: EUR
  Prices and waste logged before keep their
  numbers: they are not converted.
  [Money and work]
  [All settings] [Undo]
Bea: start
  You are at The Salt Stair, Bea.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
