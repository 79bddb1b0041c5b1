"""Arrows on axes: where one along an axis ends, which is drawn anyway: by arrowheads, ends, feet and the sum."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field

import pytest
from bench.pencil import strokes_in
from pencilled import NEUTRAL

from pycore import geometry
from pycore.constructions.methods import COMPONENTS
from pycore.forms.fields import default_form
from pycore.geometry import ORIGIN, Point
from pycore.practice.photograph import Photo, measure_read, measured_by
from pycore.practice.stroke_axes import is_doubtful
from pycore.practice.stroke_names import Names
from pycore.practice.stroke_reading import ReadPoint, StrokeReading, guides_of, read_strokes
from pycore.practice.stroke_sums import drawn_feet, read_at_feet
from pycore.practice.strokes import HEAD_SHORT, StrokeSheet
from pycore.sums.strokes import strokes_task

FORM = default_form(NEUTRAL.fields) | {"sheet": "problem", "method": COMPONENTS, "i1": "26", "i2": "10", "i3": "20"}
TASK = strokes_task(NEUTRAL, FORM)
AXES = next(one for one in TASK.drawings if COMPONENTS == one.construction.method)
START, STEPS = TASK.photo.origin, Names(AXES, TASK.photo.origin).wanted
"""The start, and the three arrows as they should be, mm; the first lies along the axis that goes up."""
DOWN, ABOVE = 60.0, 12.0
"""How far the axis goes down from the start, and up beyond the first arrow, mm."""
FAINT, PLAIN = 1.5, 2.8
"""Arrowheads: one that counts beside other signs alone, and one that does not outweigh any other."""
Strokes = list[dict]


def stroke(start: Point, end: Point, *, headed: bool = False, dark: float = 0.03) -> dict:
    """A line as the page's script finds it."""
    length = geometry.distance(start, end)
    heads = [[length - HEAD_SHORT, 1, 9.0]] if headed else []
    return {"x1": start.x, "y1": start.y, "x2": end.x, "y2": end.y, "dark": dark, "runs": [[0.0, length]],
            "blind": [], "heads": heads, "beside": []}  # fmt: skip


@dataclass
class Drawn:
    """A drawing on axes: by how many mm the first arrow is too long, arrowheads on its axis (mm above the start: how
    clear), by how many mm the feet of the second and third are too high, the result's step if it is not the sum, and
    how far the lines to the result run on past it (mm)."""

    longer: float = 0.0
    heads: Mapping[float, float] = field(default_factory=dict)
    skew: float = 0.0
    result: Point | None = None
    on: float = 2.0
    steps: Mapping[int, Point] = field(default_factory=lambda: STEPS)
    feet: bool = True

    @property
    def first(self) -> float:
        """How long the first arrow is, mm."""
        return self.steps[1].y + self.longer

    @property
    def end(self) -> Point:
        """The result's step: the sum of what was read at the feet."""
        across = math.fsum(step.x for step in self.steps.values())
        up = math.fsum(step.y for step in self.steps.values())
        return self.result or Point(across, up + self.longer + 2.0 * self.skew)

    def strokes(self) -> Strokes:
        """All of it as the page's script finds it; the first arrow is one line with its axis."""
        top = self.first + ABOVE
        up = stroke(START.plus(Point(0.0, -DOWN)), START.plus(Point(0.0, top)), dark=0.02)
        up["heads"] = [[DOWN + at - HEAD_SHORT, 1, clear] for at, clear in self.heads.items()]
        found = [up, stroke(START.plus(Point(-70.0, 0.0)), START.plus(Point(70.0, 0.0)), dark=0.02)]
        for step in (self.steps[2], self.steps[3]):
            tip = START.plus(step)
            found += [stroke(START, tip, headed=True), stroke(tip, START.plus(Point(step.x, 0.0)))]
            if self.feet:
                found.append(stroke(tip, START.plus(Point(0.0, step.y + self.skew))))
        past = [Point(math.copysign(self.on, one), 0.0) for one in (self.end.x, self.end.y)]
        across, above = past[0], Point(0.0, past[1].x)
        found += [stroke(START.plus(Point(0.0, self.end.y)), START.plus(self.end).plus(across)),
                  stroke(START.plus(Point(self.end.x, 0.0)), START.plus(self.end).plus(above))]  # fmt: skip
        return [*found, stroke(START, START.plus(self.end), headed=True)]


