# Said as over a bar, with the words in another order or with thanks.
@after mist

Ana: price limes 0.30 each
  lime: €0.30 each
  New here: lime.
  [Undo] [Another price]
Ana: lime price
  lime: €0.30 each
  25 Nov 2026: €0.30 each
  A new price: price lime 0.30 each
Ana: what's the price of limes?
  lime: €0.30 each
  25 Nov 2026: €0.30 each
  A new price: price lime 0.30 each
Ana: how much oil for 8 x 50 ml
  Grapefruit mist: 8 x 50 ml
    grapefruit oil     50 ml
    propylene glycol   92 ml
    neutral spirit    260 ml
  Makes 402 ml at 62.1 % vol
  Enough for 1,300 to 3,000 drinks
  Fills 8 x 50 ml, 2 ml over
  Rounded to 50 ml cylinder, 100 ml cylinder,
  500 ml cylinder: the ratio is off by 0.6 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: cancel
  Nothing is in progress.
Ana: batch grapefruit mist to 400 ml
  Batch 1: Grapefruit mist, 402 ml
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
Ana: is batch 1 ready?
  Batch 1: Grapefruit mist, resting
    grapefruit oil        50 ml
    propylene glycol      92 ml
    neutral spirit 96 %  260 ml
  402 ml made Wed, 25 Nov 18:00 by Ana, version
  1
  62.1 % vol
  Rests until Thu, 26 Nov 18:00, 24 hours more
  Discard after 24 May 2027, 180 days left (the
  usual time for its kind)
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Clear] [Hazy] [Split]
  [Open it]
  [Discard] [Label] [Note a lot]
Ana: batch 1 ready
  Batch 1: Grapefruit mist, resting
    grapefruit oil        50 ml
    propylene glycol      92 ml
    neutral spirit 96 %  260 ml
  402 ml made Wed, 25 Nov 18:00 by Ana, version
  1
  62.1 % vol
  Rests until Thu, 26 Nov 18:00, 24 hours more
  Discard after 24 May 2027, 180 days left (the
  usual time for its kind)
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Clear] [Hazy] [Split]
  [Open it]
  [Discard] [Label] [Note a lot]
Ana: change currency to USD
  Currency: USD
  Prices and waste logged before keep their
  numbers: they are not converted.
  [Money and work]
  [All settings] [Undo]
Ana: thanks!
  At your service.
