# Un precio posterior a la merma cuenta desde entonces; el informe dice qué parte no lo tiene.
@after es_opening

Ana: merma 3 limas con moho
  Anotado: 3 limas, con moho.
  Sin precio para lima: no está en el coste.
  Nuevo aquí: lima.
  [Deshacer] [Más merma]
  [Precio de lima]
Ana taps [Precio de lima]
  (edited)
  ¿Cuánto cuesta lima? Por ejemplo: 0,60 cada
  una
  [Atrás] [Cancelar]
Ana: 0,30
  ¿Cuántos garnish por fruta?
  [4] [5] [6]
  [8] [10] [12]
  [Atrás] [Cancelar]
Ana taps [5]
  (edited)
  lima: 0,30 € cada una
  5 garnish cada una: 0,060 € por garnish antes
  de la merma
  Cuenta desde ahora: lo tirado antes (3) se
  queda sin precio.
  [Deshacer] [Otro precio]
Ana: merma 2 limas con moho
  Anotado: 2 limas, con moho, 0,60 €.
  mié, 25 nov hasta ahora: 0,60 €
  [Deshacer] [Más merma]
Ana: semana
  Merma: 0,60 €
  lun, 23 nov al dom, 29 nov, aún sin terminar
    lima  5  0,60 €
    con moho  5  0,60 €
  Sin precio, así que no cuenta: lima (3 de 5).
  Sin nada anotado con qué comparar: lun, 16 nov
  a mié, 18 nov.
  <picture waste-2026-W48.png>
  [Más] [Imagen]
  [Semana pasada] [Anotar merma]

# La semana pasada, dicha de otro modo, es la semana pasada.
Ana: informe de la semana pasada
  Leído como: semana pasada
  Sin merma anotada
  lun, 16 nov a dom, 22 nov
  Sin nada anotado con qué comparar: lun, 9 nov
  a dom, 15 nov.
  [Anotar merma]
Ana: cómo fue el mes pasado
  Leído como: mes pasado
  Sin merma anotada
  jue, 1 oct a sáb, 31 oct
  Sin nada anotado con qué comparar: mar, 1 sept
  a mié, 30 sept.
  [Anotar merma]

# Un spray con sus propios precios no es a ojo.
Ana: nueva bruma de pomelo: 10 ml aceite de pomelo, 190 ml alcohol neutro
  bruma de pomelo está en el recetario.
  bruma de pomelo: bruma aromática, versión 1
    aceite de pomelo   10 ml
    alcohol neutro    190 ml
  Rinde 200 ml
  Reposa 24 horas, desechar tras 180 días
  2 a 3 pulsaciones por cóctel, 0,067 a 0,1 ml
  cada una
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo
  Lo mismo se vende en calidades que no son para
  alimentos: ¿este se vende como grado
  alimentario, con papeles del proveedor que lo
  digan?
  ¿Qué graduación tiene alcohol neutro? Di:
  graduación alcohol neutro 96
  [Escalar] [Coste] [Hacer]
  [¿Quedará claro?] [Cambiar] [Más]
  [aceite de pomelo: grado alimentario] [No es seguro]
  [Deshacer]
Ana: cambia bruma de pomelo: sustituye a pomelo
  bruma de pomelo va ahora por la versión 2. Los
  lotes conservan la versión con que se
  hicieron.
  bruma de pomelo: bruma aromática, versión 2
    aceite de pomelo   10 ml
    alcohol neutro    190 ml
  Rinde 200 ml
  Reposa 24 horas, desechar tras 180 días
  2 a 3 pulsaciones por cóctel, 0,067 a 0,1 ml
  cada una, en lugar de pomelo en fresco
  Ningún alérgeno de la lista por el nombre.
  Contiene cítricos.
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo
  Lo mismo se vende en calidades que no son para
  alimentos: ¿este se vende como grado
  alimentario, con papeles del proveedor que lo
  digan?
  ¿Qué graduación tiene alcohol neutro? Di:
  graduación alcohol neutro 96
  [Escalar] [Coste] [Hacer]
  [¿Quedará claro?] [Cambiar] [Más]
  [aceite de pomelo: grado alimentario] [No es seguro]
  [Deshacer]
