# Antes de decidir, en una línea; y la página, que aún no tiene semanas.
@after es_opening

Ana: cambiar a spray naranja: 0,50; 5; 300; 20
  Dinero: unos 25,00 € a 32,00 € ahorrados por
  semana
  La fruta fresca (naranja) cuesta ahora 40,00 €
  por semana; un spray, por lo común, de un
  cuarto a un tercio.
  Tiempo, aparte: unos 30 a 70 min por semana,
  cortar menos mezclar.
  Nadie lo sabe aún, y es lo que más importa:
  cócteles por semana y fruta a la basura por
  semana.
  Para que se vea una bajada 8 de cada 10 veces,
  anota estas noches antes y otras tantas
  después:
    30 % menos  192 noches
    50 % menos   58 noches
    70 % menos   25 noches
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
