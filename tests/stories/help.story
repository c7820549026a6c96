# What can be asked, and help with one thing.
@after opening

Zoe: help
  I keep a bar's own preparations: amounts,
  cost, batches, reminders and fruit waste.
  Open a bar with start, or join one with: join
  CODE
  [Open a bar] [Join with a code]
Ana: help
  Say what you want to do, with or without the
  slash:
  /waste: log fruit thrown out
  /scale: amounts for a size, bottles, drinks or
  what you have
  /strength: how strong, and how to water down
  /clear: will it stay clear?
  /dose: what a drink carries, against the
  limits
  /cost: what a batch, a bottle and a drink cost
  /batch: log a batch, or show one by its number
  /batches: what is resting, ready, near discard
  /check: note how a rested batch looks
  /label: labels for a batch, to print
  /week: the week's waste and what it cost
  /month: the month's waste and what it cost
  /plan: what to make next, what to buy, fruit
  to have
  /peeled: fruit peeled, with its clock
  /shopping: what to buy this week, in whole
  packs
  /juiced: what fruit gave in juice
  /bought: log what came in
  /acid: acid that makes a juice as sour as
  another
  /count: log what is on hand
  /fruit: fruit used, wasted and lost between
  counts
  /formula: show a formula
  /new: write a new formula down
  /formulas: the formulas in the book
  /trial: try a variant of a formula and taste
  it
  /taste: score a trial's bottle
  /price: set or see what a pack costs
  /stock: what is on hand; count it, or note
  what was bought
  /can_make: what can be made of what is on hand
  /pump: what each sprayer gives
  /drinks: log how many drinks were poured
  /team: who is in the bar; invite someone
  /log: who did what, and what was taken back
  /language: the language I speak with you
  /bar: see and change the bar's settings
  /export: all of the bar as files: tables and
  JSON
  /import: take a file in: what an export gave,
  or a table
  /undo: take back the last thing you logged
  /cautions: handling cautions
  /help: what I can do
  More on one of them: help scale
  [Help with scale] [Help with waste]
  [Handling cautions]
Ana taps [Help with scale]
  /scale: amounts for a size, bottles, drinks or
  what you have
  scale grapefruit mist to 8 x 50 ml
  scale grapefruit mist with 12 ml grapefruit
  oil
  scale grapefruit mist for 600 drinks, 5 % loss
  scale grapefruit mist to 400 ml in grams at 27
  C
  scale grapefruit mist to 400 ml with 75.5 %
  spirit instead
Ana: help waste
  /waste: log fruit thrown out
  waste 6 oranges mouldy
  waste 1.2 kg lemons, 3 limes dried out
Ana: /help batch
  /batch: log a batch, or show one by its number
  batch grapefruit mist to 400 ml
  batch 12
Ana: help me
  Say what you want to do, with or without the
  slash:
  /waste: log fruit thrown out
  /scale: amounts for a size, bottles, drinks or
  what you have
  /strength: how strong, and how to water down
  /clear: will it stay clear?
  /dose: what a drink carries, against the
  limits
  /cost: what a batch, a bottle and a drink cost
  /batch: log a batch, or show one by its number
  /batches: what is resting, ready, near discard
  /check: note how a rested batch looks
  /label: labels for a batch, to print
  /week: the week's waste and what it cost
  /month: the month's waste and what it cost
  /plan: what to make next, what to buy, fruit
  to have
  /peeled: fruit peeled, with its clock
  /shopping: what to buy this week, in whole
  packs
  /juiced: what fruit gave in juice
  /bought: log what came in
  /acid: acid that makes a juice as sour as
  another
  /count: log what is on hand
  /fruit: fruit used, wasted and lost between
  counts
  /formula: show a formula
  /new: write a new formula down
  /formulas: the formulas in the book
  /trial: try a variant of a formula and taste
  it
  /taste: score a trial's bottle
  /price: set or see what a pack costs
  /stock: what is on hand; count it, or note
  what was bought
  /can_make: what can be made of what is on hand
  /pump: what each sprayer gives
  /drinks: log how many drinks were poured
  /team: who is in the bar; invite someone
  /log: who did what, and what was taken back
  /language: the language I speak with you
  /bar: see and change the bar's settings
  /export: all of the bar as files: tables and
  JSON
  /import: take a file in: what an export gave,
  or a table
  /undo: take back the last thing you logged
  /cautions: handling cautions
  /help: what I can do
  More on one of them: help scale
  [Help with scale] [Help with waste]
  [Handling cautions]
Ana: what can i do
  I did not understand that.
  Start with what to do, such as: scale, waste,
  batch, cost, week. Or tap Help.
  [Help]
Ana: cautions
  Handling cautions (1 to 8 of 46)
  1. Put out every flame and keep sparks away:
  at this strength the vapour lights in a warm
  room. (flash points of ethanol in water,
  handbook table on public pages (two as % vol,
  one as % mass))
  2. Never warm spirit on a flame or a bare hot
  plate: even a weak one gives vapour that
  lights. (flash points of ethanol in water,
  handbook table on public pages (two as % vol,
  one as % mass))
  3. No flame, candle, torch or flamed garnish
  near the spray while it is used. (flash points
  of ethanol in water, handbook table on public
  pages (two as % vol, one as % mass))
  4. Never flame a garnish over a drink that was
  just sprayed, nor serve it beside an open
  flame. (flash points of ethanol in water,
  handbook table on public pages (two as % vol,
  one as % mass))
  5. Work where air moves, away from the stove
  and out of cupboards: its vapour is heavy.
  (lower flammable limit of ethanol 3.1 % vol in
  air, IEC 60079-20-1 (2010))
  6. Keep it tightly closed, labelled, upright,
  cool and dark, away from heat and open bar
  bottles. (common practice, no source)
  7. Keep no more than a shift or two needs:
  your fire code says how much may be held, so
  ask. (common practice, no source)
  8. This is a large batch for a bar: ask what
  your fire code lets you mix and hold in one
  place. (common practice, no source)
  [More]
