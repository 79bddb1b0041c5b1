"""Sequence components: against the matrix in numpy, degenerate cases, bad input, practice and mistakes."""

import re

import numpy as np
import pytest
from host import shelf

from pycore import phasor
from pycore.calculators.registry import CALCULATORS
from pycore.calculators.sequence_components.circuit import TURNS, components
from pycore.calculators.sequence_components.figure import REACH
from pycore.calculators.sequence_components.practice import accepted, sequence_of
from pycore.drawing import Arrow, Page, Text, walk
from pycore.practice.codes import TIERS, Code
from pycore.sheet.lettered import box_of
from pycore.sums.answer import Grid
from pycore.words import plain

PAGE = CALCULATORS["sequence-components"]
A = np.exp(2j * np.pi / 3)
MATRIX = np.array([[1, 1, 1], [1, A, A**2], [1, A**2, A]]) / 3
"""Fortescue's matrix: components from phasors."""
PARTS = ("zero", "positive", "negative")


def results(**form: str) -> dict[str, float | None]:
    return {output.name: output.value for output in PAGE.answer(form, ()).outputs}


def remarks(**form: str) -> str:
    return " ".join(plain(line) for line in PAGE.answer(form, ()).remarks).replace("\u00a0", " ")


def test_five_hundred_random_problems_agree_with_the_matrix_in_numpy():
    random = np.random.default_rng(9)
    for _ in range(500):
        sizes, angles = random.uniform(0.1, 900, 3).round(2), random.uniform(-180, 180, 3).round(1)
        expected = MATRIX @ (sizes * np.exp(1j * np.radians(angles)))
        part = PARTS[random.integers(3)]
        form = {f"p{n}": f"{size} at {angle}" for n, (size, angle) in enumerate(zip(sizes, angles, strict=True), 1)}
        found = results(**form, part=part)
        for name, value in zip(PARTS, expected, strict=True):
            assert abs(value) == pytest.approx(found[name], rel=1e-9, abs=1e-9)
            turned = np.degrees(np.angle(value)) - found[f"{name}-angle"]
            assert 0 == pytest.approx((turned + 180) % 360 - 180, abs=1e-6)
        assert 3 * abs(expected[0]) == pytest.approx(found["neutral-current"], rel=1e-9)
        assert 3 * abs(expected[PARTS.index(part)]) == pytest.approx(found["threefold"], rel=1e-9)


def test_the_inverse_matrix_gives_the_phasors_back():
    """numpy's own inverse of the matrix, and what the page's last table says."""
    given = tuple(phasor.polar(size, angle) for size, angle in ((30.0, 0.0), (20.0, -120.0), (12.0, 90.0)))
    found = components(given)
    back = np.linalg.inv(MATRIX) @ np.array([found.zero, found.positive, found.negative])
    assert np.allclose(back, given)
    workings = PAGE.answer({"p1": "30 at 0", "p2": "20 at -120", "p3": "12 at 90"}, ("workings",)).workings
    table = next(one for one in workings if one.key == "components-all").blocks[-1]
    together = [plain(row[-1]).replace("\u00a0", " ") for row in table.rows]
    assert ["30.00 A at 0°", "20.00 A at −120°", "12.00 A at 90°"] == together


@pytest.mark.parametrize("method", ["parallelogram", "tip-to-tail", "components"])
def test_every_construction_ends_on_three_times_the_component(method: str):
    for form in shelf.forms("sequence-components", 48):
        case = PAGE.case({**form, "method": method})
        end = case.sheet_plan().construction.end_point
        expected = 3 * (MATRIX @ np.array(case.values))[PARTS.index(case.component)]
        assert abs(complex(end.x, end.y) - expected) < 1e-9 * sum(size for size, _ in case.polar_values)


