# Una pregunta no se traga nada: lo imposible se dice antes de preguntar, y una merma es una merma.
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
Ana: vacío 1
  El lote 1, Bruma de pomelo, está gastado.
  Duró menos de una hora.
  [Hacerlo otra vez] [Deshacer]
Ana: desechar 1
  El lote 1 está gastado.
Ana: 4 pomelos
  Anotado: 4 pomelos, 3,60 €.
  mié, 25 nov hasta ahora: 3,60 €
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: ajustes hora de cierre
  ¿Qué ponemos en “hora de cierre”?
  Ahora: 5:00
  [5:00] [4:00]
  [3:00] [2:00]
  [Atrás] [Cancelar]
Ana: 4 pomelos
  Anotado: 4 pomelos, 3,60 €.
  mié, 25 nov hasta ahora: 7,20 €
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
  --
  ¿Qué ponemos en “hora de cierre”?
  Ahora: 5:00
  [5:00] [4:00]
  [3:00] [2:00]
  [Atrás] [Cancelar]
Ana: 4:00
  Hora de cierre: 4:00
  [Horas y avisos]
  [Todos los ajustes] [Deshacer]
