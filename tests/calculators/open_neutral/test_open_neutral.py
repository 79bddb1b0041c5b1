"""The open neutral: against numpy's solution of the node equations, and its degenerate cases."""

import json
import re

import numpy as np
import pytest
from calculators.asking import Asking

from pycore import phasor
from pycore.api import handle
from pycore.calculators.open_neutral.circuit import FloatingStarPointError, UnbalancedStar, is_outside, solve
from pycore.calculators.open_neutral.construction import displacement
from pycore.calculators.open_neutral.fields import FIELDS
from pycore.calculators.open_neutral.page import OpenNeutralPage
from pycore.calculators.open_neutral.words import star_point_symbol
from pycore.constructions.construction import Arm, flattest
from pycore.constructions.moves import TurnAngle
from pycore.forms.conventions import TICKS
from pycore.forms.fields import default_form
from pycore.practice.answers import judge
from pycore.practice.codes import Code
from pycore.practice.explaining import LearnerAnswer, visible
from pycore.practice.marking import mark
from pycore.practice.task import NO_LIMITS
from pycore.sums.answer import Move, Paragraph
from pycore.sums.easy_reading import lists_of
from pycore.sums.request import SheetRequest
from pycore.words import plain

FORM = default_form(FIELDS)
PAGE = OpenNeutralPage()
ASKING = Asking(PAGE.slug, FORM)
ask, results = ASKING.ask, ASKING.results


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
    assert any("L1 and L2 are in series across the line voltage of 400 V" in one for one in told)
    assert "L1 and L2 have too little voltage: 200.0 V each (87 % of the normal voltage)." in told
    assert not any("too much voltage" in one for one in told)


def test_two_unequal_loads_share_the_line_voltage():
    """20 and 40 ohms: a third and two thirds of 400 V."""
    told = remarks(z1="20", z2="40", z3="")
    assert any("L2 has too much voltage" in one and "266.7 V, 115 %" in one for one in told)
    assert any("L1 has too little voltage" in one and "133.3 V, 58 %" in one for one in told)
    assert any("the largest resistance" in one for one in told)


def test_lines_that_suffer_alike_are_both_named():
    told = remarks(z1="20", z2="80", z3="80")
    assert "L2 and L3 have too much voltage: 305.5 V each (132 % of the normal voltage)." in told


@pytest.mark.parametrize(("loads", "said"), [
    ({}, "L3 and L2 have too much voltage: 302.4 V (131 % of the normal voltage) and 261.9 V (113 %)."),
    ({"z1": "j40", "z2": "-j41", "z3": "1000"},
     "L3, L2 and L1 have too much voltage: 8436 V (3653 % of the normal voltage), 8244 V (3570 %) and 8036 V "),
    ({"z1": "20", "z2": "22", "z3": "400"}, "L1 and L2 have too little voltage: "),
])  # fmt: skip
def test_every_load_beyond_the_limit_is_named_with_its_voltage(loads: dict[str, str], said: str):
    """Not only the furthest: each load that the results list outside 95 % to 105 % stands in a sentence."""
    assert any(one.startswith(said) for one in remarks(**loads))
    found, normal = results(**loads), 400.0 / 3.0**0.5
    told = " ".join(one for one in remarks(**loads) if "too much voltage" in one or "too little voltage" in one)
    for number in (1, 2, 3):
        abnormal = not 0.95 <= found[f"voltage-{number}"] / normal <= 1.05
        assert (f"L{number}" in told) is abnormal


@pytest.mark.parametrize(("loads", "said"), [
    (("20", "40", "80"), "The load with the largest resistance (the least power at normal voltage) gets the "),
    (("20", "80", "80"), "The loads with the largest resistance (the least power at normal voltage) get the "),
    (("20", "20", "80"), "moves towards the lines of the loads with the smallest resistance."),
    (("20", "80", "80"), "moves towards the line of the load with the smallest resistance."),
])  # fmt: skip
def test_the_rule_of_resistances_speaks_of_normal_voltage_and_of_equal_loads(loads: tuple[str, str, str], said: str):
    """With the neutral open two loads may take the same power: the rule is of the power at normal voltage."""
    assert any(said in one for one in remarks(**dict(zip(("z1", "z2", "z3"), loads, strict=True))))


def test_with_the_neutral_whole_what_would_follow_stands_after_the_if():
    told = remarks(method="tip-to-tail")
    assert "If the neutral opened" in told[0]
    assert any("L3 and L2 have too much voltage" in one for one in told[1:])


def test_the_load_with_the_most_ohms_is_said_to_suffer():
    told = [plain(phrase) for phrase in PAGE.answer(FORM, ("answer",)).remarks]
    assert any(one.startswith("L3 and L2 have too much voltage") and "131" in one for one in told)
    assert any("The load with the largest resistance" in one and "gets the highest voltage" in one for one in told)
    alone = remarks(z1="20", z2="20", z3="80")
    assert any("L3 has too much voltage: its load of 80 Ω gets" in one for one in alone)


