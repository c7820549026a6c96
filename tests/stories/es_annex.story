# Botellas de un lote van a otro bar de la misma dueña, que cuenta en otra moneda.
@after es_mist

@clock 2026-11-25 12:00 Europe/Madrid
Ana: precio aceite de pomelo 10 ml 7,90
  aceite de pomelo: 7,90 € por 10 ml
  Igual que antes.
  [Deshacer] [Otro precio]
Ana: precio propilenglicol 1 l 12
  propilenglicol: 12,00 € por 1 l
  [Deshacer] [Otro precio]
Ana: precio alcohol neutro 1 l 24
  alcohol neutro: 24,00 € por 1 l
  [Deshacer] [Otro precio]
Ana: lote bruma de pomelo a 412 ml
  Lote 1: Bruma de pomelo, 411 ml
  Reposa hasta jue, 26 nov 12:00. Te avisaré.
  Revísalo de nuevo el 25 dic 2026.
  Desechar después del 24 may 2027: el plazo
  usual de su tipo.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, propilenglicol
  [Ver el lote 1]
  [Lote del proveedor] [Deshacer]
@clock 2026-11-26 13:00 Europe/Madrid
Ana: revisar 1 claro
  Lote 1, Bruma de pomelo: claro.
  Se puede embotellar y usar.
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
  [Abrirlo] [Deshacer]
Ana: embotellado 1 8 x 50 ml, pérdida 12 ml
  Lote 1, Bruma de pomelo, en botellas: 8 x 50
  ml.
  Ahora: 8 de 8 x 50 ml sin abrir, 12 ml
  perdidos.
  [8 etiquetas] [Abrir una]
  [Deshacer]
Ana: /bars
  Estás en 1 bar
  La Gaviota, dueño o dueña, estás aquí
  [Abrir otro bar]
Ana taps [Abrir otro bar]
  (edited)
  ¿Cómo se llama tu bar? Si quieres, añade la
  ciudad: La Puerta Azul, Sevilla
  Llevo las cantidades, los lotes y la merma de
  fruta de un bar pequeño, y te aviso a tiempo.
  [Bar de Ana]
  [Cancelar]
Ana: El Anexo, Ciudad de México
  Así configuraría tu bar. ¿Está bien?
  Hora: la de Mexico City
  Normas alimentarias: las de tu país
  Moneda: MXN
  Medidas: ml y gramos
  La noche acaba a las: 5:00
  Idioma: Español
  [Está bien]
  [Cambiar algo]
  [Atrás] [Cancelar]
Ana taps [Está bien]
  (edited)
  El Anexo está abierto.
  ml y gramos · MXN · America/Mexico City · el
  día acaba a las 5:00
  A las 4:30 te pregunto qué se ha tirado. Otra
  hora: ajustes aviso de cierre 03:30
  Todo se puede cambiar con /bar. Ahora: apunta
  lo que preparas.
  [Añadir una fórmula] [Proponer una]
  [Poner un precio] [Anotar merma]
Ana: /bars
  Estás en 2 bares
  La Gaviota, dueño o dueña
  El Anexo, dueño o dueña, estás aquí
  [La Gaviota]
  [Abrir otro bar]
Ana taps [La Gaviota]
  Ahora estás en La Gaviota.
  [Anotar merma] [Lotes]
  [Escalar] [Costo] [Semana]
  [Ayuda]
Ana: nos llevamos 3 botellas del lote 1 al anexo
  Leído como: moví 3 botellas de lote 1 a El
  Anexo
  Aún no se ha anotado nada. Toca si es
  correcto.
  [moví 3 botellas de lote 1 a El Anexo]
Ana: moví 3 botellas de la 1 al anexo
  ¿Paso 3 x 50 ml del lote 1, Bruma de pomelo, a
  El Anexo?
  El Anexo aún no tiene Bruma de pomelo: pondría
  la fórmula en su libro, con los ingredientes
  que le falten.
  [Pásalo]
Ana taps [Pásalo]
  (edited)
  3 x 50 ml del lote 1, Bruma de pomelo, pasados
  a El Anexo.
  Allí es el lote 1.
  De este bar salen 17,73 €. El Anexo cuenta en
  MXN: allí no se sabe lo que costó.
  Ahora: 5 de 8 x 50 ml sin abrir, 12 ml
  perdidos, 150 ml trasladados.
  [Ver el lote 1]
  [Ir a El Anexo] [Deshacer]
Ana: pasé 2 botellas de bruma de pomelo al anexo
  2 x 50 ml del lote 1, Bruma de pomelo, pasados
  a El Anexo.
  Allí es el lote 2.
  De este bar salen 11,82 €. El Anexo cuenta en
  MXN: allí no se sabe lo que costó.
  Ahora: 3 de 8 x 50 ml sin abrir, 12 ml
  perdidos, 250 ml trasladados.
  [Ver el lote 1]
  [Ir a El Anexo] [Deshacer]
