# In this bar an ounce has to be asked about; in Bea's it is a US fluid ounce.
@after mist

Ana: scale grapefruit mist to 12 oz
  “oz” can mean more than one thing here. Which
  is it?
  To settle it for this bar: /bar ounces, or
  /bar spoons and cups.
  [US oz (29.57 ml)]
  [imperial oz (28.41 ml)]
Ana taps [US oz (29.57 ml)]
  Grapefruit mist: 354.9 ml
    grapefruit oil    44.5 ml
    propylene glycol    81 ml
    neutral spirit     230 ml
  Makes 355.5 ml at 62.1 % vol
  Enough for 1,100 to 2,600 drinks
  Rounded to 50 ml cylinder, 100 ml cylinder,
  250 ml cylinder: the ratio is off by 0.8 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist to 8 x 2 oz
  “oz” can mean more than one thing here. Which
  is it?
  To settle it for this bar: /bar ounces, or
  /bar spoons and cups.
  [US oz (29.57 ml)]
  [imperial oz (28.41 ml)]
Ana taps [imperial oz (28.41 ml)]
  Grapefruit mist: 8 x 2 imperial oz
    grapefruit oil     57 ml
    propylene glycol  104 ml
    neutral spirit    295 ml
  Makes 456 ml at 62.1 % vol
  Enough for 1,500 to 3,400 drinks
  Fills 8 x 56.8 ml, 1.39 ml over
  Rounded to 100 ml cylinder, 250 ml cylinder,
  500 ml cylinder: the ratio is off by 0.7 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist to 1 cup
  “cup” can mean more than one thing here. Which
  is it?
  To settle it for this bar: /bar ounces, or
  /bar spoons and cups.
  [US cup (236.59 ml)]
  [metric cup (250 ml)]
  [imperial cup (284.13 ml)]
Ana: bar ounces us
  Ounces: US fluid ounces
  [Measuring]
  [All settings] [Undo]
Ana: scale grapefruit mist to 12 oz
  Grapefruit mist: 354.9 ml
    grapefruit oil    44.5 ml
    propylene glycol    81 ml
    neutral spirit     230 ml
  Makes 355.5 ml at 62.1 % vol
  Enough for 1,100 to 2,600 drinks
  Rounded to 50 ml cylinder, 100 ml cylinder,
  250 ml cylinder: the ratio is off by 0.8 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist to 1 dash
  Grapefruit mist: 0.8 ml
    grapefruit oil    0.1 ml
    propylene glycol  0.2 ml
    neutral spirit    0.5 ml
  Makes 0.8 ml at 60 % vol
  Enough for 2 to 6 drinks
  With 1 ml syringe the ratio is 13 % off: weigh
  it in grams, or make more of it.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  A dash is taken as 0.8 ml, common practice.
  Yours: bar dash 0.8 ml
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: bar dash 0.8 ml
  Dash: 0.8 ml
  [Measuring]
  [All settings] [Undo]
Ana: scale grapefruit mist to 10 dashes
  Grapefruit mist: 8 ml
    grapefruit oil      1 ml
    propylene glycol  1.8 ml
    neutral spirit    5.2 ml
  Makes 8 ml at 62.4 % vol
  Enough for 26 to 60 drinks
  Rounded to 1 ml syringe, 5 ml syringe: the
  ratio is off by 2.5 % at most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
