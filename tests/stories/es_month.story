# Un mes: dos semanas de pieles frescas, dos de bruma, y lo que se ve al final.
@after es_mist

@clock 2026-10-05 15:00 Europe/Madrid
Ana: precio propilenglicol 1 l 12
  propilenglicol: 12,00 € por 1 l
  [Deshacer] [Otro precio]
Ana: precio alcohol neutro 1 l 24
  alcohol neutro: 24,00 € por 1 l
  [Deshacer] [Otro precio]
Ana: precio limones 0,40 cada uno
  limón: 0,40 € cada una
  Nuevo aquí: limón.
  [Deshacer] [Otro precio]
@nights Ana 23:30 Europe/Madrid\
2026-10-05 compré 80 pomelos 72\
2026-10-05 merma 2 pomelos pelada sin usar, 4 limones con moho\
2026-10-06 merma 6 pomelos pelada sin usar, 3 limones con moho\
2026-10-07 merma 6 pomelos pelada sin usar, 4 limones con moho\
2026-10-08 merma 9 pomelos pelada sin usar, 3 limones con moho\
2026-10-09 merma 5 pomelos pelada sin usar, 4 limones con moho\
2026-10-10 merma 3 pomelos pelada sin usar, 5 limones con moho\
2026-10-11 merma 5 pomelos pelada sin usar, 3 limones con moho\
2026-10-12 compré 80 pomelos 72\
2026-10-12 merma 4 pomelos pelada sin usar, 6 limones con moho\
2026-10-13 merma 5 pomelos pelada sin usar, 3 limones con moho\
2026-10-14 merma 2 pomelos pelada sin usar, 3 limones con moho\
2026-10-15 merma 10 pomelos pelada sin usar, 6 limones con moho\
2026-10-16 merma 6 pomelos pelada sin usar, 4 limones con moho\
2026-10-17 merma 5 pomelos pelada sin usar, 4 limones con moho\
2026-10-18 merma 8 pomelos pelada sin usar, 4 limones con moho
  2026-10-05 Comprado: 80 pomelos, 72,00 €.
  2026-10-05 Anotadas 2 líneas
  2026-10-06 Anotadas 2 líneas
  2026-10-07 Anotadas 2 líneas
  2026-10-08 Anotadas 2 líneas
  2026-10-09 Anotadas 2 líneas
  2026-10-10 Anotadas 2 líneas
  2026-10-11 Anotadas 2 líneas
  2026-10-12 Comprado: 80 pomelos, 72,00 €.
  2026-10-12 Anotadas 2 líneas
  2026-10-13 Anotadas 2 líneas
  2026-10-14 Anotadas 2 líneas
  2026-10-15 Anotadas 2 líneas
  2026-10-16 Anotadas 2 líneas
  2026-10-17 Anotadas 2 líneas
  2026-10-18 Anotadas 2 líneas
@clock 2026-10-17 16:00 Europe/Madrid
Ana: lote bruma de pomelo 400 ml
  Lote 1: Bruma de pomelo, 402 ml
  Reposa hasta dom, 18 oct 16:00. Te avisaré.
  Revísalo de nuevo el 16 nov 2026.
  Desechar después del 15 abr 2027: el plazo
  usual de su tipo.
  Claridad: en el límite, puede enturbiarse,
  estimado
  Precaución: Grado alimentario sin confirmar:
  aceite de pomelo, propilenglicol
  [Ver el lote 1]
  [Lote del proveedor] [Deshacer]
@clock 2026-10-19 17:00 Europe/Madrid
Ana: spray pomelo desde 2026-10-19
  pomelo: con spray desde el 19 oct 2026.
  /week compara su merma con las doce semanas de
  antes.
  [Deshacer] [Semana]
Ana: página del dueño
  Aún no hay página: hace falta una semana
  completa antes del spray y otra después.
  Pomelo: con spray desde el 19 oct 2026.
  Anota la merma cada noche.
  [Antes de decidir] [Semana]
