# Días y horas como se dicen, quién cierra, y avisos y notas por lo que son.
@after es_opening

Ana: recuérdame pasado mañana al mediodía llamar
  Te aviso vie, 27 nov 12:00: llamar
  [Otra hora] [Deshacer]
Ana: recuérdame mañana a las ocho y media pedir hielo
  Te aviso jue, 26 nov 8:30: pedir hielo
  [jue, 26 nov 20:30]
  [Otra hora] [Deshacer]
Ana: recuérdame el jueves de la próxima semana a las 16:00 pagar
  Te aviso jue, 3 dic 16:00: pagar
  [Otra hora] [Deshacer]
Ana: recuérdame mañana a las 9 abrir
  Te aviso jue, 26 nov 9:00: abrir
  [jue, 26 nov 21:00]
  [Otra hora] [Deshacer]
Ana: avísame todos los lunes a las 10 contar
  Te aviso cada lun 10:00: contar
  [Otra hora] [Deshacer]
Ana: recuérdame mañana a las 9 de la noche cerrar
  Te aviso jue, 26 nov 21:00: cerrar
  [Otra hora] [Deshacer]
Ana: hoy cierro yo
  Ana cierra esta noche.
  Al cierre pregunto qué se tiró.
  [Hoy] [Deshacer]
Ana: Marta cierra hoy
  Leído como: cierra Marta
  Aún no se ha anotado nada. Toca si es
  correcto.
  [cierra Marta]
Ana: quién cierra hoy
  Ana cierra esta noche.
  [Hoy]
Ana: cancela el recordatorio del lunes
  cada lun 10:00: contar
  Para Ana.
  [Otra hora] [Pararlo] [Todos los avisos]
Ana: quita el aviso de pedir
  jue, 26 nov 8:30: pedir hielo
  Para Ana.
  [Otra hora] [Pararlo] [Todos los avisos]
Ana: nota la máquina de hielo suena
  Anotado para mié, 25 nov: la máquina de hielo
  suena
  Sale en «hoy» hasta que alguien la marque.
  [Hoy] [Deshacer]
Ana: la nota del hielo ya está
  ¿Ya está? Entonces márcala.
  nota para mié, 25 nov: la máquina de hielo
  suena
  [✓ la máquina de hielo suena]
  [Dejar una nota]
Ana: notas
  1 nota abierta
  nota para mié, 25 nov: la máquina de hielo
  suena
  [✓ la máquina de hielo suena]
  [Dejar una nota]
Ana: perdón, comprar pajitas
  Leído como: corrige comprar pajitas
  Aún no se ha anotado nada. Toca si es
  correcto.
  [corrige comprar pajitas]
Ana: se acabó el turno
  Cierre de La Gaviota, mié, 25 nov: ¿qué se ha
  tirado?
  Ana cierra esta noche.
  [Anotar merma] [Nada esta noche]
  [Dejar una nota] [Hoy]
Ana: cancela el evento del 12 de diciembre
  No hay ningún evento el sáb, 12 dic.
  [Eventos]
Ana: mañana a las 9 recuérdame pedir hielo
  Te aviso jue, 26 nov 9:00: pedir hielo
  [jue, 26 nov 21:00]
  [Otra hora] [Deshacer]
Ana: recuérdame la semana que viene pagar
  Te aviso lun, 30 nov 16:00: pagar
  [Otra hora] [Deshacer]
Ana: recuérdame el día 5 pagar hielo
  Te aviso sáb, 5 dic 16:00: pagar hielo
  [Otra hora] [Deshacer]
Ana: mueve el aviso de contar a las 11
  cada lun 10:00: contar
  Para Ana.
  [Otra hora] [Pararlo] [Todos los avisos]
Ana: marca la nota del hielo como hecha
  ¿Ya está? Entonces márcala.
  nota para mié, 25 nov: la máquina de hielo
  suena
  [✓ la máquina de hielo suena]
  [Dejar una nota]
Ana: recuérdame dentro de una hora mirar el hielo
  Te aviso mié, 25 nov 20:00: mirar el hielo
  [Otra hora] [Deshacer]
Ana: cancela ese aviso
  mié, 25 nov 20:00: mirar el hielo
  Para Ana.
  [Otra hora] [Pararlo] [Todos los avisos]
