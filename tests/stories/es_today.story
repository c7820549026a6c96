# Hoy, avisos propios y notas, en español.
@after es_mist

Ana: hoy
  Hoy no toca nada.
  Nadie ha dicho quién cierra esta noche.
  [Cierro yo]
  [Avisos] [Dejar una nota]
Ana: recuérdame mañana a las 16:00 pedir limas
  Te aviso jue, 26 nov 16:00: pedir limas
  [Otra hora] [Deshacer]
Ana: recuerda al equipo cada lunes a las 15:00 contar la fruta
  Aviso al equipo cada lun 15:00: contar la
  fruta
  [Otra hora] [Deshacer]
Ana: nota para mañana: el pulverizador dos gotea
  Anotado para jue, 26 nov: el pulverizador dos
  gotea
  Sale en «hoy» hasta que alguien la marque.
  [Hoy] [Deshacer]
Ana: avisos
  4 avisos previstos
  jue, 26 nov 4:30: qué se tiró esta noche
  nota para jue, 26 nov: el pulverizador dos
  gotea
  jue, 26 nov 16:00: pedir limas
  cada lun 15:00: contar la fruta
  Toca uno para cambiarlo o pararlo.
  [qué se tiró esta noche] [el pulverizador dos gotea]
  [pedir limas] [contar la fruta]
  [Añadir uno]
Ana taps [pedir limas]
  (edited)
  jue, 26 nov 16:00: pedir limas
  Para Ana.
  [Otra hora] [Pararlo] [Todos los avisos]
Ana taps [Pararlo]
  (edited)
  Parado: pedir limas
  [Todos los avisos] [Deshacer]
Ana: deshacer
  Deshecho: aviso parado: pedir limas
  [Restaurar]
@clock 2026-11-26 12:30 Europe/Madrid
Ana: hoy
  jue, 26 nov: 2 cosas por hacer
  Nota: el pulverizador dos gotea
  16:00: pedir limas
  [✓ el pulverizador dos gotea] [pedir limas]
  [Avisos] [Dejar una nota]
Ana taps [✓ el pulverizador dos gotea]
  (edited)
  Hecho: el pulverizador dos gotea
  jue, 26 nov: 1 cosa por hacer
  16:00: pedir limas
  [pedir limas]
  [Avisos] [Dejar una nota] [Deshacer]
# Cada semana, y un día en cifras.
Ana: recuerda a todos los lunes a las 3 contar la fruta
  Aviso al equipo cada lun 15:00: contar la
  fruta
  [Otra hora] [Deshacer]
Ana: recuérdame 3/4 pedir limas
  Te aviso sáb, 3 abr 2027 16:00: pedir limas
  [Otra hora] [Deshacer]
