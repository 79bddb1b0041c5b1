"""The power triangle: against numpy, at the ends, its correction, its working, its practice."""

import math
import random
from dataclasses import replace

import numpy as np
import pytest
from unit.formulas import lines_of
from unit.sheets import arrow_of, given_of, table_of, texts, vector

from pycore.calculators.registry import CALCULATORS
from pycore.constructions.moves import SetOff, TurnAngle, carry_out
from pycore.constructions.names import START_POINT
from pycore.errors import InputError
from pycore.practice import codes
from pycore.practice.codes import TIERS, Code
from pycore.practice.explaining import LearnerAnswer
from pycore.practice.marking import mark
from pycore.practice.task import CALCULATED
from pycore.sums.planner import candidate
from pycore.words import plain

PAGE = CALCULATORS["power-triangle"]
EXAMPLE = {"power": "10 kW", "factor": "0.7 lag", "target": "0.95", "voltage": "400", "phases": "3"}


def results(form: dict[str, str]) -> dict[str, float | None]:
    """The values of a form's outputs by name."""
    return {output.name: output.value for output in PAGE.answer(form, ("answer",)).outputs}


def said(form: dict[str, str]) -> str:
    """All remarks in one text."""
    return " ".join(plain(remark) for remark in PAGE.answer(form, ("answer",)).remarks)


def by_numpy(amount: float, unit: str, lag: float, target: float, volts: float, phases: int, hertz: float):
    """Complex power, and what corrects it, by numpy."""
    turn = np.exp(1j * np.radians(lag))
    root = np.sqrt(3) if phases == 3 else 1.0
    size = {"kW": amount * 1e3 / turn.real, "kVA": amount * 1e3, "kvar": amount * 1e3 / abs(turn.imag),
            "A": root * volts * amount}[unit]  # fmt: skip
    power = size * turn
    made = {"active-power": power.real, "reactive-power": power.imag, "apparent-power": size,
            "line-current": size / volts / root, "power-factor": turn.real}  # fmt: skip
    wanted = np.sign(lag) * power.real * np.tan(np.arccos(target))
    needed = power.imag - wanted
    if needed * np.sign(lag) > 1e-6 * size:
        after = abs(complex(power.real, wanted))
        made |= {"correction": needed, "apparent-power-after": after, "line-current-after": after / volts / root}
        if needed > 0:
            star = needed / (2 * np.pi * hertz * volts**2)
            made |= {"capacitance-star": star, "capacitance-delta": star / 3} if phases == 3 else {"capacitance": star}
    return made


def test_five_hundred_random_loads_agree_with_numpy():
    rng = random.Random(3)
    corrected = 0
    for _ in range(500):
        unit = rng.choice(("kW", "kVA", "kvar", "A"))
        amount, lag = float(f"{10 ** rng.uniform(-1, 3):.4g}"), round(rng.choice((1, 1, -1)) * rng.uniform(2, 85), 1)
        target, volts = round(rng.uniform(0.8, 1), 2), float(rng.choice((230, 400, 690)))
        phases, hertz = rng.choice((1, 3)), float(rng.choice((50, 60)))
        form = {"power": f"{amount:g} {unit}", "factor": f"{lag:g}", "target": f"{target:g}", "voltage": f"{volts:g}",
                "frequency": f"{hertz:g}", "phases": str(phases)}  # fmt: skip
        found, expected = results(form), by_numpy(amount, unit, lag, target, volts, phases, hertz)
        corrected += "correction" in expected
        assert ("correction" in found) == ("correction" in expected), form
        for name, value in expected.items():
            assert value == pytest.approx(found[name], rel=1e-8), (form, name)
    assert 200 < corrected < 500


def test_a_target_already_reached_needs_nothing():
    form = {**EXAMPLE, "factor": "0.97 lag"}
    assert "correction" not in results(form)
    assert "already 0.95 or better, so no correction is needed." in said(form)


def test_a_load_without_active_power_cannot_be_brought_to_a_target():
    form = {**EXAMPLE, "power": "10 kVA", "factor": "90"}
    assert (0.0, 10000.0) == pytest.approx((results(form)["active-power"], results(form)["reactive-power"]), abs=1e-6)
    assert "takes no active power" in said(form)


def test_a_load_of_unity_has_no_reactive_power():
    form = {**EXAMPLE, "factor": "1", "target": ""}
    found = results(form)
    assert (10000.0, 0.0, 10000.0, 1.0) == (
        found["active-power"], found["reactive-power"], found["apparent-power"], found["power-factor"],
    )  # fmt: skip
    assert "1.000" == next(o.text for o in PAGE.answer(form).outputs if o.name == "power-factor")


