# Prices and deliveries in Spanish as people say them.
@after es_opening

Ana: nueva Bruma de pomelo: aceite de pomelo 10 ml, alcohol 96% 90 ml
  Bruma de pomelo está en el recetario.
  Bruma de pomelo: bruma aromática, versión 1
    aceite de pomelo  10 ml
    alcohol 96 %      90 ml
  Rinde 100 ml a 86,4 % vol
  Reposa 24 horas, desechar tras 180 días
  2 a 3 pulsaciones por cóctel, 0,067 a 0,1 ml
  cada una
  Claridad: debería quedar claro, estimado
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, alcohol
  Lo mismo se vende en calidades que no son para
  alimentos: ¿este se vende como grado
  alimentario, con papeles del proveedor que lo
  digan?
  [Escalar] [Coste] [Hacer]
  [¿Quedará claro?] [Cambiar] [Más]
  [aceite de pomelo: grado alimentario] [No es seguro]
  [Deshacer]
Ana: precio aceite de pomelo 35 por 50 ml
  aceite de pomelo: 35,00 € por 50 ml
  [Deshacer] [Otro precio]
Ana: compré 2 botellas de aceite de pomelo de 10 ml por 19,80
  Comprado: 20 ml aceite de pomelo (2 paquetes
  de 10 ml), 19,80 €.
  Entendido: 9,90 € cada paquete.
  Precio desde ahora: 9,90 € por 10 ml.
  41,4 % más que antes.
  [19,80 € era por uno]
  [Deshacer] [Ha llegado más]
Ana: compré 2 botellas de aceite de pomelo de 10 ml por 9,90 cada una
  Comprado: 20 ml aceite de pomelo (2 paquetes
  de 10 ml), 19,80 €.
  Entendido: 9,90 € cada paquete.
  Precio desde ahora: 9,90 € por 10 ml.
  [9,90 € era por todo]
  [Deshacer] [Ha llegado más]
Ana: compré alcohol 1 l 18 euros
  Comprado: 1 l alcohol, 18,00 €.
  Precio desde ahora: 18,00 € por 1 l.
  [Deshacer] [Ha llegado más]
Ana: lote de bruma de pomelo, 100 ml ayer
  No puedo fechar un lote el 24 nov 2026: su
  reposo y su caducidad cuentan desde ahora.
  Anótalo como hecho hoy, o no lo anotes.
  [Hecho hoy]
Ana taps [Hecho hoy]
  Lote 1: Bruma de pomelo, 100 ml
  Reposa hasta jue, 26 nov 19:00. Te avisaré.
  Revísalo de nuevo el 25 dic 2026.
  Desechar después del 24 may 2027: el plazo
  usual de su tipo.
  Claridad: debería quedar claro, estimado
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, alcohol
  [Ver el lote 1]
  [Lote del proveedor] [Deshacer]
Ana: receta de la bruma de pomelo
  Bruma de pomelo: bruma aromática, versión 1
    aceite de pomelo  10 ml
    alcohol 96 %      90 ml
  Rinde 100 ml a 86,4 % vol
  Reposa 24 horas, desechar tras 180 días
  Claridad: debería quedar claro, estimado
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, alcohol
  [Escalar] [Coste] [Hacer]
  [¿Quedará claro?] [Cambiar] [Más]
  [aceite de pomelo: grado alimentario] [No es seguro]

Ana: escala bruma de pomelo a una botella de aceite de pomelo de 15 ml
  Bruma de pomelo: 150 ml
    aceite de pomelo   15 ml
    alcohol           136 ml
  Rinde 151 ml al 86,5 % vol
  Alcanza para 500 a 1.100 cócteles
  Redondeado a probeta de 50 ml, probeta de 250
  ml: la proporción se desvía 0,7 % como mucho.
  Claridad: debería quedar claro, estimado
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
  [Anotar este lote]
  [En gramos] [Coste]
  [¿Quedará claro?] [Otro alcohol]
  [Otro tamaño] [Todas las precauciones]
Ana: hice zumo de naranja: 1 litro de 12 naranjas
  Leído como: exprimidas 12 naranjas 1 litro
  Aún no se ha anotado nada. Toca si es
  correcto.
  [exprimidas 12 naranjas 1 litro]
