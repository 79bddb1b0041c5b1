"""Line and phase values in star and in delta."""

TOPIC = 2
"""The topic's number in the codes of practice sheets, for ever."""
