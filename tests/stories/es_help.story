# Qué se puede pedir, con ejemplos del propio bar.
@after es_mist

Ana: ayuda
  Di lo que quieres hacer, con o sin la barra:
  merma 6 naranjas con moho
  escala Bruma de pomelo a 8 x 50 ml
  lote Bruma de pomelo a 8 x 50 ml
  coste Bruma de pomelo
  semana: lo que se tiró y lo que costó
  ayuda merma: más sobre una cosa. ayuda todo:
  la lista entera.
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
  [Paso a paso] [Todo]
Ana: ayuda merma
  /merma: anotar la fruta tirada
  merma 6 naranjas con moho
  merma 1,2 kg limones, 3 pomelos con moho
  [Paso a paso] [Todo]
Ana: /ayuda lote
  /lote: anotar un lote, o ver uno por su número
  lote Bruma de pomelo a 400 ml
  lote 12
  [Paso a paso] [Todo]
Ana: ayuda todo
  Todo lo que sé hacer, con o sin la barra:
  /merma: anotar la fruta tirada
  /escala: cantidades para un tamaño, frascos,
  cócteles o lo que haya
  /graduacion: qué graduación tiene, y cómo
  rebajar
  /claridad: ¿se quedará claro?
  /dosis: lo que lleva un cóctel, y los límites
  /coste: lo que cuesta un lote, un frasco y un
  cóctel
  /lote: anotar un lote, o ver uno por su número
  /lotes: qué reposa, qué está listo o por
  desechar
  /revisa: anotar el aspecto de un lote reposado
  /etiqueta: etiquetas de un lote, para imprimir
  /semana: la merma de la semana y lo que costó
  /mes: la merma del mes y lo que costó
  /planear: qué hacer, qué comprar y cuánta
  fruta tener
  /peladas: fruta pelada, con su plazo
  /lista_de_compras: qué comprar esta semana, en
  paquetes enteros
  /exprimidas: lo que dio la fruta en zumo
  /compra: anotar lo que llega
  /acido: ácido para igualar un zumo con otro
  /cuenta: anotar lo que hay
  /fruta: fruta usada, tirada y perdida entre
  recuentos
  /formula: ver una fórmula
  /nueva: apuntar una fórmula nueva
  /formulas: las fórmulas del recetario
  /prueba: probar una variante de una fórmula y
  catarla
  /cata: puntuar un frasco de una prueba
  /precio: fijar o ver lo que cuesta un paquete
  /existencias: lo que hay; contarlo, o anotar
  lo comprado
  /que_puedo_hacer: qué puedes hacer con lo que
  hay
  /pulverizador: lo que da cada pulverizador
  /cocteles: anotar cuántos cócteles se
  sirvieron
  /equipo: quién está en el bar; invitar a
  alguien
  /registro: quién hizo qué, y qué se deshizo
  /idioma: el idioma en que hablo contigo
  /ajustes: ver y cambiar los ajustes del bar
  /exporta: todo el bar en archivos: tablas y
  JSON
  /importa: importar un archivo: una exportación
  o una tabla
  /deshacer: deshacer lo último que anotaste
  /precauciones: precauciones de manejo
  /ayuda: lo que sé hacer
  Más sobre una: ayuda escala
Ana: gracias
  De nada.
Ana: precauciones
  Precauciones (1 a 5 de 47)
  1. Apaga toda llama y evita las chispas: el
  vapor se enciende a temperatura ambiente. (los
  vapores de etanol, aceite cítrico y glicol
  sobre la mezcla, según dos modelos UNIFAC
  (regla de Liaw))
  2. Nunca calientes alcohol sobre llama o placa
  descubierta: hasta uno flojo da vapor que se
  enciende.
  3. Sin llama, vela, soplete ni garnish
  flambeado cerca del spray mientras se usa.
  4. Nunca flamees un garnish sobre un cóctel
  recién pulverizado, ni lo sirvas junto a una
  llama. (2 a 4: puntos de inflamación del
  etanol en agua, tabla de manual en páginas
  públicas (dos en % vol, una en % en masa))
  5. Trabaja donde corra el aire, lejos de la
  cocina y fuera de armarios: su vapor pesa.
  (límite inferior de inflamabilidad del etanol
  3,1 % vol en aire, IEC 60079-20-1 (2010))
  [Más]
