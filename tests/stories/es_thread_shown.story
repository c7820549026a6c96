# «Eso» y «la otra» después de una línea que solo enseñó algo.
@after es_mist

Ana: nueva fórmula Bruma de naranja\
aceite de naranja 12 ml\
alcohol neutro 96 % 62 ml\
propilenglicol 22 ml\
tipo bruma aromática
  Bruma de naranja está en el recetario.
  Bruma de naranja: bruma aromática, versión 1
    aceite de naranja    12 ml
    alcohol neutro 96 %  62 ml
    propilenglicol       22 ml
  Rinde 96 ml a 62 % vol
  Reposa 24 horas, desechar tras 180 días
  2 a 3 pulsaciones por cóctel, 0,067 a 0,1 ml
  cada una
  Claridad: en el límite, puede enturbiarse,
  estimado
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Precaución: Grado alimentario sin confirmar:
  aceite de naranja, propilenglicol
  Lo mismo se vende en calidades que no son para
  alimentos: ¿este se vende como grado
  alimentario, con papeles del proveedor que lo
  digan?
  [Escalar] [Coste] [Hacer]
  [¿Quedará claro?] [Cambiar] [Más]
  [aceite de naranja: grado alimentario] [No es seguro]
  [Deshacer]
Ana: escala bruma de naranja a 400 ml
  Bruma de naranja: 400 ml
    aceite de naranja   50 ml
    alcohol neutro     260 ml
    propilenglicol      92 ml
  Rinde 402 ml al 62,1 % vol
  Alcanza para 1.300 a 3.000 cócteles
  Redondeado a probeta de 50 ml, probeta de 500
  ml, probeta de 100 ml: la proporción se desvía
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
Ana: el doble de eso
  Bruma de naranja: 800 ml
    aceite de naranja  100 ml
    alcohol neutro     520 ml
    propilenglicol     184 ml
  Rinde 804 ml al 62,1 % vol
  Alcanza para 2.600 a 6.000 cócteles
  Redondeado a probeta de 100 ml, probeta de 1
  l, probeta de 250 ml: la proporción se desvía
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
Ana: la otra
  Bruma de pomelo: 800 ml
    aceite de pomelo  100 ml
    propilenglicol    184 ml
    alcohol neutro    520 ml
  Rinde 804 ml al 62,1 % vol
  Alcanza para 2.600 a 6.000 cócteles
  Redondeado a probeta de 100 ml, probeta de 250
  ml, probeta de 1 l: la proporción se desvía
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
Ana: ¿cuánto cuesta eso?
  Leído como: coste Bruma de pomelo
  Bruma de pomelo: ¿cuánto?
  [4 x 50 ml] [8 x 50 ml] [4 x 100 ml]
  [tal cual] [doble]
  [Atrás] [Cancelar]
Ana: 2 limones con moho
  Anotado: 2 limones, con moho.
  Sin precio para limón: no está en el coste.
  Nuevo aquí: limón.
  Sin terminar y descartado: coste Bruma de
  pomelo
  [Deshacer] [Más merma]
  [Precio de limón]
Ana: 3 naranjas con moho
  Anotado: 3 naranjas, con moho, 1,80 €.
  mié, 25 nov hasta ahora: 1,80 €
  [Deshacer] [Más merma]
Ana: deshacer la otra
  Deshecho: 2 limones, con moho
  [Restaurar]
Ana: tengo 10 ml de aceite de pomelo
  No sé bien qué quieres. ¿Es algo de esto?
  Por ejemplo: merma 6 limones con moho
  [cuenta aceite de pomelo 10 ml]
  [densidad Bruma de pomelo]
  [escala Bruma de pomelo con 10 ml aceite de pomelo]
