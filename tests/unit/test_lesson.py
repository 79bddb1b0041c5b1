"""The lesson view's instruments, read back from the finished pictures as a learner would read them."""

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

import pytest
from calculators.neutral_current.forms import form as problem

from pycore import lettering
from pycore.calculators.neutral_current.page import NeutralCurrent
from pycore.constructions.frames import COMPASSES, LINE, PROTRACTOR, RULER, SQUARES, Frame
from pycore.constructions.moves import (
    CrossArcs,
    DrawParallel,
    DropPerpendicular,
    Join,
    ReadAngle,
    SumOf,
    Supplement,
    TurnAngle,
)
from pycore.constructions.names import DIAGONAL
from pycore.drawing import Group, Line, Page, Shape, Text, walk
from pycore.geometry import Point, direction, distance
from pycore.phasor import wrap
from pycore.sheet.laying import HEIGHT, WIDTH
from pycore.sheet.lesson_view import _Showing
from pycore.sheet.plates import middle_of
from pycore.sheet.tools import BESIDE
from pycore.sums.classroom import SumLesson
from pycore.sums.lesson import Lesson

COUNT = 100
SCREEN = 108.0
"""Height of the screen in units; the view is lower by the strip of values."""
EXAMPLE = {"i1": "18.4", "i2": "11.2", "i3": "24.6"}
DEGENERATE = {
    "two lines at zero": {"i1": "0", "i2": "7", "i3": "0"},
    "one line at zero": {"i1": "0", "i2": "7", "i3": "5"},
    "balanced": {"i1": "10", "i2": "10", "i3": "10"},
    "on one line": {"i1": "10", "i2": "6", "i3": "8", "a2": "-120", "a3": "-60"},
    "dots": {"i1": "0.01", "i2": "10", "i3": "0.01"},
    "two equal": {"i1": "10", "i2": "10", "i3": "4"},
    "closed, not balanced": {"i1": "10", "i2": "6", "i3": "8", "a2": "6.87", "a3": "-23.13"},
    "returning": {"i1": "10", "i2": "6", "i3": "8", "resultant": "returning"},
}
METHODS = (
    {"method": "parallelogram"}, {"method": "parallelogram", "parallels": "set-squares"},
    {"method": "parallelogram", "parallels": "compasses"}, {"method": "tip-to-tail"}, {"method": "components"},
)  # fmt: skip


@dataclass(frozen=True)
class Seen:
    """One frame: its view (for where the points lie), its page, and the lesson it is of."""

    lesson: Lesson
    frame: Frame
    view: _Showing
    page: Page

    def group(self, name: str) -> list[Group]:
        return [item for item in walk(self.page.items) if isinstance(item, Group) and item.name == name]

    @property
    def reading(self) -> str:
        """The words of the reading in the picture."""
        texts = [item for group in self.group("reading") for item in walk(group.items) if isinstance(item, Text)]
        named = [text.plain for text in texts if re.search(r"°|mm", text.plain)]
        return named[0] if named else ""

    @property
    def amount(self) -> float:
        """The reading as a number of degrees or millimetres."""
        return float(re.match(r"[\d.,]+", self.reading).group().replace(",", "."))


def is_copied(one: Seen) -> bool:
    """Whether a frame copies the first diagonal, whose length the learner has read to half a millimetre."""
    move = one.frame.move
    if isinstance(move, CrossArcs):
        return (move.first_radius if one.frame.phase == "first" else move.second_radius)[1] == DIAGONAL
    return isinstance(move, Join) and move.like == f"i{one.lesson.plan.construction.order}"


def is_own_angle(one: Seen) -> bool:
    """Whether a frame's angle is the learner's own reading, or follows from it: it is named in whole degrees."""
    move = one.frame.move
    if isinstance(move, TurnAngle):
        return isinstance(move.turn, Supplement)
    return isinstance(move, ReadAngle) and move.reading == "between"


def frames_of(form: dict[str, str]) -> Iterator[Seen]:
    """Every frame of a problem."""
    lesson = SumLesson(NeutralCurrent().case(form)).lesson
    before: frozenset[int] = frozenset()
    for frame in lesson.frames:
        sentence, _, _, figure = lesson.frame_words(frame)
        assert sentence
        view = _Showing(lesson.plan, frame, lesson.look, lesson.stage, circle=lesson.circle)
        yield Seen(lesson, frame, view, view.page("", figure, before))
        before = frame.drawn_moves


