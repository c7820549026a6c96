# The first formula in Spanish, and amounts for it.
@after es_opening

Ana: nueva fórmula Bruma de pomelo\
aceite de pomelo 12 ml\
propilenglicol 22 ml\
alcohol neutro 96 % 62 ml\
tipo bruma aromática\
sustituye pomelo\
pulsaciones 2-3
  Bruma de pomelo está en el recetario.
  Bruma de pomelo: bruma aromática, versión 1
    aceite de pomelo     12 ml
    propilenglicol       22 ml
    alcohol neutro 96 %  62 ml
  Rinde 96 ml a 62 % vol
  Reposa 24 horas, desechar tras 180 días
  2 a 3 pulsaciones por cóctel, 0,067 a 0,1 ml
  cada una, en lugar de pomelo en fresco
  Claridad: en el límite, puede enturbiarse,
  estimado
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, propilenglicol
  Lo mismo se vende en calidades que no son para
  alimentos: ¿este se vende como grado
  alimentario, con papeles del proveedor que lo
  digan?
  [Escalar] [Coste] [Hacer]
  [¿Quedará claro?] [Cambiar] [Más]
  [aceite de pomelo: grado alimentario] [No es seguro]
  [Deshacer]
Ana: precio aceite de pomelo 10 ml 7,90
  aceite de pomelo: 7,90 € por 10 ml
  [Deshacer] [Otro precio]
Ana: precio pomelos 0,90 cada uno, 8 adornos cada uno
  pomelo: 0,90 € cada una
  8 garnish cada una: 0,112 € por garnish antes
  de la merma
  [Deshacer] [Otro precio]
Ana: precio naranjas 0,60 cada una, 5 adornos cada una
  naranja: 0,60 € cada una
  5 garnish cada una: 0,120 € por garnish antes
  de la merma
  Nuevo aquí: naranja.
  [Deshacer] [Otro precio]
Ana: ayuda
  Di lo que quieres hacer, con o sin la barra:
  merma 6 naranjas con moho
  escala Bruma de pomelo a 8 x 50 ml
  lote Bruma de pomelo a 8 x 50 ml
  coste Bruma de pomelo
  semana: lo que se tiró y lo que costó
  Más de cualquier cosa: ayuda etiquetas, ayuda
  cómo anoto merma
  [Anotar merma] [Escalar]
  [Todo] [Precauciones]
Ana: ayuda escala
  /escala: cantidades para un tamaño, frascos,
  cócteles o lo que haya
  escala Bruma de pomelo a 8 x 50 ml
  escala Bruma de pomelo con 12 ml aceite de
  pomelo
  escala Bruma de pomelo para 600 cócteles, 5 %
  pérdida
  escala Bruma de pomelo a 400 ml en gramos a 27
  C
  escala Bruma de pomelo a 400 ml con 75,5 % de
  alcohol
  [Paso a paso] [Fórmulas]
  [Todo]
