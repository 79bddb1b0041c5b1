"""What a hand may do is accepted, whatever the method: right drawings with a hand's slips, made up by their numbers
(tests/pencilled.py), judged from points that are seen from straight above."""

from collections import Counter

import pytest
from pencilled import METHODS, pencilled
from unit.test_photograph import from_above, judged, points, want

from pycore import geometry
from pycore.geometry import Point
from pycore.practice.photograph import measure_read

PARTLY = ("stopped", "random")
"""Drawings that are not finished, and arrows of any length, which may be nearly right."""


@pytest.mark.parametrize("method", METHODS)
def test_honest_drawings_are_accepted_and_usual_mistakes_are_not(method: str) -> None:
    """Judged line by line at 95 %, corners by how far they lie from tips, 35 of 100 right ones were accepted and 31
    called wrong."""
    right, mistaken = Counter(), Counter()
    for number in range(70):
        sheet = pencilled(number, method)
        if sheet.mistake in PARTLY or sheet.method != method:
            continue
        places, feet = ({name: Point(*place) for name, place in some.items()} for some in (sheet.points, sheet.feet))
        exact = dict.fromkeys(places, 0.0)
        band = measure_read(sheet.want.drawing, from_above(sheet.want), places, exact, feet).band
        (mistaken if sheet.mistake else right)[band] += 1
    assert right["wrong"] == 0 and right["accept"] >= 0.8 * right.total() > 16.0, right
    assert mistaken["accept"] == 0 and mistaken["wrong"] >= 0.95 * mistaken.total() > 9.0, mistaken


@pytest.mark.parametrize(("parallels", "longer", "turned"), [("protractor", 6.0, 0.0), ("compasses", 0.0, 5.0)])
def test_of_a_dashed_line_its_direction_counts_and_of_an_arc_its_radius(
    parallels: str, longer: float, turned: float
) -> None:
    """The corner farther along the dashed line from the second tip, or on the arc about that tip: that line is right,
    and the one from the first tip is not."""
    one = want(method="parallelogram", parallels=parallels)
    drawn = points(one)
    start, corner = drawn["T2"], drawn["R"]
    length, way = geometry.distance(start, corner), geometry.direction(start, corner)
    drawn["R"] = start.moved(length + longer, way + turned)
    bands = {line.ends: line.band for line in judged(one, drawn).lines}
    assert bands["T2", "R"] == "accept" and bands["T1", "R"] == "wrong", bands


def test_a_sum_of_readings_may_be_off_by_what_all_of_them_allow() -> None:
    """Components: three lengths are read and one is set off along each axis, so 2 mm are in the hand; 8 mm are not."""
    one = want(method="components")
    for far, band in ((2.0, "accept"), (8.0, "wrong")):
        drawn = points(one)
        drawn["N"] = drawn["N"].moved(far, geometry.direction(drawn["O"], drawn["N"]))
        (last,) = [line for line in judged(one, drawn).lines if line.ends == ("O", "N")]
        assert last.band == band, (far, last)


def test_a_line_set_off_from_a_short_arrow_may_be_off_by_what_that_arrow_hides() -> None:
    """Two arrows of 6 mm tell their direction to 2°: the third, 88 mm and 4° off, was called wrong. From arrows of
    60 mm it is."""
    for short, band in ((True, "accept"), (False, "wrong")):
        one = want(method="tip-to-tail", i1="1" if short else "10", i2="1" if short else "10", i3="14", scale="1.6")
        drawn = points(one)
        start = drawn["P2"]
        length, way = geometry.distance(start, drawn["N"]), geometry.direction(start, drawn["N"])
        drawn["N"] = start.moved(length, way + 4.0)
        bands = {line.ends: line.band for line in judged(one, drawn).lines}
        assert bands["P2", "N"] == band, (short, bands)


def test_the_arcs_other_crossing_is_not_the_corner() -> None:
    """It has both radii."""
    one = want(method="parallelogram", parallels="compasses")
    drawn = points(one)
    first, second, corner = drawn["T1"], drawn["T2"], drawn["R"]
    way = geometry.direction(first, second)
    turned = geometry.direction(first, corner) - way
    drawn["R"] = first.moved(geometry.distance(first, corner), way - turned)
    bands = {line.ends: line.band for line in judged(one, drawn).lines}
    assert geometry.distance(second, corner) == pytest.approx(geometry.distance(second, drawn["R"]))
    assert {"wrong"} == {bands["T1", "R"], bands["T2", "R"]}, bands


def test_a_corner_that_slides_along_the_longer_side_is_wrong_beside_a_dot() -> None:
    """The shorter side is of 3 mm: it has no direction, but an end."""
    one = want(method="parallelogram", i1="0.6", i2="20", i3="14", scale="2")
    drawn = points(one)
    start, corner = drawn["T1"], drawn["R"]
    drawn["R"] = start.moved(geometry.distance(start, corner) + 20.0, geometry.direction(start, corner))
    assert "wrong" in {line.band for line in judged(one, drawn).lines if line.ends[1] == "R"}
