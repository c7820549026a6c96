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
  No se anota nada hasta que toques.
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
  Leído como: merma 3 naranjas
  Aún no se ha anotado nada. Toca si es
  correcto.
  [merma 3 naranjas]
Ana: limones feo
  No sé bien qué quieres. ¿Es algo de esto?
  Por ejemplo: merma 6 pomelos con moho
  [merma limones]
  [existencias limones]
  [fruta limones]
Ana: conteo naranjas 24
  Leído como: cuenta naranjas 24
  Aún no se ha anotado nada. Toca si es
  correcto.
  [cuenta naranjas 24]
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
  Bruma de pomelo: 500 ml
    aceite de pomelo   62 ml
    propilenglicol    114 ml
    alcohol neutro    325 ml
  Rinde 501 ml al 62,3 % vol
  Alcanza para 1.600 a 3.700 cócteles
  Redondeado a probeta de 100 ml, probeta de 250
  ml, probeta de 500 ml: la proporción se desvía
  1,5 % como mucho.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Apaga toda llama y evita las
  chispas: el vapor se enciende a temperatura
  ambiente.
  [Anotar este lote]
  [En gramos] [Coste]
  [¿Quedará claro?] [Otro alcohol]
  [Otro tamaño] [Todas las precauciones]
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
  Rinde 65 ml a 69,2 % vol
  Reposa 24 horas, desechar tras 180 días
  2 a 3 pulsaciones por cóctel, 0,067 a 0,1 ml
  cada una
  Claridad: en el límite, puede enturbiarse,
  estimado
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
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