Ana: deshacer
  Deshecho: 2 x 50 ml del lote 1 pasados a El
  Anexo
  [Restaurar]
Ana: pasé la 1 al anexo
  ¿Cuánto del lote 1, Bruma de pomelo?
  [1 x 50 ml] [2 x 50 ml] [3 x 50 ml]
  [4 x 50 ml] [5 x 50 ml]
  [Atrás] [Cancelar]
Ana: lote 1
  Lote 1: Bruma de pomelo, listo
  Ahora: etiquétalo y ábrelo.
    aceite de pomelo      52 ml
    propilenglicol        94 ml
    alcohol neutro 96 %  265 ml
  411 ml, hecho mié, 25 nov 12:00 por Ana,
  versión 1
  61,9 % vol
  5 de 8 x 50 ml sin abrir, 12 ml perdidos, 150
  ml trasladados
  Desechar después del 24 may 2027, quedan 179
  días (el plazo usual de su tipo)
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  jue, 26 nov: revisado, claro (Ana)
  jue, 26 nov: pasado a otro bar (Ana): 3 x 50
  ml, El Anexo
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, propilenglicol
  Sin terminar y descartado: moví la 1 anexo
  [Abrirlo] [Revisar]
  [Desechar] [Etiqueta] [Lote del proveedor]
Ana: /bars
  Estás en 2 bares
  La Gaviota, dueño o dueña, estás aquí
  El Anexo, dueño o dueña
  [El Anexo]
  [Abrir otro bar]
Ana taps [El Anexo]
  Ahora estás en El Anexo.
  [Anotar merma] [Lotes]
  [Escalar] [Coste] [Semana]
  [Ayuda]
Ana: lote 1
  Lote 1: Bruma de pomelo, listo
  Ahora: etiquétalo y ábrelo.
    aceite de pomelo       19 ml
    propilenglicol       34.3 ml
    alcohol neutro 96 %  96.7 ml
  150 ml, hecho mié 25 de nov 5:00 a.m. en La
  Gaviota como lote 1
  61.9 % vol
  3 de 3 x 50 ml sin abrir
  Desechar después del 24 may 2027, quedan 179
  días (el plazo usual de su tipo)
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, propilenglicol
  [Abrirlo] [Revisar]
  [Desechar] [Etiqueta] [Lote del proveedor]
Ana: abrir 1
  El lote 1, Bruma de pomelo, está en uso.
  Ahora: 2 de 3 x 50 ml sin abrir, 1 abierta.
  Al abrirlo empezó otro plazo: tiempo desde que
  se abrió la botella.
  Desechar después del 24 feb 2027, quedan 90
  días
  Precaución: Sin llama, vela, soplete ni
  garnish flambeado cerca del spray mientras se
  usa.
  [Gastado] [Deshacer]
Ana: deshacer
  Deshecho: apertura del lote 1
  [Restaurar]
Ana: /log
  Registro de El Anexo, lo último primero
  #5 jue 26 de nov 6:00 a.m., Ana: deshizo la
  n.º 4
  #4 jue 26 de nov 6:00 a.m., Ana: abrió el lote
  1 (deshecha por #5)
  #3 jue 26 de nov 6:00 a.m., Ana: deshizo la
  n.º 2
  #2 jue 26 de nov 6:00 a.m., Ana: 2 x 50 ml de
  Bruma de pomelo llegaron de La Gaviota: lote 2
  (deshecha por #3)
  #1 jue 26 de nov 6:00 a.m., Ana: 3 x 50 ml de
  Bruma de pomelo llegaron de La Gaviota: lote 1
Ana: nuevo bar llamado El Norte, Sevilla
  Así configuraría tu bar. ¿Está bien?
  Hora: la de Madrid
  Normas alimentarias: Unión Europea
  Moneda: EUR
  Medidas: ml y gramos
  La noche acaba a las: 5:00 a.m.
  Idioma: Español
  [Está bien]
  [Cambiar algo]
  [Atrás] [Cancelar]
Ana taps [Está bien]
  (edited)
  El Norte está abierto.
  ml y gramos · EUR · Europe/Madrid · el día
  acaba a las 5:00 a.m.
  A las 4:30 a.m. te pregunto qué se ha tirado.
  Otra hora: ajustes aviso de cierre 03:30
  Todo se puede cambiar con /bar. Ahora: apunta
  lo que preparas.
  [Añadir una fórmula] [Proponer una]
  [Poner un precio] [Anotar merma]
