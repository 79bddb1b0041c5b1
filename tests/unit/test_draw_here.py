"""Lines drawn on the screen: right ones are accepted by any method, wrong ones are found where they are."""

import base64
import html
import io
import json
import math
import re
from itertools import pairwise
from statistics import NormalDist
from typing import Any

import pytest
from fontTools.ttLib import TTFont
from unit.sheets import on_page

from pycore import api
from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Arrow
from pycore.forms.fields import default_form
from pycore.practice.allowed import COVERAGE_OF_ALL

SLUG = "neutral-current"
FORM = {**default_form(CALCULATORS[SLUG].fields), "i1": "9.2", "i2": "14.7", "i3": "6.5"}
MM = 5.0
"""Millimetres for each ampere at 1 cm = 2 A."""
Place = tuple[float, float]
Line = list[Any]


def ask(form: dict[str, str] = FORM, page: str = SLUG, **more: Any) -> dict[str, Any]:
    """The reply to a request of the view."""
    text, _ = api.handle(json.dumps({"do": "draw", "page": page, "form": form, **more}))
    reply: dict[str, Any] = json.loads(text)
    return reply


def start() -> Place:
    """The start that the sheet prints."""
    x, y = ask()["start"]
    return x, y


def moved(place: Place, far: float, deg: float) -> Place:
    """A place so far (mm) away in a direction (degrees anticlockwise from the right)."""
    return place[0] + far * math.cos(math.radians(deg)), place[1] - far * math.sin(math.radians(deg))


def between(kind: str, first: Place, last: Place, name: str = "") -> Line:
    """A line from one place to another."""
    return [kind, *first, *last, name]


def parallelogram(second: float = -30.0, length: float = 14.7 * MM) -> list[Line]:
    """Every line of the two parallelograms, by complex addition; the second current as it is drawn."""
    begun = start()
    tips = [moved(begun, 9.2 * MM, 90.0), moved(begun, length, second), moved(begun, 6.5 * MM, 210.0)]
    corner = moved(tips[0], length, second)
    end = moved(corner, 6.5 * MM, 210.0)
    beyond = moved(tips[0], length + 9.0, second)
    return [
        between("arrow", begun, tips[0]), between("arrow", begun, tips[1]),
        between("dashed", tips[0], beyond), between("dashed", corner, tips[1]), between("arrow", begun, corner),
        between("arrow", begun, tips[2]), between("dashed", tips[2], end), between("dashed", corner, end),
        between("arrow", begun, end),
    ]  # fmt: skip


def tip_to_tail() -> list[Line]:
    """The three currents one after the other, and the sum."""
    places = [start()]
    for size, deg in ((9.2, 90.0), (14.7, -30.0), (6.5, 210.0)):
        places.append(moved(places[-1], size * MM, deg))
    return [between("arrow", *pair) for pair in pairwise(places)] + [
        between("arrow", places[0], places[-1])
    ]


def bands(reply: dict[str, Any]) -> dict[int, str]:
    """The verdict on each line, by its place in the request."""
    assert reply["ok"], reply
    return dict(reply["bands"])


def test_the_right_drawing_is_accepted_and_the_true_one_is_given_once_all_is_drawn() -> None:
    """Two parallelograms: all nine lines are right; with fewer nothing of the true drawing is in the reply."""
    reply = ask(lines=parallelogram())
    assert bands(reply) == dict.fromkeys(range(9), "accept") and reply["done"] and reply["method"] == "parallelogram"
    assert "Every line is correct" in reply["announce"] and len(reply["true"]) == 9
    part = ask(lines=parallelogram()[:5])
    assert set(bands(part).values()) == {"accept"} and not part["done"] and part["true"] == []
    assert "Every line drawn so far is correct" in part["announce"]


