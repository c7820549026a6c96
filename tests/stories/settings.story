# Every setting on four pages, changed in place by taps; pages lead back and forth.
@after opening

Ana: bar
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
Ana taps [Hours and reminders]
  (edited)
  Hours and reminders
  closing hour: 05:00
  service days: every day
  late shift: from 22:00
  close reminder: 04:30
  morning message: off
  quiet hours: 05:00 - 11:00
  discard warning: 3 days before
  time zone: Europe/Lisbon
  [closing hour] [service days]
  [late shift] [close reminder]
  [close reminder: off] [morning message]
  [quiet hours] [discard warning]
  [time zone]
  [All settings]
Ana taps [close reminder: off]
  (edited)
  Close reminder: off
  closing hour: 05:00
  service days: every day
  late shift: from 22:00
  close reminder: off
  morning message: off
  quiet hours: 05:00 - 11:00
  discard warning: 3 days before
  time zone: Europe/Lisbon
  [closing hour] [service days]
  [late shift] [close reminder: on]
  [morning message] [quiet hours]
  [discard warning] [time zone]
  [All settings] [Undo]
Ana taps [close reminder: on]
  (edited)
  Close reminder: 04:30
  closing hour: 05:00
  service days: every day
  late shift: from 22:00
  close reminder: 04:30
  morning message: off
  quiet hours: 05:00 - 11:00
  discard warning: 3 days before
  time zone: Europe/Lisbon
  [closing hour] [service days]
  [late shift] [close reminder]
  [close reminder: off] [morning message]
  [quiet hours] [discard warning]
  [time zone]
  [All settings] [Undo]
Ana taps [closing hour]
  (edited)
  What should closing hour be?
  Now: 05:00
  [05:00] [04:00]
  [03:00] [02:00]
  [Back] [Cancel]
Ana taps [04:00]
  (edited)
  Closing hour: 04:00
  closing hour: 04:00
  service days: every day
  late shift: from 22:00
  close reminder: 03:30
  morning message: off
  quiet hours: 05:00 - 11:00
  discard warning: 3 days before
  time zone: Europe/Lisbon
  [closing hour] [service days]
  [late shift] [close reminder]
  [close reminder: off] [morning message]
  [quiet hours] [discard warning]
  [time zone]
  [All settings] [Undo]
Ana taps [Undo]
  Undone: settings: closing hour
  Closing hour: 05:00
  [Put it back]
Ana: bar
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
Ana taps [Measuring]
  (edited)
  Measuring
  units: ml and grams
  ounces: ask each time
  spoons and cups: ask each time
  temperature: 20 °C
  coldest storage: 15 °C
  spray size: 0.067 to 0.1 ml
  bottling loss: 0 %
  tools: the usual ones
  dash: 0.8 ml, the usual
  drop: 0.05 ml, the usual
  barspoon: 5 ml, the usual
  splash: not set
  jigger: 44.36 ml, the usual
  [units] [ounces]
  [spoons and cups] [temperature]
  [coldest storage] [spray size]
  [bottling loss] [tools]
  [dash] [drop]
  [barspoon] [splash]
  [jigger]
  [All settings]
Ana taps [ounces]
  (edited)
  What should ounces be?
  Now: ask each time
  [US fluid ounces]
  [imperial fluid ounces]
  [ask each time]
  [Back] [Cancel]
Ana taps [Back]
  (edited)
  Measuring
  units: ml and grams
  ounces: ask each time
  spoons and cups: ask each time
  temperature: 20 °C
  coldest storage: 15 °C
  spray size: 0.067 to 0.1 ml
  bottling loss: 0 %
  tools: the usual ones
  dash: 0.8 ml, the usual
  drop: 0.05 ml, the usual
  barspoon: 5 ml, the usual
  splash: not set
  jigger: 44.36 ml, the usual
  [units] [ounces]
  [spoons and cups] [temperature]
  [coldest storage] [spray size]
  [bottling loss] [tools]
  [dash] [drop]
  [barspoon] [splash]
  [jigger]
  [All settings]
Ana taps [temperature]
  (edited)
  What should temperature be?
  Now: 20 °C
  [18 °C] [20 °C]
  [23 °C] [27 °C]
  [Back] [Cancel]
Ana: a warm one
  Write a temperature such as 27 °C or 80 °F.
  What should temperature be?
  Now: 20 °C
  [18 °C] [20 °C]
  [23 °C] [27 °C]
  [Back] [Cancel]
