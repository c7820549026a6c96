# The drink list: spec cards, who must be asked, and counts by drink that plan the preparations.
@after mist

Ana: price grapefruit oil 10 ml 7.90
  grapefruit oil: €7.90 for 10 ml
  [Undo] [Another price]
Ana: price propylene glycol 1 l 12
  propylene glycol: €12.00 for 1 l
  [Undo] [Another price]
Ana: price neutral spirit 1 l 24
  neutral spirit: €24.00 for 1 l
  [Undo] [Another price]
Ana: price grapefruit 0.80 each, 6 garnishes each
  grapefruit: €0.80 each
  6 garnishes each: €0.133 a garnish before
  waste
  [Undo] [Another price]
Ana: serve paloma: 2 grapefruit mist, 150 ml
  paloma: 2 sprays Grapefruit mist in 150 ml
  Instead of fresh grapefruit
  The aroma costs €0.016 to €0.023 a drink,
  fresh €0.133
  Dose of one drink, all of it together: under
  the limits
  No listed allergen by name. Contains citrus.
  Carries alcohol: say so to guests who drink
  none.
  Carries grapefruit oil: ask about allergies
  and medicines.
  Ask, and tell them what is in it.
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Count drinks] [Dose] [Drink list]
  [Take it off] [Undo]
Ana: serve salty dog: 2-3 sprays grapefruit mist, 90 ml
  salty dog: 2 to 3 sprays Grapefruit mist in 90
  ml
  Instead of fresh grapefruit
  The aroma costs €0.016 to €0.035 a drink,
  fresh €0.133
  Dose of one drink, all of it together: under
  the limits
  No listed allergen by name. Contains citrus.
  Carries alcohol: say so to guests who drink
  none.
  Carries grapefruit oil: ask about allergies
  and medicines.
  Ask, and tell them what is in it.
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Count drinks] [Dose] [Drink list]
  [Take it off] [Undo]
Ana: menu
  2 drinks on the list
  paloma: 2 sprays Grapefruit mist in 150 ml
  salty dog: 2 to 3 sprays Grapefruit mist in 90
  ml
  Carries alcohol, for guests who drink none:
  paloma, salty dog.
  Carries citrus, for allergies and medicines:
  paloma, salty dog.
  Caution: Ask every guest about allergies and
  medicines, and tell them what is in it.
  [paloma] [salty dog]
  [Add a drink]
Ana taps [paloma]
  (edited)
  paloma: 2 sprays Grapefruit mist in 150 ml
  Instead of fresh grapefruit
  The aroma costs €0.016 to €0.023 a drink,
  fresh €0.133
  Dose of one drink, all of it together: under
  the limits
  No listed allergen by name. Contains citrus.
  Carries alcohol: say so to guests who drink
  none.
  Carries grapefruit oil: ask about allergies
  and medicines.
  Ask, and tell them what is in it.
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Count drinks] [Dose] [Drink list]
  [Take it off]
Ana: drinks 40 paloma, 30 salty dog
  Wed, 25 Nov: 40 paloma, 30 salty dog.
  That took about: Grapefruit mist 13 ml.
  [Undo] [By weekday] [Plan]
Ana: undo
  Undone: 70 drinks
  [Put it back]
Ana: drinks 40 paloma, 30 salty dog yesterday
  Tue, 24 Nov: 40 paloma, 30 salty dog.
  That took about: Grapefruit mist 13 ml.
  [Undo] [By weekday] [Plan]
Ana: drinks
  Drinks a night, from what you counted
  With paloma: 40 a night (1 night)
  With salty dog: 30 a night (1 night)
  Last: Tue, 24 Nov, 30 salty dog
  [Plan]
Ana: plan grapefruit mist
  Make 94 ml Grapefruit mist on Wed, 25 Nov.
  What you have lasts to Tue, 24 Nov. The new
  one is ready Thu, 26 Nov; discard it after 24
  May 2027.
  You'd use about 630 ml before it expires (9 in
  10).
  1 day without it: it rests longer than your
  stock lasts.
  You use about 13 ml a day.
  From 1 night counted: 9 in 10 between 2.3 ml
  and 30 ml a day.
  [Make it] [Shopping list] [Plan]
Ana: serve
  Which drink?
  [Cancel]
Ana: grapefruit spritz
  What goes on or into it?
  [2 Grapefruit mist]
  [Back] [Cancel]
Ana taps [2 Grapefruit mist]
  (edited)
  grapefruit spritz: 2 sprays Grapefruit mist
  Instead of fresh grapefruit
  The aroma costs €0.016 to €0.023 a drink,
  fresh €0.133
  Dose of one drink, all of it together: under
  the limits
  No listed allergen by name. Contains citrus.
  Carries alcohol: say so to guests who drink
  none.
  Carries grapefruit oil: ask about allergies
  and medicines.
  Ask, and tell them what is in it.
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Count drinks] [Dose] [Drink list]
  [Take it off] [Undo]
