"""Adding phasors: against numpy, degenerate cases, bad input, practice and its mistakes."""

import re
from itertools import combinations

import numpy as np
import pytest
from host import shelf
from unit.sheets import table_of

from pycore import phasor
from pycore.calculators.add_phasors.practice import accepted, phasors_of
from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Arrow
from pycore.forms import links
from pycore.forms.opening import ReopenInfo
from pycore.practice.codes import TIERS, Code
from pycore.sums.answer import Move
from pycore.words import plain

PAGE = CALCULATORS["add-phasors"]
PAGE_FIELDS = ("p1", "p2", "p3", "p4", "p5", "p6")


def results(**form: str) -> dict[str, float | None]:
    return {output.name: output.value for output in PAGE.answer(form, ()).outputs}


def notices(**form: str) -> str:
    return " ".join(plain(line) for line in PAGE.answer(form, ()).notices)


def refused(**form: str) -> dict[str, str]:
    reply, _ = shelf.ask("add-phasors", form)
    assert not reply["ok"]
    return {error["field"]: error["message"] for error in reply["errors"]}


def test_five_hundred_random_problems_agree_with_numpy():
    """Both forms, sums and differences, two to six phasors: complex arithmetic and numpy's own angle."""
    random = np.random.default_rng(1)
    for _ in range(500):
        count = random.integers(2, 7)
        sizes, angles = random.uniform(0.1, 900, count).round(2), random.uniform(-180, 180, count).round(1)
        values, form = sizes * np.exp(1j * np.radians(angles)), {}
        for place, (size, angle) in enumerate(zip(sizes, angles, strict=True), start=1):
            form[f"p{place}"] = f"{size} at {angle}"
            if random.uniform() < 0.4:
                value = complex(*random.uniform(-500, 500, 2).round(2))
                values[place - 1] = value
                form[f"p{place}"] = f"{value.real} {'-' if value.imag < 0 else '+'} j{abs(value.imag)}"
        signs = np.ones(count)
        if random.uniform() < 0.5:
            form["combine"], signs[1:] = "difference", -1
        expected, found = np.sum(signs * values), results(**form)
        assert abs(expected) == pytest.approx(found["sum"], rel=1e-9, abs=1e-9)
        assert np.degrees(np.angle(expected)) == pytest.approx(found["sum-angle"], abs=1e-6)
        assert (expected.real, expected.imag) == pytest.approx((found["sum-along"], found["sum-across"]), abs=1e-8)


@pytest.mark.parametrize("method", ["parallelogram", "tip-to-tail", "components"])
def test_every_construction_ends_where_the_calculation_does(method: str):
    for form in shelf.forms("add-phasors", 60):
        case = PAGE.case({**form, "method": method})
        end = case.sheet_plan().construction.end_point
        assert abs(complex(end.x, end.y) - case.total) < 1e-9 * sum(arm.size for arm in case.arms)


FILLED = [fields for count in (2, 3, 4) for fields in combinations(PAGE_FIELDS, count)]


@pytest.mark.parametrize("filled", FILLED, ids="-".join)
def test_any_fields_may_be_empty_between_others(filled: tuple[str, ...]):
    """Each choice of fields with every method and with every order; every method with every order among them."""
    values = dict.fromkeys(PAGE_FIELDS, "")
    values |= dict(zip(filled, ("20 at 0", "15 at 60", "9 at -40", "11 at 100"), strict=False))
    methods = ("parallelogram", "tip-to-tail", "components")
    for number, order in enumerate(("", "12", "13", "23"), start=FILLED.index(filled)):
        method = methods[number % 3]
        reply, _ = shelf.ask("add-phasors", {**values, "method": method, "order": order})
        assert reply["ok"], (method, order, reply["announce"])
    drawn = PAGE.case({**values, "method": "parallelogram"}).sheet_plan().construction
    assert ("parallelogram" if len(filled) <= 3 else "tip-to-tail") == drawn.method


