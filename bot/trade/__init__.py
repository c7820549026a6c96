"""Pure rules of the trade: numbers in, numbers out. No clock, no database, no chat."""
