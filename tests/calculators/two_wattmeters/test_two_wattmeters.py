"""Two wattmeters: against numpy's mean of instantaneous power, and at the ends of the range."""

import re

import numpy as np
import pytest
from calculators.asking import Asking, moves_of
from unit.sheets import given_of, said_on

from pycore import phasor, quantity
from pycore.calculators.harmonics_in_the_neutral.page import HarmonicsInTheNeutral
from pycore.calculators.two_wattmeters.circuit import METERS, BalancedLoad, from_load, from_meters
from pycore.calculators.two_wattmeters.fields import FIELDS
from pycore.calculators.two_wattmeters.page import TwoWattmeters
from pycore.calculators.two_wattmeters.teaching import PLAN
from pycore.drawing import Arrow, Line, Text
from pycore.forms import links
from pycore.forms.fields import default_form
from pycore.geometry import Box
from pycore.practice.answers import judge
from pycore.practice.codes import TIERS, Code
from pycore.practice.explaining import LearnerAnswer, visible
from pycore.practice.marking import mark
from pycore.practice.task import NO_LIMITS
from pycore.words import plain

FORM = {**default_form(FIELDS), "meters": "13"}
PAGE = TwoWattmeters()
ASKING = Asking(PAGE.slug, FORM)
ask, results = ASKING.ask, ASKING.results


def test_five_hundred_loads_agree_with_the_mean_of_instantaneous_power():
    """Sampled over one period by numpy: voltage from L1 to L2 times current of L1, L3 to L2 times L3."""
    draws = np.random.default_rng(20261125)
    turns = np.radians(np.arange(0, 360, 1.0))
    for _ in range(500):
        volts, amps, lag = draws.uniform(50, 700), draws.uniform(0.1, 200), draws.uniform(-90, 90)
        phase = np.sqrt(2 / 3) * volts * np.cos(turns + np.radians([[0], [-120], [120]]))
        flow = np.sqrt(2) * amps * np.cos(turns + np.radians([[0], [-120], [120]]) - np.radians(lag))
        first = np.mean((phase[0] - phase[1]) * flow[0])
        second = np.mean((phase[2] - phase[1]) * flow[2])
        found = from_load(BalancedLoad(volts, amps, lag), "13")
        assert found.first == pytest.approx(first, abs=1e-9 * volts * amps)
        assert found.second == pytest.approx(second, abs=1e-9 * volts * amps)
        again = from_meters(found.first, found.second, "13")
        power = np.sqrt(3) * volts * amps * np.cos(np.radians(lag))
        assert again.power == pytest.approx(power, abs=1e-8 * volts * amps)
        assert again.lag == pytest.approx(lag, abs=1e-6)


@pytest.mark.parametrize("meters", METERS)
def test_meters_in_any_two_lines_agree_with_the_mean_of_instantaneous_power(meters: str):
    """Each meter: the current of its line times the voltage from that line to the third one, by numpy."""
    turns = np.radians(np.arange(0, 360, 1.0))
    one, two = (int(line) - 1 for line in meters)
    third = 3 - one - two
    for lag in (-75, -30, 0, 15, 40, 60, 80):
        phase = np.sqrt(2 / 3) * 400 * np.cos(turns + np.radians([[0], [-120], [120]]))
        flow = np.sqrt(2) * 10 * np.cos(turns + np.radians([[0], [-120], [120]]) - np.radians(lag))
        first, second = (np.mean((phase[line] - phase[third]) * flow[line]) for line in (one, two))
        found = from_load(BalancedLoad(400.0, 10.0, float(lag)), meters)
        assert (found.first, found.second) == pytest.approx((first, second), abs=1e-6)
        again = from_meters(first, second, meters)
        assert again.lag == pytest.approx(lag, abs=1e-6)
        assert again.reactive == pytest.approx(4000 * np.sqrt(3) * np.sin(np.radians(lag)), abs=1e-6)


