# Lo que se dice después se refiere a lo último que se dijo.
@speaks Ana es
@after es_opening

Ana: precio limones 0,50 cada uno
  limón: 0,50 € cada una
  Nuevo aquí: limón.
  [Deshacer] [Otro precio]
Ana: merma 6 limas
  Anotado: 6 limas.
  Sin precio para lima: no está en el coste.
  ¿Por qué? Basta un toque.
  Nuevo aquí: lima.
  [Deshacer] [Más merma]
  [Precio de lima]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: eran 5 no 6
  Corregido: 5 limas en vez de 6
  Sin precio para lima: no está en el coste.
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [Precio de lima]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: que sean 4
  Corregido: 4 limas en vez de 5
  Sin precio para lima: no está en el coste.
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [Precio de lima]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: perdón, limones
  Corregido: 4 limones en vez de 4 limas
  mié, 25 nov hasta ahora: 2,00 €
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: no, naranjas
  Corregido: 4 naranjas en vez de 4 limones
  Sin precio para naranja: no está en el coste.
  ¿Por qué? Basta un toque.
  Nuevo aquí: naranja.
  [Deshacer] [Más merma]
  [Precio de naranja]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: estaban secas
  Corregido: 4 naranjas, reseca
  Sin precio para naranja: no está en el coste.
  [Deshacer] [Más merma]
  [Precio de naranja]
Ana: la mitad de eso
  Corregido: 2 naranjas en vez de 4, reseca,
  como antes
  Sin precio para naranja: no está en el coste.
  [Deshacer] [Más merma]
  [Precio de naranja]
Ana: y 3 limas
  Anotado: 3 limas.
  Sin precio para lima: no está en el coste.
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [Precio de lima]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: otra vez lo mismo
  Anotado: 3 limas.
  Sin precio para lima: no está en el coste.
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [Precio de lima]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: borra lo último
  Deshecho: 3 limas
  [Restaurar]
Ana: deshaz eso
  Deshecho: 3 limas
  [Restaurar]
Ana: fue ayer
  Corregido: 2 naranjas, reseca, del mar, 24 nov
  Sin precio para naranja: no está en el coste.
  [Deshacer] [Más merma]
  [Precio de naranja]
Ana: bórralo
  Deshecho: 2 naranjas, reseca
  [Restaurar]
@clock +11 h
Ana: eran 7
  Esta noche no has anotado nada aquí.
  ¿Te refieres a esto, del mié, 25 nov 19:00?
  [precio de limón, 0,50 € cada una]
Ana: merma 2 limas
  Anotado: 2 limas.
  Sin precio para lima: no está en el coste.
  ¿Por qué? Basta un toque.
  Cuenta para el jue, 26 nov: ya es después del
  cierre.
  [Deshacer] [Más merma]
  [Precio de lima]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
  [Fue el mié, 25 nov]
@clock +11 h
Ana: eran 7
  Corregido: 7 limas en vez de 2
  Sin precio para lima: no está en el coste.
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [Precio de lima]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: y 3 limones
  Anotado: 3 limones, 1,50 €.
  jue, 26 nov hasta ahora: 1,50 €
  ¿Por qué? Basta un toque.
  [Deshacer] [Más merma]
  [con moho] [reseca]
  [pelada sin usar] [cortada de más]
  [dañada en la entrega] [otro]
Ana: no hay limones
  Leído como: existencias limones
  limón no se ha contado nunca.
  Cuéntalo una vez: existencias limón 1,4 l
  [Contarlo] [Comprado]
  [Mínimo] [Todas las existencias]
Ana: y luego nos fuimos
  Sonaba a charla y no hice nada. ¿O querías
  algo de esto?
  Por ejemplo: merma 6 limas con moho
  [Anotar lo que volvió de un evento]
  [Fruta usada]
Ana: perdón por eso
  No sé bien qué quieres. ¿Es algo de esto?
  Por ejemplo: merma 6 limas con moho
  [corrige limón]
  [Deshacer lo último que anotaste]
