# Una bruma a medida en español.
@after es_opening

Ana: diseña bruma de naranja 8 x 50 ml
  Bruma de naranja: 10 % de aceite, 18 % de
  glicol
    aceite de naranja     40 ml
    propilenglicol        72 ml
    alcohol neutro 96 %  290 ml
  Rinde 402 ml a 69,3 % vol
  Clara a 15 °C según los dos modelos, también
  con una décima parte más de aceite: decide la
  botella reposada.
  Glicol: hasta 0,92 g/l en 60 ml con 2 a 3
  pulsaciones, límite 1 g/l.
  Se puede encender a partir de unos 15 °C: muy
  inflamable (categoría 2: inflama por debajo de
  23 °C). Es una estimación, con unos grados de
  margen.
  Más aroma: 14 % de aceite, 6 % de glicol.
  Más ligera: 7 % de aceite, 19 % de glicol.
  [Anotarla]
  [Más aroma]
  [Más ligera]
Ana taps [Anotarla]
  (edited)
  Bruma de naranja está en el recetario.
  Bruma de naranja: bruma aromática, versión 1
    aceite de naranja     40 ml
    propilenglicol        72 ml
    alcohol neutro 96 %  290 ml
  Rinde 402 ml a 69,3 % vol
  Reposa 24 horas, desechar tras 180 días
  2 a 3 pulsaciones por cóctel, 0,067 a 0,1 ml
  cada una, en lugar de naranja en fresco
  Claridad: debería quedar claro, estimado
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Precaución: Grado alimentario sin confirmar:
  aceite de naranja, propilenglicol
  Lo mismo se vende en calidades que no son para
  alimentos: ¿este se vende como grado
  alimentario, con papeles del proveedor que lo
  digan?
  [Escalar] [Coste] [Hacer]
  [¿Quedará claro?] [Cambiar] [Más]
  [aceite de naranja: grado alimentario] [No es seguro]
  [Deshacer]
Ana: diseña bruma de limón con 12 % de aceite con 75,5 % alcohol
  Ninguna bruma de limón cumple todo eso.
  Renuncia a una cosa:
  Aceite: como máximo el 2 %.
  Alcohol: al menos 92 % vol.
  [2 % de aceite]
  [Alcohol de 92 %]
