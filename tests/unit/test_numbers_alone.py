"""The view of the numbers alone: the arrows in one line, and each in its own direction beside it."""

import re
from itertools import pairwise
from math import fsum

import pytest

from pycore import lettering
from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Arrow, Group, Text, walk
from pycore.geometry import Box, direction, distance
from pycore.phasor import wrap
from pycore.sheet.laying import HEIGHT, WIDTH
from pycore.sheet.lettered import box_of
from pycore.sums.classroom import SumLesson
from pycore.words import plain

NEUTRAL = {"i1": "24", "i2": "15", "i3": "9"}
FORMS = {
    "add-phasors": {"p1": "8 A", "p2": "6 A at 90°", "p3": "7 A at 30°", "p4": "5 A at 200°", "p5": "3 A at 80°"},
    "neutral-current": NEUTRAL,
}
SUMS = [slug for slug, page in CALCULATORS.items() if page.case({}).is_sum]


def lesson_of(slug: str, form: dict[str, str] | None = None) -> SumLesson:
    return SumLesson(CALCULATORS[slug].case(FORMS.get(slug, {}) if form is None else form))


def said(lesson: SumLesson, number: int) -> str:
    return plain(lesson.show("numbers", number).reading).replace("\u00a0", " ")


def test_the_numbers_of_the_example_and_what_the_directions_make_of_them() -> None:
    lesson = lesson_of("neutral-current")
    assert said(lesson, 1) == "24 + 15 + 9 = 48 A"
    assert said(lesson, 2) == "I_N is 13.1 A, not 48 A."
    assert not lesson.show("numbers", 1).answers and lesson.show("numbers", 2).answers


def test_a_difference_is_one_of_the_numbers_too() -> None:
    assert said(lesson_of("star-and-delta"), 1).startswith("20.0 − 10.0 = 10.0")


def test_a_difference_is_right_where_the_phasors_have_one_direction() -> None:
    """The arrows in the line are not those phasors: the second is turned round."""
    (why,) = lesson_of("star-and-delta").show("numbers", 1).why
    assert plain(why) == "This is right only if the phasors themselves have the same direction."


def test_one_phasor_alone_has_no_such_view() -> None:
    assert "numbers" not in lesson_of("neutral-current", {"i1": "20", "i2": "0", "i3": "0"}).views
    assert "numbers" in lesson_of("neutral-current").views


def test_where_all_arrows_point_the_same_way_the_numbers_are_the_answer_and_hidden_with_it() -> None:
    lesson = lesson_of("harmonics-in-the-neutral")
    assert said(lesson, 1) == "2.00 + 1.20 + 0.800 = 4.00 A"
    assert "not" not in said(lesson, 2)
    assert lesson.show("numbers", 1).answers


@pytest.mark.parametrize("slug", SUMS)
def test_the_arrows_lie_end_to_end_and_then_each_in_its_direction(slug: str) -> None:
    """Their lengths are in the ratio of their sizes, the same in both; the sum joins the first tail to the last tip."""
    lesson = lesson_of(slug)
    count = len(lesson.case.arms)
    drawn = [item for item in walk(lesson.show("numbers", 2).picture.items) if isinstance(item, Arrow)]
    row, chain, rest = drawn[:count], drawn[count : 2 * count], drawn[2 * count :]
    units = distance(row[0].tail, row[0].tip) / lesson.case.arms[0].size
    for arm, one, turned in zip(lesson.case.arms, row, chain, strict=True):
        for arrow in (one, turned):
            assert distance(arrow.tail, arrow.tip) == pytest.approx(arm.size * units, abs=1e-6)
        wanted = lesson.case.picture.paper_angle(arm.angle)
        assert abs(wrap(direction(turned.tail, turned.tip) - wanted)) < 1e-6
    for parts in (row, chain):
        for before, after in pairwise(parts):
            assert before.tip.x == pytest.approx(after.tail.x)
    if rest:
        assert distance(rest[0].tail, chain[0].tail) < 1e-9 and distance(rest[0].tip, chain[-1].tip) < 1e-9
        assert distance(rest[0].tail, rest[0].tip) == pytest.approx(lesson.case.size * units)
    else:
        assert lesson.case.size * units < 0.1
    assert len(drawn) - len(rest) == len([i for i in walk(lesson.show("numbers", 1).picture.items)
                                          if isinstance(i, Arrow)]) * 2  # fmt: skip


@pytest.mark.parametrize("slug", SUMS)
def test_its_names_lie_in_the_view_and_touch_nothing(slug: str) -> None:
    for number in (1, 2):
        page = lesson_of(slug).show("numbers", number).picture
        texts = [item for item in walk(page.items) if isinstance(item, Text)]
        boxes = [
            box_of(text, lettering.capital_height(text.runs[0].face, text.runs[0].size)).grown(-0.3) for text in texts
        ]
        view = Box(0.0, 0.0, WIDTH, HEIGHT)
        assert all(view.holds(box) for box in boxes)
        arrows = [item for item in walk(page.items) if isinstance(item, Arrow)]
        struck = [text.plain for text, box in zip(texts, boxes, strict=True)
                  if any(box.meets_segment(arrow.tail, arrow.tip) for arrow in arrows)]  # fmt: skip
        assert [] == struck
        assert [] == [1 for n, one in enumerate(boxes) for other in boxes[n + 1 :] if one.meets(other)]


@pytest.mark.parametrize("slug", SUMS)
def test_the_numbers_add_up_as_printed_or_say_so(slug: str) -> None:
    text = said(lesson_of(slug), 1)
    left, sign, right = re.fullmatch(r"(.+) ([=≈]) ([\d.,]+).*", text).groups()
    numbers = [float(one.replace(" ", "").replace("−", "-")) for one in re.findall(r"(?:− )?[\d.]+", left)]
    assert (abs(fsum(numbers) - float(right)) < 1e-9) == (sign == "=")


def test_the_sum_and_what_meets_its_tip_are_hidden_with_the_answer() -> None:
    page = lesson_of("neutral-current").show("numbers", 2).picture
    hidden = [one for one in page.items if isinstance(one, Group) and one.name == "answer"]
    assert len([item for item in walk(tuple(hidden)) if isinstance(item, Arrow)]) == 2