def test_three_equal_phasors_in_one_direction_are_called_equal():
    """Not symmetrical: they are not 120° apart."""
    alike = CALCULATORS["sequence-components"].answer({"p1": "7 at 20", "p2": "7 at 20", "p3": "7 at 20"}, ("answer",))
    told = " ".join(plain(one) for one in alike.remarks)
    assert "Only the zero sequence is there: the three phasors are equal." in told and "symmetrical" not in told
    turned = {"p1": "7 at 20", "p2": "7 at -100", "p3": "7 at 140"}
    apart = CALCULATORS["sequence-components"].answer(turned, ("answer",))
    assert any("the three phasors are symmetrical" in plain(one) for one in apart.remarks)


@pytest.mark.parametrize(("step", "only"), [(-120, "positive"), (120, "negative"), (0, "zero")])
def test_a_symmetrical_set_has_one_component_and_the_others_are_exactly_nothing(step: int, only: str):
    form = {f"p{place}": f"7.3 at {17 + (place - 1) * step}" for place in (1, 2, 3)}
    found = results(**form)
    assert {name: pytest.approx(7.3) if name == only else 0 for name in PARTS} == {name: found[name] for name in PARTS}
    assert f"Only the {only} sequence" in remarks(**form)
    other = "negative" if only != "negative" else "positive"
    reply, _ = shelf.ask("sequence-components", {**form, "part": other})
    assert reply["ok"] and 'data-phasor="sum"' not in reply["regions"]["sheet"]


def test_one_line_alone_has_three_equal_parts():
    found = results(p1="0", p2="30 at 50", p3="0")
    assert [10, 10, 10] == pytest.approx([found[name] for name in PARTS])
    assert 30 == pytest.approx(found["neutral-current"])


def test_a_voltage_has_no_neutral_current():
    assert "neutral-current" not in results(unit="V")


@pytest.mark.parametrize(
    ("form", "field", "said"),
    [
        ({"p1": "0", "p2": "0", "p3": ""}, "p1", "At least one must be more than 0"),
        ({"p2": "south"}, "p2", "“south”"),
        ({"p3": "20 V"}, "p3", "amperes"),
        ({"p1": "1e6"}, "p1", "100 kA"),
        ({"p1": "1e-8"}, "p1", "1 µA"),
        ({"p1": "90000", "p2": "0.01"}, "p2", "one millionth"),
        ({"part": "fourth"}, "part", "zero, positive, negative"),
        ({"p2": "x", "names": "RYB"}, "p2", "Y "),
    ],
)
def test_bad_input_names_the_field_what_was_given_and_what_is_accepted(form: dict, field: str, said: str):
    reply, _ = shelf.ask("sequence-components", {"p1": "30 at 0", "p2": "20 at -120", "p3": "12 at 90", **form})
    assert not reply["ok"]
    found = {error["field"]: error["message"].replace("\u00a0", " ") for error in reply["errors"]}
    assert said in found[field]


# Practice.


@pytest.mark.parametrize("tier", TIERS)
def test_a_hundred_and_fifty_practice_problems_may_be_set_and_solve(tier: str):
    for number in range(1, 151):
        code = Code(9, tier, seed=6, number=number)
        problem = sequence_of(code)
        assert accepted(problem)
        assert tier != "support" or ("zero" == problem.component and (0, -120, 120) == problem.angles)
        if number % 10 == 0:
            values = np.array(problem.tenths) / 10 * np.exp(1j * np.radians(problem.angles))
            expected = 3 * abs((MATRIX @ values)[PARTS.index(problem.component)])
            assert expected == pytest.approx(results(**PAGE.practice_form(code))["threefold"], rel=1e-9)


def mistakes(**form: str) -> dict[str, list[float]]:
    made: dict[str, list[float]] = {}
    for mistake in PAGE.task({"p1": "30 at 0", "p2": "20 at -120", "p3": "12 at 90", **form}).mistakes:
        made.setdefault(mistake.key, []).append(mistake.size)
    return made


