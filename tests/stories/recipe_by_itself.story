# A recipe without a command's word, a strength without its mark, and questions that give way.
@after opening

Ana: orange mist: 12 ml orange oil, 20 ml pg, 58 ml 96% spirit
  Read as: new orange mist: 12 ml orange oil, 20
  ml pg, 58 ml 96% spirit
  Nothing is logged yet. Tap if that is right.
  [new orange mist: 12 ml orange oil, 20 ml pg, 58 ml 96% spirit]
Ana taps [new orange mist: 12 ml orange oil, 20 ml pg, 58 ml 96% spirit]
  orange mist is in the book.
  orange mist: aroma mist, version 1
    orange oil   12 ml
    pg           20 ml
    spirit 96 %  58 ml
  Makes 90 ml at 61.9 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: borderline, it may cloud, by
  estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: orange oil,
  pg
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [orange oil: food grade] [Not sure]
  [Undo]
Ana: new lime mist: 12 ml lime oil, 20 ml pg, 58 ml spirit 96
  96 what? Tap it, or write the strength with
  its mark.
  [96 %]
Ana taps [96 %]
  lime mist is in the book.
  lime mist: aroma mist, version 1
    lime oil     12 ml
    pg           20 ml
    spirit 96 %  58 ml
  Makes 90 ml at 61.9 % vol
  Rests 24 hours, discard after 180 days
  2 to 3 sprays a drink, 0.067 to 0.1 ml each
  Clearing: borderline, it may cloud, by
  estimate
  No listed allergen by name. Contains citrus.
  Caution: Food grade not confirmed: lime oil,
  pg
  The same thing is sold in grades not meant for
  food: is this one sold as food grade, with the
  supplier's papers to show it?
  [Scale] [Cost] [Make]
  [Will it clear?] [Change] [More]
  [lime oil: food grade] [Not sure]
  [Undo]
Ana: strength
  How much spirit is there? Or say: strength and
  a formula's name.
  [100 ml] [500 ml] [700 ml] [1 l]
  [Cancel]
Ana: how much fruit did we waste this week
  Read as: week
  No waste logged
  Mon, 23 Nov to Sun, 29 Nov, still running
  Nothing logged to compare with: Mon, 16 Nov to
  Tue, 17 Nov.
  [Last week] [Log waste]
Ana: made a batch of orange mist, 90 ml
  Batch 1: orange mist, 90 ml
  Resting until Thu, 26 Nov 18:00. I will remind
  you.
  Check it again on 25 Dec 2026.
  Discard after 24 May 2027: the usual time for
  its kind.
  Clearing: borderline, it may cloud, by
  estimate
  Caution: Food grade not confirmed: orange oil,
  pg
  [Show batch 1]
  [Note a lot] [Undo]
