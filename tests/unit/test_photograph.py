"""A drawing measured and judged from points in a photograph: true ones pass, each usual slip is named where it is."""

import itertools
import json
import math
from collections.abc import Mapping

import numpy as np
import pytest
from calculators.neutral_current.forms import forms
from photographs import camera, conditions
from unit.sheets import DEFAULT, NEUTRAL

from pycore import api, geometry
from pycore.calculators.registry import CALCULATORS
from pycore.forms.fields import default_form
from pycore.geometry import Point
from pycore.practice import photograph
from pycore.practice.drawn import first_direction, points_to_find
from pycore.practice.photograph import Photo, PhotoJudgement, PhotoUnusableError
from pycore.projection import Projection
from pycore.sums.photograph import PhotoTask, photo_task
from pycore.words import plain

SIZE = (2000, 1500)
PHOTO = Photo(*SIZE, 1.2)
TO_TAIL = {"method": "tip-to-tail"}


def want(**choices: str) -> PhotoTask:
    """What the example asks to be drawn, with other choices."""
    return photo_task(NEUTRAL, {**DEFAULT, **choices})


def points(one: PhotoTask) -> dict[str, Point]:
    """The points of the right drawing on its sheet, mm."""
    drawing = one.drawing
    figure = drawing.construction.figure
    made, guide = {}, first_direction(drawing.construction)
    longest = max(arm.size for arm in drawing.construction.arms)
    for name in points_to_find(drawing.construction):
        # Of an axis and the mark on it, which bear one name, the axis is meant.
        at = Point(0.0, 0.0).moved(longest, figure.lines[name].degrees) if name == guide else figure.points[name]
        made[name] = one.origin.plus(drawing.picture.place(at, drawing.factor))
    return made


def from_above(one: PhotoTask) -> Projection:
    """A photograph from straight above, without errors."""
    seen = [flat(place) for place in one.marks]
    return photograph.measured_by(PHOTO, one.marks, seen, by_hand=False)


def flat(place: Point) -> Point:
    """Where that photograph shows a point."""
    return Point(100.0 + 5.0 * place.x, 1300.0 - 5.0 * place.y)


def judged(one: PhotoTask, drawn: Mapping[str, Point], *, sheet: bool = True) -> PhotoJudgement:
    """The judgement of a drawing with these points (mm)."""
    taps = {name: flat(place) for name, place in drawn.items()}
    return photograph.measure(one.drawing, from_above(one), PHOTO, taps, sheet=sheet)


def wrong_lines(measured: PhotoJudgement) -> dict[str, list[str]]:
    """The slips that are named, by the line (its ends) that is not accepted."""
    return {"-".join(line.ends): [slip.key for slip in line.slips] for line in measured.lines if line.band != "accept"}


def followed(drawn: dict[str, Point]) -> dict[str, Point]:
    """The corners of both parallelograms by the arrows as they are drawn."""
    start = drawn["O"]
    drawn["R"] = drawn["T1"].plus(drawn["T2"]).minus(start)
    drawn["N"] = drawn["R"].plus(drawn["T3"]).minus(start)
    return drawn


@pytest.mark.parametrize("choices", [
    {}, TO_TAIL, {"method": "components"}, {"parallels": "set-squares"}, {"parallels": "compasses"},
    {"reference": "voltage", "a1": "25", "a2": "-10"}, {"rotation": "clockwise", "first": "right"},
    {"sequence": "132", "order": "23"}, {"resultant": "returning"}, {"i2": "0"}, {"a1": "120"},
], ids=str)  # fmt: skip
def test_the_right_drawing_is_right_in_every_line(choices: dict[str, str]):
    one = want(**choices)
    measured = judged(one, points(one))
    assert {} == wrong_lines(measured)
    assert len(measured.lines) >= 2
    for line in measured.lines:
        assert line.expected == pytest.approx(line.length, abs=1e-6)
        assert 0.0 == pytest.approx(line.off, abs=1e-6)
    assert 0.0 == pytest.approx(measured.result_off, abs=1e-6)


