"""Who may see and do what, and what bad will can try: see the threat table in the contributor guide."""
