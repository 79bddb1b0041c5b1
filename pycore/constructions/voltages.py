"""Thin lines in the directions of phase voltages, from which each current lags by its own angle.

They are drawn before the currents and only looked at: every other move is the construction's own, so that points, scale
and errors of the hand are those of the construction without them.
"""

from collections.abc import Mapping
from dataclasses import replace

from pycore.constructions import step_kinds
from pycore.constructions.construction import Construction, Step
from pycore.constructions.moves import Direction, Start
from pycore.constructions.names import START_POINT, voltage_of

BEFORE = (step_kinds.SCALE, step_kinds.REFERENCE, step_kinds.AXES)


def with_voltages(construction: Construction, voltages: Mapping[int, float], reference: float) -> Construction:
    """Return a construction that begins with the directions of the voltages, by number of the line (degrees).

    The one that lies along the first direction (``reference``) is drawn already, or is that of the first current.
    """
    steps = construction.steps
    place = next(index for index, step in enumerate(steps) if step.name not in BEFORE)
    following = steps[place]
    # The common point is marked with the first stroke on the paper.
    start = tuple(move for move in following.moves if isinstance(move, Start))
    others = tuple(move for move in following.moves if not isinstance(move, Start))
    directions = tuple(
        Direction(voltage_of(number), START_POINT, degrees)
        for number, degrees in voltages.items()
        if degrees != reference
    )
    drawn = Step(step_kinds.VOLTAGES, (*start, *directions), tuple(voltages))
    return replace(construction, steps=(*steps[:place], drawn, replace(following, moves=others), *steps[place + 1 :]))
