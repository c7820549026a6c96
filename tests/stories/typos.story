# Bad input: one clear sentence each, and a way on where there is one.
@after mist

Ana: hello
  Say what you want to do, with or without the
  slash:
  waste 6 grapefruits mouldy
  scale Grapefruit mist to 8 x 50 ml
  batch Grapefruit mist to 8 x 50 ml
  cost Grapefruit mist
  week: what was thrown out and what it cost
  More on anything: help labels, help how do I
  waste
  [Log waste] [Scale]
  [Everything] [Handling cautions]
Ana: hello there, what can you do?
  Say what you want to do, with or without the
  slash:
  waste 6 grapefruits mouldy
  scale Grapefruit mist to 8 x 50 ml
  batch Grapefruit mist to 8 x 50 ml
  cost Grapefruit mist
  week: what was thrown out and what it cost
  More on anything: help labels, help how do I
  waste
  [Log waste] [Scale]
  [Everything] [Handling cautions]
Ana: skale grapefruit mist x2
  Read as: scale grapefruit mist x2
  Grapefruit mist: x 2
    grapefruit oil     24 ml
    propylene glycol   44 ml
    neutral spirit    124 ml
  Makes 192 ml at 62 % vol
  Enough for 640 to 1,400 drinks
  Exact with: 50 ml cylinder, 250 ml cylinder.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefriut mist x2
  I know no formula called “grapefriut mist”.
  Did you mean:
  [Grapefruit mist]
Ana: scale grapefruit mist to 8 x 50
  Got “grapefruit mist to 8 x 50”. In ml, g or
  oz?
  [scale grapefruit mist to 8 x 50 ml]
Ana: scale grapefruit mist to 8 x 50 mm
  Got “grapefruit mist to 8 x 50”. What about
  “mm”? I take a unit such as ml, g or oz there.
  For example: scale grapefruit mist to 8 x 50
  ml
  [Step by step] [More examples]
Ana: scale grapefruit mist to 8 bottles
  Bottles of what size? Such as: 8 x 50 ml
  [8 x 50 ml] [8 x 100 ml]
Ana: scale grapefruit mist to lots
  Read as: scale Grapefruit mist
  How much of Grapefruit mist?
  [4 x 50 ml] [8 x 50 ml] [4 x 100 ml]
  [as written] [double]
  [Back] [Cancel]
Ana: scale negroni x2
  I know no formula called “negroni”.
  [Formulas]
Ana: scale grapefruit mist with 12 ml lime oil
  Grapefruit mist has no “lime oil”. Which did
  you mean?
  [grapefruit oil]
  [propylene glycol]
  [neutral spirit]
Ana: scale grapefruit mist x0
  Factor 0 is out of range: it has to be above
  0.
Ana: scale 42
  Got “42”. In ml, g or oz?
  [scale 42 ml]
Ana: batch grapefruit mist to 8 x 50 ml tomorrow
  Thu, 26 Nov is still to come.
Ana: check 1 clear
  There is no batch 1 in this bar.
Ana: check 1 sparkling
  There is no batch 1 in this bar.
Ana: price grapefruit oil ten for free
  Read as: price grapefruit oil 10
  Nothing is logged yet. Tap if that is right.
  [price grapefruit oil 10]
Ana: new formula Nothing\
sugar
  Got “Nothing sugar”. How many?
  For example: new formula Lime tincture
  lime oil 10 ml
  neutral spirit 96 % 90 ml
  kind tincture
  rest 14 days
  [Step by step] [More examples]
Ana: change negroni: gin 2 oz
  I know no formula called “negroni”.
  [Formulas]
Ana: week 2026-13
  Read as: month 2026-13
  There is no month 2026-13.
Ana: later 99 2 hours
  There is no reminder 99 in this bar.
Ana: done 99
  There is no reminder 99 in this bar.
Ana: undo 99
  There is no log entry 99 in this bar.
Ana: /nosuchcommand
  I did not understand that.
  Start with what to do, such as: scale, waste,
  batch, cost, week. Or tap Help.
  [Help]
Ana: /scale@peel_ledger_bot grapefruit mist x2
  Grapefruit mist: x 2
    grapefruit oil     24 ml
    propylene glycol   44 ml
    neutral spirit    124 ml
  Makes 192 ml at 62 % vol
  Enough for 640 to 1,400 drinks
  Exact with: 50 ml cylinder, 250 ml cylinder.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: 🍊
  Read as: waste 1 orange
  Nothing is logged yet. Tap if that is right.
  [waste 1 orange]
Ana: ...
  I'm not sure what you want. One of these?
  For example: waste 6 grapefruits mouldy
  [Log the same once more]
  [Undo the last thing you logged]
Ana: ; drop table bar
  I'm not sure what you want. One of these?
  For example: waste 6 grapefruits mouldy
  [bar drop]
  [Leave this bar]
  [All of the bar as files: tables and JSON]
Ana: <b>bold</b> & co
  I'm not sure what you want. One of these?
  For example: waste 6 grapefruits mouldy
  [Which batches hold a lot]
  [Score a trial's bottle]
  [Try a variant of a formula and taste it]
