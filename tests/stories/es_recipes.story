# Recipes in Spanish as people write them.
@after es_opening

Ana: nueva bruma de limón: 10 ml de aceite de limón, 20 ml de propilenglicol y 70 ml de alcohol de 96 %, 2 o 3 pulsaciones
  bruma de limón está en el recetario.
  bruma de limón: bruma aromática, versión 1
    aceite de limón  10 ml
    propilenglicol   20 ml
    alcohol 96 %     70 ml
  Rinde 100 ml a 67,2 % vol
  Reposa 24 horas, desechar tras 180 días
  2 a 3 pulsaciones por cóctel, 0,067 a 0,1 ml
  cada una
  Claridad: debería quedar claro, estimado
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Precaución: Grado alimentario sin confirmar:
  aceite de limón, propilenglicol, alcohol
  Lo mismo se vende en calidades que no son para
  alimentos: ¿este se vende como grado
  alimentario, con papeles del proveedor que lo
  digan?
  [Escalar] [Coste] [Hacer]
  [¿Quedará claro?] [Cambiar] [Más]
  [aceite de limón: grado alimentario] [No es seguro]
  [Deshacer]

Ana: nueva bruma de lima 10 ml de aceite de lima 20 ml de propilenglicol 70 ml de alcohol de 96 %
  ¿“bruma de lima” es el nombre y lo demás lo
  que lleva?
  Tócalo, o escribe: nombre, dos puntos y los
  ingredientes con comas.
  [bruma de lima: 10 ml de aceite de lima, 20 ml de propilenglicol, 70 ml de alcohol de 96 %]

Ana: nuevo jarabe simple: 1 kg de azúcar y 1 l de agua
  jarabe simple está en el recetario.
  jarabe simple: jarabe, versión 1
    azúcar  1 kg
    agua     1 l
  Rinde 1.630 ml
  No necesita reposo, desechar tras 14 días
  Precaución: Pregunta por alergias antes de
  servir, y di qué cosas caseras lleva un
  cóctel.
  [Escalar] [Coste] [Hacer]
  [Cambiar] [Más]
  [Deshacer]
