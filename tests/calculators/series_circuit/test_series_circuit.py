"""The series circuit: against numpy, at resonance and at the ends, its sheet, its working, its practice."""

import math

import numpy as np
import pytest
from calculators.asking import moves_of
from host import shelf
from unit.circuits_drawn import series_forms
from unit.sheets import given_of, texts, vector
from unit.test_sheet_clear import faults_of, told

from pycore.calculators.registry import CALCULATORS
from pycore.calculators.series_circuit.circuit import NoImpedanceError, SeriesInput, solve
from pycore.calculators.series_circuit.practice import may_be_set, series_of
from pycore.circuits.elements import CAPACITOR, COIL, RESISTOR, Element
from pycore.errors import InputError
from pycore.forms.elements import TypedElement, read_element, scaled
from pycore.practice.codes import TIERS, Code
from pycore.practice.explaining import LearnerAnswer
from pycore.practice.marking import mark
from pycore.practice.task import CALCULATED, DRAWN
from pycore.quantity import QuantityError
from pycore.words import plain

PAGE = CALCULATORS["series-circuit"]
EXAMPLE = {"r": "10", "l": "0.1", "c": "100 µF", "supply": "230", "frequency": "50"}
NUMBERS = {"kΩ": 1e3, "Ω": 1.0, "mH": 1e-3, "H": 1.0, "µF": 1e-6, "nF": 1e-9, "F": 1.0, "V": 1.0, "A": 1.0, "": 1.0}


def results(form: dict[str, str]) -> dict[str, float | None]:
    """The values of a form's outputs by name."""
    return {output.name: output.value for output in PAGE.answer(form, ("answer",)).outputs}


def typed(text: str) -> list[float]:
    """The values of a field by this test's own reading."""
    found = []
    for piece in filter(None, text.split(" + ")):
        number, _, unit = piece.partition(" ")
        found.append(float(number) * NUMBERS[unit])
    return found


def by_numpy(form: dict[str, str]) -> dict[str, float]:
    """The same circuit by complex numbers of numpy."""
    omega = 2 * np.pi * float(form["frequency"])
    z = np.array([*typed(form["r"]), *(1j * omega * v for v in typed(form["l"])),
                  *(1 / (1j * omega * v) for v in typed(form["c"]))], dtype=complex)  # fmt: skip
    number, unit = form["supply"].split(" ")
    current = float(number) if unit == "A" else float(number) / np.abs(z.sum())
    made = {
        "current": current, "supply-voltage": np.abs(z.sum() * current), "impedance": np.abs(z.sum()),
        "phase-angle": np.degrees(np.angle(z.sum())), "power-factor": np.cos(np.angle(z.sum())),
        "reactance": z.sum().imag, "active-power": current**2 * z.sum().real,
    }  # fmt: skip
    return made | {f"voltage-{n}": np.abs(one * current) for n, one in enumerate(z, start=1)}


def test_five_hundred_random_circuits_agree_with_numpy():
    for form in series_forms(500):
        found, expected = results(form), by_numpy(form)
        scale = {"reactance": expected["impedance"]}
        for name, value in expected.items():
            assert value == pytest.approx(found[name], rel=1e-9, abs=1e-9 * scale.get(name, 1.0)), (form, name)


def test_resonance_leaves_the_resistance_alone():
    """X_L = X_C = 31.4 Ω exactly, so that nothing is left but R."""
    form = {"r": "10", "l": "31.4 Ω", "c": "31.4 Ω", "supply": "230 V"}
    found = results(form)
    assert (10.0, 23.0, 0.0, 1.0, 50.0) == pytest.approx(
        tuple(found[name] for name in ("impedance", "current", "phase-angle", "power-factor", "resonance"))
    )
    answer = PAGE.answer(form)
    told_by = " ".join(plain(remark) for remark in answer.remarks)
    assert "Resonance: at 50\u00a0Hz the reactances cancel" in told_by
    assert "V_L is 3.1 times the supply voltage" in told_by
    assert "I and V are in phase: power factor 1." == plain(answer.summary[0])


def test_nothing_but_equal_reactances_on_a_voltage_is_refused():
    with pytest.raises(InputError) as found:
        PAGE.answer({"r": "", "l": "j20", "c": "20 Ω"})
    assert {"r", "supply"} == {fault.field for fault in found.value.faults}
    assert "nothing limits the current" in found.value.faults[0].message
    with pytest.raises(NoImpedanceError):
        solve(SeriesInput((Element(COIL, 20.0, True), Element(CAPACITOR, 20.0, True)), 50.0, 230.0))


