# Un nombre nuevo se pregunta con los más parecidos, y la respuesta se recuerda.
@after es_mist

Ana: merma 6 naranjas con moho, 2 limas
  Anotadas 2 líneas
    6 naranjas  con moho      3,60 €
    2 limas               sin precio
  Sin precio para lima: no está en el coste.
  mié, 25 nov hasta ahora: 3,60 €
  ¿Y 2 limas, por qué? Basta un toque.
  Nuevo aquí: lima.
  [Deshacer] [Más merma]
  [Precio de lima]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: 2 limas blandas
  “blandas” no es un motivo de este bar. Toca
  uno:
  [con moho]
  [reseca]
  [pelada sin usar]
  [cortada de más]
  [dañada en la entrega]
  [otro]
Ana: merma 3 toronjas
  toronjas: ¿pomelos, o una fruta nueva?
  [pomelos]
  [Fruta nueva: toronja]
  [Cancelar]
Ana taps [pomelos]
  (edited)
  Anotado: 3 pomelos, 2,70 €.
  mié, 25 nov hasta ahora: 6,30 €
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: merma 2 toronjas con moho
  Anotado: 2 pomelos, con moho, 1,80 €.
  mié, 25 nov hasta ahora: 8,10 €
  [Deshacer] [Más merma]
Ana: merma 3 naranjas a la basura
  No conozco el motivo “a la basura”. ¿Querías
  decir:
  [dañada en la entrega]
  [otro]
Ana: limones feo
  No lo he entendido.
  Empieza por lo que quieres hacer: escala,
  merma, lote, coste, semana. O toca Ayuda.
  [Ayuda]
Ana: conteo naranjas 24
  No conozco “conteo”. ¿Querías decir “contado”?
  [contado naranjas 24]
Ana: nombres
  Otros nombres, y qué significa aquí cada uno
    toronjas  pomelo
  [Olvidar toronjas]
Ana: nombres olvida toronjas
  Olvidado: toronjas ya no significa pomelo.
  [Deshacer]
Ana: deshacer
  Deshecho: el nombre toronjas olvidado
  toronjas significa pomelo.
  [Restaurar]
Ana: merma 1000 limas
  ¿1.000 limas?
  [Sí, 1.000 limas]
  [Cambiar] [Cancelar]
Ana taps [Cancelar]
  (edited)
  Cancelado. No se ha anotado nada.
Ana: haz 500 ml bruma de pomelo
  ¿Para hacerlo, o ya está hecho?
  [Cantidades para hacerlo]
  [Ya está hecho: anotar el lote]
Ana: nueva fórmula Bruma clara: aceite de pomelo 5 ml, alcohol neutro 75 % 60 ml, bruma aromática
  Tu alcohol neutro tiene 96 %. ¿Es otro
  alcohol, o ha cambiado?
  [Otro alcohol: alcohol neutro 75 %]
  [Ahora tiene 75 %]
  [Cancelar]
Ana taps [Otro alcohol: alcohol neutro 75 %]
  (edited)
  Bruma clara está en el recetario.
  Bruma clara: bruma aromática, versión 1
    aceite de pomelo      5 ml
    alcohol neutro 75 %  60 ml
  Da 65 ml a 69,2 % vol
  Reposa 24 horas, desechar tras 180 días
  2 a 3 pulsaciones por cóctel, 0,067 a 0,1 ml
  cada una
  Claridad: en el límite, puede enturbiarse,
  estimado
  Alérgenos: ninguno de la lista por el nombre.
  Conviene decir: cítricos.
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo
  Lo mismo se vende en calidades que no son para
  alimentos: ¿este se vende como grado
  alimentario, con papeles del proveedor que lo
  digan?
  [Escalar] [Coste] [Hacer]
  [¿Quedará claro?] [Cambiar] [Más]
  [aceite de pomelo: grado alimentario] [No es seguro]
  [Deshacer]
