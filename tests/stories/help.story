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
  waste 6 oranges mouldy
  new formula: write down the first thing you
  make
  price oranges 0.60 each, 5 garnishes each
  week: what was thrown out and what it cost
  More on anything: help labels, help how do I
  waste
  [Log waste] [Add a formula]
  [Everything] [Handling cautions]
Ana: help scale
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
  [Step by step] [Formulas]
  [Everything]
Ana: help waste
  /waste: log fruit and anything else thrown out
  waste 6 oranges mouldy
  waste 1.2 kg lemons, 3 limes dried out
  waste 200 ml lime juice
  waste 1 bottle of batch 12
  [Step by step] [Waste and fruit]
  [Everything]
Ana: /help batch
  /batch: log a batch, or show one by its number
  batch grapefruit mist to 400 ml
  batch 12
  batch 12 add 29 ml spirit
  [Step by step] [Batches and labels]
  [Everything]
Ana: help me
  Say what you want to do, with or without the
  slash:
  waste 6 oranges mouldy
  new formula: write down the first thing you
  make
  price oranges 0.60 each, 5 garnishes each
  week: what was thrown out and what it cost
  More on anything: help labels, help how do I
  waste
  [Log waste] [Add a formula]
  [Everything] [Handling cautions]
Ana: what can i do
  Say what you want to do, with or without the
  slash:
  waste 6 oranges mouldy
  new formula: write down the first thing you
  make
  price oranges 0.60 each, 5 garnishes each
  week: what was thrown out and what it cost
  More on anything: help labels, help how do I
  waste
  [Log waste] [Add a formula]
  [Everything] [Handling cautions]
Ana: cautions
  Handling cautions (1 to 5 of 58)
  1. Put out every flame and keep sparks away:
  the vapour lights in a warm room. (the vapours
  of ethanol, citrus oil and glycol over the mix
  by two UNIFAC models (Liaw's rule))
  2. Never warm spirit on a flame or a bare hot
  plate: even a weak one gives vapour that
  lights.
  3. No flame, candle, torch or flamed garnish
  near the spray while it is used.
  4. Never flame a garnish over a drink that was
  just sprayed, nor serve it beside an open
  flame. (2 to 4: flash points of ethanol in
  water, handbook table on public pages (two as
  % vol, one as % mass))
  5. Work where air moves, away from the stove
  and out of cupboards: its vapour is heavy.
  (lower flammable limit of ethanol 3.1 % vol in
  air, IEC 60079-20-1 (2010))
  [More]