@pytest.mark.parametrize("slug", list(CALCULATORS))
def test_the_right_drawing_of_every_page_is_right_and_every_point_has_a_name(slug: str):
    """With what goes along at a scale of its own, such as the current beside voltages, left aside."""
    page = CALCULATORS[slug]
    form = default_form(page.fields)
    methods = next(field for field in page.fields if field.name == "method").options
    for method in [choice.value for choice in methods]:
        one = photo_task(page, {**form, "method": method})
        measured = judged(one, points(one))
        assert measured.lines
        assert {} == wrong_lines(measured), method
        reply = json.loads(api.handle(json.dumps({"do": "photo", "page": slug, "form": {**form, "method": method}}))[0])
        assert list(points_to_find(one.drawing.construction)) == [tap["name"] for tap in reply["taps"]]
        assert all(len(tap["label"]) > 8 for tap in reply["taps"])


@pytest.mark.parametrize("slug", list(CALCULATORS))
def test_a_drawing_is_judged_by_the_very_hand_that_marking_allows_for(slug: str):
    """The hand of a page's form, one of its own where the page offers it; and where lines cross flat, by sampling."""
    page = CALCULATORS[slug]
    hands = next(field for field in page.fields if field.name == "hand").options
    assert ("own" in [choice.value for choice in hands]) == (page.slug == NEUTRAL.slug)
    for hand in [choice.value for choice in hands]:
        form = default_form(page.fields) | {"hand": hand, "hand-mm": "1", "hand-degrees": "1"}
        one, case = photo_task(page, form), page.case(form)
        assert case.hand == one.drawing.hand
        assert one.drawing.factor * case.scatter(case.sheet_plan()).half_width == one.drawing.allowed
        assert page.task(form).hand_angle == case.hand.angle


@pytest.mark.parametrize("form", [
    {"i1": "20", "i2": "19.5", "i3": "0.5", "a1": "0", "a2": "-115", "method": "parallelogram", "order": "12"},
], ids=str)  # fmt: skip
def test_where_lines_cross_flat_a_photograph_allows_what_marking_allows(form: dict[str, str]):
    whole = {**DEFAULT, **form}
    case = NEUTRAL.case(whole)
    plan = case.sheet_plan()
    assert case.spread(plan).flat and case.spread(plan).half_width != case.scatter(plan).half_width
    one = photo_task(NEUTRAL, whole)
    assert one.drawing.factor * case.scatter(plan).half_width == one.drawing.allowed


@pytest.mark.parametrize("z3", ["80", "", "30 + j40"])
def test_a_star_point_found_by_crossing_lines_or_by_a_mark_is_judged(z3: str):
    """The right one is right; one that is 6 mm away is not."""
    page = CALCULATORS["open-neutral"]
    one = photo_task(page, {**default_form(page.fields), "z3": z3})
    assert "N" in points_to_find(one.drawing.construction)
    right = points(one)
    assert {} == wrong_lines(judged(one, right))
    moved = {**right, "N": Point(right["N"].x + 6.0, right["N"].y)}
    assert "O-N" in wrong_lines(judged(one, moved))


def test_the_right_drawing_of_random_problems_is_right():
    """All methods, sequences, names and pictures; the points are asked for in the order of drawing."""
    kinds = set()
    for form in forms(60):
        one = photo_task(NEUTRAL, form)
        names = points_to_find(one.drawing.construction)
        assert "O" == names[0]
        if len(names) < 3 or min(arm.size * one.drawing.factor for arm in one.drawing.construction.arms) < 2.0:
            continue
        kinds.add(one.drawing.construction.method)
        assert {} == wrong_lines(judged(one, points(one)))
    assert {"parallelogram", "tip-to-tail", "components"} == kinds


def turned(drawn: dict[str, Point], name: str, start: str, degrees: float, longer: float = 0.0) -> None:
    """Turn an arrow about its start, and make it longer (mm)."""
    begin, tip = drawn[start], drawn[name]
    length = geometry.distance(begin, tip) + longer
    drawn[name] = begin.moved(length, geometry.direction(begin, tip) + degrees)


