"""Two to six phasors, added or subtracted."""

TOPIC = 1
"""The topic's number in the codes of practice sheets, for ever."""
