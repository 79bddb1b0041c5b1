"""Drawn, calculated and measured compared on the page: readings, lengths, what is shared, what could be why."""

import json
import math
import re
import statistics
from decimal import Decimal

import numpy
import pytest
from scipy import stats

from pycore import lettering, quantity
from pycore.accuracy import hand
from pycore.accuracy.agreement import coverage_factor, effective_freedom, verdict
from pycore.accuracy.instrument import Meter, computed, difference
from pycore.accuracy.single_errors import single_errors
from pycore.api import handle
from pycore.calculators.neutral_current.case import NeutralCase
from pycore.calculators.neutral_current.circuit import StarLoad, solve
from pycore.calculators.neutral_current.page import NeutralCurrent
from pycore.calculators.neutral_current.problem import read_problem
from pycore.calculators.neutral_current.verdict import NeutralVerdict
from pycore.constructions.moves import carry_out
from pycore.drawing import Text, walk
from pycore.forms.reading import pieces
from pycore.sheet.intervals import Interval, intervals, tick_values
from pycore.sheet.lettered import box_of
from pycore.sums.answer import BulletList, Paragraph, WorkingPicture
from pycore.words import plain
from pycore.words import verdict as words

NEUTRAL = NeutralCurrent()
SPACE = quantity.NO_BREAK_SPACE


def blocks(**form: str) -> list:
    """The blocks of the section about hand and meter."""
    answer = NEUTRAL.answer(form)
    assert [] == [fault.message for fault in answer.faults]
    (section,) = [working for working in answer.workings if working.key == "accuracy"]
    return list(section.blocks)


def said(**form: str) -> str:
    """Its sentences as plain text, ordinary spaces."""
    told: list[str] = []
    for block in blocks(**form):
        if isinstance(block, Paragraph):
            told.append(plain(block.phrase))
        elif isinstance(block, BulletList):
            told += [plain(item) for item in block.items]
    return "\n".join(told).replace(SPACE, " ")


def judged(**form: str) -> NeutralVerdict:
    case = NeutralCase(read_problem(form))
    return NeutralVerdict(case, case.sheet_plan())


def fault_of(field: str, **form: str) -> str:
    """The message of the one field that cannot be used; the answer stands."""
    (fault,) = NEUTRAL.answer(form).faults
    assert field == fault.field
    return fault.message


# Repeated readings.


@pytest.mark.parametrize(("typed", "read"), [
    ("10.2 10.4 10.3", [10.2, 10.4, 10.3]), ("10,2 10,4", [10.2, 10.4]), ("10.2; 10.4;10.3", [10.2, 10.4, 10.3]),
    ("10.2\n10.4\n", [10.2, 10.4]), ("850 860 855 mA", [0.85, 0.86, 0.855]), ("10.2 A 10.4A", [10.2, 10.4]),
    ("850 mA 0.86 A", [0.85, 0.86]), ("10.3", [10.3]), ("12 500", [12500.0]), ("99 101", [99.0, 101.0]),
    ("99 101; 100", [99.0, 101.0, 100.0]), ("0 0", [0.0, 0.0]), ("", []), ("1.02e1 10.4", [10.2, 10.4]),
])  # fmt: skip
def test_readings_as_they_are_typed_or_pasted(typed: str, read: list[float]):
    """One number stays one number; digits grouped in threes are readings only where both parts are alike."""
    assert read == pytest.approx(list(read_problem({"measured": typed}).readings))


def test_a_unit_after_the_last_reading_is_everyones():
    assert ["850mA", "860mA", "855mA"] == pieces("850 860 855 mA")
    assert ["10.2A", "10.4"] == pieces("10.2 A 10.4")


@pytest.mark.parametrize(("typed", "words_"), [
    ("10.2, 10.4", "more than one decimal mark"), ("10.2 x 10.4", "10.2 10.4 10.3"),
    ("10.2 104", "differ too much"),
    ("10.2 -10.4", "is negative"), ("10 11 V", "in volts"), ("10.2 " * 51, "51 readings"),
])  # fmt: skip
def test_readings_that_cannot_be_used_are_explained(typed: str, words_: str):
    assert words_ in fault_of("measured", measured=typed)


