# The week against the week before, an earlier week, a week by number.
@after opening

@clock 2026-11-11 23:00 Europe/Lisbon
Ana: price oranges 0.60 each
  orange: €0.60 each
  New here: orange.
  [Undo] [Another price]
Ana: price limes 0.25 each
  lime: €0.25 each
  New here: lime.
  [Undo] [Another price]
Ana: week
  No waste logged
  Mon, 9 Nov to Sun, 15 Nov, still running
  Nothing logged to compare with: Mon, 2 Nov to
  Tue, 3 Nov.
  [Last week] [Log waste]
Ana: waste 10 oranges mouldy
  Logged: 10 oranges, mouldy, €6.00.
  Wed, 11 Nov so far: €6.00
  [Undo] [More waste]
@clock 2026-11-14 23:00 Europe/Lisbon
Ana: waste 8 limes dried out
  Logged: 8 limes, dried out, €2.00.
  Sat, 14 Nov so far: €2.00
  [Undo] [More waste]
@clock 2026-11-18 23:00 Europe/Lisbon
Ana: waste 5 oranges mouldy, 4 limes dried out, 2 lemons
  Logged 3 lines
    5 oranges     mouldy     €3.00
    4 limes    dried out     €1.00
    2 lemons              no price
  No price for lemon: not in the cost.
  Wed, 18 Nov so far: €4.00
  Why the 2 lemons? One tap is enough.
  New here: lemon.
  [Undo] [More waste]
  [Price of lemon]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ana: waste 500 g oranges damaged
  Logged: 500 g oranges, damaged on delivery,
  €1.67.
  Wed, 18 Nov so far: €5.67
  [Undo] [More waste]
Ana: week
  Waste: €5.67
  Mon, 16 Nov to Sun, 22 Nov, still running
    orange  5 + 500 g     €4.67
    lime            4     €1.00
    lemon           2  no price
    mouldy                  5  €3.00
    damaged on
    delivery            500 g  €1.67
    2 others                6  €1.00
  Without a price, so not counted: lemon.
  First 3 days of the week before: €6.00, too
  few nights to say
  <picture waste-2026-W47.png>
  [More] [Picture]
  [Last week] [Log waste]
Ana taps [Last week]
  Waste: €8.00
  Mon, 9 Nov to Sun, 15 Nov
    orange  10  €6.00
    lime     8  €2.00
    mouldy     10  €6.00
    dried out   8  €2.00
  Nothing logged to compare with: Mon, 2 Nov to
  Sun, 8 Nov.
  <picture waste-2026-W46.png>
  [More] [Picture]
  [Log waste]
Ana: week 2026-W46
  Waste: €8.00
  Mon, 9 Nov to Sun, 15 Nov
    orange  10  €6.00
    lime     8  €2.00
    mouldy     10  €6.00
    dried out   8  €2.00
  Nothing logged to compare with: Mon, 2 Nov to
  Sun, 8 Nov.
  <picture waste-2026-W46.png>
  [More] [Picture]
  [Log waste]
Ana: week 2026-W60
  Week 60 is out of range: it has to be between
  1 and 53.
Ana: week last week
  Waste: €8.00
  Mon, 9 Nov to Sun, 15 Nov
    orange  10  €6.00
    lime     8  €2.00
    mouldy     10  €6.00
    dried out   8  €2.00
  Nothing logged to compare with: Mon, 2 Nov to
  Sun, 8 Nov.
  <picture waste-2026-W46.png>
  [More] [Picture]
  [Log waste]
Ana: week of the dog
  Read as: week
  Waste: €5.67
  Mon, 16 Nov to Sun, 22 Nov, still running
    orange  5 + 500 g     €4.67
    lime            4     €1.00
    lemon           2  no price
    mouldy                  5  €3.00
    damaged on
    delivery            500 g  €1.67
    2 others                6  €1.00
  Without a price, so not counted: lemon.
  First 3 days of the week before: €6.00, too
  few nights to say
  <picture waste-2026-W47.png>
  [More] [Picture]
  [Last week] [Log waste]
# On Monday before closing hour it is still last week.
@clock 2026-11-23 02:00 Europe/Lisbon
Ana: week
  Waste: €5.67
  Mon, 16 Nov to Sun, 22 Nov, still running
    orange  5 + 500 g     €4.67
    lime            4     €1.00
    lemon           2  no price
    mouldy                  5  €3.00
    damaged on
    delivery            500 g  €1.67
    2 others                6  €1.00
  Without a price, so not counted: lemon.
  First 6 days of the week before: €8.00, too
  few nights to say
  <picture waste-2026-W47.png>
  [More] [Picture]
  [Last week] [Log waste]
@clock 2026-11-23 18:00 Europe/Lisbon
Ana: week
  No waste logged
  Mon, 23 Nov to Sun, 29 Nov, still running
  The week before: €5.67
  [Last week] [Log waste]
# Any days, as they are said.
Ana: report from 1 to 15 Nov
  Waste: €8.00
  Sun, 1 Nov to Sun, 15 Nov
    orange  10  €6.00
    lime     8  €2.00
    mouldy     10  €6.00
    dried out   8  €2.00
  Nothing logged to compare with: Sat, 17 Oct to
  Sat, 31 Oct.
  <picture waste-2026-W46.png>
  [More] [Picture]
  [Log waste]
Ana: report last two weeks
  Waste: €13.67
  Tue, 10 Nov to Mon, 23 Nov, still running
    orange  15 + 500 g    €10.67
    lime            12     €3.00
    lemon            2  no price
    mouldy            15  €9.00
    dried out         12  €3.00
    2 others   2 + 500 g  €1.67
  Without a price, so not counted: lemon.
  Nothing logged to compare with: Tue, 27 Oct to
  Sun, 8 Nov.
  <picture waste-2026-W48.png>
  [More] [Picture]
  [Log waste]
Ana: report 1/11 to 15/11
  Waste: €8.00
  Sun, 1 Nov to Sun, 15 Nov
    orange  10  €6.00
    lime     8  €2.00
    mouldy     10  €6.00
    dried out   8  €2.00
  Nothing logged to compare with: Sat, 17 Oct to
  Sat, 31 Oct.
  <picture waste-2026-W46.png>
  [More] [Picture]
  [Log waste]
