# An event: amounts with a margin, days, shopping, packing list, reminders; what came back; undone.
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
@clock 2026-12-06 16:00 Europe/Lisbon
Ana: came back 1 120 ml grapefruit mist
  Noted for Sat, 5 Dec: what came back.
  Grapefruit mist: used 80 ml of 200 ml, 0.13 ml
  a drink; 125 ml were likely.
  [Show the event] [Undo]
Ana: undo
  Undone: what came back from event 1
  [Put it back]
Ana: events 1
  Sat, 5 Dec: 300 guests, about 600 drinks
    Grapefruit
    mist           200 ml  4 x 50 ml
  What came back is not noted.
  [What came back] [Events]
