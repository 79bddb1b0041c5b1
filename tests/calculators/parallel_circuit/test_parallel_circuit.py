"""The parallel circuit: against numpy, at resonance and at the ends, its working, its practice."""

import math
import random

import numpy as np
import pytest
from calculators.asking import moves_of
from calculators.series_circuit.test_series_circuit import NUMBERS
from unit.circuits_drawn import parallel_forms
from unit.formulas import lines_of
from unit.sheets import arrow_of, given_of, said_on, vector

from pycore.calculators.parallel_circuit.circuit import (
    NoAdmittanceError,
    ParallelInput,
    ShortCircuitError,
    resonances_of,
    solve,
)
from pycore.calculators.parallel_circuit.practice import may_be_set, parallel_of
from pycore.calculators.registry import CALCULATORS
from pycore.circuits.elements import CAPACITOR, COIL, RESISTOR, Element
from pycore.errors import InputError
from pycore.forms.elements import read_element, scaled
from pycore.forms.fields import default_form
from pycore.practice.codes import TIERS, Code
from pycore.practice.explaining import LearnerAnswer
from pycore.practice.marking import mark
from pycore.practice.task import CALCULATED
from pycore.words import plain

PAGE = CALCULATORS["parallel-circuit"]
EXAMPLE = {"b1": "24", "b2": "j32", "b3": "", "b4": "", "supply": "240 V"}


def results(form: dict[str, str]) -> dict[str, float | None]:
    """The values of a form's outputs by name."""
    return {output.name: output.value for output in PAGE.answer(form, ("answer",)).outputs}


def impedance(text: str, omega: float) -> complex:
    """A branch by this test's own reading."""
    whole = 0j
    for piece in text.split(" + "):
        number, _, unit = piece.partition(" ")
        value = float(number) * NUMBERS[unit]
        whole += 1j * omega * value if "H" in unit else 1 / (1j * omega * value) if "F" in unit else value
    return whole


def by_numpy(form: dict[str, str]) -> dict[str, float]:
    """The same circuit by complex numbers of numpy."""
    omega = 2 * np.pi * float(form["frequency"])
    numbers = [n for n in range(1, 5) if form[f"b{n}"]]
    y = 1 / np.array([impedance(form[f"b{n}"], omega) for n in numbers])
    number, unit = form["supply"].split(" ")
    volts = float(number) if unit == "V" else float(number) / np.abs(y.sum())
    made = {
        "current": np.abs(volts * y.sum()), "supply-voltage": volts, "admittance": np.abs(y.sum()),
        "phase-angle": -np.degrees(np.angle(y.sum())), "power-factor": np.cos(np.angle(y.sum())),
        "active-power": volts**2 * y.sum().real,
    }  # fmt: skip
    return made | {f"current-{n}": np.abs(volts * one) for n, one in zip(numbers, y, strict=True)}


def test_five_hundred_random_circuits_agree_with_numpy():
    for form in parallel_forms(500):
        found, expected = results(form), by_numpy(form)
        least = {"active-power": expected["current"] * expected["supply-voltage"]}
        for name, value in expected.items():
            assert value == pytest.approx(found[name], rel=1e-9, abs=1e-9 * least.get(name, 1.0)), (form, name)


@pytest.mark.parametrize("ohms", [0.0, 2.0, 10.0, 25.0])
def test_resonance_lies_where_the_textbooks_formula_puts_it(ohms: float):
    """f = root(1 / LC - R² / L²) / 2π, and L / CR is left; 50 mH and 20 µF."""
    henries, farads = 0.05, 2e-5
    coil = (Element(RESISTOR, ohms), Element(COIL, henries))
    (found,) = resonances_of((coil, (Element(CAPACITOR, farads),)), 50.0)
    expected = math.sqrt(1 / (henries * farads) - (ohms / henries) ** 2) / (2 * math.pi)
    assert expected == pytest.approx(found.hertz, rel=1e-9)
    if ohms:
        assert henries / (farads * ohms) == pytest.approx(found.ohms, rel=1e-9)
    else:
        assert found.ohms > 1e9


