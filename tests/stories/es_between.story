# In Spanish an ingredient often begins with the word for a kind: zumo de lima, sirope de agave.
@after es_opening

Ana: nueva fórmula
  ¿Cómo se llama?
  [Cancelar]
Ana: Cordial de lima
  Escribe los ingredientes, uno por línea:
  aceite de lima 10 ml
  [Atrás] [Cancelar]
Ana: zumo de lima 1/2 l
  ¿Más ingredientes? Toca Listo cuando esté
  completa.
  · zumo de lima (nuevo) 0,5 l
  [Listo] [Atrás] [Cancelar]
Ana: merma 3 limas con moho
  Anotado: 3 limas, con moho.
  Sin precio para lima: no está en el coste.
  Nuevo aquí: lima.
  [Deshacer] [Más merma]
  [Precio de lima]
  --
  ¿Más ingredientes? Toca Listo cuando esté
  completa.
  · zumo de lima (nuevo) 0,5 l
  [Listo] [Atrás] [Cancelar]
Ana: sirope de agabe 20 ml
  ¿Más ingredientes? Toca Listo cuando esté
  completa.
  · zumo de lima (nuevo) 0,5 l
  · sirope de agabe (nuevo) 20 ml
  [Listo] [Atrás] [Cancelar]
Ana: deshacer
  ¿Más ingredientes? Toca Listo cuando esté
  completa.
  · zumo de lima (nuevo) 0,5 l
  [Listo] [Atrás] [Cancelar]
Ana: sirope de agave 20 ml
  ¿Más ingredientes? Toca Listo cuando esté
  completa.
  · zumo de lima (nuevo) 0,5 l
  · sirope de agave (nuevo) 20 ml
  [Listo] [Atrás] [Cancelar]
Ana: jarabe 10 ml
  ¿Más ingredientes? Toca Listo cuando esté
  completa.
  · zumo de lima (nuevo) 0,5 l
  · sirope de agave (nuevo) 20 ml
  · jarabe (nuevo) 10 ml
  [Listo] [Atrás] [Cancelar]
Ana: ya está
  ¿Cuánto reposa antes de usarse?
  [24 horas] [nada]
  [48 horas]
  [Atrás] [Cancelar]
Ana: zumo
  No sé bien qué quieres. ¿Es algo de esto?
  Por ejemplo: merma 6 limas con moho
  [Lo que dio la fruta en zumo]
  [Lo que hay]
  --
  ¿Cuánto reposa antes de usarse?
  [24 horas] [nada]
  [48 horas]
  [Atrás] [Cancelar]
Ana: cancela
  Cancelado. No se ha anotado nada.
Ana: nueva fórmula Cordial de lima: zumo de lima 500 ml, azúcar 500 g, cordial
  Cordial de lima está en el recetario.
  Cordial de lima: cordial, versión 1
    zumo de lima  500 ml
    azúcar         500 g
  Rinde 815 ml
  Reposa 24 horas, desechar tras 21 días
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Precaución: Lava la fruta cuya piel se usa, y
  elige la que no está tratada: la cera y los
  tratamientos quedan en la piel.
  [Escalar] [Coste] [Hacer]
  [Cambiar] [Más]
  [Deshacer]
# What begins like a command and answers no question.
Ana: merma limas
  limas: ¿cuánto?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Otro número]
  [Atrás] [Cancelar]
Ana: boda el sábado 120 personas, 2 cócteles cada una, cordial de lima
  sáb, 28 nov: 120 invitados, unas 240 copas
    Cordial de
    lima          500 ml  1 x 500 ml
  Con un margen del 20 %: alcanza nueve veces de
  cada diez.
  Hazlo a más tardar el mié, 25 nov, con tiempo
  para el reposo y un segundo intento: Cordial
  de lima
  2 cosas por comprar antes del mié, 25 nov
  Sin precio, fuera de la suma: zumo de lima,
  azúcar
  Sin terminar y descartado: merma limas
  <picture packing-2026-11-28.png>
  <file packing-2026-11-28.pdf>
  [Hacer Cordial de lima]
  [Cambiar] [Avisos] [Deshacer]
Ana: qué llevo
  sáb, 28 nov: 120 invitados, unas 240 copas
    Cordial de
    lima          500 ml  1 x 500 ml
  Con un margen del 20 %: alcanza nueve veces de
  cada diez.
  Hazlo a más tardar el mié, 25 nov, con tiempo
  para el reposo y un segundo intento: Cordial
  de lima
  2 cosas por comprar antes del mié, 25 nov
  Sin precio, fuera de la suma: zumo de lima,
  azúcar
  <picture packing-2026-11-28.png>
  <file packing-2026-11-28.pdf>
  [Hacer Cordial de lima]
  [Cambiar] [Avisos]
Ana: cancelar
  No hay nada a medias.
Ana: pon un trago en la carta: gimlet, 2 rociadas de cordial de lima, 90 ml
  Leído como: servir gimlet, 2 rociadas de
  cordial de lima, 90 ml
  Aún no se ha anotado nada. Toca si es
  correcto.
  [servir gimlet, 2 rociadas de cordial de lima, 90 ml]