def test_equal_and_120_degrees_apart_add_to_nothing_and_no_angle_is_given():
    found = results(p1="7 at 0", p2="7 at -120", p3="7 at 120")
    assert (0, None) == (found["sum"], found["sum-angle"])
    assert "tolerance" not in found
    reply, _ = shelf.ask("add-phasors", {"p1": "7 at 0", "p2": "7 at -120", "p3": "7 at 120"})
    assert 'data-phasor="sum"' not in reply["regions"]["sheet"]


def test_opposite_phasors_close_and_their_difference_is_twice_as_long():
    assert 0 == results(p1="12.5 at 40", p2="12.5 at 220")["sum"]
    assert 25 == pytest.approx(results(p1="12.5 at 40", p2="12.5 at 220", combine="difference")["sum"], rel=1e-12)


def test_phasors_of_one_line_are_drawn_without_a_parallelogram():
    reply, _ = shelf.ask("add-phasors", {"p1": "6 at 20", "p2": "4 at 20", "method": "parallelogram"})
    assert "No parallelogram" in reply["regions"]["workings"]
    assert 10 == pytest.approx(results(p1="6 at 20", p2="4 at 20")["sum"], rel=1e-12)


def test_a_thousandth_of_the_largest_is_a_dot_and_said_to_be():
    assert "shorter than 4 mm" in notices(p1="1000 at 0", p2="1 at 90")
    assert "shorter than 4 mm" not in notices(p1="20 at 0", p2="15 at 60")


@pytest.mark.parametrize(("count", "said"), [(3, ""), (4, "Four phasors"), (5, "Five phasors"), (6, "Six phasors")])
def test_a_parallelogram_that_is_not_drawn_is_not_refused_in_silence(count: int, said: str):
    form = {f"p{place}": f"{5 + place} at {40 * place}" for place in range(1, count + 1)}
    told = notices(**form, method="parallelogram")
    assert said in told
    assert bool(said) == ("shows them tip to tail" in told)
    assert "tip to tail" not in notices(**form, method="tip-to-tail")


@pytest.mark.parametrize("method", ["tip-to-tail", "parallelogram", "components"])
def test_the_construction_of_a_difference_says_which_phasor_is_turned(method: str):
    form = {"p1": "20 at 0", "p2": "15 at 60", "p3": "7 at -100", "combine": "difference", "method": method}
    answer = PAGE.answer(form)
    workings = [working for working in answer.workings if working.key.startswith(method)]
    moves = [block for working in workings for block in working.blocks if isinstance(block, Move)]
    for name in ("I₂", "I₃"):
        drawn = [move for move in moves if plain(move.phrase).startswith(f"Draw −{name}")]
        assert drawn and all(f"−{name} is {name} turned by 180°." in plain(move.why) for move in drawn)
    assert not any("turned by 180°" in plain(move.why) for move in moves if plain(move.phrase).startswith("Draw I₁"))
    lesson = [PAGE.lesson(form, "lesson", k) for k in range(1, PAGE.lesson(form, "lesson", 1).count + 1)]
    assert any("−I₂ is I₂ turned by 180°." in plain(why) for frame in lesson for why in frame.why)
    assert plain(answer.values_text).replace("\u00a0", " ") == "I₁ = 20 A at 0°, I₂ = 15 A at 60°, I₃ = 7 A at −100°"
    told = " ".join(plain(line) for line in answer.remarks)
    assert "the difference is never larger" in told and "sum" not in told


@pytest.mark.parametrize(("combine", "order", "names"), [
    ("difference", "12", "I₁ − I₂"), ("difference", "13", "I₁ − I₃"), ("difference", "23", "−I₂ − I₃"),
    ("sum", "12", "I₁ + I₂"), ("sum", "23", "I₂ + I₃"),
])  # fmt: skip
def test_the_first_diagonal_of_a_difference_is_named_as_a_difference(combine: str, order: str, names: str):
    form = {"p1": "20 at 0", "p2": "15 at 60", "p3": "7 at -100", "combine": combine, "method": "parallelogram",
            "order": order}  # fmt: skip
    case = PAGE.case(form)
    assert names == plain(case.notation.tags[f"i{order}"])
    symbols = [row[0] for row in table_of(PAGE.sheet_page(form))]
    assert names.translate(str.maketrans("₁₂₃", "123")) in symbols


