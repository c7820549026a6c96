# Una corrección conserva la unidad y el tamaño de lo anotado; el motivo puede decirse después.
@after es_mist

Ana: lote bruma de pomelo a 412 ml
Ana: revisar 1 claro
Ana: embotellado 1 4 botellas de 50 ml
Ana: perdón, 3 botellas
Ana: derramado 1 100 ml
Ana: perdón, 150
Ana: merma 4 limones
Ana: eran 3 limones, no 4
Ana: los limones estaban secos
Ana: merma 2 kg de naranjas
Ana: perdón, 2 naranjas, no 2 kg
Ana: eran 3 limones, no 7