def test_no_resonance_where_the_resistance_is_too_large_or_one_kind_is_missing():
    coil = (Element(RESISTOR, 60.0), Element(COIL, 0.05))
    assert () == resonances_of((coil, (Element(CAPACITOR, 2e-5),)), 50.0)
    assert () == resonances_of((coil, (Element(RESISTOR, 10.0),)), 50.0)
    assert () == resonances_of(((Element(RESISTOR, 10.0),),), 50.0)


def test_a_series_resonance_within_a_branch_is_none_of_the_whole():
    """The susceptance leaps there from one sign to the other without passing through nothing."""
    branch = (Element(COIL, 0.05), Element(CAPACITOR, 2e-5))
    assert () == resonances_of((branch, (Element(RESISTOR, 10.0),)), 50.0)


SEVERAL = {"b1": "1 Ω + 100 mH", "b2": "10 µF", "b3": "1 Ω + 10 mH + 100 µF", "b4": "", "supply": "230 V"}
"""Three resonances; steps of nine per cent from the supply frequency leap over two of them."""


def roots_by_numpy(form: dict[str, str], own: float = 50.0) -> list[float]:
    """Every frequency in Hz at which the susceptances add to zero, by the roots of numpy's polynomials in ω²."""
    branches = []
    for text in filter(None, (form[f"b{place}"] for place in range(1, 5))):
        elements = [read_element(piece, "Ω", ".").element for piece in text.split(" + ")]
        kinds = {kind: [one.value for one in elements if one.kind == kind] for kind in (RESISTOR, COIL, CAPACITOR)}
        omega = 2 * np.pi * own
        branches.append((sum(kinds[RESISTOR]), omega * sum(kinds[COIL]), sum(1 / c for c in kinds[CAPACITOR]) / omega))
    reactive = [one for one in branches if one[1] or one[2]]
    total = np.poly1d([0.0])
    for place, (_, coil, rest) in enumerate(reactive):
        addend = np.poly1d([coil, -rest])
        for other, (r, x_coil, x_rest) in enumerate(reactive):
            addend *= np.poly1d([x_coil**2, r**2 - 2 * x_coil * x_rest, x_rest**2]) if other != place else 1.0
        total += addend
    positive = [root.real for root in total.roots if root.real > 1e-12 and abs(root.imag) < 1e-7 * abs(root)]
    shorted = [rest / coil for r, coil, rest in reactive if r == 0 and coil]
    kept = [x for x in positive if all(abs(x - one) > 1e-6 * one for one in shorted)]
    return sorted({float(f"{own * math.sqrt(x):.8g}") for x in kept})


def random_branches(rng: random.Random) -> dict[str, str]:
    """Two to four branches of any elements, with resistances from 0.01 Ω, over five decades of frequency."""
    def element(kind: str) -> str:
        low, high, unit = {RESISTOR: (-2, 3, "Ω"), COIL: (0, 3, "mH"), CAPACITOR: (-1, 2, "µF")}[kind]
        return f"{10 ** rng.uniform(low, high):.4g} {unit}"

    kinds = [rng.choice(("L", "C", "RL", "RC", "RLC", "LC", "R")) for _ in range(rng.randint(2, 4))]
    texts = [" + ".join(element(kind) for kind in branch) for branch in kinds]
    return {f"b{place}": text for place, text in enumerate([*texts, "", ""][:4], start=1)}


def test_every_resonance_is_found_and_none_is_stepped_over():
    rng, several = random.Random(11), 0
    for form in (SEVERAL, *(random_branches(rng) for _ in range(300))):
        branches = tuple(
            tuple(read_element(piece, "Ω", ".").element for piece in text.split(" + "))
            for text in (form[f"b{place}"] for place in range(1, 5)) if text
        )  # fmt: skip
        found = [one.hertz for one in resonances_of(branches, 50.0)]
        assert roots_by_numpy(form) == pytest.approx(found, rel=1e-6), form
        several += len(found) > 1
    assert several > 60


