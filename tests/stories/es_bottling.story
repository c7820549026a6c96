# Botellas de un lote, en español.
@after es_mist

@clock 2026-11-25 12:00 Europe/Madrid
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
Ana: embotellado 1 8 botellas de 50 ml cada una, pérdida 12 ml
  Lote 1, Bruma de pomelo, en botellas: 8 x 50
  ml.
  Ahora: 8 de 8 x 50 ml sin abrir, 12 ml
  perdidos.
  [8 etiquetas] [Abrir una]
  [Deshacer]
Ana: abrir 1
  El lote 1, Bruma de pomelo, está en uso.
  Ahora: 7 de 8 x 50 ml sin abrir, 1 abierta, 12
  ml perdidos.
  Al abrirlo empezó otro plazo: tiempo desde que
  se abrió la botella.
  Desechar después del 24 feb 2027, quedan 90
  días
  Precaución: Sin llama, vela, soplete ni
  garnish flambeado cerca del spray mientras se
  usa.
  [Gastado] [Deshacer]
Ana: agotado 1
  Una botella del lote 1, Bruma de pomelo, está
  vacía.
  Ahora: 7 de 8 x 50 ml sin abrir, 12 ml
  perdidos.
  [Abrir la siguiente] [Deshacer]
Ana: derramado 1 5 ml
  Lote 1, Bruma de pomelo: 5 ml de pérdida.
  Ahora: 7 de 8 x 50 ml sin abrir, 17 ml
  perdidos.
  [Ver el lote 1] [Deshacer]
Ana: deshacer
  Deshecho: 5 ml de pérdida del lote 1
  [Restaurar]
