"""A chain whose last arrow lies back along the second: both are found as one stroke, or as two too flat to cross."""

import pytest
from bench.pencil import strokes_in
from pencilled import NEUTRAL, pencilled

from pycore import geometry
from pycore.geometry import Point
from pycore.practice.stroke_reading import StrokeReading, guides_of, read_strokes
from pycore.practice.strokes import HEAD_SHORT, StrokeSheet
from pycore.sums.strokes import strokes_task

SHORT, LONG, TWO_STROKES = 50113, 50056, 50104
"""Sheets whose last arrow is opposite to the second within a degree, shorter and longer than that, and within five."""


def places_of(seed: int) -> dict[str, Point]:
    """Where the points of a sheet are, with its start."""
    sheet = pencilled(seed)
    assert "tip-to-tail" == sheet.method
    return {"O": sheet.want.origin} | {name: Point(*place) for name, place in sheet.points.items()}


def stroke(start: Point, end: Point, *, headed: bool = True) -> dict:
    """A line as the page's script finds it."""
    length = geometry.distance(start, end)
    heads = [[length - HEAD_SHORT, 1, 9.0]] if headed else []
    return {"x1": start.x, "y1": start.y, "x2": end.x, "y2": end.y, "dark": 0.03, "runs": [[0.0, length]],
            "blind": [], "heads": heads}  # fmt: skip


def read(seed: int, found: list[dict]) -> StrokeReading:
    """The reading of a sheet with these strokes on it."""
    task = strokes_task(NEUTRAL, pencilled(seed).form)
    return read_strokes(StrokeSheet(strokes_in(found), task.photo.origin, guides_of(task.drawings)), task.drawings)


def one_stroke(seed: int, *, headed: bool) -> StrokeReading:
    """The second and the last arrow found as one; whether the second's head was."""
    at = places_of(seed)
    begun = at["P1" if seed == SHORT else "N"]
    return read(seed, [stroke(at["O"], at["P1"]), stroke(begun, at["P2"], headed=headed), stroke(at["O"], at["N"])])


def off(seed: int, reading: StrokeReading) -> float:
    """How far the worst point is from where it was drawn."""
    at = places_of(seed)
    assert {"P1", "P2", "N"} <= {point.name for point in reading.points}
    return max(geometry.distance(point.place, at[point.name]) for point in reading.points if point.name in at)


@pytest.mark.parametrize("seed", [SHORT, LONG])
def test_a_last_arrow_on_the_second_is_found(seed: int):
    reading = one_stroke(seed, headed=True)
    assert reading.sure and "tip-to-tail" == reading.method
    assert off(seed, reading) < 1.0


@pytest.mark.parametrize("seed", [SHORT, LONG])
def test_without_an_arrowhead_its_far_end_alone_is_asked(seed: int):
    reading = one_stroke(seed, headed=False)
    assert not reading.why and not reading.missing
    assert ["P2"] == [point.name for point in reading.points if not point.sure]
    assert off(seed, reading) < 1.0


def test_a_last_arrow_that_is_found_too_short_still_begins_at_the_far_end():
    at = places_of(TWO_STROKES)
    begun = at["P2"].moved(8.0, geometry.direction(at["P2"], at["N"]))
    reading = read(TWO_STROKES, [stroke(at["O"], at["P1"]), stroke(at["P1"], at["P2"]), stroke(begun, at["N"]),
                                 stroke(at["O"], at["N"])])  # fmt: skip
    assert reading.sure
    assert off(TWO_STROKES, reading) < 1.0


@pytest.mark.parametrize("beyond", [15.0, 30.0])
def test_a_line_that_only_runs_on_is_no_third_arrow(beyond: float):
    """Two arrows of three are drawn; the second line runs on past its tip."""
    at = places_of(SHORT)
    long = at["P2"].moved(beyond, geometry.direction(at["P1"], at["P2"]))
    reading = read(SHORT, [stroke(at["O"], at["P1"]), stroke(at["P1"], long, headed=False), stroke(at["O"], at["P2"])])
    assert not reading.sure
