"""Star and delta: against numpy's solution of the network, degenerate loads, bad input, practice and mistakes."""

import math

import numpy as np
import pytest
from host import shelf
from unit.sheets import given_of, table_of, texts

from pycore import phasor
from pycore.calculators.registry import CALCULATORS
from pycore.calculators.star_and_delta.circuit import ThreeLoads, solve
from pycore.calculators.star_and_delta.practice import accepted, three_of
from pycore.drawing import Arrow, Line, Page, Text
from pycore.geometry import Box
from pycore.practice.codes import TIERS, Code
from pycore.sheet.lettered import box_of
from pycore.sums.answer import Equation, Grid, Paragraph, WorkingPicture
from pycore.words import plain
from pycore.words.formula import Number

PAGE = CALCULATORS["star-and-delta"]


def results(**form: str) -> dict[str, float | None]:
    return {output.name: output.value for output in PAGE.answer(form, ()).outputs}


def remarks(**form: str) -> str:
    return " ".join(plain(line) for line in PAGE.answer(form, ()).remarks).replace("\u00a0", " ")


def network(loads: np.ndarray, volts: float, connection: str, sequence: str) -> np.ndarray:
    """Three branch and three line currents by numpy.linalg: Ohm's law in each branch, Kirchhoff's at each corner."""
    step = -120 if sequence == "123" else 120
    phases = volts / math.sqrt(3) * np.exp(1j * np.radians([0, step, -step]))
    across = phases if connection == "star" else phases - np.roll(phases, -1)
    matrix, right = np.zeros((6, 6), complex), np.concatenate([across, np.zeros(3)])
    matrix[:3, :3] = np.diag(loads)
    for corner in range(3):
        matrix[3 + corner, corner], matrix[3 + corner, 3 + corner] = 1, -1
        if connection == "delta":
            matrix[3 + corner, (corner - 1) % 3] = -1
    return np.linalg.solve(matrix, right)


def test_five_hundred_random_networks_agree_with_numpy_linalg():
    random = np.random.default_rng(2)
    for _ in range(500):
        loads = random.uniform(1, 200, 3) + 1j * random.uniform(-150, 150, 3) * (random.uniform(size=3) < 0.6)
        volts = random.uniform(50, 700)
        connection, sequence = random.choice(["star", "delta"]), random.choice(["123", "132"])
        found = network(loads, volts, connection, sequence)
        ours = solve(ThreeLoads(connection, volts, tuple(complex(z) for z in loads), sequence))
        for mine, theirs in zip((*ours.branches, *ours.lines), found, strict=True):
            assert abs(mine - theirs) < 1e-9 * volts
        power = sum(abs(current) ** 2 * load for current, load in zip(found[:3], loads, strict=True))
        assert abs(ours.power - power) < 1e-9 * abs(power)
        if connection == "delta":
            assert abs(sum(ours.lines)) < 1e-9 * volts


@pytest.mark.parametrize("line", ["1", "2", "3"])
@pytest.mark.parametrize("sequence", ["123", "132"])
def test_the_page_draws_the_line_that_is_asked_for(line: str, sequence: str):
    loads = np.array([8 + 6j, 20 - 5j, 40j])
    found = network(loads, 400, "delta", sequence)
    form = {"z1": "8 + j6", "z2": "20 - j5", "z3": "j40", "line": line, "sequence": sequence}
    ours = results(**form)
    assert abs(found[2 + int(line)]) == pytest.approx(ours["result"], rel=1e-12)
    # The page counts angles from the voltage between L1 and L2.
    ahead = 30 if sequence == "123" else -30
    expected = math.degrees(np.angle(found[2 + int(line)])) - ahead
    assert 0 == pytest.approx((expected - ours["result-angle"] + 180) % 360 - 180, abs=1e-9)


