# Lo que salió de una infusión al colarla, y su grado con el agua de la cáscara.
@after es_opening

Ana: nueva fórmula Infusión de naranja\
cáscara de naranja 80 g\
alcohol neutro 96 % 500 ml\
tipo infusión
  Infusión de naranja está en el recetario.
  Infusión de naranja: infusión, versión 1
    cáscara de naranja     80 g
    alcohol neutro 96 %  500 ml
  Rinde 500 ml a 96 % vol
  Reposa 48 horas, desechar tras 30 días
  Poco alcohol o algo fresco: guárdalo en frío y
  pregunta a tu inspector cuánto tiempo.
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Precaución: Usa solo alcohol que se vende para
  beber: el de limpieza, el sanitario y el
  desnaturalizado son veneno.
  [Escalar] [Coste] [Hacer]
  [Cambiar] [Más]
  [Deshacer]
Ana: lote infusión de naranja x1
  Lote 1: Infusión de naranja, 500 ml
  Reposa hasta vie, 27 nov 19:00. Te avisaré.
  Revísalo de nuevo el 26 nov 2026.
  Desechar después del 25 dic 2026: poco alcohol
  o algo fresco, así que menos que lo habitual
  de su tipo.
  Conservar en frío.
  Cuánto se puede guardar donde estás: pregunta
  a tu inspector.
  Precaución: Guárdalo bien cerrado, etiquetado,
  de pie, fresco y oscuro, lejos del calor y de
  botellas abiertas.
  [Ver el lote 1]
  [Lote del proveedor] [Deshacer]
Ana: colado 1 430 ml
  Lote 1, Infusión de naranja: salieron 430 ml.
  86 a 96 % vol: la fruta le dio agua, toda en
  el extremo más bajo. La etiqueta también lo
  dice.
  [Revisar] [Etiqueta] [Deshacer]
Ana: deshacer
  Deshecho: colado del lote 1
  [Restaurar]
