"""A star-connected load whose neutral is open."""

TOPIC = 7
"""The topic's number in the codes of practice sheets, for ever."""
