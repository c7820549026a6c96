# Una prueba triangular de la bruma contra la piel fresca.
@after es_mist

Ana: prueba bruma de pomelo contra fresca
Ana: cata #1
Ana: servir prueba 1
Ana: cata #1
Ana: prueba terminar 1
