# More drinks are added to the count, the counts of a garnish are parts of the whole, a strange count is asked about.
@after mist

Ana: add a negroni to the menu
Ana: 2 grapefruit mist, 90 ml
Ana: serve paloma: 2 grapefruit mist, 180 ml
Ana: drinks 12 negroni
Ana: drinks 5 more negroni
Ana: sorry, 7
Ana: undo
Ana: and 3 negronis
Ana: another 4 negronis
Ana: yes
Ana: drinks 20 more
Ana: drinks 100, 30 grapefruit
Ana: sorry, 95
Ana: sorry, 25 grapefruit
Ana: drinks 90, 20 grapefruit, paloma 8
Ana: drinks
Ana: log
Ana: drinks 12000
Ana: cancel
Ana: drinks 12000
Ana: yes
Ana: undo
Ana: paloma
Ana: what's in a negroni
Ana: sold 30 daiquiris and 12 negronis last night
Ana: yes
Ana: 130 covers tonight
Ana: remove the paloma from the menu
