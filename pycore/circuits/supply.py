"""A symmetrical three-phase supply: the angles of its phase voltages."""

VOLTAGE_ANGLES: dict[str, tuple[float, float, float]] = {"123": (0.0, -120.0, 120.0), "132": (0.0, 120.0, -120.0)}
"""Degrees of the three phase voltages from the first, anticlockwise, by the sequence of the lines (IEC 60050-141)."""
