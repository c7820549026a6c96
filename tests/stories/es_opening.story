# A bar opened from a phone set to Spanish.
@speaks Ana es

Ana: hola
  Llevo las preparaciones de un bar: cantidades,
  costes, lotes, avisos y merma de fruta.
  Abre un bar con empezar, o únete a uno con:
  unirme CÓDIGO
  [Abrir un bar] [Unirme con un código]
Ana: empezar
  ¿Cómo se llama tu bar? Si quieres, añade la
  ciudad: La Puerta Azul, Sevilla
  Llevo las cantidades, los lotes y la merma de
  fruta de un bar pequeño, y te aviso a tiempo.
  [Bar de Ana]
  [Cancelar]
Ana: La Gaviota
  ¿En qué ciudad estás?
  [Madrid] [Mexico City]
  [Bogota] [Buenos Aires]
  [Atrás] [Cancelar]
Ana: Madrid
  Así configuraría tu bar. ¿Está bien?
  Hora: la de Madrid
  Normas alimentarias: Unión Europea
  Moneda: EUR
  Medidas: ml y gramos
  La noche acaba a las: 5:00
  Idioma: Español
  [Está bien]
  [Cambiar algo]
  [Atrás] [Cancelar]
Ana taps [Cambiar algo]
  (edited)
  ¿Las normas alimentarias de qué país? Los
  límites y las precauciones salen de ellas.
  [Unión Europea] [Estados Unidos]
  [Reino Unido] [las de tu país]
  [Atrás] [Cancelar]

Ana taps [Unión Europea]
  (edited)
  ¿Qué moneda?
  [EUR] [USD] [GBP]
  [Atrás] [Cancelar]
Ana taps [EUR]
  (edited)
  ¿Cómo mides?
  [ml y gramos]
  [onzas líquidas de EE. UU.]
  [onzas líquidas imperiales]
  [Atrás] [Cancelar]
Ana taps [ml y gramos]
  (edited)
  ¿A qué hora se acaba la noche como muy tarde?
  Lo anterior cuenta para la noche que termina.
  [5:00] [4:00] [3:00]
  [2:00] [1:00] [6:00]
  [Atrás] [Cancelar]
Ana taps [5:00]
  (edited)
  La Gaviota está abierto.
  ml y gramos · EUR · Europe/Madrid · el día
  acaba a las 5:00
  A las 4:30 te pregunto qué se ha tirado. Otra
  hora: ajustes aviso de cierre 03:30
  Todo se puede cambiar con /bar. Ahora: apunta
  lo que preparas.
  [Añadir una fórmula] [Proponer una]
  [Poner un precio] [Anotar merma]
Ana: ayuda
  Di lo que quieres hacer, con o sin la barra:
  merma 6 naranjas con moho
  nueva fórmula: apunta lo primero que preparas
  precio naranjas 0,60 cada una, 5 garnish cada
  una
  semana: lo que se tiró y lo que costó
  Más de cualquier cosa: ayuda etiquetas, ayuda
  cómo anoto merma
  [Anotar merma] [Añadir una fórmula]
  [Todo] [Precauciones]
Ana: lotes
  No hay lotes en reposo ni en uso.
  Haz uno con una fórmula: lote bruma de pomelo
  a 400 ml
  [Hacer un lote] [Fórmulas]
Ana: merma
  ¿Qué se ha tirado?
  [naranja] [limón]
  [lima] [pomelo]
  [Cancelar]
Ana: cancelar
  Cancelado. No se ha anotado nada.
