"""What is said of wrong answers: mistakes of ruler, protractor and scale, directions, values found on the way."""

import json
import math
import re

import pytest

from pycore import phasor
from pycore.api import handle
from pycore.calculators.neutral_current.fields import FIELDS
from pycore.calculators.registry import CALCULATORS
from pycore.errors import InputError
from pycore.forms.fields import default_form
from pycore.practice.answers import AnswerJudgement, judge
from pycore.practice.codes import Code
from pycore.practice.explaining import LearnerAnswer
from pycore.practice.judgement_text import tell
from pycore.practice.marking import ACCEPT, LOOK, WRONG, mark
from pycore.practice.sums import exchanged_figures
from pycore.practice.task import CALCULATED, DRAWN, NO_LIMITS, Limits, Mistake, Task
from pycore.words import plain

PAGE = CALCULATORS["neutral-current"]
FORM = default_form(FIELDS)
FLAT = {"i1": "18.4", "i2": "11.2", "i3": "24.6", "a1": "20", "method": "parallelogram", "order": "12"}


def made(**values: str) -> Task:
    """A task of the page's form with these values."""
    return PAGE.task({**FORM, **values})


def told(task: Task, given: dict[str, str]) -> str:
    """Everything that is said of an answer."""
    reply = judge(task, given)
    return " ".join(plain(one) for one in tell(task, reply, lambda _mistake: None).phrases).replace("\u00a0", " ")


def turned(task: Task, point: complex, how: str = DRAWN) -> dict[str, str]:
    """A point as it is typed: size, angle and side."""
    angle = phasor.angle(point) * task.sense
    side = "anticlockwise" if angle > 0 else "clockwise"
    return {"answer": f"{abs(point):.4g}", "answer-angle": f"{abs(angle):.1f} {side}", "answer-how": how}


def of(task: Task, key: str) -> Mistake:
    """The first mistake of a key."""
    return next(one for one in task.mistakes if one.key == key)


