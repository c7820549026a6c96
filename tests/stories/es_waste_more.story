# Merma de lo que no es fruta, en español.
@after es_mist

Ana: merma 200 ml zumo de lima
  zumo de lima es nuevo aquí. ¿Correcto?
  [Ingrediente nuevo: zumo de lima]
  [Cancelar]
Ana taps [Ingrediente nuevo: zumo de lima]
  (edited)
  Anotado: 200 ml zumo de lima.
  Sin precio para zumo de lima: no está en el
  coste.
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [Precio de zumo de lima]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: lote bruma de pomelo a 400 ml
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
Ana: merma 1 botella del lote 1
  Lote 1, Bruma de pomelo: 50 ml de pérdida.
  Ahora: 7 de 8 x 50 ml sin abrir, 2 ml sin
  embotellar, 50 ml perdidos.
  [Ver el lote 1] [Deshacer]
Ana: semana
  Merma: aún sin precios
  lun, 23 nov al dom, 29 nov, aún sin terminar
    zumo de lima  200 ml  sin precio
    sin motivo  200 ml  sin precio
  Además, de los lotes se perdieron: 50 ml
  Sin precio, así que no cuenta: zumo de lima.
  Sin nada anotado con qué comparar: lun, 16 nov
  a mié, 18 nov.
  [Más] [Imagen]
  [Semana pasada] [Anotar merma]
# Media caja es la mitad de lo que trae: por su precio o por lo que se conteste.
Ana: precio naranjas 88 para 30
  naranja: 30,00 € por 88 piezas
  43,2 % menos que antes.
  5 garnish cada una: 0,068 € por garnish antes
  de la merma
  [Deshacer] [Otro precio]
Ana: merma media caja de naranjas con moho
  Anotado: 44 naranjas, con moho, 15,00 €.
  Una caja son 88 naranjas.
  mié, 25 nov hasta ahora: 15,00 €
  [Deshacer] [Más merma]
Ana: media caja de limas con moho
  Leído como: merma 0,5 caja limas con moho
  Aún no se ha anotado nada. Toca si es
  correcto.
  [merma 0,5 caja limas con moho]
Ana taps [merma 0,5 caja limas con moho]
  (edited)
  ¿Cuánto trae cada caja de limas? Por ejemplo:
  80, o 5 kg
  [Atrás] [Cancelar]
Ana: 54
  Anotado: 27 limas, con moho.
  Sin precio para lima: no está en el coste.
  mié, 25 nov hasta ahora: 15,00 €
  [Deshacer] [Más merma]
  [Precio de lima]
Ana: deshacer
  Deshecho: 27 limas, con moho
  [Restaurar]
Ana: vuelve a ponerla
  Restaurado: 27 limas, con moho
  [Deshacer]
Ana: compré media caja de naranjas
  Comprado: 44 naranjas (0,5 paquetes de 88).
  [Deshacer] [Ha llegado más]
