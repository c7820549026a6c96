# Recipes as people write them: the strength before the spirit, no units, a spread of sprays, no colon.
@after opening

Ana: new grapefruit mist: 12 ml grapefruit oil, 20 ml pg, 58 ml 96% spirit
  New here: grapefruit oil, pg, spirit. Right?
  [Yes, new]
  [Cancel]

Ana: new lemon mist: 10 lemon oil, 20 pg and 70 spirit, 2 or 3 sprays, for lemons
  New here: lemon oil, pg, spirit. Right?
  [Yes, new]
  [Cancel]

Ana: new lime mist 10 ml lime oil 20 ml pg 70 ml of 96 % spirit
  Is “lime mist” the name, and the rest what
  goes in?
  Tap it, or write: name, colon, then the
  ingredients with commas.
  [lime mist: 10 ml lime oil, 20 ml pg, 70 ml of 96 % spirit]

Ana taps [lime mist: 10 ml lime oil, 20 ml pg, 70 ml of 96 % spirit]
  New here: lime oil, pg, spirit. Right?
  [Yes, new]
  [Cancel]

Ana: new honey syrup: 2 lemons, 100 g sugar
  2 what of lemons? Add a unit, such as 2 ml or
  2 g.

Ana: new house syrup 2 to 1
  Type the ingredients, a line each: lime oil 10
  ml
  [Back] [Cancel]

Ana: cancel
  Cancelled. Nothing was logged.
