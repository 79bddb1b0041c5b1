"""Resistance, inductance and capacitance in series."""
