"""Labels, pictures and files made from plain values."""
