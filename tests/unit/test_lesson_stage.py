"""What a lesson keeps from its first frame to its last, what it hides from a class that is asked, and its why."""

import re
from collections.abc import Iterator
from functools import cache
from math import fabs

import pytest
from host import shelf

from pycore import lettering
from pycore.calculators.registry import CALCULATORS
from pycore.constructions.frames import PROTRACTOR, Frame
from pycore.constructions.moves import Join, SetOff, TurnAngle
from pycore.drawing import Arc, Arrow, Circle, Group, Item, Line, Page, Shape, Text, walk
from pycore.forms.fields import default_form
from pycore.geometry import Box, Point, distance
from pycore.pages.practice import methods_of
from pycore.phasor import wrap
from pycore.practice.codes import Code
from pycore.render.lesson import sentence_html, values_html
from pycore.sheet.laying import HEIGHT, WIDTH, Laying
from pycore.sheet.lettered import box_of
from pycore.sheet.plates import is_struck
from pycore.sums.classroom import SumLesson
from pycore.sums.lesson import Lesson
from pycore.sums.lesson_frame import LessonFrame
from pycore.words import plain

VIEW = Box(0.0, 0.0, WIDTH, HEIGHT)
NEUTRAL = {"i1": "18.4", "i2": "11.2", "i3": "24.6"}
HIDDEN = ("reading", "known", "fresh", "fresh-tags", "sample", "close-up", "close-frame")
"""Groups that a class that is asked does not see (site/css/lesson.css)."""
HIDDEN_READS = (*HIDDEN, "tool", "zero", "asked")
"""Where an instrument measures, it is not seen either."""


@cache
def lessons(slug: str, count: int = 3) -> tuple[tuple[Lesson, tuple[LessonFrame, ...]], ...]:
    """Lessons of a calculator with their frames: of its example, and of forms of the shelf."""
    found = []
    for form in [default_form(CALCULATORS[slug].fields), *shelf.forms(slug, count - 1)]:
        lesson = SumLesson(CALCULATORS[slug].case(form)).lesson
        found.append((lesson, tuple(lesson.show(number) for number in range(1, len(lesson.frames) + 1))))
    return tuple(found)


def arrows(page: Page) -> dict[str, list[tuple[Point, Point]]]:
    """Tail and tip of each phasor in a picture."""
    found: dict[str, list[tuple[Point, Point]]] = {}
    for group in walk(page.items):
        if isinstance(group, Group) and group.phasor and not group.copy:
            found.setdefault(group.phasor, []).extend(
                (item.tail, item.tip) for item in group.items if isinstance(item, Arrow)
            )
    return found


def texts_in(page: Page, name: str) -> Iterator[Text]:
    for group in walk(page.items):
        if isinstance(group, Group) and group.name == name:
            yield from (item for item in walk(group.items) if isinstance(item, Text))


# One scale, one common point.


@pytest.mark.parametrize("slug", CALCULATORS)
def test_no_arrow_moves_or_changes_its_length_during_a_lesson(slug: str) -> None:
    """Once drawn, it stands in every later frame where it stood, to a thousandth of a unit (a hundredth of a pixel)."""
    for _, frames in lessons(slug):
        assert 1 == len({frame.stage for frame in frames})
        first: dict[str, list[tuple[Point, Point]]] = {}
        for frame in frames:
            for key, ends in arrows(frame.picture).items():
                for (tail, tip), (old_tail, old_tip) in zip(ends, first.setdefault(key, ends), strict=False):
                    assert distance(tail, old_tail) < 1e-3 and distance(tip, old_tip) < 1e-3, (frame.number, key)


@pytest.mark.parametrize("slug", ["add-phasors", "series-circuit", "two-wattmeters", "harmonics-in-the-neutral"])
def test_the_zero_and_the_numbers_about_the_mark_of_an_instrument_lie_within_the_view(slug: str) -> None:
    """On a projector a ruler along the lower edge of the picture had no numbers, a protractor no zero."""
    page = CALCULATORS[slug]
    for tier, number in (("core", 2), ("stretch", 1), ("stretch", 2)):
        form = page.practice_form(Code(page.topic, tier, "any", "A4", 3, number))
        for method in {"parallelogram", "tip-to-tail"} & set(methods_of(page)):
            lesson = SumLesson(page.case(form | {"method": method})).lesson
            for frame in lesson.frames:
                laying = Laying(lesson.plan, frame, lesson.stage, circle=lesson.circle)
                for place, way in laying.numbered():
                    assert VIEW.holds(Box(*place.plus(way), *place.plus(way))), (tier, number, method, frame)


