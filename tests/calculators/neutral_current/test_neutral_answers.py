"""What the neutral-current page says: no value rounded that was typed, no sentence that misleads."""

import json
import math

import pytest

from pycore import api
from pycore.calculators.neutral_current.fields import FIELDS
from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Arrow, Group, Text, walk
from pycore.errors import InputError
from pycore.forms import links
from pycore.sums.answer import BulletList, Grid, Move, Paragraph
from pycore.words import plain

NEUTRAL = CALCULATORS["neutral-current"]


def answer(**form: str):
    """The answer to a form, all parts."""
    return NEUTRAL.answer(form)


def said(**form: str) -> str:
    """All remarks and notices of an answer."""
    made = answer(**form)
    return " ".join(plain(phrase) for phrase in (*made.remarks, *made.notices))


def working(key: str, **form: str) -> str:
    """Every word of one working."""
    blocks = next(working for working in answer(**form).workings if working.key == key).blocks
    told = [plain(block.phrase) for block in blocks if isinstance(block, (Move, Paragraph))]
    told += [plain(item) for block in blocks if isinstance(block, BulletList) for item in block.items]
    told += [plain(cell) for block in blocks if isinstance(block, Grid) for row in block.rows for cell in row]
    return " ".join(told)


@pytest.mark.parametrize(("typed", "degrees"), [
    ("25", 25.0), ("-10", -10.0), ("lead 30", -30.0), ("30 lag", 30.0), ("30° lead", -30.0), ("lag 0.5", 60.0),
    ("0.5 lead", -60.0), ("pf 0.5 lagging", 60.0), ("1", 1.0), ("1 lag", 0.0), ("", 0.0), ("0,5 lag", 60.0),
])  # fmt: skip
def test_a_lag_is_read_wherever_its_side_stands(typed: str, degrees: float):
    outputs = {output.name: output.value for output in answer(i1="10", i2="0", i3="0", a1=typed).outputs}
    assert outputs["neutral-angle"] == pytest.approx(-degrees, abs=1e-12)


@pytest.mark.parametrize("typed", [
    "1.2 lag", "0.9 lag lead", "pf 0.9", "-0.9 lag", "lag", "30 sideways", "200", "pf 30°",
])  # fmt: skip
def test_a_lag_that_could_mean_two_things_is_refused(typed: str):
    with pytest.raises(InputError) as refusal:
        answer(a2=typed)
    assert ["a2"] == [fault.field for fault in refusal.value.faults]


def test_a_bare_number_below_one_is_read_as_degrees_until_it_is_said_which():
    (asked,) = answer(a3="0.85").faults
    assert asked.question and asked.field == "a3"
    assert asked.message.endswith("is 0.85 a power factor, or 0.85°? Until you choose, 0.85° is used.")


def test_what_was_typed_is_not_rounded_in_the_workings():
    told = working("components", i1="101.6", i2="98.35", i3="97.9")
    assert all(figure in told for figure in ("101.6", "98.35", "97.9"))


def test_headline_step_table_and_working_write_the_neutral_alike():
    form = {"i1": "10.05", "i2": "10", "i3": "10.02"}
    made = answer(**form)
    assert "0.044" == made.outputs[0].text
    assert "0.044\u00a0A" in working("tip-to-tail-12", **form)


def test_the_meter_is_repeated_as_typed_and_compared_to_its_own_digits():
    assert "11.58\u00a0A. The calculation" in said(measured="11.58")
    assert "11.6\u00a0A, the same" in said(measured="11.6")
    assert "12\u00a0A, the same" in said(measured="12")


def test_the_lag_of_a_line_without_current_does_not_count():
    told = said(i1="10", i2="8", i3="0", a3="30")
    assert "equal power factor" in told
    assert "differ" not in told


def test_a_sum_on_an_axis_has_no_quarter_made_of_rounding():
    told = working("components", i1="10", i2="8", i3="8", a1="25.3", a2="25.3", a3="25.3")
    assert "points to the left" not in told
    assert "points straight up" in told


