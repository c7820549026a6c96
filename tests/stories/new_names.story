# A new name is asked with its nearest known names, and the answer is remembered.
@after mist

Ana: waste 6 oranges mouldy, 2 limes
  Logged 2 lines
    6 oranges  mouldy  no price
    2 limes            no price
  No price for lime, orange: not in the cost.
  Why the 2 limes? One tap is enough.
  New here: orange, lime.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: 2 soft limes
  soft limes: limes, or a new fruit?
  [limes]
  [New fruit: soft lime]
  [Cancel]
Ana taps [limes]
  (edited)
  Logged: 2 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste 3 soft limes dried out
  Logged: 3 limes, dried out.
  No price for lime: not in the cost.
  [Undo] [More waste]
  [Price of lime]
Ana: 2 ugly lemons
  ugly lemons is new here. A fruit?
  [New fruit: lemon]
  [New fruit: ugly lemon]
  [Cancel]
Ana taps [New fruit: lemon]
  (edited)
  Logged: 2 lemons.
  No price for lemon: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lemon]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste 3 dragonfruit
  dragonfruit is new here. A fruit?
  [New fruit: dragonfruit]
  [Not a fruit: dragonfruit]
  [Cancel]
Ana taps [New fruit: dragonfruit]
  (edited)
  Logged: 3 dragonfruits.
  No price for dragonfruit: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of dragonfruit]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: limones feo
  I'm not sure what you want. One of these?
  For example: waste 6 limes mouldy
  [fruit limones]
  [fruit par limones]
  [Show a formula]
Ana: toronjas a la basura
  “la basura” is not one of this bar's reasons.
  Tap one:
  Nothing is logged until you tap.
  [mouldy]
  [dried out]
  [peeled and not used]
  [over-prepped]
  [damaged on delivery]
  [other]
Ana: 1 ugly lemon
  Logged: 1 lemon.
  No price for lemon: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lemon]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste 2 mangoes mouldy
  Logged: 2 mangoes, mouldy.
  No price for mango: not in the cost.
  New here: mango.
  [Undo] [More waste]
  [Price of mango]
Ana: waste 1 mango mouldy
  Logged: 1 mango, mouldy.
  No price for mango: not in the cost.
  [Undo] [More waste]
  [Price of mango]
Ana: waste 2 tomatoes mouldy
  Logged: 2 tomatoes, mouldy.
  No price for tomato: not in the cost.
  New here: tomato.
  [Undo] [More waste]
  [Price of tomato]
Ana: waste 1 tomato mouldy
  Logged: 1 tomato, mouldy.
  No price for tomato: not in the cost.
  [Undo] [More waste]
  [Price of tomato]
Ana: waste 4 tyres
  tyres is new here. A fruit?
  [New fruit: tyre]
  [Not a fruit: tyre]
  [Cancel]
Ana taps [Cancel]
  (edited)
  Cancelled. Nothing was logged.
Ana: names
  Other names, and what each means here
    soft limes    lime
    ugly lemons  lemon
  [Forget soft limes]
  [Forget ugly lemons]
Ana: names forget soft limes
  Forgotten: soft limes no longer means lime.
  [Undo]
Ana: undo
  Undone: the name soft limes forgotten
  soft limes means lime.
  [Put it back]
# In a dialogue as well.
Ana: waste
  What was thrown out?
  [lime] [tomato]
  [mango] [lemon]
  [dragonfruit] [orange]
  [grapefruit]
  [Cancel]
Ana: wrinkled orange
  wrinkled orange: oranges, or a new fruit?
  What was thrown out?
  [oranges]
  [New fruit: wrinkled orange]
  [lime] [tomato]
  [mango] [lemon]
  [dragonfruit] [orange]
  [grapefruit]
  [Cancel]
Ana taps [oranges]
  (edited)
  How many oranges?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ana taps [4]
  (edited)
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ana taps [mouldy]
  (edited)
  Logged: 4 oranges, mouldy.
  No price for orange: not in the cost.
  [Undo] [More waste]
  [Price of orange]