def test_a_mirrored_overlay_is_to_be_laid_face_down():
    for paper in ("A4", "A5"):
        case = PAGE.case({"sheet": "overlay", "mirror": "yes", "paper": paper})
        notes = case.sheet_words(case.sheet_plan(), "overlay", "").notes
        assert "Mirrored: lay it face down." in " ".join(notes)


@pytest.mark.parametrize("combine", ["sum", "difference"])
@pytest.mark.parametrize("method", ["parallelogram", "tip-to-tail", "components"])
@pytest.mark.parametrize("places", [(1, 2, 4), (2, 3, 4), (3, 5, 6), (1, 4, 6), (2, 6), (1, 2, 4, 6)])
def test_phasors_may_stand_in_any_fields(places: tuple[int, ...], method: str, combine: str):
    """An empty field between them, or a first one of 0: same numbers as without, and the names of their own fields."""
    values = ("20 at 0", "15 at 60", "7 at -100", "9 at 30")[: len(places)]
    if combine == "difference" and places[0] != 1:
        places = places[: 2 if len(places) == 2 else 3]
    form = {"combine": combine, "method": method, "p1": "0", "p2": "", "p3": ""}
    form |= {f"p{place}": value for place, value in zip(places, values, strict=False)}
    reply, _ = shelf.ask("add-phasors", form)
    assert reply["ok"], reply
    case, page = PAGE.case(form), PAGE.sheet_page(form)
    end = case.sheet_plan().construction.end_point
    assert abs(complex(end.x, end.y) - case.total) < 1e-9 * 60
    shown = {row[0].lstrip("−") for row in table_of(page)}
    assert {f"I{place}" for place in places} <= shown
    task = PAGE.task(form)
    assert abs(abs(task.result) - case.size) < 1e-9


@pytest.mark.parametrize("tier", TIERS)
def test_a_class_set_draws_as_the_page_does(tier: str):
    """The sheets of a learner, of the page with the same values, and of the link of these values."""
    kinds = ("problem", "construction", "overlay")
    for method in ("any", "tip-to-tail", "parallelogram", "components"):
        form = PAGE.practice_form(Code(1, tier, seed=4, number=3, method=method))
        link = links.open_fragment(links.fragment(links.form_pairs(form, PAGE.fields)), PAGE.fields).form
        issued = list(PAGE.issued(form, ReopenInfo("", True), kinds))[: len(kinds)]
        sets = [[one[0] if isinstance(one, tuple) else one for one in issued],
                PAGE.pages(form, kinds=kinds), PAGE.pages(link, kinds=kinds)]  # fmt: skip
        drawn = [[[item for item in page.items if isinstance(item, Arrow)] for page in pages] for pages in sets]
        assert drawn[0] == drawn[1] == drawn[2]


@pytest.mark.parametrize("form", [{}, {"combine": "difference"}, {"combine": "difference", "p3": "4 + j4"}])
def test_nothing_on_the_page_is_taken_off(form: dict[str, str]):
    reply, _ = shelf.ask("add-phasors", {"p1": "20 at 0", "p2": "15 at 60", **form})
    text = " ".join(reply["regions"].values())
    assert not re.search(r"taken off|take off|\bless than the others|turned round", text)


def test_one_phasor_and_nothing_is_drawn_by_itself():
    assert "shows only this phasor" in notices(p1="8 at 30", p2="0", method="parallelogram")
    assert 8 == pytest.approx(results(p1="8 at 30", p2="0")["sum"])