def test_exactly_a_right_angle_is_neither_more_nor_less():
    assert "exactly a right angle" in " ".join(
        plain(block.why) for block in answer(a2="-30").workings[0].blocks if isinstance(block, Move)
    )


def test_a_phasor_too_short_for_an_arrow_is_marked_as_a_dot():
    told = working("tip-to-tail-12", i1="1000", i2="0.5", i3="400")
    assert "Mark I₂ as a dot" in told
    assert "draw 0" not in told


def test_nearly_one_line_is_said_as_such_and_the_diagonal_ends_there():
    told = working("parallelogram-12", a2="-119")
    assert "on one line, or almost. Use tip to tail" in told
    assert "From the common point to the end of the line just drawn" in told
    assert "The diagonal and" not in told


def test_the_returning_current_is_measured_where_it_is_drawn():
    told = working("tip-to-tail-12", resultant="returning")
    assert "Measure −I_N" in told
    assert "92.5° clockwise" in told


def test_an_emptied_place_stays_empty_in_a_link():
    reply = json.loads(api.handle(json.dumps({"do": "share", "page": "neutral-current", "form": {"place": ""}}))[0])
    opened = links.open_fragment(reply["link"].partition("#")[2], FIELDS)
    assert "" == opened.form["place"]


def test_a_link_that_names_some_currents_does_not_borrow_the_others_from_the_example():
    opened = links.open_fragment("#v=1&i1=5", FIELDS)
    assert ("5", "", "") == tuple(opened.form[name] for name in ("i1", "i2", "i3"))
    assert "18.4" == links.open_fragment("#v=1&method=tip-to-tail", FIELDS).form["i1"]


def test_a_printed_link_names_what_was_chosen_to_fit():
    link = dict(answer().link)
    assert {"v", "i1", "i2", "i3", "method", "order", "paper", "orientation", "scale"} == set(link)


def test_names_and_dates_never_enter_a_link():
    made = answer(who="Ann", group="E2", date="1 May")
    assert not {"who", "group", "date"} & dict(made.link).keys()
    assert "" == links.open_fragment("#v=1&who=Ann", FIELDS).form["who"]


@pytest.mark.parametrize("orientation", ["landscape", "portrait", ""])
def test_a_scale_that_does_not_fit_leaves_the_answer_and_offers_what_does(orientation: str):
    """A link for a class fixes its scale; another current typed there must not take the answer away."""
    form = {"scale": "1", "orientation": orientation}
    made = answer(**form)
    (fault,) = made.faults
    assert "scale" == fault.field
    assert made.outputs[0].value == pytest.approx(11.6155068766)
    assert len(fault.offers) >= 1
    assert [()] * len(fault.offers) == [answer(**form | dict(offer.values)).faults for offer in fault.offers]


