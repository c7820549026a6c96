# Dicho deprisa: palabras de barra.
@after es_mist

Ana: la semana pasada
  Sin merma anotada
  lun, 16 nov a dom, 22 nov
  Sin nada anotado con qué comparar: lun, 9 nov
  a dom, 15 nov.
  [Anotar merma]
Ana: ¿qué hay listo?
  No hay lotes en reposo ni en uso.
  Haz uno con una fórmula: lote Bruma de pomelo
  a 400 ml
  [Hacer un lote] [Fórmulas]
Ana: precio naranjas 55 céntimos
  naranja: 0,55 € cada una
  8,3 % menos que antes.
  5 garnish cada una: 0,110 € por garnish antes
  de la merma
  [Deshacer] [Otro precio]
Ana: precio limas 3 por 1,20 €
  lima: 1,20 € por 3 piezas
  Nuevo aquí: lima.
  [Deshacer] [Otro precio]
Ana: tira 3 limas pochas
  Anotado: 3 limas, con moho, 1,20 €.
  mié, 25 nov hasta ahora: 1,20 €
  [Deshacer] [Más merma]
Ana: media caja de naranjas
  No sé bien qué quieres. ¿Es algo de esto?
  Por ejemplo: merma 6 limas con moho
  [compra 0,5 caja naranjas]
  [merma 0,5 caja naranjas]
  [precio naranjas]
Ana: merma 2 cajas de naranjas
  ¿Cuánto trae cada caja de naranjas? Por
  ejemplo: 80, o 5 kg
  [Atrás] [Cancelar]
Ana: cancelar
  Cancelado. No se ha anotado nada.
Ana: bar silencio 2-9
  Horas de silencio: 2:00 - 9:00
  [Horas y avisos]
  [Todos los ajustes] [Deshacer]
Ana: pomelo 6x50
  Leído como: escala Bruma de pomelo 6x50 ml
  Bruma de pomelo: 6 x 50 ml
    aceite de pomelo  37,5 ml
    propilenglicol      69 ml
    alcohol neutro     194 ml
  Rinde 300,5 ml al 62 % vol
  Alcanza para 1.000 a 2.200 cócteles
  Llena 6 x 50 ml, sobran 0,5 ml
  Redondeado a probeta de 50 ml, probeta de 100
  ml, probeta de 250 ml: la proporción se desvía
  0,4 % como mucho.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
  [Anotar este lote]
  [En gramos] [Coste]
  [¿Quedará claro?] [Otro alcohol]
  [Otro tamaño] [Todas las precauciones]
# Lo que apaga un ajuste se dice igual en todos.
Ana: bar precio del frasco 1,20
  Precio del frasco: 1,20 €
  [Dinero y trabajo]
  [Todos los ajustes] [Deshacer]
Ana: bar precio del frasco no
  Precio del frasco: sin fijar
  [Dinero y trabajo]
  [Todos los ajustes] [Deshacer]
Ana: bar aviso de cierre no
  Aviso de cierre: no
  [Horas y avisos]
  [Todos los ajustes] [Deshacer]
