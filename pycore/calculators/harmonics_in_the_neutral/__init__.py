"""Harmonics in the neutral."""

TOPIC = 6
"""The topic's number in the codes of practice sheets, for ever."""