@pytest.mark.parametrize("meters", METERS)
@pytest.mark.parametrize("lag", ["40", "-40", "75", "0"])
def test_the_diagram_shows_the_angles_of_the_meters_that_were_chosen(meters: str, lag: str):
    """Each meter's drawn voltage and current include the angle whose cosine gives its reading."""
    form = {**FORM, "meters": meters, "lag": lag}
    case, answer = PAGE.case(form), PAGE.answer(form)
    page = next(one for one in answer.workings if one.key == "meters").blocks[1].page
    arrows = [item for item in page.items if isinstance(item, Arrow)]
    flows = [item for item in page.items if isinstance(item, Line) and item.ink == "blue"]
    for arrow, flow, reading in zip(arrows, flows, case.readings, strict=False):
        voltage, current = (complex(b.x - a.x, b.y - a.y) for a, b in
                            ((arrow.tail, arrow.tip), (flow.start, flow.end)))  # fmt: skip
        cosine = (voltage * current.conjugate()).real / abs(voltage) / abs(current)
        assert reading == pytest.approx(4000 * cosine, abs=1e-6)
    for item in (*arrows, *flows):
        for point in (item.tip, item.tail) if isinstance(item, Arrow) else (item.start, item.end):
            assert Box(0, 0, page.width, page.height).holds(Box(point.x, point.y, point.x, point.y))


def texts_of(**values: str) -> dict[str, str]:
    return {output.name: output.text.replace("\u00a0", " ") for output in PAGE.answer({**FORM, **values}, ()).outputs}


@pytest.mark.parametrize(
    ("meters", "first", "second", "side"),
    [("12", "4000", "1500", "lagging"), ("12", "1500", "4000", "leading"), ("23", "4000", "1500", "lagging"),
     ("13", "1500", "4000", "lagging"), ("13", "4000", "1500", "leading")],
)  # fmt: skip
def test_lag_and_lead_are_said_and_follow_the_lines_of_the_meters(meters: str, first: str, second: str, side: str):
    values = {"known": "readings", "meters": meters, "w1": first, "w2": second}
    texts, (remarks, workings) = texts_of(**values), told_of(**values)
    assert texts["power-factor"] == f"0.786 {side}"
    assert texts["lag"] == f"38.2° {side}"
    assert f"has the larger reading: the load is {side}" in remarks
    order = "P₁ − P₂" if meters != "13" else "P₂ − P₁"
    assert order.replace(" ", "") in re.sub("[\u2061\u2062 ]", "", workings).replace("P1", "P₁").replace("P2", "P₂")


def test_the_page_opens_with_the_usual_labelling_and_old_links_do_not():
    """W1 is larger with a lagging load on the page as it opens; a link of version 1 keeps L1 and L3."""
    opened = {output.name: output.value for output in PAGE.answer(default_form(FIELDS), ()).outputs}
    assert opened["reading-1"] > opened["reading-2"] and opened["lag"] == pytest.approx(40)
    linked = links.open_fragment("v=1&volts=400&amps=10&lag=40", FIELDS).form
    assert "13" == linked["meters"]
    assert "meters=12" in links.fragment(links.form_pairs(default_form(FIELDS), FIELDS))


def test_power_and_power_factor_lead_the_answer():
    answer = PAGE.answer(FORM, ())
    assert ["power", "power-factor"] == [output.name for output in answer.outputs[:2]]
    summary = [plain(line).replace("\u00a0", " ") for line in answer.summary]
    assert "Power factor: 0.766 lagging." in summary
    assert summary[0].startswith("On the drawing: S = 6928 VA")


def test_a_meter_that_reads_backwards_is_explained():
    told = told_of(lag="75")[0]
    for words in ("pointer moves below zero", "power factor of this balanced load is below 0.5", "voltage coil",
                  "with the supply off and proved dead", "Count the reading as negative"):  # fmt: skip
        assert words in told


def test_empty_readings_are_asked_for_and_are_no_fault_before_anything_is_typed():
    reply = ask(known="readings", w1="", w2="")
    assert not reply["ok"] and all(error["awaited"] for error in reply["errors"])
    assert {"w1", "w2"} == {error["field"] for error in reply["errors"]}
    assert "Enter the reading of wattmeter 1" in reply["waiting"] and "corrected" not in reply["waiting"]
    wrong = ask(known="readings", w1="abc", w2="")
    assert [False, True] == [error.get("awaited", False) for error in wrong["errors"]]
    assert "corrected" in wrong["waiting"]


def test_the_drawing_ends_on_the_apparent_power():
    for lag in ("0", "40", "60", "75", "90", "-30", "0.85 lag"):
        case = PAGE.case({**FORM, "lag": lag})
        assert case.size == pytest.approx(case.result.apparent, rel=1e-9)
        assert case.sheet_plan().construction.end_point.y == pytest.approx(case.result.reactive, abs=1e-6)