Ana: mínimo aceite de pomelo 50 ml
  aceite de pomelo: te aviso por debajo de 50
  ml.
  Nunca se ha contado, cuéntalo una vez:
  existencias aceite de pomelo 1,4 l
  [Deshacer] [Todas las existencias]
Ana: compras
  Para comprar antes del mié, 2 dic: aún sin
  precio
    aceite de pomelo  50 ml  ?
  Nunca contado, supongo que no hay: aceite de
  pomelo
  Sin precio, fuera de la suma: aceite de pomelo
  [Plan] [Existencias]
Ana: antes de decidir pomelo: 1,10; 6; 120; 5
  Dinero: de 18 € a 27 € menos por semana, a ojo
  La fruta fresca (pomelo) cuesta ahora 27,50 €
  por semana; un spray, de 2,15 € a 9,11 € más o
  menos.
  Supuse que el spray de un cóctel cuesta del 5
  al 50 % de un garnish cortado: a ojo, sin
  fuente. Con un precio de aceite de pomelo y
  alcohol neutro uso tu fórmula bruma de pomelo
  en su lugar.
  Tiempo, aparte: de 6 min más a 16 min menos
  por semana.
  Nadie lo sabe aún, y es lo que más importa: lo
  que cuesta el spray (lo mueve 9,90 €) y
  cócteles por semana (lo mueve 7,33 €).
  Para ver una bajada 8 de cada 10 veces, junto
  a otra fruta, anota este tiempo antes y otro
  tanto después:
    30 % menos
      766 noches  110 semanas
    50 % menos
      229 noches  33 semanas
    70 % menos
      97 noches  14 semanas
  Supuse que los recuentos varían 2 veces lo que
  por puro azar: práctica común, sin fuente.
  Déjalo si el spray cuesta más de 0,229 € por
  cóctel, si en la cata se nota y molesta, o si
  esas noches no muestran bajada.
  [Anotar merma] [Lo que cuesta bruma de pomelo]
Ana: precio aceite de pomelo 10 ml 9,90
  aceite de pomelo: 9,90 € por 10 ml
  [Deshacer] [Otro precio]
Ana: precio alcohol neutro 1 l 18
  alcohol neutro: 18,00 € por 1 l
  [Deshacer] [Otro precio]
Ana: antes de decidir pomelo: 1,10; 6; 120; 5
  Dinero: de 22 € a 29 € menos por semana, a ojo
  La fruta fresca (pomelo) cuesta ahora 27,50 €
  por semana; un spray, de 1,23 € a 2,25 € más o
  menos.
  El spray es tu fórmula bruma de pomelo a tus
  precios: 0,009 € a 0,020 € por cóctel.
  Tiempo, aparte: de 6 min más a 16 min menos
  por semana.
  Nadie lo sabe aún, y es lo que más importa:
  cócteles por semana (lo mueve 8,11 €) y fruta
  a la basura por semana (lo mueve 5,50 €).
  Para ver una bajada 8 de cada 10 veces, junto
  a otra fruta, anota este tiempo antes y otro
  tanto después:
    30 % menos
      766 noches  110 semanas
    50 % menos
      229 noches  33 semanas
    70 % menos
      97 noches  14 semanas
  Supuse que los recuentos varían 2 veces lo que
  por puro azar: práctica común, sin fuente.
  Déjalo si el spray cuesta más de 0,229 € por
  cóctel, si en la cata se nota y molesta, o si
  esas noches no muestran bajada.
  [Anotar merma] [Lo que cuesta bruma de pomelo]
Ana: coste bruma de pomelo para 1 cóctel
  bruma de pomelo, 1 cóctel: 0,021 €
    aceite de pomelo  0,015 €
    alcohol neutro    0,005 €
    Contenido de
    un frasco de
    50 ml                     3,26 €
    por pulsación  0,004 € a 0,007 €
    por cóctel     0,009 € a 0,020 €
  La suma es con el máximo que pulverizas, 3 por
  cóctel, en cantidades que miden tus
  utensilios.
  En caja, por 2 paquetes enteros: 27,90 €
  Para comparar con pomelo en fresco, di: precio
  pomelo 0,60 cada una, 5 garnish cada una
  [Cantidades] [Anotar este lote]