def read(found: Strokes) -> StrokeReading:
    """The reading of these strokes."""
    sheet = StrokeSheet(strokes_in(found), START, guides_of(TASK.drawings), TASK.box)
    reading = read_strokes(sheet, TASK.drawings)
    assert COMPONENTS == reading.method
    return reading


def point(reading: StrokeReading, name: str) -> ReadPoint:
    return next(one for one in reading.points if one.name == name)


def first_is_read(drawn: Drawn, within: float = 1.0) -> bool:
    """Whether nothing is asked and the first arrow is where it was drawn."""
    reading = read(drawn.strokes())
    return reading.sure and geometry.distance(point(reading, "T1").place, START.plus(Point(0.0, drawn.first))) < within


def test_the_sheet_has_its_first_arrow_on_an_axis():
    assert math.fabs(STEPS[1].x) < 0.1 < STEPS[1].y
    assert 3 == len(STEPS)
    assert min(math.fabs(Drawn().end.x), math.fabs(Drawn().end.y)) > 30.0


# Arrowheads.


@pytest.mark.parametrize("longer", [0.0, 10.0, -10.0])
@pytest.mark.parametrize("beside", [False, True])
def test_an_arrowhead_where_the_sum_says_is_sure(longer: float, beside: bool):
    """On the line, or beside it where arrow and axis meet at a flat angle."""
    drawn = Drawn(longer=longer)
    found = drawn.strokes()
    found[0]["beside" if beside else "heads"] = [[DOWN + drawn.first - HEAD_SHORT, 1, 6.0]]
    reading = read(found)
    assert reading.sure
    assert geometry.distance(point(reading, "T1").place, START.plus(Point(0.0, drawn.first))) < 1.0


def test_the_sum_is_taken_from_the_feet():
    """Both perpendiculars lean: the sum was read 4 mm higher than the points above the feet are."""
    assert first_is_read(Drawn(skew=2.0, heads={STEPS[1].y: PLAIN}))


def test_the_foot_of_a_leaning_perpendicular_is_where_it_meets_the_axis():
    drawn = Drawn(skew=2.0)
    sheet = StrokeSheet(strokes_in(drawn.strokes()), START, guides_of(TASK.drawings))
    across, up = read_at_feet(sheet, START.plus(STEPS[2]))
    assert across.value == pytest.approx(STEPS[2].x) and up.value == pytest.approx(STEPS[2].y + 2.0)
    assert 0.0 == across.error == up.error
    bare = StrokeSheet(strokes_in(Drawn(feet=False).strokes()), START, guides_of(TASK.drawings))
    _, guessed = read_at_feet(bare, START.plus(STEPS[2]))
    assert guessed.value == pytest.approx(STEPS[2].y) and guessed.error > 0.1


def test_a_faint_arrowhead_is_sure_where_sum_and_problem_agree_though_another_is_as_clear():
    assert first_is_read(Drawn(heads={STEPS[1].y + 0.5: FAINT, STEPS[1].y - 20.0: FAINT}))


def test_a_faint_arrowhead_that_the_problem_alone_has_is_asked():
    """The arrow is 8 mm too long, and something at its right length looks like an arrowhead."""
    drawn = Drawn(longer=8.0, heads={STEPS[1].y: FAINT})
    reading = read(drawn.strokes())
    assert not point(reading, "T1").sure


# Without an arrowhead.


