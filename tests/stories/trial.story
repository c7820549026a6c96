# A variant of a formula, tasted blind by two, of whom one looks up the letters, and the better one promoted.
@after mist

Ana: team invite
  Send this to your new member:
  join ‹code›
  Good for 1 person until Wed, 2 Dec 18:00. Only
  you can see it.
Ben: join ‹code›
  Welcome to The Copper Gull.
  You can scale, make batches and log waste
  here.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Ana: team invite
  Send this to your new member:
  join ‹code›
  Good for 1 person until Wed, 2 Dec 18:00. Only
  you can see it.
Cleo: join ‹code›
  Welcome to The Copper Gull.
  You can scale, make batches and log waste
  here.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Ana: trial grapefruit mist
  What changes in the variant of Grapefruit
  mist? Such as: grapefruit oil 14 ml
    grapefruit oil    12 ml
    propylene glycol  22 ml
    neutral spirit    62 ml
  [Back] [Cancel]
Ana: grapefruit oil 14 ml
  How much of each?
  [20 ml] [50 ml] [100 ml]
  [Back] [Cancel]
Ana taps [50 ml]
  (edited)
  Tasted blind? Then the bottles carry letters
  in random order.
  [Blind] [Open]
  [Back] [Cancel]
Ana taps [Blind]
  (edited)
  Trial 1 of Grapefruit mist begins.
  Whoever fills them checks the letters; tasters
  don't.
  Against the formula: grapefruit oil 14 ml
  50 ml of each.
  [Taste] [Another variant]
  [Log the batches] [Which is which?]
  [Undo]
Ana: trial grapefruit mist: without propylene glycol, neutral spirit 80 ml
  Trial 1 has 3 variants now.
  Whoever fills them checks the letters; tasters
  don't.
  Against the formula: grapefruit oil 14 ml
  without propylene glycol, neutral spirit 80 ml
  50 ml of each.
  [Taste] [Another variant]
  [Log the batches] [Which is which?]
  [Undo]
Ana: trial grapefruit mist: rest 2 h
  A variant changes ingredients: grapefruit oil
  14 ml, or: without water
  Change rest and sprays in the formula itself.
Ana taps [Log the batches]
  3 small batches are logged.
  A: batch 1
  B: batch 2
  C: batch 3
  [Taste] [Which is which?]
  [Undo]
# The card of a bottle tells a taster no more than the bottle does.
Ben: batch 2
  Batch 2: Grapefruit mist 1B, resting
  Blind trial 1: what went in stays hidden until
  it ends.
  50 ml made Wed, 25 Nov 18:00 by Ana, version 1
  Rests until Thu, 26 Nov 18:00, 24 hours more
  Discard after 24 May 2027, 180 days left
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Clear] [Hazy] [Split]
  [Open it]
  [Discard] [Label] [Note a lot]
  [Trial 1]
Ana: trial grapefruit mist: grapefruit oil 16 ml
  Trial 1 is blind and its letters are given
  out.
  That would show which letter is which. End it
  first.
  [End it]
Ana: strength batch 2
  Blind trial 1: what went in stays hidden until
  it ends.
  [Trial 1]
Ana: lot 2 grapefruit oil X9
  Blind trial 1: what went in stays hidden until
  it ends.
  [Trial 1]
# Whoever fills the bottles knows the letters, and gives no scores.
Cleo: trial key 1
  Trial 1, Grapefruit mist: A, B, C
  C is the formula as in the book.
  50 ml of each.
    
      A  B  C
    grapefruit oil
      6.5 ml  7 ml  6.2 ml
    neutral spirit
      43.5 ml  31.5 ml  32.5 ml
    propylene glycol
      -  11 ml  11.5 ml
  Changed in the formula:
  A: without propylene glycol, neutral spirit 80
  ml
  B: grapefruit oil 14 ml
  Logged that you looked: you can't score it
  until it ends.
  [Which is which?]
Cleo: taste A 3 3 3 3
  You can't score trial 1 until it ends: you
  have seen its letters.
  [See the trial]
Ben: taste
  Which bottle are you tasting?
  [A] [B] [C]
  [Cancel]
Ben taps [A]
  (edited)
  A: aroma, from 1 (faint) to 5 (full)
  [1] [2] [3] [4] [5]
  [Back] [Cancel]
Ben taps [4]
  (edited)
  A: brightness, from 1 (dull) to 5 (fresh)
  [1] [2] [3] [4] [5]
  [Back] [Cancel]
Ben taps [3]
  (edited)
  A: how long it lasts, from 1 (gone at once) to
  5 (to the last sip)
  [1] [2] [3] [4] [5]
  [Back] [Cancel]
Ben taps [4]
  (edited)
  A: bitterness, from 1 (none) to 5 (strong)
  [1] [2] [3] [4] [5]
  [Back] [Cancel]
Ben taps [2]
  (edited)
  A is scored.
  aroma 4, brightness 3, how long it lasts 4,
  bitterness 2.
  [Taste B] [Taste C] [See the trial]
  [Undo]
