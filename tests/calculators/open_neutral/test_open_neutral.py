"""The open neutral: against numpy's solution of the node equations, and its degenerate cases."""

import json
import re

import numpy as np
import pytest

from pycore import phasor
from pycore.api import handle
from pycore.calculators.open_neutral.circuit import FloatingStarPointError, UnbalancedStar, solve
from pycore.calculators.open_neutral.fields import FIELDS
from pycore.calculators.open_neutral.page import OpenNeutralPage
from pycore.forms.fields import default_form
from pycore.practice.answers import judge
from pycore.practice.codes import Code
from pycore.practice.explaining import LearnerAnswer, visible
from pycore.practice.marking import mark
from pycore.practice.task import NO_LIMITS
from pycore.words import plain

FORM = default_form(FIELDS)
PAGE = OpenNeutralPage()
OUTPUT = re.compile(r'<output name="([^"]+)" data-value="([^"]*)"')


def ask(**values: str) -> dict:
    request = {"do": "answer", "page": "open-neutral", "form": {**FORM, **values}, "parts": ["answer", "sheet", "view",
               "workings"]}  # fmt: skip
    return json.loads(handle(json.dumps(request))[0])


def results(**values: str) -> dict[str, float]:
    reply = ask(**values)
    assert reply["ok"], reply["errors"]
    return {name: float(value) for name, value in OUTPUT.findall(reply["regions"]["answer"]) if value}


def test_five_hundred_random_loads_agree_with_numpys_node_equations():
    """Three sources, three branches, one floating node: A x = b for the node and the three currents."""
    draws = np.random.default_rng(20261125)
    for _ in range(500):
        loads = draws.uniform(1, 200, 3) + 1j * draws.uniform(-150, 150, 3) * (draws.uniform(size=3) < 0.6)
        volts = draws.uniform(50, 700)
        phases = volts / np.sqrt(3) * np.exp(1j * np.radians([0, -120, 120]))
        matrix = np.array([[loads[0], 0, 0, 1], [0, loads[1], 0, 1], [0, 0, loads[2], 1], [1, 1, 1, 0]], complex)
        *currents, node = np.linalg.solve(matrix, np.array([*phases, 0]))
        found = solve(UnbalancedStar(volts, tuple(complex(1 / z) for z in loads)))
        assert abs(found.displacement - node) < 1e-9 * volts
        for ours, current, load in zip(found.voltages, currents, loads, strict=True):
            assert abs(ours - current * load) < 1e-8 * volts
        assert abs(sum(found.open_currents)) < 1e-9 * sum(abs(c) for c in found.currents)


def test_the_drawing_ends_where_the_calculation_does():
    for loads in (("20", "40", "80"), ("5", "100", "30 + j40"), ("100", "-j100", "j100"), ("3 kW", "60 W", "500 W")):
        case = PAGE.case({**FORM, **dict(zip(("z1", "z2", "z3"), loads, strict=True))})
        figure = case.sheet_plan().construction.figure
        for number, voltage in enumerate(case.solution.voltages, start=1):
            assert figure.readings[f"u{number}"] == pytest.approx(phasor.magnitude(voltage), rel=1e-9)


def test_the_other_sequence_mirrors_the_shift():
    forward, backward = results(z2="10 + j30"), results(z2="10 + j30", sequence="132")
    assert forward["displacement"] != pytest.approx(backward["displacement"])


@pytest.mark.parametrize("loads", [("10", "10", "10"), ("20", "", ""), ("20", "40", ""), ("0,5 kW", "2 kW", "j50"),
                                   ("1e-3", "1e6", "1e6"), ("100", "-j100", "j100")])  # fmt: skip
@pytest.mark.parametrize("method", ["displacement", "tip-to-tail"])
@pytest.mark.parametrize("sheet", ["construction", "problem", "overlay"])
def test_degenerate_loads_have_sheet_and_workings(loads, method: str, sheet: str):
    reply = ask(z1=loads[0], z2=loads[1], z3=loads[2], method=method, sheet=sheet)
    assert reply["ok"], reply["errors"]
    assert "<svg" in reply["regions"]["sheet"]
    lesson = {"do": "lesson", "page": "open-neutral", "view": "lesson", "step": 9,
              "form": {**FORM, "z1": loads[0], "z2": loads[1], "z3": loads[2], "method": method}}  # fmt: skip
    assert json.loads(handle(json.dumps(lesson))[0])["ok"]


def remarks(**values: str) -> list[str]:
    return [plain(phrase).replace("\u00a0", " ") for phrase in PAGE.answer({**FORM, **values}, ("answer",)).remarks]


def test_two_equal_loads_are_in_series_and_both_starve():
    """Half of 400 V each is 87 % of 231 V; nothing is said of a smallest load."""
    told = remarks(z1="20", z2="20", z3="")
    assert any("L1 and L2 stand in series across the line voltage of 400 V" in one for one in told)
    for line in ("L1", "L2"):
        assert any(f"{line} starves" in one and "200.0 V, 87 %" in one for one in told)
    assert not any("suffers" in one for one in told)


