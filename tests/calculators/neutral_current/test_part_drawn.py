"""Problem sheets of the support and stretch tiers: two phasors drawn for the learner, and a further question."""

import cmath
import math

import pytest
from calculators.neutral_current.forms import forms
from unit.sheets import NEUTRAL, arrow_of, on_page, texts, turn_to_paper, vector
from unit.test_sheet_clear import faults_of, told

from pycore.drawing import Arrow
from pycore.forms.opening import ReopenInfo
from pycore.practice.codes import Code

COUNT = 30
WITH_CODE = ReopenInfo("https://folio.example.org/neutral-current/", True)
PART_DRAWN = {"sheet": "problem", "start": "two", "further": "zero"}


def lines_with_current(form: dict[str, str]) -> list[str]:
    return [f"i{n}" for n in "123" if form[f"i{n}"] != "0"]


def test_the_first_two_phasors_are_drawn_where_the_whole_construction_draws_them():
    """By every method, order, picture and paper: the same arrows, and nothing of what is to be found."""
    for form in forms(COUNT):
        whole = NEUTRAL.sheet_page({**form, "sheet": "construction"})
        page = NEUTRAL.sheet_page({**form, **PART_DRAWN})
        keys = [placed.phasor for placed in on_page(page, Arrow)]
        assert min(2, len(lines_with_current(form))) == len(keys)
        assert set(keys) <= set(lines_with_current(form))
        for key in keys:
            assert (arrow_of(page, key).tail, arrow_of(page, key).tip) == (
                arrow_of(whole, key).tail,
                arrow_of(whole, key).tip,
            )


def test_they_are_to_scale_and_at_their_angle_by_arithmetic_of_this_tests_own():
    for form in forms(COUNT):
        page = NEUTRAL.sheet_page({**form, **PART_DRAWN})
        scale = next(o.value for o in NEUTRAL.answer(form, ("answer",)).outputs if o.name == "scale")
        for key in {placed.phasor for placed in on_page(page, Arrow)}:
            size = float(form[key].replace(",", "."))
            found = vector(arrow_of(page, key))
            assert abs(found) == pytest.approx(10.0 * size / scale, rel=1e-9)
            lag_of = {**form, **{k: form[k].replace(",", ".") for k in ("i1", "i2", "i3")}}
            unit = cmath.rect(1.0, cmath.phase(turn_to_paper(lag_of, phasor_of(lag_of, key))))
            assert found / abs(found) == pytest.approx(unit, abs=1e-9)


def phasor_of(form: dict[str, str], key: str) -> complex:
    from unit.sheets import lines_of

    return lines_of(form)[key]


def test_each_bears_its_label_and_nothing_touches_or_is_left_out():
    """With the longest words a sheet has: a further question, and a code or the reason why there is none."""
    faults, missing = [], []
    for number, form in enumerate(forms(COUNT)):
        for opening in (ReopenInfo(), WITH_CODE):
            page = NEUTRAL.pages({**form, **PART_DRAWN}, opening)[0]
            faults += [(number, fault) for fault in faults_of(page)]
            words = texts(page)
            labels = [text.words for text in words if text.step is not None]
            drawn = {placed.phasor for placed in on_page(page, Arrow)}
            said = " ".join(text.words for text in words)
            missing += [number for _ in range(len(drawn) - sum(label.startswith("I") for label in set(labels)))]
            asked = any(key in ("i1", "i2") for key in lines_with_current(form))
            missing += [number] if "100 %" not in said or asked is not ("neutral current zero?" in said) else []
    assert [] == faults, told(faults)
    assert [] == missing


@pytest.mark.parametrize("tier", ["support", "core", "stretch"])
def test_a_tier_brings_its_own_problem_sheet_and_a_class_may_choose_otherwise(tier: str):
    form = NEUTRAL.practice_form(Code(0, tier))
    assert {"support": ("two", "no"), "core": ("yes", "no"), "stretch": ("yes", "zero")}[tier] == (
        form["start"],
        form["further"],
    )
    assert NEUTRAL.practice_form(Code(0, tier), {"start": "no"})["start"] == "no"


@pytest.mark.parametrize("seed", range(12))
def test_the_further_questions_answer_makes_the_neutral_zero(seed: int):
    """Put into L3 as a current with its lag, it leaves nothing: the calculator itself says so."""
    form = {**NEUTRAL.practice_form(Code(0, "stretch", seed=seed)), "reference": "voltage"}
    task = NEUTRAL.task(form)
    assert task.further is not None and task.further.angle is not None
    assert "L3" == task.further.line
    lag = math.remainder(120.0 - task.further.angle, 360.0)
    closed = {**form, "i3": f"{abs(task.further.value):.9f}", "a3": f"{lag:.9f}"}
    (neutral,) = (o.value for o in NEUTRAL.answer(closed, ("answer",)).outputs if o.name == "neutral-current")
    assert neutral == pytest.approx(0.0, abs=1e-6)
    assert NEUTRAL.task({**form, "further": "no"}).further is None
