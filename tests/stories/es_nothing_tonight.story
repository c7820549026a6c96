# Una noche sin merma queda en el registro y se deshace como lo demás.
@after es_opening

@clock 2026-11-26 04:30 Europe/Madrid
@reminders
  (to private ana)
  Cierre de La Gaviota, mié, 25 nov: ¿qué se ha
  tirado?
  Escríbelo, por ejemplo: 6 naranjas con moho, 2
  limas. O toca.
  [Anotar merma] [Nada esta noche]
  [En media hora] [A mediodía]
Ana: nada esta noche
  Anotado: nada de merma esta noche.
  [Deshacer]
Ana: deshacer
  Deshecho: sin merma el mié, 25 nov
  [Restaurar]
Ana taps [Restaurar]
  Restaurado: sin merma el mié, 25 nov
  [Deshacer]
Ana: registro
  Registro de La Gaviota, lo último primero
  #3 jue, 26 nov 4:30, Ana: restauró: sin merma
  el mié, 25 nov
  #2 jue, 26 nov 4:30, Ana: deshizo la n.º 1
  #1 jue, 26 nov 4:30, Ana: sin merma el mié, 25
  nov (deshecha por #2)
  [Deshacer #3]
