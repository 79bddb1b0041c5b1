"""The power triangle and the correction of the power factor."""

TOPIC = 5
"""The topic's number in the codes of practice sheets, for ever."""