def test_a_size_that_was_worked_out_is_written_as_finely_as_it_is_worth():
    """10 + j7 is 12.2065...: the table says 12.21, not every digit."""
    page = PAGE.answer({"p1": "10 + j7", "p2": "20 at 90"}, ("sheet",)).sheet
    rows = table_of(page)
    assert ["12.21", "20.00"] == [row[1] for row in rows[1:3]]


def test_each_phasor_is_echoed_in_the_other_form_with_its_own_first():
    echo = PAGE.answer({"p1": "20 at -60", "p2": "3 - j4"}, ()).echo
    assert "20 A at −60° = 10 − j17.32 A" == echo["p1"]["said"].replace("\u00a0", " ")
    assert "3 − j4 A = 5 A at −53.1°" == echo["p2"]["said"].replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("form", "field", "said"),
    [
        ({"p1": "", "p2": ""}, "p1", "at least two"),
        ({"p1": "5 at 0", "p2": ""}, "p2", "at least two"),
        ({"p1": "0", "p2": "0"}, "p1", "at least two"),
        ({"p1": "north"}, "p1", "“north”"),
        ({"p2": "20 V at 60"}, "p2", "amperes"),
        ({"p2": "1e9 at 0"}, "p2", "100 kA"),
        ({"p2": "1e-9 at 0"}, "p2", "1 µA"),
        ({"p6": "5 at 6 at 7"}, "p6", "Phasor 6"),
        ({"p1": "90000 at 0", "p2": "0.01 at 0"}, "p2", "one millionth"),
        ({"combine": "product"}, "combine", "sum, difference"),
        ({"p1": "<script>alert(1)</script>"}, "p1", "Phasor 1"),
        ({"p1": "\u202e20 at 0"}, "p1", "Phasor 1"),
    ],
)
def test_bad_input_names_the_field_what_was_given_and_what_is_accepted(form: dict, field: str, said: str):
    assert said in refused(**{"p1": "20 at 0", "p2": "15 at 60", **form})[field].replace("\u00a0", " ")


def test_a_scale_that_does_not_fit_leaves_the_answer_standing():
    reply, _ = shelf.ask("add-phasors", {"p1": "20 at 0", "p2": "15 at 60", "scale": "0.1"})
    assert reply["ok"] and ["scale"] == [error["field"] for error in reply["errors"]]


# Practice.


@pytest.mark.parametrize("tier", TIERS)
def test_a_hundred_and_fifty_practice_problems_may_be_set_and_solve(tier: str):
    """What the generator promises, by numpy: sum neither small nor huge, values that read naturally."""
    for number in range(1, 151):
        code = Code(1, tier, seed=9, number=number)
        problem = phasors_of(code)
        assert accepted(problem)
        assert (2 if tier == "support" else 3) == len(problem.tenths)
        assert (tier == "stretch") == problem.difference
        if tier == "support":
            assert all(size % 10 == 0 for size in problem.tenths)
        sizes, angles = np.array(problem.tenths) / 10, np.radians(problem.angles)
        signs = np.array([1.0] + [-1.0 if problem.difference else 1.0] * (len(sizes) - 1))
        expected = np.sum(signs * sizes * np.exp(1j * angles))
        assert 0.4 * max(sizes) <= abs(expected) <= 2.5 * max(sizes)
        if number % 10 == 0:
            found = results(**PAGE.practice_form(code))
            assert abs(expected) == pytest.approx(found["sum"], rel=1e-9)


def test_a_class_sets_own_choices_enter_and_keys_of_other_pages_do_not():
    form = PAGE.practice_form(Code(1, "core", "components", "A3", 5, 6), {"decimal": "comma", "names": "RYB"})
    assert ("comma", "A3", "components") == (form["decimal"], form["paper"], form["method"])
    assert "names" not in form


def mistakes(**form: str) -> dict[str, complex | None]:
    return {mistake.key: mistake.point for mistake in PAGE.task(form).mistakes}


