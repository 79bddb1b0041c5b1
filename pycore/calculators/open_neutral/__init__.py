"""A star-connected load whose neutral is open."""
