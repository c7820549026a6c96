# Missing prices are named; fresh against spray; a corrected price.
@after mist

Ana: cost grapefruit mist to 8 x 50 ml
  Grapefruit mist: no prices yet
  No price for grapefruit oil, propylene glycol,
  neutral spirit: not counted, so the true cost
  is higher.
  To compare with fresh grapefruit, say: price
  grapefruit 0.60 each, 5 garnishes each
  [Price of grapefruit oil]
  [Price of propylene glycol]
  [Price of neutral spirit]
  [Amounts] [Log this batch]
Ana taps [Price of grapefruit oil]
  (edited)
  What does a pack of grapefruit oil hold and
  cost? Such as: 10 ml 7.90
  [Back] [Cancel]
Ana: 10 ml 7.90
  grapefruit oil: €7.90 for 10 ml
  [Undo] [Another price]
Ana: cost grapefruit mist to 8 x 50 ml
  Grapefruit mist, 8 x 50 ml: €39.50 (part of
  it)
    grapefruit oil  €39.50
    Contents of a
    50 ml bottle               €4.91
    a spray         €0.007 to €0.010
    a drink         €0.013 to €0.029
  Cash for 5 whole packs: €39.50
  No price for propylene glycol, neutral spirit:
  not counted, so the true cost is higher.
  To compare with fresh grapefruit, say: price
  grapefruit 0.60 each, 5 garnishes each
  [Price of propylene glycol]
  [Price of neutral spirit]
  [Amounts] [Log this batch]
Ana: price propylene glycol 1 l 14
  propylene glycol: €14.00 for 1 l
  [Undo] [Another price]
Ana: price neutral spirit €22.50
  How much is in the pack for €22.50? Tap it, or
  write it before the price.
  [10 ml] [50 ml] [100 ml]
  [500 ml] [700 ml] [1 l]
Ana: 1 l 22.50
  I'm not sure what you want. One of these?
  For example: waste 6 grapefruits mouldy
  [Set or see what a pack costs]
  [Log the bottles filled from a batch]
  [Weigh a sprayer to learn what a spray g…]
Ana: price neutral spirit 1 l €22.50
  neutral spirit: €22.50 for 1 l
  [Undo] [Another price]
Ana: cost grapefruit mist to 8 x 50 ml
  Grapefruit mist, 8 x 50 ml: €46.64
    grapefruit oil    €39.50
    propylene glycol   €1.29
    neutral spirit     €5.85
    Contents of a
    50 ml bottle               €5.80
    a spray         €0.008 to €0.012
    a drink         €0.015 to €0.035
  Cash for 7 whole packs: €76.00
  To compare with fresh grapefruit, say: price
  grapefruit 0.60 each, 5 garnishes each
  [Amounts] [Log this batch]
Ana: price grapefruits 0.90 each, 8 garnishes each
  grapefruit: €0.90 each
  8 garnishes each: €0.112 a garnish before
  waste
  [Undo] [Another price]
Ana: cost grapefruit mist to 8 x 50 ml
  Grapefruit mist, 8 x 50 ml: €46.64
    grapefruit oil    €39.50
    propylene glycol   €1.29
    neutral spirit     €5.85
    Contents of a
    50 ml bottle               €5.80
    a spray         €0.008 to €0.012
    a drink         €0.015 to €0.035
  Cash for 7 whole packs: €76.00
  Fresh grapefruit: €0.112 a drink, 3.2 to 7.3
  times the spray
  Breaks even at €0.28 a piece, or 10 sprays a
  drink
  [Fresh against spray]
  [Amounts] [Log this batch]
Ana: cost grapefruit mist to 8 x 50 ml, 5 % loss
  Grapefruit mist, 8 x 50 ml: €49.42
    grapefruit oil    €41.87
    propylene glycol   €1.36
    neutral spirit     €6.19
    Contents of a
    50 ml bottle               €6.12
    a spray         €0.008 to €0.012
    a drink         €0.016 to €0.037
  Cash for 8 whole packs: €83.90
  Fresh grapefruit: €0.112 a drink, 3.1 to 6.9
  times the spray
  Breaks even at €0.29 a piece, or 9 sprays a
  drink
  [Fresh against spray]
  [Amounts] [Log this batch]
Ana: cost grapefruit mist for 600 drinks
  Grapefruit mist, 600 drinks: €20.97
    grapefruit oil    €17.78
    propylene glycol   €0.58
    neutral spirit     €2.61
    Contents of a
    50 ml bottle               €5.82
    a spray         €0.008 to €0.012
    a drink         €0.016 to €0.035
  The sum is for the most you spray, 3 a drink,
  in amounts your tools measure.
  Cash for 5 whole packs: €60.20
  Fresh grapefruit: €0.112 a drink, 3.2 to 7.2
  times the spray
  Breaks even at €0.28 a piece, or 10 sprays a
  drink
  [Fresh against spray]
  [Amounts] [Log this batch]
@clock + 3 days
Ana: price grapefruit oil 10 ml 8.40
  grapefruit oil: €8.40 for 10 ml
  6.3 % more than before.
  [Undo] [Another price]
Ana: price grapefruit oil 84.00
  grapefruit oil: €84.00 for 10 ml
  900 % more than before.
  [Undo] [Another price]
Ana taps [Undo]
  Undone: price of grapefruit oil, €84.00 for 10
  ml
  Now: €8.40 for 10 ml
  [Put it back]
Ana: price grapefruit oil
  grapefruit oil: €8.40 for 10 ml
  28 Nov 2026: €8.40 for 10 ml
  25 Nov 2026: €7.90 for 10 ml
  A new price: price grapefruit oil 10 ml 8.40
  [Picture]
Ana: cost grapefruit mist x1
  Grapefruit mist, as written: €11.78
    grapefruit oil    €10.08
    propylene glycol   €0.31
    neutral spirit     €1.40
    Contents of a
    50 ml bottle               €6.14
    a spray         €0.008 to €0.012
    a drink         €0.016 to €0.037
  Cash for 4 whole packs: €53.30
  Fresh grapefruit: €0.112 a drink, 3.1 to 6.9
  times the spray
  Breaks even at €0.29 a piece, or 9 sprays a
  drink
  [Fresh against spray]
  [Amounts] [Log this batch]
Ana: price grapefruit oil 10 ml $9
  This bar counts in EUR, not $.
Ana: price grapefruit oil 10 ml 9 USD
  This bar counts in EUR, not USD.
Ana: price grapefriut oil 10 ml 9
  grapefriut oil: grapefruit oil, or a new
  ingredient?
  [grapefruit oil]
  [New ingredient: grapefriut oil]
  [Cancel]
Ana taps [grapefruit oil]
  (edited)
  grapefruit oil: €9.00 for 10 ml
  7.1 % more than before.
  [Undo] [Another price]
Ana: price lemons 0.35
  lemon: €0.35 each
  New here: lemon.
  [Undo] [Another price]
Ana: price
  The price of what? Tap it, or type: grapefruit
  oil 10 ml 7.90
  [grapefruit] [grapefruit oil]
  [lemon] [neutral spirit]
  [propylene glycol]
  [Cancel]
Ana taps [lemon]
  (edited)
  What does lemon cost? Such as: 0.60 each
  [Back] [Cancel]