def test_an_end_that_nothing_shows_is_sure_where_sum_and_problem_agree():
    assert first_is_read(Drawn())
    assert first_is_read(Drawn(longer=0.6), within=0.5)


@pytest.mark.parametrize("longer", [-10.0, -5.0, -2.5, 2.5, 5.0, 10.0])
def test_an_arrow_that_was_measured_wrong_is_not_read_as_right(longer: float):
    reading = read(Drawn(longer=longer).strokes())
    first = point(reading, "T1")
    assert not first.sure
    assert math.fabs(first.choices[0].y - START.y - STEPS[1].y - longer) < 1.0


def test_an_end_that_nothing_shows_is_asked_where_the_feet_are_not_seen():
    assert not point(read(Drawn(feet=False).strokes()), "T1").sure


@pytest.mark.parametrize("elsewhere", [-15.0, 15.0])
def test_an_end_that_nothing_shows_is_asked_where_an_arrowhead_is_elsewhere(elsewhere: float):
    reading = read(Drawn(heads={STEPS[1].y + elsewhere: PLAIN}).strokes())
    assert not reading.sure


def test_a_line_that_ends_where_the_sum_says_is_sure():
    drawn = Drawn(longer=10.0)
    found = drawn.strokes()
    found[0] = stroke(START.plus(Point(0.0, -DOWN)), START.plus(Point(0.0, drawn.first)), dark=0.02)
    reading = read(found)
    assert reading.sure
    assert geometry.distance(point(reading, "T1").place, START.plus(Point(0.0, drawn.first))) < 1.0


def test_a_line_that_ends_a_little_beyond_what_the_sum_says_counts_half():
    """A line without an arrowhead may run on."""
    drawn = Drawn()
    found = drawn.strokes()
    found[0] = stroke(START.plus(Point(0.0, -DOWN)), START.plus(Point(0.0, drawn.first + 1.1)), dark=0.02)
    reading = read(found)
    assert reading.sure
    assert geometry.distance(point(reading, "T1").place, START.plus(Point(0.0, drawn.first))) < 0.7


# The other points.


@pytest.mark.parametrize("turn", [-0.7, 0.7])
def test_both_perpendiculars_say_where_an_arrow_ends_that_was_found_aside(turn: float):
    """A line beside it was found together with it."""
    drawn, tip = Drawn(heads={STEPS[1].y: 9.0}), START.plus(STEPS[3])
    found = drawn.strokes()
    aside = START.moved(geometry.distance(START, tip), geometry.direction(START, tip) + turn)
    found[5] = stroke(START, aside, headed=True)
    reading = read(found)
    assert reading.sure
    assert geometry.distance(point(reading, "T3").place, tip) < 0.7


def test_lines_that_run_on_past_the_result_begin_at_it_where_they_cross():
    drawn = Drawn(on=11.0, heads={STEPS[1].y: 9.0})
    found = drawn.strokes()
    found[-1] = stroke(START, START.plus(drawn.end.times(1.3)))
    reading = read(found)
    assert reading.sure
    assert geometry.distance(point(reading, "N").place, START.plus(drawn.end)) < 0.5


def test_an_arrow_that_was_found_as_two_strokes_is_one():
    again = stroke(START, START.plus(STEPS[3].times(1.05)), dark=0.01)
    reading = read([*Drawn().strokes(), again])
    assert reading.sure
    places = {one.name: one.place for one in reading.points}
    for number, step in STEPS.items():
        assert geometry.distance(places[f"T{number}"], START.plus(step)) < 1.0


@pytest.mark.parametrize("turn", [-5.0, 5.0])
def test_a_first_try_beside_the_result_is_no_other_reading(turn: float):
    """It crosses a line that runs on past the result, but it is not the sum."""
    drawn = Drawn(heads={STEPS[1].y: 9.0}, on=8.0)
    long, way = geometry.distance(ORIGIN, drawn.end), geometry.direction(ORIGIN, drawn.end)
    tried = stroke(START, START.moved(1.1 * long, way + turn), dark=0.012)
    reading = read([*drawn.strokes(), tried])
    assert reading.sure
    assert geometry.distance(point(reading, "N").place, START.plus(drawn.end)) < 0.5


