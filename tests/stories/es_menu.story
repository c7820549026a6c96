# La carta, en español.
@after es_mist

Ana: servir paloma: 2 bruma de pomelo, 150 ml
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
  [Quitarlo] [Deshacer]
Ana: carta
  1 cóctel en la carta
  paloma: 2 pulsaciones de Bruma de pomelo en
  150 ml
  Llevan alcohol, para quien no toma: paloma.
  Llevan cítricos, por alergias y medicamentos:
  paloma.
  Precaución: Pregunta a cada cliente por
  alergias y medicamentos, y dile qué lleva.
  [paloma]
  [Añadir un cóctel]
Ana: cócteles 40 paloma
  mié, 25 nov: 40 paloma.
  Se fueron unos: Bruma de pomelo 7 ml.
  [Deshacer] [Por día de la semana] [Plan]
Ana: deshacer
  Deshecho: 40 copas
  [Restaurar]
