# Prices and deliveries as people say them, and the first things of a new bar.
@after opening

Ana: stock grapefruit oil 100 ml
  grapefruit oil is new here. Right?
  [New ingredient: grapefruit oil]
  [Cancel]
Ana taps [New ingredient: grapefruit oil]
  (edited)
  grapefruit oil: 100 ml on hand.
  [Undo] [Par] [All stock]
Ana: bought spirit 1 l 18
  spirit is new here. Right?
  [New ingredient: spirit]
  [Cancel]
Ana taps [New ingredient: spirit]
  (edited)
  Bought: 1 l spirit, €18.00.
  Price from now on: €18.00 for 1 l.
  [Undo] [More that came in]
Ana: bought 2 bottles grapefruit oil 10 ml for 19.80
  Bought: 20 ml grapefruit oil (2 packs of 10
  ml), €19.80.
  Understood: €9.90 a pack.
  Price from now on: €9.90 for 10 ml.
  Should be on hand: 120 ml grapefruit oil
  [€19.80 was for one]
  [Undo] [More that came in]
Ana: bought 2 bottles grapefruit oil 10 ml for 9.90 each
  Bought: 20 ml grapefruit oil (2 packs of 10
  ml), €19.80.
  Understood: €9.90 a pack.
  Price from now on: €9.90 for 10 ml.
  Should be on hand: 140 ml grapefruit oil
  [€9.90 was for all]
  [Undo] [More that came in]
Ana: bought 2 bottles grapefruit oil 10 ml, paid 19.80 in total
  Bought: 20 ml grapefruit oil (2 packs of 10
  ml), €19.80.
  Understood: €9.90 a pack.
  Price from now on: €9.90 for 10 ml.
  Should be on hand: 160 ml grapefruit oil
  [€19.80 was for one]
  [Undo] [More that came in]
Ana: bought 2 bottles grapefruit oil 10 ml 19.80 for both
  Bought: 20 ml grapefruit oil (2 packs of 10
  ml), €19.80.
  Understood: €9.90 a pack.
  Price from now on: €9.90 for 10 ml.
  Should be on hand: 180 ml grapefruit oil
  [€19.80 was for one]
  [Undo] [More that came in]
Ana: price spirit 9 for 0.5 l
  spirit: €9.00 for 0.5 l
  The same as before.
  [Undo] [Another price]
Ana: price spirit gbp 18/l
  This bar counts in EUR, not GBP.
Ana: price spirit 18 euros a litre
  spirit: €18.00 for 1 l
  The same as before.
  [Undo] [Another price]
Ana: price lemons box of 150 for 33
  lemon: €33.00 for 150 pieces
  New here: lemon.
  [Undo] [Another price]
Ana: bought 1 l spirit 18 usd
  This bar counts in EUR, not USD.

Ana: new House syrup: sugar 500 g, water 500 ml, kind syrup
  House syrup is in the book.
  House syrup: syrup, version 1
    sugar   500 g
    water  500 ml
  Makes 815 ml
  Needs no rest, discard after 14 days
  Caution: Ask about allergies before serving,
  and say what house-made things a drink holds.
  [Scale] [Cost] [Make]
  [Change] [More]
  [Undo]
Ana: batch of house syrup, 500 ml yesterday
  I can't date a batch to 24 Nov 2026: its rest
  and its discard day count from now.
  Log it as made today, or not at all.
  [Made today]
Ana taps [Made today]
  Batch 1: House syrup, 498.4 ml
  It needs no rest.
  Check it again on 2 Dec 2026.
  Discard after 9 Dec 2026: the usual time for
  its kind.
  Keep refrigerated.
  Caution: Keep it at 5 °C or below and write
  the day it was made on it.
  [Show batch 1]
  [Note a lot] [Undo]
Ana: recipe of the house syrup
  House syrup: syrup, version 1
    sugar   500 g
    water  500 ml
  Makes 815 ml
  Needs no rest, discard after 14 days
  Caution: Ask about allergies before serving,
  and say what house-made things a drink holds.
  [Scale] [Cost] [Make]
  [Change] [More]
