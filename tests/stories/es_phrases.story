# Dicho como en la barra.
@after es_mist

Ana: precio limas 0,30 cada una
  lima: 0,30 € cada una
  Nuevo aquí: lima.
  [Deshacer] [Otro precio]
Ana: lima precio
  lima: 0,30 € cada una
  25 nov 2026: 0,30 € cada una
  Un precio nuevo: precio lima 0,30 cada una
Ana: ¿a cuánto están las limas?
  lima: 0,30 € cada una
  25 nov 2026: 0,30 € cada una
  Un precio nuevo: precio lima 0,30 cada una
Ana: ¿cuánto aceite para 600 copas?
  Bruma de pomelo: 600 cócteles
    aceite de pomelo  22,5 ml
    propilenglicol    41,5 ml
    alcohol neutro     116 ml
  Rinde 180 ml al 61,9 % vol
  Alcanza para 600 a 1.300 cócteles
  Redondeado a probeta de 50 ml, probeta de 250
  ml: la proporción se desvía 0,8 % como mucho.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
  [Anotar este lote]
  [En gramos] [Coste]
  [¿Quedará claro?] [Otro alcohol]
  [Otro tamaño] [Todas las precauciones]
Ana: cancelar
  No hay nada a medias.
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
Ana: ¿está listo el lote 1?
  Lote 1: Bruma de pomelo, en reposo
    aceite de pomelo      50 ml
    propilenglicol        92 ml
    alcohol neutro 96 %  260 ml
  402 ml, hecho mié, 25 nov 19:00 por Ana,
  versión 1
  62,1 % vol
  Reposa hasta jue, 26 nov 19:00, quedan 24
  horas
  Desechar después del 24 may 2027, quedan 180
  días (el plazo usual de su tipo)
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, propilenglicol
  [Claro] [Turbio] [Separado]
  [Abrirlo]
  [Desechar] [Etiqueta] [Lote del proveedor]
Ana: cambia la moneda a USD
  Moneda: USD
  Los precios y la merma de antes conservan sus
  números: no se convierten.
  [Dinero y trabajo]
  [Todos los ajustes] [Deshacer]
Ana: merma 2 pomelos
  Anotado: 2 pomelos, 1,80 US$.
  mié, 25 nov hasta ahora: 1,80 US$
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: gracias
  Para servirte.