@pytest.mark.parametrize("slug", CALCULATORS)
def test_what_is_drawn_and_what_is_read_lies_within_the_view(slug: str) -> None:
    """Arrows and dashed lines, readings and zeros; an instrument may leave it."""
    for _, frames in lessons(slug):
        for frame in frames:
            for ends in arrows(frame.picture).values():
                assert all(VIEW.grown(0.01).holds(Box(*end, *end)) for pair in ends for end in pair), frame.number
            for name in ("reading", "zero"):
                for text in texts_in(frame.picture, name):
                    if text.ink != "accent":
                        continue
                    run = text.runs[0]
                    box = box_of(text, lettering.capital_height(run.face, run.size))
                    assert VIEW.holds(box), (frame.number, text.plain)


def test_the_example_is_drawn_as_large_as_the_look_has_it() -> None:
    """About five units (of 10 px) to the centimetre: the ruler's millimetres can be told apart."""
    lesson = SumLesson(CALCULATORS["neutral-current"].case(NEUTRAL)).lesson
    assert 0.45 <= lesson.stage.zoom <= 0.62


@pytest.mark.parametrize("slug", CALCULATORS)
def test_no_number_of_an_instrument_is_struck_through(slug: str) -> None:
    """Not by a mark of the instrument, and not by a line: then it is set again over the line."""
    checked = 0
    for _, frames in lessons(slug, 3):
        for frame in frames:
            whole = list(walk(frame.picture.items))
            over = {text.at for text in _after_drawing(frame.picture)}
            numbers = [item for group in whole if isinstance(group, Group) and group.name in ("figures", "numbers")
                       for item in group.items if isinstance(item, Text)]  # fmt: skip
            lines = [*_lines_of(whole, "reading"), *_lines_of(whole, "zero")]
            drawn = [line for group in whole if isinstance(group, Group) and group.phasor for line in
                     (_segment(item) for item in group.items if isinstance(item, (Line, Arrow)))]  # fmt: skip
            reversed_at = {text.at for text in texts_in(frame.picture, "reading")}
            for number in numbers:
                if number.at not in reversed_at:
                    assert not is_struck(number, lines, -0.3), (frame.number, number.plain)
                if number.at not in over | reversed_at:
                    assert not is_struck(number, drawn, -0.3), (frame.number, number.plain)
                checked += 1
    assert checked > 100


def _after_drawing(page: Page) -> Iterator[Text]:
    """Texts of groups that come after the last stroke of the drawing."""
    [whole, *_] = [item for item in page.items if isinstance(item, Group) and item.name == "whole"]
    last = max((index for index, item in enumerate(whole.items)
                if isinstance(item, Group) and (item.step is not None or item.name == "fresh")
                and not item.name.startswith("tag-")), default=-1)  # fmt: skip
    for item in whole.items[last + 1 :]:
        if isinstance(item, Group):
            yield from (text for text in walk(item.items) if isinstance(text, Text))


def _segment(item: Line | Arrow):
    from pycore.sheet.labels import Segment

    return Segment(item.start, item.end, "", 0.0) if isinstance(item, Line) else Segment(item.tail, item.tip, "", 0.0)


def _lines_of(items: list[Item], name: str) -> list:
    return [_segment(item) for group in items if isinstance(group, Group) and group.name == name
            for item in group.items if isinstance(item, Line)]  # fmt: skip


# Asked first.


def seen_when_asked(items: tuple[Item, ...], hidden: tuple[str, ...]) -> Iterator[Item]:
    for item in items:
        if isinstance(item, Group):
            if item.name not in hidden:
                yield from seen_when_asked(item.items, hidden)
        else:
            yield item