@pytest.mark.parametrize("lag", ["0", "30", "60", "75", "90", "-60", "-90"])
@pytest.mark.parametrize("method", ["tip-to-tail", "components"])
@pytest.mark.parametrize("sheet", ["construction", "problem", "overlay"])
def test_every_angle_has_its_sheet(lag: str, method: str, sheet: str):
    reply = ask(lag=lag, method=method, sheet=sheet)
    assert reply["ok"], reply["errors"]
    assert "<svg" in reply["regions"]["sheet"]


def test_which_reading_is_negative_below_half_power_factor():
    for lag, number in (("75", 1), ("-75", 2)):
        told = [plain(phrase) for phrase in PAGE.answer({**FORM, "lag": lag}, ("answer",)).remarks]
        assert any(f"Wattmeter {number} reads backwards" in one for one in told)
    assert not any("backwards" in plain(p) for p in PAGE.answer({**FORM, "lag": "59"}, ("answer",)).remarks)


def test_the_tangent_formula_is_refused_for_a_load_that_is_not_balanced():
    found = results(known="readings", w1="2000", w2="5000", balanced="no")
    assert found["power"] == 7000
    assert not {"lag", "reactive-power", "power-factor"} & set(found)
    told = [plain(p) for p in PAGE.answer({**FORM, "known": "readings", "w1": "2000", "w2": "5000", "balanced": "no"},
            ("answer",)).remarks]  # fmt: skip
    assert any("The load is unbalanced" in one for one in told)


@pytest.mark.parametrize(
    ("values", "field", "words"),
    [
        ({"known": "readings", "w1": "", "w2": "5"}, "w1", "Enter the reading of wattmeter 1"),
        ({"known": "readings", "w1": "0", "w2": "0"}, "w1", "both readings are zero"),
        ({"known": "readings", "w1": "5 A", "w2": "5"}, "w1", "cannot be read"),
        ({"known": "readings", "w1": "1e-30", "w2": "0"}, "w1", "1 mW to 1 GW"),
        ({"known": "readings", "w1": "4", "w2": "-2 GW"}, "w2", "1 mW to 1 GW"),
        ({"lag": "120"}, "lag", "more than 90"),
        ({"amps": "0"}, "amps", "out of range"),
        ({"volts": "-4"}, "volts", "out of range"),
        ({"balanced": "no"}, "balanced", "enter both readings"),
    ],
)
def test_bad_input_is_named(values: dict, field: str, words: str):
    reply = ask(**values)
    assert not reply["ok"]
    assert words in {error["field"]: error["message"] for error in reply["errors"]}[field]


@pytest.mark.parametrize("page", [PAGE, HarmonicsInTheNeutral()], ids=lambda page: page.slug)
@pytest.mark.parametrize("tier", TIERS)
def test_practice_problems_are_marked_and_their_mistakes_named(page, tier: str):
    seen = set()
    for number in range(1, 25):
        subject = page.task(page.practice_form(Code(page.topic, tier, seed=9, number=number)))
        side = "anticlockwise" if subject.angle * subject.sense > 0 else "clockwise"
        right = {"answer": quantity.exact(subject.size / subject.writing.factor), "answer-unit": subject.writing.unit,
                 "answer-angle": f"{abs(subject.angle):.1f} {side}"}  # fmt: skip
        assert judge(subject, right).marked.band == "accept"
        for mistake in subject.mistakes:
            if mistake.point is None or "drawn" not in mistake.how or mistake.size == 0:
                continue
            if visible(subject, mistake, "drawn", NO_LIMITS):
                marked = mark(subject, LearnerAnswer(mistake.size, phasor.angle(mistake.point)))
                if marked.band != "accept" and mistake.weight >= 0.5 and not mistake.points:
                    assert mistake.name in [m.name for cause in marked.causes for m in cause.mistakes]
                    seen.add(mistake.key)
    assert {"left-out", "reversed"} <= seen
    if page is PAGE:
        assert {"root-three-forgotten", "readings-exchanged"} <= seen
        assert ("minus-forgotten" in seen) == (tier == "stretch")


def told_of(**values: str) -> tuple[str, str]:
    """Remarks, and the text of the workings."""
    remarks = " ".join(plain(p) for p in PAGE.answer({**FORM, **values}, ("answer",)).remarks)
    return remarks, re.sub(r"<[^>]+>", "", ask(**values)["regions"]["workings"])