def test_limits_hold_for_all_lines_together() -> None:
    """A table of Šidák's limits, by the standard library's normal distribution; the longer a drawing, the wider."""
    for number, limit in enumerate(COVERAGE_OF_ALL, 1):
        assert limit == pytest.approx(NormalDist().inv_cdf((1.0 + 0.95 ** (1.0 / number)) / 2.0), abs=0.0006)
    lines = parallelogram(length=14.7 * MM + 1.2)
    assert bands(ask(lines=lines))[1] == "accept", "1.2 mm are in the hand where thirteen things are measured"
    lines = parallelogram(length=14.7 * MM + 2.0)[:2]
    lines[1][5] = "i2"
    assert bands(ask(lines=lines))[1] == "look", "the limit does not depend on how much is drawn"


def test_another_method_than_the_sheets_is_recognised() -> None:
    """Tip to tail on a sheet for parallelograms: right, and it is said which method the lines follow."""
    reply = ask(lines=tip_to_tail())
    assert reply["method"] == "tip-to-tail" and reply["done"] and set(bands(reply).values()) == {"accept"}
    assert "Your lines follow: Tip to tail" in reply["announce"]


def test_a_wrong_line_is_found_at_its_place_with_its_mistake_and_its_move() -> None:
    """The second current turned the wrong way: that line alone is wrong, what follows is right for it."""
    reply = ask(lines=[*parallelogram(second=210.0)[:2]])
    assert reply["ask"] == [1], "an arrow that fits nothing is asked for"
    lines = parallelogram(second=210.0)
    lines[1][5] = "i2"
    found = bands(ask(lines=lines[:5]))
    assert found == {0: "accept", 1: "wrong", 2: "accept", 3: "accept", 4: "accept"}
    said = ask(lines=lines[:5])["announce"]
    assert "turned the wrong way" in said and "Look at move 3." in said


def test_a_right_arrow_with_the_name_of_another_is_told_so() -> None:
    """The second current named as the third: that, and not a wrong turn and a wrong length."""
    lines = parallelogram()[:2]
    for line, name in zip(lines, ("i1", "i3"), strict=True):
        line[5] = name
    reply = ask(lines=lines)
    assert bands(reply) == {0: "accept", 1: "wrong"}
    told = reply["announce"]
    assert "with the wrong name" in told and "has the length and the direction of I" in told
    assert "turned" not in told and "has the length of" not in told
    lines[1][5] = "i2"
    assert set(bands(ask(lines=lines)).values()) == {"accept"}


def test_a_length_off_by_a_centimetre_is_named() -> None:
    """One centimetre too long is what the ruler's 1 in place of its 0 gives."""
    lines = parallelogram(length=14.7 * MM + 10.0)[:2]
    lines[1][5] = "i2"
    reply = ask(lines=lines)
    assert bands(reply)[1] == "wrong" and "exactly one centimetre too long" in reply["announce"]


def test_one_side_of_a_parallelogram_is_judged_alone() -> None:
    """A dashed line is judged before the other is drawn; only its direction counts, drawn from either end."""
    lines = parallelogram()
    assert bands(ask(lines=lines[:3]))[2] == "accept"
    tip = tuple(lines[0][3:5])
    turned = between("dashed", moved(tip, 80.0, -45.0), tip)
    assert bands(ask(lines=[*lines[:2], turned]))[2] == "wrong"


def test_a_line_from_another_point_and_the_other_diagonal_are_named() -> None:
    """Begun at a tip in place of the common point; the sum drawn between the two tips."""
    lines = parallelogram()
    away = moved(tuple(lines[0][3:5]), 0.0, 0.0)
    begun = between("arrow", away, moved(away, 14.7 * MM, -30.0), "i2")
    reply = ask({**FORM, "method": "parallelogram"}, lines=[lines[0], begun, *lines[5:6]])
    assert reply["method"] == "tip-to-tail" or "does not start at the common point" in reply["announce"]
    lines[4] = between("arrow", tuple(lines[0][3:5]), tuple(lines[1][3:5]), "i12")
    said = ask(lines=lines[:5])["announce"]
    assert "joins the two tips, which is the other diagonal" in said


