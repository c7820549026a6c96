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
  [Ácido para igualar un zumo con otro]
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
