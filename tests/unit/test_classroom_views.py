"""Which views the classroom offers for a problem, and what ropes and waves say of the phasors that are drawn."""

import re
from itertools import combinations
from math import fsum, sqrt

import pytest
from host import shelf

from pycore import lettering
from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Arrow, Circle, Group, Line, Shape, Text, walk
from pycore.geometry import distance
from pycore.phasor import angle, magnitude, polar, total
from pycore.sheet.laying import WIDTH
from pycore.sheet.lettered import box_of
from pycore.sheet.pictures import TAG_CAPITALS
from pycore.sheet.wave_view import HALF, Wave, top_of
from pycore.sums.classroom import VIEWS, SumLesson
from pycore.words import classroom, plain
from pycore.words.phrase import Symbol, added, listed_phrases

ROPES = {
    "add-phasors": {"p1": "8 A", "p2": "6 A at 90°", "p3": "7 A at 30°", "p4": "5 A at 200°", "p5": "3 A at 80°"},
    "series-circuit": {"r": "20 Ω", "l": "5 Ω + 50 mH", "c": "100 µF"},
    "parallel-circuit": {"b1": "20 Ω", "b2": "50 mH", "b3": "100 µF", "b4": "50 Ω"},
}
LETTERED = str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789", "_")
"""Indices as they follow their letters on paper."""
NO_SINE_WAVES = [
    ("power-triangle", {}),
    ("two-wattmeters", {}),
    ("series-circuit", {"drawn": "impedances"}),
]


def lesson_of(slug: str, form: dict[str, str]) -> SumLesson:
    return SumLesson(CALCULATORS[slug].case(form))


@pytest.mark.parametrize("slug", ROPES)
def test_four_ropes_and_more_can_pull_a_ring(slug: str) -> None:
    """The pull of the first ropes bears their names, whole in the picture, and the size of their sum."""
    lesson = lesson_of(slug, ROPES[slug])
    arms, tags = lesson.case.arms, lesson.case.notation.tags
    assert len(arms) >= 4
    for count in range(2, len(arms)):
        frame = lesson.show("pull", count)
        name = " + ".join(plain(tags[arm.key]) for arm in arms[:count])
        size = magnitude(total(polar(arm.size, arm.angle) for arm in arms[:count]))
        assert f"{name}, {lesson.case.amount(size)}" in plain(frame.reading)
        words = [item for item in walk(frame.picture.items) if isinstance(item, Text)]
        assert name.translate(LETTERED) in [one.plain for one in words]
        boxes = [box_of(one, TAG_CAPITALS) for one in words]
        assert all(0.0 <= box.left and box.right <= WIDTH for box in boxes)


@pytest.mark.parametrize("slug", CALCULATORS)
def test_waves_name_the_arrows_that_are_drawn_and_whose_sum_is_the_sum(slug: str) -> None:
    """Not the lines that a page has names for: the phasors as they are turned, each once."""
    seen = 0
    for form in shelf.forms(slug, 20):
        lesson = lesson_of(slug, form)
        if "waves" not in lesson.views:
            continue
        case, tags = lesson.case, lesson.case.notation.tags
        parts = [plain(tags[arm.key]) for arm in case.arms]
        parted = f"{', '.join(parts[:-1])} and {parts[-1]}" if len(parts) > 1 else parts[0]
        is_sum = "is the sum of" if len(parts) > 1 else "is equal to"
        why = plain(lesson.show("waves", 1).why[0])
        assert why.startswith(f"At every moment {plain(tags['sum'])} {is_sum} {parted}. ")
        together = total(polar(arm.size, arm.angle) for arm in case.arms)
        assert magnitude(together - case.total) <= 1e-9 * max(arm.size for arm in case.arms)
        seen += 1
    assert seen or slug in [one for one, _ in NO_SINE_WAVES]


