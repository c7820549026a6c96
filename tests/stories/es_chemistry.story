# La química en español: desde cuándo se enciende, cuánto se guarda, la acidez medida, otra preparación.
@after es_mist

Ana: graduación bruma de pomelo
  Bruma de pomelo: 62 % vol
    Vertido             96 ml
    Rinde               96 ml
    Etanol que lleva  59,5 ml
  Sumados sin contracción, como volúmenes
  ideales: aceite de pomelo, propilenglicol.
  Se puede encender a partir de unos 16 °C: muy
  inflamable (categoría 2: inflama por debajo de
  23 °C). Es una estimación, con unos grados de
  margen.
  [Escalar] [Otro alcohol]
Ana: ácido 280 ml zumo de naranja a 9 g/l a lima
  280 ml de zumo de naranja, con la acidez de
  lima: 6,5 g de ácido cítrico + 4 g ácido
  málico
                   cítrico  málico
    calculado        6,5 g     4 g
      de             5,3 g   3,3 g
      a             11,6 g   7,2 g
    regla general      9 g   5,6 g
  La regla general queda entre 20 % por debajo y
  54 % por encima del lima medido.
  Naranja 9 g/l según tu medida, lima de 39 a 75
  g/l publicados. Los zumos y los estudios
  difieren: valóralo, o prueba.
Ana: dosis bruma de pomelo en 90 ml + 5 ml bruma de pomelo
  Bruma de pomelo en 90 ml, 1 cóctel: por encima
  de un límite
    mg en    por cóctel
    aceite      550-570
    glicol  1.200-1.300
    etanol  2.500-2.600
  Precaución: Nunca flamees un garnish sobre un
  cóctel recién pulverizado, ni lo sirvas junto
  a una llama.
  [Fuentes]
  [En 60 ml] [En 150 ml] [2 cócteles]
  [Pesar el pulverizador]
  [Más]