def test_the_line_voltage_is_root_three_and_thirty_degrees_by_every_line_and_sequence():
    for sequence, ahead in (("123", 30), ("132", -30)):
        for line, own in (("1", 0), ("2", -120), ("3", 120)):
            start = own if sequence == "123" else -own
            found = results(z1="10", connection="star", line=line, sequence=sequence)
            assert 400 == pytest.approx(found["result"], rel=1e-12)
            assert 0 == pytest.approx((found["result-angle"] - start - ahead + 180) % 360 - 180, abs=1e-9)


@pytest.mark.parametrize("method", ["parallelogram", "tip-to-tail", "components"])
def test_every_construction_ends_where_the_network_does(method: str):
    for form in shelf.forms("star-and-delta", 40):
        case = PAGE.case({**form, "method": method})
        end, solution = case.sheet_plan().construction.end_point, case.solution
        expected = (solution.between if case.star else solution.lines)[case.line - 1]
        assert math.hypot(end.x, end.y) == pytest.approx(phasor.magnitude(expected), rel=1e-9, abs=1e-9)


def test_a_voltage_to_neutral_may_be_given_instead():
    assert 400 == pytest.approx(results(z1="10", volts="230.940107676", known="phase")["line-voltage"], rel=1e-9)


def test_equal_loads_are_compared_with_the_other_connection():
    told = remarks(z1="8 + j6", z2="", z3="")
    assert "√3 times the branch current: 69.28 A = √3 × 40.00 A" in told
    assert "in star: 23.09 A in each line and 12.80 kW" in told
    assert "the factor √3 between branch and line current is not valid" in remarks()


def test_two_equal_currents_in_line_are_carried_on_and_opposite_ones_close():
    """100 Ω and two reactances: branch currents of one size at 30° or in line."""
    found = results(z1="100", z2="j100", z3="-j100")
    expected = network(np.array([100, 100j, -100j]), 400, "delta", "123")
    for line in (1, 2, 3):
        assert abs(expected[2 + line]) == pytest.approx(found[f"line-{line}"], rel=1e-9)
    # In the other sequence two branch currents fall together, and their difference is nothing.
    exact = {"z1": "100", "z2": "86.6025403784439 + j50", "z3": "-j100"}
    reply, _ = shelf.ask("star-and-delta", {**exact, "line": "2", "sequence": "132"})
    assert reply["ok"]


def test_a_polar_load_is_neither_rounded_in_the_calculation_nor_in_the_words():
    """10 at 36.87 is 8.00 + j6.00 to four figures of its size, and stays 10 at 36.87 where it is repeated."""
    form = {"z1": "10 at 36.87", "z2": "12.3456789 at -63.434949", "z3": "8 + j6"}
    case = PAGE.case(form)
    for load, (size, angle) in zip(case.solution.circuit.loads, ((10, 36.87), (12.3456789, -63.434949)), strict=False):
        assert load == pytest.approx(size * np.exp(1j * np.radians(angle)), rel=1e-15)
    assert 8 + 6j == case.solution.circuit.loads[2]
    answer = PAGE.answer(form)
    given = plain(answer.values_text).replace("\u00a0", " ")
    assert "Z₁₂ = 10 Ω at 36.87°, Z₂₃ = 12.3456789 Ω at −63.434949°, Z₃₁ = 8 + j6 Ω" in given
    echoes = [answer.echo[name]["said"].replace("\u00a0", " ") for name in ("z1", "z2", "z3")]
    assert echoes == ["8.00 + j6.00 Ω", "5.52 − j11.04 Ω", "10.00 Ω at 36.9°"]
    table = next(block for w in answer.workings if w.key == "values" for block in w.blocks if isinstance(block, Grid))
    cells = [plain(cell).replace("\u00a0", " ") for cell in table.rows[0]]
    assert cells[1:3] == ["8.00 + j6.00 Ω", "10 Ω at 36.87°"]


