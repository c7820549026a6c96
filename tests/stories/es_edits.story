# Un mensaje editado es una corrección: el registro lo sigue y enseña los dos.
@after es_mist

Ana: precio limas 0,30 cada una
  lima: 0,30 € cada una
  Nuevo aquí: lima.
  [Deshacer] [Otro precio]
Ana: merma 6 limas mohosas
  Anotado: 6 limas, con moho, 1,80 €.
  mié, 25 nov hasta ahora: 1,80 €
  [Deshacer] [Más merma]
Ana edits: merma 4 limas mohosas
  Corregido: 4 limas en vez de 6, con moho, como
  antes
  mié, 25 nov hasta ahora: 1,20 €
  [Deshacer] [Más merma]
Ana: registro
  Registro de La Gaviota, lo último primero
  #7 mié, 25 nov 19:00, Ana: merma: 4 limas, con
  moho (en vez de #6)
  #6 mié, 25 nov 19:00, Ana: merma: 6 limas, con
  moho (ahora #7)
  #5 mié, 25 nov 19:00, Ana: precio de lima,
  0,30 € cada una
  #4 mié, 25 nov 19:00, Ana: precio de naranja,
  0,60 € cada una
  #3 mié, 25 nov 19:00, Ana: precio de pomelo,
  0,90 € cada una
  #2 mié, 25 nov 19:00, Ana: precio de aceite de
  pomelo, 7,90 € por 10 ml
  #1 mié, 25 nov 19:00, Ana: apuntó Bruma de
  pomelo
  [Deshacer #7] [Deshacer #5] [Deshacer #4]
Ana edits: buenas noches
  Para servirte.
Ana: merma
  ¿Qué se ha tirado?
  [lima] [naranja]
  [pomelo] [limón]
  [Cancelar]
Ana: limones
  limones: ¿limas, o una fruta nueva?
  ¿Qué se ha tirado?
  [limas]
  [Fruta nueva: limón]
  [lima] [naranja]
  [pomelo] [limón]
  [Cancelar]
Ana edits: limas
  limas: ¿cuánto?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Otro número]
  [Atrás] [Cancelar]
Ana: 3
  ¿Por qué?
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
  [Atrás] [Cancelar]
Ana: con moho
  Anotado: 3 limas, con moho, 0,90 €.
  mié, 25 nov hasta ahora: 2,10 €
  [Deshacer] [Más merma]
@clock +25 h
Ana: merma 1 lima con moho
  Anotado: 1 lima, con moho, 0,30 €.
  jue, 26 nov hasta ahora: 0,30 €
  [Deshacer] [Más merma]
@clock +25 h
Ana edits: merma 2 limas con moho
  Eso se anotó hace más de 24 horas y se queda
  como está.
  Anota lo contrario, para que el registro
  muestre las dos cosas.
