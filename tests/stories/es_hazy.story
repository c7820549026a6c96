# A hazy batch in Spanish: the next test, spirit added, and what the map says.
@after es_mist

Ana: lote bruma de pomelo a 400 ml
  Lote 1: Bruma de pomelo, 402 ml
  Reposa hasta jue, 26 nov 19:00. Te avisaré.
  Revísalo de nuevo el 25 dic 2026.
  Desechar después del 24 may 2027: el plazo
  usual de su tipo.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, propilenglicol
  [Ver el lote 1]
  [Lote del proveedor] [Deshacer]
@clock + 30 h
Ana: revisa 1 turbio a 5 C, recién salido de la nevera
  Lote 1, Bruma de pomelo: turbio.
  Ahora: caliéntalo.
  Déjalo cerrado a 20 °C unas horas, agítalo y
  mira: revisa 1 claro a 20 °C
  Si queda claro, fue el frío: guárdalo menos
  frío o fíltralo en frío. Si no, la siguiente
  prueba.
  Preguntaré otra vez en un día.
  Anotado: recién salido de la nevera
  [¿Cómo arreglarlo?]
  [Desechar] [Deshacer]
Ana: por qué turbio 1
  Lote 1, turbio: caliéntalo
  Déjalo cerrado a 20 °C unas horas, agítalo y
  mira: revisa 1 claro a 20 °C
  Si queda claro, fue el frío: guárdalo menos
  frío o fíltralo en frío. Si no, la siguiente
  prueba.
  Todas las pruebas:
    1 reposo suficiente           sí
    2 temperatura
    ambiente                   ahora
    3 ceras                por hacer
    4 fuerza del alcohol   por hacer
    5 agua en el vidrio    por hacer
    6 demasiado aceite     por hacer
  [Claro] [Turbio] [Separado]
  [Siguiente prueba]
Ana: por qué 1 6
  Lote 1, turbio: prueba con más alcohol en una
  muestra
  Añade 3,7 ml de alcohol neutro a 10 ml del
  lote, agita y espera una hora.
  Si queda claro, añade 150 ml al lote. Si no,
  hazlo de nuevo con menos aceite.
  Todas las pruebas:
    1 reposo suficiente           sí
    2 temperatura
    ambiente               por hacer
    3 ceras                por hacer
    4 fuerza del alcohol   por hacer
    5 agua en el vidrio    por hacer
    6 demasiado aceite         ahora
  [Añadir 150 ml de alcohol neutro]
  [Claro] [Turbio] [Separado]
Ana: filtrado 1, pérdida 12 ml
  Lote 1 filtrado: quedan 390 ml.
  Agítalo, déjalo un día y míralo otra vez: te
  preguntaré.
  Precaución: Guárdalo bien cerrado, etiquetado,
  de pie, fresco y oscuro, lejos del calor y de
  botellas abiertas.
  [Claro] [Turbio] [Separado]
  [Etiqueta] [Deshacer]
Ana: lote 1 añade 29 ml alcohol
  Lote 1: 29 ml de alcohol neutro más, ahora 419
  ml.
  64,4 % vol, antes 62,1 % vol: imprime de nuevo
  su etiqueta.
  Agítalo, déjalo un día y míralo otra vez: te
  preguntaré.
  Precaución: Guárdalo bien cerrado, etiquetado,
  de pie, fresco y oscuro, lejos del calor y de
  botellas abiertas.
  [Claro] [Turbio] [Separado]
  [Etiqueta] [Deshacer]
Ana: revisa 1 claro
  Lote 1, Bruma de pomelo: claro.
  Se puede embotellar y usar.
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
  [Abrirlo] [Deshacer]
Ana: claridad bruma de pomelo
  Bruma de pomelo: turbio aquí la última vez
  (lote 1)
  Visto aquí: turbio tras 1 día (lote 1).
  Según los modelos y 2 revisiones de este
  aceite: claro unas 8 veces de cada 10.
  El modelo optimista lo da por claro, el
  prudente no.
  Alcohol más flojo que lo deja claro: 76 %
  según un modelo, ninguno basta según el otro
  (el tuyo 96 %)
  [Cambiar a 9,5 ml de aceite de pomelo]
  [Cambiar a 9,1 ml de propilenglicol]
  [Cambiar a 75 ml de alcohol neutro]
  [Escalarla] [Aroma] [Mapa] [Otro alcohol]
  [Más]
Ana: claridad bruma de pomelo imagen
  Bruma de pomelo: turbio aquí la última vez
  (lote 1)
  Solo según los modelos, alrededor de tu
  fórmula; decide la botella reposada.
  <picture clearing.png>
  [¿Quedará claro?]
