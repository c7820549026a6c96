# Antes de decidir, en una línea; y la página, que aún no tiene semanas.
@after es_opening

Ana: cambiar a spray naranja: 0,50; 5; 300; 20
  Dinero: de 13,00 € a 27,00 € menos por semana,
  a ojo
  La fruta fresca (naranja) cuesta ahora 40,00 €
  por semana; un spray, de 13,00 € a 27,00 € más
  o menos.
  Tiempo, aparte: de 30 a 70 min menos por
  semana.
  Nadie lo sabe aún, y es lo que más importa: lo
  que cuesta el spray (lo mueve 20,00 €) y
  cócteles por semana (lo mueve 6,00 €).
  Para ver una bajada 8 de cada 10 veces, junto
  a otra fruta, anota este tiempo antes y otro
  tanto después:
    30 % menos
      192 noches  28 semanas
    50 % menos
      58 noches  9 semanas
    70 % menos
      25 noches  4 semanas
  Supuse que los recuentos varían 2 veces más
  que por azar: práctica común, sin fuente.
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
