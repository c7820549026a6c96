# Lo que se cuenta de más se suma; lo que no está en la carta no se pierde.
@after es_menu

Ana: cócteles 12 paloma
Ana: cócteles 5 más paloma
Ana: otras 3 palomas
Ana: sí
Ana: deshacer
Ana: perdón, 7
Ana: cócteles 12000
Ana: sí
Ana: deshacer
Ana: qué lleva la paloma
Ana: vendimos 30 margaritas y 12 palomas anoche
Ana: sí
Ana: mejor no
Ana: añade margarita a la carta
Ana: deshacer
Ana: cóctel Margarita: 2 pulsaciones de Bruma de pomelo, 90 ml
Ana: quita la margarita de la carta