def test_the_mean_and_its_scatter_are_pythons_own():
    readings = [10.2, 10.4, 10.3, 10.35, 10.4]
    found = judged(measured="10.2 10.4 10.3 10.35 10.4")
    assert statistics.fmean(readings) == pytest.approx(found.entered.measured)
    assert statistics.stdev(readings) / math.sqrt(5) == pytest.approx(found.scatter)
    answer = NEUTRAL.answer({"measured": "10.2 10.4 10.3 10.35 10.4"})
    assert f"5 readings, mean 10.33{SPACE}A" == answer.echo["measured"]["said"]
    assert "5 readings, mean 10.33 A." in said(measured="10.2 10.4 10.3 10.35 10.4")


def test_the_scatter_of_the_mean_joins_the_meters_limit():
    """Type A and type B together, and never less than one alone."""
    once, often = judged(measured="10.3"), judged(measured="10.1 10.5 10.3 10.2 10.4")
    assert math.hypot(once.between(), often.scatter) == pytest.approx(often.between())


def test_one_reading_has_no_scatter_and_says_so():
    told = said(measured="11.4", wording="full")
    assert "One reading cannot show scatter" in told
    assert "scatter" not in said(measured="11.4")


def test_readings_all_alike_are_explained():
    assert "2 readings, all 11.40 A" in said(measured="11.4 11.4")
    assert "they agree" in said(measured="11.4 11.4")


@pytest.mark.parametrize(("form", "said_plainly"), [
    ({"measured": "11.0 11.6 11.3 11.2 11.4 11.5", "drawn": "58 mm"}, "With a careful drawing, a difference of up to"),
    ({"measured": "11.0 11.6 11.3", "drawn": "58 mm", "hand": "ordinary"}, "With an ordinary drawing, a difference of"),
])  # fmt: skip
def test_plain_wording_needs_no_statistics(form: dict[str, str], said_plainly: str):
    told = said(**form)
    for word in ("standard deviation", "standard uncertainty", "variance", "E_n"):
        assert word not in told
        assert word == "variance" or word in said(**form, wording="full")
    assert said_plainly in told and "too high or too low. The limit of the meter comes in addition." in told
    twice = {"practised": "1 mm, and 95 of 100 angles within 1°", "ordinary": "2 mm, and 95 of 100 angles within 2°"}
    assert f"95 of 100 lengths are right within {twice[form.get('hand', 'practised')]}." in told


def test_few_readings_widen_the_interval_and_it_is_said():
    told = said(measured="11.0 11.6 11.3", percent="0", digits="0", wording="full", meters="one")
    assert "With only 3 readings" in told
    assert "JCGM" in told


@pytest.mark.parametrize("freedom", [*range(1, 21), 25, 30, 35, 40, 50, 100])
def test_coverage_factors_are_students(freedom: int):
    """JCGM 100:2008, table G.2, for 95.45 %: against scipy."""
    assert stats.t.ppf(0.5 + 0.9545 / 2, freedom) == pytest.approx(coverage_factor(freedom), abs=0.006)


def test_effective_freedom_is_that_of_the_repeats_alone_when_nothing_else_counts():
    assert 4.0 == pytest.approx(effective_freedom(0.3, 0.3, 5))
    assert math.inf == effective_freedom(0.3, 0.0, 1)
    assert 2.0 == coverage_factor(math.inf)
    assert coverage_factor(0.4) == coverage_factor(1)


# What was drawn.


@pytest.mark.parametrize(("typed", "value", "heard"), [
    ("10.4 A", 10.4, "10.40 A, 52 mm on this sheet"), ("10.4", 10.4, "10.40 A, 52 mm on this sheet"),
    ("52 mm", 10.4, "52 mm at 1 cm = 2 A: 10.40 A"), ("5,2cm", 10.4, "52 mm at 1 cm = 2 A: 10.40 A"),
    ("0 mm", 0.0, "0 mm at 1 cm = 2 A: 0.00 A"), ("10400 mA", 10.4, "10.40 A, 52 mm on this sheet"),
])  # fmt: skip
def test_what_was_drawn_is_a_current_or_a_length_of_the_sheet(typed: str, value: float, heard: str):
    answer = NEUTRAL.answer({"drawn": typed, "scale": "2"})
    assert heard == answer.echo["drawn"]["said"].replace(SPACE, " ")
    assert value == pytest.approx(judged(drawn=typed, scale="2").results()[words.DRAWING].value)