Ben taps [Taste B]
  (edited)
  B: aroma, from 1 (faint) to 5 (full)
  [1] [2] [3] [4] [5]
  [Back] [Cancel]
Ben taps [Cancel]
  (edited)
  Cancelled. Nothing was logged.
Ben: taste B 5 4 4 2
  B is scored.
  aroma 5, brightness 4, how long it lasts 4,
  bitterness 2.
  [Taste C] [See the trial]
  [Undo]
# Who has tasted is asked before the letters take the scores away.
Ben: trial key 1
  If you look up the letters of trial 1, your
  scores don't count.
  [Show me] [Cancel]
Ben taps [Cancel]
  (edited)
  Cancelled. Nothing was logged.
Ana: trials 1
  Trial 1, Grapefruit mist: A, B, C
  Blind: you see which is which when it ends.
  Looked up the letters: Cleo
  1 has tasted. You see the scores once you have
  tasted.
  [Taste] [Which is which?]
  [End it]
Ana: taste A 3 3 4 2
  A is scored.
  aroma 3, brightness 3, how long it lasts 4,
  bitterness 2.
  [Taste B] [Taste C] [See the trial]
  [Undo]
Ana: taste B 5 5 4 3
  B is scored.
  aroma 5, brightness 5, how long it lasts 4,
  bitterness 3.
  [Taste C] [See the trial]
  [Undo]
Ana: taste C 2 2 3 1
  C is scored.
  aroma 2, brightness 2, how long it lasts 3,
  bitterness 1.
  You have tasted all of it.
  [See the trial]
  [Undo]
Ana: taste D 2 2 3 1
  That trial has the bottles A, B, C.
Ana: taste A 6 3 4 2
  A whole number from 1 to 5, please.
Ana: trials 1
  Trial 1, Grapefruit mist: A, B, C
  Blind: you see which is which when it ends.
  Looked up the letters: Cleo
                  A    B  C
    aroma       3.5    5  2
    brightness    3  4.5  2
    lasting       4    4  3
    bitterness    2  2.5  1
  Not all tasted every bottle. Tasters: A 2, B
  2, C 1.
  What differs is said when it ends: it would
  name the formula as it stands.
  [Taste] [Which is which?]
  [End it]
Ben: trial key 1
  If you look up the letters of trial 1, your
  scores don't count.
  [Show me] [Cancel]
Ben taps [Show me]
  (edited)
  Trial 1, Grapefruit mist: A, B, C
  C is the formula as in the book.
  50 ml of each.
    
      A  B  C
    grapefruit oil
      6.5 ml  7 ml  6.2 ml
    neutral spirit
      43.5 ml  31.5 ml  32.5 ml
    propylene glycol
      -  11 ml  11.5 ml
  Changed in the formula:
  A: without propylene glycol, neutral spirit 80
  ml
  B: grapefruit oil 14 ml
  Logged that you looked: you can't score it
  until it ends.
  [Which is which?]
Ana: trials 1
  Trial 1, Grapefruit mist: A, B, C
  Blind: you see which is which when it ends.
  Looked up the letters: Ben, Cleo
                A  B  C
    aroma       3  5  2
    brightness  3  5  2
    lasting     4  4  3
    bitterness  2  3  1
  Looked up the letters, so not counted: Ben
  Mean and spread of 1 taster.
  What differs is said when it ends: it would
  name the formula as it stands.
  [Taste] [Which is which?]
  [End it]
Ben: promote B
  Only a manager can do that. Ask one to do it,
  or to make you a manager.
Ana: trial close 1
  Trial 1, Grapefruit mist: A, B, C, over
  50 ml of each.
    
      A  B  C
    grapefruit oil
      6.5 ml  7 ml  6.2 ml
    neutral spirit
      43.5 ml  31.5 ml  32.5 ml
    propylene glycol
      -  11 ml  11.5 ml
                A  B  C
    aroma       3  5  2
    brightness  3  5  2
    lasting     4  4  3
    bitterness  2  3  1
  Looked up the letters, so not counted: Ben
  Mean and spread of 1 taster.
  No clear difference: chance alone could do
  this.
  [Formula]
  [Promote A] [Promote B]
  [Undo]
Ana: promote #1 B
  Grapefruit mist is now version 2: grapefruit
  oil 14 ml.
  No tasting told it from the formula as it was.
  Trial 1 is over. Batches keep the version they
  were made with.
  [Undo] [Formula]
Ana taps [Undo]
  Undone: new version of Grapefruit mist from
  trial 1
  [Put it back]
Ana: trials
  No trial is running.
  Begin one: trial Grapefruit mist
  [Trial 1, Grapefruit mist: A, B, C, over]
# Another one, said in one line.
Ana: trial grapefruit mist 50 ml blind: grapefruit oil 15 ml
  Trial 2 of Grapefruit mist begins.
  Whoever fills them checks the letters; tasters
  don't.
  Against the formula: grapefruit oil 15 ml
  50 ml of each.
  [Taste] [Another variant]
  [Log the batches] [Which is which?]
  [Undo]
