"""The neutral current of a star-connected load."""