@pytest.mark.parametrize(("degrees", "key"), [(60.0, "other-scale"), (-120.0, "wrong-way"), (180.0, "reversed"),
                                              (-10.0, "tens"), (10.0, "tens-less")])  # fmt: skip
def test_a_slip_at_the_protractor_is_named_on_its_line_and_nowhere_else(degrees: float, key: str):
    """I₂ lies clockwise of I₁ on the paper: turned back by 60 degrees it reads 60 in place of 120. The lines after
    it follow from it, and are right."""
    one = want()
    drawn = points(one)
    turned(drawn, "T2", "O", degrees)
    assert {"O-T2": [key]} == wrong_lines(judged(one, followed(drawn)))


def test_who_sets_off_the_told_angle_beside_a_wrong_arrow_has_followed_the_steps_too():
    """The protractor's 60 degrees at both tips, beside an arrow 6 degrees off: no parallels, yet no new slip."""
    one = want()
    drawn = points(one)
    turned(drawn, "T2", "O", 6.0)
    start = drawn["O"]
    from_first = geometry.Ray(drawn["T1"], geometry.direction(start, drawn["T1"]) - 120.0)
    from_second = geometry.Ray(drawn["T2"], geometry.direction(start, drawn["T2"]) + 120.0)
    meet = geometry.intersection(from_first, from_second)
    assert meet is not None
    drawn["R"] = meet
    drawn["N"] = drawn["R"].plus(drawn["T3"]).minus(start)
    assert {"O-T2"} == set(wrong_lines(judged(one, drawn)))


@pytest.mark.parametrize(("longer", "key"), [(10.0, "centimetre-long"), (-10.0, "centimetre-short"),
                                             (36.0, "length-of-other"), (56.0, "scale-ignored")])  # fmt: skip
def test_a_slip_at_the_ruler_is_named_on_its_line(longer: float, key: str):
    """I₂ is 56 mm; I₁ is 92 mm; one centimetre for each ampere would be 112 mm."""
    one = want()
    drawn = points(one)
    turned(drawn, "T2", "O", 0.0, longer)
    assert {"O-T2": [key]} == wrong_lines(judged(one, followed(drawn)))


def test_a_line_begun_at_the_start_in_place_of_the_last_tip_is_named():
    one = want(**TO_TAIL)
    drawn = points(one)
    step = drawn["P2"].minus(drawn["P1"])
    third = drawn["N"].minus(drawn["P2"])
    drawn["P2"] = drawn["O"].plus(step)
    drawn["N"] = drawn["P2"].plus(third)
    assert ["start"] == wrong_lines(judged(one, drawn))["P1-P2"]


@pytest.mark.parametrize(("degrees", "key"), [(60.0, "other-scale-at-tip"), (-60.0, "other-scale-at-tip")])
def test_a_wrong_turn_at_a_tip_drags_the_later_lines_along_and_is_named_once(degrees: float, key: str):
    one = want(**TO_TAIL)
    drawn = points(one)
    about, third = drawn["P2"], geometry.distance(drawn["P2"], drawn["N"])
    before = geometry.direction(drawn["P1"], about)
    turned(drawn, "P2", "P1", degrees)
    way = geometry.direction(about, drawn["N"]) - before + geometry.direction(drawn["P1"], drawn["P2"])
    drawn["N"] = drawn["P2"].moved(third, way)
    found = wrong_lines(judged(one, drawn))
    assert {"P1-P2"} == set(found)
    assert [key] == found["P1-P2"] or degrees < 0


def test_a_slip_at_a_dashed_line_is_named():
    """At the tip of I₁ the protractor set to 70 in place of 60 degrees; the other dashed line is right."""
    one = want()
    drawn = points(one)
    start, first, second = drawn["O"], drawn["T1"], drawn["T2"]
    along = geometry.direction(start, second)
    slanting = geometry.Ray(first, along + 10.0)
    meet = geometry.intersection(slanting, geometry.Ray(second, geometry.direction(start, first)))
    assert meet is not None
    drawn["R"] = meet
    drawn["N"] = drawn["R"].plus(drawn["T3"]).minus(start)
    found = wrong_lines(judged(one, drawn))
    assert found["T1-R"][0] in ("tens", "tens-less")
    assert "R-N" not in found