@pytest.mark.parametrize(
    ("first", "second", "arctangent", "lag"),
    [("-100", "-300", "40.9", "−139.1"), ("-300", "-100", "−40.9", "139.1"), ("-100", "-100", "0.0", "180.0")],
)
def test_power_that_flows_back_has_its_angle_by_a_half_turn_from_the_arctangent(first, second, arctangent, lag):
    """Q / P = 0.866 has the arctangent 40.9; with P below zero the angle of lag is that less 180."""
    found = results(known="readings", w1=first, w2=second)
    assert found["lag"] == pytest.approx(float(lag.replace("−", "-")), abs=0.05)
    remarks, workings = told_of(known="readings", w1=first, w2=second)
    assert "flow back to the supply" in remarks
    assert "the power factor is" not in remarks
    before, _, after = workings.partition("The power is negative")
    assert before.rpartition("arctan")[2].endswith(f"={arctangent}°")
    assert f"180° ={lag}°" in after


def test_half_power_factor_is_not_told_where_power_flows_back():
    remarks, _ = told_of(known="readings", w1="0", w2="-100")
    assert "0.5" not in remarks
    assert "0.5" in told_of(known="readings", w1="0", w2="100")[0]


def test_angles_at_the_meters_stay_within_a_half_turn():
    remarks, _ = told_of(known="readings", w1="-100", w2="-100")
    assert "between voltage and current is 150°" in remarks and "210" not in remarks


def test_the_sequence_is_told_and_turning_it_exchanges_both_readings():
    """By numpy's instantaneous power, with L2 and L3 exchanged in time."""
    turns, lag = np.radians(np.arange(0, 360, 1.0)), np.radians(40)
    shift = np.radians([[0], [120], [-120]])
    phase, flow = np.sqrt(2) * np.cos(turns + shift), np.sqrt(2) * np.cos(turns + shift - lag)
    first, second = np.mean((phase[0] - phase[1]) * flow[0]), np.mean((phase[2] - phase[1]) * flow[2])
    found = from_load(BalancedLoad(np.sqrt(3), 1.0, 40.0), "13")
    assert (second, first) == pytest.approx((found.first, found.second))
    assert from_meters(first, second, "13").reactive == pytest.approx(-found.reactive)
    workings = told_of()[1]
    assert "phase sequence is L1, L2, L3" in workings and "gives Q with the wrong sign" in workings


def test_nobody_is_told_to_exchange_leads_on_a_live_system():
    assert "with the supply off and proved dead" in told_of(lag="75")[0]
    assert any("prove dead" in caution and "leads" in caution for caution in PAGE.cautions)
    assert not any("exchange" in field.help for field in PAGE.fields)


@pytest.mark.parametrize(("first", "second"), [("-100", "-300"), ("-300", "-100"), ("-100", "-100"), ("0", "-100"),
                                               ("-1035", "2828"), ("300", "-290"), ("100", "250")])  # fmt: skip
def test_no_line_of_the_picture_runs_through_the_size_of_an_angle(first: str, second: str):
    answer = PAGE.answer({**FORM, "known": "readings", "w1": first, "w2": second})
    page = next(one for one in answer.workings if one.key == "meters").blocks[1].page
    sizes = [item for item in page.items if isinstance(item, Text) and "\u00b0" in "".join(r.text for r in item.runs)]
    assert 2 == len(sizes)
    for size in sizes:
        half = 1.0 * len("".join(run.text for run in size.runs))
        box = Box(size.at.x - half, size.at.y, size.at.x + half, size.at.y + 3.4)
        assert Box(0, 0, page.width, page.height).holds(box)
        for item in page.items:
            if isinstance(item, Line | Arrow):
                ends = (item.start, item.end) if isinstance(item, Line) else (item.tail, item.tip)
                assert not box.meets_segment(*ends), (item, size)


@pytest.mark.parametrize(("balanced", "result"), [("yes", "the apparent power"), ("no", "the active power")])
def test_two_readings_in_line_give_the_active_power(balanced: str, result: str):
    form = {**FORM, "known": "readings", "w1": "2000", "w2": "-500", "balanced": balanced, "sheet": "problem",
            "print": "easy"}  # fmt: skip
    said = said_on(PAGE.pages(form))
    assert f"Estimate {result}." in said and f"to the last tip. It is {result}." in said
    other = {"the apparent power", "the active power"} - {result}
    assert f"It is {other.pop()}" not in said