def test_nothing_of_the_answer_is_told_while_it_is_held_back() -> None:
    """Veiled, neither the moves nor the true drawing nor by how much a line is off is in the reply."""
    lines = parallelogram(second=210.0)
    lines[1][5] = "i2"
    held = ask(lines=lines, veiled=True)
    assert held["true"] == [] and "is off by" not in held["announce"] and "turned the wrong way" in held["announce"]
    assert "is off by" in ask(lines=lines)["announce"]
    assert 'data-draw-fold="moves"' in ask()["regions"]["draw"]
    assert 'data-draw-fold="moves"' not in ask(veiled=True)["regions"]["draw"]


def test_a_reversed_sum_is_named() -> None:
    """The arrow of the result drawn from its tip to the start."""
    lines = parallelogram()
    begun, end = tuple(lines[8][1:3]), tuple(lines[8][3:5])
    lines[8] = between("arrow", end, begun, "sum")
    reply = ask(lines=lines)
    assert bands(reply)[8] == "wrong" and "points the opposite way" in reply["announce"]


@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_calculator_opens_with_its_sheet_and_names(slug: str) -> None:
    """Paper, instruments in true size, the names of its arrows, and a reading to be given where one is in mm."""
    form = default_form(CALCULATORS[slug].fields)
    reply = ask(form, slug)
    assert reply["ok"] and reply["names"] and reply["problem"].startswith("v=")
    x, y = reply["start"]
    assert 0 < x < reply["paper"]["width"] and 0 < y < reply["paper"]["height"]
    assert 'data-name="start"' in reply["paper"]["svg"], "the start is printed on the sheet"
    assert reply["tools"]["ruler"]["length"] in (150.0, 300.0)
    circle = ask({**form, "protractor": "360"}, slug)["tools"]["protractor"]
    assert circle["circle"] and not reply["tools"]["protractor"]["circle"]


@pytest.mark.parametrize(("method", "parallels", "more"), [
    ("parallelogram", "protractor", []), ("parallelogram", "set-squares", ["square-60"]),
    ("parallelogram", "compasses", ["compasses"]), ("tip-to-tail", "compasses", []), ("components", "", ["square-60"]),
])  # fmt: skip
def test_the_instruments_that_a_method_needs_are_in_front(method: str, parallels: str, more: list[str]) -> None:
    """The others are there in true size, one press away."""
    reply = ask({**FORM, "method": method, **({"parallels": parallels} if parallels else {})})
    assert reply["front"] == ["ruler", "protractor", *more]
    assert set(reply["tools"]) == {"ruler", "protractor", "square-60", "square-45", "compasses"}
    base, upright = reply["tools"]["square-60"]["legs"]
    assert math.degrees(math.atan2(upright, base)) == pytest.approx(30.0, abs=0.01)
    assert len(set(reply["tools"]["square-45"]["legs"])) == 1
    buttons = re.findall(r'data-value="([a-z0-9-]+)"[^>]*data-draw-other', reply["regions"]["draw"])
    assert sorted(buttons) == sorted({"square-60", "square-45", "compasses"} - set(more))


def test_own_paper_and_large_print_are_drawn_on_the_usual_sheet() -> None:
    """What a learner has on the table does not matter on the screen."""
    usual = ask()["paper"]
    assert ask({**FORM, "own-paper": "A3"})["paper"] == usual
    assert ask({**FORM, "print": "page"})["paper"]["width"] == usual["width"]


BAD: list[Any] = [
    "x", [["arrow", 0, 0, 1, 1]], [["curve", 0, 0, 1, 1, ""]], [["arrow", 0, 0, 1, True, ""]],
    [["arrow", 0, 0, 1, 1e9, ""]], [["arrow", 0, 0, 1, 1, 3]], [["arrow", 0, 0, 1, 1, ""]] * 301,
]  # fmt: skip