def test_a_whole_drawing_that_is_turned_is_told_on_its_first_line_alone():
    one = want()
    middle = points(one)["O"]
    drawn = {
        name: middle.moved(geometry.distance(middle, place), geometry.direction(middle, place) + 90.0)
        for name, place in points(one).items()
    }
    assert {"O-T1": ["first-way"]} == wrong_lines(judged(one, drawn))
    assert {} == wrong_lines(judged(one, drawn, sheet=False))


@pytest.mark.parametrize("share", [1.03, 0.96])
def test_a_sheet_of_another_size_is_seen_as_that(share: float):
    one = want()
    middle = points(one)["O"]
    drawn = {name: middle.plus(place.minus(middle).times(share)) for name, place in points(one).items()}
    measured = judged(one, drawn)
    assert share - 1.0 == pytest.approx(measured.longer, abs=1e-6)
    assert 0.0 == measured.shifted


def test_a_ruler_laid_on_by_its_edge_is_seen_as_that():
    one = want()
    drawn = points(one)
    for name in ("T1", "T2", "T3"):
        turned(drawn, name, "O", 0.0, -4.0)
    measured = judged(one, followed(drawn))
    assert (-4.0, 0.0) == pytest.approx((measured.shifted, measured.longer), abs=1e-6)


def test_a_slip_is_never_named_where_two_thirds_of_it_are_missing():
    """An arrow 5 degrees off, a length 5 mm off: off, and by no usual slip."""
    one = want()
    drawn = points(one)
    turned(drawn, "T3", "O", 5.0, 5.0)
    assert {"O-T3": []} == wrong_lines(judged(one, followed(drawn)))


def hand_drawn(one: PhotoTask, random: np.random.Generator) -> dict[str, Point]:
    """The example as a practised hand draws it, tip to tail: each length and angle off by normal errors."""
    right = points(one)
    names = list(right)
    drawn = {names[0]: right[names[0]]}
    turn = 0.0
    for before, name in itertools.pairwise(names):
        turn += random.normal(0, one.drawing.hand.angle) if before != "O" else 0.0
        length = geometry.distance(right[before], right[name]) + random.normal(0, one.drawing.hand.length)
        drawn[name] = drawn[before].moved(length, geometry.direction(right[before], right[name]) + turn)
    return drawn


def test_an_honest_hand_is_accepted_and_never_called_wrong():
    """Of 900 lines 95 in 100 are accepted; one in a thousand at most is called wrong."""
    one, random = want(**TO_TAIL), np.random.default_rng(3)
    bands = [line.band for _ in range(300) for line in judged(one, hand_drawn(one, random)).lines]
    assert 900 == len(bands)
    # Two limits of 95 % on each line, less what pencil and photo add.
    assert bands.count("accept") >= 0.90 * len(bands)
    assert bands.count("wrong") <= 0.001 * len(bands)