def test_waves_name_a_turned_current_as_it_is_turned() -> None:
    reply = plain(lesson_of("star-and-delta", {"connection": "delta"}).show("waves", 1).why[0])
    assert reply.startswith("At every moment I₁ is the sum of I₁₂ and −I₃₁. ")


@pytest.mark.parametrize(("slug", "form"), NO_SINE_WAVES)
def test_powers_and_impedances_have_no_waves(slug: str, form: dict[str, str]) -> None:
    assert ("lesson", "numbers", "together", "pull") == lesson_of(slug, form).views


def test_currents_and_voltages_have_waves() -> None:
    assert VIEWS == lesson_of("series-circuit", {"drawn": "voltages"}).views
    assert VIEWS == lesson_of("neutral-current", {}).views


def test_the_displacement_of_a_star_point_is_no_sum_and_has_the_lesson_alone() -> None:
    """The phase voltages add to zero whatever the displacement is; the neutral current is a sum."""
    lesson = lesson_of("open-neutral", {"method": "displacement"})
    apart = total(polar(arm.size, arm.angle) for arm in lesson.case.arms)
    assert magnitude(apart - lesson.case.total) > 1.0 and angle(lesson.case.total) is not None
    assert ("lesson",) == lesson.views
    assert VIEWS == lesson_of("open-neutral", {"method": "tip-to-tail"}).views


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_link_to_a_view_that_is_not_offered_opens_the_lesson_and_says_so(slug: str) -> None:
    for form in shelf.forms(slug, 6):
        offered = shelf.ask(slug, form, "lesson")[0]["views"]
        for view in VIEWS:
            reply, _ = shelf.ask(slug, form, "lesson", view=view, step="2")
            assert reply["ok"]
            if view in offered:
                assert (view, "") == (reply["view"], reply["notice"] if reply["steps"] > 1 else "")
            else:
                assert ("lesson", 1) == (reply["view"], reply["step"])
                assert f"“{classroom.VIEWS[view]}”" in reply["notice"]


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_wave_is_root_two_times_as_high_as_its_arrow(slug: str) -> None:
    """Each arrow is as long as its wave is high, √2 times the r.m.s. value; its tip is as high as the wave there."""
    for form in shelf.forms(slug, 4):
        lesson = lesson_of(slug, form)
        if "waves" not in lesson.views:
            continue
        page = lesson.show("waves", 3).picture
        sizes = {arm.key: arm.size for arm in lesson.case.arms}
        found = [Wave(key, value) for key, value in [*lesson.phasors(), ("sum", lesson.case.total)] if value]
        scale = HALF / top_of(found)
        groups = [item for item in walk(page.items) if isinstance(item, Group) and item.phasor in sizes]
        assert len(groups) == len(sizes)
        for group in groups:
            [arrow] = [item for item in group.items if isinstance(item, Arrow)]
            assert distance(arrow.tail, arrow.tip) == pytest.approx(sqrt(2.0) * sizes[group.phasor] * scale)
            name = f"wave-{group.phasor}"
            named = [item for item in walk(page.items) if isinstance(item, Group) and item.name == name]
            [curve] = [item for item in named[0].items if isinstance(item, Shape)]
            step = round(20.0 / 360.0 * (len(curve.points) - 1), 6)
            low, high = curve.points[int(step)].y, curve.points[int(step) + 1].y
            assert min(low, high) - 0.2 <= arrow.tip.y <= max(low, high) + 0.2


WAVES = [slug for slug in CALCULATORS if slug not in ("power-triangle", "two-wattmeters")]


@pytest.mark.parametrize("slug", WAVES)
def test_no_names_of_waves_collide(slug: str) -> None:
    """Neither at the arrows nor at the ends of the curves, also of harmonics whose arrows lie on each other."""
    for form in shelf.forms(slug, 5):
        lesson = lesson_of(slug, form)
        if "waves" not in lesson.views:
            continue
        for step in (1, 4, 10, 17.5, 28):
            page = lesson.show("waves", step).picture
            boxes = [
                box_of(item, lettering.capital_height(item.runs[0].face, item.runs[0].size)).grown(-0.2)
                for item in walk(page.items) if isinstance(item, Text)
            ]  # fmt: skip
            assert all(0.0 <= box.left and box.right <= page.width and box.top <= page.height for box in boxes)
            assert [] == [(one, other) for one, other in combinations(boxes, 2) if one.meets(other)]


