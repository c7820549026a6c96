# Waste in Spanish: in one line, in several, by taps, with reasons in any gender.
@after es_mist

@clock 2026-11-26 01:20 Europe/Madrid
Ana: merma 6 naranjas con moho
  Anotado: 6 naranjas, con moho, 3,60 €.
  mié, 25 nov hasta ahora: 3,60 €
  [Deshacer] [Más merma]
Ana: merma 3 limones podridos y 2 limas resecas
  Anotadas 2 líneas
    3 limones  con moho  sin precio
    2 limas      reseca  sin precio
  Sin precio para lima, limón: no está en el
  coste.
  mié, 25 nov hasta ahora: 3,60 €
  Nuevo aquí: limón, lima.
  [Deshacer] [Más merma]
  [Precio de lima]
Ana: tiré media docena de limas
  Anotado: 6 limas.
  Sin precio para lima: no está en el coste.
  mié, 25 nov hasta ahora: 3,60 €
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [Precio de lima]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana taps [cortada de más]
  (edited)
  6 limas: cortada de más.
  [Deshacer] [Más merma]
Ana: merma 1,2 kg de naranjas
  Anotado: 1,2 kg naranjas, 4,01 €.
  mié, 25 nov hasta ahora: 7,61 €
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: 6 naranjas mohosas, 1 pomelo
  Anotadas 2 líneas
    6 naranjas  con moho  3,60 €
    1 pomelo              0,90 €
  mié, 25 nov hasta ahora: 12,11 €
  ¿Y 1 pomelo, por qué? Basta un toque.
  [Deshacer] [Más merma]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: merma
  ¿Qué se ha tirado?
  [lima] [naranja]
  [pomelo] [limón]
  [Cancelar]
Ana taps [naranja]
  (edited)
  naranjas: ¿cuánto?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Otro número]
  [Atrás] [Cancelar]
Ana taps [3]
  (edited)
  ¿Por qué?
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
  [Atrás] [Cancelar]
Ana taps [con moho]
  (edited)
  Anotado: 3 naranjas, con moho, 1,80 €.
  mié, 25 nov hasta ahora: 13,91 €
  [Deshacer] [Más merma]
Ana: deshacer
  Deshecho: 3 naranjas, con moho
  [Restaurar]
Ana: semana
  Merma: 12,11 €
  lun, 23 nov al dom, 29 nov, aún sin terminar
    naranja  12 + 1,2 kg     11,21 €
    pomelo             1      0,90 €
    lima               8  sin precio
    limón              3  sin precio
    con moho
      15  7,20 €
    sin motivo
      1 + 1,2 kg  4,91 €
    2 más
      8  sin precio
  Sin precio, así que no cuenta: lima, limón.
  Sin nada anotado con qué comparar: lun, 16 nov
  a mié, 18 nov.
  <picture waste-2026-W48.png>
  [Más] [Imagen]
  [Semana pasada] [Anotar merma]
Ana taps [Más]
  Merma: 12,11 €
  lun, 23 nov al dom, 29 nov, aún sin terminar
    con moho
      15  7,20 €
    sin motivo
      1 + 1,2 kg  4,91 €
    reseca
      2  sin precio
    cortada de más
      6  sin precio
    turno de
    tarde                 0   0,00 €
    turno de
    noche       24 + 1,2 kg  12,11 €
  Anota lo que llega para ver la parte que se
  tira: compra 80 naranjas 34,00
  Para comparar con antes del spray: spray
  pomelo desde 2026-10-20
  [Imagen]
Ana: semana pasada
  Sin merma anotada
  lun, 16 nov a dom, 22 nov
  Sin nada anotado con qué comparar: lun, 9 nov
  a dom, 15 nov.
  [Anotar merma]
