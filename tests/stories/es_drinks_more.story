# Lo que se cuenta de más se suma; lo que no está en la carta no se pierde.
@after es_menu

Ana: cócteles 12 paloma
  mié, 25 nov: 12 paloma.
  Se fueron unos: Bruma de pomelo 2 ml.
  [Deshacer] [Por día de la semana] [Plan]
Ana: cócteles 5 más paloma
  mié, 25 nov: 17 paloma.
  Se fueron unos: Bruma de pomelo 1 ml.
  5 más que los 12 de antes.
  [Deshacer] [Por día de la semana] [Plan]
Ana: otras 3 palomas
  mié, 25 nov: 20 paloma.
  3 más que los 17 de antes.
  [Deshacer] [Por día de la semana] [Plan]
Ana: sí
  No hay nada que confirmar.
Ana: deshacer
  Deshecho: 3 copas
  mié, 25 nov: 17 paloma.
  [Restaurar]
Ana: perdón, 7
  Corregido: 7 copas en vez de 5 copas
  mié, 25 nov: 19 paloma.
  Se fueron unos: Bruma de pomelo 1 ml.
  7 más que los 12 de antes.
  [Deshacer] [Por día de la semana] [Plan]
Ana: cócteles 12000
  ¿12.000 cócteles?
  [Sí, 12.000 cócteles]
  [Cambiar] [Cancelar]
Ana: sí
  mié, 25 nov: 12.000 cócteles.
  [Deshacer] [Por día de la semana] [Plan]
Ana: deshacer
  Deshecho: 12000 copas
  [Restaurar]
Ana: qué lleva la paloma
  paloma: 2 pulsaciones de Bruma de pomelo en
  150 ml
  En lugar de pomelo en fresco
  Falta algún precio de: Bruma de pomelo
  Dosis de un cóctel, todo junto: por debajo de
  los límites
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Lleva alcohol: díselo a quien no toma.
  Lleva aceite de pomelo: pregunta por alergias
  y medicamentos.
  Pregunta, y diles qué lleva.
  Precaución: Sin llama, vela, soplete ni
  garnish flambeado cerca del spray mientras se
  usa.
  [Contar cócteles] [Dosis] [Carta]
  [Quitarlo]
Ana: vendimos 30 margaritas y 12 palomas anoche
  Leído como: cócteles anoche 30 margaritas, 12
  paloma
  Aún no se ha anotado nada. Toca si es
  correcto.
  [cócteles anoche 30 margaritas, 12 paloma]
Ana: sí
  «margaritas» no está en la lista de bebidas.
  [Añadir margarita] [Carta]
Ana: mejor no
  No se anotó nada.
Ana: añade margarita a la carta
  ¿Qué lleva?
  [2 Bruma de pomelo]
  [Atrás] [Cancelar]
Ana: deshacer
  ¿Qué cóctel?
  [Cancelar]
Ana: cóctel Margarita: 2 pulsaciones de Bruma de pomelo, 90 ml
  Margarita: 2 pulsaciones de Bruma de pomelo en
  90 ml
  En lugar de pomelo en fresco
  Falta algún precio de: Bruma de pomelo
  Dosis de un cóctel, todo junto: por debajo de
  los límites
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Lleva alcohol: díselo a quien no toma.
  Lleva aceite de pomelo: pregunta por alergias
  y medicamentos.
  Pregunta, y diles qué lleva.
  Precaución: Sin llama, vela, soplete ni
  garnish flambeado cerca del spray mientras se
  usa.
  [Contar cócteles] [Dosis] [Carta]
  [Quitarlo] [Deshacer]
Ana: quita la margarita de la carta
  Margarita ya no está en la carta. Sus
  recuentos se quedan.
  [Carta] [Deshacer]
Ana: servir negroni: 2 Bruma de pomelo, 90 ml
  negroni: 2 pulsaciones de Bruma de pomelo en
  90 ml
  En lugar de pomelo en fresco
  Falta algún precio de: Bruma de pomelo
  Dosis de un cóctel, todo junto: por debajo de
  los límites
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Lleva alcohol: díselo a quien no toma.
  Lleva aceite de pomelo: pregunta por alergias
  y medicamentos.
  Pregunta, y diles qué lleva.
  Precaución: Sin llama, vela, soplete ni
  garnish flambeado cerca del spray mientras se
  usa.
  [Contar cócteles] [Dosis] [Carta]
  [Quitarlo] [Deshacer]
Ana: 5 negronis más
  Leído como: cócteles 5 más negronis
  Aún no se ha anotado nada. Toca si es
  correcto.
  [cócteles 5 más negronis]
Ana: sí
  mié, 25 nov: 5 negroni.
  Se fueron unos: Bruma de pomelo 1 ml.
  [Deshacer] [Por día de la semana] [Plan]
Ana: y 3 negronis
  mié, 25 nov: 8 negroni.
  3 más que los 5 de antes.
  [Deshacer] [Por día de la semana] [Plan]
Ana: 130 cubiertos esta noche
  No sé bien qué quieres. ¿Es algo de esto?
  Por ejemplo: merma 6 naranjas con moho
  [cócteles 130 esta noche]
  [Poner un lote en uso]
  [Decir al cierre que no se tiró nada]
