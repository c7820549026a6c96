# One bar, two languages: each is answered in their own.
@after es_mist
@speaks Ben en

Ana: invitar 1 persona 7 días
  Manda esto a tu nuevo miembro:
  join ‹code›
  Sirve para 1 persona hasta mié, 2 dic 19:00.
  Solo lo ves tú.
Ben: join ‹code›
  Welcome to La Gaviota.
  You can scale, make batches and log waste
  here.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Ben: waste 3 limes
  Logged: 3 limes.
  No price for lime: not in the cost.
  Why? One tap is enough.
  New here: lime.
  [Undo] [More waste]
  [Price of lime]
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
Ben: idioma
  Which language? Now: English
  [English] [Español]
  [Cancel]
Ben: language Spanish
  Desde ahora hablo español contigo.
  Para los chats de todo el bar: bar idioma
  español
  [Anotar merma] [Lotes]
  [Escalar] [Coste] [Semana]
  [Ayuda]
Ben: semana
  Merma: aún sin precios
  lun, 23 nov al dom, 29 nov, aún sin terminar
    lime  3  sin precio
    sin motivo  3  sin precio
  Sin precio, así que no cuenta: lime.
  Sin nada anotado con qué comparar: lun, 16 nov
  a mié, 18 nov.
  [Más] [Imagen]
  [Semana pasada] [Anotar merma]
Ben: idioma inglés
  I speak English with you from now on.
  For the whole bar's chats: bar language
  English
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Ben: week
  Waste: no prices yet
  Mon, 23 Nov to Sun, 29 Nov, still running
    lime  3  no price
    no reason given  3  no price
  Without a price, so not counted: lime.
  Nothing logged to compare with: Mon, 16 Nov to
  Wed, 18 Nov.
  [More] [Picture]
  [Last week] [Log waste]
Ana: equipo
  La Gaviota: 2 en el equipo
  Ana, dueño o dueña, desde el 25 nov 2026
  Ben, miembro, desde el 25 nov 2026
  [Invitar a alguien]
  [Invitar a un encargado]
  [Quitar a Ben] [Hacer a Ben encargado]
  [Registro] [Salir]
Ana: equipo encargado Ben
  Ben es ahora encargado.
Ana: equipo quitar Ben
  Ben ya está fuera del bar.
  [Olvidar también el nombre]
Ana: registro
  Registro de La Gaviota, lo último primero
  #8 mié, 25 nov 19:00, Ana: sacó del bar a Ben
  #7 mié, 25 nov 19:00, Ana: hizo a Ben
  encargado
  #6 mié, 25 nov 19:00, Ben: merma: 3 limes
  #5 mié, 25 nov 19:00, Ana: creó un código para
  unirse
  #4 mié, 25 nov 19:00, Ana: precio de naranja,
  0,60 € cada una
  #3 mié, 25 nov 19:00, Ana: precio de pomelo,
  0,90 € cada una
  #2 mié, 25 nov 19:00, Ana: precio de aceite de
  pomelo, 7,90 € por 10 ml
  #1 mié, 25 nov 19:00, Ana: apuntó Bruma de
  pomelo
  [Deshacer #6] [Deshacer #4] [Deshacer #3]
