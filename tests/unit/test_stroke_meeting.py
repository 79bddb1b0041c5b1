"""Two strokes that meet at a flat angle: their arrowheads say where, and without a clear place it is asked."""

from collections.abc import Sequence

import pytest
from bench.pencil import strokes_in
from pencilled import NEUTRAL, pencilled

from pycore import geometry
from pycore.geometry import Point
from pycore.practice.stroke_meeting import meeting
from pycore.practice.stroke_reading import ReadPoint, guides_of, read_strokes
from pycore.practice.strokes import HEAD_SHORT, PencilStroke, StrokeSheet, crossing, stroke_of
from pycore.sums.strokes import strokes_task

MET = Point(60.0, 0.0)
Head = tuple[float, int, float]


def line(start: Point, end: Point, *heads: Head, beside: Sequence[Head] = ()) -> PencilStroke:
    """A solid stroke with arrowheads at so many mm from its start."""
    length = geometry.distance(start, end)
    seen, aside = ([(at - HEAD_SHORT * way, way, clear) for at, way, clear in some] for some in (heads, beside))
    stroke = stroke_of(start, end, 0.03, [(0.0, length)], [], seen, aside)
    assert stroke is not None
    return stroke


def pair(*heads: Head, beside: Sequence[Head] = ()) -> tuple[PencilStroke, PencilStroke, Point]:
    """The result, which is found too long, and a last arrow that is found too short, with ``beside`` it heads that are
    counted from its end; where both cross, 4 mm before they meet."""
    result = line(Point(0.0, 0.0), Point(66.0, 0.0), *heads)
    arrow = line(Point(20.0, 6.5), Point(53.0, 0.5), beside=[(33.5 + at, way, clear) for at, way, clear in beside])
    crossed = crossing(result, arrow)
    assert crossed is not None
    return result, arrow, crossed


def test_heads_on_both_strokes_say_where_they_meet():
    result, arrow, crossed = pair((60.0, 1, 5.0), beside=[(6.8, 1, 3.0)])
    met = meeting(crossed, result, arrow)
    assert met is not None
    assert geometry.distance(crossed, MET) > 3.0
    assert geometry.distance(met, MET) < 0.7
    assert meeting(crossed, arrow, result) == pytest.approx(met)


@pytest.mark.parametrize(
    "heads", [[], [(60.0, 1, 1.5)], [(60.0, 1, 5.0), (54.0, 1, 4.0)]], ids=["none", "faint", "two places"]
)
def test_without_a_clear_place_there_is_none(heads: list[Head]):
    result, arrow, crossed = pair(*heads)
    assert None is meeting(crossed, result, arrow)


def end_of(seed: int, *, headed: bool) -> tuple[ReadPoint, Point]:
    """The end of a drawing tip to tail as it is read, and where it is; the last arrow was found 1.2 mm aside at its
    tip, so that it crosses the result elsewhere."""
    sheet = pencilled(seed)
    task, o = strokes_task(NEUTRAL, sheet.form), sheet.want.origin
    end = Point(*sheet.points["N"])
    found = []
    for drawn in sheet.strokes:
        into_end = geometry.distance(drawn.end, end) < 1.0
        tip = drawn.end
        if into_end and geometry.distance(drawn.start, o) > 3.0:
            tip = tip.moved(1.2, geometry.direction(drawn.start, drawn.end) + 90.0)
        length = geometry.distance(drawn.start, tip)
        heads = [[length - HEAD_SHORT, 1, 9.0]] if drawn.arrow and (headed or not into_end) else []
        found.append({"x1": drawn.start.x, "y1": drawn.start.y, "x2": tip.x, "y2": tip.y, "dark": 0.03,
                      "runs": [[0.0, length]], "blind": [], "heads": heads})  # fmt: skip
    sheet_read = StrokeSheet(strokes_in(found), o, guides_of(task.drawings))
    reading = read_strokes(sheet_read, task.drawings)
    assert "tip-to-tail" == reading.method
    return next(point for point in reading.points if point.name == "N"), end


@pytest.mark.parametrize("seed", [58, 199, 208])
def test_the_result_s_arrowhead_is_believed_before_a_flat_crossing(seed: int):
    point, end = end_of(seed, headed=True)
    assert point.sure
    assert geometry.distance(point.place, end) < 1.0


@pytest.mark.parametrize("seed", [58, 199, 208])
def test_without_arrowheads_a_flat_crossing_is_asked(seed: int):
    point, _ = end_of(seed, headed=False)
    assert not point.sure


def test_an_arrowhead_beside_a_stroke_counts_half():
    clear = line(Point(0.0, 0.0), Point(50.0, 0.0), beside=[(40.0, 1, 6.0)])
    faint = line(Point(0.0, 0.0), Point(50.0, 0.0), beside=[(40.0, 1, 3.0)])
    assert clear.head_off(Point(41.0, 0.0)) == pytest.approx(1.0)
    assert faint.head_off(Point(41.0, 0.0)) is None