@pytest.mark.parametrize(
    "form",
    [{"r": "0", "l": "0.1 H", "c": "101.32118364 µF"}, {"r": "0.01", "l": "31.4 Ω", "c": "31.4 Ω"}],
)
def test_reactances_that_nearly_cancel_without_resistance_are_refused_too(form: dict[str, str]):
    """An element's voltage would be more than 1000 times the supply."""
    with pytest.raises(InputError) as found:
        PAGE.answer({**form, "supply": "230 V"})
    assert all("nothing limits the current" in fault.message for fault in found.value.faults)
    assert results({**form, "r": "0.1", "supply": "230 V"})["current"] > 0


def test_with_a_given_current_nothing_is_said_of_a_thousand_million_times():
    answer = PAGE.answer({"r": "0", "l": "0.1 H", "c": "101.32118364 µF", "supply": "1 A"})
    told = " ".join(plain(remark) for remark in answer.remarks)
    assert "V_L is more than 1000 times the supply voltage" in told


def test_nothing_but_equal_reactances_with_a_current_gives_no_voltage():
    answer = PAGE.answer({"r": "", "l": "20 Ω", "c": "20 Ω", "supply": "2 A"})
    assert 0.0 == answer.outputs[0].value
    assert ("supply-voltage", "0") == (answer.outputs[0].name, answer.outputs[0].text)
    undefined = {output.name: output.value for output in answer.outputs if output.text == "none"}
    assert {"phase-angle": None, "power-factor": None} == undefined
    assert not any("power factor" in plain(line) for line in answer.summary)


@pytest.mark.parametrize(
    ("form", "angle", "factor"),
    [({"r": "50"}, 0.0, 1.0), ({"l": "0.2"}, 90.0, 0.0), ({"c": "10 µF"}, -90.0, 0.0),
     ({"r": "0", "l": "1"}, 90.0, 0.0)],
)  # fmt: skip
def test_one_kind_alone(form: dict[str, str], angle: float, factor: float):
    """Unity and zero power factor; an element of 0 Ω has no arrow and is told of."""
    found = results({"r": "", "l": "", "c": "", **form})
    assert angle == found["phase-angle"]
    assert factor == pytest.approx(found["power-factor"], abs=1e-12)
    answer = PAGE.answer({"r": "", "l": "", "c": "", **form})
    told_by = [plain(notice) for notice in answer.notices]
    assert ("R: 0 Ω, so there is no arrow." in told_by) == ("0" == form.get("r"))
    assert [] == faults_of(answer.sheet)


REFUSED = [
    ({"c": "0"}, "c", "carries no current"), ({"c": "100"}, "c", "for example 100 µF"), ({"r": "ten"}, "r", "“ten”"),
    ({"r": "10 H"}, "r", "belongs in another field"), ({"supply": "5 W"}, "supply", "Write a voltage"),
    ({"supply": ""}, "supply", "is empty"), ({"supply": "0"}, "supply", "1\u00a0µV to 1\u00a0MV"),
    ({"frequency": "0"}, "frequency", "10\u00a0mHz"), ({"r": "", "l": "", "c": ""}, "r", "at least one"),
    ({"r": "1 + 2 + 3 + 4", "l": "1 + 2"}, "r", "6 elements"), ({"r": "1 +"}, "r", "put + between them"),
    ({"l": "20 - j30"}, "l", "another field"),
    ({"r": "0", "l": "0", "c": "", "supply": "1 A"}, "r", "the whole circuit has 0 Ω"),
    ({"r": "0", "l": "", "c": "", "supply": "1 A"}, "r", "the whole circuit has 0 Ω"),
    ({"r": "0", "l": "0", "c": "", "supply": "230 V"}, "l", "the whole circuit has 0 Ω"),
]  # fmt: skip


@pytest.mark.parametrize(("form", "field", "said"), REFUSED)
def test_what_cannot_be_used_is_said_at_its_field(form: dict[str, str], field: str, said: str):
    with pytest.raises(InputError) as found:
        PAGE.answer(form)
    assert field in {fault.field for fault in found.value.faults}
    assert any(said in fault.message for fault in found.value.faults if fault.field == field)


