# Recipes in Spanish as people write them.
@after es_opening

Ana: nueva bruma de limón: 10 ml de aceite de limón, 20 ml de propilenglicol y 70 ml de alcohol de 96 %, 2 o 3 pulsaciones
  Nuevo aquí: aceite de limón, propilenglicol,
  alcohol. ¿Correcto?
  [Sí, nuevos]
  [Cancelar]

Ana: nueva bruma de lima 10 ml de aceite de lima 20 ml de propilenglicol 70 ml de alcohol de 96 %
  ¿“bruma de lima” es el nombre y lo demás lo
  que lleva?
  Tócalo, o escribe: nombre, dos puntos y los
  ingredientes con comas.
  [bruma de lima: 10 ml de aceite de lima, 20 ml de propilenglicol, 70 ml de alcohol de 96 %]

Ana: nuevo jarabe simple: 1 kg de azúcar y 1 l de agua
  Nuevo aquí: azúcar. ¿Correcto?
  [Sí, nuevos]
  [Cancelar]