@pytest.mark.parametrize("lines", BAD, ids=lambda lines: json.dumps(lines)[:40])
def test_lines_that_no_page_sends_are_refused(lines: Any) -> None:
    """Each is refused with a sentence, and nothing breaks."""
    reply = ask(lines=lines)
    assert not reply["ok"] and reply["announce"]
    assert "fault of ours" not in reply["announce"].lower()


def test_nothing_drawn_and_a_dot_are_no_fault() -> None:
    """An empty sheet is told how to begin; a line of no length is passed over."""
    assert "Nothing to judge yet" in ask(lines=[])["announce"]
    x, y = start()
    assert ask(lines=[["arrow", x, y, x, y, ""]])["bands"] == []
    assert ask({**FORM, "i1": "x"}, lines=[])["errors"][0]["field"] == "i1"


def test_a_saved_drawing_has_the_lettering_of_its_text_and_no_more():
    """A picture named its fonts and had none of them: elsewhere it was lettered by another."""
    text = "1 cm = 2 A, I₁ 120°"
    rules = re.findall(r"@font-face{(.*?)base64,([^\"]*)", ask(text=text)["faces"])
    assert 3 == len(rules)
    for about, data in rules:
        font = TTFont(io.BytesIO(base64.b64decode(data)))
        held = {chr(code) for code, name in font.getBestCmap().items() if font["glyf"][name].numberOfContours}
        assert set("12A=") <= held and ("₁" in held) == ("Serif" not in about), about
        assert not held & set("BCDZabz"), about
    assert ask(text=text)["faces"] == ask(text=text + "A" * 100_000)["faces"]


SUPPORTED = {**FORM, "start": "two"}


def test_arrows_that_the_sheet_has_drawn_stand_there_and_are_not_asked_for() -> None:
    """They were missing, and the learner was to draw them once more."""
    opened = ask(SUPPORTED)
    printed = opened["printed"]
    assert ["i1", "i2"] == [line["name"] for line in printed]
    own = parallelogram()
    for line, drawn in zip(printed, own, strict=False):
        assert [line["x1"], line["y1"], line["x2"], line["y2"]] == pytest.approx(drawn[1:5], abs=0.01)
    assert 'data-phasor="i1"' in opened["paper"]["svg"] and 'data-phasor="i1"' not in ask()["paper"]["svg"]
    reply = ask(SUPPORTED, lines=own[2:])
    assert bands(reply) == dict.fromkeys(range(7), "accept") and reply["done"] and not reply["ask"]
    assert not bands(ask(SUPPORTED, lines=[])) and not ask(SUPPORTED, lines=[])["done"]
    wrong = [*own[2:5], between("arrow", start(), moved(start(), 40.0, 210.0), "i3")]
    assert "wrong" == bands(ask(SUPPORTED, lines=wrong))[3]


def test_the_panel_says_what_the_sheet_has_drawn() -> None:
    """It told the learner to draw these phasors, and to begin with the first arrow on empty paper."""
    region = ask(SUPPORTED)["regions"]["draw"]
    panel = re.sub("<[^>]*>", "", html.unescape(region))
    question = re.sub("<[^>]*>", "", re.findall('class="draw-question">(.*?)</p>', region)[0])
    assert question.endswith("I1 and I2 are drawn on the sheet already.")
    assert "Draw I₁ straight up" not in panel and "I₁ points straight up" in panel
    moves = re.findall("<li>(.*?)</li>", re.findall('data-draw-fold="moves">(.*?)</ol>', region)[0])
    moves = [re.sub("<[^>]*>", "", move) for move in moves]
    assert ["I1 is drawn on the sheet already.", "I2 is drawn on the sheet already."] == moves[1:3]
    assert moves[6].startswith("Draw I3.") and 12 == len(moves), "the numbers of moves are kept"
    sentences = json.loads(html.unescape(re.findall('data-sentences="(.*?)"', region)[0]))
    assert "empty" not in sentences["afresh"] and "sheet" in sentences["afresh"]
    nothing = ask(SUPPORTED, lines=[])["announce"]
    assert "I₁ and I₂ are drawn on the sheet already" in nothing and "first arrow" not in nothing
    empty = html.unescape(ask()["regions"]["draw"])
    assert "already." not in empty and "Draw I₁ straight up" in empty and "The paper is empty" in empty


