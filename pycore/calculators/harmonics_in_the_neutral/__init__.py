"""Harmonics in the neutral."""