@pytest.mark.parametrize("slug", CALCULATORS)
def test_what_is_asked_can_be_read_nowhere_in_words(slug: str) -> None:
    """Not in the text, the strip, the picture, its title or what is read out."""
    asked = 0
    for form in shelf.forms(slug, 4):
        first = CALCULATORS[slug].lesson(form, "lesson", 1)
        for number in range(1, first.count + 1):
            frame = CALCULATORS[slug].lesson(form, "lesson", number)
            if not frame.question:
                continue
            asked += 1
            html = re.sub(r"<p[^>]*data-asked-part.*?</p>", "", f"{sentence_html(frame)}{values_html(frame)}")
            html = re.sub(r"<(title|desc)[^>]*>.*?</\1>", "", html)
            hidden = HIDDEN_READS if frame.reads else HIDDEN
            drawn = [item.plain for item in seen_when_asked(frame.picture.items, hidden) if isinstance(item, Text)]
            # Apart: the last figure of a ruler stands beside its “cm”.
            shown = " | ".join([re.sub(r"<[^>]*>", " ", html), *drawn, frame.picture.title, frame.picture.description])
            shown = shown.replace("\u00a0", " ")
            for amount in re.findall(r"\d[\d.,]*(?:°| mm| cm)", plain(frame.reading).replace("\u00a0", " ")):
                assert not re.search(rf"(?<![\d.,]){re.escape(amount)}", shown), (number, amount, shown)
            if frame.asks_scale:
                assert frame.scale and frame.scale.replace("\u00a0", " ") not in shown
    assert asked > 10


@pytest.mark.parametrize("slug", CALCULATORS)
def test_what_is_asked_can_be_read_nowhere_by_geometry(slug: str) -> None:
    """No arc, sector or mark at the reading, no line that this frame draws; where it is measured, no instrument."""
    for lesson, frames in lessons(slug, 3):
        for frame, shown in zip(lesson.frames, frames, strict=True):
            if not shown.question:
                continue
            items = list(seen_when_asked(shown.picture.items, HIDDEN_READS if shown.reads else HIDDEN))
            assert not any(isinstance(item, Shape) and item.fill == "tint-2" for item in items)
            marks = [item for item in items if isinstance(item, (Line, Arrow, Arc)) and item.ink == "accent"]
            move = frame.move
            if frame.reads:
                told = [item for item in items if isinstance(item, (Text, Line)) and item.ink in ("accent", "ink-3")]
                assert [] == told
            if isinstance(move, SetOff):
                tip = lesson.stage.stand.place(lesson.sentences.figure.points[move.point])
                tail = lesson.stage.stand.place(lesson.sentences.figure.points[move.start])
                ends = [(i.tail, i.tip) for i in items if isinstance(i, Arrow)]
                same = [pair for pair in ends if distance(pair[0], tail) < 0.01 and distance(pair[1], tip) < 0.01]
                before = arrows(frames[shown.number - 2].picture).values() if shown.number > 1 else ()
                assert len(same) <= sum(len(pairs) for pairs in before)
                if distance(tail, tip) > 4.0:
                    assert not [m for m in marks if isinstance(m, Line) and distance(m.start, tip) < 0.5]
            if isinstance(move, TurnAngle):
                assert not [m for m in marks if isinstance(m, (Arc, Arrow)) and not isinstance(m, Circle)
                            and _ends_inside(m)]  # fmt: skip


def _ends_inside(mark: Line | Arrow | Arc) -> bool:
    """Whether an accent mark is an arc or its arrow, and no edge of an instrument: those are longer."""
    return isinstance(mark, Arrow) or (isinstance(mark, Arc) and fabs(mark.sweep) not in (180.0, 360.0))


# Why.


@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_angle_measured_from_straight_back_has_its_picture_of_why(slug: str) -> None:
    """180° less the angle outside is the angle inside; both arcs are drawn at the tip with these angles."""
    explained = 0
    for lesson, frames in lessons(slug):
        for frame, shown in zip(lesson.frames, frames, strict=True):
            move = frame.move
            is_back = frame.tool == PROTRACTOR and isinstance(move, TurnAngle) and move.back
            if not is_back:
                assert shown.reason is None
                continue
            inside = _reading(shown)
            if not 0.5 <= inside <= 179.5:
                continue
            explained += 1
            assert shown.reason is not None
            out, left = re.fullmatch(r"180° − ([\d.,]+)° = ([\d.,]+)°", plain(shown.reason.calculation)).groups()
            assert fabs(180.0 - _number(out) - _number(left)) < 0.051 and _number(left) == inside
            tip = lesson.stage.stand.place(lesson.sentences.figure.points[move.at])
            items = list(walk(shown.reason.picture.items))
            arcs = [item for item in items if isinstance(item, Arc) and item.radius in (10.0, 14.0)]
            sweeps = sorted(fabs(arc.sweep) for arc in arcs if distance(arc.centre, tip) < 0.01)
            expected = sorted((_number(out), _number(left)))
            assert len(sweeps) == 2
            assert all(fabs(one - other) < 0.51 for one, other in zip(sweeps, expected, strict=True))
            words = {item.plain for item in items if isinstance(item, Text)}
            assert {"straight on", "half a turn, 180°", f"{out}°", f"{left}°"} <= words
            assert VIEW.grown(3.0).holds(Box(*tip, *tip))
            _check_next_line(lesson, frame, items, tip)
    assert explained or slug not in ("neutral-current", "add-phasors", "star-and-delta", "sequence-components")


