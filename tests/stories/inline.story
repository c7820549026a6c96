# Amounts in any chat, of one's own bar only.
@after mist

Ana types inline: grapefruit 8x50
  (Grapefruit mist: 8 x 50 ml: grapefruit oil 50 ml, propylene glycol 92 ml, neutral spirit 260 ml)
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
Ana types inline: grapefruit
  (Grapefruit mist: as written: grapefruit oil 12 ml, propylene glycol 22 ml, neutral spirit 62 ml)
  Grapefruit mist: as written
    grapefruit oil    12 ml
    propylene glycol  22 ml
    neutral spirit    62 ml
  Makes 96 ml at 62 % vol
  Enough for 320 to 720 drinks
  Exact with: 50 ml cylinder, 100 ml cylinder.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
Ana types inline: mist with 12 ml grapefruit oil
  (Grapefruit mist: 96 ml: grapefruit oil 12 ml, propylene glycol 22 ml, neutral spirit 62 ml)
  Grapefruit mist: 96 ml
    grapefruit oil    12 ml
    propylene glycol  22 ml
    neutral spirit    62 ml
  Makes 96 ml at 62 % vol
  Enough for 320 to 720 drinks
  Exact with: 50 ml cylinder, 100 ml cylinder.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
Ana types inline: nothing of that name
  (nothing)
Eve types inline: grapefruit 8x50
  (nothing)
