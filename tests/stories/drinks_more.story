# More drinks are added to the count, the counts of a garnish are parts of the whole, a strange count is asked about.
@after mist

Ana: add a negroni to the menu
  What goes on or into it?
  [2 Grapefruit mist]
  [Back] [Cancel]
Ana: 2 grapefruit mist, 90 ml
  negroni: 2 sprays Grapefruit mist in 90 ml
  Instead of fresh grapefruit
  No price yet for all of: Grapefruit mist
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
Ana: serve paloma: 2 grapefruit mist, 180 ml
  paloma: 2 sprays Grapefruit mist in 180 ml
  Instead of fresh grapefruit
  No price yet for all of: Grapefruit mist
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
Ana: drinks 12 negroni
  Wed, 25 Nov: 12 negroni.
  That took about: Grapefruit mist 2 ml.
  [Undo] [By weekday] [Plan]
Ana: drinks 5 more negroni
  Wed, 25 Nov: 17 negroni.
  That took about: Grapefruit mist 1 ml.
  5 more than the 12 before.
  [Undo] [By weekday] [Plan]
Ana: sorry, 7
  Corrected: 7 drinks instead of 5 drinks
  Wed, 25 Nov: 19 negroni.
  That took about: Grapefruit mist 1 ml.
  7 more than the 12 before.
  [Undo] [By weekday] [Plan]
Ana: undo
  Undone: 7 drinks
  Wed, 25 Nov: 12 negroni.
  [Put it back]
Ana: and 3 negronis
  Wed, 25 Nov: 15 negroni.
  3 more than the 12 before.
  [Undo] [By weekday] [Plan]
Ana: another 4 negronis
  Wed, 25 Nov: 19 negroni.
  That took about: Grapefruit mist 1 ml.
  4 more than the 15 before.
  [Undo] [By weekday] [Plan]
Ana: yes
  Nothing is waiting for a yes.
Ana: drinks 20 more
  Wed, 25 Nov: 20 drinks.
  [Undo] [By weekday] [Plan]
Ana: drinks 100, 30 grapefruit
  Wed, 25 Nov: 100, 30 grapefruit.
  It was 20 before.
  [Undo] [By weekday] [Plan]
Ana: sorry, 95
  Corrected: 95 drinks instead of 100 drinks
  Wed, 25 Nov: 95, 30 grapefruit.
  It was 20 before.
  [Undo] [By weekday] [Plan]
Ana: sorry, 25 grapefruit
  Corrected: 95 drinks
  Wed, 25 Nov: 95, 25 grapefruit.
  It was 20 before.
  [Undo] [By weekday] [Plan]
Ana: drinks 90, 20 grapefruit, paloma 8
  Wed, 25 Nov: 90, 20 grapefruit, 8 paloma.
  That took about: Grapefruit mist 1 ml.
  It was 95 before.
  grapefruit: it was 25 before.
  [Undo] [By weekday] [Plan]
Ana: drinks
  Drinks a night, by weekday
         mean  nights
    Wed    90       1
  With negroni: 19 a night (1 night)
  With grapefruit: 20 a night (1 night)
  With paloma: 8 a night (1 night)
  Last: Wed, 25 Nov, 90
  [Plan]
Ana: log
  Log of The Copper Gull, newest first
  #14 Wed, 25 Nov 18:00, Ana: counted 90 drinks
  #13 Wed, 25 Nov 18:00, Ana: counted 95 drinks
  (instead of #12)
  #12 Wed, 25 Nov 18:00, Ana: counted 95 drinks
  (instead of #11) (now #13)
  #11 Wed, 25 Nov 18:00, Ana: counted 100 drinks
  (now #12)
  #10 Wed, 25 Nov 18:00, Ana: counted 20 drinks
  #9 Wed, 25 Nov 18:00, Ana: counted 4 drinks
  #8 Wed, 25 Nov 18:00, Ana: counted 3 drinks
  #7 Wed, 25 Nov 18:00, Ana: undid #6
  #6 Wed, 25 Nov 18:00, Ana: counted 7 drinks
  (instead of #5) (undone by #7)
  #5 Wed, 25 Nov 18:00, Ana: counted 5 drinks
  (now #6)
  [Undo #14] [Undo #13] [Undo #10]
  [Older]
Ana: drinks 12000
  12,000 drinks?
  [Yes, 12,000 drinks]
  [Change] [Cancel]
Ana: cancel
  Nothing was logged.
Ana: drinks 12000
  12,000 drinks?
  [Yes, 12,000 drinks]
  [Change] [Cancel]
Ana: yes
  Wed, 25 Nov: 12,000 drinks.
  It was 90 before.
  [Undo] [By weekday] [Plan]
Ana: undo
  Undone: 12000 drinks
  Wed, 25 Nov: 90 drinks.
  [Put it back]
Ana: paloma
  paloma: 2 sprays Grapefruit mist in 180 ml
  Instead of fresh grapefruit
  No price yet for all of: Grapefruit mist
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
Ana: what's in a negroni
  negroni: 2 sprays Grapefruit mist in 90 ml
  Instead of fresh grapefruit
  No price yet for all of: Grapefruit mist
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
Ana: sold 30 daiquiris and 12 negronis last night
  Read as: drinks last night 30 daiquiris, 12
  negroni
  Nothing is logged yet. Tap if that is right.
  [drinks last night 30 daiquiris, 12 negroni]
Ana: yes
  “daiquiris” is not on the drink list.
  [Add daiquiris] [Drink list]
Ana: 130 covers tonight
  Read as: drinks 130 tonight
  Nothing is logged yet. Tap if that is right.
  [drinks 130 tonight]
Ana: remove the paloma from the menu
  paloma is off the list. Its counts stay.
  [Drink list] [Undo]
Ana: drinks 10 plus 5
  Two counts for one thing. Which is it?
  [10 drinks]
  [5 drinks]
  [15 drinks]
Ana: drinks negroni x20 ran out
  Wed, 25 Nov: 20 negroni.
  That took about: Grapefruit mist 3 ml.
  It ran out, so people may have wanted more.
  It was 19 before.
  [Undo] [By weekday] [Plan]
Ana: +5 negroni
  Wed, 25 Nov: 25 negroni.
  That took about: Grapefruit mist 1 ml.
  5 more than the 20 before.
  [Undo] [By weekday] [Plan]