# A verb that nobody knows is no waste.
Ana: order oranges 24
  I'm not sure what you want. One of these?
  For example: waste 6 limes mouldy
  [bought 24 oranges]
  [What to buy this week, in whole packs]
  [price oranges 24]
Ana: ordered oranges 24, limes 30
  I'm not sure what you want. One of these?
  For example: waste 6 limes mouldy
  [bought 24 oranges; 30 limes]
  [waste 24 oranges, 30 limes]
  [What to buy this week, in whole packs]
Ana taps [bought 24 oranges; 30 limes]
  2 deliveries logged.
  Bought: 24 oranges.
  Bought: 30 limes.
  [Undo orange] [Undo lime]
  [More that came in]
Ana: conteo naranjas 24
  Read as: count naranjas 24
  Nothing is logged yet. Tap if that is right.
  [count naranjas 24]
Ana: delivered oranges 24?
  Read as: bought oranges 24
  Nothing is logged yet. Tap if that is right.
  [bought oranges 24]
Ana: threw away batch 25
  There is no batch 25 in this bar.
Ana: make 500 ml grapefruit mist
  Grapefruit mist: 500 ml
    grapefruit oil     62 ml
    propylene glycol  114 ml
    neutral spirit    325 ml
  Makes 501 ml at 62.3 % vol
  Enough for 1,600 to 3,700 drinks
  Rounded to 100 ml cylinder, 250 ml cylinder,
  500 ml cylinder: the ratio is off by 1.5 % at
  most.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
# Amounts beyond belief are asked.
Ana: waste 1e9 limes
  “1e9” is not a number I can read. Write 12,
  1.5, 1 1/2 or ½.
Ana: waste 1000 limes
  1,000 limes?
  [Yes, 1,000 limes]
  [Change] [Cancel]
Ana taps [Yes, 1,000 limes]
  (edited)
  Logged: 1,000 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: undo
  Undone: 1,000 limes
  [Put it back]
Ana: peeled 5000 oranges
  5,000 oranges?
  [Yes, 5,000 oranges]
  [Change] [Cancel]
Ana taps [Cancel]
  (edited)
  Cancelled. Nothing was logged.
# One thing, one row.
Ana: waste 3 naranjas mouldy
  Logged: 3 oranges, mouldy.
  No price for orange: not in the cost.
  [Undo] [More waste]
  [Price of orange]
Ana: price pg 1 l 24
  propylene glycol: €24.00 for 1 l
  [Undo] [Another price]
Ana: 4 limones
  limones: lemons, limes, or a new fruit?
  [lemons]
  [limes]
  [New fruit: limón]
  [Cancel]
Ana taps [limes]
  (edited)
  Logged: 4 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste 2 pomelos mouldy
  pomelos: grapefruits, or a new fruit?
  [grapefruits]
  [New fruit: pomelo]
  [Cancel]
Ana taps [New fruit: pomelo]
  (edited)
  Logged: 2 pomelos, mouldy.
  No price for pomelo: not in the cost.
  [Undo] [More waste]
  [Price of pomelo]
Ana: merge pomelo into grapefruit
  pomelo is now grapefruit.
  Its waste, prices, deliveries, counts,
  formulas and batches went with it.
  [Undo] [Stock of grapefruit]
Ana: waste 1 pomelo mouldy
  Logged: 1 grapefruit, mouldy.
  No price for grapefruit: not in the cost.
  [Undo] [More waste]
  [Price of grapefruit]
Ana: undo
  Undone: 1 grapefruit, mouldy
  [Put it back]
Ana: undo
  Undone: pomelo merged into grapefruit
  [Put it back]
Ana: waste 1 pomelo mouldy
  Logged: 1 pomelo, mouldy.
  No price for pomelo: not in the cost.
  [Undo] [More waste]
  [Price of pomelo]
Ana: names
  Other names, and what each means here
    wrinkled orange  orange
    limones            lime
    soft limes         lime
    ugly lemons       lemon
  [Forget wrinkled orange]
  [Forget limones]
  [Forget soft limes]
  [Forget ugly lemons]
