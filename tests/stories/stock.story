# What is on hand: counted, bought, taken by batches, watched against a par.
@after mist

Ana: stock
  Nothing is counted yet.
  Count what is there: stock neutral spirit 1.4
  l
  Or note what comes in: stock bought neutral
  spirit 3 x 1 l 24 each
  [Count something] [Bought]
Ana: stock neutral spirit 1.4 l
  neutral spirit: 1,400 ml on hand.
  [Undo] [Par] [All stock]
Ana: stock grapefruit oil 60 ml
  grapefruit oil: 60 ml on hand.
  [Undo] [Par] [All stock]
Ana: stock bought neutral spirit 3 x 1 l 24 each
  Bought: 3,000 ml neutral spirit, €72.00.
  On hand: 4,400 ml
  [Undo] [Par] [All stock]
Ana: stock vodka 1 l
  vodka is new here. Right?
  [New ingredient: vodka]
  [Cancel]
Ana: stock neutral spirit 3
  3 of what? Write the unit too, such as 3 l or
  3 g.
Ana: what can I make?
  You can make 1 formula now
    Grapefruit mist  480 ml
  Grapefruit mist: first to run out is
  grapefruit oil
  Never counted, so I assume you have it:
  propylene glycol
  [Grapefruit mist]
  [All stock]
Ana: par neutral spirit 4.3 l
  neutral spirit: I remind you below 4,300 ml.
  On hand: 4,400 ml
  [Undo] [All stock]
@reminders
  (nothing)
Ana: batch grapefruit mist to 200 ml
  Batch 1: Grapefruit mist, 201 ml
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
Ana: stock
  1 below par: neutral spirit
    neutral spirit *  4,270 ml
    grapefruit oil       35 ml
  * below its par
  [Count something] [Bought]
  [What can I make?] [Shopping list]
@reminders
  (to private ana)
  neutral spirit runs low: 4,270 ml left, par
  4,300 ml.
  [Bought] [Count it]
  [Tomorrow] [Done]
# Once for each fall: another batch below the par is no news.
Ana: batch grapefruit mist to 50 ml
  Batch 2: Grapefruit mist, 50.2 ml
  Resting until Thu, 26 Nov 18:00. I will remind
  you.
  Check it again on 25 Dec 2026.
  Discard after 24 May 2027: the usual time for
  its kind.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 2]
  [Note a lot] [Undo]
@reminders
  (nothing)
Ana: stock bought
  Which ingredient?
  [grapefruit oil] [neutral spirit]
  [grapefruit] [propylene glycol]
  [Back] [Cancel]
Ana taps [neutral spirit]
  (edited)
  How much neutral spirit was bought? Packs,
  size and price of one: 3 x 1 l 24
  [Back] [Cancel]
Ana: 2 x 70 cl 18
  Bought: 1,400 ml neutral spirit, €36.00.
  On hand: 5,638 ml
  Par: 4,300 ml
  [Undo] [Par] [All stock]
Ana taps [Undo]
  Undone: 1,400 ml neutral spirit bought
  [Put it back]
Ana: stock neutral spirit 4 l
  neutral spirit: 4,000 ml on hand.
  It should be 4,238 ml: 237.5 ml missing, and
  not logged.
  Below its par of 4,300 ml.
  [Undo] [Par] [All stock]
Ana: stock neutral spirit
  neutral spirit: 4,000 ml on hand.
  Counted Wed, 25 Nov, less what batches took
  since.
  Below its par of 4,300 ml.
  [Count it] [Bought]
  [Par] [All stock]
Ana taps [Par]
  (edited)
  Below how much neutral spirit should I remind
  you?
  [never]
  [Back] [Cancel]
Ana taps [never]
  (edited)
  neutral spirit has no par: I will not remind
  you.
  [Undo] [All stock]
Ana: par
  No ingredient has a par yet.
  Set one and I'll tell you once when there is
  less: par neutral spirit 1 l
  [Set a par]