@pytest.mark.parametrize(
    ("text", "bare", "kind", "value", "said"),
    [
        ("10", "Ω", RESISTOR, 10.0, "10 Ω"), ("1,5 kΩ", "Ω", RESISTOR, 1500.0, "1.5 kΩ"),
        ("100 mH", "H", COIL, 0.1, "100 mH"), ("100uF", "F", CAPACITOR, 1e-4, "100 µF"),
        ("470 nF", "F", CAPACITOR, 4.7e-7, "470 nF"), ("22 pF", "F", CAPACITOR, 2.2e-11, "22 pF"),
        ("j32", "Ω", COIL, 32.0, "32 Ω"), ("−j 20 ohm", "Ω", CAPACITOR, 20.0, "20 Ω"), ("0.1", "H", COIL, 0.1, "0.1 H"),
    ],
)  # fmt: skip
def test_elements_are_read_as_typed(text: str, bare: str, kind: str, value: float, said: str):
    found: TypedElement = read_element(text, bare, ".")
    assert (kind, said) == (found.element.kind, found.text.replace("\u00a0", " "))
    assert value == pytest.approx(found.element.value, rel=1e-12)


@pytest.mark.parametrize("text", ["", "10 V", "j", "jj3", "j-3", "abc", "10 + 5", "1 k", "1e"])
def test_texts_that_are_no_element(text: str):
    with pytest.raises(QuantityError):
        read_element(text, "Ω", ".")


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [(31.0008, "Ω", "31.00 Ω"), (230.0, "V", "230 V"), (0.4591, "A", "0.4591 A"), (0.04591, "A", "45.91 mA"),
     (999.96, "V", "1.000 kV"), (-62.83, "Ω", "−62.83 Ω"), (0.0, "W", "0 W"), (1234567.0, "W", "1.235 MW")],
)  # fmt: skip
def test_results_are_written_to_four_figures(value: float, unit: str, text: str):
    assert text == scaled(value, unit, ".").replace("\u00a0", " ")


def test_the_working_has_every_step_with_numbers():
    from unit.formulas import lines_of

    working = next(working for working in PAGE.answer(EXAMPLE).workings if working.key == "formula")
    found = lines_of(working)
    assert "X_L = 2 π f L = 2 π × 50 Hz × 0.1 H = 31.41593 Ω" in found
    assert "X_C = (1)/(2 π f C) = (1)/(2 π × 50 Hz × 100 µF) = 31.83099 Ω" in found
    assert "X = X_L − X_C = 31.41593 Ω − 31.83099 Ω = −0.41506 Ω" in found
    assert "I = (V)/(Z) = (230 V)/(10.00861 Ω) = 22.98021 A" in found
    assert "V_R = I R = 22.98021 A × 10 Ω = 229.8021 V" in found
    assert "f₀ = (1)/(2 π √(L C)) = (1)/(2 π √(0.1 H × 100 µF)) = 50.33 Hz" in found


def test_the_drawing_closes_on_the_supply_and_the_current_lies_first():
    """Arrows measured on the sheet: each voltage at its scale, the current at its own."""
    answer = PAGE.answer(EXAMPLE)
    found = results(EXAMPLE)
    from unit.sheets import arrow_of

    for number, turn in ((1, 1.0), (2, 1j), (3, -1j)):
        expected = found[f"voltage-{number}"] * 10 / found["scale"] * turn
        assert abs(vector(arrow_of(answer.sheet, f"i{number}")) - expected) < 1e-6
    assert abs(abs(vector(arrow_of(answer.sheet, "sum"))) - 2300 / found["scale"]) < 1e-6
    assert abs(vector(arrow_of(answer.sheet, "c1")) - found["current"] * 10 / found["second-scale"]) < 1e-6


def test_a_problem_sheet_gives_the_circuit_and_keeps_what_is_to_be_found():
    for supply, amount in (("230 V", []), ("2 A", ["2.00\u00a0A"])):
        sheet = PAGE.pages({**EXAMPLE, "supply": supply, "sheet": "problem"})[0]
        rows = given_of(sheet)
        assert ["I", *amount] == rows[0]
        assert [1, 1, 1] == [len(row) for row in rows[1:]]
        said = " ".join(text.words for text in texts(sheet) if text.group == "words")
        joined = "in series on 230" if supply == "230 V" else "in series, carrying 2"
        assert f"10\u00a0Ω, 0.1\u00a0H, 100\u00a0µF {joined}" in said


def test_the_impedance_triangle_needs_no_current():
    answer = PAGE.answer({**EXAMPLE, "drawn": "impedances"})
    assert "impedance" == answer.outputs[0].name
    assert not [output for output in answer.outputs if output.name == "second-scale"]
    assert "1\u00a0cm\u00a0=\u00a02\u00a0Ω. Largest drawing that fits, with" in plain(answer.caption)


def test_no_label_of_random_sheets_and_phone_views_touches_anything():
    faults, labels = [], 0
    for number, form in enumerate(series_forms(150, seed=7)):
        answer = PAGE.answer(form, ("sheet", "view"))
        labels += len([text for text in texts(answer.sheet) if text.step is not None])
        view = answer.views["phone"]
        found = [*faults_of(answer.sheet), *faults_of(view, view.box)]
        faults += [(number, f"{fault} {form}") for fault in found]
    assert labels > 600
    assert [] == faults, told(faults)


