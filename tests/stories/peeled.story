# Naked fruit has a clock; the reminder offers its three ends, and juice measures the bar's own yield.
@after opening

Ana: peeled 4 oranges
  Peeled: 4 oranges, good until Thu, 26 Nov
  18:00.
  24 h is common practice (/bar peeled fruit); I
  will remind you before.
  About 330 ml juice (250 ml to 410 ml;
  published yield).
  To lime strength: 6.4 g citric + 4 g malic
  acid.
  New here: orange.
  [Juiced] [Binned] [In a batch]
  [Undo] [Acid for it]
@clock + 18 h
@reminders
  (to private ana)
  Closing The Copper Gull, Wed, 25 Nov: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  Late: this was due Thu, 26 Nov 04:30.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
  --
  (to private ana)
  Peeled: 4 oranges still there, no good after
  Thu, 26 Nov 18:00. What happened to them?
  [Juiced] [Binned] [In a batch]
  [In 2 hours]
Ana taps [Juiced]
  (edited)
  How much juice did 4 oranges give?
  [250 ml] [330 ml] [410 ml]
  [Back] [Cancel]
Ana: 280 ml
  Juiced: 4 oranges gave 280 ml, 70 ml each.
  To be expected: 250 ml to 410 ml (published
  yield).
  I'll now assume 79 ml per orange, counting 4
  of your own.
  [Undo] [Acid for it]
Ana: peeled 6 oranges
  Peeled: 6 oranges, good until Fri, 27 Nov
  12:00.
  24 h is common practice (/bar peeled fruit); I
  will remind you before.
  About 470 ml juice (360 ml to 590 ml;
  published and your own).
  To lime strength: 9.2 g citric + 5.7 g malic
  acid.
  [Juiced] [Binned] [In a batch]
  [Undo] [Acid for it]
@clock + 23 h
@reminders
  (to private ana)
  Closing The Copper Gull, Thu, 26 Nov: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  Late: this was due Fri, 27 Nov 04:30.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
  --
  (to private ana)
  Peeled: 6 oranges still there, no good after
  Fri, 27 Nov 12:00. What happened to them?
  [Juiced] [Binned] [In a batch]
  [In 2 hours]
Ana taps [Binned]
  Logged: 6 oranges, peeled and not used.
  No price for orange: not in the cost.
  [Undo] [More waste]
  [Price of orange]
Ana: new formula Brine\
salt 20 g\
water 80 ml\
kind saline
  Brine is in the book.
  Brine: saline, version 1
    salt    20 g
    water  80 ml
  Makes 89.2 ml
  Needs no rest, discard after 30 days
  Caution: Ask about allergies before serving,
  and say what house-made things a drink holds.
  [Scale] [Cost] [Make]
  [Change] [More]
  [Undo]
Ana: batch brine x1
  Batch 1: Brine, 89.2 ml
  It needs no rest.
  Discard after 27 Dec 2026: the usual time for
  its kind.
  Caution: Label every bottle with name,
  strength, made-on and discard-by dates, and
  who made it.
  [Show batch 1]
  [Note a lot] [Undo]
Ana: log
  Log of The Copper Gull, newest first
  #6 Fri, 27 Nov 11:00, Ana: made batch 1, Brine
  #5 Fri, 27 Nov 11:00, Ana: wrote down Brine
  #4 Fri, 27 Nov 11:00, Ana: waste: 6 oranges,
  peeled and not used
  #3 Thu, 26 Nov 12:00, Ana: peeled 6 oranges
  #2 Thu, 26 Nov 12:00, Ana: juiced 4 oranges
  #1 Wed, 25 Nov 18:00, Ana: peeled 4 oranges
  [Undo #6] [Undo #5] [Undo #4]
Ana: peeled 3 limes
  Peeled: 3 limes, good until Sat, 28 Nov 11:00.
  24 h is common practice (/bar peeled fruit); I
  will remind you before.
  About 130 ml juice (97 ml to 160 ml; published
  yield).
  New here: lime.
  [Juiced] [Binned] [In a batch]
  [Undo] [Acid for it]
@clock + 18 h
@reminders
  (to private ana)
  Closing The Copper Gull, Fri, 27 Nov: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  Late: this was due Sat, 28 Nov 04:30.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
  --
  (to private ana)
  Peeled: 3 limes still there, no good after
  Sat, 28 Nov 11:00. What happened to them?
  [Juiced] [Binned] [In a batch]
  [In 2 hours]
Ana taps [In a batch]
  (edited)
  Which batch?
  [1 Brine]
  [Back] [Cancel]
Ana taps [1 Brine]
  (edited)
  3 limes went into batch 1, Brine.
  [Undo]
# The batch is taken back: the limes lie there again.
Ana: undo 6
  Undone: batch 1, Brine
  [Put it back]
Ana: peeled
  Which fruit was peeled?
    3 limes  Sat, 28 Nov 11:00
  [orange] [lime]
  [lemon] [grapefruit]
  [Cancel]
Ana: cancel
  Cancelled. Nothing was logged.
Ana: bar peeled fruit wrapped
  Peeled fruit: cold, wrapped tight: 72 h
  [The bar, labels, waste]
  [All settings] [Undo]
Ana: peeled 2 lemons
  Peeled: 2 lemons, good until Tue, 1 Dec 05:00.
  72 h is common practice (/bar peeled fruit); I
  will remind you before.
  About 93 ml juice (70 ml to 120 ml; published
  yield).
  Counted for Sat, 28 Nov: it is after closing.
  New here: lemon.
  [Juiced] [Binned] [In a batch]
  [Undo] [Acid for it]
  [It was Fri, 27 Nov]
