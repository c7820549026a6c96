# An event from planning to what came back, over the days; the next one learns from it.
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
Ana: event 300 guests 5 Dec, 2 drinks each, grapefruit mist
  Sat, 5 Dec: 300 guests, about 600 drinks
    Grapefruit
    mist           200 ml  4 x 50 ml
  With a margin of 25 %: enough nine times in
  ten.
  Make by Wed, 2 Dec, with time for the rest and
  a second try: Grapefruit mist
  3 things to buy by Mon, 30 Nov, €59.70
  <picture packing-2026-12-05.png>
  <file packing-2026-12-05.pdf>
  [Make Grapefruit mist]
  [Change] [Reminders] [Undo]
Ana: reminders
  5 reminders planned
  Thu, 26 Nov 04:30: what was thrown out tonight
  Mon, 30 Nov 16:00: Buy what is missing for the
  event on Sat, 5 Dec
  Wed, 2 Dec 16:00: Make Grapefruit mist for the
  event on Sat, 5 Dec
  Fri, 4 Dec 16:00: Pack for the event on Sat, 5
  Dec
  Sun, 6 Dec 16:00: What came back from the
  event? came back 1
  Tap one to change or stop it.
  [what was thrown out tonight] [Buy what is missing for the…]
  [Make Grapefruit mist for th…] [Pack for the event on Sat,…]
  [What came back from the eve…]
  [Add one]
Ana: undo
  Undone: event on Sat, 5 Dec
  [Put it back]
Ana: reminders
  1 reminder planned
  Thu, 26 Nov 04:30: what was thrown out tonight
  Tap one to change or stop it.
  [what was thrown out tonight]
  [Add one]
Ana: put back
  Put back: event on Sat, 5 Dec
  [Undo]
Ana: serve paloma: 2 grapefruit mist, 150 ml
  paloma: 2 sprays Grapefruit mist in 150 ml
  Instead of fresh grapefruit
  The aroma costs €0.016 to €0.023 a drink
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
Ana: event
  How many guests?
  [50] [100] [150]
  [200] [300] [500]
  [Cancel]
Ana: 120
  On which day?
  [Back] [Cancel]
Ana: on 20 Dec
  How many drinks for each guest?
  [1] [2] [3]
  [Back] [Cancel]
Ana taps [2]
  (edited)
  Which drinks or preparations?
  [paloma] [Grapefruit mist]
  [Back] [Cancel]
Ana: paloma and grapefruit mist
  Sun, 20 Dec: 120 guests, about 240 drinks
    Grapefruit
    mist           100 ml  2 x 50 ml
  With a margin of 39 %: enough nine times in
  ten.
  Make by Thu, 17 Dec, with time for the rest
  and a second try: Grapefruit mist
  3 things to buy by Tue, 15 Dec, €51.80
  <picture packing-2026-12-20.png>
  <file packing-2026-12-20.pdf>
  [Make Grapefruit mist]
  [Change] [Reminders] [Undo]
Ana: events
  Events
  2: Sun, 20 Dec, 120 guests: 1 to make
  1: Sat, 5 Dec, 300 guests: 1 to make
  [2: Sun, 20 Dec, 120 guests]
  [1: Sat, 5 Dec, 300 guests]
  [Plan an event]
Ana: event 300 -> 280 guests
  Sat, 5 Dec: 280 guests, about 560 drinks
    Grapefruit
    mist           150 ml  3 x 50 ml
  With a margin of 25 %: enough nine times in
  ten.
  Make by Wed, 2 Dec, with time for the rest and
  a second try: Grapefruit mist
  3 things to buy by Mon, 30 Nov, €51.80
  <picture packing-2026-12-05.png>
  <file packing-2026-12-05.pdf>
  [Make Grapefruit mist]
  [Change] [Reminders] [Undo]
