# Un evento, en español.
@after es_mist

Ana: evento 300 invitados 5 dic, 2 copas cada uno, bruma de pomelo
  sáb, 5 dic: 300 invitados, unas 600 copas
    Bruma de
    pomelo         200 ml  4 x 50 ml
  Con un margen del 25 %: alcanza nueve veces de
  cada diez.
  Hazlo a más tardar el mié, 2 dic, con tiempo
  para el reposo y un segundo intento: Bruma de
  pomelo
  3 cosas por comprar antes del lun, 30 nov,
  23,70 €
  Sin precio, fuera de la suma: propilenglicol,
  alcohol neutro
  <picture packing-2026-12-05.png>
  <file packing-2026-12-05.pdf>
  [Hacer Bruma de pomelo]
  [Cambiar] [Avisos] [Deshacer]
Ana: eventos
  Eventos
  1: sáb, 5 dic, 300 invitados: falta hacer 1
  [1: sáb, 5 dic, 300 invitados]
  [Planear un evento]
Ana: evento 300 -> 280 invitados
  sáb, 5 dic: 280 invitados, unas 560 copas
    Bruma de
    pomelo         150 ml  3 x 50 ml
  Con un margen del 25 %: alcanza nueve veces de
  cada diez.
  Hazlo a más tardar el mié, 2 dic, con tiempo
  para el reposo y un segundo intento: Bruma de
  pomelo
  3 cosas por comprar antes del lun, 30 nov,
  15,80 €
  Sin precio, fuera de la suma: propilenglicol,
  alcohol neutro
  <picture packing-2026-12-05.png>
  <file packing-2026-12-05.pdf>
  [Hacer Bruma de pomelo]
  [Cambiar] [Avisos] [Deshacer]
Ana: mueve el evento 1 al 6 dic
  dom, 6 dic: 280 invitados, unas 560 copas
    Bruma de
    pomelo         150 ml  3 x 50 ml
  Con un margen del 25 %: alcanza nueve veces de
  cada diez.
  Hazlo a más tardar el jue, 3 dic, con tiempo
  para el reposo y un segundo intento: Bruma de
  pomelo
  3 cosas por comprar antes del mar, 1 dic,
  15,80 €
  Sin precio, fuera de la suma: propilenglicol,
  alcohol neutro
  <picture packing-2026-12-06.png>
  <file packing-2026-12-06.pdf>
  [Hacer Bruma de pomelo]
  [Cambiar] [Avisos] [Deshacer]
Ana: deshacer
  Deshecho: el cambio del evento 1
  [Restaurar]
Ana: cancela el evento 1
  Cancelado: 1: sáb, 5 dic, 280 invitados
  Sus avisos quedan detenidos.
  [Eventos] [Deshacer]
Ana: deshacer
  Deshecho: la cancelación del evento del sáb, 5
  dic
  [Restaurar]
@clock 2026-12-02 10:00 Europe/Madrid
Ana: hoy
  mié, 2 dic: 2 cosas por hacer
  Hacer 150 ml Bruma de pomelo para el evento
  del sáb, 5 dic
  3 cosas por comprar antes del mié, 9 dic,
  15,80 €
  [Hacer Bruma de pomelo] [Lista de compras]
  [Avisos] [Dejar una nota]
Ana taps [Hacer Bruma de pomelo]
  Lote 1: Bruma de pomelo, 150,5 ml
  Reposa hasta jue, 3 dic 10:00. Te avisaré.
  Para el evento del sáb, 5 dic.
  Revísalo de nuevo el 1 ene 2027.
  Desechar después del 31 may 2027: el plazo
  usual de su tipo.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, propilenglicol
  [Ver el lote 1]
  [Lote del proveedor] [Deshacer]
@clock 2026-12-06 10:00 Europe/Madrid
Ana: hoy
  dom, 6 dic: 2 cosas por hacer
  Evento del sáb, 5 dic: ¿qué volvió?
  El lote 1, Bruma de pomelo, ya reposó: mira
  cómo está
  [Qué volvió] [Revisar 1]
  [Avisos] [Dejar una nota]
Ana taps [Qué volvió]
  (edited)
  ¿Cuánto volvió de Bruma de pomelo, de 3 x 50
  ml?
  [Se usó todo] [Volvió la mitad] [Volvió todo]
  [1 botella] [2 botellas]
  [Atrás] [Cancelar]
Ana taps [Volvió la mitad]
  (edited)
  Anotado para sáb, 5 dic: lo que volvió.
  Bruma de pomelo: usados 75 ml de 150 ml, 0,13
  ml por copa; lo probable eran 117 ml.
  [Ver el evento] [Deshacer]
Ana: semana
  Sin merma anotada
  lun, 30 nov al dom, 6 dic, aún sin terminar
  Sin nada anotado con qué comparar: lun, 23 nov
  a sáb, 28 nov.
  Aparte, el evento del sáb, 5 dic: 280
  invitados, usó Bruma de pomelo 75 ml
  [Semana pasada] [Anotar merma]
Ana: nos trajimos 2 botellas del evento
  Leído como: volvió 2 botellas
  Aún no se ha anotado nada. Toca si es
  correcto.
  [volvió 2 botellas]
Ana: evento 280 invitados 19 dic, 2 copas cada uno, bruma de pomelo
  sáb, 19 dic: 280 invitados, unas 560 copas
    Bruma de
    pomelo         100 ml  2 x 50 ml
  Con un margen del 24 %: alcanza nueve veces de
  cada diez.
  Bruma de pomelo: 93 ml, según lo que usó 1
  evento anterior. Solo por los disparos: 145
  ml.
  Bruma de pomelo: 75 ml en el lote 1, sirve
  hasta el lun, 31 may 2027
  Nadie ha visto claro el lote 1 todavía:
  revísalo antes de llevarlo.
  No sé cuánto usa el bar hasta entonces de:
  Bruma de pomelo
  Hazlo a más tardar el mié, 16 dic, con tiempo
  para el reposo y un segundo intento: Bruma de
  pomelo 1 x 50 ml
  3 cosas por comprar antes del lun, 14 dic,
  7,90 €
  Sin precio, fuera de la suma: propilenglicol,
  alcohol neutro
  <picture packing-2026-12-19.png>
  <file packing-2026-12-19.pdf>
  [Hacer Bruma de pomelo]
  [Cambiar] [Avisos] [Deshacer]
