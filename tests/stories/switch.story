# Before deciding: five taps on an empty bar give cash, time, and the nights that would show it.
@after opening

Ana: switch
  Which fruit would you stop cutting?
  [orange] [lemon]
  [lime] [grapefruit]
  [Cancel]
Ana taps [lemon]
  (edited)
  What does one lemon cost?
  [Back] [Cancel]
Ana: 0.35
  How many garnishes do you cut from one?
  [3] [4] [5]
  [6] [8] [10]
  [Other number]
  [Back] [Cancel]
Ana taps [6]
  (edited)
  How many drinks a week take it?
  [50] [100] [200]
  [300] [500] [800]
  [Other number]
  [Back] [Cancel]
Ana taps [200]
  (edited)
  How many lemons do you throw out a week?
  [0] [5] [10]
  [20] [40] [80]
  [Other number]
  [Back] [Cancel]
Ana taps [Other number]
  (edited)
  How many lemons do you throw out a week?
  [1] [2] [3]
  [4] [5] [6]
  [7] [8] [9]
  [0]
  [Back] [Cancel]
Ana taps [1]
  (edited)
  How many lemons do you throw out a week? 1_
  [1] [2] [3]
  [4] [5] [6]
  [7] [8] [9]
  [Erase] [0] [OK]
  [Back] [Cancel]
Ana taps [5]
  (edited)
  How many lemons do you throw out a week? 15_
  [1] [2] [3]
  [4] [5] [6]
  [7] [8] [9]
  [Erase] [0] [OK]
  [Back] [Cancel]
Ana taps [OK]
  (edited)
  Cash: €11 to €17 a week saved, as a guess
  Fresh lemon costs €16.92 a week now, a spray
  about €1.14 to €4.83.
  I took a drink's spray to cost 5 to 50 % of a
  cut garnish: a guess, no source.
  Time, apart: 10 to 40 min less a week.
  Nobody knows yet, and it matters most: what
  the spray costs (moves it by €5.25) and fruit
  thrown out a week (moves it by €5.25).
  To show a drop 8 times in 10, beside another
  fruit, log so long before and again after:
    30 % less  256 nights  37 weeks
    50 % less   77 nights  11 weeks
    70 % less   33 nights   5 weeks
  I took counts to vary 2 times as much as by
  chance: common practice, no source.
  Stop if the spray costs over €0.085 a drink,
  if tasters can tell and mind, or if those
  nights show no drop.
  [Log waste] [New formula]

Ana: switch orange
  What does one orange cost?
  [Back] [Cancel]
Ana: 0.50
  How many garnishes do you cut from one?
  [3] [4] [5]
  [6] [8] [10]
  [Other number]
  [Back] [Cancel]
Ana: 5
  How many drinks a week take it?
  [50] [100] [200]
  [300] [500] [800]
  [Other number]
  [Back] [Cancel]
Ana: 300
  How many oranges do you throw out a week?
  [0] [5] [10]
  [20] [40] [80]
  [Other number]
  [Back] [Cancel]
Ana: 20
  Cash: €26 to €39 a week saved, as a guess
  Fresh orange costs €40.00 a week now, a spray
  about €3 to €12.
  I took a drink's spray to cost 5 to 50 % of a
  cut garnish: a guess, no source.
  Time, apart: 30 to 70 min less a week.
  Nobody knows yet, and it matters most: what
  the spray costs (moves it by €14) and drinks a
  week (moves it by €10).
  To show a drop 8 times in 10, beside another
  fruit, log so long before and again after:
    30 % less  192 nights  28 weeks
    50 % less   58 nights   9 weeks
    70 % less   25 nights   4 weeks
  I took counts to vary 2 times as much as by
  chance: common practice, no source.
  Stop if the spray costs over €0.133 a drink,
  if tasters can tell and mind, or if those
  nights show no drop.
  [Log waste] [New formula]
Ana: switch orange: 0.50, 5, 300, 0
  Cash: €17 to €28 a week saved, as a guess
  Fresh orange costs €30.00 a week now, a spray
  about €3 to €12.
  I took a drink's spray to cost 5 to 50 % of a
  cut garnish: a guess, no source.
  Time, apart: 30 to 70 min less a week.
  Nobody knows yet, and it matters most: what
  the spray costs (moves it by €14) and drinks a
  week (moves it by €10).
  Nothing thrown out, so no waste can drop: only
  the deliveries will show it.
  Stop if the spray costs over €0.100 a drink,
  if tasters can tell and mind, or if you buy no
  less fruit.
  [Log waste] [New formula]