def numbers_of(text: str) -> list[float]:
    found = re.findall(r"(?<=[ (])−?[\d.]+(?=[ )]|$)", text.replace("\u00a0", " "))
    return [float(one.replace("−", "-")) for one in found]


def test_the_values_at_a_moment_are_written_as_a_sum() -> None:
    """At each degree the sum printed is that of the numbers printed, or nearly, and then it says so."""
    lesson, exact = lesson_of("neutral-current", {"i1": "18.4", "i2": "11.2", "i3": "24.6"}), 0
    for step in range(10, 370, 7):
        text = plain(lesson.show("waves", step / 10).reading)
        *parts, total = numbers_of(text)
        assert len(parts) == 3
        assert " + " in text and not re.search(r"[^(]−[^)]*[+=≈]", text), "a minus behind a plus is in brackets"
        assert abs(fsum(parts) - total) < (0.01 if " = " in text else 0.21)
        assert (" = " in text) == (abs(fsum(parts) - total) < 0.01)
        exact += " = " in text
    assert exact > 10
    assert "After 93° of a turn" in plain(lesson.show("waves", 10.3).sentence)


@pytest.mark.parametrize("slug", ROPES)
def test_ropes_begin_with_a_rope_and_end_with_the_pull_that_keeps_the_ring_at_rest(slug: str) -> None:
    """Each further rope has its parallelogram; the balancing pull is the sum's opposite."""
    lesson = lesson_of(slug, ROPES[slug])
    count = len(lesson.case.arms)
    first = [item for item in walk(lesson.show("pull", 1).picture.items) if isinstance(item, Arrow)]
    assert 1 == len(first)
    for number in range(2, count + 1):
        items = list(walk(lesson.show("pull", number).picture.items))
        sides = [item for item in items if isinstance(item, Line) and item.dash]
        assert 2 == len(sides) and distance(sides[0].end, sides[1].end) < 1e-6
        net = [item for item in items if isinstance(item, Arrow) and item.width == 1.4]
        assert 1 == len(net) and distance(net[0].tip, sides[0].end) < 1e-6
    ring = next(item for item in walk(lesson.show("pull", 1).picture.items) if isinstance(item, Circle))
    net_tip, back_tip = (
        next(item.tip for item in walk(lesson.show("pull", number).picture.items)
             if isinstance(item, Arrow) and item.width == 1.4)
        for number in (count, count + 1)
    )  # fmt: skip
    assert distance(net_tip.plus(back_tip).times(0.5), ring.centre) < 1e-6
    assert count + 1 == lesson.show("pull", 99).number


def test_tags_are_joined_with_the_sign_that_they_have() -> None:
    one, two, three = (Symbol("I", str(number)) for number in (1, 2, 3))
    assert "I₁ − I₂ + I₃" == plain(added([(one,), ("−", two), (three,)]))
    assert "−I₁ − I₂" == plain(added([("−", one), ("−", two)]))
    assert "I₁, I₂ and I₃" == plain(listed_phrases([(one,), (two,), (three,)]))
    assert "I₁" == plain(listed_phrases([(one,)]))


def test_the_first_two_of_a_difference_are_named_as_a_difference() -> None:
    """I₂ was subtracted: the pull of both, and the first diagonal, are I₁ − I₂."""
    form = {"combine": "difference", "p1": "20 A", "p2": "15 A at 60°", "p3": "7 A at 30°"}
    assert "I₁ − I₂, " in plain(lesson_of("add-phasors", form).show("pull", 2).reading)