def test_another_method_than_that_of_the_printed_arrows_is_recognised() -> None:
    """Tip to tail on a sheet whose second phasor begins at the common point: the learner's own one counts."""
    lines = tip_to_tail()
    for line, name in zip(lines, ("i1", "i2", "i3"), strict=False):
        line[5] = name
    reply = ask(SUPPORTED, lines=lines[1:])
    assert reply["method"] == "tip-to-tail" and reply["done"] and set(bands(reply).values()) == {"accept"}


def test_a_drawing_kept_before_is_found_and_judged_with_its_own_arrows() -> None:
    """The learner had drawn the first two by hand: they are judged as before, and nothing is asked."""
    assert ask()["problem"] == ask(SUPPORTED)["problem"]
    lines = parallelogram()
    for line, name in zip(lines, ("i1", "i2"), strict=False):
        line[5] = name
    reply = ask(SUPPORTED, lines=lines)
    assert bands(reply) == dict.fromkeys(range(9), "accept") and reply["done"] and not reply["ask"]


def test_an_arrow_without_a_name_on_a_printed_one_is_that_arrow() -> None:
    """The printed ones took the places of a kept drawing's own, which were asked for, or were the third, far off."""
    lines = parallelogram()
    reply = ask(SUPPORTED, lines=lines)
    assert bands(reply) == dict.fromkeys(range(9), "accept") and reply["done"] and not reply["ask"]
    traced = ask(SUPPORTED, lines=lines[:1])
    assert bands(traced) == {0: "accept"} and not traced["ask"] and "off by" not in traced["announce"]
    late = ask(SUPPORTED, lines=[*lines[2:], lines[0]])
    assert bands(late) == dict.fromkeys(range(8), "accept") and late["done"] and not late["ask"]
    off = [between("arrow", start(), moved(start(), 9.2 * MM + 2.4, 90.0))]
    assert bands(ask(SUPPORTED, lines=off)) == bands(ask(lines=off)) == {0: "look"}


def test_without_names_another_method_draws_its_own_second_arrow() -> None:
    """The printed one, which begins at the common point, was judged in its place."""
    reply = ask(SUPPORTED, lines=tip_to_tail()[1:])
    assert reply["method"] == "tip-to-tail" and reply["done"] and set(bands(reply).values()) == {"accept"}


def test_a_sum_that_lies_on_a_printed_arrow_is_the_sum() -> None:
    """The second and third leave nothing together: the sum is drawn over the first."""
    form = {**SUPPORTED, "method": "tip-to-tail", "i3": "14.7", "a2": "-30", "a3": "30", "scale": "2"}
    begun = ask(form)["start"]
    tip = moved((begun[0], begun[1]), 9.2 * MM, 90.0)
    lines = [between("arrow", moved(tip, 14.7 * MM, 0.0), tip), between("arrow", (begun[0], begun[1]), tip)]
    reply = ask(form, lines=lines)
    assert bands(reply) == {0: "accept", 1: "accept"} and reply["done"] and not reply["ask"]


@pytest.mark.parametrize("method", ["parallelogram", "tip-to-tail", "components"])
def test_printed_arrows_lie_on_those_of_the_sheet(method: str) -> None:
    """From tail to tip, by the lines of the sheet's own drawing."""
    form = {**SUPPORTED, "method": method}
    opened = ask(form)
    page = CALCULATORS[SLUG].sheet_page({**form, "sheet": "problem"})
    arrows = {placed.phasor: placed.item for placed in on_page(page, Arrow)}
    for line in opened["printed"]:
        arrow = arrows[line["name"]]
        ends = [*arrow.tail, *arrow.tip]
        height = opened["paper"]["height"]
        assert [line["x1"], height - line["y1"], line["x2"], height - line["y2"]] == pytest.approx(ends, abs=0.01)