def test_all_loads_open_in_star_leave_the_voltages():
    found = results(z1="open", z2="open", z3="open", connection="star")
    assert 400 == pytest.approx(found["result"])
    assert 0 == found["line-1"] == found["power"] and found["factor"] is None
    form = {"z1": "open", "z2": "open", "z3": "open", "connection": "star"}
    told = plain(PAGE.answer(form, ()).values_text).replace("\u00a0", " ")
    assert told.startswith("no loads in star on 400 V between lines")
    assert "The same three loads" not in remarks(**form)


def test_one_open_branch_leaves_the_other_alone():
    found = results(z1="open", z2="25", z3="40")
    assert (10, 16) == pytest.approx((found["line-1"], found["line-2"]))


@pytest.mark.parametrize(
    ("form", "field", "said"),
    [
        ({"z1": "abc"}, "z1", "“abc”"),
        ({"z2": "0"}, "z2", "short circuit"),
        ({"z3": "-20"}, "z3", "the resistance must not be negative"),
        ({"z1": "1e9"}, "z1", "1 MΩ"),
        ({"z1": "20 A"}, "z1", "cannot be read"),
        ({"z1": ""}, "z1", "Load 1"),
        ({"z1": "open", "z3": "open"}, "z1", "draw another line"),
        ({"volts": "0"}, "volts", "out of range"),
        ({"volts": "400 A"}, "volts", "amperes"),
        ({"volts": "1e7"}, "volts", "100 kV"),
        ({"connection": "zigzag"}, "connection", "delta, star"),
        ({"line": "4"}, "line", "1, 2, 3"),
    ],
)
def test_bad_input_names_the_field_what_was_given_and_what_is_accepted(form: dict, field: str, said: str):
    reply, _ = shelf.ask("star-and-delta", {"z1": "20", "z2": "25", "z3": "40", **form})
    assert not reply["ok"]
    found = {error["field"]: error["message"].replace("\u00a0", " ") for error in reply["errors"]}
    assert said in found[field]


@pytest.mark.parametrize("connection", ["star", "delta"])
def test_a_problem_sheet_leaves_what_is_to_be_worked_out_to_the_learner(connection: str):
    page = PAGE.sheet_page({"sheet": "problem", "connection": connection, "z1": "20", "z2": "25", "z3": "40"})
    assert [1, 1] == [len(row) for row in given_of(page)]
    notes = " ".join(text.words for text in texts(page))
    assert "between lines, sequence L1, L2, L3. " in notes and "Calculate" in notes


def test_a_known_phase_voltage_is_on_the_problem_sheet_and_the_line_voltage_is_not():
    """The voltage between lines is what the learner is to find."""
    form = {"sheet": "problem", "connection": "star", "known": "phase", "volts": "230", "z1": "20"}
    for printed in ("usual", "easy"):
        pages = PAGE.pages({**form, "print": printed})
        notes = " ".join(text.words for page in pages for text in texts(page))
        assert "230 V between line and neutral" in notes.replace("\u00a0", " ")
        assert "398" not in notes and "Calculate the phase voltage" not in notes
        rows = given_of(pages[0]) if printed == "usual" else table_of(pages[0])[1:3]
        assert [["230"]] * 2 == [row[1:2] for row in rows]


def test_a_current_is_said_to_lead_where_its_load_is_a_capacitor():
    """8 − j6 ohms: the current leads its voltage by 36.9°."""
    answer = PAGE.answer({"z1": "8 - j6", "connection": "star"})
    blocks = [block for one in answer.workings for block in one.blocks if isinstance(block, Paragraph)]
    told = " ".join(plain(block.phrase) for block in blocks)
    assert "a coil makes the current lag, a capacitor makes it lead" in told and "lags its own voltage" not in told
    advice = plain(next(one.look for one in PAGE.task({"z1": "8 - j6", "z2": "20", "z3": "j40"}).mistakes
                        if one.key == "angles-of-loads"))  # fmt: skip
    assert "a capacitor makes it lead" in advice and "current lags" not in advice


def test_options_follow_names_and_connection():
    assert {"1": "R minus Y", "2": "Y minus B", "3": "B minus R"} == PAGE.options(
        {"names": "RYB", "connection": "star"})["line"]  # fmt: skip
    assert {"1": "L1", "2": "L2", "3": "L3"} == PAGE.options({})["line"]


