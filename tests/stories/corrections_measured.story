# A correction keeps the unit and the size of what was logged, and a reason said later is one.
@after mist

Ana: batch grapefruit mist to 412 ml
Ana: check 1 clear
Ana: bottled 1 4 x 50 ml, lost 12 ml
Ana: sorry 3 bottles
Ana: spilled 100 ml of batch 1
Ana: sorry, 150
Ana: undo
Ana: waste 2 kg lemons
Ana: sorry, 2 lemons not 2 kg
Ana: the lemons were dried out
Ana: waste 3 limes
Ana: the lemons were mouldy
