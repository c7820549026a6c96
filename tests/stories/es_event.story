# Un evento, en español.
@after es_mist

Ana: evento 300 invitados 5 dic, 2 copas cada uno, bruma de pomelo
  sáb, 5 dic: 300 invitados, unas 600 copas
    Bruma de
    pomelo         200 ml  4 x 50 ml
  Con un margen del 25 %: alcanza nueve veces de
  cada diez.
  Hazlo antes del mié, 2 dic, con tiempo para el
  reposo y un segundo intento: Bruma de pomelo
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
Ana: volvió 1 120 ml bruma de pomelo
  Ese evento es el sáb, 5 dic. Anota después lo
  que volvió.