def test_several_resonances_are_all_listed_and_the_nearest_is_called_so():
    answer = PAGE.answer(SEVERAL)
    expected = roots_by_numpy(SEVERAL)
    assert 3 == len(expected)
    nearest = min(expected, key=lambda hertz: max(hertz / 50.0, 50.0 / hertz))
    output = next(one for one in answer.outputs if one.name == "resonance")
    assert (nearest, "nearest resonance at") == (pytest.approx(output.value, rel=1e-6), plain(output.label))
    remarks = " ".join(plain(remark) for remark in answer.remarks)
    lines = lines_of(next(working for working in answer.workings if working.key == "formula"))
    for number, hertz in enumerate(expected, start=1):
        assert scaled(hertz, "Hz", ".") in remarks.partition("several resonances")[2]
        assert f"f_0,{number} = {scaled(hertz, 'Hz', '.')}".replace("\u00a0", " ") in lines


def test_one_resonance_is_not_called_the_nearest():
    answer = PAGE.answer({"b1": "8 Ω + 50 mH", "b2": "20 µF", "b3": "", "b4": "", "supply": "230 V"})
    assert "resonance at" == plain(next(one.label for one in answer.outputs if one.name == "resonance"))
    assert "several" not in " ".join(plain(remark) for remark in answer.remarks)


def test_a_circuit_that_is_resistive_at_every_frequency_resonates_at_its_own():
    """R + jX beside R − jX with R² = L / C: 10 ohms, 100 mH and 1 mF."""
    branches = ((Element(RESISTOR, 10.0), Element(COIL, 10.0, in_ohms=True)),
                (Element(RESISTOR, 10.0), Element(CAPACITOR, 10.0, in_ohms=True)))  # fmt: skip
    assert [(50.0, 10.0)] == [(one.hertz, pytest.approx(one.ohms)) for one in resonances_of(branches, 50.0)]


def test_equal_reactances_take_no_current_from_the_supply():
    form = {"b1": "j40", "b2": "-j40", "b3": "", "supply": "240 V"}
    answer = PAGE.answer(form)
    assert ("current", 0.0, "0") == (answer.outputs[0].name, answer.outputs[0].value, answer.outputs[0].text)
    undefined = {output.name: output.value for output in answer.outputs if output.text == "none"}
    assert {"phase-angle": None, "power-factor": None} == undefined
    assert not any("power factor" in plain(line) for line in answer.summary)
    assert {"current-1": 6.0, "current-2": 6.0}.items() <= results(form).items()
    assert "branch currents add to zero" in " ".join(plain(remark) for remark in answer.remarks)
    with pytest.raises(InputError) as found:
        PAGE.answer({**form, "supply": "2 A"})
    assert ["supply"] == [fault.field for fault in found.value.faults]
    with pytest.raises(NoAdmittanceError):
        solve(ParallelInput(((Element(COIL, 40.0, True),), (Element(CAPACITOR, 40.0, True),)), 50.0, amperes=2.0))


def test_branches_that_nearly_take_no_current_do_not_need_an_endless_voltage():
    form = {"b1": "j40", "b2": "-j40.00000001", "b3": ""}
    with pytest.raises(InputError) as found:
        PAGE.answer({**form, "supply": "2 A"})
    assert ["supply"] == [fault.field for fault in found.value.faults]
    told = " ".join(plain(remark) for remark in PAGE.answer({**form, "supply": "240 V"}).remarks)
    assert told.count("is more than 1000 times the supply current") == 2


