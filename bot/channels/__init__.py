"""Where people talk to the program: Telegram and the console. Translate only."""
