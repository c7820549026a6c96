"""A language that is written as one package: a little Esperanto, with nothing else in the bot changed."""