def test_the_pages_own_mistakes_give_what_they_should():
    values = np.array([30, 20 * np.exp(-2j * np.pi / 3), 12j])
    zero, positive, negative = 3 * np.abs(MATRIX @ values)
    assert [pytest.approx(positive), pytest.approx(negative)] == mistakes()["turned"]
    found = mistakes(part="positive")
    assert [pytest.approx(zero)] == found["not-turned"]
    assert [pytest.approx(negative)] == found["a-exchanged"]
    assert [pytest.approx(positive / 3)] == found["divided-already"]
    second = abs(values[0] + A**2 * values[1] + A**2 * values[2])
    assert pytest.approx(second) == found["wrong-way-a"][0]


@pytest.mark.parametrize(("size", "angle", "said"), [
    ("20.7", "14.9", "added without turning them"), ("14.8", "", "swapped"),
    ("20.2", "5.7", "already divided by three"),
])  # fmt: skip
def test_marking_names_them_kindly(size: str, angle: str, said: str):
    given = {"answer": size, "answer-how": "calculated", "answer-angle": angle, "answer-side": "clockwise"}
    form = {"p1": "30 at 0", "p2": "20 at -120", "p3": "12 at 90", "part": "positive"}
    reply, _ = shelf.ask("sequence-components", form, "mark", given=given)
    assert reply["ok"] and "accept" != reply["band"]
    assert said in reply["regions"]["marked"]


def test_turns_are_those_of_the_operator_and_its_square():
    for part, row in zip(PARTS, MATRIX, strict=True):
        assert np.allclose(3 * row, [np.exp(1j * np.radians(turn)) for turn in TURNS[part]])


# Tables, the operator, the three sets.


@pytest.mark.parametrize(("rotation", "sense"), [("anticlockwise", "anticlockwise"), ("clockwise", "clockwise")])
def test_the_operator_is_said_to_turn_as_the_sheet_does(rotation: str, sense: str):
    text = remarks(p1="30 at 0", p2="20 at -120", p3="12 at 90", part="positive", rotation=rotation)
    assert f"On this sheet, that direction is {sense}." in text


def test_the_heads_of_the_tables_say_what_the_columns_hold():
    """Each cell against its head: a sum, a third of it in rectangular form, the same in polar form."""
    workings = PAGE.answer({"p1": "30 at 0", "p2": "20 at -120", "p3": "12 at 90"}, ("workings",)).workings
    blocks = next(one for one in workings if one.key == "components-all").blocks
    first, back = (block for block in blocks if isinstance(block, Grid))
    heads = [plain(cell) for cell in first.head]
    assert "sum of the phasors" in heads[1] and "real and imaginary part" in heads[2] and "size and angle" in heads[3]
    for row in first.rows:
        assert " = " in plain(row[1]) and " j" in plain(row[2]) and " at " in plain(row[3])
    assert ["phasor", *(f"its {name} sequence component" for name in PARTS), "sum of the three components"] == [
        plain(cell) for cell in back.head
    ]


def sets(form: dict[str, str]):
    workings = PAGE.answer(form, ("workings",)).workings
    return next(one for one in workings if one.key == "sets").blocks[0].page


def test_the_three_sets_are_drawn_at_one_scale_as_the_sheet_lies():
    """Against the matrix in numpy: lengths and directions of all nine arrows."""
    for form in shelf.forms("sequence-components", 24):
        case, page = PAGE.case(form), sets(form)
        values = MATRIX @ np.array(case.values)
        arrows = [item for item in walk(page.items) if isinstance(item, Arrow)]
        shown = [(values[k] * A ** (-k * n if k else 0), page.width / 3 * k) for k in range(3) for n in range(3)
                 if abs(values[k]) > 1e-9 * max(abs(values))]  # fmt: skip
        assert len(shown) == len(arrows)
        for arrow, (value, left) in zip(arrows, shown, strict=True):
            length = np.hypot(arrow.tip.x - arrow.tail.x, arrow.tip.y - arrow.tail.y)
            assert length == pytest.approx(REACH * abs(value) / max(abs(values)), rel=1e-6, abs=1e-9)
            if length > 1e-3:
                degrees = np.degrees(np.arctan2(arrow.tip.y - arrow.tail.y, arrow.tip.x - arrow.tail.x))
                wanted = case.picture.paper_angle(float(np.degrees(np.angle(value))))
                assert 0 == pytest.approx((degrees - wanted + 180) % 360 - 180, abs=1e-6)
            assert left <= arrow.tip.x <= left + page.width / 3


