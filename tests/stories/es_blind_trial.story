# Una prueba a ciegas en una línea; quien no cató un frasco no cuenta en él.
@after es_mist

Ana: prueba a ciegas bruma de pomelo: aceite de pomelo 14 ml
  ¿Cuánto de cada una?
  [20 ml] [50 ml] [100 ml]
  [Atrás] [Cancelar]
Ana taps [50 ml]
  (edited)
  Empieza la prueba 1 de Bruma de pomelo.
  Mira las letras quien llena los frascos; quien
  cata, no.
  Frente a la fórmula: aceite de pomelo 14 ml
  50 ml de cada una.
  [Catar] [Otra variante]
  [Anotar los lotes] [¿Cuál es cuál?]
  [Deshacer]
Ana: puntuar A 4 3 5 2
  A tiene tu nota.
  aroma 4, frescura 3, cuánto dura 5, amargor 2.
  [Catar B] [Ver la prueba]
  [Deshacer]
Ana: prueba 1
  Prueba 1, Bruma de pomelo: A, B
  A ciegas: verás cuál es cuál al terminar.
  Ha catado 1. Sus notas se ven cuando hayas
  catado tú.
  [Catar] [Anotar los lotes] [¿Cuál es cuál?]
  [Terminarla]
Ana taps [Terminarla]
  (edited)
  Prueba 1, Bruma de pomelo: A, B, terminada
  50 ml de cada una.
                          A        B
    aceite de
    pomelo             7 ml   6,2 ml
    propilenglicol    11 ml  11,5 ml
    alcohol neutro  31,5 ml  32,5 ml
              A
    aroma     4
    frescura  3
    duración  5
    amargor   2
  No todos cataron cada frasco. Catadores: A 1,
  B 0.
  [Fórmula]
  [Adoptar A]
  [Deshacer]
Ana: comparar bruma de pomelo con fresca
  Todavía no puedo comparar Bruma de pomelo con
  fruta fresca.
  Un ingrediente no tiene precio: toca Coste
  para ver cuál.
  [Coste]