def test_at_dynamic_resonance_the_current_is_in_phase():
    """R = 8, X_L = 16: a capacitor of (64 + 256) / 16 = 20 Ω brings the power factor to 1."""
    found = results({"b1": "8 + j16", "b2": "-j20", "b3": "", "supply": "100 V"})
    assert (1.0, 50.0, 40.0, 2.5) == pytest.approx(
        tuple(found[name] for name in ("power-factor", "resonance", "dynamic-impedance", "current"))
    )
    assert abs(found["phase-angle"]) < 1e-9


@pytest.mark.parametrize(
    ("branch", "angle"), [("50", 0.0), ("0.2 H", 90.0), ("10 µF", -90.0), ("0 Ω + 0.2 H", 90.0)]
)
def test_one_branch_alone(branch: str, angle: float):
    assert angle == results({"b1": branch, "b2": "", "b3": ""})["phase-angle"]


REFUSED = [
    ({"b1": "0"}, "b1", "short circuit"), ({"b1": "j30 - j30"}, "b1", "short circuit"),
    ({"b1": "", "b2": "", "b3": ""}, "b1", "Nothing is connected"),
    ({"b2": "20 V"}, "b2", "Write 24 Ω, or 10 Ω + 50 mH"),
    ({"b4": "0 F"}, "b4", "carries no current"), ({"b4": "1 kF"}, "b4", "1\u00a0pF to 10\u00a0F"),
    ({"supply": "x"}, "supply", "Write a voltage"), ({"b1": "1+1+1+1+1+1+1"}, "b1", "6 elements"),
]  # fmt: skip


@pytest.mark.parametrize(("form", "field", "said"), REFUSED)
def test_what_cannot_be_used_is_said_at_its_field(form: dict[str, str], field: str, said: str):
    with pytest.raises(InputError) as found:
        PAGE.answer(form)
    assert [field] == [fault.field for fault in found.value.faults]
    assert said in found.value.faults[0].message


def test_a_short_circuit_names_its_branch():
    with pytest.raises(ShortCircuitError) as found:
        solve(ParallelInput(((Element(RESISTOR, 1.0),), (Element(RESISTOR, 0.0),)), 50.0, 230.0))
    assert 1 == found.value.branch


def test_the_working_has_every_step_with_numbers():
    answer = PAGE.answer({**EXAMPLE, "b2": "20 Ω + 120 mH", "b3": "47 µF", "supply": "230"})
    found = lines_of(next(working for working in answer.workings if working.key == "formula"))
    assert "X_L2 = 2 π f L₂ = 2 π × 50 Hz × 120 mH = 37.6991 Ω" in found
    assert "I₂ = (V)/(Z₂) = (230 V)/(42.6758 Ω) = 5.38947 A" in found
    assert "I₃ = (V)/(Z₃) = (230 V)/(67.7255 Ω) = 3.39606 A" in found
    assert any(line.startswith("f₀ = (1)/(2 π) √((1)/(L C) − ((R)²)/((L)²)) = 61.54 Hz") for line in found)
    assert any(line.startswith("I = V Y = 230 V × ") for line in found)


def test_susceptances_have_the_sign_of_y_equals_g_plus_jb():
    """1 / (20 + j37.70): B = -37.70 / 42.68 squared = -20.70 mS; 1 / -j67.73 = +j14.77 mS."""
    answer = PAGE.answer({**EXAMPLE, "b2": "20 Ω + 120 mH", "b3": "47 µF", "supply": "230"})
    working = next(working for working in answer.workings if working.key == "formula")
    found = lines_of(working)
    assert "B₂ = − (X₂)/((Z₂)²) = − (37.6991 Ω)/((42.6758 Ω)²) = −20.6999 mS" in found
    assert "B₃ = − (X₃)/((Z₃)²) = − ((−67.7255 Ω))/((67.7255 Ω)²) = 14.7655 mS" in found
    told = " ".join(plain(block.before) for block in working.blocks if hasattr(block, "before"))
    assert "Y = G + jB" in told and "coil −" in told


