"""Words in, words out: reading messages, wording replies. Knows no Telegram."""