@nights Ana 23:30 Europe/Madrid\
2026-10-19 compré 10 pomelos 9\
2026-10-19 merma 1 pomelo pelada sin usar, 4 limones con moho\
2026-10-20 merma 1 pomelo pelada sin usar, 4 limones con moho\
2026-10-21 merma 1 pomelo pelada sin usar, 6 limones con moho\
2026-10-22 merma 2 pomelos pelada sin usar, 3 limones con moho\
2026-10-23 merma 4 limones con moho\
2026-10-24 merma 3 limones con moho\
2026-10-25 merma 1 pomelo pelada sin usar, 5 limones con moho\
2026-10-26 compré 10 pomelos 9\
2026-10-26 merma 1 pomelo pelada sin usar, 3 limones con moho\
2026-10-27 merma 2 pomelos pelada sin usar, 3 limones con moho\
2026-10-28 merma 4 limones con moho\
2026-10-29 merma 3 limones con moho\
2026-10-30 merma 1 pomelo pelada sin usar, 5 limones con moho\
2026-10-31 merma 1 pomelo pelada sin usar, 6 limones con moho\
2026-11-01 merma 2 pomelos pelada sin usar, 4 limones con moho
  2026-10-19 Comprado: 10 pomelos, 9,00 €.
  2026-10-19 Anotadas 2 líneas
  2026-10-20 Anotadas 2 líneas
  2026-10-21 Anotadas 2 líneas
  2026-10-22 Anotadas 2 líneas
  2026-10-23 Anotado: 4 limones, con moho, 1,60 €.
  2026-10-24 Anotado: 3 limones, con moho, 1,20 €.
  2026-10-25 Anotadas 2 líneas
  2026-10-26 Comprado: 10 pomelos, 9,00 €.
  2026-10-26 Anotadas 2 líneas
  2026-10-27 Anotadas 2 líneas
  2026-10-28 Anotado: 4 limones, con moho, 1,60 €.
  2026-10-29 Anotado: 3 limones, con moho, 1,20 €.
  2026-10-30 Anotadas 2 líneas
  2026-10-31 Anotadas 2 líneas
  2026-11-01 Anotadas 2 líneas
@clock 2026-11-03 18:00 Europe/Madrid
Ana: merma 2 limones con moho
  Anotado: 2 limones, con moho, 0,80 €.
  mar, 3 nov hasta ahora: 0,80 €
  [Deshacer] [Más merma]
Ana: semana
  Merma: 0,80 €
  lun, 2 nov al dom, 8 nov, aún sin terminar
    limón  2  0,80 €
    con moho  2  0,80 €
  Los primeros 2 días, semana anterior: 5,10 €,
  muy pocas noches para decirlo
  Desde el spray, comparado con limón: pomelo 83
  % menos (54 a 93 %)
  Más que azar. No dice por qué: una carta nueva
  se vería igual.
  <picture waste-2026-W45.png>
  [Más] [Imagen]
  [Semana pasada] [Anotar merma]
Ana: mes pasado
  Merma: 121,90 €
  jue, 1 oct a sáb, 31 oct
    pomelo   87  78,30 €
    limón   109  43,60 €
    pelada sin usar   87  78,30 €
    con moho         109  43,60 €
  De lo comprado: pomelo 48 %
  Sin nada anotado con qué comparar: mar, 1 sept
  a mié, 30 sept.
  Pomelo, con spray desde 19 oct 2026: aún sin
  veredicto. En semanas completas hay 14 noches
  anotadas antes y 7 después; hacen falta 14 en
  cada lado.
  <picture waste-2026-W44.png>
  [Más] [Imagen]
  [Anotar merma]
Ana: página del dueño
  Dinero: 79,16 € a favor tras 2 semanas
  completas
  Por semana: 39,58 € menos de gasto por fruta y
  spray (de 258,03 € más a 337,18 € menos),
  puede ser casualidad
  Pomelo: 83 % menos (54 a 93 %)
  Más que azar. No dice por qué: una carta nueva
  se vería igual.
  <picture owner-2026-11-03.png>
  <file owner-2026-11-03.pdf>
# Los días que se digan.
Ana: informe del 1 al 15 de noviembre
  Sin merma anotada
  sáb, 1 nov 2025 a sáb, 15 nov 2025
  Sin nada anotado con qué comparar: vie, 17 oct
  2025 a vie, 31 oct 2025.
  [Anotar merma]
Ana: informe últimas dos semanas
  Merma: 30,30 €
  mié, 21 oct al mar, 3 nov, aún sin terminar
    limón   51  20,40 €
    pomelo  11   9,90 €
    con moho         51  20,40 €
    pelada sin usar  11   9,90 €
  De lo comprado: pomelo 110 %
  Periodo anterior (14 días): 85,80 €, 65 %
  menos ahora
  Desde el spray, comparado con limón: pomelo 83
  % menos (54 a 93 %)
  Más que azar. No dice por qué: una carta nueva
  se vería igual.
  <picture waste-2026-W45.png>
  [Más] [Imagen]
  [Anotar merma]