def test_two_unequal_loads_share_the_line_voltage():
    """20 and 40 ohms: a third and two thirds of 400 V."""
    told = remarks(z1="20", z2="40", z3="")
    assert any("L2 suffers" in one and "266.7 V, 115 %" in one for one in told)
    assert any("L1 starves" in one and "133.3 V, 58 %" in one for one in told)
    assert any("the one with the most ohms" in one for one in told)


def test_lines_that_suffer_alike_are_both_named():
    told = remarks(z1="20", z2="80", z3="80")
    assert ["L2", "L3"] == [one[:2] for one in told if "suffers:" in one and one[0] == "L"]


def test_with_the_neutral_whole_what_would_follow_stands_after_the_if():
    told = remarks(method="tip-to-tail")
    assert "If the neutral opened" in told[0]
    assert any("L3 suffers" in one for one in told[1:])


def test_the_load_with_the_most_ohms_is_said_to_suffer():
    told = [plain(phrase) for phrase in PAGE.answer(FORM, ("answer",)).remarks]
    assert any("L3 suffers: its load of 80" in one and "131" in one for one in told)
    assert any("the one with the most ohms, that suffers" in one for one in told)


def test_one_load_alone_is_dangerous_and_the_cautions_say_who_may_measure():
    told = " ".join(plain(p) for p in PAGE.answer({**FORM, "z2": "", "z3": ""}, ("answer",)).remarks)
    assert "dangerous to touch" in told and "a hand would feel" not in told
    cautions = " ".join(PAGE.cautions)
    assert "competent or supervised people" in cautions
    assert "One conductor in the jaw of the clamp, and the right measurement category" in cautions


def test_reactances_that_cancel_are_refused_with_the_reason():
    with pytest.raises(FloatingStarPointError):
        solve(UnbalancedStar(400.0, (0.01j, -0.01j, 0j)))
    for loads in (("j100", "-j100", ""), ("j30", "-j60", "-j60.0000001"), ("j30", "-j60", "-j60.01")):
        reply = ask(z1=loads[0], z2=loads[1], z3=loads[2])
        assert not reply["ok"], loads
        assert "without bound" in reply["errors"][0]["message"]
    assert results(z1="j30", z2="-j60", z3="-j61")["displacement"] < 1000 * 231


@pytest.mark.parametrize(
    ("values", "field", "words"),
    [
        ({"z1": "", "z2": "", "z3": ""}, "z1", "No load is connected"),
        ({"z1": "abc"}, "z1", "cannot be read"),
        ({"z2": "0"}, "z2", "out of range"),
        ({"z3": "-20"}, "z3", "the resistance must not be negative"),
        ({"z3": "1e9"}, "z3", "out of range"),
        ({"volts": "0"}, "volts", "out of range"),
        ({"volts": "400 A"}, "volts", "amperes"),
    ],
)
def test_bad_input_is_named(values: dict, field: str, words: str):
    reply = ask(**values)
    assert not reply["ok"]
    found = {error["field"]: error["message"] for error in reply["errors"]}
    assert words in found[field]


@pytest.mark.parametrize("tier", ["support", "core", "stretch"])
def test_practice_problems_are_marked_and_their_mistakes_named(tier: str):
    seen = set()
    for number in range(1, 30):
        subject = PAGE.task(PAGE.practice_form(Code(7, tier, seed=9, number=number)))
        right = {"answer": f"{subject.size:.1f} V"}
        assert judge(subject, right).marked.band == "accept"
        for mistake in subject.mistakes:
            if not visible(subject, mistake, "drawn", NO_LIMITS):
                continue
            marked = mark(subject, LearnerAnswer(mistake.size, phasor.angle(mistake.point)))
            if marked.band != "accept" and "drawn" in mistake.how:
                assert mistake.name in [m.name for cause in marked.causes for m in cause.mistakes]
                seen.add(mistake.key)
    assert {"load-left-out", "line-for-phase", "other-scale", "impedance-for-admittance"} <= seen


def test_the_caution_stands_before_anything_else():
    from pycore.render.site import calculator_page

    intro = calculator_page(PAGE).regions["intro"]
    assert 'class="warning"' in intro
    assert intro.index("Never open a neutral") < intro.index("heaters")


def test_a_load_may_be_called_open_and_is_tidied_as_on_every_page():
    """60 at 90 is j60: what is only rounding of the polar form is no resistance."""
    assert results(z1="20", z2="40", z3="open") == results(z1="20", z2="40", z3="")
    case = PAGE.case({**FORM, "z1": "60 at 90", "z2": "1500", "z3": "1000000"})
    assert 60j == case.loads[0]
    assert ["j60 Ω", "1.5 kΩ", "1 MΩ"] == [case.load_text(number).replace("\u00a0", " ") for number in (1, 2, 3)]


def test_a_load_is_never_called_small_or_big_without_saying_of_what():
    """A small load may have few ohms or take little power: page and lesson say which."""
    from pycore.calculators.open_neutral.teaching import PLAN

    spoken = " ".join((*(step for part in PLAN.parts for step in part.does), *PLAN.cover_says))
    for told in (" ".join(remarks()), spoken):
        assert "smallest" not in told and "biggest" not in told
        assert "the most ohms" in told or "takes the least" in told