def test_a_leading_load_needs_a_coil_and_no_capacitor():
    found = results({**EXAMPLE, "factor": "0.7 lead"})
    assert -6915.2 == pytest.approx(found["correction"], abs=0.05)
    assert not [name for name in found if name.startswith("capacitance")]
    assert "a capacitor would make the power factor worse" in said({**EXAMPLE, "factor": "0.7 lead"})


def test_a_target_on_the_other_side_overcorrects():
    found = results({**EXAMPLE, "target": "0.95 lead"})
    expected = 10000 * (math.tan(math.acos(0.7)) + math.tan(math.acos(0.95)))
    assert expected == pytest.approx(found["correction"], rel=1e-9)


def test_a_bare_power_factor_is_taken_as_lagging_and_said():
    assert results({**EXAMPLE, "factor": "0.7"}) == results(EXAMPLE)
    assert "45.57° lag" == PAGE.answer({**EXAMPLE, "factor": "0.7"}).echo["factor"]["said"]


REFUSED = [
    ({"power": "10"}, "power", "needs a unit"), ({"power": ""}, "power", "is empty"),
    ({"power": "10 V"}, "power", "Write 10 kW"), ({"power": "-5 kW"}, "power", "out of range"),
    ({"power": "0 kW"}, "power", "out of range"), ({"factor": "120"}, "factor", "more than 90°"),
    ({"factor": "1.2 lag"}, "factor", "ower factor"), ({"factor": "90"}, "power", "from its active power"),
    ({"factor": "89.99999999"}, "power", "from its active power"),
    ({"power": "5 kvar", "factor": "0.01°"}, "power", "cannot be calculated from its reactive power"),
    ({"power": "5 kvar", "factor": "1"}, "power", "cannot be calculated from its reactive power"),
    ({"target": "1.2"}, "target", "up to 1"),
    ({"target": "0"}, "target", "above 0"), ({"target": "x"}, "target", "“x”"),
    ({"voltage": "0"}, "voltage", "1\u00a0mV"),
]  # fmt: skip


@pytest.mark.parametrize(("form", "field", "message"), REFUSED)
def test_what_cannot_be_used_is_said_at_its_field(form: dict[str, str], field: str, message: str):
    with pytest.raises(InputError) as found:
        PAGE.answer({**EXAMPLE, **form})
    assert [field] == [fault.field for fault in found.value.faults]
    assert message in found.value.faults[0].message


def test_the_working_has_every_step_with_numbers():
    found = lines_of(next(working for working in PAGE.answer(EXAMPLE).workings if working.key == "formula"))
    assert "S = (P)/(cos φ) = (10 kW)/(0.70000) = 14.286 kVA" in found
    assert "Q = P tan φ = 10 kW × tan 45.573° = 10.202 kvar" in found
    assert "Q_C = Q − Q₂ = 10.202 kvar − 3.2869 kvar = 6.915 kvar" in found
    assert any(line.startswith("C_delta = ") and line.endswith(" = 45.86 µF") for line in found)
    assert any(line.startswith("C_star = ") and line.endswith(" = 137.6 µF") for line in found)


def working_of(**form: str) -> tuple[list[str], str]:
    """The lines of the calculation, and the words before them."""
    found = next(one for one in PAGE.answer({**EXAMPLE, **form}).workings if one.key == "formula")
    return lines_of(found), " ".join(plain(block.before) for block in found.blocks if hasattr(block, "before"))


def test_a_target_that_leads_has_its_sign_from_the_start():
    """10.20 kvar less -3.287 kvar is 13.49 kvar; under the root stands a size."""
    found, told = working_of(target="0.95 lead")
    assert "φ₂ = − arccos 0.95000 = −18.195°" in found
    assert "Q₂ = P tan φ₂ = 10 kW × tan (−18.195°) = −3.2869 kvar" in found
    assert "Q_C = Q − Q₂ = 10.202 kvar − (−3.2869 kvar) = 13.489 kvar" in found
    assert not any("^2" in line and "−3.2869" in line for line in found)
    assert "Reactive power falls" not in told and "The target is leading" in told


def test_a_load_that_leads_has_its_sign_throughout():
    found, told = working_of(factor="0.7 lead")
    assert "φ = − arccos 0.70000 = −45.573°" in found
    assert "Q = P tan φ = 10 kW × tan (−45.573°) = −10.202 kvar" in found
    assert "Q_L = Q₂ − Q = −3.2869 kvar − (−10.202 kvar) = 6.915 kvar" in found
    assert "The load current leads" in told


