# Una prueba triangular de la bruma contra la piel fresca.
@after es_mist

Ana: prueba bruma de pomelo contra fresca
  Prueba 1: Bruma de pomelo contra la fruta
  fresca (pomelo)
  Tres copas, dos iguales. Cada catador toca la
  distinta; al azar se acierta 1 de cada 3.
  Termina sola, tras 30 catas como mucho.
  Errores: 5 % de las pruebas dice que se nota
  cuando nadie lo nota, 6 % que no cuando lo
  nota el 50 %.
  ¿Quién sirve? Que toque Servir en su propio
  chat conmigo; esas copas no las prueba.
  [Servir] [Catar]
  [Terminarla]
  [Deshacer]
Ana: cata #1
  Nadie ha servido estas copas todavía.
  [Servir]
Ana: servir prueba 1
  Copas 1, de izquierda a derecha
    955  fruta fresca (pomelo)
    570        Bruma de pomelo
    956  fruta fresca (pomelo)
  El mismo cóctel en la misma copa, a
  escondidas. Tú no puedes probar estas.
  Quien cata dice: cata #1
Ana: cata #1
  Tú serviste estas copas, así que las prueba
  otra persona.
Ana: sirve las copas
  Copas 1, de izquierda a derecha
    955  fruta fresca (pomelo)
    570        Bruma de pomelo
    956  fruta fresca (pomelo)
  El mismo cóctel en la misma copa, a
  escondidas. Tú no puedes probar estas.
  Quien cata dice: cata #1
Ana: exportar
  Todo La Gaviota, en archivos.
    fórmulas  1
    precios   3
    merma     0
    lotes     0
  El archivo JSON lo tiene todo y me lo puedes
  devolver; las tablas son para leer.
  La prueba 1 es a ciegas y sigue: el archivo
  lleva su clave, pero no a simple vista.
  <file formulas.csv>
  <file prices.csv>
  <file waste.csv>
  <file batches.csv>
  <file peel-ledger.json>
Ana: prueba terminar 1
  Prueba 1: Bruma de pomelo contra la fruta
  fresca (pomelo), terminada
  Parada antes de que nadie probara.
  [Fórmula]
  [Deshacer]
Ana: prueba bruma de pomelo 50 ml a ciegas: aceite de pomelo 14 ml
  Empieza la prueba 2 de Bruma de pomelo.
  Mira las letras quien llena los frascos; quien
  cata, no.
  Frente a la fórmula: aceite de pomelo 14 ml
  50 ml de cada una.
  [Catar] [Otra variante]
  [Anotar los lotes] [¿Cuál es cuál?]
  [Deshacer]
