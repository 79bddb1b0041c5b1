"""Unequal power factors are drawn: the voltages as thin lines first, and each angle as a sum of what was typed."""

import math
import random
import re

import pytest

from pycore.calculators.registry import CALCULATORS
from pycore.constructions import step_kinds
from pycore.drawing import Group, Line
from pycore.sheet.compose import settled
from pycore.sheet.plan import Plan
from pycore.sums.case import SumCase
from pycore.sums.lesson import Lesson
from pycore.sums.sentences import StepSentences
from pycore.sums.sheet import look_of
from pycore.words import plain

PAGE = CALCULATORS["neutral-current"]
METHODS = ("parallelogram", "tip-to-tail", "components")
LAGS = ("0", "0.9 lag", "0.8 lag", "0.707 lead", "30", "-45", "12.5", "90", "170", "-170", "")
SUM = re.compile(r"From [^:]+: ([−+°\d. ]+) = (−?[\d.]+)° (clockwise|anticlockwise)\.")
MARK = re.compile(r"Mark ([\d.]+)° (clockwise|anticlockwise)")
SEEDS = range(40)


def form(seed: int, **choices: str) -> dict[str, str]:
    rng = random.Random(seed)
    values = {field.name: field.default for field in PAGE.fields}
    values |= {name: f"{rng.uniform(2.0, 40.0):.1f}" for name in ("i1", "i2", "i3")}
    values |= {name: rng.choice(LAGS) for name in ("a1", "a2", "a3")}
    if rng.random() < 0.2:
        values[rng.choice(("i1", "i2", "i3"))] = "0"
    return {
        **values, "method": METHODS[seed % 3], "sequence": rng.choice(("123", "132")),
        "rotation": rng.choice(("clockwise", "anticlockwise")), "reference": rng.choice(("current", "voltage")),
        "first": rng.choice(("up", "right")), "decimal": "point", **choices,
    }  # fmt: skip


def degrees(text: str) -> list[float]:
    """The parts of a printed sum of angles."""
    return [float(part.replace("−", "-").replace(" ", "")) for part in re.findall(r"[−+]? ?[\d.]+(?=°)", text)]


def has_lines(case: SumCase) -> bool:
    return any(step.name == step_kinds.VOLTAGES for step in case.sheet_plan().construction.steps)


@pytest.mark.parametrize("seed", SEEDS)
def test_points_scale_and_place_are_those_without_the_thin_lines(seed: int):
    case = PAGE.case(form(seed))
    plan = case.sheet_plan()
    bare = SumCase.build(case, plan.construction.method, plan.construction.order)
    assert bare.figure.points == plan.construction.figure.points
    assert bare.figure.readings == plan.construction.figure.readings
    without = Plan(**{name: getattr(plan, name) for name in plan.__slots__ if name != "construction"},
                   construction=bare)  # fmt: skip
    assert settled(without, look_of(case))[0] == settled(plan, look_of(case))[0]
    assert has_lines(case) == (not case.solution.equal_angles)


@pytest.mark.parametrize("seed", SEEDS)
def test_every_angle_is_a_sum_that_holds_as_printed_and_is_the_angle_to_mark(seed: int):
    case = PAGE.case(form(seed))
    plan = case.sheet_plan()
    sentences = StepSentences(plan, case.notation)
    for step in plan.construction.steps:
        told, why = (plain(phrase) for phrase in sentences.sentence(step))
        added, marked = SUM.search(why), MARK.search(told)
        if added is None:
            continue
        total, parts = float(added[2].replace("−", "-")), degrees(added[1])
        assert len(parts) > 1 and math.isclose(math.fsum(parts), total, abs_tol=1e-6), why
        if marked:
            # At a tip the angle is measured from straight back.
            angle = 180.0 - total if step.name == step_kinds.FOLLOW else total
            assert abs(angle - float(marked[1])) <= 0.0601, (told, why)
            assert (added[3] == marked[2]) == (step.name != step_kinds.FOLLOW), (told, why)


def lines_drawn(case: SumCase) -> dict[str, float]:
    """The directions on paper of the thin lines, by the order in which they are drawn."""
    plan = case.sheet_plan()
    drawn = settled(plan, look_of(case))[1]
    thin = [item for items in drawn.by_step.values() for item in items
            if isinstance(item, Group) and item.name == "voltage"]  # fmt: skip
    found = {}
    for index, group in enumerate(thin):
        (line,) = (item for item in group.items if isinstance(item, Line))
        found[str(index)] = math.degrees(math.atan2(line.end.y - line.start.y, line.end.x - line.start.x))
    return found


def test_each_current_is_turned_by_its_own_lag_from_its_own_thin_line():
    case = PAGE.case(form(0, i1="18.4", i2="11.2", i3="24.6", a1="0.9 lag", a2="0.8 lag", a3="20 lead",
                          method="components", reference="current", first="up", rotation="anticlockwise",
                          sequence="123"))  # fmt: skip
    first, second, third = lines_drawn(case).values()
    # The first current points straight up; minus is clockwise, the sense of lag.
    assert first == pytest.approx(90.0 + math.degrees(math.acos(0.9)))
    assert (second - first) % 360.0 == pytest.approx(240.0)
    assert (third - first) % 360.0 == pytest.approx(120.0)
    sentences = StepSentences(case.sheet_plan(), case.notation)
    told = [" ".join(plain(part) for part in sentences.sentence(step)) for step in case.sheet_plan().construction.steps]
    assert any("I₂ lags V₂ by 36.87°. From I₁: 120° + 36.87° − 25.84° = 131.03° clockwise." in text for text in told)
    assert told[2].startswith("Draw thin lines for V₁, V₂ and V₃ from the common point. V₁: 25.84° anticlockwise")


def test_the_lesson_has_one_step_for_the_thin_lines():
    case = PAGE.case(form(1, i1="18.4", i2="11.2", i3="24.6", a1="0.9 lag", a2="0.8 lag", a3="0"))
    plan = case.sheet_plan()
    lesson = Lesson(plan, StepSentences(plan, case.notation), look_of(case))
    assert len([frame for frame in lesson.frames if frame.name == step_kinds.VOLTAGES]) == 1
    assert len(lesson.begins()) == len(plan.construction.steps)


def test_equal_lags_need_no_thin_lines():
    assert not has_lines(PAGE.case(form(2, a1="0.8 lag", a2="0.8 lag", a3="0.8 lag")))
