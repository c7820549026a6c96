"""Pure rules of the trade: numbers in, numbers out, without a clock, a database or a chat."""