Ana: move event 1 to 6 Dec
  Sun, 6 Dec: 280 guests, about 560 drinks
    Grapefruit
    mist           150 ml  3 x 50 ml
  With a margin of 25 %: enough nine times in
  ten.
  Make by Thu, 3 Dec, with time for the rest and
  a second try: Grapefruit mist
  3 things to buy by Tue, 1 Dec, €51.80
  <picture packing-2026-12-06.png>
  <file packing-2026-12-06.pdf>
  [Make Grapefruit mist]
  [Change] [Reminders] [Undo]
Ana: undo
  Undone: change of event 1
  [Put it back]
Ana: change event 2
  What changes? 2: Sun, 20 Dec, 120 guests
  Such as: change event 2 280 guests, 6 Dec, 3
  drinks each
  [110 guests] [130 guests]
  [Sat, 19 Dec] [Mon, 21 Dec]
  [1 drink each] [3 drinks each]
  [Cancel the event]
Ana taps [130 guests]
  Sun, 20 Dec: 130 guests, about 260 drinks
    Grapefruit
    mist           100 ml  2 x 50 ml
  With a margin of 39 %: enough nine times in
  ten.
  Make by Thu, 17 Dec, with time for the rest
  and a second try: Grapefruit mist
  3 things to buy by Tue, 15 Dec, €51.80
  <picture packing-2026-12-20.png>
  <file packing-2026-12-20.pdf>
  [Make Grapefruit mist]
  [Change] [Reminders] [Undo]
Ana: cancel event 2
  Cancelled: 2: Sun, 20 Dec, 130 guests
  Its reminders are stopped.
  [Events] [Undo]
@clock 2026-12-02 10:00 Europe/Lisbon
Ana: today
  Wed, 2 Dec: 2 things to do
  Make 150 ml Grapefruit mist for the event on
  Sat, 5 Dec
  3 things to buy by Wed, 9 Dec, €51.80
  [Make Grapefruit mist] [Shopping list]
  [Reminders] [Leave a note]
Ana taps [Make Grapefruit mist]
  Batch 1: Grapefruit mist, 150.5 ml
  Resting until Thu, 3 Dec 10:00. I will remind
  you.
  For the event on Sat, 5 Dec.
  Check it again on 1 Jan 2027.
  Discard after 31 May 2027: the usual time for
  its kind.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Food grade not confirmed: grapefruit
  oil, propylene glycol
  [Show batch 1]
  [Note a lot] [Undo]
Ana: plan grapefruit mist
  I don't know how much Grapefruit mist you use.
  Say it: bar drinks a week 300. Or count a
  night: drinks 60 Grapefruit mist
  Made for an event, so no usual use: batch 1
  Kept for the event on Sat, 5 Dec: 145 ml of
  batch 1
  [Batches] [Plan]
Ana: events
  Events
  1: Sat, 5 Dec, 280 guests: nothing left to
  make
  [1: Sat, 5 Dec, 280 guests]
  [Plan an event]
@clock 2026-12-04 10:00 Europe/Lisbon
Ana: today
  Fri, 4 Dec: 2 things to do
  Pack for the event on Sat, 5 Dec
  Batch 1, Grapefruit mist, has rested: check
  how it looks
  [Event 1] [Check 1]
  [Reminders] [Leave a note]
Ana: packing list
  Sat, 5 Dec: 280 guests, about 560 drinks
    Grapefruit
    mist           150 ml  3 x 50 ml
  With a margin of 25 %: enough nine times in
  ten.
  Grapefruit mist: 145 ml in batch 1, made for
  this event
  Nobody has seen batch 1 clear yet: check it
  before you pack it.
  Nothing to make: what you have is enough.
  <picture packing-2026-12-05.png>
  <file packing-2026-12-05.pdf>
  [Change] [Reminders]
@clock 2026-12-06 10:00 Europe/Lisbon
Ana: today
  Sun, 6 Dec: 2 things to do
  Event on Sat, 5 Dec: what came back?
  Batch 1, Grapefruit mist, has rested: check
  how it looks
  [What came back] [Check 1]
  [Reminders] [Leave a note]
