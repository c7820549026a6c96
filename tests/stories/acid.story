# Acid by measured strength, the rule of thumb beside it, and the bar's own recipe before both.
@after opening

Ana: acid 280 ml orange juice to lime
  280 ml orange juice to lime strength: 5.3 g
  citric + 3.3 g malic acid
                   citric  malic
    computed        5.3 g  3.3 g
      from          4.4 g  2.8 g
      to            6.8 g  4.2 g
    rule of thumb     9 g  5.6 g
  The rule of thumb ends 27 to 57 % beyond the
  measured lime.
  Acid by the literature: orange 16 g/l, lime 46
  g/l. Juices differ: taste decides.
Ana: acid 1 l grapefruit juice to lemon
  1,000 ml grapefruit juice to lemon strength:
  28.9 g citric acid
                   citric  malic
    computed       28.9 g    0 g
      from         26.2 g    0 g
      to           31.6 g    0 g
    rule of thumb    40 g    0 g
  The rule of thumb ends 16 to 27 % beyond the
  measured lemon.
  Acid by the literature: grapefruit 22 g/l,
  lemon 51 g/l. Juices differ: taste decides.
Ana: acid 200 ml lime juice to lemon
  200 ml lime juice to lemon strength: 1.1 g
  citric acid
              citric  malic
    computed   1.1 g    0 g
      from       0 g    0 g
      to       2.4 g    0 g
  Acid by the literature: lime 46 g/l, lemon 51
  g/l. Juices differ: taste decides.
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
  New here: orange juice, citric acid, malic
  acid. Right?
  [Yes, new]
  [Cancel]
Ana taps [Yes, new]
  (edited)
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
                   citric  malic
    your recipe      16 g   10 g
    computed        9.5 g  5.9 g
      from          7.9 g  4.9 g
      to           12.1 g  7.6 g
    rule of thumb    16 g   10 g
  Sour orange ends 27 to 57 % beyond the
  measured lime.
  The rule of thumb ends 27 to 57 % beyond the
  measured lime.
  Acid by the literature: orange 16 g/l, lime 46
  g/l. Juices differ: taste decides.
  [Sour orange]
Ana taps [Sour orange]
  Sour orange: 500 ml
    orange juice  485 ml
    citric acid   15.5 g
    malic acid    9.69 g
  Makes 500 ml
  Rounded to 500 ml cylinder, fine scale: the
  ratio is off by 0.1 % at most.
  Caution: Keep acid powder out of eyes and off
  wet hands, and do not breathe its dust.
  [Log this batch]
  [In grams] [Cost]
  [Other size] [All cautions]
