# Un evento servido de un lote que había: lo usado se descuenta del lote con un toque.
@after es_mist

Ana: lote bruma de pomelo a 8 x 50 ml
  Lote 1: Bruma de pomelo, 402 ml
  Reposa hasta jue, 26 nov 19:00. Te avisaré.
  Revísalo de nuevo el 25 dic 2026.
  Desechar después del 24 may 2027: el plazo
  usual de su tipo.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, propilenglicol
  [Ver el lote 1]
  [Lote del proveedor] [Deshacer]
Ana: embotellado 1 8 x 50 ml
  Lote 1, Bruma de pomelo, en botellas: 8 x 50
  ml.
  Ahora: 8 de 8 x 50 ml sin abrir, 2 ml sin
  embotellar.
  [8 etiquetas] [Abrir una]
  [Deshacer]
Ana: evento 300 invitados 5 dic, 2 copas cada uno, bruma de pomelo
  sáb, 5 dic: 300 invitados, unas 600 copas
    Bruma de
    pomelo         200 ml  4 x 50 ml
  Con un margen del 25 %: alcanza nueve veces de
  cada diez.
  Bruma de pomelo: 155 ml en el lote 1, sirve
  hasta el lun, 24 may 2027
  Nadie ha visto claro el lote 1 todavía:
  revísalo antes de llevarlo.
  No sé cuánto usa el bar hasta entonces de:
  Bruma de pomelo
  No hace falta hacer nada: alcanza con lo que
  hay.
  <picture packing-2026-12-05.png>
  <file packing-2026-12-05.pdf>
  [Cambiar] [Avisos] [Deshacer]
@clock 2026-12-06 10:00 Europe/Madrid
Ana: volvió 120 ml
  Anotado para sáb, 5 dic: lo que volvió.
  Bruma de pomelo: usados 80 ml de 200 ml, 0,13
  ml por copa; lo probable eran 125 ml.
  80 ml de Bruma de pomelo salieron de las
  existencias. Descuéntalos del lote:
  [80 ml del lote 1]
  [Ver el evento] [Deshacer]
Ana taps [80 ml del lote 1]
  (edited)
  Lote 1, Bruma de pomelo: 80 ml usados en el
  evento del sáb, 5 dic.
  Ahora: 6 de 8 x 50 ml sin abrir, 22 ml sin
  embotellar, 80 ml usados en eventos.
  [Ver el lote 1] [Deshacer]
Ana: deshacer
  Deshecho: 80 ml del lote 1 usados en el evento
  1
  [Restaurar]
Ana: gastado 1 80 ml para el evento 1
  Lote 1, Bruma de pomelo: 80 ml usados en el
  evento del sáb, 5 dic.
  Ahora: 6 de 8 x 50 ml sin abrir, 22 ml sin
  embotellar, 80 ml usados en eventos.
  [Ver el lote 1] [Deshacer]
Ana: gastado 1 20 ml
  Solo descuento parte de un lote después de un
  evento, cuando ya está anotado lo que volvió.
  [El lote 1 se acabó]
Ana: registro
  Registro de La Gaviota, lo último primero
  #11 dom, 6 dic 10:00, Ana: 80 ml del lote 1
  usados en el evento 1
  #10 dom, 6 dic 10:00, Ana: deshizo la n.º 9
  #9 dom, 6 dic 10:00, Ana: 80 ml del lote 1
  usados en el evento 1 (deshecha por #10)
  #8 dom, 6 dic 10:00, Ana: anotó lo que volvió
  del evento 1
  #7 mié, 25 nov 19:00, Ana: planeó un evento,
  300 invitados el sáb, 5 dic
  #6 mié, 25 nov 19:00, Ana: embotelló el lote
  1: 8 botellas, 0 ml de pérdida
  #5 mié, 25 nov 19:00, Ana: hizo el lote 1,
  Bruma de pomelo
  #4 mié, 25 nov 19:00, Ana: precio de naranja,
  0,60 € cada una
  #3 mié, 25 nov 19:00, Ana: precio de pomelo,
  0,90 € cada una
  #2 mié, 25 nov 19:00, Ana: precio de aceite de
  pomelo, 7,90 € por 10 ml
  [Deshacer #11] [Deshacer #8]
  [Anteriores]
