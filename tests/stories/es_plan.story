# El plan según lo dicho, y lo que no cuenta.
@after es_mist

Ana: plan
  Todavía no puedo planificar: no sé cuánto
  usas.
  Dilo: bar cócteles por semana 300. O cuenta
  una noche: cócteles 60 Bruma de pomelo
  [Lotes] [Fruta]
Ana: bar cócteles por semana 300
  Cócteles por semana: 300
  [Dinero y trabajo]
  [Todos los ajustes] [Deshacer]
Ana: plan
  Haz 120 ml de Bruma de pomelo hoy.
    Bruma de
    pomelo       mié, 25 nov  120 ml
  Se te acabará antes de que esté el siguiente:
  Bruma de pomelo
  Según lo que dijiste, aún sin contar nada:
  Bruma de pomelo
  [Bruma de pomelo]
  [Lista de compras] [Fruta]
Ana: cócteles 4000 bruma de pomelo
  ¿4.000 cócteles con Bruma de pomelo?
  [Sí, 4.000 cócteles con Bruma de pomelo]
  [Cambiar] [Cancelar]
Ana: sí
  mié, 25 nov: 4.000 cócteles con Bruma de
  pomelo.
  [Deshacer] [Por día de la semana] [Plan]
Ana: plan bruma de pomelo
  Haz 120 ml de Bruma de pomelo el mié, 25 nov.
  Lo que tienes dura hasta el mar, 24 nov. El
  nuevo está listo el jue, 26 nov; deséchalo
  después del 24 may 2027.
  Usarías unos 840 ml antes de que caduque (9 de
  cada 10).
  1 día sin él: reposa más de lo que duran las
  existencias.
  Usas unos 8,9 ml al día.
  Según lo que dijiste: 300 cócteles a la
  semana.
  mié, 25 nov, 4.000 cócteles: 93 veces lo que
  dijiste, no cuenta.
  [Cócteles por semana]
  [Hacerlo] [Lista de compras] [Plan]