def test_one_load_alone_is_dangerous_and_the_cautions_say_who_may_measure():
    told = " ".join(plain(p) for p in PAGE.answer({**FORM, "z2": "", "z3": ""}, ("answer",)).remarks)
    assert "dangerous to touch" in told and "a hand would feel" not in told
    cautions = " ".join(PAGE.cautions)
    assert "competent or supervised people" in cautions
    assert "One conductor in the jaw of the clamp, and the right measurement category" in cautions


def easy_moves(**form: str) -> list[str]:
    case = PAGE.case({**FORM, **form, "print": "easy", "sheet": "problem"})
    lists = lists_of(case, case.sheet_plan(), SheetRequest("problem"))
    return list(next(listed.lines for listed in lists if listed.ticked))


@pytest.mark.parametrize("form", [{}, {"z1": "80", "z3": "20"}, {"z3": ""}, {"z2": "40 + j20"}, {"z1": "10", "z2": "10",
                                                                                           "z3": "10"}])  # fmt: skip
def test_an_easy_sheet_has_one_method_for_the_star_point(form: dict[str, str]):
    """The moves find it by drawing where the task says so, and calculate it where the task says that."""
    moves = " ".join(easy_moves(**form))
    case = PAGE.case({**FORM, **form, "sheet": "problem"})
    task = " ".join(case.known(case.sheet_plan()))
    by_drawing = "find the load’s star point in it" in task
    assert by_drawing is ("in series on the line voltage" in moves)
    assert by_drawing is not ("Calculate the displacement of the star point and its angle" in moves)
    marks = sum(step.name == "divide" for step in case.sheet_plan().construction.steps)
    assert moves.count("Start at the tip of") + moves.count("start at the tip of") == marks


def test_easy_moves_start_each_mark_at_the_line_of_the_smallest_resistance():
    moves = easy_moves(z1="80", z2="20", z3="40")
    first = next(place for place, move in enumerate(moves) if move.startswith("Think of the loads"))
    assert "Calculate the voltage of the load on L2." in moves[first] and "Start at the tip of V₂." in moves[first + 1]
    assert "start at the tip of V₂" in moves[first + 3] and "this is the displacement" in moves[first + 4]


@pytest.mark.parametrize("form", [{}, {"z3": ""}, {"z2": "", "z3": ""}, {"z2": "j40"}])
def test_lesson_and_steps_name_the_star_point_and_say_what_the_loads_voltages_are(form: dict[str, str]):
    """The ruler starts at the tip of V_S; nobody has made a mark there."""
    count = PAGE.lesson({**FORM, **form}, "lesson", 1).count
    frames = [PAGE.lesson({**FORM, **form}, "lesson", number) for number in range(1, count + 1)]
    rulers = [plain(frame.sentence) for frame in frames if plain(frame.sentence).startswith("Ruler along U")]
    assert len(rulers) == 3 and all(one.endswith("its zero mark on the tip of V_S.") for one in rulers)
    assert all(plain(frame.sentence)[:1].isupper() for frame in frames)
    moves = [block for one in PAGE.answer({**FORM, **form}).workings for block in one.blocks if isinstance(block, Move)]
    whys = " ".join(plain(move.why) for move in moves)
    for number in (1, 2, 3):
        connected = bool({**FORM, **form}[f"z{number}"])
        symbol = "U" + "₁₂₃"[number - 1]
        assert (f"{symbol} is the voltage across the load on L{number}." in whys) is connected
        assert (f"and L{number}, which has no load." in whys) is not connected


def test_one_load_alone_has_no_phase_angles_to_differ():
    moves = [block for one in PAGE.answer({**FORM, "z2": "", "z3": ""}).workings for block in one.blocks
             if isinstance(block, Move)]  # fmt: skip
    whys = " ".join(plain(move.why) for move in moves)
    assert "phase angle" not in whys and "Only the load on L1 is connected, so no current can flow." in whys


def test_a_drawing_without_a_better_one_is_not_answered_by_itself():
    """Two reactances that nearly cancel: 8 kV beside phase voltages of 231 V, and one method only."""
    told = " ".join(plain(one) for one in PAGE.answer({**FORM, "z1": "j40", "z2": "-j41", "z3": "1000"}).notices)
    assert "Choose instead" not in told and "No other order or method is better. Use the calculation." in told


