# Fresh against spray: what is missing is asked for one by one, then ranges, what matters, and where they are level.
@after mist

Ana: cost grapefruit mist more
  Can't compare Grapefruit mist with fresh yet.
  Price the fruit: price grapefruit 0.60 each, 5
  garnishes each
  [Cost]
Ana: price grapefruits 0.90 each, 8-10 garnishes each\
price grapefruit oil 10 ml 7.90\
price propylene glycol 500 ml 11.50\
price neutral spirit 1 l 24
  grapefruit: €0.90 each
  8 to 10 garnishes each: €0.112 a garnish
  before waste
  [Undo] [Another price]
  --
  grapefruit oil: €7.90 for 10 ml
  [Undo] [Another price]
  --
  propylene glycol: €11.50 for 500 ml
  [Undo] [Another price]
  --
  neutral spirit: €24.00 for 1 l
  [Undo] [Another price]
Ana: cost grapefruit mist more
  Can't compare Grapefruit mist with fresh yet.
  Say how many drinks a week take it: bar drinks
  a week 300
  [Cost]
Ana: bar drinks a week 250-350
  Drinks a week: 250 to 350
  [Money and work]
  [All settings] [Undo]
Ana: cost grapefruit mist more
  Grapefruit mist saves €22.53 a week against
  fresh grapefruit
              fresh   spray
    a drink  €0.100  €0.025
    a week   €30.00   €7.47
    a year   €1,600    €390
  Saved: usually €19 to €26, at the extremes €14
  to €34
  What matters most: drinks a week and garnishes
  from a fruit
  Breaks even at €0.22 a fruit, or 10 sprays, or
  4 drinks a week
  300 drinks a week as you said.
  Not counted: batch minutes, bottle price,
  label price, fruit wasted. Such as: bar batch
  minutes 15-20
  [What matters: picture] [Cost]
Ana: bar wage 12-15\
bar batch minutes 15-20\
bar garnish minutes 0.2-0.3\
bar bottle price 1.20\
bar label price 0.05\
bar outlay 60
  Wage: €12.00 to €15.00
  [Money and work]
  [All settings] [Undo]
  --
  Batch minutes: 15 to 20 min
  [Money and work]
  [All settings] [Undo]
  --
  Garnish minutes: 0.2 to 0.3 min
  [Money and work]
  [All settings] [Undo]
  --
  Bottle price: €1.20
  [Money and work]
  [All settings] [Undo]
  --
  Label price: €0.05
  [Money and work]
  [All settings] [Undo]
  --
  Outlay: €60.00
  [Money and work]
  [All settings] [Undo]
Ana: bought 80 grapefruits 72
  Bought: 80 grapefruits, €72.00.
  Price from now on: €72.00 for 80 pieces.
  The same as before.
  [Undo] [More that came in]
Ana: waste 16 grapefruits peeled and not used
  Logged: 16 grapefruits, peeled and not used,
  €14.40.
  Wed, 25 Nov so far: €14.40
  [Undo] [More waste]
Ana: cost grapefruit mist more
  Grapefruit mist saves €28.47 a week against
  fresh grapefruit
              fresh   spray
    a drink  €0.125  €0.030
    a week   €37.50   €9.03
    a year   €2,000    €470
  Saved: usually €24 to €33, at the extremes €17
  to €42
  What matters most: drinks a week and garnishes
  from a fruit
  €60.00 spent once: earned back in 2.1 weeks
  (1.4 to 3.5)
  Time, apart: 51 to 76 min saved a week, about
  €14.31 at your wage
  Breaks even at €0.22 a fruit, or 10.4 sprays,
  or 4 drinks a week
  300 drinks a week as you said; 20 % of the
  fruit wasted (12 weeks to 25 Nov 2026).
  [What matters: picture] [Cost]
Ana taps [What matters: picture]
  What matters most for Grapefruit mist
  <picture tornado.png>
