"""The neutral current of a star-connected load."""

TOPIC = 0
"""The topic's number in the codes of practice sheets, for ever."""
