# Una prueba triangular de la bruma contra la piel fresca.
@after es_mist

Ana: invitar 1 persona 7 días
Ben: unirse ‹code›
Ana: prueba bruma de pomelo contra fresca
Ben: servir prueba 1
Ben: cata #1
Ana: cata #1
Ana taps [Cancelar]
Ana: prueba terminar 1
