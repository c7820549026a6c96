# Una línea escrita después del cierre dice para qué noche cuenta; la anterior queda a un toque.
@after es_opening

Ana: ajustes hora de cierre 02:00
  Hora de cierre: 2:00
  [Horas y avisos]
  [Todos los ajustes] [Deshacer]
@clock 2026-11-26 02:45 Europe/Madrid
Ana: merma 3 naranjas con moho
  Anotado: 3 naranjas, con moho.
  Sin precio para naranja: no está en el coste.
  Cuenta para el jue, 26 nov: ya es después del
  cierre.
  Nuevo aquí: naranja.
  [Deshacer] [Más merma]
  [Precio de naranja]
  [Fue el mié, 25 nov]
Ana taps [Fue el mié, 25 nov]
  (edited)
  Corregido: 3 naranjas, con moho, del mié, 25
  nov
  Sin precio para naranja: no está en el coste.
  [Deshacer] [Más merma]
  [Precio de naranja]