@cache
def all_frames() -> tuple[Seen, ...]:
    """The frames of a hundred problems, each with its own conventions."""
    return tuple(one for number in range(COUNT) for one in frames_of(problem(number)))


def seen(tool: str) -> list[Seen]:
    """Those of them with a tool."""
    return [one for one in all_frames() if one.frame.tool == tool]


def degrees_apart(one: float, other: float) -> float:
    return abs(wrap(one - other))


# The protractor.


@dataclass(frozen=True)
class Read:
    """A protractor as it is seen: its centre, mm on the view for each mm of it, and for each value of the scale that
    counts the direction of its graduation."""

    centre: Point
    factor: float
    graduation: dict[int, float]


def meet(first: Line, second: Line) -> Point:
    """Where two lines meet when they are made longer."""
    (ax, ay), (bx, by) = first.start, first.end
    (cx, cy), (dx, dy) = second.start, second.end
    across = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    share = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / across
    return Point(ax + share * (bx - ax), ay + share * (by - ay))


def read_protractor(group: Group, numbers: Group) -> Read:
    """Centre from the graduations, values from the figures in bold, which are the ones that count."""
    lines = [item for item in group.items if isinstance(item, Line)]
    shortest = min(distance(line.start, line.end) for line in lines)
    ones = [line for line in lines if distance(line.start, line.end) < shortest * 1.001]
    centre = meet(ones[0], ones[len(ones) // 3])
    rim = distance(centre, ones[0].end)
    graduations = [
        line for line in lines
        if abs(distance(centre, line.end) - rim) < 1e-6 and distance(line.start, line.end) < 0.2 * rim
    ]  # fmt: skip
    values, circle = {}, any(isinstance(item, Text) and item.plain == "260" for item in numbers.items)
    for item in numbers.items:
        if isinstance(item, Text) and item.runs[0].face == "bold":
            towards = direction(centre, middle_of(item))
            nearest = min((direction(centre, line.end) for line in graduations),
                          key=lambda way: degrees_apart(way, towards))  # fmt: skip
            # The two at the ends of a base line are lifted off it.
            if circle or item.plain not in ("0", "180"):
                values[int(item.plain)] = nearest
    return Read(centre, rim / 75.0, values)


@pytest.fixture(scope="module")
def protractors() -> list[tuple[Seen, Read]]:
    found = [(one, read_protractor(one.group("protractor")[0], one.group("numbers")[0])) for one in seen(PROTRACTOR)]
    assert len(found) > 300
    return found


def test_the_protractors_centre_lies_on_the_point_of_its_move(protractors) -> None:
    """On the tip in tip to tail, on the common point in the parallelogram."""
    assert [] == [
        one.frame for one, read in protractors if distance(read.centre, one.view.at(one.frame.move.at)) > 1e-6
    ]


def test_its_zero_lies_along_the_line_it_is_laid_on(protractors) -> None:
    """The direction of 90 on the scale that counts is a right angle from the line; so is every other figure's."""
    for one, read in protractors:
        zero = one.view.zero_of(one.frame.move)
        _, _, sweep = one.view.protractor_pose(one.frame.move)
        sign = 1 if sweep >= 0 else -1
        for value, way in read.graduation.items():
            assert degrees_apart(way, zero + sign * value) < 1e-6, (one.frame, value)


def test_the_ray_of_a_reading_passes_the_graduation_that_it_names(protractors) -> None:
    """The drawn line, from the centre to beyond the rim, to the last digit that is read."""
    for one, read in protractors:
        lines = [item for group in one.group("reading") for item in group.items if isinstance(item, Line)]
        far = max((line.end for line in lines), key=lambda end: distance(read.centre, end))
        zero, twenty = one.view.zero_of(one.frame.move), read.graduation[20]
        sign = 1 if wrap(twenty - zero) > 0 else -1
        limit = 0.501 if is_own_angle(one) else 0.0501
        assert degrees_apart(direction(read.centre, far), zero + sign * one.amount) <= limit, one.frame
        assert not is_own_angle(one) or one.amount == round(one.amount)


def test_the_ray_is_the_line_that_the_construction_has(protractors) -> None:
    """What is set off is where the next line runs; what is read is the line that is there."""
    for one, read in protractors:
        move, lines = one.frame.move, one.view.lines
        name = move.line if isinstance(move, TurnAngle) else move.second
        strokes = [item for group in one.group("reading") for item in group.items if isinstance(item, Line)]
        far = max((line.end for line in strokes), key=lambda end: distance(read.centre, end))
        assert degrees_apart(direction(read.centre, far), one.view.paper_angle(lines[name].degrees)) < 1e-6


def test_a_half_circle_holds_every_angle_that_is_set_off_with_it(protractors) -> None:
    """A half circle cannot set 240°: the construction goes the other way round."""
    assert {"180", "360"} == {one.lesson.sentences.notation.protractor for one, _ in protractors}
    assert [] == [one.frame for one, _ in protractors if one.amount > 180.0]


def test_both_scales_carry_all_their_figures() -> None:
    """The scale that does not count is dimmed, never hidden: reading it is the mistake to talk about."""
    for protractor, each in (("180", 19), ("360", 36)):
        frame = next(one for one in frames_of({**EXAMPLE, "protractor": protractor}) if one.frame.tool == PROTRACTOR)
        group = frame.group("numbers")[0]
        figures = [item for item in group.items if isinstance(item, Text)]
        assert (each, each) == (
            sum(figure.ink == "ink" for figure in figures), sum(figure.ink == "ink-3" for figure in figures)
        )  # fmt: skip


# The ruler.


@pytest.fixture(scope="module")
def rulers() -> list[Seen]:
    found = [one for tool in (RULER, LINE) for one in seen(tool) if one.group("ruler")]
    assert len(found) > 300
    return found


def graduations(ruler: Group) -> list[Line]:
    """The graduations of a ruler, from zero on."""
    return [item for item in ruler.items if isinstance(item, Line)]


def test_the_rulers_zero_lies_beside_the_start_and_its_edge_along_the_line(rulers) -> None:
    """Close beside the line, so that neither hides the other, on its clockwise side."""
    for one in rulers:
        start, end = one.view.ruled()
        zero, *others = graduations(one.group("ruler")[0])
        beside = start.moved(BESIDE * one.view.zoom, direction(zero.start, others[-1].start) - 90.0)
        assert distance(zero.start, beside) < 1e-6
        if distance(start, end) > 0.01:
            assert degrees_apart(direction(zero.start, others[-1].start), direction(start, end)) < 1e-6


def test_every_millimetre_stands_where_it_belongs(rulers) -> None:
    """Equal steps along the edge, and a figure beside each tenth: the right one."""
    for one in rulers[::7]:
        [ruler] = one.group("ruler")
        lines = graduations(ruler)
        step = distance(lines[0].start, lines[-1].start) / (len(lines) - 1)
        assert abs(step - one.view.zoom) < 1e-9
        along = direction(lines[0].start, lines[-1].start)
        for index, line in enumerate(lines):
            assert distance(line.start, lines[0].start.moved(index * step, along)) < 1e-6
        numbers = one.group("figures")[0].items
        figures = [item for item in numbers if isinstance(item, Text) and item.plain.isdigit()]
        assert len(figures) > 5
        for figure in figures:
            tenth = min(range(0, len(lines), 10), key=lambda index: distance(lines[index].end, middle_of(figure)))
            assert tenth == 10 * int(figure.plain)


def test_a_length_is_read_at_the_graduation_that_is_named(rulers) -> None:
    """To half a millimetre: one length has one number, whether it is set off or read."""
    checked = 0
    for one in rulers:
        if not one.reading:
            continue
        start, end = one.view.ruled()
        read = distance(start, end) / one.view.zoom
        added = getattr(one.frame.move, "length", None)
        # A length that is a sum of readings is as far out as they are together.
        limit = 0.2501 * (len(added.readings) if isinstance(added, SumOf) else 1)
        assert abs(read - one.amount) <= limit, (one.frame, read)
        lines = graduations(one.group("ruler")[0])
        if round(read) < len(lines):
            assert distance(lines[round(read)].start, end) <= (0.5 + BESIDE) * one.view.zoom + 1e-6
        marks = [item for group in one.group("reading") for item in group.items if isinstance(item, Line)]
        [mark] = marks
        middle = min(distance(end, mark.start.plus(mark.end.minus(mark.start).times(share / 1000)))
                     for share in range(1001))  # fmt: skip
        assert middle < 0.05
        checked += 1
    assert checked > 300


def test_a_ruler_is_turned_as_a_whole_and_its_numbers_run_from_its_left_end(rulers) -> None:
    """Zero at the left end, numbers upright on the ruler and ascending to the right, whichever way it lies."""
    leftward = 0
    for one in rulers:
        lines = graduations(one.group("ruler")[0])
        along = direction(lines[0].start, lines[-1].start)
        leftward += abs(wrap(along)) > 90.0
        numbers = [item for item in one.group("figures")[0].items if isinstance(item, Text) and item.plain.isdigit()]
        places = [distance(lines[0].start, middle_of(number)) for number in numbers]
        assert places == sorted(places)
        for number in numbers:
            assert degrees_apart(number.turn, along) < 1e-6
            # The body, and so the number, is below the edge of a ruler that is held with its numbers upright.
            assert wrap(direction(lines[int(number.plain) * 10].start, middle_of(number)) - along) < 0.0
    assert leftward > 50


def test_numbers_beyond_the_reading_are_dimmed(rulers) -> None:
    for one in rulers:
        if not one.reading:
            continue
        start, end = one.view.ruled()
        read = distance(start, end) / one.view.zoom
        for number in one.group("figures")[0].items:
            if isinstance(number, Text) and number.plain.isdigit():
                assert (number.ink == "ink-3") == (int(number.plain) * 10.0 > read + 5.0), (number.plain, read)


# Set squares and compasses.


def test_a_set_squares_long_edge_lies_along_the_new_line() -> None:
    squares = [one for one in seen(SQUARES) if isinstance(one.frame.move, (DrawParallel, DropPerpendicular))]
    assert len(squares) > 100
    for one in squares:
        [square] = one.group("set-square")
        [shape] = [item for item in square.items if isinstance(item, Shape)]
        corner, tip, other = shape.points
        move = one.frame.move
        assert abs(degrees_apart(direction(corner, tip), direction(corner, other)) - 90.0) < 1e-6
        if isinstance(move, DrawParallel):
            through, way = one.view.at(move.through), one.view.paper_angle(one.view.lines[move.line].degrees)
        else:
            through, way = one.view.at(move.foot), direction(one.view.at(move.foot), one.view.at(move.start))
            assert distance(corner, through) < 1e-6
        assert degrees_apart(direction(corner, tip), way) < 1e-6
        if distance(corner, through) > 1e-6:
            assert degrees_apart(direction(through, tip), way) < 1e-6


def test_the_compasses_stand_on_the_centre_and_reach_the_crossing() -> None:
    compasses = seen(COMPASSES)
    assert len(compasses) > 20
    for one in compasses:
        [legs] = one.group("compasses")
        lines = [item for item in legs.items if isinstance(item, Line)]
        move = one.frame.move
        centre = one.view.at(move.first if one.frame.phase == "first" else move.second)
        assert distance(lines[0].start, centre) < 1e-6
        assert distance(lines[1].end, one.view.at(move.point)) < 1e-6
        assert abs(distance(centre, lines[1].end) / one.view.zoom - one.amount) <= 0.2501


# Every frame.


@pytest.mark.parametrize("name", list(DEGENERATE))
@pytest.mark.parametrize("method", METHODS, ids=lambda method: "-".join(method.values()))
def test_no_frame_of_a_degenerate_problem_raises(name: str, method: dict[str, str]) -> None:
    """Zero lines, dots, one line only, all on one line: whatever can be drawn is shown, step by step."""
    frames = list(frames_of({**DEGENERATE[name], **method}))
    assert frames
    for one in frames:
        texts = [item for item in walk(one.page.items) if isinstance(item, Text)]
        assert all(math.isfinite(text.at.x) and math.isfinite(text.at.y) for text in texts)


def test_readings_are_a_23rd_of_the_view_high_and_inside_it() -> None:
    """A capital of the reading, and the zero, from eight metres."""
    for tool in (PROTRACTOR, RULER, COMPASSES):
        for one in seen(tool):
            words = [item for name in ("zero", "reading") for group in one.group(name) for item in group.items
                     if isinstance(item, Text) and item.ink == "accent"]  # fmt: skip
            for text in words:
                run = text.runs[0]
                assert lettering.capital_height(run.face, run.size) >= SCREEN / 23
                half = lettering.width(run.text, run.face, run.size) / 2
                assert 0.0 <= text.at.x - half and text.at.x + half <= WIDTH and 0.0 <= text.at.y <= HEIGHT


def test_the_drawing_grows_and_never_loses_a_line() -> None:
    """What was drawn in one frame is there in the next."""
    for number in range(0, COUNT, 5):
        shown: frozenset[int] = frozenset()
        for frame in SumLesson(NeutralCurrent().case(problem(number))).lesson.frames:
            assert shown <= frame.drawn_moves
            shown = frame.drawn_moves
