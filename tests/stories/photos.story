# A photo with words under it logs like the words alone; a check keeps it, and the album shows them all.
@after mist

Ana: batch grapefruit mist to 8 x 50 ml
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
Ana: photos 1
  Batch 1, Grapefruit mist, has no photos yet.
  Send one with “check 1 clear” written under
  it.
  [Show batch 1]
Ana sends a photo: waste 3 limes mouldy
  Logged: 3 limes, mouldy.
  No price for lime: not in the cost.
  The photo is kept with it.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
@clock +25 h
Ana sends a photo: check 1 hazy
  Batch 1, Grapefruit mist: hazy.
  Next: filter a sample.
  Filter a glass of it through paper, and look
  the next day.
  Clear and stays so: it was wax or fine solids,
  so filter the rest: filtered 1, lost 12 ml
  Hazy again: not wax; the next test.
  I will ask again in a day.
  The photo is kept with it.
  [What would mend it?]
  [Discard] [Undo]
@clock +1 days
Ana sends a photo: batch 1 clear
  Batch 1, Grapefruit mist: clear.
  It can be bottled and used.
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  The photo is kept with it.
  [Open it] [Undo]
Ana: photos 1
  Batch 1, Grapefruit mist: 2 photos
  Thu, 26 Nov: checked, hazy (Ana)
  Fri, 27 Nov: checked, clear (Ana)
  <picture batch-1-1.jpg>
  <picture batch-1-2.jpg>
  [Show batch 1]
Ana sends a photo:
  Which batch?
  [1 Grapefruit mist]
  [Cancel]
Ana: cancel
  Cancelled. Nothing was logged.
Ana sends a photo: lovely evening
  Which batch?
  [1 Grapefruit mist]
  [Back] [Cancel]
