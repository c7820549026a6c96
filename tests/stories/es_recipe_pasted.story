# Recipes in Spanish as people paste them.
@after es_opening

Ana: nueva fórmula
  ¿Cómo se llama?
  [Cancelar]
Ana: Spray de naranja
  Escribe los ingredientes, uno por línea:
  aceite de lima 10 ml
  [Atrás] [Cancelar]
Ana: - 10 ml aceite de naranja dulce (una botella)\
- 190 ml alcohol 96%
  ¿Más ingredientes? Toca Listo cuando esté
  completa.
  · aceite de naranja dulce (nuevo) 10 ml
  · alcohol 96 % (nuevo) 190 ml
  [Listo] [Atrás] [Cancelar]
Ana: cancelar
  Cancelado. No se ha anotado nada.
Ana: receta Bruma de pomelo: una botella de aceite de pomelo de 10 ml, alcohol (96%) - 200 ml
  Leído como: nueva Bruma de pomelo: una botella
  de aceite de pomelo de 10 ml, alcohol (96%) -
  200 ml
  Aún no se ha anotado nada. Toca si es
  correcto.
  [nueva Bruma de pomelo: una botella de aceite de pomelo de 10 ml, alcohol (96%) - 200 ml]
Ana taps [nueva Bruma de pomelo: una botella de aceite de pomelo de 10 ml, alcohol (96%) - 200 ml]
  Bruma de pomelo está en el recetario.
  Bruma de pomelo: bruma aromática, versión 1
    aceite de pomelo   10 ml
    alcohol 96 %      200 ml
  Rinde 210 ml a 91,4 % vol
  Reposa 24 horas, desechar tras 180 días
  2 a 3 pulsaciones por cóctel, 0,067 a 0,1 ml
  cada una
  Claridad: debería quedar claro, estimado
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, alcohol
  Lo mismo se vende en calidades que no son para
  alimentos: ¿este se vende como grado
  alimentario, con papeles del proveedor que lo
  digan?
  [Escalar] [Coste] [Hacer]
  [¿Quedará claro?] [Cambiar] [Más]
  [aceite de pomelo: grado alimentario] [No es seguro]
  [Deshacer]
Ana: nueva Bruma de lima: 2% aceite de lima, 70% alcohol 96%, 20% agua
  Esos porcentajes suman 92 %, no 100 %.
  Escríbelos todos, por ejemplo: 2% aceite de
  lima, 70% alcohol 96%, 28% agua. O cantidades:
  10 ml aceite de lima
