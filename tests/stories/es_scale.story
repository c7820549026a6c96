# Amounts and cost in Spanish: sizes, drinks, grams, a decimal comma.
@after es_mist

Ana: escala bruma de pomelo a 8 x 50 ml
  Bruma de pomelo: 8 x 50 ml
    aceite de pomelo   50 ml
    propilenglicol     92 ml
    alcohol neutro    260 ml
  Rinde 402 ml al 62,1 % vol
  Alcanza para 1.300 a 3.000 cócteles
  Llena 8 x 50 ml, sobran 2 ml
  Redondeado a probeta de 50 ml, probeta de 100
  ml, probeta de 500 ml: la proporción se desvía
  0,6 % como mucho.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
  [Anotar este lote]
  [En gramos] [Coste]
  [¿Quedará claro?] [Otro alcohol]
  [Otro tamaño] [Todas las precauciones]
Ana taps [En gramos]
  Bruma de pomelo: 8 x 50 ml
    aceite de pomelo   42,7 g
    propilenglicol       95 g
    alcohol neutro    208,6 g
    Total             346,3 g
  Rinde 400 ml al 62 % vol
  Alcanza para 1.300 a 3.000 cócteles
  Llena 8 x 50 ml
  En lugar de ml medidos a 20 °C.
  aceite de pomelo: 42,5 g a 42,9 g, lo que
  admite su norma.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
  [Anotar este lote]
  [En ml] [Densidades]
  [¿Quedará claro?] [Otro alcohol]
  [Otro tamaño] [Todas las precauciones]
Ana: escala bruma de pomelo para 600 cócteles, 5 % de pérdida
  Bruma de pomelo: 600 cócteles
    aceite de pomelo    24 ml
    propilenglicol    43,5 ml
    alcohol neutro     122 ml
  Rinde 189,5 ml al 61,8 % vol, 5 % perdido por
  el camino
  Alcanza para 600 a 1.300 cócteles
  Redondeado a probeta de 50 ml, probeta de 250
  ml: la proporción se desvía 1,6 % como mucho.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
  [Anotar este lote]
  [En gramos] [Coste]
  [¿Quedará claro?] [Otro alcohol]
  [Otro tamaño] [Todas las precauciones]
Ana: escala bruma de pomelo con 12,5 ml de aceite de pomelo
  Bruma de pomelo: 100 ml
    aceite de pomelo  12,5 ml
    propilenglicol      23 ml
    alcohol neutro      65 ml
  Rinde 100,5 ml al 62,1 % vol
  Alcanza para 330 a 750 cócteles
  Redondeado a probeta de 50 ml, probeta de 100
  ml: la proporción se desvía 0,6 % como mucho.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
  [Anotar este lote]
  [En gramos] [Coste]
  [¿Quedará claro?] [Otro alcohol]
  [Otro tamaño] [Todas las precauciones]
Ana: 8 frascos de 50 ml de bruma de pomelo
  Bruma de pomelo: 8 x 50 ml
    aceite de pomelo   50 ml
    propilenglicol     92 ml
    alcohol neutro    260 ml
  Rinde 402 ml al 62,1 % vol
  Alcanza para 1.300 a 3.000 cócteles
  Llena 8 x 50 ml, sobran 2 ml
  Redondeado a probeta de 50 ml, probeta de 100
  ml, probeta de 500 ml: la proporción se desvía
  0,6 % como mucho.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
  [Anotar este lote]
  [En gramos] [Coste]
  [¿Quedará claro?] [Otro alcohol]
  [Otro tamaño] [Todas las precauciones]
Ana: escala bruma de pomelo 1.000 ml
  Bruma de pomelo: 1.000 ml
    aceite de pomelo  124 ml
    propilenglicol    230 ml
    alcohol neutro    650 ml
  Rinde 1.004 ml al 62,2 % vol
  Alcanza para 3.300 a 7.500 cócteles
  Redondeado a probeta de 250 ml, probeta de 1
  l: la proporción se desvía 1,5 % como mucho.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
  [Anotar este lote]
  [En gramos] [Coste]
  [¿Quedará claro?] [Otro alcohol]
  [Otro tamaño] [Todas las precauciones]
Ana: escala bruma de pomelo 1,000 ml
  “1,000” se puede leer como 1 o 1.000.
  Escríbelo sin separador.
Ana: escala bruma de pomelo a 8x50
  Entendí “bruma de pomelo a 8x50”. ¿En ml, g u
  oz?
  [escala bruma de pomelo a 8x50 ml]
Ana: coste bruma de pomelo a 8 x 50 ml
  Bruma de pomelo, 8 x 50 ml: 39,50 € (una
  parte)
    aceite de pomelo  39,50 €
    Contenido de
    un frasco de
    50 ml                     4,91 €
    por pulsación  0,007 € a 0,010 €
    por cóctel     0,013 € a 0,029 €
  En caja, por 5 paquetes enteros: 39,50 €
  Sin precio para propilenglicol, alcohol
  neutro: no cuenta, así que el coste real es
  mayor.
  [Precio de propilenglicol]
  [Precio de alcohol neutro]
  [Cantidades] [Anotar este lote]
Ana: escala
  Bruma de pomelo: ¿cuánto?
  [4 x 50 ml] [8 x 50 ml] [4 x 100 ml]
  [tal cual] [doble]
  [Cancelar]
Ana taps [doble]
  (edited)
  Bruma de pomelo: x 2
    aceite de pomelo   24 ml
    propilenglicol     44 ml
    alcohol neutro    124 ml
  Rinde 192 ml al 62 % vol
  Alcanza para 640 a 1.400 cócteles
  Exacto con: probeta de 50 ml, probeta de 250
  ml.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
  [Anotar este lote]
  [En gramos] [Coste]
  [¿Quedará claro?] [Otro alcohol]
  [Otro tamaño] [Todas las precauciones]