def test_the_pages_own_mistakes_land_where_they_should():
    """Worked by hand: 10 less j5, and (3 + j4) + 2."""
    found = mistakes(p1="10 at 0", p2="5 at 90", combine="difference")
    assert found["added"] == pytest.approx(10 + 5j)
    assert found["first-turned"] == pytest.approx(-10 + 5j)
    assert "taken-off" not in found
    found = mistakes(p1="3 + j4", p2="2", reference="zero")
    assert found["taken-off"] == pytest.approx(1 + 4j)
    assert found["parts-exchanged"] == pytest.approx(6 + 3j)
    assert found["j-sign"] == pytest.approx(5 - 4j)


def test_mistakes_are_counted_from_the_phasor_that_is_drawn_first():
    found = mistakes(p1="10 at 30", p2="5 at 120", combine="difference", reference="current")
    assert found["added"] == pytest.approx(10 + 5j)


@pytest.mark.parametrize(
    ("form", "size", "angle", "said"),
    [
        ({"p1": "10 at 0", "p2": "5 at 60", "combine": "difference"}, "13.2", "19.1", "instead of subtracted"),
        ({"p1": "20 at 0", "p2": "15 at 60"}, "18", "-46", "instead of added"),
        ({"p1": "9 + j5", "p2": "4 at 120"}, "12.8", "76.5", "real and imaginary parts of"),
        ({"p1": "9 + j5", "p2": "4 at 120"}, "7.2", "-12", "sign before j"),
    ],
)
def test_marking_names_them_kindly(form: dict, size: str, angle: str, said: str):
    given = {"answer": size, "answer-angle": angle.lstrip("-"), "answer-how": "calculated",
             "answer-side": "clockwise" if angle.startswith("-") else "anticlockwise"}  # fmt: skip
    reply, _ = shelf.ask("add-phasors", form, "mark", given=given)
    assert reply["ok"] and "accept" != reply["band"], reply
    assert said in reply["regions"]["marked"]


def test_the_right_answer_is_accepted():
    given = {"answer": "30.4", "answer-angle": "25.3", "answer-how": "calculated", "answer-side": "anticlockwise"}
    reply, _ = shelf.ask("add-phasors", {"p1": "20 at 0", "p2": "15 at 60"}, "mark", given=given)
    assert "accept" == reply["band"]


def test_the_difference_adds_what_is_turned_round():
    case = PAGE.case({"p1": "10 at 0", "p2": "5 at 90", "combine": "difference"})
    assert [0.0, -90.0] == [arm.angle for arm in case.arms]
    assert phasor.magnitude(case.total) == pytest.approx(125**0.5)


@pytest.mark.parametrize("first", ["0", "0 at 90"])
def test_a_first_phasor_of_nothing_is_still_the_one_that_keeps_its_direction(first: str):
    """0 - 10 - 4 = -14: the second must not be taken for the first."""
    form = {"p1": first, "p2": "10 at 0", "p3": "4 at 0", "combine": "difference"}
    found = results(**form)
    assert 14 == pytest.approx(found["sum"])
    assert 180 == pytest.approx(found["sum-angle"])
    told = " ".join(plain(line) for line in PAGE.answer(form, ()).remarks)
    assert "I2, I3: turned by 180°, then added" in told.replace("\u2082", "2").replace("\u2083", "3")
    assert ["\u2212", "\u2212"] == [plain(PAGE.case(form).notation.tags[f"i{number}"])[0] for number in (2, 3)]
    caught = mistakes(**form, reference="zero")
    assert caught["added"] == pytest.approx(14)
    assert "first-turned" not in caught


def test_a_sum_does_not_care_which_phasor_is_nothing():
    assert 14 == pytest.approx(results(p1="0", p2="10 at 0", p3="4 at 0")["sum"])
    assert 14 == pytest.approx(results(p1="", p2="10 at 0", p3="4 at 0")["sum"])


def test_a_difference_without_its_first_phasor_is_refused_by_name():
    said = refused(p1="", p2="10 at 0", p3="4 at 0", combine="difference")
    assert ["p1"] == list(said)
    assert "Phasor 1 is empty" in said["p1"]
