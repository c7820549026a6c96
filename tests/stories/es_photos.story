# Una foto con palabras debajo anota lo mismo que las palabras; el álbum de un lote.
@after es_mist

Ana: lote bruma de pomelo a 8 x 50 ml
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
Ana: fotos 1
  El lote 1, Bruma de pomelo, aún no tiene
  fotos.
  Manda una con “revisa 1 claro” escrito debajo.
  [Ver el lote 1]
Ana sends a photo: merma 3 limas mohosas
  Anotado: 3 limas, con moho.
  Sin precio para lima: no está en el coste.
  La foto queda con la nota.
  Nuevo aquí: lima.
  [Deshacer] [Más merma]
  [Precio de lima]
@clock +25 h
Ana sends a photo: revisa 1 turbio
  Lote 1, Bruma de pomelo: turbio.
  Ahora: filtra una muestra.
  Filtra un vaso por papel y míralo al día
  siguiente.
  Si queda claro, eran ceras o sólidos finos:
  filtra el resto y anota: filtrado 1, pérdida
  12 ml
  Si se enturbia otra vez, no son ceras: la
  siguiente prueba.
  Preguntaré otra vez en un día.
  La foto queda con la nota.
  [¿Cómo arreglarlo?]
  [Desechar] [Deshacer]
@clock +1 days
Ana sends a photo: lote 1 claro
  Lote 1, Bruma de pomelo: claro.
  Se puede embotellar y usar.
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
  La foto queda con la nota.
  [Abrirlo] [Deshacer]
Ana: fotos 1
  Lote 1, Bruma de pomelo: 2 fotos
  jue, 26 nov: revisado, turbio (Ana)
  vie, 27 nov: revisado, claro (Ana)
  <picture batch-1-1.jpg>
  <picture batch-1-2.jpg>
  [Ver el lote 1]
Ana sends a photo:
  ¿Qué lote?
  [1 Bruma de pomelo]
  [Cancelar]
