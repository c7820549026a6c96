# Una corrección conserva la unidad y el tamaño de lo anotado; el motivo puede decirse después.
@after es_mist

Ana: lote bruma de pomelo a 412 ml
  Lote 1: Bruma de pomelo, 411 ml
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
Ana: revisar 1 claro
  Lote 1, Bruma de pomelo: claro.
  Aun así reposa hasta jue, 26 nov 19:00;
  revísalo entonces otra vez.
  [Abrirlo] [Deshacer]
Ana: embotellado 1 4 botellas de 50 ml
  Lote 1, Bruma de pomelo, en botellas: 4 x 50
  ml.
  Ahora: 4 de 4 x 50 ml sin abrir, 211 ml sin
  embotellar.
  [4 etiquetas] [Abrir una]
  [Deshacer]
Ana: perdón, 3 botellas
  Corregido: embotellado del lote 1
  Lote 1, Bruma de pomelo, en botellas: 3 x 50
  ml.
  Ahora: 3 de 3 x 50 ml sin abrir, 261 ml sin
  embotellar.
  [3 etiquetas] [Abrir una]
  [Deshacer]
Ana: derramado 1 100 ml
  Lote 1, Bruma de pomelo: 100 ml de pérdida.
  Ahora: 3 de 3 x 50 ml sin abrir, 161 ml sin
  embotellar, 100 ml perdidos.
  [Ver el lote 1] [Deshacer]
Ana: perdón, 150
  Corregido: 150 ml de pérdida del lote 1 en vez
  de 100 ml de pérdida del lote 1
  Lote 1, Bruma de pomelo: 150 ml de pérdida.
  Ahora: 3 de 3 x 50 ml sin abrir, 111 ml sin
  embotellar, 150 ml perdidos.
  [Ver el lote 1] [Deshacer]
Ana: merma 4 limones
  Anotado: 4 limones.
  Sin precio para limón: no está en el coste.
  ¿Por qué? Basta un toque.
  Nuevo aquí: limón.
  [Deshacer] [Más merma]
  [Precio de limón]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: eran 3 limones, no 4
  Corregido: 3 limones en vez de 4
  Sin precio para limón: no está en el coste.
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [Precio de limón]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: los limones estaban secos
  Corregido: 3 limones, reseca
  Sin precio para limón: no está en el coste.
  [Deshacer] [Más merma]
  [Precio de limón]
Ana: merma 2 kg de naranjas
  Anotado: 2 kg naranjas, 6,69 €.
  mié, 25 nov hasta ahora: 6,69 €
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: perdón, 2 naranjas, no 2 kg
  Corregido: 2 naranjas en vez de 2 kg naranjas
  mié, 25 nov hasta ahora: 1,20 €
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: eran 3 limones, no 7
  “3 limones no 7” no encaja con lo último que
  anotaste: 2 naranjas.
  [Deshacer]