@pytest.mark.parametrize("typed", ["x", "52 m", "-5 mm", "2001 mm", "10 V", "5 2 mm A", "1e9", "inf", "10.4 10.5"])
def test_a_drawn_value_that_cannot_be_used_is_explained_and_the_answer_stays(typed: str):
    message = fault_of("drawn", drawn=typed)
    assert message.startswith("Drawn value")
    assert "52 mm" in message or "from 0 mm to 2000 mm" in message or "Use 0 to" in message


def test_drawing_and_calculation_share_their_values():
    """Only the drawing's own error parts them: other meters change nothing."""
    first, other = judged(drawn="10.4", measured="11"), judged(drawn="10.4", measured="11", percent="10")
    assert first.pairs()[0].standard == other.pairs()[0].standard == first.case.scatter(first.plan).length
    assert first.pairs()[1].standard < other.pairs()[1].standard


def test_drawing_and_meter_differ_by_hand_and_readings():
    found = judged(drawn="10.4", measured="11")
    drawn, read, both = (pair.standard for pair in found.pairs())
    assert math.hypot(drawn, read) == pytest.approx(both)
    assert judged(drawn="10.4", measured="11", meters="one").pairs()[2].standard < both


def test_three_answers_are_judged_in_pairs_each_in_one_sentence_with_its_numbers():
    told = said(drawn="58 mm", measured="11.4", scale="2")
    assert "The drawing gives 11.60 A, the calculation 11.62 A. The difference is 0.02 A." in told
    assert "The meter gives 11.40 A, the calculation 11.62 A. The difference is 0.22 A." in told
    assert "The drawing gives 11.60 A, the meter 11.40 A. The difference is 0.20 A." in told
    assert 3 == told.count(": they agree.")


def test_full_wording_gives_each_pair_its_number():
    told = said(drawn="58 mm", measured="11.4", scale="2", wording="full")
    found = judged(drawn="58 mm", measured="11.4", scale="2")
    stated = [float(text) for text in re.findall(r"= (\S+) \(expanded uncertainty of the difference, factor 2\)", told)]
    exact = [verdict(one.first.value, one.second.value, one.standard, one.factor).number for one in found.pairs()]
    # From the printed numbers, of which the smallest is 0.02 A.
    assert stated == pytest.approx(exact, abs=0.01)
    assert "Both use the same line currents" in told


NUMBER = r"(\d+(?:[.,]\d+)?)"
COMPARED = re.compile(
    rf"gives {NUMBER} (\S+), the \w+ {NUMBER} \2\. The difference is {NUMBER} \2\..*?(?:at most|up to) {NUMBER} \2"
)
RATIO = re.compile(rf"{NUMBER} \S+ ÷ {NUMBER} \S+ = {NUMBER} \(")
HEAD = re.compile(
    rf"neutral: {NUMBER} (\S+)\. The calculation gives {NUMBER} \2\. The reading is {NUMBER} \2 \({NUMBER} %"
)


def places(text: str) -> int:
    return len(re.split("[.,]", text)[1]) if re.search("[.,]", text) else 0


def test_every_line_of_the_comparison_follows_from_the_printed_numbers():
    """Difference, agreement, E_n and share, recomputed from the digits on the page in decimal arithmetic."""
    draws, ratios, heads = numpy.random.default_rng(5), 0, 0
    for number in range(60):
        values = [f"{draws.uniform(1, 40):.{number % 3}f}" for _ in range(3)]
        form = dict(zip(("i1", "i2", "i3"), values, strict=True))
        exact = judged(**form).case.solution.current
        form |= {"measured": f"{exact * draws.uniform(0.8, 1.2):.{number % 4}f}", "wording": "full"}
        form |= {"drawn": f"{exact * draws.uniform(0.7, 1.3):.2f} A", "decimal": ("point", "comma")[number % 2]}
        told = said(**form)
        remarks = " ".join(plain(one) for one in NEUTRAL.answer(form, ("answer",)).remarks).replace(SPACE, " ")
        for first, _, second, apart, normal in COMPARED.findall(told):
            one, two, gap, most = (Decimal(text.replace(",", ".")) for text in (first, second, apart, normal))
            assert abs(one - two) == gap, told
        for line in told.splitlines():
            if match := COMPARED.search(line):
                gap, most = (Decimal(match[group].replace(",", ".")) for group in (4, 5))
                assert ("not" not in line.partition(match[5])[2]) is (gap <= most), line
        for apart, normal, number_text in RATIO.findall(told):
            gap, most, stated = (Decimal(text.replace(",", ".")) for text in (apart, normal, number_text))
            assert abs(gap / most - stated) <= Decimal(5) / 10 ** (places(number_text) + 1), told
            ratios += 1
        for reading, _, calculated, apart, share in HEAD.findall(remarks):
            read, right, gap, part = (Decimal(t.replace(",", ".")) for t in (reading, calculated, apart, share))
            assert abs(read - right) == gap, remarks
            assert abs(100 * gap / right - part) <= Decimal("0.05"), remarks
            heads += 1
    assert ratios > 100 and heads > 30


