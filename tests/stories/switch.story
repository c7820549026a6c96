# Before deciding: five numbers on an empty bar give cash, time, and the nights that would show it.
@after opening

Ana: switch orange
  What does one orange cost?
  [Back] [Cancel]
Ana: 0.50
  How many garnishes do you cut from one?
  [Back] [Cancel]
Ana: 5
  How many drinks a week take it?
  [Back] [Cancel]
Ana: 300
  How many oranges do you throw out a week?
  [Back] [Cancel]
Ana: 20
  Cash: about €25.00 to €32.00 a week saved
  Fresh orange costs €40.00 a week now; a spray
  a quarter to a third of it, as a rule.
  Time, apart: about 30 to 70 min a week,
  cutting less mixing.
  Nobody knows yet, and it matters most: drinks
  a week and fruit thrown out a week.
  To show a drop 8 times in 10, log as many
  nights before and again after:
    30 % less  192 nights
    50 % less   58 nights
    70 % less   25 nights
  Stop if the spray costs over €0.133 a drink,
  if tasters can tell and mind, or if those
  nights show no drop.
  [Log waste] [New formula]
Ana: switch orange: 0.50, 5, 300, 0
  A number above 0, please.
