# Todos los ajustes en cuatro páginas, cambiados ahí mismo con toques.
@after es_opening

Ana: ajustes
  La Gaviota
  hora de cierre: 5:00
  aviso de cierre: 4:30
  zona horaria: Europe/Madrid
  unidades: ml y gramos
  moneda: EUR
  normas: Unión Europea
  idioma: Español
  Todos están en estas páginas. O escribe:
  ajustes moneda EUR
  [Horas y avisos]
  [Medidas]
  [Dinero y trabajo]
  [El bar, etiquetas, merma]
Ana taps [Horas y avisos]
  (edited)
  Horas y avisos
  hora de cierre: 5:00
  días de servicio: todos los días
  turno de noche: desde las 22:00
  aviso de cierre: 4:30
  mensaje de la mañana: no
  horas de silencio: 5:00 - 11:00
  aviso de desecho: 3 días antes
  zona horaria: Europe/Madrid
  [hora de cierre] [días de servicio]
  [turno de noche] [aviso de cierre]
  [aviso de cierre: no] [mensaje de la mañana]
  [horas de silencio] [aviso de desecho]
  [zona horaria]
  [Todos los ajustes]
Ana taps [aviso de cierre: no]
  (edited)
  Aviso de cierre: no
  hora de cierre: 5:00
  días de servicio: todos los días
  turno de noche: desde las 22:00
  aviso de cierre: no
  mensaje de la mañana: no
  horas de silencio: 5:00 - 11:00
  aviso de desecho: 3 días antes
  zona horaria: Europe/Madrid
  [hora de cierre] [días de servicio]
  [turno de noche] [aviso de cierre: sí]
  [mensaje de la mañana] [horas de silencio]
  [aviso de desecho] [zona horaria]
  [Todos los ajustes] [Deshacer]
Ana taps [horas de silencio]
  (edited)
  ¿Qué ponemos en “horas de silencio”?
  Ahora: 5:00 - 11:00
  [5:00 - 11:00] [4:00 - 12:00]
  [ninguna]
  [Atrás] [Cancelar]
Ana taps [ninguna]
  (edited)
  Horas de silencio: ninguna
  hora de cierre: 5:00
  días de servicio: todos los días
  turno de noche: desde las 22:00
  aviso de cierre: no
  mensaje de la mañana: no
  horas de silencio: ninguna
  aviso de desecho: 3 días antes
  zona horaria: Europe/Madrid
  [hora de cierre] [días de servicio]
  [turno de noche] [aviso de cierre: sí]
  [mensaje de la mañana] [horas de silencio]
  [aviso de desecho] [zona horaria]
  [Todos los ajustes] [Deshacer]
Ana taps [Deshacer]
  Deshecho: ajustes: horas de silencio
  Horas de silencio: 5:00 - 11:00
  [Restaurar]
Ana: ajustes
  La Gaviota
  hora de cierre: 5:00
  aviso de cierre: no
  zona horaria: Europe/Madrid
  unidades: ml y gramos
  moneda: EUR
  normas: Unión Europea
  idioma: Español
  Todos están en estas páginas. O escribe:
  ajustes moneda EUR
  [Horas y avisos]
  [Medidas]
  [Dinero y trabajo]
  [El bar, etiquetas, merma]
Ana taps [Medidas]
  (edited)
  Medidas
  unidades: ml y gramos
  onzas: preguntar cada vez
  cucharas y tazas: preguntar cada vez
  temperatura: 20 °C
  almacén más frío: 15 °C
  ml por pulsación: 0,067 a 0,1 ml
  pérdida al embotellar: 0 %
  medidas: las de siempre
  golpe: 0,8 ml, lo habitual
  gota: 0,05 ml, lo habitual
  cuchara de bar: 5 ml, lo habitual
  chorrito: sin fijar
  jigger: 44,36 ml, lo habitual
  [unidades] [onzas]
  [cucharas y tazas] [temperatura]
  [almacén más frío] [ml por pulsación]
  [pérdida al embotellar] [medidas]
  [golpe] [gota]
  [cuchara de bar] [chorrito]
  [jigger]
  [Todos los ajustes]
Ana taps [golpe]
  (edited)
  ¿Qué ponemos en “golpe”?
  Ahora: 0,8 ml, lo habitual
  [normal] [0.6 ml]
  [0.8 ml] [1 ml]
  [Atrás] [Cancelar]
Ana taps [Cancelar]
  (edited)
  Cancelado. No se ha anotado nada.
Ana: ajustes
  La Gaviota
  hora de cierre: 5:00
  aviso de cierre: no
  zona horaria: Europe/Madrid
  unidades: ml y gramos
  moneda: EUR
  normas: Unión Europea
  idioma: Español
  Todos están en estas páginas. O escribe:
  ajustes moneda EUR
  [Horas y avisos]
  [Medidas]
  [Dinero y trabajo]
  [El bar, etiquetas, merma]
Ana taps [El bar, etiquetas, merma]
  (edited)
  El bar, etiquetas, merma
  nombre: La Gaviota
  idioma: Español
  normas: Unión Europea
  papel de etiquetas: A4, 14 etiquetas de 99,1 x
  38,1 mm
  imágenes: claro
  imagen semanal: con la semana
  motivos de merma: con moho, reseca, pelada sin
  usar, cortada de más, dañada en la entrega,
  otro
  fruta pelada: en frío, sin tapar: 24 h
  [nombre] [idioma]
  [normas] [papel de etiquetas]
  [imágenes: oscuro] [imagen semanal]
  [motivos de merma] [fruta pelada]
  [Todos los ajustes]
Ana taps [imágenes: oscuro]
  (edited)
  Imágenes: oscuro
  nombre: La Gaviota
  idioma: Español
  normas: Unión Europea
  papel de etiquetas: A4, 14 etiquetas de 99,1 x
  38,1 mm
  imágenes: oscuro
  imagen semanal: con la semana
  motivos de merma: con moho, reseca, pelada sin
  usar, cortada de más, dañada en la entrega,
  otro
  fruta pelada: en frío, sin tapar: 24 h
  [nombre] [idioma]
  [normas] [papel de etiquetas]
  [imágenes: claro] [imagen semanal]
  [motivos de merma] [fruta pelada]
  [Todos los ajustes] [Deshacer]
Ana: cambia la moneda a USD
  Moneda: USD
  Los precios y la merma de antes conservan sus
  números: no se convierten.
  [Dinero y trabajo]
  [Todos los ajustes] [Deshacer]
