# Lo de una noche anterior se anota en ella, al precio de entonces, y la respuesta dice el día.
@after es_opening

Ana: precio naranjas 0,50 cada una
  naranja: 0,50 € cada una
  Nuevo aquí: naranja.
  [Deshacer] [Otro precio]
@clock 2026-11-26 18:00 Europe/Madrid
Ana: merma 3 naranjas ayer
  Anotado en mié, 25 nov: 3 naranjas, 1,50 €.
  mié, 25 nov hasta ahora: 1,50 €
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: merma 3 naranjas con moho anoche
  Anotado en mié, 25 nov: 3 naranjas, con moho,
  1,50 €.
  mié, 25 nov hasta ahora: 3,00 €
  [Deshacer] [Más merma]
Ana: 2 naranjas el martes
  Anotado en mar, 24 nov: 2 naranjas.
  Sin precio para naranja: no está en el coste.
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [Precio de naranja]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: merma 4 naranjas el 24 de noviembre, 2 limas
  2 líneas anotadas en mar, 24 nov
    4 naranjas    sin precio
    2 limas       sin precio
  Sin precio para lima, naranja: no está en el
  coste.
  Nuevo aquí: lima.
  [Deshacer] [Más merma]
  [Precio de lima]
Ana: merma 1 naranja hace dos días
  Anotado en mar, 24 nov: 1 naranja.
  Sin precio para naranja: no está en el coste.
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [Precio de naranja]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: merma 3 naranjas el 27 de noviembre
  vie, 27 nov aún no ha llegado.
Ana: merma 3 naranjas el 5/12
  ¿Qué día es 5/12?
  [vie, 5 dic 2025]
  [mar, 12 may]
Ana: compré 80 naranjas 34,00 ayer
  mié, 25 nov. Comprado: 80 naranjas, 34,00 €.
  Precio desde ahora: 34,00 € por 80 piezas.
  15 % menos que antes.
  [Deshacer] [Ha llegado más]
Ana: conté naranjas 24 anoche
  mié, 25 nov. Contado: 24 naranjas.
  Primer recuento. Con el próximo sabré cuánto
  has usado.
  [Deshacer] [Contar más]
Ana: pelado 4 naranjas ayer
  mié, 25 nov. Pelado: 4 naranjas, perdido desde
  jue, 26 nov 12:00.
  Unos 330 ml de zumo (250 ml a 410 ml;
  rendimiento publicado).
  Para igualar la acidez de la lima: 6,4 g de
  ácido cítrico + 4 g ácido málico.
  [Exprimidas] [Tiradas] [En un lote]
  [Deshacer] [Ácido para ello]
Ana: exprimido 4 naranjas 280 ml el martes pasado
  mar, 24 nov. Exprimido: 4 naranjas dieron 280
  ml, 70 ml cada una.
  Lo esperado: 250 ml a 410 ml (rendimiento
  publicado).
  Desde ahora cuento con 79 ml por naranja, con
  4 piezas tuyas.
  [Deshacer] [Ácido para ello]
Ana: semana
  Merma: 3,00 €
  lun, 23 nov al dom, 29 nov, aún sin terminar
    naranja  13      3,00 €
    lima      2  sin precio
    sin motivo  12  1,50 €
    con moho     3  1,50 €
  Sin precio, así que no cuenta: naranja (7 de
  13), lima.
  De lo comprado: naranja 16 %
  Sin nada anotado con qué comparar: lun, 16 nov
  a mié, 18 nov.
  <picture waste-2026-W48.png>
  [Más] [Imagen]
  [Semana pasada] [Anotar merma]