def test_the_trades_example_agrees_on_the_page():
    """4.1, 16.1, 8.1 A at 1 cm = 1 A: drawn 10.4 A, read 10.2 A against 10.58 A (common practice, no source)."""
    form = {"i1": "4.1", "i2": "16.1", "i3": "8.1", "scale": "1", "paper": "A3", "drawn": "104 mm", "digit": "0.01"}
    told = said(**form, measured="10.2", wording="full")
    assert "= 0.74 (" in told
    assert "do not agree" not in told


# Hands.


def test_a_hand_of_ones_own():
    own = judged(hand="own", drawn="10", **{"hand-mm": "1", "hand-degrees": "1"})
    ordinary = judged(hand="ordinary", drawn="10")
    assert ordinary.drawing == pytest.approx(own.drawing)
    told = said(hand="own", drawn="10", **{"hand-mm": "2", "hand-degrees": "3"})
    assert "a hand with standard deviations of 2 mm and 3°" in told
    unused = judged(drawn="10", **{"hand-mm": "nonsense", "hand-degrees": "99"})
    assert hand.PRACTISED == unused.case.hand


@pytest.mark.parametrize(("field", "typed"), [("hand-mm", "0"), ("hand-mm", "11"), ("hand-degrees", "x"),
                                              ("hand-degrees", "-1"), ("hand-mm", "0.5 A")])  # fmt: skip
def test_a_hand_out_of_range_is_said(field: str, typed: str):
    assert "from 0.05 to 10" in fault_of(field, hand="own", **{field: typed})


# Limits that say nothing, and nothing at all.


def test_a_meter_without_error_is_explained_not_divided_by():
    told = said(measured="11.4", percent="0", digits="0", wording="full")
    assert "With a limit of ± 0" in told
    assert "do not agree" in told


def test_a_tolerance_of_two_hundred_per_cent_is_refused_and_explained():
    assert "is not useful here" in fault_of("percent", measured="11.4", percent="200")


def test_a_display_coarser_than_the_value_is_explained():
    assert "One digit of this meter is 100 A and the reading is 11.40 A" in said(measured="11.4", digit="100")
    assert "The error of this meter can be 5.05 A" in said(measured="0.5", digits="50", digit="0.1", percent="10")


def test_a_reading_of_nothing_is_explained():
    assert "The meter shows 0" in said(measured="0")
    assert "The meter shows 0" not in said(measured="0", i1="10", i2="10", i3="10")


def test_a_balanced_load_is_as_uncertain_as_its_readings():
    """A sum of nothing has no derivative: against 40,000 sets of readings with numpy's errors."""
    load, meter = solve(StarLoad((10.0, 10.0, 10.0))), Meter(2.0, 5.0, 0.01)
    random = numpy.random.default_rng(4)
    sizes = 10.0 + meter.standard(10.0) * random.standard_normal((40_000, 3))
    sums = numpy.abs(sizes @ numpy.exp(1j * numpy.radians(load.angles)))
    found = computed(load.lines, load.angles, meter)
    assert float(numpy.quantile(sums, 0.95)) == pytest.approx(2 * found.standard, rel=0.03)
    assert difference(0.2, load.lines, load.angles, meter) > found.standard
    assert computed(load.lines, load.angles, meter, one_meter=True).standard < found.standard / 3
    assert "they agree" in said(i1="10", i2="10", i3="10", measured="0.2")


# Why.


@pytest.mark.parametrize(
    ("form", "mistake"),
    [
        ({"drawn": "5.8", "method": "tip-to-tail"}, "If the centimetres were read as A,"),
        ({"drawn": "16", "method": "tip-to-tail"}, "If I₃ was left out,"),
        ({"drawn": "22.3", "order": "13"}, "the drawing stops at the first diagonal, the sum of I₁ and I₃,"),
    ],
)
def test_a_drawn_value_that_disagrees_names_the_mistake_that_gives_it(form: dict[str, str], mistake: str):
    told = said(scale="2", **form)
    assert "First measure the drawn line again" in told
    assert mistake in told


