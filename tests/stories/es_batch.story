# A batch in Spanish from making to the last drop.
@after es_mist

@clock 2026-11-25 18:00 Europe/Madrid
Ana: lote bruma de pomelo a 400 ml
  Lote 1: Bruma de pomelo, 402 ml
  Reposa hasta jue, 26 nov 18:00. Te avisaré.
  Revísalo de nuevo el 25 dic 2026.
  Desechar después del 24 may 2027: el plazo
  usual de su tipo.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, propilenglicol
  [Ver el lote 1]
  [Lote del proveedor] [Deshacer]
Ana: partida 1 aceite de pomelo A2231
  Lote 1: aceite de pomelo es del lote del
  proveedor A2231.
  [Otro lote del proveedor] [Deshacer]
Ana: qué lotes llevan la partida A2231
  El lote del proveedor A2231 está en 1 lote
  1 Bruma de pomelo: en reposo, mié, 25 nov
  [1 Bruma de pomelo]
Ana: lotes
  1 en reposo
  1 Bruma de pomelo: en reposo hasta jue, 26 nov
  18:00
  [1 Bruma de pomelo]
  [Hacer un lote] [Lotes pasados]
@clock +25 h
@reminders
  (to private ana)
  Cierre de La Gaviota, mié, 25 nov: ¿qué se ha
  tirado?
  Escríbelo, por ejemplo: 6 naranjas con moho, 2
  limas. O toca.
  Con retraso: tocaba jue, 26 nov 4:30.
  [Anotar merma] [Nada esta noche]
  [En media hora] [A mediodía]
  --
  (to private ana)
  El lote 1, Bruma de pomelo, ya ha reposado.
  ¿Qué aspecto tiene?
  402 ml, desechar después del 24 may 2027
  Con retraso: tocaba jue, 26 nov 18:00.
  [Claro] [Turbio] [Separado]
  [En 2 horas] [Mañana]
Ana taps [Turbio]
  (edited)
  Lote 1, Bruma de pomelo: turbio.
  Ahora: filtra una muestra.
  Filtra un vaso por papel y míralo al día
  siguiente.
  Si queda claro, eran ceras o sólidos finos:
  filtra el resto y anota: filtrado 1, pérdida
  12 ml
  Si se enturbia otra vez, no son ceras: la
  siguiente prueba.
  Preguntaré otra vez en un día.
  [¿Cómo arreglarlo?]
  [Desechar] [Deshacer]
@clock +25 h
@reminders
  (to private ana)
  Cierre de La Gaviota, jue, 26 nov: ¿qué se ha
  tirado?
  Escríbelo, por ejemplo: 6 naranjas con moho, 2
  limas. O toca.
  Con retraso: tocaba vie, 27 nov 4:30.
  [Anotar merma] [Nada esta noche]
  [En media hora] [A mediodía]
  --
  (to private ana)
  El lote 1, Bruma de pomelo, no estaba claro.
  ¿Qué aspecto tiene ahora?
  402 ml
  Con retraso: tocaba vie, 27 nov 19:00.
  [Claro] [Turbio] [Separado]
  [Mañana] [Desechar]
Ana: revisa 1 claro, sin capas
  Lote 1, Bruma de pomelo: claro.
  Se puede embotellar y usar.
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
  Anotado: sin capas
  [Abrirlo] [Deshacer]
Ana: abre 1
  El lote 1, Bruma de pomelo, está en uso.
  Al abrirlo empezó otro plazo: tiempo desde que
  se abrió la botella.
  Desechar después del 25 feb 2027, quedan 90
  días
  Precaución: Sin llama, vela, soplete ni
  garnish flambeado cerca del spray mientras se
  usa.
  [Gastado] [Deshacer]
Ana: lote 1
  Lote 1: Bruma de pomelo, en uso
  Ahora: anota cuándo se gasta.
    aceite de pomelo [A2231]   50 ml
    propilenglicol             92 ml
    alcohol neutro 96 %       260 ml
  402 ml, hecho mié, 25 nov 18:00 por Ana,
  versión 1
  62,1 % vol
  Abierto vie, 27 nov 20:00
  Desechar después del 25 feb 2027, quedan 90
  días (tiempo desde que se abrió la botella)
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  jue, 26 nov: revisado, turbio (Ana)
  vie, 27 nov: revisado, claro (Ana): sin capas
  vie, 27 nov: abierto (Ana)
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, propilenglicol
  [Gastado] [Revisar]
  [Desechar] [Etiqueta] [Lote del proveedor]
Ana: gastado 1
  El lote 1, Bruma de pomelo, está gastado.
  Duró menos de una hora.
  [Hacerlo otra vez] [Deshacer]
Ana taps [Deshacer]
  Deshecho: lote 1 gastado
  [Restaurar]
Ana: desecha 1 40 ml, olía a aceite viejo
  El lote 1, Bruma de pomelo, queda desechado:
  40 ml.
  Motivo: olía a aceite viejo
  Precaución: Moja los trapos con aceite de
  cítrico o ciérralos en un cubo de metal:
  amontonados pueden arder solos.
  [Hacerlo otra vez] [Deshacer]
Ana: registro
  Registro de La Gaviota, lo último primero
  #12 vie, 27 nov 20:00, Ana: desechó el lote 1
  #11 vie, 27 nov 20:00, Ana: deshizo la n.º 10
  #10 vie, 27 nov 20:00, Ana: lote 1 gastado
  (deshecha por #11)
  #9 vie, 27 nov 20:00, Ana: abrió el lote 1
  #8 vie, 27 nov 20:00, Ana: revisó el lote 1
  #7 jue, 26 nov 19:00, Ana: revisó el lote 1
  #6 mié, 25 nov 18:00, Ana: anotó un lote del
  proveedor en el lote 1
  #5 mié, 25 nov 18:00, Ana: hizo el lote 1,
  Bruma de pomelo
  #4 mié, 25 nov 19:00, Ana: precio de naranja,
  0,60 € cada una
  #3 mié, 25 nov 19:00, Ana: precio de pomelo,
  0,90 € cada una
  [Deshacer #12]
  [Anteriores]