def test_labels_of_the_sets_never_collide():
    for form in (*shelf.forms("sequence-components", 24), *({"p1": f"9 at {angle}", "p2": "1", "p3": "0"}
                                                            for angle in range(0, 360, 15))):  # fmt: skip
        page = sets(form)
        boxes = [box_of(item, 3.0) for item in walk(page.items) if isinstance(item, Text)]
        for index, box in enumerate(boxes):
            assert 0 <= box.left and box.right <= page.width and 0 <= box.bottom and box.top <= page.height
            for other in boxes[index + 1 :]:
                assert (box.right < other.left or other.right < box.left or box.top < other.bottom
                        or other.top < box.bottom)  # fmt: skip


def arrows_of(page: Page) -> list[float]:
    """Lengths of the arrows of a page, mm."""
    return [abs(complex(one.tip.x - one.tail.x, one.tip.y - one.tail.y)) for one in walk(page.items)
            if isinstance(one, Arrow)]  # fmt: skip


def texts_of(page: Page) -> list[str]:
    return [one.plain for one in walk(page.items) if isinstance(one, Text)]


@pytest.mark.parametrize("paper", ["A4", "A5", "A3"])
@pytest.mark.parametrize("printed", ["usual", "page", "large", "easy"])
@pytest.mark.parametrize("orientation", ["landscape", "portrait"])
def test_a_second_sheet_shows_all_three_sets_true_to_scale(paper: str, printed: str, orientation: str):
    form = {"sets": "yes", "paper": paper, "print": printed, "orientation": orientation}
    # In large print the table follows on a page of its own.
    page = [one for one in PAGE.pages(form) if arrows_of(one)][-1]
    scale = next(float(match[1]) for line in texts_of(page) if (match := re.search(r"1\scm\s=\s([\d.]+)", line)))
    values = results()
    expected = [values[part] * 10.0 / scale for part in PARTS for _ in range(3)]
    assert expected == pytest.approx(arrows_of(page), abs=1e-4)
    sides = [(point.x, point.y) for one in walk(page.items) if isinstance(one, Arrow) for point in (one.tail, one.tip)]
    assert all(0.0 < x < page.width and 0.0 < y < page.height for x, y in sides)


def test_the_second_sheet_comes_with_every_kind_and_only_when_asked_for():
    assert 1 == len(PAGE.pages({}))
    assert "1 of 1" in texts_of(PAGE.pages({})[0])
    problem, sets_to_draw, construction, sets, overlay, sets_over = PAGE.pages(
        {"sets": "yes"}, kinds=("problem", "construction", "overlay")
    )
    for first, second in ((problem, sets_to_draw), (construction, sets), (overlay, sets_over)):
        assert "1 of 2" in texts_of(first)
        assert "2 of 2" in texts_of(second)
    assert [] == arrows_of(sets_to_draw)
    assert arrows_of(sets) == arrows_of(sets_over)
    amounts = {text for text in texts_of(sets) if re.fullmatch(r"\d+\.\d+", text)}
    assert len(amounts) >= 5
    assert not amounts & set(texts_of(sets_to_draw))


def test_a_set_of_zero_has_a_nought_in_its_place():
    page = PAGE.pages({"p1": "10 at 0", "p2": "10 at -120", "p3": "10 at 120", "sets": "yes"})[-1]
    assert 3 == len(arrows_of(page))
    assert texts_of(page).count("0") >= 2
