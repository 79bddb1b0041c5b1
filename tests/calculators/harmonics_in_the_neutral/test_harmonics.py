"""Harmonics in the neutral: against scipy's transform of the sampled waves, and at the ends of the range."""


import numpy as np
import pytest
from calculators.asking import Asking
from scipy.fft import rfft

from pycore import phasor
from pycore.calculators.harmonics_in_the_neutral.circuit import DistortedCurrents, solve
from pycore.calculators.harmonics_in_the_neutral.fields import FIELDS, ORDERS
from pycore.calculators.harmonics_in_the_neutral.page import HarmonicsInTheNeutral
from pycore.calculators.harmonics_in_the_neutral.teaching import PLAN
from pycore.drawing import Shape, Text, walk
from pycore.forms.fields import default_form
from pycore.geometry import Box
from pycore.practice.codes import Code
from pycore.practice.explaining import LearnerAnswer
from pycore.practice.marking import mark
from pycore.sheet.lettered import box_of
from pycore.words import plain

FORM = {**default_form(FIELDS), "a2": "0", "a3": "0"}
PAGE = HarmonicsInTheNeutral()
ASKING = Asking(PAGE.slug, FORM)
ask, results = ASKING.ask, ASKING.results
SAMPLES = 64


def test_five_hundred_random_loads_agree_with_scipys_transform():
    """The neutral's wave is the sum of the sampled line waves; its spectrum is that of our phasors."""
    draws = np.random.default_rng(20261125)
    turns = 2 * np.pi * np.arange(SAMPLES) / SAMPLES
    for _ in range(500):
        currents = draws.uniform(0, 50, 3)
        lags = draws.uniform(-60, 60, 3)
        shares = {order: draws.uniform(0, 0.6) for order in ORDERS}
        phases = {order: draws.uniform(-180, 180) for order in ORDERS}
        waves = np.zeros(SAMPLES)
        for current, angle, lag in zip(currents, (0, -120, 120), lags, strict=True):
            at = turns + np.radians(angle - lag)
            waves += np.sqrt(2) * current * np.cos(at)
            for order in ORDERS:
                waves += np.sqrt(2) * current * shares[order] * np.cos(order * at + np.radians(phases[order]))
        spectrum = rfft(waves) / SAMPLES * np.sqrt(2)
        found = solve(DistortedCurrents(tuple(currents), tuple(lags), shares, phases))
        for order in found.orders:
            assert abs(order.neutral - spectrum[order.number]) < 1e-9 * (1 + currents.sum())
        assert found.neutral == pytest.approx(np.sqrt(np.mean(waves**2)), abs=1e-9)


def wave(phasors: dict[int, complex], degrees: float) -> float:
    """The instantaneous value (A) at an angle of the fundamental, from the phasors (r.m.s.) by order."""
    return sum((np.sqrt(2) * value * np.exp(1j * np.radians(n * degrees))).real for n, value in phasors.items())


def test_the_wave_is_that_of_its_phasors():
    found = solve(DistortedCurrents((10.0, 6.0, 4.0), (0.0, 0.0, 0.0), {3: 0.2}, {}))
    phasors = {order.number: order.lines[0] for order in found.orders}
    assert wave(phasors, 0.0) == pytest.approx(np.sqrt(2) * 12.0)
    assert wave(phasors, 60.0) == pytest.approx(np.sqrt(2) * (5.0 - 2.0))


def test_triplen_orders_that_are_out_of_phase_do_not_add():
    """Their phasors cancel where the lines lag so that three times the angle parts them by 120 degrees."""
    found = results(i1="10", i2="10", i3="10", h3="30", a1="0", a2="40", a3="80")
    assert found["neutral-3"] == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize("drawn", ["1", "3", "5", "7", "9", "11", "13"])
@pytest.mark.parametrize("sheet", ["construction", "problem", "overlay"])
def test_every_order_has_its_sheet_and_workings(drawn: str, sheet: str):
    reply = ask(drawn=drawn, sheet=sheet, h5="8", h7="5 at 90", h9="6", h11="2", h13="1")
    assert reply["ok"], reply["errors"]
    assert "<svg" in reply["regions"]["sheet"] and 'id="' in reply["regions"]["workings"]


def test_an_order_that_is_not_there_leaves_the_fundamental_on_the_sheet():
    case = PAGE.case({**FORM, "drawn": "7"})
    assert case.order.number == 1


def test_more_than_any_line_is_said():
    form = {**FORM, "i1": "10", "i2": "10", "i3": "10", "h3": "60"}
    told = [plain(phrase) for phrase in PAGE.answer(form, ("answer",)).remarks]
    assert any(
        "more than any line" in one and "The fuses in the lines do not protect the neutral against this." in one
        for one in told
    )
    assert not any("overloaded" in one for one in told), "the page knows no ratings"


def test_the_cautions_are_those_of_a_clamp_meter():
    told = " ".join(PAGE.cautions)
    assert "one conductor in the jaw" in told
    assert "A clamp meter cannot prove that a circuit is dead" in told