def test_the_summary_keeps_the_sign_of_the_angle():
    for target, said_ in (("0.95 lead", "at −18.2°"), ("0.95", "at 18.2°")):
        summary = PAGE.answer({**EXAMPLE, "target": target}, ("answer",)).summary
        assert said_ in plain(summary[0])


def test_each_power_is_named_with_its_own_unit():
    answer = PAGE.answer(EXAMPLE)
    moves = [plain(block.phrase) for working in answer.workings for block in working.blocks if hasattr(block, "step")]
    assert "1\u00a0cm\u00a0=\u00a01\u00a0kVA. The longest length to mark, 10.20\u00a0kvar" in moves[0]
    assert any("calculated: 14.29\u00a0kVA" in move for move in moves)
    assert any("calculated: 3.29\u00a0kvar" in move for move in moves)
    expected = ["P/kW", "Q/kvar", "QC/kvar", "S2/kVA", "S1/kVA", "Cdelta/µF", "Cstar/µF"]
    assert expected == [row[0] for row in table_of(answer.sheet)[1:]]
    assert "10.20\u00a0kvar" in "".join(plain(PAGE.lesson(EXAMPLE, "lesson", 1).reading))


def test_a_problem_sheet_keeps_what_is_to_be_found():
    page = PAGE.pages({**EXAMPLE, "sheet": "problem"})[0]
    assert [["P/kW"], ["Q/kvar"], ["QC/kvar"]] == given_of(page)
    heads = next(row for row in table_of(page) if row[0] == "result")
    assert ["S2/kVA", "S2 from P", "S1/kVA", "Cdelta/µF", "Cstar/µF"] == heads[1:]


@pytest.mark.parametrize("tier", TIERS)
def test_problems_by_code_read_naturally(tier: str):
    for number in range(1, 120):
        form = PAGE.practice_form(Code(5, tier, seed=11, number=number))
        found = results(form)
        assert ("correction" in found) == (tier != "support")
        assert 1e3 <= found["active-power"] <= 3e4


MISTAKES = {
    "whole-corrected": 10 * math.tan(math.acos(0.7)),
    "remaining-taken": 10 * math.tan(math.acos(0.95)),
    "apparent-subtracted": 10 / 0.7 - 10 / 0.95,
    "cosines-subtracted": 10 * (0.95 - 0.7),
    "apparent-for-active": 10 * (math.sin(math.acos(0.7)) - math.sin(math.acos(0.95))),
}


@pytest.mark.parametrize("key", list(MISTAKES))
def test_a_slip_with_the_correction_is_recognised(key: str):
    marked = mark(PAGE.task(EXAMPLE), LearnerAnswer(1000 * MISTAKES[key], None, how=CALCULATED))
    assert key in {mistake.key for cause in marked.causes for mistake in cause.mistakes}


def test_the_right_correction_is_accepted():
    assert "accept" == mark(PAGE.task(EXAMPLE), LearnerAnswer(6915.0, None, how=CALCULATED)).band


@pytest.mark.parametrize(
    ("key", "size"), [("apparent-for-active", 3.0), ("factor-multiplied", 1.8), ("powers-as-numbers", 7.0)]
)
def test_a_slip_with_the_triangle_is_recognised(key: str, size: float):
    task = PAGE.task({"power": "3 kW", "factor": "0.6", "target": "", "voltage": "230", "phases": "1"})
    marked = mark(task, LearnerAnswer(1000 * size, math.degrees(math.acos(0.6)), how=CALCULATED))
    assert key in {mistake.key for cause in marked.causes for mistake in cause.mistakes}


def test_tip_to_tail_draws_the_triangle_before_the_correction_too():
    sheet = PAGE.pages(EXAMPLE)[0]
    before, after = (vector(arrow_of(sheet, key)) for key in ("i12", "sum"))
    assert abs(before - complex(100, 1000 * math.tan(math.acos(0.7)) / 10)) < 1e-6
    assert abs(after - complex(100, 1000 * math.tan(math.acos(0.95)) / 10)) < 1e-6
    working = next(working for working in PAGE.answer(EXAMPLE).workings if working.on_sheet)
    told = [(plain(block.phrase), plain(block.why)) for block in working.blocks if hasattr(block, "step")]
    assert ("Draw S₁. From the start to the tip of Q.", "This is the triangle before the correction.") in told