def test_a_fault_of_ours_is_a_reply_and_no_exception(monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setitem(api._ANSWERS, "answer", lambda request: 1 / 0)
    reply = json.loads(api.handle('{"do": "answer"}')[0])
    assert not reply["ok"]
    assert "ZeroDivisionError" in reply["announce"]


def test_the_examples_place_is_not_printed_over_other_values():
    assert "Community hall" in answer().scenario
    assert "" == answer(i1="5").scenario
    places = [[text.plain for text in walk(answer(**form).sheet.items) if isinstance(text, Text)]
              for form in ({}, {"i1": "5"}, {"i1": "5", "place": "Workshop"})]  # fmt: skip
    assert [True, False, False] == ["Community hall, three heating banks in star" in place for place in places]
    assert "Workshop" in places[2]


def test_labels_and_messages_follow_the_line_names():
    with pytest.raises(InputError) as refusal:
        answer(names="RYB", i2="x")
    assert refusal.value.faults[0].message.startswith("Y is not a number")
    assert "R and Y" == NEUTRAL.options({"names": "RYB"})["order"]["12"]


def test_signs_the_lettering_lacks_leave_the_name_blank_and_say_so():
    made = answer(who="李")
    assert [("who", "李")] == [(fault.field, fault.typed) for fault in made.faults]
    assert made.faults[0].message.startswith("Name: there is no font here for one of its letters")


def test_beginners_meet_no_vocabulary_of_uncertainty():
    """Plain words say whether hand and meter agree; E_n, expanded uncertainty and variance are asked for."""
    plainly = working("accuracy", measured="13.5")
    fully = working("accuracy", measured="13.5", wording="full")
    for word in ("uncertainty", "E_n", "variance", "ISO 13528"):
        assert word not in plainly
    assert "they do not agree" in plainly
    assert "E_n" in fully
    assert "Third harmonic" in fully


def test_a_reading_within_what_meters_can_do_agrees():
    assert "they agree" in working("accuracy", measured="11.4")
    assert "they do not agree" in working("accuracy", measured="11.4", percent="0", digits="1")


@pytest.mark.parametrize("names", ["L123", "RYB"])
@pytest.mark.parametrize("first", ["up", "right"])
@pytest.mark.parametrize("rotation", ["anticlockwise", "clockwise"])
@pytest.mark.parametrize("angles", ["polar", "protractor"])
def test_components_say_where_the_answer_counts_the_other_way(first: str, rotation: str, angles: str, names: str):
    """The table measures clockwise from straight up, or anticlockwise from the right; polar angles have one sense."""
    told = working("components", first=first, rotation=rotation, angles=angles, names=names)
    table = "clockwise" if "Angles are measured clockwise" in told else "anticlockwise"
    sentence = f"In the answer, {rotation} is positive."
    assert (sentence in told) is (angles == "polar" and rotation != table)


def test_flat_crossings_are_said_and_marked():
    made = answer(order="13")
    assert "cross at only 14°" in " ".join(plain(phrase) for phrase in made.notices)
    assert "L1 with L3 first * 1." in working("accuracy")
    assert "800 simulated drawings" in working("accuracy")
    assert "simulated" not in working("accuracy", i1="20", i2="20", i3="3")


def test_the_overlay_bears_the_ellipse_in_which_careful_drawings_end():
    groups = [group for group in walk(answer(sheet="overlay").sheet.items)
              if isinstance(group, Group) and group.name == "tolerance"]  # fmt: skip
    (ellipse,) = groups
    assert 72 == len(ellipse.items[0].points)
    tolerance = next(output.value for output in answer().outputs if output.name == "tolerance")
    centre = [sum(place[axis] for place in ellipse.items[0].points) / 72 for axis in (0, 1)]
    drawn = [one for one in walk(answer(sheet="overlay").sheet.items) if isinstance(one, Group) and one.phasor == "sum"]
    arrow = next(one for one in drawn[0].items if isinstance(one, Arrow))
    assert centre == pytest.approx(list(arrow.tip), abs=1e-9)
    reach = max(math.dist(place, centre) for place in ellipse.items[0].points)
    assert reach > 2.448 / 1.96 * tolerance * 5 * 0.5


@pytest.mark.parametrize(("field", "typed"), [("percent", "200"), ("percent", "x"), ("digits", "-1"), ("digit", "0")])
def test_a_meters_limit_that_cannot_be_used_is_said_and_the_answer_stays(field: str, typed: str):
    made = answer(measured="11.4", **{field: typed})
    assert [field] == [fault.field for fault in made.faults]
    assert ("Use 1\u00a0nA to 1\u00a0kA" if field == "digit" else "Enter a number from 0 to") in made.faults[0].message


@pytest.mark.parametrize(("typed", "expected"), [
    ("12.0", "12.0 A. The calculation gives 10.44 A. The reading is 1.56 A"),
    ("12", "12 A. The calculation gives 10.44 A."),
    ("12.00", "12.00 A. The calculation gives 10.44 A."),
])  # fmt: skip
def test_a_reading_is_repeated_with_its_decimals(typed: str, expected: str):
    form = {"i1": "16", "i2": "9", "i3": "21", "measured": typed}
    remarks = [plain(line) for line in CALCULATORS["neutral-current"].answer(form, ()).remarks]
    assert expected in " ".join(remarks).replace("\u00a0", " ")