def test_reactances_that_cancel_are_refused_with_the_reason():
    with pytest.raises(FloatingStarPointError):
        solve(UnbalancedStar(400.0, (0.01j, -0.01j, 0j)))
    for loads in (("j100", "-j100", ""), ("j30", "-j60", "-j60.0000001"), ("j30", "-j60", "-j60.01")):
        reply = ask(z1=loads[0], z2=loads[1], z3=loads[2])
        assert not reply["ok"], loads
        assert "would have no limit" in reply["errors"][0]["message"]
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
        sized = {"answer": f"{subject.size:.1f} V"}
        assert judge(subject, sized).missing == "angle"
        side = "anticlockwise" if subject.angle * subject.sense > 0 else "clockwise"
        right = sized | {"answer-angle": f"{abs(subject.angle):.1f}", "answer-side": side}
        assert judge(subject, right).marked.band == "accept"
        for mistake in subject.mistakes:
            if not visible(subject, mistake, "drawn", NO_LIMITS):
                continue
            marked = mark(subject, LearnerAnswer(mistake.size, phasor.angle(mistake.point)))
            if marked.band != "accept" and "drawn" in mistake.how:
                if mistake.weight < 0.6:
                    continue
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
        sizes = set(re.findall(r"(?:smallest|largest|biggest|small|big|large) (\w+)", told))
        assert "resistance" in sizes and sizes <= {"resistance", "power"}
        assert "the largest resistance" in told


# Symbols, ticks and words that depend on the loads.


def symbols_of(**values: str) -> dict[str, str]:
    return {key: plain(tag) for key, tag in PAGE.case({**FORM, **values}).notation.tags.items()}


@pytest.mark.parametrize("names", ["L123", "ABC", "RYB", "RST"])
def test_the_star_point_never_shares_its_symbol_with_a_line(names: str):
    tags = symbols_of(names=names)
    assert tags["sum"] not in {tags[f"i{number}"] for number in (1, 2, 3)}
    workings = PAGE.answer({**FORM, "names": names}).workings
    blocks = next(one for one in workings if one.key == "millman").blocks
    *_, equation = (block for block in blocks if not isinstance(block, Paragraph))
    assert tags["sum"] == ("V_M" if names == "RST" else "V_S")
    assert repr(star_point_symbol(names)) in repr(equation)


def test_the_loads_voltages_have_the_ticks_of_their_lines():
    """Lines are told apart without colours: as many ticks on U1 as on V1."""
    for number in (1, 2, 3):
        assert TICKS[f"u{number}"] == TICKS[f"i{number}"] == number


@pytest.mark.parametrize(("loads", "equal"), [
    (("10", "10", "10"), True), (("10 + j5", "10 + j5", "10 + j5"), True), (("10", "10 at 60", ""), False),
])  # fmt: skip
def test_equal_loads_are_said_only_of_three_equal_loads(loads: tuple[str, ...], equal: bool):
    """10 ohms and 10 ohms at 60 degrees, with nothing on L3, leave the star point at the centre too."""
    form = dict(zip(("z1", "z2", "z3"), loads, strict=True))
    assert results(**form)["displacement"] == 0
    told = " ".join(remarks(**form))
    assert equal is ("three loads are equal" in told)
    assert equal is not ("not equal, but their currents happen to add to zero" in told)


def test_a_star_point_inside_the_triangle_is_not_called_outside_and_the_other_way_round():
    """Against the signs of the three weights: real parts of the barycentric coordinates, by numpy."""
    draws = np.random.default_rng(8)
    for _ in range(300):
        loads = draws.uniform(1, 200, 3) + 1j * draws.uniform(-300, 300, 3) * (draws.uniform(size=3) < 0.5)
        sequence = "123" if draws.uniform() < 0.5 else "132"
        found = solve(UnbalancedStar(400.0, tuple(complex(1 / z) for z in loads), sequence))
        corners = np.array([[p.real for p in found.phases], [p.imag for p in found.phases], [1, 1, 1]])
        weights = np.linalg.solve(corners, [found.displacement.real, found.displacement.imag, 1])
        if min(abs(weights)) > 1e-4:
            assert is_outside(found) is bool(min(weights) < 0)
    assert any("outside the triangle" in one for one in remarks(z1="100", z2="-j100", z3="j100"))
    assert not any("outside the triangle" in one for one in remarks())
    assert not any("outside the triangle" in one for one in remarks(z3=""))


@pytest.mark.parametrize(("typed", "text"), [
    ("60 at 30", "51.96 + j30 Ω"), ("100 at -36.87", "80 − j60 Ω"), ("3 kW", "17.78 Ω"), ("20.125", "20.125 Ω"),
    ("12.3456 + j7.89123", "12.3456 + j7.89123 Ω"), ("1500", "1.5 kΩ"), ("0.05 at 45", "0.03536 + j0.03536 Ω"),
])  # fmt: skip
def test_a_load_that_was_calculated_from_its_polar_form_is_rounded(typed: str, text: str):
    assert text == PAGE.case({**FORM, "z1": typed}).load_text(1).replace("\u00a0", " ")


# The star point found by drawing.