def test_each_mistake_has_its_own_number_and_advice():
    """81 mm: I3 left out gives 16.1 A, I1 alone at another scale 15.7 A; the advice of one does not fit the other."""
    lines = [line for line in said(drawn="81 mm", hand="ordinary").splitlines() if line.startswith("If ")]
    assert len(lines) >= 3
    assert all(", or " not in line.partition("the drawing gives")[0] for line in lines)
    assert any(line.startswith("If I₃ was left out, the drawing gives 16.1 A. Count the arrows") for line in lines)
    (scaled,) = (line for line in lines if "If I₁ alone was drawn at another scale" in line)
    assert "the drawing gives 15.7 A. Draw every arrow at the same scale." in scaled


def test_no_mistake_is_named_that_does_not_fit():
    assert "No typical mistake gives this length." in said(drawn="7.1", scale="2", method="tip-to-tail")


@pytest.mark.parametrize("method", ["tip-to-tail", "parallelogram", "components"])
def test_single_slips_are_solved_for(method: str):
    """Made with the slip that is listed, the drawing gives just what was read; the one that was made is among them."""
    case = NeutralCase(read_problem({"method": method, "scale": "2"}))
    plan = case.sheet_plan()
    construction = plan.construction
    turn = next(i for i, move in enumerate(construction.moves) if type(move).__name__ == "TurnAngle")
    end = carry_out(construction.moves, {f"{turn}:angle": 7.0}).points[construction.end]
    read = math.hypot(end.x, end.y)
    found = single_errors(construction, plan.factor, hand.PRACTISED, read)
    assert any(slip.move == turn and slip.size == pytest.approx(7.0, rel=1e-6) for slip in found)
    for slip in found:
        size = slip.size / plan.factor if slip.kind.startswith("length") else slip.size
        end = carry_out(construction.moves, {f"{slip.move}:{slip.kind}": size}).points[construction.end]
        assert math.hypot(end.x, end.y) == pytest.approx(read, rel=1e-6)
    assert [slip.strain for slip in found] == sorted(slip.strain for slip in found)


def test_each_explanation_names_the_next_measurement():
    told = said(measured="13.5")
    for line in told.splitlines():
        if line.startswith(
            ("Another lag", "Third harmonic", "A line current was misread", "The neutral was read ")
        ):
            assert 1 == line.count("Next, ")
    assert 4 == told.count("Next, ")


@pytest.mark.parametrize(("measured", "side"), [("16.1", "4.48 A too high"), ("9.6", "2.02 A too low")])
def test_the_neutrals_own_misreading_is_said_with_its_side(measured: str, side: str):
    told = said(measured=measured, percent="0", digits="1", digit="0.01")
    assert f"The neutral was read {side}." in told and "too much" not in told and "too little" not in told


@pytest.mark.parametrize("form", [
    {"measured": "11.6181", "percent": "0", "digits": "1", "digit": "0.0001"},
    {"i1": "20", "i2": "20", "i3": "3", "measured": "17.004", "percent": "0", "digits": "1", "digit": "0.0001"},
])  # fmt: skip
def test_no_cause_has_a_size_of_zero_as_printed(form: dict[str, str]):
    told = said(**form)
    assert "Possible reasons in the reading" in told
    assert not re.search(r" 0° more|that is 0[.,]?0* A |read 0[.,]?0* A too", told)


def test_the_sizes_said_are_those_that_give_the_reading():
    """L1 leading 6° more, as the page says of 13.5 A, gives 13.5 A."""
    told = said(measured="13.5")
    lead = float(told.partition("L1 leading ")[2].partition("°")[0])
    load = solve(StarLoad((18.4, 11.2, 24.6), (-lead, 0.0, 0.0)))
    assert 13.5 == pytest.approx(load.current, abs=0.03)


# The picture.


def test_nothing_to_compare_is_said_without_a_picture():
    assert words.HINT in said()
    assert not [block for block in blocks() if isinstance(block, WorkingPicture)]