def picture_of(form: dict[str, str]) -> tuple[Page, Grid]:
    working = next(one for one in PAGE.answer(form).workings if one.key == "all-three")
    picture = next(block for block in working.blocks if isinstance(block, WorkingPicture))
    return picture.page, next(block for block in working.blocks if isinstance(block, Grid))


@pytest.mark.parametrize("connection", ["star", "delta"])
@pytest.mark.parametrize("sequence", ["123", "132"])
def test_all_three_lines_are_shown_in_one_picture_and_one_table(connection: str, sequence: str):
    """Solid arrows against numpy: the phase voltages of a star, the line currents of a delta; dashed ones: currents."""
    loads = np.array([8 + 6j, 20 - 5j, 40j])
    found = network(loads, 400, connection, sequence)
    form = {"z1": "8 + j6", "z2": "20 - j5", "z3": "j40", "connection": connection, "sequence": sequence,
            "first": "right", "reference": "zero"}  # fmt: skip
    page, table = picture_of(form)
    step, origin = (-120, 0.0) if sequence == "123" else (120, 0.0)
    if connection == "delta":
        origin = 30 if sequence == "123" else -30
    phases = 400 / math.sqrt(3) * np.exp(1j * np.radians([0, step, -step]))
    solid, dashed = (phases, found[3:]) if connection == "star" else (found[3:], found[:3])
    arrows = [complex(i.tip.x - i.tail.x, i.tip.y - i.tail.y) for i in page.items if isinstance(i, Arrow)]
    lines = [complex(i.end.x - i.start.x, i.end.y - i.start.y) for i in page.items if isinstance(i, Line)]
    assert 3 == len(arrows) == len(lines) == len(table.rows)
    for drawn, values in ((arrows, solid), (lines, dashed)):
        scale = abs(drawn[0]) / abs(values[0])
        for one, value in zip(drawn, values * np.exp(-1j * np.radians(origin)), strict=True):
            assert one == pytest.approx(value * scale, abs=1e-6)
    if connection == "delta":
        assert abs(sum(arrows)) < 1e-9 * max(map(abs, arrows))
        # Line and branch currents have one scale, so that a difference can be seen.
        assert arrows[0] == pytest.approx(lines[0] - lines[2], abs=1e-9)


def test_names_in_the_picture_of_all_three_touch_no_arrow_and_no_other_name():
    crowded = 0
    for form in shelf.forms("star-and-delta", 60):
        page, _ = picture_of(form)
        boxes = [box_of(item, 3.4) for item in page.items if isinstance(item, Text)]
        ends = [(i.tail, i.tip) for i in page.items if isinstance(i, Arrow)]
        ends += [(i.start, i.end) for i in page.items if isinstance(i, Line)]
        assert len(boxes) == len(ends)
        assert all(Box(0, 0, page.width, page.height).holds(box) for box in boxes)
        crowded += any(one.meets(two) for k, one in enumerate(boxes) for two in boxes[k + 1 :])
        crowded += any(box.meets_segment(*pair) for box in boxes for pair in ends)
    assert crowded == 0


def test_a_star_without_loads_shows_its_three_voltages():
    page, table = picture_of({"z1": "open", "z2": "open", "z3": "open", "connection": "star"})
    assert 3 == len([item for item in page.items if isinstance(item, Arrow)])
    assert not [item for item in page.items if isinstance(item, Line)]
    assert ["0 A"] * 3 == [plain(row[-1]).replace("\u00a0", " ") for row in table.rows]


# Practice.


