"""Branches in parallel."""

TOPIC = 4
"""The topic's number in the codes of practice sheets, for ever."""
