# Al escanear una etiqueta se abre el lote con el paso siguiente.
@after es_mist

Ana: lote bruma de pomelo a 8 x 50 ml
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
Ana: /start b_1_1
  Lote 1: Bruma de pomelo, en reposo
    aceite de pomelo      50 ml
    propilenglicol        92 ml
    alcohol neutro 96 %  260 ml
  402 ml, hecho mié, 25 nov 19:00 por Ana,
  versión 1
  62,1 % vol
  Reposa hasta jue, 26 nov 19:00, quedan 24
  horas
  Desechar después del 24 may 2027, quedan 180
  días (el plazo usual de su tipo)
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, propilenglicol
  [Claro] [Turbio] [Separado]
  [Abrirlo]
  [Desechar] [Etiqueta] [Lote del proveedor]
@clock +25 h
Ana: /start b_1_1
  Lote 1: Bruma de pomelo, en reposo
  Ahora: revisa su aspecto.
    aceite de pomelo      50 ml
    propilenglicol        92 ml
    alcohol neutro 96 %  260 ml
  402 ml, hecho mié, 25 nov 19:00 por Ana,
  versión 1
  62,1 % vol
  Reposado desde jue, 26 nov 19:00: revisa su
  aspecto
  Desechar después del 24 may 2027, quedan 179
  días (el plazo usual de su tipo)
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, propilenglicol
  [Claro] [Turbio] [Separado]
  [Abrirlo]
  [Desechar] [Etiqueta] [Lote del proveedor]
Ana taps [Claro]
  (edited)
  Lote 1, Bruma de pomelo: claro.
  Se puede embotellar y usar.
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
  [Abrirlo] [Deshacer]
Ana: /start b_1_1
  Lote 1: Bruma de pomelo, listo
  Ahora: etiquétalo y ábrelo.
    aceite de pomelo      50 ml
    propilenglicol        92 ml
    alcohol neutro 96 %  260 ml
  402 ml, hecho mié, 25 nov 19:00 por Ana,
  versión 1
  62,1 % vol
  Desechar después del 24 may 2027, quedan 179
  días (el plazo usual de su tipo)
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  jue, 26 nov: revisado, claro (Ana)
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, propilenglicol
  [Abrirlo] [Revisar]
  [Desechar] [Etiqueta] [Lote del proveedor]
Ana taps [Abrirlo]
  (edited)
  El lote 1, Bruma de pomelo, está en uso.
  Al abrirlo empezó otro plazo: tiempo desde que
  se abrió la botella.
  Desechar después del 24 feb 2027, quedan 90
  días
  Precaución: Sin llama, vela, soplete ni
  garnish flambeado cerca del spray mientras se
  usa.
  [Gastado] [Deshacer]
Ana: /start b_1_1
  Lote 1: Bruma de pomelo, en uso
  Ahora: anota cuándo se gasta.
    aceite de pomelo      50 ml
    propilenglicol        92 ml
    alcohol neutro 96 %  260 ml
  402 ml, hecho mié, 25 nov 19:00 por Ana,
  versión 1
  62,1 % vol
  Abierto jue, 26 nov 20:00
  Desechar después del 24 feb 2027, quedan 90
  días (tiempo desde que se abrió la botella)
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  jue, 26 nov: revisado, claro (Ana)
  jue, 26 nov: abierto (Ana)
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, propilenglicol
  [Gastado] [Revisar]
  [Desechar] [Etiqueta] [Lote del proveedor]
@clock +300 days
Ana: /start b_1_1
  Lote 1: Bruma de pomelo, en uso
  Ahora: deséchalo.
    aceite de pomelo      50 ml
    propilenglicol        92 ml
    alcohol neutro 96 %  260 ml
  402 ml, hecho mié, 25 nov 2026 19:00 por Ana,
  versión 1
  62,1 % vol
  Abierto jue, 26 nov 2026 20:00
  Pasó su fecha de desecho, 24 feb 2027 (tiempo
  desde que se abrió la botella)
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  jue, 26 nov 2026: revisado, claro (Ana)
  jue, 26 nov 2026: abierto (Ana)
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, propilenglicol
  [Desechar]
  [Gastado] [Revisar]
  [Etiqueta] [Lote del proveedor]
@speaks Eva es
Eva: /start b_1_1
  El lote de esa etiqueta solo lo enseño a
  alguien del equipo de su bar.
