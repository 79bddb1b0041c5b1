"""Whether two problems have the same phasors."""

import math
from collections.abc import Sequence

from pycore.constructions.construction import Arm
from pycore.phasor import wrap

SAME = 1e-9
"""Two values are equal within this share of the largest phasor, or this many degrees."""


def same_arms(some: Sequence[Arm], others: Sequence[Arm]) -> bool:
    """Return whether two problems have the same phasors, however their values were typed."""
    if len(some) != len(others):
        return False
    near = SAME * max((arm.size for arm in some), default=1.0)
    return all(
        one.key == other.key and math.fabs(one.size - other.size) <= near
        and math.fabs(wrap(one.angle - other.angle)) <= SAME
        for one, other in zip(some, others, strict=True)
    )  # fmt: skip