@pytest.mark.parametrize(("key", "said"), [
    ("ruler-edge", "from the ruler’s edge"), ("base-edge", "base edge of the protractor"),
    ("centre-off", "the protractor’s centre was on the wrong point"), ("line-at-other-scale", "at another scale"),
    ("read-at-other-scale", "at another scale"), ("right-angles", "90° was used between the lines"),
    ("arrow-reversed", "the arrow of the result is reversed"), ("mirrored", "the other way round throughout"),
    ("angle-at-tip", "the angle at the tip"),
])  # fmt: skip
def test_a_slip_of_ruler_protractor_or_scale_is_named(key: str, said: str):
    task = made(i1="14", i2="9", i3="21", method="tip-to-tail")
    mistake = of(task, key)
    assert DRAWN in mistake.how
    spots = mistake.points or (mistake.point,)
    assert said in told(task, turned(task, spots[len(spots) // 2]))


@pytest.mark.parametrize("wrong", ["81.4", "14.8"])
def test_two_figures_exchanged_in_a_value_are_named_with_both_values(wrong: str):
    task, other = made(i1="18.4", i2="11.2", i3="24.6"), made(i1=wrong, i2="11.2", i3="24.6")
    for how in (DRAWN, CALCULATED):
        said = told(task, turned(task, other.result, how))
        assert "two figures of I₁ were exchanged" in said and f"{wrong} A instead of 18.4 A" in said


def test_only_figures_that_differ_are_exchanged():
    assert [81.4, 14.8] == list(exchanged_figures(18.4))
    assert [12.1] == list(exchanged_figures(11.2))
    assert [] == list(exchanged_figures(55.5))
    assert [2.0] == list(exchanged_figures(20.0))


def by_hand(values: tuple[complex, ...], factor: float, edge: float) -> complex:
    """Lines set off with a ruler laid from its edge, and the sum measured in the same way."""
    end = sum(value * (1 + edge / factor / abs(value)) for value in values)
    return end * (1 - edge / factor / abs(end))


def test_a_ruler_from_its_edge_gives_what_it_gives_by_plain_arithmetic():
    task = made(i1="14", i2="9", i3="21", method="components")
    lines = tuple(phasor.polar(size, angle) for size, angle in ((14, 0), (9, -120), (21, 120)))
    expected = [by_hand(lines, task.factor, edge) for edge in (3.0, 4.5, 6.0)]
    spots = of(task, "ruler-edge").points
    for point in expected:
        assert min(abs(spot - point) for spot in spots) < 1e-9


@pytest.mark.parametrize("how", [DRAWN, CALCULATED])
@pytest.mark.parametrize("key", ["plain-sum", "left-out", "reversed", "mirrored", "right-angles"])
def test_a_mistake_is_named_whatever_the_way_stated(key: str, how: str):
    task = made(i1="14", i2="9", i3="21")
    mistake = next(one for one in task.mistakes if one.key == key and how in one.how)
    point = complex(mistake.size) if mistake.point is None else mistake.point
    assert plain(mistake.name) in told(task, turned(task, point, how))


def test_a_decimal_slip_carries_the_hands_error_with_it():
    """Read 3 % too long, as one drawing in ten is, then ten times too large: beyond the right answer's tolerance."""
    task = made(i1="14", i2="9", i3="21")
    size, _ = task.tolerance(DRAWN, NO_LIMITS)
    off = 0.9 * size
    assert 10 * off > 2 * size
    assert "decimal mark is one place too far to the right" in told(task, turned(task, 10 * task.result * (
        1 + off / task.size)))  # fmt: skip


def test_a_cause_is_certain_only_if_it_is_twice_as_likely_as_the_rest():
    task = made(i1="14", i2="9", i3="21")
    point = of(task, "swapped").point
    alone = told(task, turned(task, point))
    assert "You get this answer if the lengths of" in alone
    by_size = told(task, {"answer": f"{abs(of(task, 'left-out').size):.4g}"})
    assert "It could be that" in by_size and "Enter the angle too" in by_size
    for cause in judge(task, {"answer": "7.3"}).marked.causes:
        assert 0.0 < cause.share < 1.0


def test_one_line_a_little_too_long_is_blamed_on_nothing_else():
    """It gives what nobody catalogues: that is said."""
    task = made(i1="14", i2="9", i3="21", method="components")
    for share in (1.17, 0.86):
        point = task.result + phasor.polar(21.0 * (share - 1.0), 120.0)
        assert "This answer does not match a typical mistake" in told(task, turned(task, point))


@pytest.mark.parametrize("angle", ["", "40.9"])
def test_without_its_direction_no_answer_is_right(angle: str):
    task = made(i1="14", i2="9", i3="21")
    given = {"answer": f"{task.size:.3g}", "answer-angle": f"{abs(task.angle):.1f}" if angle else ""}
    reply = judge(task, given)
    assert (LOOK, "side" if angle else "angle") == (reply.marked.band, reply.missing)
    said = told(task, given)
    assert "Right" not in said.replace("Right.", "")
    assert ("Which way does it turn" if angle else "The size is right") in said
    mirror = turned(task, task.result.conjugate())
    assert WRONG == judge(task, mirror).marked.band


def test_where_no_angle_is_asked_for_the_size_is_enough():
    page = CALCULATORS["power-triangle"]
    task = page.task(page.practice_form(Code(5, "core", seed=3, number=1)))
    assert not task.angled
    assert ACCEPT == judge(task, {"answer": f"{task.size / task.writing.factor:.4g}"}).marked.band


@pytest.mark.parametrize("method", ["parallelogram", "tip-to-tail", "components"])
def test_the_arrow_that_returns_is_asked_for_and_marked(method: str):
    there, back = made(method=method), made(method=method, resultant="returning")
    assert back.result == -there.result
    assert ACCEPT == judge(back, turned(back, back.result)).marked.band
    said = told(back, turned(back, -back.result))
    assert re.search("You have measured the angle of I_N|the arrow of the result is reversed", said)
    said = {"answer": f"{there.size:.4g}", "answer-angle": f"{180 - there.angle:.1f} cw returning"}
    assert ACCEPT == judge(there, said).marked.band
    for key in ("left-out", "reversed", "mirrored"):
        assert of(back, key).point == pytest.approx(-of(there, key).point)


def first_of(task: Task) -> complex:
    """The first diagonal."""
    return next(one.value for one in task.earlier if one.key == "first")


def test_the_first_diagonal_has_a_side_of_its_own():
    """It may point to the other side than the result, with its side told or not."""
    seen = set()
    for order in ("12", "13", "23"):
        task = made(i1="14", i2="9", i3="21", method="parallelogram", order=order)
        first = first_of(task)
        angle = phasor.angle(first)
        seen.add((angle > 0) == (task.angle > 0))
        own = {"answer-first": f"{abs(first):.4g}", "answer-first-angle": f"{abs(angle):.1f}"}
        given = turned(task, task.result) | own
        side, other = ("anticlockwise", "clockwise") if angle > 0 else ("clockwise", "anticlockwise")
        for told_side, wrong in (("", ()), (side, ()), (other, ("first",))):
            reply = judge(task, given | {"answer-first-side": told_side})
            assert (ACCEPT, wrong) == (reply.marked.band, reply.wrong_before), (order, told_side)
    assert {True, False} == seen


def follow(task: Task, wrong: complex, angle: bool) -> AnswerJudgement:
    """A result that follows from a wrong first diagonal, given with its angle or without."""
    earlier = next(one for one in task.earlier if one.key == "first")
    given = turned(task, wrong + earlier.remainder) | {"answer-first": f"{abs(wrong):.5g}"}
    if angle:
        given |= {"answer-first-angle": f"{abs(phasor.angle(wrong)):.1f}",
                  "answer-first-side": "anticlockwise" if phasor.angle(wrong) > 0 else "clockwise"}  # fmt: skip
    return judge(task, given)


@pytest.mark.parametrize("angle", [True, False], ids=["with its angle", "without"])
def test_one_slip_loses_its_own_marks_once(angle: bool):
    task = made(i1="14", i2="9", i3="21", method="parallelogram", order="12")
    for wrong in (1.4 * first_of(task), first_of(task) * phasor.polar(1.5, 25.0)):
        reply = follow(task, wrong, angle)
        assert (True, ("first",), LOOK) == (reply.follows, reply.wrong_before, reply.marked.band)


def test_a_wrong_result_does_not_follow_from_a_right_value():
    task = made(i1="14", i2="9", i3="21", method="parallelogram", order="12")
    first = first_of(task)
    given = turned(task, 1.3 * task.result) | {
        "answer-first": f"{abs(first):.4g}", "answer-first-angle": f"{abs(phasor.angle(first)):.1f}",
    }  # fmt: skip
    reply = judge(task, given)
    assert (False, (), WRONG) == (reply.follows, reply.wrong_before, reply.marked.band)
    astray = judge(task, given | {"answer-first": f"{1.4 * abs(first):.4g}"})
    assert not astray.follows


@pytest.mark.parametrize("typed", [
    {"answer": "11.62∠87.5", "answer-side": "anticlockwise"}, {"answer": "11.62 at 87.5° anticlockwise"},
    {"answer": "11,62 A ∠ 87,5 acw"}, {"answer": "58.1 mm at 87.5 ccw"},
    {"answer": "11.62", "answer-angle": "87.5°acw"}, {"answer": "11.62", "answer-angle": "272.5 clockwise"},
])  # fmt: skip
def test_a_direction_is_read_wherever_it_stands(typed: dict[str, str]):
    assert ACCEPT == judge(made(), typed).marked.band


def test_a_minus_with_its_side_says_the_same_twice():
    task = made(i1="24.6", i2="18.4", i3="11.2")
    assert task.angle < 0
    for typed in (f"{task.angle:.1f} clockwise", f"−{-task.angle:.1f} cw"):
        assert ACCEPT == judge(task, {"answer": f"{task.size:.2f}", "answer-angle": typed}).marked.band
    with pytest.raises(InputError, match="turns one way, the direction"):
        judge(task, {"answer": f"{task.size:.2f}", "answer-angle": f"{task.angle:.1f} anticlockwise"})


def test_two_figures_of_a_calculated_answer_have_words_of_their_own():
    task = made()
    given = turned(task, task.result, CALCULATED)
    for typed, band, coarse in (("12", LOOK, True), ("11.6", ACCEPT, False), ("13", WRONG, False)):
        reply = judge(task, given | {"answer": typed})
        assert (band, coarse) == (reply.marked.band, reply.coarse), typed
    assert "Right, give three figures" in told(task, given | {"answer": "12"})


def test_a_unit_that_would_fit_does_not_hide_the_rest():
    """At 1 cm = 1 A the number of millimetres is that of amperes ten times too large."""
    task = made(i1="14", i2="9", i3="21", scale="1", paper="A2")
    assert "1 cm = 1 A" == task.scale_words.replace("\u00a0", " ")
    given = turned(task, task.result) | {"answer": f"{task.size * task.factor:.1f}"}
    said = told(task, given)
    assert "it is correct in mm, not in A" in said
    assert "something else could have happened" in said and "one place too far to the right" in said


def test_a_flat_drawing_never_accepts_what_no_lecturer_could_defend():
    task = made(**FLAT)
    assert 5.3 < task.size < 5.4 and task.too_flat
    size, angle = task.tolerance(DRAWN, NO_LIMITS)
    assert size == pytest.approx(0.1 * 24.6) and angle < 90.0
    for typed in ("0.9", "9.5"):
        assert ACCEPT != mark(task, LearnerAnswer(float(typed))).band
        assert ACCEPT != mark(task, LearnerAnswer(float(typed), task.angle)).band
    assert mark(task, LearnerAnswer(task.size, task.angle)).band == ACCEPT
    assert mark(task, LearnerAnswer(1.2 * task.size, task.angle), Limits(percent=25.0)).band == ACCEPT
    asked = {"do": "answer", "page": "neutral-current", "form": {**FORM, **FLAT}, "parts": ["answer"]}
    reply, _ = handle(json.dumps(asked))
    assert "Do not draw this order" in reply and "Choose instead" in reply


def test_every_mistake_of_an_other_scale_is_one_of_the_ladder_and_not_the_sheets():
    task = made(i1="14", i2="9", i3="21")
    ratios = {round(one.size / task.size, 6) for one in task.mistakes if one.key.endswith("-at-other-scale")
              and one.key != "line-at-other-scale"}  # fmt: skip
    assert {0.5, 2.0, 1.25, 2.5, 0.4, 0.8} <= ratios
    assert 1.0 not in ratios and all(math.isfinite(ratio) for ratio in ratios)
