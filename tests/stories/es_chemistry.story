# La química en español: desde cuándo se enciende, cuánto se guarda, la acidez medida, otra preparación.
@after es_mist

Ana: graduación bruma de pomelo
  Bruma de pomelo: 62 % vol
    Vertido             96 ml
    Rinde               96 ml
    Etanol que lleva  59,5 ml
  Sumados sin contracción, como volúmenes
  ideales: aceite de pomelo, propilenglicol.
  Se puede encender a partir de unos 16 °C: muy
  inflamable (categoría 2: inflama por debajo de
  23 °C). Es una estimación, con unos grados de
  margen.
  [Escalar] [Otro alcohol]
Ana: ácido 280 ml zumo de naranja a 9 g/l a lima
  280 ml de zumo de naranja, con la acidez de
  lima: 6,5 g de ácido cítrico + 4 g ácido
  málico
                   cítrico  málico
    calculado        6,5 g     4 g
      de             5,3 g   3,3 g
      a             11,6 g   7,2 g
    regla general      9 g   5,6 g
  La regla general queda entre 20 % por debajo y
  54 % por encima del lima medido.
  Naranja 9 g/l según tu medida, lima de 39 a 75
  g/l publicados. Los zumos y los estudios
  difieren: valóralo, o prueba.
Ana: dosis bruma de pomelo en 90 ml + 5 ml bruma de pomelo
  Bruma de pomelo en 90 ml, 1 cóctel: por encima
  de un límite
    mg en    por cóctel
    aceite      550-570
    glicol  1.200-1.300
    etanol  2.500-2.600
  ml por cóctel: aceite 0,64-0,66, glicol 1,2,
  etanol 3,2-3,3
  mg/kg en el cóctel: aceite 5.800-6.000, glicol
  13.000, etanol 27.000
  2 a 3 pulsaciones, 0,133 a 0,3 ml, si todo cae
  en el cóctel.
  Con 5 ml de Bruma de pomelo en el mismo
  cóctel, contado en todas las cifras.
  Propilenglicol (E 1520) en una bebida, de
  todas las fuentes: 1 g/L. Aquí 12.800-13.200
  mg/L: por encima.
  Propilenglicol, ingesta diaria admisible: 25
  mg por kg de peso corporal. Aquí 17-18 mg/kg
  con 70 kg: por debajo.
  Máximo que no lo pasa: 0 ml por cóctel (0
  pulsaciones); o un cóctel de 1.254 ml o 0 % de
  glicol en la mezcla como mucho.
  Los aromas, siropes y bíteres del cóctel
  también pueden llevar glicol (E 1520): todo
  cuenta. Y también toda la noche del cliente:
  esto es un solo cóctel.
  Nadie ha pesado aún esta pulverización: las
  bombas dan 0,05 a 0,14 ml. Pesa la tuya.
  Precaución: Nunca flamees un garnish sobre un
  cóctel recién pulverizado, ni lo sirvas junto
  a una llama.
  [Fuentes]
  [En 60 ml] [En 150 ml] [2 cócteles]
  [Pesar el pulverizador]
