"""Photographs judged in part, as mirrored, while the answer is held back, or not at all: by what was marked."""

import re

import pytest
from unit.sheets import DEFAULT, NEUTRAL
from unit.test_photograph import TO_TAIL, ask, flat, followed, judged, points, sent, turned, want, wrong_lines

from pycore import geometry
from pycore.calculators.registry import CALCULATORS
from pycore.forms.fields import default_form
from pycore.geometry import Point
from pycore.practice.drawn import points_to_find
from pycore.practice.marking import WRONG
from pycore.sums.photograph import photo_task


def in_a_mirror(drawn: dict[str, Point]) -> dict[str, Point]:
    """A drawing of arrows from a common point with every angle set off the other way round from the first arrow."""
    start, axis = drawn["O"], geometry.direction(drawn["O"], drawn[list(drawn)[1]])
    return {
        name: start.moved(geometry.distance(start, place), 2 * axis - geometry.direction(start, place))
        for name, place in drawn.items()
    }


# Mirrored drawings.


@pytest.mark.parametrize("choices", [
    {}, TO_TAIL, {"sequence": "132"}, {"rotation": "clockwise"}, {"reference": "voltage", "a1": "25", "a2": "-10"},
], ids=str)  # fmt: skip
def test_a_mirrored_drawing_is_called_mirrored_and_no_line_is_named_for_another_mistake(choices: dict[str, str]):
    one = want(**choices)
    measured = judged(one, in_a_mirror(points(one)))
    assert measured.mirrored
    assert WRONG == measured.band
    assert [] == [slips for slips in wrong_lines(measured).values() if slips]
    assert len([line for line in measured.lines if line.mirrored]) >= 2


@pytest.mark.parametrize("slug", list(CALCULATORS))
def test_the_right_drawing_of_no_page_is_called_mirrored(slug: str):
    page = CALCULATORS[slug]
    one = photo_task(page, default_form(page.fields))
    assert not judged(one, points(one)).mirrored


def test_a_mirrored_drawing_with_a_wrong_length_has_that_mistake_too():
    one = want()
    drawn = points(one)
    turned(drawn, "T2", "O", 0.0, 10.0)
    measured = judged(one, in_a_mirror(followed(drawn)))
    assert measured.mirrored
    assert {"O-T2": ["centimetre-long"]} == {key: slips for key, slips in wrong_lines(measured).items() if slips}


def test_one_arrow_set_off_the_wrong_way_is_a_mistake_of_that_arrow():
    one = want()
    drawn = points(one)
    turned(drawn, "T2", "O", -120.0)
    measured = judged(one, followed(drawn))
    assert not measured.mirrored
    assert {"O-T2": ["wrong-way"]} == wrong_lines(measured)


def test_the_reply_says_mirrored_once_and_blames_no_line():
    taps = {name: list(flat(place)) for name, place in in_a_mirror(points(want())).items()}
    reply = sent(taps=taps)
    assert "mirrored" in reply["announce"]
    assert "lines are wrong" not in reply["announce"]
    assert "No typical mistake" not in reply["announce"]
    assert ">mirrored<" in reply["regions"]["photo-result"]
    assert ">wrong<" not in reply["regions"]["photo-result"]
    assert 'data-photo-band="wrong"' in reply["regions"]["photo-result"]


# Not drawn yet.


def partly(one, *missing: str) -> dict[str, list[float] | None]:
    """The right drawing's points as they are pressed, some of them not drawn yet."""
    return {name: None if name in missing else list(flat(place)) for name, place in points(one).items()}


@pytest.mark.parametrize(("choices", "missing", "lines"), [
    ({}, ("N",), ["O-T1", "O-T2", "T1-R", "T2-R", "O-T3"]),
    ({}, ("R", "T3", "N"), ["O-T1", "O-T2"]),
    ({}, ("T2", "R", "T3", "N"), ["O-T1"]),
    ({}, ("T1", "R", "N"), ["O-T2", "O-T3"]),
    ({}, ("R",), ["O-T1", "O-T2", "O-T3", "T3-N"]),
    (TO_TAIL, ("P2", "N"), ["O-P1"]),
], ids=str)  # fmt: skip
def test_what_is_drawn_is_judged_and_what_is_not_is_named(choices, missing, lines):
    reply = sent(form={**DEFAULT, **choices}, taps=partly(want(**choices), *missing))
    assert reply["ok"], reply["announce"]
    html = reply["regions"]["photo-result"]
    assert lines == re.findall(r'data-photo-line="([^"]+)" data-band="accept"', html)
    assert html.count("data-photo-line=") == len(lines)
    assert "so far" in reply["announce"]
    assert "Not drawn yet:" in reply["announce"]


def test_a_mistake_in_an_unfinished_drawing_is_named():
    one = want()
    drawn = points(one)
    turned(drawn, "T2", "O", 10.0)
    taps = {name: list(flat(place)) if name in ("O", "T1", "T2") else None for name, place in drawn.items()}
    reply = sent(taps=taps)
    assert "ten degrees too small" in reply["announce"]
    assert "One line is wrong." in reply["announce"]


@pytest.mark.parametrize("slug", list(CALCULATORS))
def test_every_page_judges_or_refuses_in_words_whatever_is_not_drawn(slug: str):
    """Each point left out alone, all after it, and all but it: nothing fails, no right line is called wrong."""
    page = CALCULATORS[slug]
    methods = next(field for field in page.fields if field.name == "method").options
    for method in [choice.value for choice in methods]:
        form = {**default_form(page.fields), "method": method}
        one = photo_task(page, form)
        marks = [list(flat(place)) for place in one.marks]
        names = points_to_find(one.drawing.construction)
        lists = [(name,) for name in names] + [names[k:] for k in range(len(names))]
        lists += [tuple(other for other in names if other != name) for name in names]
        for missing in lists:
            reply = sent(page=slug, form=form, marks=marks, taps=partly(one, *missing))
            assert reply["ok"] or reply["announce"].endswith("."), (method, missing)
            assert not reply["ok"] or 'data-band="wrong"' not in reply["regions"]["photo-result"], (method, missing)