def steps_of(**values: str) -> list[str]:
    return [step.name for step in PAGE.case({**FORM, **values}).build("displacement", "12").steps]


@pytest.mark.parametrize("sequence", ["123", "132"])
def test_the_star_point_is_found_by_ruler_and_triangle_where_it_is_for_random_loads_of_one_angle(sequence: str):
    """Marks from the loads alone, and two lines that cross: against numpy's node voltage; never a flat crossing."""
    draws = np.random.default_rng(31)
    corners = 400 / np.sqrt(3) * np.exp(1j * np.radians([0, -120, 120] if sequence == "123" else [0, 120, -120]))
    for number in range(200):
        sizes = np.exp(draws.uniform(-4, 4, 3)) * (draws.uniform(size=3) < (1.0 if number % 4 else 0.67))
        if np.count_nonzero(sizes) < 2:
            continue
        arms = tuple(Arm(f"i{n}", n, abs(v), float(np.degrees(np.angle(v)))) for n, v in enumerate(corners, 1))
        weights = np.divide(1.0, sizes, out=np.zeros(3), where=sizes > 0)
        node = complex(np.sum(corners * weights) / np.sum(weights))
        construction = displacement(arms, node, 0.0, tuple(sizes))
        assert not [move for step in construction.steps[5:] for move in step.moves if isinstance(move, TurnAngle)]
        end = construction.end_point
        assert abs(complex(end.x, end.y) - node) < 1e-9 * 400
        assert flattest(construction) > 59.9


@pytest.mark.parametrize(("loads", "found"), [
    (("20", "40", "80"), True), (("20", "40", ""), True), (("10 + j5", "20 + j10", "5 + j2.5"), True),
    (("3 kW", "60 W", "500 W"), True), (("20", "40", "30 + j40"), False), (("j50", "-j20", "10"), False),
    (("20", "", ""), False), (("10", "10", "10"), False),
])  # fmt: skip
def test_a_calculated_displacement_enters_only_where_the_angles_of_the_loads_differ(loads: tuple, found: bool):
    form = dict(zip(("z1", "z2", "z3"), loads, strict=True))
    assert found is ("star-point" in steps_of(**form))
    assert found is not ({"shift", "no-shift"} & set(steps_of(**form)) != set())


def spoken(**values: str) -> str:
    workings = PAGE.answer({**FORM, **values}, ("workings",)).workings
    blocks = next(one for one in workings if one.on_sheet).blocks
    return " ".join(f"{plain(b.phrase)} {plain(b.why)}" for b in blocks if isinstance(b, Move)).replace("\u00a0", " ")


def test_the_moves_say_how_the_star_point_is_found_and_where_a_calculated_value_enters():
    text = spoken()
    assert "400 V × 20 Ω ÷ (20 Ω + 40 Ω) = 133.3 V" in text
    assert "400 V × 20 Ω ÷ (20 Ω + 80 Ω) = 80.0 V" in text
    assert "the crossing of the two dashed lines" in text and "Millman" not in text
    mixed = spoken(z3="30 + j40")
    assert "calculated by Millman’s formula" in mixed and "crossing" not in mixed


def test_the_problem_sheet_asks_for_what_its_loads_need():
    case, mixed = PAGE.case(FORM), PAGE.case({**FORM, "z3": "30 + j40"})
    sheets = [one.sheet_words(one.sheet_plan(), "problem", "displacement") for one in (case, mixed)]
    notes = [" ".join(plain(note) for note in sheet.notes) for sheet in sheets]
    assert "find the load’s star point" in notes[0] and "Calculate" not in notes[0]
    assert "Calculate the displacement" in notes[1]


def test_the_classroom_view_says_between_which_points_marks_and_lines_lie():
    """No arcs, no axis: a ruler along the triangle's sides."""
    texts = []
    for step in range(1, 40):
        request = {"do": "lesson", "page": "open-neutral", "view": "lesson", "step": step, "form": FORM}
        reply = json.loads(handle(json.dumps(request))[0])
        assert reply["ok"]
        texts.append(re.sub(r"<[^>]+>", "", json.dumps(reply["regions"], ensure_ascii=False)))
    text = " ".join(texts)
    assert "arcs cross" not in text
    assert "its edge along the dashed line to the tip of" in text and "Mark 53.5" in text


def test_a_protractor_laid_on_by_its_base_edge_is_named():
    """No such mistake was in this page's catalogue: 18 of 18 independent learners got no name for it."""
    task = PAGE.task(FORM)
    mistake = next(one for one in task.mistakes if one.key == "base-edge")
    point = mistake.points[len(mistake.points) // 2]
    assert phasor.magnitude(point) == pytest.approx(task.size)
    causes = mark(task, LearnerAnswer(phasor.magnitude(point), phasor.angle(point))).causes
    assert "base-edge" in [one.key for cause in causes for one in cause.mistakes]