CORRECTED = (
    {}, {"target": "1"}, {"target": "0.9 lead"}, {"factor": "0.7 lead"}, {"factor": "1", "target": "0.8 lead"},
    {"phases": "1"}, {"first": "up", "rotation": "clockwise"},
)  # fmt: skip
"""Loads and targets on either side, power factor 1 before and after, another way to draw."""


@pytest.mark.parametrize("form", CORRECTED)
def test_the_drawing_finds_the_correction_and_does_not_set_it_off(form: dict[str, str]):
    """The target's angle at the start cuts the perpendicular at the tip of P; the correction is measured there."""
    case = PAGE.case({**EXAMPLE, **form})
    construction = case.sheet_plan().construction
    assert ("tip-to-tail", "12") == (construction.method, construction.order)
    assert not [move for move in construction.moves if isinstance(move, SetOff) and move.phasor == "i3"]
    turns = [move for move in construction.moves if isinstance(move, TurnAngle) and move.at == START_POINT]
    assert [move.turn for move in turns] == pytest.approx([math.degrees(math.atan2(case.total.imag, case.total.real))])
    assert abs(case.correction.vars) == pytest.approx(construction.figure.readings["i3"], rel=1e-12)
    end = construction.end_point
    assert (case.total.real, case.total.imag) == pytest.approx((end.x, end.y), rel=1e-12, abs=1e-9)


def test_a_protractor_one_degree_off_at_the_target_gives_another_correction():
    """A drawing that set off the known Q_C would not notice: P (tan 19.19° − tan 18.19°) = 195 var."""
    construction = PAGE.case(EXAMPLE).sheet_plan().construction
    place = next(i for i, m in enumerate(construction.moves) if isinstance(m, TurnAngle) and m.at == START_POINT)
    read = carry_out(construction.moves, {f"{place}:angle": 1.0}).readings["i3"]
    angle = math.acos(0.95)
    lost = 10000 * (math.tan(angle + math.pi / 180) - math.tan(angle))
    assert lost == pytest.approx(construction.figure.readings["i3"] - read)


def test_the_moves_and_the_lesson_say_how_the_correction_is_found():
    working = next(one for one in PAGE.answer(EXAMPLE).workings if one.on_sheet)
    moves = [plain(block.phrase) for block in working.blocks if hasattr(block, "step")]
    assert any(move.startswith("Mark the target angle.") and "18.2° anticlockwise" in move for move in moves)
    assert any(move.startswith("Measure Q_C.") and "calculated: 6.92\u00a0kvar" in move for move in moves)
    count = PAGE.lesson(EXAMPLE, "lesson", 1).count
    frames = [PAGE.lesson(EXAMPLE, "lesson", number) for number in range(1, count + 1)]
    assert any("6.92\u00a0kvar" in "".join(plain(why) for why in frame.why) for frame in frames)
    pages = PAGE.pages({**EXAMPLE, "sheet": "problem", "print": "easy"})
    assert "whose cosine is the target power factor" in " ".join(one.words for page in pages for one in texts(page))


def test_a_construction_that_needs_the_correction_beforehand_says_so():
    for working in PAGE.answer(EXAMPLE).workings:
        if any(hasattr(block, "step") for block in working.blocks):
            said = " ".join(plain(block.phrase) for block in working.blocks if hasattr(block, "phrase"))
            assert ("needs Q_C first" in said) == (working.key != "tip-to-tail-12"), working.key


def test_the_table_has_the_apparent_power_before_its_angle_and_the_capacitors():
    rows = {row[0]: row[1:] for row in table_of(PAGE.answer(EXAMPLE).sheet)}
    assert ["14.29", "143.0", "45.6°", "anticlockwise"] == list(rows["S1/kVA"])
    assert ("45.86", "137.6") == (rows["Cdelta/µF"][0], rows["Cstar/µF"][0])
    rows = {row[0]: row[1:] for row in table_of(PAGE.answer({**EXAMPLE, "phases": "1"}).sheet)}
    assert "137.6" == rows["C/µF"][0]
    rows = [row[0] for row in table_of(PAGE.answer({**EXAMPLE, "method": "parallelogram", "order": "12"}).sheet)]
    assert 1 == rows.count("S1/kVA")
    cells = [cell for row in table_of(PAGE.pages({**EXAMPLE, "sheet": "problem"})[0]) for cell in row]
    assert {"S1/kVA", "Cdelta/µF", "Cstar/µF"} <= set(cells)
    assert not any("14.29" in cell or "45.86" in cell for cell in cells)


