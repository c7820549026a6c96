# Cuántas piezas, en palabras.
@after es_opening

Ana: merma 0,5 limones
  Anotado: medio limón.
  Sin precio para limón: no está en el coste.
  ¿Por qué? Basta un toque.
  Nuevo aquí: limón.
  [Deshacer] [Más merma]
  [Precio de limón]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: merma media naranja con moho
  Anotado: media naranja, con moho.
  Sin precio para naranja: no está en el coste.
  Nuevo aquí: naranja.
  [Deshacer] [Más merma]
  [Precio de naranja]
Ana: merma 1 docena limón con moho
  Anotado: 12 limones, con moho.
  Sin precio para limón: no está en el coste.
  [Deshacer] [Más merma]
  [Precio de limón]
Ana: merma 1000000 limas
  Es demasiado para una sola anotación: 100.000
  como mucho.
Ana: graduación 1 l 96 a 0
  Con agua nunca llega a 0 % vol.
  Lo más flojo que calculo es 0,1 % vol.
