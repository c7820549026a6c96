# Acid by measured strength, the rule of thumb beside it, and the bar's own recipe before both.
@after opening

Ana: acid 280 ml orange juice to lime
  280 ml orange juice to lime strength: 5.4 g
  citric + 3.4 g malic acid
                   citric  malic
    computed        5.4 g  3.4 g
      from          3.2 g    2 g
      to           11.9 g  7.4 g
    rule of thumb     9 g  5.6 g
  The rule of thumb ends between 22 % short of
  and 84 % beyond the measured lime.
  Orange 7 to 21 g/l in print, lime 39 to 75 g/l
  in print. Juices and papers differ: titrate
  it, or taste.
Ana: acid 1 l grapefruit juice to lemon
  1,000 ml grapefruit juice to lemon strength:
  31.6 g citric acid
                   citric  malic
    computed       31.6 g    0 g
      from         19.2 g    0 g
      to           40.7 g    0 g
    rule of thumb    40 g    0 g
  The rule of thumb ends between 1 % short of
  and 47 % beyond the measured lemon.
  Grapefruit 20 to 25 g/l in print, lemon 44 to
  60 g/l in print. Juices and papers differ:
  titrate it, or taste.
Ana: acid 200 ml lime juice to lemon
  200 ml lime juice to lemon strength: 1.1 g
  citric acid
              citric  malic
    computed   1.1 g    0 g
      from       0 g    0 g
      to       4.3 g    0 g
  Lime 39 to 75 g/l in print, lemon 44 to 60 g/l
  in print. Juices and papers differ: titrate
  it, or taste.
Ana: acid 1 l lemon juice to lime
  1,000 ml lemon juice to lime strength: no acid
  needed.
  It is as sour as that already, as far as
  juices have been measured. Taste decides.
Ana: acid apple juice
  I know no measured acidity of apple juice.
  Known: orange, grapefruit, mandarin, lemon,
  lime.
Ana: new formula Sour orange\
orange juice 1 l\
citric acid 32 g\
malic acid 20 g\
kind acid-adjusted juice
  Sour orange is in the book.
  Sour orange: acid-adjusted juice, version 1
    orange juice   1 l
    citric acid   32 g
    malic acid    20 g
  Makes 1,032 ml
  Needs no rest, discard after 3 days
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: citric
  acid, malic acid
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Change] [More]
  [citric acid: food grade] [Not sure]
  [Undo]
Ana: acid 500 ml orange juice to lime
  500 ml orange juice to lime strength: 16 g
  citric + 10 g malic acid
                   citric   malic
    your recipe      16 g    10 g
    computed        9.7 g   6.1 g
      from          5.7 g   3.6 g
      to           21.3 g  13.3 g
    rule of thumb    16 g    10 g
  Sour orange ends between 22 % short of and 84
  % beyond the measured lime.
  The rule of thumb ends between 22 % short of
  and 84 % beyond the measured lime.
  Orange 7 to 21 g/l in print, lime 39 to 75 g/l
  in print. Juices and papers differ: titrate
  it, or taste.
  [Sour orange]
Ana taps [Sour orange]
  Sour orange: 500 ml
    orange juice  485 ml
    citric acid   15.5 g
    malic acid    9.69 g
  Makes 500.4 ml
  Rounded to 500 ml cylinder, fine scale: the
  ratio is off by 0.1 % at most.
  Caution: Keep acid powder out of eyes and off
  wet hands, and do not breathe its dust.
  [Log this batch]
  [In grams] [Cost]
  [Other size] [All cautions]
Ana: acid 1 l orange juice at 9 g/l to lime
  1,000 ml orange juice to lime strength: 23.1 g
  citric + 14.4 g malic acid
                   citric   malic
    your recipe      32 g    20 g
    computed       23.1 g  14.4 g
      from         18.8 g  11.7 g
      to           41.3 g  25.8 g
    rule of thumb    32 g    20 g
  Sour orange ends between 20 % short of and 54
  % beyond the measured lime.
  The rule of thumb ends between 20 % short of
  and 54 % beyond the measured lime.
  Orange 9 g/l as you measured it, lime 39 to 75
  g/l in print. Juices and papers differ:
  titrate it, or taste.
  [Sour orange]
Ana: acid 1 l orange juice at 9 g/l to lime at 60 g/l
  1,000 ml orange juice to lime strength: 31.9 g
  citric + 20 g malic acid
                   citric  malic
    your recipe      32 g   20 g
    computed       31.9 g   20 g
    rule of thumb    32 g   20 g
  Sour orange ends level with the measured lime.
  The rule of thumb ends level with the measured
  lime.
  Orange 9 g/l as you measured it, lime 60 g/l
  as you measured it.
  [Sour orange]
Ana: acid 1 l orange juice at 900 g/l to lime
  An acidity from 1 to 200 g/l, please, such as
  9 g/l.
