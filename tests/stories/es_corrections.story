# Una entrada tiene un solo estado. El motivo, la edición, deshacer y restaurar cambian ese.
@after es_mist

Ana: precio limones 0,50 cada uno
  limón: 0,50 € cada una
  Nuevo aquí: limón.
  [Deshacer] [Otro precio]
Ana: precio limas 0,30 cada una
  lima: 0,30 € cada una
  Nuevo aquí: lima.
  [Deshacer] [Otro precio]

# Se toca un motivo y luego se edita el mensaje: dos limones, y el motivo queda.
Ana: merma 3 limones
  Anotado: 3 limones, 1,50 €.
  mié, 25 nov hasta ahora: 1,50 €
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana taps [reseca]
  (edited)
  3 limones: reseca.
  [Deshacer] [Más merma]
Ana edits: merma 2 limones
  Corregido: 2 limones en vez de 3, reseca, como
  antes
  mié, 25 nov hasta ahora: 1,00 €
  [Deshacer] [Más merma]
Ana: semana
  Merma: 1,00 €
  lun, 23 nov al dom, 29 nov, aún sin terminar
    limón  2  1,00 €
    reseca  2  1,00 €
  Sin nada anotado con qué comparar: lun, 16 nov
  a mié, 18 nov.
  <picture waste-2026-W48.png>
  [Más] [Imagen]
  [Semana pasada] [Anotar merma]
Ana edits the one before: merma 2 limones con moho
  Corregido: 2 limones, con moho en vez de
  reseca
  mié, 25 nov hasta ahora: 1,00 €
  [Deshacer] [Más merma]

# Deshacer bajo un motivo deshace la entrada entera.
Ana: merma 3 limas
  Anotado: 3 limas, 0,90 €.
  mié, 25 nov hasta ahora: 1,90 €
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana taps [reseca]
  (edited)
  3 limas: reseca.
  [Deshacer] [Más merma]
Ana taps [Deshacer]
  Deshecho: 3 limas, reseca
  [Restaurar]
Ana taps [Restaurar]
  Restaurado: 3 limas, reseca
  [Deshacer]
Ana: deshacer
  Deshecho: 3 limas, reseca
  [Restaurar]
Ana: deshacer
  Deshecho: 2 limones, con moho
  [Restaurar]
Ana: restaurar
  Restaurado: 2 limones, con moho
  [Deshacer]
Ana: registro
  Registro de La Gaviota, lo último primero
  #17 mié, 25 nov 19:00, Ana: restauró: merma: 2
  limones, con moho
  #16 mié, 25 nov 19:00, Ana: deshizo la n.º 10
  #15 mié, 25 nov 19:00, Ana: deshizo la n.º 14
  #14 mié, 25 nov 19:00, Ana: restauró: merma: 3
  limas, reseca (deshecha por #15)
  #13 mié, 25 nov 19:00, Ana: deshizo la n.º 12
  #12 mié, 25 nov 19:00, Ana: dio un motivo: 3
  limas, reseca (deshecha por #13)
  #11 mié, 25 nov 19:00, Ana: merma: 3 limas
  (ahora #12)
  #10 mié, 25 nov 19:00, Ana: merma: 2 limones,
  con moho (en vez de #9) (deshecha por #16)
  #9 mié, 25 nov 19:00, Ana: merma: 2 limones,
  reseca (en vez de #8) (ahora #10)
  #8 mié, 25 nov 19:00, Ana: dio un motivo: 3
  limones, reseca (ahora #9)
  [Deshacer #17]
  [Anteriores]

# Cualquier número de la cadena vale.
Ana: merma 4 naranjas
  Anotado: 4 naranjas, 2,40 €.
  mié, 25 nov hasta ahora: 3,40 €
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana taps [con moho]
  (edited)
  4 naranjas: con moho.
  [Deshacer] [Más merma]
Ana: deshacer 18
  Deshecho: 4 naranjas, con moho
  [Restaurar]
Ana: deshacer 18
  Lo deshiciste a las 19:00.
  [Restaurar]
Ana: merma 5 naranjas
  Anotado: 5 naranjas, 3,00 €.
  mié, 25 nov hasta ahora: 4,00 €
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: deshacer
  Deshecho: 5 naranjas
  [Restaurar]
Ana edits the one before: merma 6 naranjas
  Lo que anotó ese mensaje se deshizo a las
  19:00.
  Envíalo como mensaje nuevo para anotarlo.
  [Restaurar]

# Lo que se cambió después se deshace primero.
Ana: mínimo limas 20
  lima: te aviso por debajo de 20 piezas.
  Nunca se ha contado, cuéntalo una vez:
  existencias lima 1,4 l
  [Deshacer] [Todas las existencias]
Ana: mínimo limas 30
  lima: te aviso por debajo de 30 piezas.
  Nunca se ha contado, cuéntalo una vez:
  existencias lima 1,4 l
  [Deshacer] [Todas las existencias]
Ana: deshacer 23
  Cambiaste lo mismo a las 19:00.
  Deshaz eso primero: deshacer 24
  [Deshacer #24]
