# Prices have a history and a picture; a rise since the last batch is said when costing; tax in or out.
@after mist

Ana: price grapefruit oil 10 ml 7.90
  grapefruit oil: €7.90 for 10 ml
  [Undo] [Another price]
Ana: price grapefruit oil picture
  I need two prices for a picture.
Ana: batch grapefruit mist to 200 ml
  Batch 1: Grapefruit mist, 201 ml
  Resting until Thu, 26 Nov 18:00. I will remind
  you.
  Check it again on 25 Dec 2026.
  Discard after 24 May 2027: the usual time for
  its kind.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 1]
  [Note a lot] [Undo]
@clock + 30 days
Ana: price grapefruit oil 10 ml 8.30
  grapefruit oil: €8.30 for 10 ml
  5.1 % more than before.
  [Undo] [Another price]
Ana: cost grapefruit mist to 200 ml
  Grapefruit mist, 200 ml: €20.75 (part of it)
    grapefruit oil  €20.75
    Contents of a
    50 ml bottle               €5.16
    a spray         €0.007 to €0.010
    a drink         €0.014 to €0.031
  Cash for 3 whole packs: €24.90
  No price for propylene glycol, neutral spirit:
  not counted, so the true cost is higher.
  To compare with fresh grapefruit, say: price
  grapefruit 0.60 each, 5 garnishes each
  [Price of propylene glycol]
  [Price of neutral spirit]
  [Amounts] [Log this batch]
Ana: bar price rise 5 %
  Price rise: 5 %
  [Money and work]
  [All settings] [Undo]
Ana: cost grapefruit mist to 200 ml
  Grapefruit mist, 200 ml: €20.75 (part of it)
    grapefruit oil  €20.75
    Contents of a
    50 ml bottle               €5.16
    a spray         €0.007 to €0.010
    a drink         €0.014 to €0.031
  Cash for 3 whole packs: €24.90
  No price for propylene glycol, neutral spirit:
  not counted, so the true cost is higher.
  Dearer since batch 1 (Wed, 25 Nov): grapefruit
  oil 5 %
  To compare with fresh grapefruit, say: price
  grapefruit 0.60 each, 5 garnishes each
  [Price of propylene glycol]
  [Price of neutral spirit]
  [Amounts] [Log this batch]
Ana: price grapefruit oil
  grapefruit oil: €8.30 for 10 ml
  25 Dec 2026: €8.30 for 10 ml
  25 Nov 2026: €7.90 for 10 ml
  A new price: price grapefruit oil 10 ml 8.30
  [Picture]
Ana taps [Picture]
  Price of grapefruit oil
  <picture price.png>
Ana: bar tax 23 % taken out
  Tax: 23 % taken out of prices
  [Money and work]
  [All settings] [Undo]
Ana: cost grapefruit mist to 200 ml
  Grapefruit mist, 200 ml: €16.87 (part of it)
    grapefruit oil  €16.87
    Contents of a
    50 ml bottle               €4.20
    a spray         €0.006 to €0.008
    a drink         €0.011 to €0.025
  Cash for 3 whole packs: €20.24
  No price for propylene glycol, neutral spirit:
  not counted, so the true cost is higher.
  Dearer since batch 1 (Wed, 25 Nov): grapefruit
  oil 5 %
  Without the 23 % tax in prices.
  To compare with fresh grapefruit, say: price
  grapefruit 0.60 each, 5 garnishes each
  [Price of propylene glycol]
  [Price of neutral spirit]
  [Amounts] [Log this batch]
Ana: bar tax 10 % added
  Tax: 10 % added to prices
  [Money and work]
  [All settings] [Undo]
Ana: cost grapefruit mist to 200 ml
  Grapefruit mist, 200 ml: €22.82 (part of it)
    grapefruit oil  €22.82
    Contents of a
    50 ml bottle               €5.68
    a spray         €0.008 to €0.011
    a drink         €0.015 to €0.034
  Cash for 3 whole packs: €27.39
  No price for propylene glycol, neutral spirit:
  not counted, so the true cost is higher.
  Dearer since batch 1 (Wed, 25 Nov): grapefruit
  oil 5 %
  With 10 % tax added to prices.
  To compare with fresh grapefruit, say: price
  grapefruit 0.60 each, 5 garnishes each
  [Price of propylene glycol]
  [Price of neutral spirit]
  [Amounts] [Log this batch]
Ana: bar tax off
  Tax: prices as typed
  [Money and work]
  [All settings] [Undo]
