"""A room (folder) for each calculator; `registry.py` lists them."""
