# What is near is offered in Spanish, never taken; what was not understood is pointed at.
@after es_mist

Ana: mrema 3 limas
  Leído como: merma 3 limas
  Aún no se ha anotado nada. Toca si es
  correcto.
  [merma 3 limas]
Ana taps [merma 3 limas]
  Anotado: 3 limas.
  Sin precio para lima: no está en el coste.
  ¿Por qué? Basta un toque.
  Nuevo aquí: lima.
  [Deshacer] [Más merma]
  [Precio de lima]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: merma 6 narajnas con moho
  narajnas: ¿naranjas, o una fruta nueva?
  [naranjas]
  [Fruta nueva: narajna]
  [Cancelar]
Ana: merma 6 naranjas con mojo
  No conozco el motivo “con mojo”. ¿Querías
  decir:
  No se anota nada hasta que toques.
  [con moho]
  [otro]
Ana: escala bruma de pomlo x2
  No hay fórmula con el nombre “bruma de pomlo”.
  ¿Querías decir:
  [Bruma de pomelo]
Ana taps [Bruma de pomelo]
  Bruma de pomelo: x 2
    aceite de pomelo   24 ml
    propilenglicol     44 ml
    alcohol neutro    124 ml
  Rinde 192 ml al 62 % vol
  Alcanza para 640 a 1.400 cócteles
  Exacto con: probeta de 50 ml, probeta de 250
  ml.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
  [Anotar este lote]
  [En gramos] [Coste]
  [¿Quedará claro?] [Otro alcohol]
  [Otro tamaño] [Todas las precauciones]
Ana: escala bruma de pomelo a ocho
  Entendí “bruma de pomelo a ocho”. ¿En ml, g u
  oz?
  [escala bruma de pomelo a ocho ml]
Ana: lote bruma de pomelo x1
  Lote 1: Bruma de pomelo, 96 ml
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
Ana: lote 1 está claro
  Leído como: revisa lote 1 está claro
  Aún no se ha anotado nada. Toca si es
  correcto.
  [revisa lote 1 está claro]
Ana: naranjas 0,65 cada una
  Leído como: precio naranjas 0,65 cada una
  Aún no se ha anotado nada. Toca si es
  correcto.
  [precio naranjas 0,65 cada una]
Ana: revisa 7 claro
  En este bar no hay lote 7.
Ana: precio naranjas
  naranja: 0,60 € cada una
  25 nov 2026: 0,60 € cada una
  5 garnish cada una: 0,120 € por garnish antes
  de la merma
  Un precio nuevo: precio naranja 0,60 cada una
Ana: merma 3 limas\
semana
  Anotado: 3 limas.
  Sin precio para lima: no está en el coste.
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [Precio de lima]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
  --
  Merma: aún sin precios
  lun, 23 nov al dom, 29 nov, aún sin terminar
    lima  6  sin precio
    sin motivo  6  sin precio
  Sin precio, así que no cuenta: lima.
  Sin nada anotado con qué comparar: lun, 16 nov
  a mié, 18 nov.
  [Más] [Imagen]
  [Semana pasada] [Anotar merma]
Ana: merma 3 limas\
revisa 7 claro
  La línea 2, “revisa 7 claro”, se para aquí, y
  no se ha anotado nada del mensaje.
  En este bar no hay lote 7.
Ana: hasta luego
  Para servirte.
