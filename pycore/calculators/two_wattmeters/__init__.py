"""Power measured by two wattmeters."""

TOPIC = 8
"""The topic's number in the codes of practice sheets, for ever."""
