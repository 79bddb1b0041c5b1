"""One photographed drawing marked as its class set marks answers: by the result that it shows, and by its lines."""

import math
from collections.abc import Sequence

from pycore import geometry, quantity
from pycore.constructions.moves import CrossArcs, Intersect
from pycore.geometry import ORIGIN, Point
from pycore.pages.class_marks import angle_band, length_band
from pycore.pages.mistake_names import short
from pycore.pages.pile import MarkedDrawing
from pycore.phasor import wrap
from pycore.practice.answers import judge_measured
from pycore.practice.explaining import LearnerAnswer
from pycore.practice.following import LearnerIntermediate, own_is_right
from pycore.practice.marking import ACCEPT, LOOK, MOST_NAMED, WRONG
from pycore.practice.photograph import PhotoJudgement
from pycore.practice.task import Limits, Task
from pycore.sums.photograph import PhotoTask
from pycore.words import pile as words


def _ratio(drawn: Point, right: Point) -> complex:
    return complex(drawn.x, drawn.y) / complex(right.x, right.y)


def _first(want: PhotoTask, task: Task, measured: PhotoJudgement) -> LearnerIntermediate | None:
    """Return the drawn first diagonal, if the method has one and it is drawn."""
    construction = want.drawing.construction
    corner = next((one.point for one in construction.moves if isinstance(one, Intersect | CrossArcs)), "")
    value = next((one.value for one in task.earlier if one.key == "first"), None)
    if not corner or value is None or corner not in measured.points or corner == construction.end:
        return None
    right = construction.figure.points[corner]
    if right == ORIGIN:
        return None
    drawn = value * _ratio(measured.points[corner], right)
    return LearnerIntermediate("first", math.hypot(drawn.real, drawn.imag), geometry.direction(ORIGIN, _point(drawn)))


def _point(value: complex) -> Point:
    return Point(value.real, value.imag)


def marked(want: PhotoTask, task: Task, measured: PhotoJudgement, limits: Limits) -> MarkedDrawing:
    """Return a measured drawing as the class set marks it: by the result that it shows, from its own first diagonal."""
    writing, end = task.writing, want.drawing.construction.end
    asked = writing.number(task.size)
    if measured.result is None or end not in measured.points:
        slips = _slips(measured)
        return MarkedDrawing("", asked, writing.unit, "", WRONG, (WRONG,) * 3, slips, "", _by_part(measured))
    size, right = measured.result / want.drawing.factor, want.drawing.construction.end_point
    angle = None
    if task.angle is not None and right != ORIGIN and measured.points[end] != ORIGIN:
        drawn = task.result * _ratio(measured.points[end], right)
        angle = geometry.direction(ORIGIN, _point(drawn))
    own = _first(want, task, measured)
    reply = judge_measured(task, LearnerAnswer(size, angle), (own,) if own else (), limits)
    first = reply.marked.band if own is None else ACCEPT if own_is_right(task, own, reply.answer.how, limits) else WRONG
    bands = first, length_band(reply), angle_band(task, reply)
    causes = reply.marked.causes[:MOST_NAMED] if not reply.follows else ()
    named = _slips(measured) or tuple(dict.fromkeys(short(one.mistakes[0].key) for one in causes))
    band = _whole_band(reply.marked.band, measured, bands)
    off = writing.apart(math.fabs(reply.marked.size_off), task.size)
    return MarkedDrawing(
        writing.number(size), asked, writing.unit, off, band, bands, () if band == ACCEPT else named,
        "" if angle is None else words.with_side(quantity.fixed(math.fabs(wrap(angle)), 1, writing.mark), wrap(angle)),
        _by_part(measured),
    )  # fmt: skip


def _by_part(measured: PhotoJudgement) -> tuple[str, ...]:
    """The bands of what a question paper gives marks for: scale, directions, lengths, result."""
    solid = [line for line in measured.lines if line.kind != "dashed"]
    dashed = [band for line in measured.lines if line.kind == "dashed" for band in line.bands]
    scale = WRONG if measured.longer else ACCEPT
    lengths = ACCEPT if measured.longer else _worst([line.bands[0] for line in solid])
    result = WRONG if measured.result is None else _worst(dashed)
    return scale, _worst([line.bands[1] for line in solid]), lengths, result


def _worst(bands: Sequence[str]) -> str:
    return max(bands, key=(ACCEPT, LOOK, WRONG).index, default=ACCEPT)


def _whole_band(band: str, measured: PhotoJudgement, parts: Sequence[str]) -> str:
    """A right result over a line that is off is looked at again: two slips may have met."""
    lines = measured.band
    if band == ACCEPT and (lines == WRONG or WRONG in parts):
        return LOOK
    return band


def _slips(measured: PhotoJudgement) -> tuple[str, ...]:
    """The short names of what went wrong line by line; what all lines have in common stands for all of them."""
    if measured.longer:
        return (words.OTHER_SCALE,)
    if measured.shifted:
        return (words.RULER_EDGE,)
    whole = ("mirrored",) if measured.mirrored else ()
    keys = (*whole, *(slip.key for line in measured.lines for slip in line.slips))
    return tuple(dict.fromkeys(map(short, keys)))