def test_an_end_that_the_sum_does_not_say_is_doubtful_without_a_clear_arrowhead():
    """And with one, where sum and problem agree on another end: two that know nothing of each other. A made-up
    photograph had what looked like an arrowhead 10 mm before the end, and was called wrong."""
    long = STEPS[1].y
    places = {"N": START.plus(Drawn().end), **{f"T{number}": START.plus(step) for number, step in STEPS.items()}}
    for heads, at, doubtful in (({}, 0.0, False), ({}, 5.0, True), ({long + 5.0: 9.0}, 5.0, False)):
        sheet = StrokeSheet(strokes_in(Drawn(heads=heads).strokes()), START, guides_of(TASK.drawings))
        axis = sheet.strokes[0]
        off = {**places, "T1": START.plus(Point(0.0, long + at))}
        assert doubtful is is_doubtful(sheet, off, "T1", "N", None, (axis, axis))
    assert is_doubtful(sheet, off, "T1", "N", STEPS[1], (axis, axis))
    assert not is_doubtful(sheet, off, "T1", "N", Point(0.0, long + 8.0), (axis, axis))


def test_a_result_that_is_not_the_sum_is_read_where_it_was_drawn():
    """A sign slip: the third arrow's component was added the wrong way."""
    right = Drawn().end
    drawn = Drawn(result=Point(right.x - 2.0 * STEPS[3].x, right.y), heads={STEPS[1].y: 9.0})
    reading = read(drawn.strokes())
    assert geometry.distance(point(reading, "N").place, START.plus(drawn.end)) < 0.5


def test_lengths_that_are_swapped_may_be_directions_that_are_mirrored():
    """Nobody can tell from the lines alone: it is asked which arrow is which."""
    two, three = (geometry.distance(ORIGIN, STEPS[number]) for number in (2, 3))
    swapped = {1: STEPS[1], 2: STEPS[2].times(three / two), 3: STEPS[3].times(two / three)}
    reading = read(Drawn(steps=swapped, heads={STEPS[1].y: 9.0}).strokes())
    assert "names" in reading.why


# A fold in the paper.


def across_the_paper(share: float) -> dict:
    """A line up the paper, beside the drawing, over this share of what is read."""
    x, middle, half = START.x + 40.0, TASK.box.centre.y, share * (TASK.box.top - TASK.box.bottom) / 2.0
    return stroke(Point(x, middle - half), Point(x + 1.0, middle + half))


def test_a_fold_from_edge_to_edge_is_not_asked_about():
    drawn = Drawn(heads={STEPS[1].y: 9.0}).strokes()
    assert read([*drawn, across_the_paper(1.0)]).sure
    assert "more" in read([*drawn, across_the_paper(0.6)]).why


@pytest.mark.parametrize("head", [0.0, 1.0, 2.0, 3.0])
@pytest.mark.parametrize("short", [2.5, 3.0, 5.0, 8.0, 15.0, 25.0])
def test_an_arrow_that_ends_too_early_is_not_read_where_nothing_is_drawn(short: float, head: float):
    """With a right result: sum and problem agree on a place that no pencil has reached."""
    drawn = Drawn()
    found = drawn.strokes()
    end = START.plus(Point(0.0, drawn.first - short))
    found[0] |= stroke(START.plus(Point(0.0, -DOWN)), end, dark=0.02)
    found[0]["heads"] = [[DOWN + drawn.first - short - HEAD_SHORT, 1, head]] if head else []
    reading = read(found)
    assert not reading.sure or geometry.distance(point(reading, "T1").place, end) < 1.0


