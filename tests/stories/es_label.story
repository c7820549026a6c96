# Etiquetas con toques, en el papel del bar.
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
Ana: etiqueta 1
  ¿Qué etiquetas hay en la impresora?
  [A4, 14 etiquetas de 99,1 x 38,1 mm]
  [A4, 8 etiquetas de 99,1 x 67,7 mm]
  [A4, 21 etiquetas de 63,5 x 38,1 mm]
  [A4, 24 etiquetas de 70 x 37 mm]
  [A4, 40 etiquetas de 48,5 x 25,4 mm]
  [A4, 65 etiquetas de 38,1 x 21,2 mm]
  [rollo de 62 mm de ancho, cortado a medida]
  [rollo de etiquetas, 50 x 30 mm]
  [Atrás] [Cancelar]
Ana taps [A4, 14 etiquetas de 99,1 x 38,1 mm]
  (edited)
  ¿Cuántas etiquetas?
  [8 (una por frasco)]
  [1 (una)]
  [14 (una hoja entera)]
  [Otro número]
  [Atrás] [Cancelar]
Ana taps [8 (una por frasco)]
  (edited)
  8 etiquetas para el lote 1, Bruma de pomelo
  A4, 14 etiquetas de 99,1 x 38,1 mm
  Imprime al 100 %, sin “ajustar a la página”.
  Nadie lo ha visto claro todavía: la etiqueta
  no lo dice.
  Precaución: Las normas de etiquetado cambian
  según el lugar: pregunta a tu inspector qué
  debe decir la tuya.
  <picture batch-1-labels.png>
  <file batch-1-labels.pdf>
  [A4, 8 etiquetas de 99,1 x 67,7 mm]
  [A4, 21 etiquetas de 63,5 x 38,1 mm]
  [Ver el lote 1] [Siempre este papel]
Ana: etiqueta 1 roll-62 x1
  1 etiqueta para el lote 1, Bruma de pomelo
  rollo de 62 mm de ancho, cortado a medida
  Nadie lo ha visto claro todavía: la etiqueta
  no lo dice.
  Precaución: Las normas de etiquetado cambian
  según el lugar: pregunta a tu inspector qué
  debe decir la tuya.
  <picture batch-1-labels.png>
  <file batch-1-labels.pdf>
  [A4, 14 etiquetas de 99,1 x 38,1 mm]
  [A4, 8 etiquetas de 99,1 x 67,7 mm]
  [Ver el lote 1] [Siempre este papel]
Ana: etiqueta 7
  En este bar no hay lote 7.
