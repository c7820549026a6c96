# Watering down to next to nothing: refused before anything is asked.
@after opening

Ana: strength 1 l 96 to 0
  Water never brings it to 0 % vol.
  The weakest I work out is 0.1 % vol.
Ana: strength 96 to 0
  Water never brings it to 0 % vol.
  The weakest I work out is 0.1 % vol.
Ana: strength 1 l 96 to 0.01
  That is nearly plain water.
  The weakest I work out is 0.1 % vol.
Ana: strength 1 l 0.05 from 96
  That is nearly plain water.
  The weakest I work out is 0.1 % vol.
Ana: strength 1 l 0 to 0
  Water never brings it to 0 % vol.
  The weakest I work out is 0.1 % vol.
Ana: strength 1 l 96 to 0.5
  1,000 ml of 96 % to 0.5 % vol: add 191 l of
  water.
    Water by volume     191 l
    Water by weight  190.7 kg
    Makes               192 l
    Contraction       45.4 ml
  By weight where you can: volumes shrink on
  mixing. Volumes and strengths at 20 °C, OIML R
  22.
  Caution: Put out every flame and keep sparks
  away: the vapour lights in a warm room.
  [Make 1,000 ml of it]