def test_balanced_lines_leave_only_triplen_orders():
    found = results(i1="10", i2="10", i3="10", h3="20", h5="20", h7="20")
    assert (found["neutral-1"], found["neutral-5"], found["neutral-7"]) == (0, 0, 0)
    assert found["neutral-current"] == pytest.approx(6.0)


@pytest.mark.parametrize(
    ("values", "field", "words"),
    [
        ({"i1": "0", "i2": "0", "i3": "0"}, "i1", "more than 0 A"),
        ({"h3": "abc"}, "h3", "cannot be read"),
        ({"h3": "300"}, "h3", "Order 3 is out of range: “300”. Use 0, or 0.01 to 200 per cent."),
        ({"h3": "1e-9"}, "h3", "out of range"),
        ({"h3": "80", "h5": "70", "of": "total"}, "h3", "no fundamental left"),
        ({"i2": "x"}, "i2", "not a number"),
    ],
)
def test_bad_input_is_named(values: dict, field: str, words: str):
    reply = ask(**values)
    assert not reply["ok"]
    assert words in {error["field"]: error["message"] for error in reply["errors"]}[field]


def test_a_phasor_of_the_drawing_is_that_of_its_order():
    case = PAGE.case({**FORM, "h3": "20 at 30"})
    assert phasor.angle(case.total) == pytest.approx(30.0)


def test_a_third_in_phase_by_sines_stands_at_180_as_the_help_says():
    """sin x + 0.2 sin 3x is the wave of 10 A and of 20 per cent at 180 degrees, a quarter period on."""
    found = solve(DistortedCurrents((10.0, 0.0, 0.0), (0.0, 0.0, 0.0), {3: 0.2}, {3: 180.0}))
    phasors = {order.number: order.lines[0] for order in found.orders}
    for degrees in (10.0, 30.0, 75.0, 140.0):
        x = np.radians(degrees)
        expected = 10 * np.sqrt(2) * (np.sin(x) + 0.2 * np.sin(3 * x))
        assert wave(phasors, degrees - 90.0) == pytest.approx(expected)
    assert any("(sine waves) is at 180°" in field.help for field in FIELDS)


@pytest.mark.parametrize("drawn", ["1", "3", "7"])
def test_the_page_writes_its_currents_alike_whatever_order_is_drawn(drawn: str):
    """10 A typed stays 10.0 A, and the small orders keep two figures."""
    form = {**FORM, "i1": "10", "i2": "10", "i3": "10", "h3": "20", "h7": "0.05", "drawn": drawn}
    answer = PAGE.answer(form, ("answer",))
    currents = [one for one in answer.outputs if one.name.startswith(("neutral-", "line-"))]
    assert {"A"} == {one.unit for one in currents} and "6.00" == currents[0].text
    told = " ".join(plain(phrase) for phrase in (answer.values_text, *answer.remarks)).replace("\u00a0", " ")
    assert "10.0 A" in told and "0.0050 A" in told and "mA" not in told
    grid = next(one for one in PAGE.answer(form).workings if one.key == "orders").blocks[0]
    assert ["7", "positive", "0.0050", "0.0050", "0.0050", "0"] == [plain(cell) for cell in grid.rows[2]]


def test_the_smallest_share_is_written_in_the_page_s_own_unit():
    told = " ".join(plain(p) for p in PAGE.answer({**FORM, "h3": "0.01"}, ("answer",)).remarks)
    assert "0.0020" in told and "µA" not in told


# Lags: in view, and in the words.


def remarks(**values: str) -> list[str]:
    return [plain(p).replace("\u00a0", " ") for p in PAGE.answer({**FORM, **values}, ("answer",)).remarks]


def test_lags_that_change_the_answer_are_told_with_the_values():
    """10, 10, 10 A with 30 % give 9 A in phase and 7.2 A of order 3 at lags of 20 and 30 degrees: both say why."""
    alike = {"i1": "10", "i2": "10", "i3": "10", "h3": "30"}
    told = [plain(PAGE.answer({**FORM, **alike, **lags}, ("answer",)).values_text).replace("\u00a0", " ")
            for lags in ({}, {"a2": "20", "a3": "30"})]  # fmt: skip
    assert ["10.0 A, 10.0 A, 10.0 A", "10.0 A 0°, 10.0 A 20° lag, 10.0 A 30° lag"] == told
    assert results(**alike)["neutral-current"] == pytest.approx(9.0)


ORDERS_TOO = {"h3": "20", "h5": "10", "h7": "5"}


@pytest.mark.parametrize("lag", ["0", "30", "0.8 lead"])
def test_with_equal_lags_an_order_is_in_phase_or_120_degrees_apart(lag: str):
    text = " ".join(remarks(**ORDERS_TOO, a1=lag, a2=lag, a3=lag))
    assert "in phase in all lines and adds up fully" in text
    assert 2 == text.count("120° apart from line to line")
    assert "unequal" not in text


def test_with_unequal_lags_no_order_is_called_in_phase_or_120_degrees_apart():
    text = " ".join(remarks(**ORDERS_TOO, a2="20", a3="30"))
    assert "adds up only in part" in text
    assert 2 == text.count("but not 120° apart, because the lags of the lines are unequal")
    assert "Here the lags of the lines are unequal" in text
    assert "adds up fully" not in text and "120° apart from" not in text


