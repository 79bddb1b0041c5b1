"""Where two strokes meet at so flat an angle that their crossing says little: by their arrowheads and ends.

Both run into one another before they meet, so that the one that is found ends too early and the other too late. An
arrowhead there is seen on either of them, or a little beside it.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from pycore import geometry
from pycore.geometry import Point
from pycore.practice.strokes import FAINT_HEAD, PencilStroke

REACH, ASIDE = 10.0, 1.8
"""How far along from the crossing and across from either stroke a sign of the meeting may be, mm."""
TOGETHER, APART = 1.6, 2.5
"""Signs within so many mm are of one place, and beyond so many of another."""
CLEAREST, END = 6.0, 1.0
"""The most that an arrowhead counts, and what an end of a stroke counts."""
ENOUGH, CLEARER = 4.0, 1.7
"""What the signs of a place must count at least, and how many times as much as those of any other place."""


@dataclass(frozen=True, slots=True)
class _Sign:
    """A sign that strokes meet: how far along the first of them from their crossing (mm), where, on which of them (0,
    1), and what it counts."""

    along: float
    place: Point
    side: int
    worth: float


def meeting(crossed: Point, one: PencilStroke, other: PencilStroke) -> Point | None:
    """Where two strokes meet that cross at a flat angle in ``crossed``; None where no place is clear."""
    signs = sorted(_signs(crossed, one, other), key=lambda sign: sign.along)
    places = sorted((_together(signs, sign.along) for sign in signs), key=lambda found: -_worth(found))
    if not places or _worth(places[0]) < ENOUGH:
        return None
    best = places[0]
    middle = math.fsum(sign.along * sign.worth for sign in best) / _worth(best)
    elsewhere = [sign for sign in signs if math.fabs(sign.along - middle) > APART]
    if any(CLEARER * _worth(_together(elsewhere, sign.along)) > _worth(best) for sign in elsewhere):
        return None
    whole = _worth(best)
    return Point(math.fsum(sign.place.x * sign.worth for sign in best) / whole,
                 math.fsum(sign.place.y * sign.worth for sign in best) / whole)  # fmt: skip


def _signs(crossed: Point, one: PencilStroke, other: PencilStroke) -> Iterator[_Sign]:
    for side, stroke in enumerate((one, other)):
        found = [(at, min(clear, CLEAREST)) for at, _, clear in stroke.heads if clear > FAINT_HEAD]
        found += [(at, min(clear, CLEAREST) / 2.0) for at, _, clear in stroke.beside if clear > FAINT_HEAD]
        found += [(0.0, END), (stroke.length, END)]
        for at, worth in found:
            place = stroke.at(at)
            along = geometry.dot(place.minus(crossed), one.way)
            aside = max(math.fabs(one.across(place)), math.fabs(other.across(place)))
            if math.fabs(along) < REACH and aside < ASIDE:
                yield _Sign(along, place, side, worth)


def _together(signs: Sequence[_Sign], along: float) -> list[_Sign]:
    """Of the signs of one place the clearest on each stroke: it is one arrowhead, however often it was seen."""
    near = [sign for sign in signs if math.fabs(sign.along - along) < TOGETHER]
    sides = [[sign for sign in near if sign.side == side] for side in (0, 1)]
    return [max(some, key=lambda sign: sign.worth) for some in sides if some]


def _worth(signs: Sequence[_Sign]) -> float:
    return math.fsum(sign.worth for sign in signs)
