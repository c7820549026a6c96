"""Labels, charts and files made from plain values."""