Ana taps [What came back]
  (edited)
  How much Grapefruit mist came back, of 3 x 50
  ml?
  [All used] [Half came back] [All came back]
  [1 bottle] [2 bottles]
  [Back] [Cancel]
Ana taps [1 bottle]
  (edited)
  Noted for Sat, 5 Dec: what came back.
  Grapefruit mist: used 100 ml of 150 ml, 0.18
  ml a drink; 117 ml were likely.
  [Show the event] [Undo]
Ana: undo
  Undone: what came back from event 1
  [Put it back]
Ana: 2 bottles came back
  Read as: came back 2 bottles
  Nothing is logged yet. Tap if that is right.
  [came back 2 bottles]
Ana: came back 120 ml of 200 ml grapefruit mist
  Noted for Sat, 5 Dec: what came back.
  Grapefruit mist: used 80 ml of 200 ml, 0.14 ml
  a drink; 117 ml were likely.
  [Show the event] [Undo]
Ana: drinks 600 grapefruit mist yesterday
  Sat, 5 Dec: 600 drinks with Grapefruit mist.
  [Undo] [By weekday] [Plan]
Ana: week last week
  No waste logged
  Mon, 23 Nov to Sun, 29 Nov
  Nothing logged to compare with: Mon, 16 Nov to
  Sun, 22 Nov.
  [Log waste]
Ana: week
  No waste logged
  Mon, 30 Nov to Sun, 6 Dec, still running
  Nothing logged to compare with: Mon, 23 Nov to
  Sat, 28 Nov.
  Apart, the event on Sat, 5 Dec: 280 guests,
  used Grapefruit mist 80 ml
  [Last week] [Log waste]
Ana: event 280 guests 19 Dec, 2 drinks each, grapefruit mist
  Sat, 19 Dec: 280 guests, about 560 drinks
    Grapefruit
    mist           100 ml  2 x 50 ml
  With a margin of 24 %: enough nine times in
  ten.
  Grapefruit mist: 99 ml, by what 1 earlier
  event used. By the sprays alone: 145 ml.
  Grapefruit mist: 90 ml in batch 1, good until
  Mon 31 May 2027
  Nobody has seen batch 1 clear yet: check it
  before you pack it.
  I don't know what the bar uses until then of:
  Grapefruit mist
  Make by Wed, 16 Dec, with time for the rest
  and a second try: Grapefruit mist 1 x 50 ml
  3 things to buy by Mon, 14 Dec, €43.90
  <picture packing-2026-12-19.png>
  <file packing-2026-12-19.pdf>
  [Make Grapefruit mist]
  [Change] [Reminders] [Undo]
Ana: came back 3 1 bottle grapefruit mist
  That event is only on Sat, 19 Dec. Note
  afterwards what came back.
Ana: log
  Log of The Copper Gull, newest first
  #20 Sun, 6 Dec 10:00, Ana: planned an event,
  280 guests on Sat, 19 Dec
  #19 Sun, 6 Dec 10:00, Ana: counted 600 drinks
  #18 Sun, 6 Dec 10:00, Ana: noted what came
  back from event 1
  #17 Sun, 6 Dec 10:00, Ana: undid #16
  #16 Sun, 6 Dec 10:00, Ana: noted what came
  back from event 1 (undone by #17)
  #15 Wed, 2 Dec 10:00, Ana: made batch 1,
  Grapefruit mist
  #14 Wed, 25 Nov 18:00, Ana: cancelled the
  event on Sun, 20 Dec, 130 guests
  #13 Wed, 25 Nov 18:00, Ana: changed event 2:
  130 guests on Sun, 20 Dec
  #12 Wed, 25 Nov 18:00, Ana: undid #11
  #11 Wed, 25 Nov 18:00, Ana: changed event 1:
  280 guests on Sun, 6 Dec (undone by #12)
  [Undo #20] [Undo #19] [Undo #18]
  [Older]
