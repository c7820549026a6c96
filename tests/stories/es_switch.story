# Antes de decidir, en una línea; y la página, que aún no tiene semanas.
@after es_opening

Ana: antes de decidir
  ¿Qué fruta dejarías de cortar?
  [naranja] [limón]
  [lima] [pomelo]
  [Cancelar]
Ana taps [limón]
  (edited)
  ¿Cuánto cuesta cada pieza (limón)?
  [Atrás] [Cancelar]
Ana: 0,30
  ¿Cuántos garnish cortas de cada una?
  [3] [4] [5]
  [6] [8] [10]
  [Otro número]
  [Atrás] [Cancelar]
Ana taps [6]
  (edited)
  ¿Cuántos cócteles por semana la llevan?
  [50] [100] [200]
  [300] [500] [800]
  [Otro número]
  [Atrás] [Cancelar]
Ana taps [200]
  (edited)
  ¿Cuántas piezas de limones tiras por semana?
  [0] [5] [10]
  [20] [40] [80]
  [Otro número]
  [Atrás] [Cancelar]
Ana taps [0]
  (edited)
  Dinero: de 5,71 € a 9,49 € menos por semana, a
  ojo
  La fruta fresca (limón) cuesta ahora 10,00 €
  por semana; un spray, de 0,97 € a 4,16 € más o
  menos.
  Supuse que el spray de un cóctel cuesta del 5
  al 50 % de un garnish cortado: a ojo, sin
  fuente.
  Tiempo, aparte: de 10 a 40 min menos por
  semana.
  Nadie lo sabe aún, y es lo que más importa: lo
  que cuesta el spray (lo mueve 4,50 €) y
  cócteles por semana (lo mueve 3,33 €).
  Si no se tira nada, la merma no puede bajar:
  solo se verá en las entregas.
  Déjalo si el spray cuesta más de 0,050 € por
  cóctel, si en la cata se nota y molesta, o si
  no compras menos fruta.
  [Anotar merma] [Nueva fórmula]

Ana: cambiar a spray naranja: 0,50; 5; 300; 20
  Dinero: de 26 € a 39 € menos por semana, a ojo
  La fruta fresca (naranja) cuesta ahora 40,00 €
  por semana; un spray, de 3 € a 12 € más o
  menos.
  Supuse que el spray de un cóctel cuesta del 5
  al 50 % de un garnish cortado: a ojo, sin
  fuente.
  Tiempo, aparte: de 30 a 70 min menos por
  semana.
  Nadie lo sabe aún, y es lo que más importa: lo
  que cuesta el spray (lo mueve 14 €) y cócteles
  por semana (lo mueve 10 €).
  Para ver una bajada 8 de cada 10 veces, junto
  a otra fruta, anota este tiempo antes y otro
  tanto después:
    30 % menos
      192 noches  28 semanas
    50 % menos
      58 noches  9 semanas
    70 % menos
      25 noches  4 semanas
  Supuse que los recuentos varían 2 veces lo que
  por puro azar: práctica común, sin fuente.
  Déjalo si el spray cuesta más de 0,133 € por
  cóctel, si en la cata se nota y molesta, o si
  esas noches no muestran bajada.
  Nuevo aquí: naranja.
  [Anotar merma] [Nueva fórmula]
Ana: página del dueño
  Aún no hay página: hace falta una semana
  completa antes del spray y otra después.
  Anota la merma cada noche y di cuándo
  cambiaste: spray naranja desde 2026-10-20
  [Antes de decidir] [Semana]