def test_lags_that_the_order_turns_by_whole_turns_leave_it_in_phase():
    """Three times 120 degrees: the third harmonics are in phase although the lags are unequal."""
    assert any("Order 3" in one and "in phase in all lines" in one for one in remarks(h3="20", a2="120", a3="-120"))


def test_a_line_without_current_has_no_lag_to_compare():
    assert "unequal" not in " ".join(remarks(**ORDERS_TOO, i3="0", a3="30"))


def test_the_plans_sentences_hold_for_the_example_that_it_shows():
    """Equal lags: order 3 lies in one line, and its sizes add up as numbers."""
    spoken = " ".join(step for stage in PLAN.parts for step in stage.does)
    assert "three arrows in one line, because the lags are equal" in spoken
    case = PAGE.case({**FORM, "drawn": "3"})
    assert case.equal_lags and case.in_phase(case.order)
    assert 4.0 == pytest.approx(results()["neutral-3"])


# Pictures.


@pytest.mark.parametrize("form", [
    {}, {"h5": "8", "h7": "5", "h9": "6", "h11": "2", "h13": "1"}, {f"h{order}": "60" for order in ORDERS},
    {f"h{order}": "0.01" for order in ORDERS}, {"i1": "9999.9", "i2": "1234.5", "h3": "1", "h5": "99", "h13": "33.3"},
    {"i1": "0.004", "i2": "0.002", "i3": "0", **{f"h{order}": "7" for order in ORDERS}, "decimal": "comma"},
])  # fmt: skip
def test_labels_of_the_pictures_never_collide(form: dict[str, str]):
    """Neither with each other nor with a bar."""
    (section,) = [one for one in PAGE.answer({**FORM, **form}).workings if one.key == "pictures"]
    for block in section.blocks:
        items = list(walk(block.page.items))
        texts = [box_of(item, 3.2) for item in items if isinstance(item, Text)]
        bars = [shape for shape in items if isinstance(shape, Shape) and 4 == len(shape.points)]
        solid = [Box(min(p.x for p in bar.points), min(p.y for p in bar.points), max(p.x for p in bar.points),
                     max(p.y for p in bar.points)) for bar in bars]  # fmt: skip
        for index, box in enumerate(texts):
            assert box.left >= 0 and box.right <= block.page.width
            assert box.bottom >= 0 and box.top <= block.page.height
            for other in (*texts[index + 1 :], *solid):
                assert (box.right < other.left or other.right < box.left or box.top < other.bottom
                        or other.top < box.bottom), (form, box, other)  # fmt: skip


# Practice.


def mistakes(**values: str) -> dict:
    return {mistake.key: mistake for mistake in PAGE.task({**FORM, **values}).mistakes}


def test_angles_that_were_not_multiplied_by_the_order_are_known():
    """By numpy: order 3 at 20 per cent of 10, 6 and 4 A, lines lagging 0, 20 and 30 degrees, its own angle 15."""
    found = mistakes(h3="20 at 15", a2="20", a3="30", reference="zero")["order-not-multiplied"]
    expected = np.sum(0.2 * np.array([10, 6, 4]) * np.exp(1j * np.radians(np.array([0, -120, 120]) - [0, 20, 30] + 15)))
    assert found.point == pytest.approx(expected)
    assert "At order 3, multiply every angle of a line by 3" in plain(found.look)


def test_it_is_counted_from_the_line_that_was_drawn_first():
    """Lag of the first line 40: drawn from its own phasor, the slip turns that phasor too."""
    found = mistakes(h3="20", a1="40", a2="20", reference="current")["order-not-multiplied"]
    expected = np.sum(np.array([2, 1.2, 0.8]) * np.exp(1j * np.radians([0, -120 - 20 + 40, 120 + 40])))
    assert found.point == pytest.approx(expected)


@pytest.mark.parametrize("values", [{"drawn": "1"}, {"h7": "5", "drawn": "7"}])
def test_it_is_no_mistake_where_it_gives_the_right_answer(values: dict):
    """The fundamental, and an order that follows the sequence with lines in phase with their voltages."""
    assert "order-not-multiplied" not in mistakes(**values)


def test_all_orders_given_for_one_are_known_only_where_there_are_several():
    assert mistakes(drawn="3")["all-orders"].size == pytest.approx(results()["neutral-current"])
    assert "all-orders" not in mistakes(h3="", drawn="1")


def test_marking_names_the_pages_own_slip_and_no_other():
    """A learner's sheet of the stretch tier with the angles of the fundamental on it."""
    for number in range(1, 25):
        task = PAGE.task(PAGE.practice_form(Code(PAGE.topic, "stretch", seed=9, number=number)))
        slip = next(one for one in task.mistakes if one.key == "order-not-multiplied")
        marked = mark(task, LearnerAnswer(slip.size, phasor.angle(slip.point)))
        assert marked.band != "accept"
        assert "order-not-multiplied" in [one.key for one in marked.causes[0].mistakes]