def test_without_a_start_or_without_any_line_the_reply_asks_for_them():
    one = want()
    assert "the common point" in sent(taps=partly(one, "O"))["announce"]
    nothing = sent(taps=partly(one, "T1", "T2", "R", "T3", "N"))
    assert not nothing["ok"]
    assert "No line" in nothing["announce"]


def test_on_plain_paper_the_first_line_gives_the_direction_and_must_be_drawn():
    corners = [Point(0.0, 210.0), Point(297.0, 210.0), Point(297.0, 0.0), Point(0.0, 0.0)]
    plain = {"ground": "corners", "paper": "A4", "way": "landscape", "marks": [list(flat(one)) for one in corners]}
    reply = sent(**plain, taps=partly(want(), "T1", "R", "N"))
    assert not reply["ok"]
    assert "the tip of I₁" in reply["announce"]


# While the answer is held back.


def test_while_the_answer_is_held_back_nothing_of_it_is_told():
    """Own values and verdicts only: no right value, no right drawing, no difference from which it would follow."""
    one = want()
    drawn = points(one)
    turned(drawn, "T3", "O", 10.0)
    taps = {name: list(flat(place)) for name, place in followed(drawn).items()}
    shown, held = sent(taps=taps), sent(taps=taps, veiled=True)
    assert shown["overlay"] and "The calculation gives" in shown["regions"]["photo-result"]
    assert [] == held["overlay"]
    html = held["regions"]["photo-result"]
    assert "The calculation gives" not in html
    right = re.findall(r'<span class="photo-right">([^<]*)</span>', html)
    assert all(not any(letter.isdigit() for letter in text) for text in right)
    assert re.findall("data-photo-line=.*?data-band=[^>]*", html) == re.findall(
        "data-photo-line=.*?data-band=[^>]*", shown["regions"]["photo-result"]
    )
    assert "ten degrees too" in held["announce"]
    size = f"{NEUTRAL.case(dict(DEFAULT)).size:.1f}"
    assert size not in html


# Rings, crops, other pictures.


def test_rings_that_nobody_moved_are_asked_for_and_never_judged():
    reply = sent(byHand=True, untouched=[2, 4])
    assert not reply["ok"]
    assert "upper right" in reply["announce"] and "lower right" in reply["announce"]
    assert "upper left" not in reply["announce"]
    assert [2, 4] == reply["marks"]
    taps = {name: list(flat(place)) for name, place in points(want()).items()}
    assert not sent(byHand=True, untouched=[2], taps=taps)["ok"]
    assert {"ok": True} == sent(byHand=True, untouched=[])


def test_a_ring_at_the_edge_of_the_photo_is_asked_for():
    marks = [[0.0, mark[1]] if mark[0] < 300 else mark for mark in sent_marks()]
    reply = sent(byHand=True, marks=marks)
    assert not reply["ok"]
    assert "edge" in reply["announce"]


def sent_marks() -> list[list[float]]:
    """The marks as they are seen from above."""
    return [list(flat(place)) for place in want().marks]


def test_rings_of_another_size_belong_to_a_sheet_of_another_paper():
    """Flat shows 5 pixels for a millimetre: a ring of 5.2 mm takes 26."""
    assert {"ok": True} == sent(rings=[[26, 26]] * 8)
    assert {"ok": True} == sent(rings=[[28, 25], *[[26, 27]] * 6, None])
    for rings in ([[37, 37]] * 8, [[18, 18]] * 8, [[37, 26]] * 8):
        reply = sent(rings=rings)
        assert not reply["ok"]
        assert "A4" in reply["announce"]


def test_corners_that_no_camera_sees_so_are_no_sheet_of_this_paper():
    """A landscape sheet whose corners are set for portrait, and a crop of half of it."""
    corners = [Point(0.0, 210.0), Point(297.0, 210.0), Point(297.0, 0.0), Point(0.0, 0.0)]
    half = [Point(0.0, 210.0), Point(150.0, 210.0), Point(150.0, 0.0), Point(0.0, 0.0)]
    plain = {"ground": "corners", "paper": "A4", "byHand": True}
    shown = [list(flat(corner)) for corner in corners]
    assert {"ok": True} == sent(**plain, way="landscape", marks=shown)
    for way, seen in (("portrait", corners), ("landscape", half)):
        reply = sent(**plain, way=way, marks=[list(flat(corner)) for corner in seen])
        assert not reply["ok"]
        assert "A4" in reply["announce"] and way in reply["announce"]


@pytest.mark.parametrize("more", [
    {"untouched": 3}, {"untouched": ["a"]}, {"untouched": [9]}, {"rings": [[1, 2]]}, {"rings": 5},
    {"rings": [[0, 1]] * 8}, {"taps": {"O": None}},
], ids=str)  # fmt: skip
def test_a_request_that_no_page_makes_is_refused_kindly(more: dict):
    reply = sent(**more)
    assert not reply["ok"]
    assert "fault" not in reply["announce"].lower()


def test_the_panel_has_a_button_for_what_is_not_drawn_and_one_to_turn_the_photo():
    html = ask()["regions"]["photo"]
    assert 'data-photo-do="not-drawn"' in html
    assert 'data-photo-do="turn"' in html
