"""Names of points, lines, readings and phasors of a construction."""

START_POINT = "O"
"""The point where the first phasor starts: the common point, or the start of tip to tail."""
FIRST_DIRECTION = "D"
"""The line in the first direction, from which angles are measured."""
RESULTANT = "N"
"""The line of the sum, and its tip."""
DIAGONAL = "R"
"""The first diagonal of two parallelograms, and its tip."""
AXIS_ACROSS, AXIS_UP = "X", "Y"
"""The axes of the components."""
RESULT_LENGTH, RESULT_ANGLE = "n", "n-angle"
"""The readings of the sum."""
DIAGONAL_LENGTH = "r"
"""The reading of the first diagonal."""


def line_of(number: int | str) -> str:
    """Return the name of the line of the phasor with this number."""
    return f"L{number}"


def voltage_of(number: int) -> str:
    """Return the name of the thin line of a phase voltage: a direction, from which its current lags."""
    return f"V{number}"


def tip_of(number: int | str) -> str:
    """Return the name of the tip of the phasor with this number."""
    return f"T{number}"


SUM_KEY, RETURN_KEY = "sum", "return"
"""The keys of the sum and of the returning phasor among a case's phasors: symbols, colours, drawn lines."""


def arm_key(number: int | str) -> str:
    """Return the key of the phasor with this number; of a partial sum for several digits: ``i12``."""
    return f"i{number}"
