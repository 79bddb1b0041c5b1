"""Usual slips at ruler and protractor, told from one wrong line: what would give just this length or direction."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from pycore.constructions.moves import TurnAngle, turn_of
from pycore.constructions.names import START_POINT
from pycore.constructions.retrace import RetracedPoint
from pycore.phasor import wrap
from pycore.words import mistakes as words
from pycore.words import photograph as photo_words
from pycore.words.phrase import Phrase

SLIPS_ANGLE, SLIPS_LENGTH = 2.5, 1.5
"""How near (degrees; mm beside 2 % of the length) a line must come to what a slip gives to be named for it."""
SAME_SHARE = 0.02


@dataclass(frozen=True, slots=True)
class LineMistake:
    """A mistake that fits a line: what happened, and where to look."""

    key: str
    name: Phrase
    look: Phrase


def same_length(length: float, other: float) -> bool:
    """Whether two lengths (mm) are the same for a slip to be named."""
    return math.fabs(length - other) <= SLIPS_LENGTH + SAME_SHARE * other


def turned_by_slip(
    turn: TurnAngle, traced: RetracedPoint, off: float, names: Mapping[str, Phrase]
) -> Iterator[LineMistake]:
    """A direction that a usual slip at the protractor gives; none is named where two would."""
    right = wrap(turn_of(turn, traced.so_far.readings))
    size = math.fabs(right)
    sense = 1.0 if right > 0 else -1.0
    at_tip = "-at-tip" if turn.back and turn.at != START_POINT else ""
    wrong_angles = {
        "reversed": right + 180.0,
        f"other-scale{at_tip}": sense * (180.0 - size),
        f"wrong-way{at_tip}": -right,
        "tens": sense * (size + 10.0),
        "tens-less": sense * (size - 10.0),
    }
    if size in (0.0, 180.0):
        wrong_angles = {"reversed": right + 180.0}
    fitting = [
        key for key, angle in wrong_angles.items()
        if math.fabs(wrap(right + off - angle)) <= SLIPS_ANGLE and math.fabs(wrap(angle - right)) > 4.0
    ]  # fmt: skip
    for key in fitting[:2]:
        yield LineMistake(
            key,
            *(words.mistake_text(key, **names) if key in words.NAMES else photo_words.mistake_text(key, names["a"])),
        )