def test_lengths_are_within_half_a_millimetre_and_angles_within_half_a_degree_on_a4():
    """Photographs up to 40 degrees aslant, through bending lenses, marks off by 0.4 of 2,000 pixels, taps true."""
    lengths, angles = [], []
    for seed in range(150):
        how, random = conditions(seed), np.random.default_rng(seed)
        way = ("landscape", "portrait")[seed % 4 // 2]
        one = want(method=("parallelogram", "tip-to-tail")[seed % 2], orientation=way)
        paper = (297.0, 210.0) if way == "landscape" else (210.0, 297.0)
        by = camera(SIZE, paper, how.tilt, how.lie, how.roll, how.bend)
        seen = [Point(*(np.array(by.seen(*place)) + random.normal(0, 0.4, 2))) for place in one.marks]
        found = photograph.measured_by(PHOTO, one.marks, seen, by_hand=False)
        taps = {name: Point(*by.seen(*place)) for name, place in points(one).items()}
        for line in photograph.measure(one.drawing, found, PHOTO, taps, sheet=True).lines:
            lengths.append(math.fabs(line.length - line.expected))
            angles.append(math.fabs(line.off))
    assert float(np.quantile(lengths, 0.95)) <= 0.5
    assert float(np.quantile(angles, 0.95)) <= 0.5


def test_the_true_drawing_is_laid_on_the_learners_start_and_first_direction():
    one = want()
    drawn = points(one)
    right = {name: place.plus(Point(3.0, -2.0)) for name, place in drawn.items()}
    shown = judged(one, right)
    ends = {path.phasor: path.points[-1] for path in shown.overlay if path.phasor}
    for name, key in (("T1", "i1"), ("T2", "i2"), ("T3", "i3"), ("N", "sum")):
        assert tuple(flat(right[name])) == pytest.approx(tuple(ends[key]), abs=1e-6)
    assert {"given", "parallel", "partial", "resultant"} == {path.role for path in shown.overlay}


# What cannot be measured.


def refusal(seen: list[Point | None]) -> tuple[str, tuple[int, ...]]:
    """Why marks are refused, and which are at fault."""
    one = want()
    with pytest.raises(PhotoUnusableError) as caught:
        photograph.measured_by(PHOTO, one.marks, seen, by_hand=True)
    return caught.value.reason, caught.value.marks


def test_marks_that_fix_no_sheet_are_refused_with_the_marks_at_fault():
    one = want()
    seen: list[Point | None] = [flat(place) for place in one.marks]
    assert ("few", ()) == refusal([*seen[:3], *[None] * 5])
    assert ("line", (0, 1, 2)) == refusal([*seen[:4], *[None] * 4])
    mirrored = [Point(2000.0 - place.x, place.y) for place in seen if place]
    assert "mirrored" == refusal(list(mirrored))[0]
    off = [*seen[:4], Point(seen[4].x + 60.0, seen[4].y - 40.0), *seen[5:]]  # type: ignore[union-attr]
    assert ("poor", (4,)) == refusal(off)


def test_a_start_on_the_first_tip_is_refused():
    one = want()
    drawn = points(one)
    drawn["T1"] = drawn["O"]
    with pytest.raises(PhotoUnusableError) as caught:
        judged(one, drawn)
    assert ("same", {"point": "T1"}) == (caught.value.reason, caught.value.values)


# The request.


def ask(**more: object) -> dict:
    """The api's reply to a request ``photo``."""
    request = {"do": "photo", "page": "neutral-current", "form": dict(DEFAULT), **more}
    return json.loads(api.handle(json.dumps(request))[0])


def sent(**more: object) -> dict:
    """The same with marks as they are seen from above."""
    marks = [list(flat(place)) for place in want().marks]
    photo = {"width": 2000, "height": 1500, "tap": 1.5}
    return ask(**{"photo": photo, "marks": marks, "ground": "marks", "byHand": False, **more})


def test_the_request_opens_the_panel_and_says_what_is_to_be_shown():
    reply = ask()
    assert reply["ok"]
    assert ["O", "T1", "T2", "R", "T3", "N"] == [tap["name"] for tap in reply["taps"]]
    assert "the tip of I₁" == reply["taps"][1]["label"]
    assert 8 == len(reply["marks"])
    # Four corners and one more, which tells the marks of today from those of before.
    assert [0, 2, 3, 4, 6] == [number for number, mark in enumerate(reply["marks"]) if mark["hand"]]
    assert 8 == len(reply["older"])
    assert [mark["name"] for mark in reply["marks"]] == [mark["name"] for mark in reply["older"]]
    assert "data-photo-file" in reply["regions"]["photo"]


def test_the_reply_names_line_and_mistake_and_tells_nothing_before_all_points_are_shown():
    one = want()
    drawn = points(one)
    turned(drawn, "T2", "O", 60.0)
    taps = {name: list(flat(place)) for name, place in followed(drawn).items()}
    reply = sent(taps=taps)
    assert reply["ok"]
    assert "One line is wrong." in reply["announce"]
    assert "I₂ was drawn with the wrong scale of the protractor" in reply["announce"]
    assert "I₂" in plain(one.drawing.tags["i2"])
    assert 'data-photo-line="O-T2" data-band="wrong"' in reply["regions"]["photo-result"]
    assert {"ok": True} == sent()
    assert not sent(taps={"O": taps["O"]})["ok"]


def test_plain_paper_is_measured_by_its_corners():
    one = want()
    drawn = {name: place.plus(Point(4.0, 3.0)) for name, place in points(one).items()}
    corners = [Point(0.0, 210.0), Point(297.0, 210.0), Point(297.0, 0.0), Point(0.0, 0.0)]
    reply = sent(
        ground="corners", paper="A4", way="landscape", marks=[list(flat(corner)) for corner in corners],
        taps={name: list(flat(place)) for name, place in drawn.items()}, byHand=True,
    )  # fmt: skip
    assert reply["ok"]
    assert "Every line is correct" in reply["announce"]
    assert "from its correct direction" not in reply["regions"]["photo-result"]


def test_marks_that_do_not_fit_are_told_in_a_sentence():
    marks = [list(flat(place)) for place in want().marks]
    marks[0], marks[4] = marks[4], marks[0]
    reply = sent(marks=marks)
    assert not reply["ok"]
    assert "not in the same order" in reply["announce"]
    assert reply["marks"]


@pytest.mark.parametrize("more", [
    {"photo": None}, {"photo": {"width": "2000", "height": 1500, "tap": 1}},
    {"photo": {"width": -1, "height": 1, "tap": 1}}, {"marks": None}, {"marks": [[1, 2]]}, {"marks": [[1, 2, 3]] * 8},
    {"marks": [["a", "b"]] * 8},
    {"marks": [[1e9, 0]] * 8}, {"taps": {"Q": [1, 2]}}, {"ground": "corners", "paper": "A99", "marks": [[0, 0]] * 4},
    {"photo": {"width": 2000, "height": 1e300, "tap": 1}},
], ids=str)  # fmt: skip
def test_a_request_that_no_page_of_ours_makes_is_refused_kindly(more: dict):
    reply = sent(**more)
    assert not reply["ok"]
    assert reply["announce"]
    assert "fault" not in reply["announce"].lower()


def test_a_form_that_cannot_be_used_is_told_by_its_field():
    request = {"do": "photo", "page": "neutral-current", "form": {**DEFAULT, "i1": "much"}}
    reply = json.loads(api.handle(json.dumps(request))[0])
    assert ["i1"] == [error["field"] for error in reply["errors"]]


def test_the_first_direction_is_asked_for_only_where_no_arrow_lies_on_it():
    assert "" == first_direction(want().drawing.construction)
    assert "D" == first_direction(want(reference="voltage", a1="25").drawing.construction)
    assert "Y" == first_direction(want(method="components").drawing.construction)


@pytest.mark.parametrize("orientation", ["landscape", "portrait"])
@pytest.mark.parametrize("numbers", [range(8), (0, 2, 3, 4, 6)], ids=["all", "by hand"])
def test_a_sheet_with_the_marks_of_before_is_judged_as_one_of_today(orientation: str, numbers: tuple[int, ...]):
    """Which marks a photograph has is found by the fit; the right drawing is right by either."""
    form = {**DEFAULT, "orientation": orientation}
    one = photo_task(NEUTRAL, form)
    drawn = {name: list(flat(place)) for name, place in points(one).items()}
    replies = []
    for edition in (one.numbered, one.older):
        seen = dict(edition)
        marks = [list(flat(seen[number])) if number in numbers else None for number, _ in one.numbered]
        asked = {"do": "photo", "page": "neutral-current", "form": form, "ground": "marks", "byHand": True,
                 "photo": {"width": SIZE[0], "height": SIZE[1], "tap": 1.2}, "marks": marks, "taps": drawn}  # fmt: skip
        replies.append(json.loads(api.handle(json.dumps(asked))[0]))
    assert all(reply["ok"] for reply in replies)
    assert 3 * [True] == [f">{word}<" not in str(replies) for word in ("wrong", "look again", "look")]
    assert "Every line is correct" in replies[1]["announce"]