@pytest.mark.parametrize("kind", ["problem", "overlay"])
def test_the_other_kinds_of_sheet_stand_clear(kind: str):
    faults = []
    for number, form in enumerate(series_forms(40, seed=8)):
        faults += [(number, f"{fault} {form}") for fault in faults_of(PAGE.pages({**form, "sheet": kind})[0])]
    assert [] == faults, told(faults)


@pytest.mark.parametrize("tier", TIERS)
def test_problems_by_code_read_naturally_and_may_be_set(tier: str):
    for number in range(1, 120):
        code = Code(3, tier, seed=11, number=number)
        assert may_be_set(series_of(code))
        form = PAGE.practice_form(code)
        found = results(form)
        assert 0.3 <= abs(found["reactance"]) / (found["active-power"] / found["current"] ** 2) <= 3.0
        assert ("Ω" in form["l"]) == (tier == "support")
        assert [] == list(PAGE.answer(form, ("answer",)).faults)


MISTAKES = {
    "two-pi-forgotten": lambda r, xl, xc: complex(r, xl / math.tau - xc * math.tau),
    "reactances-added": lambda r, xl, xc: complex(r, xl + xc),
    "kinds-exchanged": lambda r, xl, xc: complex(r, xc - xl),
    "milli-forgotten": lambda r, xl, xc: complex(r, 1000 * xl - xc),
    "micro-as-milli": lambda r, xl, xc: complex(r, xl - xc / 1000),
    "reactance-inverted": lambda r, xl, xc: complex(r, xl - 1 / xc),
    "impedances-as-numbers": lambda r, xl, xc: (r + abs(xl - xc)) * complex(r, xl - xc) / abs(complex(r, xl - xc)),
    "resistance-only": lambda r, xl, xc: complex(r, 0),
    "reactance-only": lambda r, xl, xc: complex(0, xl - xc),
}
CIRCUIT = {"r": "30", "l": "200 mH", "c": "100 µF", "supply": "2 A", "frequency": "50"}
PARTS = (30.0, 100 * math.pi * 0.2, 1 / (100 * math.pi * 1e-4))


@pytest.mark.parametrize("key", list(MISTAKES))
def test_a_mistake_is_recognised_by_the_answer_it_gives(key: str):
    """Each worked out here by complex numbers, given as a calculated answer, and named."""
    given = 2 * MISTAKES[key](*PARTS)
    angle = math.degrees(math.atan2(given.imag, given.real))
    marked = mark(PAGE.task(CIRCUIT), LearnerAnswer(abs(given), angle, how=CALCULATED))
    assert key in {mistake.key for cause in marked.causes for mistake in cause.mistakes}


def test_a_voltage_left_out_of_the_drawing_is_recognised():
    given = 2 * complex(PARTS[0], PARTS[1])
    marked = mark(
        PAGE.task(CIRCUIT), LearnerAnswer(abs(given), math.degrees(math.atan2(given.imag, given.real)), how=DRAWN)
    )
    keys = {mistake.key for cause in marked.causes for mistake in cause.mistakes}
    assert "left-out" in keys


def test_on_a_given_voltage_the_current_is_asked_for():
    task = PAGE.task({**CIRCUIT, "supply": "230 V"})
    right = 230 / complex(PARTS[0], PARTS[1] - PARTS[2])
    assert abs(task.result - right) < 1e-9
    assert "A" == task.writing.unit
    wrong = 230 / complex(PARTS[0], PARTS[1] + PARTS[2])
    marked = mark(task, LearnerAnswer(abs(wrong), math.degrees(math.atan2(wrong.imag, wrong.real)), how=CALCULATED))
    assert "reactances-added" in {mistake.key for cause in marked.causes for mistake in cause.mistakes}


@pytest.mark.parametrize("text", ["123.45678 Ω", "1.23456789 kΩ", "0.00012345678 Ω", "9876543.21 Ω"])
def test_an_element_is_repeated_with_every_digit_that_was_typed(text: str):
    typed_ = read_element(text, "Ω", ".")
    assert text == typed_.text.replace("\u00a0", " ")
    assert plain(PAGE.answer({**EXAMPLE, "r": text}, ("answer",)).values_text).startswith(typed_.text + ",")


