# Cantidades en cualquier chat, solo del bar propio.
@after es_mist

Ana types inline: bruma 8x50
  (Bruma de pomelo: 8 x 50 ml: aceite de pomelo 50 ml, propilenglicol 92 ml, alcohol neutro 260 ml)
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
Ana types inline: pomelo para 600 copas
  (Bruma de pomelo: 600 cócteles: aceite de pomelo 22,5 ml, propilenglicol 41,5 ml, alcohol neutro 116 ml)
  Bruma de pomelo: 600 cócteles
    aceite de pomelo  22,5 ml
    propilenglicol    41,5 ml
    alcohol neutro     116 ml
  Rinde 180 ml al 61,9 % vol
  Alcanza para 600 a 1.300 cócteles
  Redondeado a probeta de 50 ml, probeta de 250
  ml: la proporción se desvía 0,8 % como mucho.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
Ana types inline: nada con ese nombre
  (nothing)
@speaks Eva es
Eva types inline: bruma 8x50
  (nothing)