def test_the_voltage_lies_first_and_currents_are_true():
    answer, found = PAGE.answer(EXAMPLE), results(EXAMPLE)
    assert abs(vector(arrow_of(answer.sheet, "c1")) - 2400 / found["second-scale"]) < 1e-6
    assert abs(vector(arrow_of(answer.sheet, "i1")) - 100 / found["scale"]) < 1e-6
    assert abs(vector(arrow_of(answer.sheet, "i2")) + 75j / found["scale"]) < 1e-6
    assert abs(vector(arrow_of(answer.sheet, "sum")) - (100 - 75j) / found["scale"]) < 1e-6


def test_a_problem_sheet_gives_branches_and_voltage_and_keeps_the_currents():
    rows = given_of(PAGE.pages({**EXAMPLE, "sheet": "problem"})[0])
    assert ["V", "240\u00a0V"] == rows[0]
    assert len(rows) > 2 and all(len(row) == 1 for row in rows[1:])


@pytest.mark.parametrize("tier", TIERS)
def test_problems_by_code_read_naturally_and_may_be_set(tier: str):
    for number in range(1, 120):
        code = Code(4, tier, seed=11, number=number)
        assert may_be_set(parallel_of(code))
        form = PAGE.practice_form(code)
        assert ("Ω +" in form["b2"]) == (tier == "stretch")
        assert ("j" in form["b2"]) == (tier == "support")
        assert [] == list(PAGE.answer(form, ("answer",)).faults)


CIRCUIT = {"b1": "60", "b2": "20 Ω + 120 mH", "b3": "80 µF", "b4": "", "supply": "100 V", "frequency": "50"}
XL, XC = 100 * math.pi * 0.12, 1 / (100 * math.pi * 8e-5)
MISTAKES = {
    "two-pi-forgotten": 1 / 60 + 1 / complex(20, 50 * 0.12) + 1j * 50 * 8e-5,
    "kinds-exchanged": 1 / 60 + 1 / complex(20, -XL) - 1j / XC,
    "reactive-currents-added": 1 / 60 + 1 / complex(20, XL) - 1j / XC,
    "milli-forgotten": 1 / 60 + 1 / complex(20, 1000 * XL) + 1j / XC,
    "reactance-inverted": 1 / 60 + 1 / complex(20, XL) + 1j * XC,
    "impedances-in-series": 1 / complex(80, XL - XC),
    "branch-reactance-only": 1 / 60 + 1 / complex(0, XL) + 1j / XC,
    "branch-as-numbers": 1 / 60 + abs(complex(20, XL)) / (20 + XL) / complex(20, XL) + 1j / XC,
}


@pytest.mark.parametrize("key", list(MISTAKES))
def test_a_mistake_is_recognised_by_the_answer_it_gives(key: str):
    """Each worked out here by complex numbers, given as a calculated answer, and named."""
    given = 100 * MISTAKES[key]
    angle = math.degrees(math.atan2(given.imag, given.real))
    marked = mark(PAGE.task(CIRCUIT), LearnerAnswer(abs(given), angle, how=CALCULATED))
    assert key in {mistake.key for cause in marked.causes for mistake in cause.mistakes}


def test_with_a_given_current_the_voltage_is_asked_for():
    task = PAGE.task({**CIRCUIT, "supply": "5 A"})
    right = 5 / (1 / 60 + 1 / complex(20, XL) + 1j / XC)
    assert abs(task.result - right) < 1e-9
    assert "V" == task.writing.unit


def remarks_of(**form: str) -> str:
    empty = {"b1": "", "b2": "", "b3": "", "b4": "", "supply": "230 V"}
    return " ".join(plain(remark) for remark in PAGE.answer({**empty, **form}, ("answer",)).remarks)