def test_a_sheet_of_a_given_scale_without_room_for_further_rows_keeps_its_scale():
    """Links of version 1 name a scale that fitted a shorter table."""
    kept = 0
    for paper in ("A5", "A4", "letter"):
        for orientation in ("portrait", "landscape"):
            for printed in ("usual", "easy", "large"):
                form = {**EXAMPLE, "paper": paper, "orientation": orientation, "print": printed}
                case = PAGE.case(form)
                built = candidate(case, replace(case.build("tip-to-tail", "12"), further=0))
                bare = case.planner.choose(case, [built], "", None, None)[0]
                again = PAGE.case({**form, "scale": f"{bare.scale:g}"})
                assert () == again.chosen.misfit, (paper, orientation, printed)
                plan = again.sheet_plan()
                assert (bare.scale, bare.layout.orientation) == (plan.scale, plan.layout.orientation)
                kept += plan.construction.further > 0
    assert kept > 4


def test_a_correction_that_raises_the_current_says_so():
    """From 0.95 lagging to 0.6 leading: 15.19 A becomes 24.06 A."""
    assert "rises from 15.19\u00a0A to 24.06\u00a0A" in said({**EXAMPLE, "factor": "0.95 lag", "target": "0.6 lead"})
    assert "rises" not in said(EXAMPLE)


def test_a_class_sets_problem_is_drawn_as_its_page_draws_it():
    for text in ("3J3-24F-27D", "3KM-BSH-2YS"):
        form = PAGE.practice_form(codes.read(text))
        steps = [step.name for step in PAGE.case(form).sheet_plan().construction.steps]
        page = [step.name for step in PAGE.case({**EXAMPLE, "method": form["method"]}).sheet_plan().construction.steps]
        assert page == steps


@pytest.mark.parametrize(
    ("form", "expected"),
    [
        ({}, "Three capacitors with 6.915\u00a0kvar together change the power factor to 0.95 lagging."),
        ({"factor": "0.7 lead"}, "Three coils with 6.915\u00a0kvar together change the power factor to 0.95 leading."),
        ({"target": "0.95 lead"},
         "Three capacitors with 13.49\u00a0kvar together change the power factor to 0.95 leading."),
        ({"phases": "1"}, "A capacitor of 6.915\u00a0kvar changes the power factor to 0.95 lagging."),
        ({"phases": "1", "target": "1"}, "A capacitor of 10.20\u00a0kvar changes the power factor to 1."),
    ],
)  # fmt: skip
def test_the_correction_is_named_with_its_number_and_the_side_that_it_reaches(form: dict[str, str], expected: str):
    assert expected in said({**EXAMPLE, **form})


def test_the_correction_of_three_phases_is_labelled_as_that_of_three():
    for phases, label in (("3", "Three capacitors together"), ("1", "Capacitor")):
        outputs = PAGE.answer({**EXAMPLE, "phases": phases}, ("answer",)).outputs
        assert label == next(plain(one.label) for one in outputs if one.name == "correction")


def test_a_power_factor_agrees_with_an_angle_that_is_not_nothing():
    outputs = {one.name: one.text for one in PAGE.answer({**EXAMPLE, "factor": "1°"}, ("answer",)).outputs}
    assert ("0.9998 lagging", "1.0°") == (outputs["power-factor"], outputs["phase-angle"])


@pytest.mark.parametrize(("typed", "read"), [
    ("80", "80"), ("80.0", "80.0"), ("1.2", "1.2"), ("1,2", "1.2"), ("+80", "+80"), ("8e1", "8e1"),
    ("60 lag", "60"), ("60 lead", "60"), ("60 Lag", "60"), ("60 lagging", "60"), ("lag 60", "60"), ("60 cap", "60"),
])  # fmt: skip
def test_a_number_above_one_is_said_to_be_read_as_an_angle(typed: str, read: str):
    said = f"{read} was read as an angle of {read}°. A power factor is never more than 1: for 80 %, enter 0.8."
    assert said == plain(PAGE.answer({"factor": typed}, ()).remarks[0]).replace("\u00a0", " ")


@pytest.mark.parametrize("typed", ["0.7 lag", "45.6°", "60 deg lag", "-60", "1", "1.0", "0.95", "unity"])
def test_a_power_factor_or_an_angle_is_not(typed: str):
    try:
        remarks = PAGE.answer({"factor": typed}, ()).remarks
    except InputError:
        remarks = ()
    assert not any("was read as an angle" in plain(line) for line in remarks)
