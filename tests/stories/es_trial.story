# A quien ya ha catado se le pregunta antes de mostrarle las letras, y después no puntúa.
@after es_mist

Ana: prueba bruma de pomelo 50 ml a ciegas: aceite de pomelo 14 ml
  Empieza la prueba 1 de Bruma de pomelo.
  Mira las letras quien llena los frascos; quien
  cata, no.
  Frente a la fórmula: aceite de pomelo 14 ml
  50 ml de cada una.
  [Catar] [Otra variante]
  [Anotar los lotes] [¿Cuál es cuál?]
  [Deshacer]
Ana: cata A 4 4 4 2
  A tiene tu nota.
  aroma 4, frescura 4, cuánto dura 4, amargor 2.
  [Catar B] [Ver la prueba]
  [Deshacer]
Ana: prueba letras 1
  Si miras las letras de la prueba 1, tus notas
  no cuentan.
  [Mostrar] [Cancelar]
Ana taps [Mostrar]
  (edited)
  Prueba 1, Bruma de pomelo: A, B
  A es la fórmula tal como está en el libro.
  50 ml de cada una.
                          A        B
    aceite de
    pomelo           6,2 ml     7 ml
    propilenglicol  11,5 ml    11 ml
    alcohol neutro  32,5 ml  31,5 ml
  Cambios en la fórmula:
  B: aceite de pomelo 14 ml
  Queda anotado que miraste: no puedes puntuarla
  hasta que termine.
  [Anotar los lotes] [¿Cuál es cuál?]
Ana: cata B 3 3 3 3
  No puedes puntuar la prueba 1 hasta que
  termine: has visto sus letras.
  [Ver la prueba]
Ana: pruebas 1
  Prueba 1, Bruma de pomelo: A, B
  A ciegas: verás cuál es cuál al terminar.
  Han mirado las letras: Ana
  Ha catado 1. Sus notas se ven cuando termine.
  [Anotar los lotes] [¿Cuál es cuál?]
  [Terminarla]
Ana taps [Terminarla]
  (edited)
  Prueba 1, Bruma de pomelo: A, B, terminada
  50 ml de cada una.
                          A        B
    aceite de
    pomelo           6,2 ml     7 ml
    propilenglicol  11,5 ml    11 ml
    alcohol neutro  32,5 ml  31,5 ml
  No cuentan, porque miraron las letras: Ana
  [Fórmula]
  [Deshacer]
