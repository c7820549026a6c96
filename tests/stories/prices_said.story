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

Ana: new Grapefruit mist: grapefruit oil 10 ml, spirit 96% 90 ml
  Grapefruit mist is in the book.
  Grapefruit mist: aroma mist, version 1
    grapefruit oil  10 ml
    spirit 96 %     90 ml
  Makes 100 ml at 86.4 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: should stay clear, by estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [grapefruit oil: food grade] [Not sure]
  [Undo]
Ana: scale grapefruit mist to one bottle of oil 15 ml
  Grapefruit mist: 150 ml
    grapefruit oil   15 ml
    spirit          136 ml
  Makes 151 ml at 86.5 % vol
  Enough for 500 to 1,100 drinks
  Rounded to 50 ml cylinder, 250 ml cylinder:
  the ratio is off by 0.7 % at most.
  Clearing: should stay clear, by estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: scale grapefruit mist with a bottle of grapefruit oil (10 ml)
  Grapefruit mist: 100 ml
    grapefruit oil  10 ml
    spirit          90 ml
  Makes 100 ml at 86.4 % vol
  Enough for 330 to 750 drinks
  Exact with: 10 ml syringe, 100 ml cylinder.
  Clearing: should stay clear, by estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: orange juice: 1 litre from 12 oranges
  Read as: juiced 12 oranges 1 litre
  Nothing is logged yet. Tap if that is right.
  [juiced 12 oranges 1 litre]
