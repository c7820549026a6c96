# What the button of the closing prompt says may be typed as well; a name may hold a comma.
@after opening

Ana: nothing tonight
  Noted: no waste tonight.
  [Undo]
@clock 2026-11-26 04:30 Europe/Lisbon
@reminders
  (nothing)
Ana: nothing tonight
  That was already done.
Ana: no waste
  That was already done.
Ana: undo
  Undone: no waste on Wed, 25 Nov
  [Put it back]
Ana taps [Put it back]
  Put back: no waste on Wed, 25 Nov
  [Undo]
Ana: log
  Log of The Copper Gull, newest first
  #3 Thu, 26 Nov 04:30, Ana: put back: no waste
  on Wed, 25 Nov
  #2 Thu, 26 Nov 04:30, Ana: undid #1
  #1 Wed, 25 Nov 18:00, Ana: no waste on Wed, 25
  Nov (undone by #2)
  [Undo #3]
Ana: new formula Orange mist, strong
  Type the ingredients, a line each: lime oil 10
  ml
  [Back] [Cancel]
Ana: sweet orange oil 10 ml
  More ingredients? Tap Done when it is
  complete.
  · sweet orange oil (new) 10 ml
  [Done] [Back] [Cancel]
Ana: neutral spirit 96 % 90 ml
  More ingredients? Tap Done when it is
  complete.
  · sweet orange oil (new) 10 ml
  · neutral spirit 96 % (new) 90 ml
  [Done] [Back] [Cancel]
Ana: done
  What kind is it?
  [aroma mist] [tincture]
  [infusion] [syrup]
  [cordial] [juice]
  [acid-adjusted juice] [saline]
  [other]
  [Back] [Cancel]
Ana: aroma mist
  How long does it rest before use?
  [24 hours] [not at all]
  [48 hours]
  [Back] [Cancel]
Ana: 24 hours
  How long does it keep?
  [180 days] [7 days]
  [30 days]
  [Back] [Cancel]
Ana: 180 days
  How many sprays per drink?
  [1] [2] [2-3] [3]
  [Back] [Cancel]
Ana: 2
  Which fruit's peel does it stand in for?
  [oranges]
  [None]
  [Back] [Cancel]
Ana: oranges
  Orange mist, strong is in the book.
  Orange mist, strong: aroma mist, version 1
    sweet orange oil     10 ml
    neutral spirit 96 %  90 ml
  Makes 100 ml at 86.4 % vol
  Rests 24 hours, discard after 180 days
  2 sprays a drink, 0.067 to 0.1 ml each,
  instead of fresh orange
  Clearing: should stay clear, by estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: sweet
  orange oil
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [sweet orange oil: food grade] [Not sure]
  [Undo]
Ana: scale orange mist, strong to 200 ml
  Orange mist, strong: 200 ml
    sweet orange oil   20 ml
    neutral spirit    180 ml
  Makes 200 ml at 86.4 % vol
  Enough for 1,000 to 1,500 drinks
  Exact with: 50 ml cylinder, 250 ml cylinder.
  Clearing: should stay clear, by estimate
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Log this batch]
  [In grams] [Cost]
  [Will it clear?] [Another spirit]
  [Other size] [All cautions]
Ana: cost orange mist strong x2
  I know no formula called “orange mist strong”.
  Did you mean:
  [Orange mist, strong]
