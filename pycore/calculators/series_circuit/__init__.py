"""Resistance, inductance and capacitance in series."""

TOPIC = 3
"""The topic's number in the codes of practice sheets, for ever."""
