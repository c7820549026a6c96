# Examples and buttons with the bar's own names: its formula's fruit, its fruit, its bottles.
@after opening

Ana: plan
  Nothing to plan yet: write down what you make.
  [Add a formula] [Fruit]
Ana: trials
  No trial is running.
  Begin one: trial grapefruit mist
Ana: new formula Orange mist: orange oil 10 ml, neutral spirit 96 % 60 ml, kind aroma mist
  Orange mist is in the book.
  Orange mist: aroma mist, version 1
    orange oil           10 ml
    neutral spirit 96 %  60 ml
  Makes 70 ml at 82.3 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: should stay clear, by estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: orange oil
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [orange oil: food grade] [Not sure]
  [Undo]
Ana: cost orange mist more
  Can't compare Orange mist with fresh yet.
  Say what it replaces: change Orange mist:
  replaces orange
  [Replaces orange]
  [Cost]
Ana taps [Replaces orange]
  Orange mist is now version 2. Batches keep the
  version they were made with.
  Orange mist: aroma mist, version 2
    orange oil           10 ml
    neutral spirit 96 %  60 ml
  Makes 70 ml at 82.3 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each,
  instead of fresh orange
  Clearing: should stay clear, by estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: orange oil
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [orange oil: food grade] [Not sure]
  [Undo]
Ana: waste 6 mandarins mouldy
  Logged: 6 mandarins, mouldy.
  No price for mandarin: not in the cost.
  New here: mandarin.
  [Undo] [More waste]
  [Price of mandarin]
Ana: trials
  No trial is running.
  Begin one: trial Orange mist
Ana: change orange mist
  What changes in Orange mist? A line each:
  orange oil 12 ml, remove water, rest 24 h,
  sprays 2-3
    orange oil           10 ml
    neutral spirit 96 %  60 ml
  [Back] [Cancel]
Ana: cancel
  Cancelled. Nothing was logged.
Ana: batches
  No batch is resting or in use.
  Make one from a formula: batch Orange mist to
  400 ml
  [Make a batch] [Formulas]
Ana: drinks
  No drinks were counted yet.
  At close: drinks 140. Or for the night before:
  drinks 140 yesterday
  With one formula or garnish: drinks 60 Orange
  mist
Ana: fruit
  No fruit was counted twice yet.
  Log what comes in and count at close: bought
  80 mandarins 34.00, count mandarins 24
  [Bought] [Count]
Ana: week more
  Waste: no prices yet
  Mon, 23 Nov to Sun, 29 Nov, still running
    mouldy  6  no price
    early shift  6  no price
    late shift   0     €0.00
  Log what comes in to see the share wasted:
  bought 80 mandarins 34.00
  To compare with the time before the spray:
  spraying orange since 2026-10-20
  [Picture]
Ana: price
  The price of what? Tap it, or type: orange oil
  10 ml 7.90
  [mandarin] [neutral spirit]
  [orange] [orange oil]
  [Cancel]
Ana: cancel
  Cancelled. Nothing was logged.
Ana: spraying
  No garnish is sprayed yet, as far as I know.
  The first batch of a formula that replaces it
  counts.
  Or say it: spraying orange since 2026-10-20
Ana: peeled
  Which fruit was peeled?
  [mandarin] [orange]
  [lemon] [lime]
  [grapefruit]
  [Cancel]
Ana: cancel
  Cancelled. Nothing was logged.
Ana: help drinks
  /drinks: log how many drinks were poured
  drinks 140 yesterday
  drinks 60 Orange mist
  drinks 40 negroni, 30 old fashioned
  drinks 45 mandarin ran out
  [Step by step] [Sprays and drinks]
  [Everything]
Ana: help waste
  /waste: log fruit and anything else thrown out
  waste 6 mandarins mouldy
  waste 1.2 kg lemons, 3 oranges dried out
  waste 200 ml orange juice
  waste 1 bottle of batch 12
  [Step by step] [Waste and fruit]
  [Everything]
Ana: waste 6, 2 limes
  In “6” I miss a fruit. Nothing of the message
  was logged.
  Such as: 6 mandarins mouldy, 2 oranges