@pytest.mark.parametrize(
    ("branch", "then"),
    [("100 mH + 100 µF", "it is then almost a short circuit."),
     ("20 + 100 mH + 100 µF", "its impedance is then only its resistance, 20\u00a0Ω.")],
)  # fmt: skip
def test_the_resonance_of_one_branch_alone_is_said(branch: str, then: str):
    hertz = scaled(1.0 / (2.0 * math.pi * math.sqrt(0.1 * 1e-4)), "Hz", ".")
    said = remarks_of(b1=branch, b2="10 mH", b3="100 µF", b4="50")
    assert f"Branch 1 alone is in resonance at {hertz}: {then}" in said
    assert "Branch 1" not in remarks_of(b1="20 + 100 mH + 100 µF"), "it is the resonance of the whole"
    assert "almost a short circuit" in remarks_of(b1="100 mH + 100 µF")


def test_that_there_is_no_resonance_is_said_where_the_coils_resistance_is_the_reason():
    """R² above L / C."""
    reason = "This circuit has no resonance: the resistance of the coil is too large."
    assert reason in remarks_of(b2="60 + 100 mH", b3="50 µF")
    assert reason in remarks_of(b1="50", b2="60 + 100 mH", b3="50 µF")
    assert "no resonance" not in remarks_of(b2="40 + 100 mH", b3="50 µF")
    for others in ({"b3": "10 + 50 µF"}, {"b3": "24"}, {"b3": "50 mH"}):
        assert "no resonance" not in remarks_of(b2="60 + 100 mH", **others)


@pytest.mark.parametrize(("coil", "intro", "formula"), [
    ("100 mH", "Resonance of a coil in parallel with a capacitor:", "(1)/(2 π √(L C))"),
    ("5 + 100 mH", "Resonance of a coil with resistance in parallel with a capacitor:", "(R)²"),
])  # fmt: skip
def test_a_coil_without_resistance_is_not_given_one(coil: str, intro: str, formula: str):
    answer = PAGE.answer({"b1": "", "b2": coil, "b3": "50 µF", "b4": "", "supply": "230 V"})
    working = next(working for working in answer.workings if working.key == "formula")
    assert intro == plain(working.blocks[-1].before)
    assert formula in next(line for line in lines_of(working) if line.startswith("f₀"))


@pytest.mark.parametrize("supply", ["230 V", "2.5 A"])
def test_the_first_diagonal_is_of_both_branches_together(supply: str):
    for order, both in (("12", "1 and 2"), ("23", "2 and 3")):
        answer = PAGE.answer({"method": "parallelogram", "order": order, "supply": supply})
        whys = [plain(block.why) for block in moves_of(answer, f"parallelogram-{order}")]
        assert f"This is the current of branches {both} together." in whys
        assert not any("without" in why for why in whys)


@pytest.mark.parametrize(("supply", "guess", "task"), [
    ("2.5 A", "Estimate the voltage.",
     "Calculate the voltage and each branch current. Draw the currents: their sum must be 2.5\u00a0A"),
    ("230 V", "Estimate the supply current.", "Calculate each branch current, then find the supply current by drawing"),
])  # fmt: skip
def test_a_problem_asks_for_what_is_not_given(supply: str, guess: str, task: str):
    form = {"supply": supply, "sheet": "problem"}
    assert guess in said_on(PAGE.pages({**form, "print": "easy"}))
    assert task.replace("\u00a0", " ") in said_on(PAGE.pages(form))


@pytest.mark.parametrize("supply", ["230 V", "2.5 A"])
def test_a_mistake_within_a_branch_names_the_branch_by_its_number(supply: str):
    page_form = {**default_form(PAGE.fields), "b1": "60", "b2": "20 + 120 mH", "b3": "47 µF", "supply": supply}
    named = {one.key: plain(one.name) for one in PAGE.task(page_form).mistakes}
    assert "in branch 2, the resistance was left out" == named["branch-reactance-only"]
    assert "in branch 2, resistance and reactance were added as plain numbers" == named["branch-as-numbers"]