def test_the_peak_that_insulation_must_withstand_is_root_two_of_the_printed_voltage():
    answer = PAGE.answer(EXAMPLE, ("answer",))
    remarks = " ".join(plain(remark) for remark in answer.remarks)
    printed = {plain(output.label): output for output in answer.outputs if output.name.startswith("voltage-")}
    assert 2 == remarks.count("must withstand its peak")
    for name in ("V_L", "V_C"):
        peak = scaled(math.sqrt(2.0) * printed[name].value, "V", ".")
        assert f"{name} is 3." in remarks and f"its peak, {peak}: √2 times" in remarks


def test_the_difference_of_coil_and_capacitor_is_taught_first():
    """Its order stands first among the parallelograms and explains itself; the others point to it."""
    workings = [one for one in PAGE.answer(EXAMPLE).workings if one.key.startswith(("parallelogram", "tip-to-tail"))]
    said = {
        one.key: " ".join(plain(block.phrase) for block in one.blocks if hasattr(block, "phrase")) for one in workings
    }
    assert "parallelogram-23" == next(key for key in said if key.startswith("parallelogram"))
    for key, text in said.items():
        own = key.endswith("23")
        assert ("begins with their difference, V_L − V_C" in text) == own, key
        assert ("choose the order" in text) != own, key
    formula = next(one for one in PAGE.answer(EXAMPLE).workings if one.key == "formula")
    assert any("subtract them first" in plain(block.before) for block in formula.blocks if hasattr(block, "before"))


def test_what_a_link_does_not_name_is_drawn_as_in_version_1():
    """The order and method of a form that names neither: tip to tail, in the order of the fields."""
    construction = PAGE.case(EXAMPLE).sheet_plan().construction
    assert ("tip-to-tail", "12") == (construction.method, construction.order)


def test_a_circuit_without_opposite_phasors_has_no_order_that_is_taught_first():
    for form in ({**EXAMPLE, "c": ""}, {**EXAMPLE, "l": ""}, {**EXAMPLE, "r": "10 + 5"}):
        assert "" == PAGE.case(form).taught_order


def test_the_tolerance_names_the_quantity_it_belongs_to():
    """The headline is the current; what is drawn by hand is the supply voltage."""
    answer = PAGE.answer(EXAMPLE, ("answer",))
    assert "current" == answer.outputs[0].name
    label = next(plain(output.label) for output in answer.outputs if output.name == "tolerance")
    assert label.startswith("V: ")
    assert any(plain(line).startswith("V by hand ± ") and plain(line).endswith("V") for line in answer.summary)
    impedances = PAGE.answer({**EXAMPLE, "drawn": "impedances"}, ("answer",))
    assert "Z: " == next(plain(output.label) for output in impedances.outputs if output.name == "tolerance")[:3]


@pytest.mark.parametrize(
    ("form", "expected"),
    [
        ({"r": "30", "supply": "230 V"}, "The impedance is only the resistance, so the current is at its maximum."),
        ({"r": "30", "supply": "2.5 A"},
         "The impedance is only the resistance, so the supply voltage needed is at its minimum."),
        ({"r": "", "supply": "2 A"}, "The impedance is zero, so the supply voltage needed is at its minimum."),
        ({"r": "", "supply": "2 A", "l": "31.80 Ω"},
         "The impedance is almost zero, so the supply voltage needed is at its minimum."),
        ({"r": "", "supply": "230 V", "l": "31.75 Ω"},
         "The impedance is almost zero, so the current is very large."),
    ],
)  # fmt: skip
def test_resonance_moves_only_the_quantity_that_is_not_given(form: dict[str, str], expected: str):
    remarks = PAGE.answer({"l": "31.83 Ω", "c": "31.83 Ω", **form}, ("answer",)).remarks
    assert expected in plain(remarks[0])


@pytest.mark.parametrize(("drawn", "quantity"), [("voltages", "voltage across"), ("impedances", "impedance of")])
def test_the_first_diagonal_is_of_both_elements_together(drawn: str, quantity: str):
    """Without the third element the current would be another one, so nothing is said about the circuit without it."""
    for order, both in (("12", "R and L"), ("13", "R and C")):
        form = {"method": "parallelogram", "order": order, "drawn": drawn}
        whys = [plain(block.why) for block in moves_of(PAGE.answer(form), f"parallelogram-{order}")]
        assert f"This is the {quantity} {both} together." in whys
        assert not any("without" in why for why in whys)


def test_more_than_two_names_in_a_notice_have_one_and_before_the_last():
    answer = PAGE.answer(shelf.form("series-circuit", 2), ())
    said = " ".join(plain(line) for line in answer.notices)
    assert "At this scale V_R1, V_R2, V_L1 and V_L2 are shorter than 4 mm: they are drawn as dots with labels." in said
