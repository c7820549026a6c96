# Invitar, papeles, ceder el bar, y quitar a alguien al momento.
@after es_opening
@speaks Ben es
@speaks Cleo es

Ana: equipo
  La Gaviota: 1 en el equipo
  Ana, dueño o dueña, desde el 25 nov 2026
  [Invitar a alguien]
  [Invitar a un encargado]
  [Registro] [Salir]
Ana taps [Invitar a un encargado]
  (edited)
  ¿Para cuántas personas?
  [1] [3] [10]
  [Atrás] [Cancelar]
Ana taps [1]
  (edited)
  ¿Por cuánto tiempo?
  [1 día] [7 días] [30 días]
  [Atrás] [Cancelar]
Ana taps [7 días]
  (edited)
  Manda esto a tu nuevo encargado:
  join ‹code›
  Sirve para 1 persona hasta mié, 2 dic 19:00.
  Solo lo ves tú.
Ben: unirme ‹code›
  Te damos la bienvenida a La Gaviota.
  Aquí puedes escalar, hacer lotes y anotar
  merma.
  [Anotar merma] [Lotes]
  [Escalar] [Coste] [Semana]
  [Ayuda]
Ana: invitar 2 personas 1 día
  Manda esto a tu nuevo miembro:
  join ‹code›
  Sirve para 2 personas hasta jue, 26 nov 19:00.
  Solo lo ves tú.
Cleo: unirme ‹code›
  Te damos la bienvenida a La Gaviota.
  Aquí puedes escalar, hacer lotes y anotar
  merma.
  [Anotar merma] [Lotes]
  [Escalar] [Coste] [Semana]
  [Ayuda]
Cleo: precio limas 0,50 cada una
  lima: 0,50 € cada una
  Nuevo aquí: lima.
  [Deshacer] [Otro precio]
Ana: equipo responsable Cleo
  Cleo es ahora encargado.
Ana: equipo titular Ben
  ¿Ceder el bar a Ben? Solo su dueño o dueña
  puede devolverlo.
  [Sí, ceder el bar a Ben]
Ana taps [Sí, ceder el bar a Ben]
  Ben es ahora dueño o dueña, y tú quedas como
  encargado.
Ben: equipo quitar Cleo
  Cleo ya está fuera del bar.
  [Olvidar también el nombre]
Cleo: lotes
  Aún no estás en ningún bar.
  Abre el tuyo, o únete a uno con el código que
  te dé un encargado: unirme CÓDIGO
  [Abrir un bar] [Unirme con un código]
Ben: registro
  Registro de La Gaviota, lo último primero
  #6 mié, 25 nov 19:00, Ben: sacó del bar a Cleo
  #5 mié, 25 nov 19:00, Ana: cedió el bar a Ben
  #4 mié, 25 nov 19:00, Ana: hizo a Cleo
  encargado
  #3 mié, 25 nov 19:00, Cleo: precio de lima,
  0,50 € cada una
  #2 mié, 25 nov 19:00, Ana: creó un código para
  unirse
  #1 mié, 25 nov 19:00, Ana: creó un código para
  unirse
  [Deshacer #3]
Ana: salir
  ¿Salir de La Gaviota? Para volver hará falta
  un código nuevo.
  [Sí, salir]
  [Quedarme]
Ana taps [Sí, salir]
  Has salido de La Gaviota.
  Lo que anotaste queda en su registro con tu
  nombre.
  [Todo en un archivo] [Olvídame]
