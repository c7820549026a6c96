# Qué se puede pedir, con ejemplos del propio bar.
@after es_mist

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
Ana: ayuda merma
  /merma: anotar fruta y lo demás que se tira
  merma 6 naranjas con moho
  merma 1,2 kg limones, 3 pomelos con moho
  merma 200 ml zumo de pomelo
  merma 1 botella del lote 12
  [Paso a paso] [Merma y fruta]
  [Todo]
Ana: /ayuda lote
  /lote: anotar un lote, o ver uno por su número
  lote Bruma de pomelo a 400 ml
  lote 12
  lote 12 añade 29 ml alcohol
  [Paso a paso] [Lotes y etiquetas]
  [Todo]
Ana: ayuda todo
  Todo lo que sé hacer, por temas. Toca uno.
  O di qué quieres: ayuda etiquetas, ayuda cómo
  anoto merma
  [Merma y fruta] [Fórmulas]
  [Lotes y etiquetas] [Graduación y claridad]
  [Sprays y cócteles] [Dinero]
  [Existencias y plan] [Pruebas]
  [Seguridad] [Equipo y ajustes]
  [Registro y archivos]
Ana: gracias
  Para servirte.
Ana: precauciones
  Precauciones (1 a 5 de 58)
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