READINGS = {"known": "readings", "balanced": "no"}


def test_an_unbalanced_load_is_drawn_in_watts():
    answer = PAGE.answer({**FORM, **READINGS, "w1": "2000", "w2": "-500"})
    moves = " ".join(plain(block.phrase) for block in moves_of(answer, "tip-to-tail-12")).replace("\u00a0", " ")
    assert "At 1 cm = 200 W, that is 1500 W (calculated: 1500 W)" in moves and "VA" not in moves
    assert any("watts per centimetre" in plain(block.why) for block in moves_of(answer, "tip-to-tail-12"))
    assert "W" == next(output.unit for output in answer.outputs if output.name == "power")


def test_each_reading_and_the_reactive_power_have_their_own_unit():
    answer = PAGE.answer({**FORM, "known": "load", "lag": "40"})
    moves = " ".join(plain(block.phrase) for block in moves_of(answer, "tip-to-tail-12")).replace("\u00a0", " ")
    assert "calculated: 6928 VA" in moves
    said = said_on(PAGE.pages({**FORM, "known": "load", "lag": "40"}))
    assert all(tag in said for tag in ("P1/W", "P2/W", "Q/var", "S/VA"))


@pytest.mark.parametrize("lag", ["59.99", "60.01", "0.03", "89.99"])
def test_a_reading_near_nothing_does_not_lengthen_the_others(lag: str):
    outputs = {one.name: one.text for one in PAGE.answer({**FORM, "lag": lag}, ("answer",)).outputs}
    for name in ("reading-1", "reading-2", "reactive-power", "apparent-power"):
        assert len(re.sub(r"\D", "", outputs[name]).lstrip("0")) <= 4, outputs


def test_a_typed_reading_is_shown_as_typed():
    form = {**FORM, "known": "readings", "w1": "3465", "w2": "0.6046"}
    outputs = {one.name: one.text for one in PAGE.answer(form, ("answer",)).outputs}
    assert "0.6046" == outputs["reading-2"]


@pytest.mark.parametrize(("first", "second", "side"), [("-2000", "500", "lagging"), ("500", "-2000", "leading")])
def test_lag_and_lead_are_named_where_power_flows_back(first: str, second: str, side: str):
    """Meters on L1 and L3: the second one reads more with a lagging load, here 500 against -2000."""
    answer = PAGE.answer({**FORM, "known": "readings", "w1": first, "w2": second}, ("answer",))
    outputs = {one.name: one.text for one in answer.outputs}
    assert (f"−0.327 {side}", f"109.1°\u00a0{side}") == (outputs["power-factor"], outputs["lag"])


def test_a_negative_power_has_its_direction_from_positive_power():
    answer = PAGE.answer({**FORM, **READINGS, "w1": "-2000", "w2": "500"}, ("answer",))
    assert "180° anticlockwise from positive P" == plain(answer.summary[0])


def test_the_angle_is_called_phase_angle_whether_it_lags_or_leads():
    for lag in ("75", "-75"):
        outputs = PAGE.answer({**FORM, "lag": lag}, ("answer",)).outputs
        assert "phase angle" == next(plain(one.label) for one in outputs if one.name == "lag")


@pytest.mark.parametrize(("lag", "angle"), [
    ("40", "lagging by 40°"), ("-40", "leading by 40°"), ("0", "in phase with its phase voltage"),
])  # fmt: skip
def test_the_values_of_a_load_are_in_words(lag: str, angle: str):
    said = plain(PAGE.answer({**FORM, "lag": lag}, ("answer",)).values_text).replace("\u00a0", " ")
    assert f"Balanced load, 400 V between lines, 10 A in each line, {angle}" == said


def test_the_exit_question_says_on_which_lines_and_in_which_sequence():
    question = PLAN.parts[-1].does[0]
    assert "L1, L2, L3" in question and "on L1 reads 2000 W" in question and "on L2 reads −500 W" in question
    outputs = {one.name: one.text for one in PAGE.answer(dict(PLAN.exit_values), ("answer",)).outputs}
    assert "0.327 lagging" == outputs["power-factor"]


def test_a_negative_reading_keeps_its_sign_on_a_problem_sheet():
    form = {"known": "readings", "w1": "2500", "w2": "-400", "sheet": "problem"}
    assert "−400" in [row[1] for row in given_of(PAGE.sheet_page(form)) if len(row) > 1]
