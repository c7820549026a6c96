# Los datos propios en un archivo, un nombre olvidado, y un bar que solo se borra con su nombre.
@after es_mist
@speaks Ben es

Ana: ajustes aviso de cierre no
  Aviso de cierre: no
  [Horas y avisos]
  [Todos los ajustes] [Deshacer]
Ana: invitar
  Manda esto a tu nuevo miembro:
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
Ben: mis datos
  Todo lo que La Gaviota guarda de ti: 1 fila.
  Las fotos quedan en el chat; aquí solo están
  sus números.
  <file my-data.json>
  [Olvídame]
Ben: olvídame
  ¿Salir de La Gaviota y quitar tu nombre? No se
  puede deshacer.
  Lo que anotaste se queda, como “antes en el
  equipo”.
  [Sí, olvídame]
  [Quedarme]
Ben taps [Sí, olvídame]
  Has salido de La Gaviota, y tu nombre ya no
  está.
Ana: borrar bar
  Para borrar La Gaviota con todas sus fórmulas,
  lotes y merma, escribe su nombre.
  [Cancelar]
Ana: La Garza
  Ese no es su nombre. No se borra nada.
  Para borrar La Gaviota con todas sus fórmulas,
  lotes y merma, escribe su nombre.
  [Cancelar]
Ana: cancelar
  Cancelado. No se ha anotado nada.
Ana: borrar bar
  Para borrar La Gaviota con todas sus fórmulas,
  lotes y merma, escribe su nombre.
  [Cancelar]