@pytest.mark.parametrize("form", [
    {"measured": "11.4"}, {"drawn": "58 mm"}, {"drawn": "58 mm", "measured": "11.4"}, {"drawn": "0", "measured": "0"},
    {"drawn": "99999", "measured": "0.001"}, {"measured": "11.4", "percent": "0", "digits": "0"},
    {"i1": "10", "i2": "10", "i3": "10", "drawn": "0"}, {"i1": "0.004", "i2": "0.002", "i3": "0.001", "drawn": "3 mA"},
    {"drawn": "58 mm", "measured": "11.4", "decimal": "comma", "hand": "ordinary"},
])  # fmt: skip
def test_labels_of_the_picture_never_collide(form: dict[str, str]):
    (picture,) = [block for block in blocks(**form) if isinstance(block, WorkingPicture)]
    texts = [item for item in walk(picture.page.items) if isinstance(item, Text)]
    boxes = [box_of(item, 3.4) for item in texts]
    for index, box in enumerate(boxes):
        assert box.left >= 0
        assert box.right <= picture.page.width
        assert box.bottom >= 0
        assert box.top <= picture.page.height
        for other in boxes[index + 1 :]:
            apart = box.right < other.left or other.right < box.left or box.top < other.bottom or other.top < box.bottom
            assert apart
    assert not lettering.missing("".join(item.plain for item in texts), "regular")
    if form.get("decimal") == "comma":
        assert not [item.plain for item in texts if "." in item.plain]


def test_the_pictures_values_stand_where_the_axis_says():
    rows = (Interval("a", 10.4, 0.6, "orange", "diamond"), Interval("b", 11.6, 0.0, "accent", "circle"))
    page = intervals(rows, "A", ".", "t", "d")
    axis = next(item for item in page.items if item.name == "axis")
    ticks = {float(item.plain): item.at.x for item in axis.items if isinstance(item, Text) and item.plain != "A"}
    (low, left), (high, right) = min(ticks.items()), max(ticks.items())
    bar = next(item for item in walk(page.items) if getattr(item, "width", 0) == 0.9)
    for x, value in ((bar.start.x, 9.8), (bar.end.x, 11.0)):
        assert low + (high - low) * (x - left) / (right - left) == pytest.approx(value, abs=1e-9)


@pytest.mark.parametrize(("low", "high"), [(9.8, 12.2), (0.0, 1.0), (-3.0, 1e5), (0.00301, 0.00309), (11.6, 11.61)])
def test_ticks_are_round_and_few(low: float, high: float):
    values, decimals = tick_values(low, high)
    assert 2 <= len(values) <= 7
    assert all(low <= value <= high * (1 + 1e-12) for value in values)
    for value in values:
        assert float(quantity.fixed(value, decimals).replace("−", "-")) == pytest.approx(value, abs=1e-12)


def test_the_picture_is_told_to_those_who_do_not_see_it():
    (picture,) = [block for block in blocks(drawn="58 mm", measured="11.4") if isinstance(block, WorkingPicture)]
    assert "Drawn 11.60" in picture.page.description
    assert "Measured 11.40" in picture.page.description


def test_lengths_follow_the_scale_that_the_sheet_chose():
    one, two = (judged(drawn="52 mm", scale=scale).results()[words.DRAWING].value for scale in ("2", "4"))
    assert two == pytest.approx(2 * one)


@pytest.mark.parametrize(("measured", "agrees"), [("11.6", True), ("17.9", False), ("17.8 17.9 18.1", False)])
def test_the_head_of_the_page_says_whether_a_reading_agrees_and_points_to_the_comparison(measured: str, agrees: bool):
    """Beside the headline, with a button to the comparison or, if the reading disagrees, to the possible reasons."""
    form = {"i1": "18.4", "i2": "11.2", "i3": "24.6", "measured": measured}
    request = {"do": "answer", "page": "neutral-current", "form": form, "parts": ["answer", "workings"]}
    regions = json.loads(handle(json.dumps(request))[0])["regions"]
    assert agrees is ("they agree" in regions["notes"])
    assert agrees is not ("they do not agree" in regions["notes"])
    assert 'data-to-working="accuracy"' in regions["notes"]
    assert (words.SEE_COMPARISON if agrees else words.SEE_WHY) in regions["notes"]
    assert 'data-working="accuracy"' in regions["workings"]
    assert agrees is not ("<strong>they do not agree" in regions["workings"])


def test_without_a_reading_the_head_of_the_page_says_nothing_of_agreement():
    request = {"do": "answer", "page": "neutral-current", "form": {}, "parts": ["answer"]}
    assert "data-to-working" not in json.loads(handle(json.dumps(request))[0])["regions"]["notes"]
