"""What points, lines and readings of a construction are called, wherever they are named."""

START_POINT = "O"
"""The point from which the first phasor is drawn: common point, or start of a tip to tail."""
FIRST_DIRECTION = "D"
"""The line in the direction from which angles are counted."""
RESULTANT = "N"
"""The sum's line, and its tip."""
DIAGONAL = "R"
"""The first diagonal of two parallelograms, and its tip."""
AXIS_ACROSS, AXIS_UP = "X", "Y"
"""The axes of the components."""
RESULT_LENGTH, RESULT_ANGLE = "n", "n-angle"
"""What is read of the resultant."""
DIAGONAL_LENGTH = "r"
"""What is read of the first diagonal."""


def line_of(number: int | str) -> str:
    """The line on which the phasor of a number is drawn."""
    return f"L{number}"


def tip_of(number: int | str) -> str:
    """The tip of the phasor of a number."""
    return f"T{number}"


SUM_KEY, RETURN_KEY = "sum", "return"
"""The keys of the sum and of the returning phasor among a case's phasors: symbols, colours, drawn lines."""


def arm_key(number: int | str) -> str:
    """Return the key of the phasor with this number; of a partial sum for several digits: ``i12``."""
    return f"i{number}"