def test_a_line_that_ends_within_a_hand_of_the_arrow_confirms_it():
    drawn = Drawn()
    found = drawn.strokes()
    found[0] |= stroke(START.plus(Point(0.0, -DOWN)), START.plus(Point(0.0, drawn.first - 1.0)), dark=0.02)
    reading = read(found)
    assert reading.sure
    assert geometry.distance(point(reading, "T1").place, START.plus(Point(0.0, drawn.first))) < 1.0


# Judged from the feet.


def sheet_with(drawn: Drawn) -> StrokeSheet:
    return StrokeSheet(strokes_in(drawn.strokes()), START, guides_of(TASK.drawings), TASK.box)


def places(drawn: Drawn) -> dict[str, Point]:
    """Where the points of a drawing are, mm."""
    steps = {"O": ORIGIN, "T1": Point(0.0, drawn.first), "T2": STEPS[2], "T3": STEPS[3], "N": drawn.end}
    return {name: START.plus(step) for name, step in steps.items()}


def test_feet_are_where_the_perpendiculars_meet_the_axes():
    """The first arrow lies along an axis: nobody draws a perpendicular over it, and it counts nothing across."""
    feet = drawn_feet(sheet_with(drawn := Drawn(skew=2.0)), AXES.construction, places(drawn))
    steps = {"X1": ORIGIN, "X2": Point(STEPS[2].x, 0.0), "Y2": Point(0.0, STEPS[2].y + 2.0),
             "X3": Point(STEPS[3].x, 0.0), "Y3": Point(0.0, STEPS[3].y + 2.0)}  # fmt: skip
    for name, step in steps.items():
        assert geometry.distance(feet[name], START.plus(step)) < 0.01, name


def test_the_axes_say_how_the_paper_was_turned_and_an_arrow_over_one_does_not():
    """The first arrow, 1.3° off, and its axis are found as one stroke: its direction is the arrow's."""
    found = Drawn(heads={STEPS[1].y: 9.0}).strokes()
    top, bottom = (ORIGIN.moved(length, 90.0 + 1.3) for length in (STEPS[1].y + ABOVE, -DOWN))
    found[0] |= {"x1": START.x + bottom.x, "y1": START.y + bottom.y, "x2": START.x + top.x, "y2": START.y + top.y}
    # A line that belongs to nothing, longer than either axis.
    found.append(stroke(START, START.plus(ORIGIN.moved(150.0, -90.0 - 1.2)), dark=0.01))
    way = point(read(found), "Y").place.minus(START)
    assert math.fabs(geometry.direction(ORIGIN, way) - 90.0) < 0.1


def test_a_foot_that_is_not_seen_is_not_taken_for_one():
    feet = drawn_feet(sheet_with(drawn := Drawn(feet=False)), AXES.construction, places(drawn))
    assert {"X1", "X2", "X3"} <= feet.keys() and not {"Y2", "Y3"} & feet.keys()


def test_a_result_is_judged_by_the_sum_of_what_was_read_at_the_feet():
    """Perpendiculars that lean by a few degrees moved the feet, and the learner added what was read there."""
    drawn = Drawn(skew=2.0)
    low = min(place.y for place in TASK.photo.marks)
    seen = [Point(8.0 * place.x, 2400.0 - 8.0 * (place.y - low)) for place in TASK.photo.marks]
    flat = measured_by(Photo(2400.0, 2400.0, 1.0), TASK.photo.marks, seen, by_hand=False)
    at, exact = places(drawn), dict.fromkeys(places(drawn), 0.0)
    feet = drawn_feet(sheet_with(drawn), AXES.construction, at)
    assert "accept" == measure_read(AXES, flat, at, exact, feet).band
    assert "accept" != measure_read(AXES, flat, at, exact, {}).band
    # The feet do not excuse a result that is not their sum.
    at["N"] = at["N"].plus(Point(0.0, -5.0))
    assert "accept" != measure_read(AXES, flat, at, exact, feet).band
