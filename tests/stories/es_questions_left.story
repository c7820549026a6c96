# Una línea que es otra cosa deja la pregunta, y deshacer es de lo último que se anotó.
@after es_menu

Ana: servir
  ¿Qué cóctel?
  [Cancelar]
Ana: deshacer
  Cancelado. No se ha anotado nada.
Ana: nueva fórmula
  ¿Cómo se llama?
  [Cancelar]
Ana: Bruma de prueba
  Escribe los ingredientes, uno por línea:
  aceite de pomelo 10 ml
  [Atrás] [Cancelar]
Ana: merma 2 limas con moho
  Anotado: 2 limas, con moho.
  Sin precio para lima: no está en el coste.
  Nuevo aquí: lima.
  [Deshacer] [Más merma]
  [Precio de lima]
  --
  Escribe los ingredientes, uno por línea:
  aceite de pomelo 10 ml
  [Atrás] [Cancelar]
Ana: deshacer
  Deshecho: 2 limas, con moho
  [Restaurar]
  --
  Escribe los ingredientes, uno por línea:
  aceite de pomelo 10 ml
  [Atrás] [Cancelar]
Ana: quita la paloma de la carta
  paloma ya no está en la carta. Sus recuentos
  se quedan.
  [Carta] [Deshacer]
  --
  Escribe los ingredientes, uno por línea:
  aceite de pomelo 10 ml
  [Atrás] [Cancelar]
Ana: deshacer
  Deshecho: paloma fuera de la carta
  [Restaurar]
  --
  Escribe los ingredientes, uno por línea:
  aceite de pomelo 10 ml
  [Atrás] [Cancelar]
Ana: aceite de pomelo 10 ml
  ¿Más ingredientes? Toca Listo cuando esté
  completa.
  · aceite de pomelo 10 ml
  [Listo] [Atrás] [Cancelar]
Ana: listo
  ¿Cuánto reposa antes de usarse?
  [24 horas] [nada]
  [48 horas]
  [Atrás] [Cancelar]
Ana: 24 h
  ¿Cuánto dura?
  [180 días] [7 días]
  [30 días]
  [Atrás] [Cancelar]
Ana: 30 días
  ¿Cuántas pulsaciones por cóctel?
  [1] [2] [2-3] [3]
  [Atrás] [Cancelar]
Ana: 2
  ¿La piel de qué fruta sustituye?
  [naranjas] [limones]
  [limas] [pomelos]
  [Ninguna]
  [Atrás] [Cancelar]
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
  --
  ¿La piel de qué fruta sustituye?
  [naranjas] [limones]
  [limas] [pomelos]
  [Ninguna]
  [Atrás] [Cancelar]
Ana: zarba
  zarba es nuevo aquí. ¿Es una fruta?
  ¿La piel de qué fruta sustituye?
  [Fruta nueva: zarba]
  [No es fruta: zarba]
  [naranjas] [limones]
  [limas] [pomelos]
  [Ninguna]
  [Atrás] [Cancelar]
Ana: no sé
  Bruma de prueba está en el recetario.
  Bruma de prueba: bruma aromática, versión 1
    aceite de pomelo  10 ml
  Rinde 10 ml
  Reposa 24 horas, desechar tras 30 días
  2 pulsaciones por cóctel, 0,067 a 0,1 ml cada
  una
  Claridad: debería quedar claro, estimado
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo
  Lo mismo se vende en calidades que no son para
  alimentos: ¿este se vende como grado
  alimentario, con papeles del proveedor que lo
  digan?
  [Escalar] [Coste] [Hacer]
  [¿Quedará claro?] [Cambiar] [Más]
  [aceite de pomelo: grado alimentario] [No es seguro]
  [Deshacer]
