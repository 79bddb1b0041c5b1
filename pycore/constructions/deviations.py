"""Kinds of error that a hand makes in a move: the second half of a deviation's key ``<index>:<kind>``."""

ANGLE = "angle"
"""An angle marked or read with the protractor, degrees."""
LENGTH = "length"
"""A length marked or read with the ruler, or the first opening of the compasses; the quantity's unit."""
SECOND_LENGTH = "length-2"
"""The second opening of the compasses; the quantity's unit."""
PARALLEL = "parallel"
"""The turn of a set square while it slides, degrees."""
LENGTHS = (LENGTH, SECOND_LENGTH)