Ana: menu
  3 drinks on the list
  grapefruit spritz: 2 sprays Grapefruit mist
  paloma: 2 sprays Grapefruit mist in 150 ml
  salty dog: 2 to 3 sprays Grapefruit mist in 90
  ml
  Carries alcohol, for guests who drink none:
  grapefruit spritz, paloma, salty dog.
  Carries citrus, for allergies and medicines:
  grapefruit spritz, paloma, salty dog.
  Caution: Ask every guest about allergies and
  medicines, and tell them what is in it.
  [grapefruit spritz] [paloma]
  [salty dog]
  [Add a drink]
Ana taps [grapefruit spritz]
  (edited)
  grapefruit spritz: 2 sprays Grapefruit mist
  Instead of fresh grapefruit
  The aroma costs €0.016 to €0.023 a drink,
  fresh €0.133
  Dose of one drink, all of it together: under
  the limits
  No listed allergen by name. Contains citrus.
  Carries alcohol: say so to guests who drink
  none.
  Carries grapefruit oil: ask about allergies
  and medicines.
  Ask, and tell them what is in it.
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Count drinks] [Dose] [Drink list]
  [Take it off]
Ana taps [Take it off]
  (edited)
  grapefruit spritz is off the list. Its counts
  stay.
  [Drink list] [Undo]
Ana: undo
  Undone: grapefruit spritz off the drink list
  [Put it back]
Ana: off menu paloma
  paloma is off the list. Its counts stay.
  [Drink list] [Undo]
Ana: menu paloma
  I know no drink called “paloma”.
Ana: log
  Log of The Copper Gull, newest first
  #14 Wed, 25 Nov 18:00, Ana: took paloma off
  the drink list
  #13 Wed, 25 Nov 18:00, Ana: undid #12
  #12 Wed, 25 Nov 18:00, Ana: took grapefruit
  spritz off the drink list (undone by #13)
  #11 Wed, 25 Nov 18:00, Ana: put grapefruit
  spritz on the drink list
  #10 Wed, 25 Nov 18:00, Ana: counted 70 drinks
  #9 Wed, 25 Nov 18:00, Ana: undid #8
  #8 Wed, 25 Nov 18:00, Ana: counted 70 drinks
  (undone by #9)
  #7 Wed, 25 Nov 18:00, Ana: put salty dog on
  the drink list
  #6 Wed, 25 Nov 18:00, Ana: put paloma on the
  drink list
  #5 Wed, 25 Nov 18:00, Ana: price of
  grapefruit, €0.80 each
  [Undo #14] [Undo #11] [Undo #10]
  [Older]
# without a colon the name is asked; a drink that is not on the list is said to be so
Ana: serve greyhound 1 spray grapefruit mist 120ml
  Is that the name, and what goes on it?
  [serve greyhound: 1 spray grapefruit mist 120ml]
Ana taps [serve greyhound: 1 spray grapefruit mist 120ml]
  (edited)
  greyhound: 1 spray Grapefruit mist in 120 ml
  Instead of fresh grapefruit
  The aroma costs €0.008 to €0.012 a drink,
  fresh €0.133
  Dose of one drink, all of it together: under
  the limits
  No listed allergen by name. Contains citrus.
  Carries alcohol: say so to guests who drink
  none.
  Carries grapefruit oil: ask about allergies
  and medicines.
  Ask, and tell them what is in it.
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Count drinks] [Dose] [Drink list]
  [Take it off] [Undo]
Ana: serve corpse reviver 2: 1 grapefruit mist
  corpse reviver 2: 1 spray Grapefruit mist
  Instead of fresh grapefruit
  The aroma costs €0.008 to €0.012 a drink,
  fresh €0.133
  Dose of one drink, all of it together: under
  the limits
  No listed allergen by name. Contains citrus.
  Carries alcohol: say so to guests who drink
  none.
  Carries grapefruit oil: ask about allergies
  and medicines.
  Ask, and tell them what is in it.
  Caution: No flame, candle, torch or flamed
  garnish near the spray while it is used.
  [Count drinks] [Dose] [Drink list]
  [Take it off] [Undo]
Ana: drinks 12 greyhound, 30 old fashioned
  “old fashioned” is not on the drink list.
  [Add old fashioned] [Drink list]
Ana: drinks 12 greyhuond
  “greyhuond” is not on the drink list.
  Did you mean:
  [greyhound]
  [Add greyhuond] [Drink list]
