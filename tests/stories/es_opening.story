# A bar opened from a phone set to Spanish.
@speaks Ana es

Ana: hola
  Llevo las preparaciones de un bar: cantidades,
  costes, lotes, avisos y merma de fruta.
  Abre un bar con empezar, o únete a uno con:
  unirme CÓDIGO
  [Abrir un bar] [Unirme con un código]
Ana: empezar
  ¿Cómo se llama tu bar?
  [Bar de Ana]
  [Cancelar]
Ana: La Gaviota
  ¿Con la hora de qué ciudad va? Toca una o
  escribe otra.
  [Madrid] [Mexico City]
  [Bogota] [Buenos Aires]
  [Atrás] [Cancelar]
Ana: Madrid
  ¿Qué normas de alimentos y bebidas rigen ahí?
  De ellas salen los límites y las precauciones.
  [Unión Europea] [Estados Unidos]
  [Reino Unido] [otro lugar]
  [Atrás] [Cancelar]
Ana taps [Unión Europea]
  (edited)
  ¿En qué moneda cuentas?
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
  ¿Cuándo ha acabado seguro una noche? Lo
  anotado antes cuenta para el día anterior.
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
  [Añadir una fórmula]
  [Poner un precio] [Anotar merma]
Ana: ayuda
  Di lo que quieres hacer, con o sin la barra:
  merma 6 naranjas con moho
  nueva fórmula: apunta lo primero que preparas
  precio naranjas 0,60 cada una, 5 adornos cada
  una
  semana: lo que se tiró y lo que costó
  ayuda merma: más sobre una cosa. ayuda todo:
  la lista entera.
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