Ana taps [23 °C]
  (edited)
  Temperature: 23 °C
  units: ml and grams
  ounces: ask each time
  spoons and cups: ask each time
  temperature: 23 °C
  coldest storage: 15 °C
  spray size: 0.067 to 0.1 ml
  bottling loss: 0 %
  tools: the usual ones
  dash: 0.8 ml, the usual
  drop: 0.05 ml, the usual
  barspoon: 5 ml, the usual
  splash: not set
  jigger: 44.36 ml, the usual
  [units] [ounces]
  [spoons and cups] [temperature]
  [coldest storage] [spray size]
  [bottling loss] [tools]
  [dash] [drop]
  [barspoon] [splash]
  [jigger]
  [All settings] [Undo]
Ana taps [All settings]
  (edited)
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
Ana taps [Money and work]
  (edited)
  Money and work
  currency: EUR
  tax: prices as typed
  price rise: 10 %
  missing fruit: 3 times its price
  wage: not set
  batch minutes: not set
  garnish minutes: not set
  bottle price: not set
  label price: not set
  outlay: not set
  drinks a week: not set
  weeks open: 52 a year
  [currency] [tax]
  [price rise] [missing fruit]
  [wage] [batch minutes]
  [garnish minutes] [bottle price]
  [label price] [outlay]
  [drinks a week] [weeks open]
  [All settings]
Ana taps [wage]
  (edited)
  What should wage be?
  Now: not set
  [10-12] [15]
  [20] [off]
  [Another number]
  [Back] [Cancel]
Ana taps [Another number]
  (edited)
  What should wage be?
  Now: not set
  [1] [2] [3]
  [4] [5] [6]
  [7] [8] [9]
  [0]
  [Back] [Cancel]
Ana taps [1]
  (edited)
  What should wage be? 1_
  Now: not set
  [1] [2] [3]
  [4] [5] [6]
  [7] [8] [9]
  [Erase] [0] [OK]
  [Back] [Cancel]
Ana taps [4]
  (edited)
  What should wage be? 14_
  Now: not set
  [1] [2] [3]
  [4] [5] [6]
  [7] [8] [9]
  [Erase] [0] [OK]
  [Back] [Cancel]
Ana taps [OK]
  (edited)
  Wage: €14.00
  currency: EUR
  tax: prices as typed
  price rise: 10 %
  missing fruit: 3 times its price
  wage: €14.00
  batch minutes: not set
  garnish minutes: not set
  bottle price: not set
  label price: not set
  outlay: not set
  drinks a week: not set
  weeks open: 52 a year
  [currency] [tax]
  [price rise] [missing fruit]
  [wage] [batch minutes]
  [garnish minutes] [bottle price]
  [label price] [outlay]
  [drinks a week] [weeks open]
  [All settings] [Undo]
Ana taps [All settings]
  (edited)
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
Ana taps [The bar, labels, waste]
  (edited)
  The bar, labels, waste
  name: The Copper Gull
  language: English
  rules: European Union
  label paper: A4, 14 labels of 99.1 x 38.1 mm
  pictures: light
  week picture: with the week
  waste reasons: mouldy, dried out, peeled and
  not used, over-prepped, damaged on delivery,
  other
  peeled fruit: cold, uncovered: 24 h
  [name] [language]
  [rules] [label paper]
  [pictures: dark] [week picture]
  [waste reasons] [peeled fruit]
  [All settings]
Ana taps [pictures: dark]
  (edited)
  Pictures: dark
  name: The Copper Gull
  language: English
  rules: European Union
  label paper: A4, 14 labels of 99.1 x 38.1 mm
  pictures: dark
  week picture: with the week
  waste reasons: mouldy, dried out, peeled and
  not used, over-prepped, damaged on delivery,
  other
  peeled fruit: cold, uncovered: 24 h
  [name] [language]
  [rules] [label paper]
  [pictures: light] [week picture]
  [waste reasons] [peeled fruit]
  [All settings] [Undo]
Ana: change the currency to USD
  Currency: USD
  Prices and waste logged before keep their
  numbers: they are not converted.
  [Money and work]
  [All settings] [Undo]
Ana: set quiet hours to none
  Quiet hours: none
  [Hours and reminders]
  [All settings] [Undo]
