"""Zero, positive and negative sequence."""

TOPIC = 9
"""The topic's number in the codes of practice sheets, for ever."""