def _check_next_line(lesson: Lesson, frame: Frame, items: list[Item], tip: Point) -> None:
    """The new line in the picture runs as the next line of the drawing does."""
    points = lesson.sentences.figure.points
    for later in lesson.plan.construction.moves:
        if isinstance(later, (SetOff, Join)) and later.line == frame.move.line:
            end = lesson.stage.stand.place(points[later.point if isinstance(later, SetOff) else later.end])
            lines = [item for item in items if isinstance(item, Line) and item.width == 0.5 and item.dash]
            new = next(line for line in lines if distance(line.start, tip) < 0.01)
            if distance(tip, end) > 25.0:
                assert distance(new.end, end) < 0.01
            return


def _reading(shown: LessonFrame) -> float:
    return _number(re.search(r"([\d.,]+)°", plain(shown.reading)).group(1))


def _number(text: str) -> float:
    return float(text.replace(",", "."))


# Numbers.


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_lessons_steps_have_the_numbers_that_the_list_on_the_page_gives_them(slug: str) -> None:
    for form in shelf.forms(slug, 5):
        lesson = SumLesson(CALCULATORS[slug].case(form)).lesson
        steps = len(lesson.plan.construction.steps)
        for number, frame in enumerate(lesson.frames, start=1):
            where = lesson.show(number).place
            assert (frame.step, steps) == (where.step, where.steps)
            assert 1 <= where.part <= where.parts
            assert lesson.frames[lesson.number_of_step(frame.step) - 1].step == frame.step
        for step in range(1, steps + 2):
            assert 1 <= lesson.number_of_step(step) <= len(lesson.frames)


def test_the_first_diagonals_meaning_is_a_headline_with_a_meter() -> None:
    frame = CALCULATORS["neutral-current"].lesson(NEUTRAL, "lesson", 10)
    assert frame.diagonal
    assert "A meter in the neutral would read this if L3 carried nothing." == plain(frame.why[-1])
    assert 'class="lesson-why lesson-meaning"' in str(sentence_html(frame))


def test_turned_numbers_stay_upright_on_their_protractor() -> None:
    """The scale that counts is in bold; each number faces its own graduation."""
    lesson = SumLesson(CALCULATORS["neutral-current"].case(NEUTRAL)).lesson
    for number, frame in enumerate(lesson.frames, start=1):
        if frame.tool == PROTRACTOR:
            groups = [item for item in walk(lesson.show(number).picture.items) if isinstance(item, Group)]
            [known, asked] = [group for group in groups if group.name == "numbers"]
            bold = [item for item in known.items if isinstance(item, Text) and item.runs[0].face == "bold"]
            assert 19 == len(bold) and all(-360.0 < wrap(item.turn) <= 360.0 for item in bold)
            assert {"ink"} == {item.ink for item in asked.items if isinstance(item, Text)}


def test_the_strip_of_values_gives_nothing_away_that_is_to_be_drawn_and_measured():
    """The correction is drawn between two tips and measured: its size is no value of the problem."""
    page = CALCULATORS["power-triangle"]
    shown = SumLesson(page.case({})).show("lesson", 1).values
    assert ["i1", "i2"] == [value.key for value in shown]
    for slug, other in CALCULATORS.items():
        if slug != "power-triangle":
            case = other.case({})
            assert [arm.key for arm in case.arms] == [one.key for one in SumLesson(case).show("lesson", 1).values]
