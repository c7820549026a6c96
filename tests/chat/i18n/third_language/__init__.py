"""A language in one package: a little Esperanto, without other changes to the bot."""
