# Las palabras nuevas de una edición nombran algo nuevo: lo que anota el toque queda en lugar de lo anterior.
@speaks Ana es
@after es_opening

Ana: merma 6 limas con moho
  Anotado: 6 limas, con moho.
  Sin precio para lima: no está en el coste.
  Nuevo aquí: lima.
  [Deshacer] [Más merma]
  [Precio de lima]
Ana edits: merma 4 limas blandas con moho
  Leído como: merma 4 limas con moho
  Aún no se ha anotado nada. Toca si es
  correcto.
  No ha cambiado nada.
  [merma 4 limas con moho]
  [Deshacer]
Ana taps [merma 4 limas con moho]
  (edited)
  Corregido: 4 limas en vez de 6, con moho, como
  antes
  Sin precio para lima: no está en el coste.
  [Deshacer] [Más merma]
  [Precio de lima]
Ana: registro
  Registro de La Gaviota, lo último primero
  #2 mié, 25 nov 19:00, Ana: merma: 4 limas, con
  moho (en vez de #1)
  #1 mié, 25 nov 19:00, Ana: merma: 6 limas, con
  moho (ahora #2)
  [Deshacer #2]
Ana edits: merma 5 limones con moho
  limones: ¿limas, o una fruta nueva?
  [limas]
  [Fruta nueva: limón]
  [Cancelar]
Ana taps [limas]
  (edited)
  Anotado: 5 limas, con moho.
  Sin precio para lima: no está en el coste.
  [Deshacer] [Más merma]
  [Precio de lima]
Ana: semana
  Merma: aún sin precios
  lun, 23 nov al dom, 29 nov, aún sin terminar
    lima  9  sin precio
    con moho  9  sin precio
  Sin precio, así que no cuenta: lima.
  Sin nada anotado con qué comparar: lun, 16 nov
  a mié, 18 nov.
  [Más] [Imagen]
  [Semana pasada] [Anotar merma]

# También una cantidad que se confirma con un toque.
Ana: merma 2 limas
  Anotado: 2 limas.
  Sin precio para lima: no está en el coste.
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [Precio de lima]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana edits: merma 5000 limas
  ¿5.000 limas?
  No ha cambiado nada.
  [Sí, 5.000 limas]
  [Cancelar]
  [Deshacer]
Ana taps [Sí, 5.000 limas]
  (edited)
  Corregido: 5.000 limas en vez de 2
  Sin precio para lima: no está en el coste.
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [Precio de lima]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: semana
  Merma: aún sin precios
  lun, 23 nov al dom, 29 nov, aún sin terminar
    lima  5.009  sin precio
    sin motivo  5.000  sin precio
    con moho        9  sin precio
  Sin precio, así que no cuenta: lima.
  Sin nada anotado con qué comparar: lun, 16 nov
  a mié, 18 nov.
  [Más] [Imagen]
  [Semana pasada] [Anotar merma]