@pytest.mark.parametrize("tier", TIERS)
def test_a_hundred_and_fifty_practice_problems_may_be_set_and_solve(tier: str):
    for number in range(1, 151):
        code = Code(2, tier, seed=4, number=number)
        problem = three_of(code)
        assert accepted(problem)
        assert ("star" if tier == "support" else "delta") == problem.connection
        assert tier == "stretch" or all(load[1] == 0 for load in problem.loads)
        if number % 10 == 0:
            form = PAGE.practice_form(code)
            loads = np.array([complex(*load) for load in problem.loads])
            expected = network(loads, problem.volts, problem.connection, problem.sequence)
            flows = results(**form)
            assert abs(expected[3]) == pytest.approx(flows["line-1"], rel=1e-9)
            assert abs(expected[5]) == pytest.approx(flows["line-3"], rel=1e-9)


def mistakes(**form: str) -> dict[str, float]:
    return {mistake.key: mistake.size for mistake in PAGE.task(form).mistakes}


def test_the_pages_own_mistakes_give_what_they_should():
    """Branch currents of 20 and 10 A, 120 degrees apart: sum √300, root three times one of them, and so on."""
    found = mistakes(z1="20", z2="25", z3="40")
    assert found["added"] == pytest.approx(math.sqrt(300))
    assert found["root-three-unbalanced"] == pytest.approx(20 * math.sqrt(3))
    assert found["star-voltage"] == pytest.approx(math.sqrt(700 / 3))
    assert {20.0, 10.0} == {round(one.size, 9) for one in PAGE.task({}).mistakes if one.key == "branch-for-line"}
    assert "angles-of-loads" not in found
    balanced = mistakes(z1="8 + j6", z2="", z3="")
    assert "root-three-unbalanced" not in balanced
    assert balanced["size-by-adding"] == pytest.approx(400 / 14 * math.sqrt(3))


@pytest.mark.parametrize(
    ("size", "said"),
    [("17.3", "added instead of subtracted"), ("20", "one of the two phasors"), ("34.6", "√3 is valid only"),
     ("15.3", "the phase voltage was used")],
)  # fmt: skip
def test_marking_names_them_kindly(size: str, said: str):
    reply, _ = shelf.ask("star-and-delta", {}, "mark", given={"answer": size, "answer-how": "calculated"})
    assert reply["ok"] and "accept" != reply["band"]
    assert said in reply["regions"]["marked"]


def test_the_right_answer_is_accepted():
    reply, _ = shelf.ask("star-and-delta", {}, "mark", given={"answer": "26.5", "answer-how": "drawn"})
    assert "look" == reply["band"] and "The size is right" in reply["announce"]
    turned = {"answer-angle": "19.1", "answer-side": "clockwise"}
    reply, _ = shelf.ask("star-and-delta", {}, "mark", given={"answer": "26.5", "answer-how": "drawn", **turned})
    assert "accept" == reply["band"]


def powers(**form: str) -> list[list[str]]:
    """The numbers in each line of the working of the powers."""
    working = next(one for one in PAGE.answer(form).workings if one.key == "values")
    equation = [block for block in working.blocks if isinstance(block, Equation)][-1]
    numbers = [[getattr(one, "inside", one) for one in line.parts] for line in equation.lines]
    return [[one.text.replace("\u00a0", " ") for one in line if isinstance(one, Number)] for line in numbers]


def test_loads_without_reactance_have_no_line_of_reactive_power():
    """Rounding left 10⁻¹⁴ var, written as three zeros of seventeen decimals."""
    assert [["275", "484", "257", "1016 W", "1.016 kW"]] == powers(z1="44", z2="25", z3="47", volts="110")


def test_powers_that_are_added_have_one_unit():
    """275 + 484 + 257 = 1.016 kW stood there."""
    active, reactive = powers(z1="20 at 30", z2="25 at -10", z3="40 at 5")
    assert active[-2].endswith(" W") and active[-1].endswith(" kW")
    for line in (active, reactive):
        *addends, total, written = line
        size, unit = total.split()
        assert math.isclose(sum(float(one.replace("−", "-")) for one in addends), float(size), abs_tol=1)
        with_prefix, prefixed = written.split()
        assert prefixed == f"k{unit}" and math.isclose(float(with_prefix) * 1000, float(size), rel_tol=1e-3)
