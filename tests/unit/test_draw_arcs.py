"""Arcs drawn on the screen with compasses: right ones are accepted, wrong ones are found where they are."""

import json
import math
from typing import Any

import pytest
from unit.test_draw_here import FORM, MM, SLUG, Line, Place, ask, bands, between, moved, start

from pycore.calculators.registry import CALCULATORS
from pycore.forms.fields import default_form
from pycore.practice.arcs_here import wanted_arcs
from pycore.sums.drawn_here import drawing_task

COMPASSES = {**FORM, "parallels": "compasses", "order": "12"}
ONE, TWO, THREE = (9.2 * MM, 90.0), (14.7 * MM, -30.0), (6.5 * MM, 210.0)


def arc(centre: Place, radius: float, towards: float, half: float = 12.0) -> Line:
    """An arc about a direction."""
    return ["arc", *centre, *moved(centre, radius, towards - half), 2.0 * half]


def way(first: Place, last: Place) -> float:
    """The direction from one place to another."""
    return math.degrees(math.atan2(first[1] - last[1], last[0] - first[0]))


def first_parallelogram(*arcs: Line) -> list[Line]:
    """Both currents, the arcs, the dashed sides to where they cross, the diagonal; right arcs where none are given."""
    begun = start()
    one, two = moved(begun, *ONE), moved(begun, *TWO)
    corner = moved(one, *TWO)
    arcs = arcs or (arc(one, TWO[0], TWO[1]), arc(two, ONE[0], ONE[1]))
    return [
        between("arrow", begun, one, "i1"), between("arrow", begun, two, "i2"), *arcs,
        between("dashed", one, corner), between("dashed", two, corner), between("arrow", begun, corner),
    ]  # fmt: skip


def tips() -> tuple[Place, Place]:
    """The tips of the first two currents."""
    return moved(start(), *ONE), moved(start(), *TWO)


@pytest.mark.parametrize("parallels", ["compasses", "set-squares", "protractor"])
def test_two_arcs_give_the_corner_whichever_instrument_the_sheet_has(parallels: str) -> None:
    """Both parallelograms by arcs: every line and arc is right, and the true drawing has the arcs too."""
    lines, begun = first_parallelogram(), start()
    corner, three = moved(moved(begun, *ONE), *TWO), moved(begun, *THREE)
    end = moved(corner, *THREE)
    diagonal = math.dist(begun, corner)
    lines += [
        between("arrow", begun, three), arc(corner, *THREE), arc(three, diagonal, way(begun, corner)),
        between("dashed", three, end), between("dashed", corner, end), between("arrow", begun, end),
    ]  # fmt: skip
    reply = ask({**COMPASSES, "parallels": parallels}, lines=lines)
    assert bands(reply) == dict.fromkeys(range(len(lines)), "accept"), reply["announce"]
    assert reply["done"] and "Every line is correct" in reply["announce"] and reply["method"] == "parallelogram"
    assert [len(path["points"]) for path in reply["true"] if path["role"] == "arc"] == [9] * 4
    assert len(reply["true"]) == 13
    assert "the arc round the tip of" in reply["regions"]["draw-result"]


def test_arcs_that_cross_give_a_corner_before_any_side_is_drawn() -> None:
    """The diagonal may be drawn at once; half a pair gives nothing."""
    lines = first_parallelogram()
    reply = ask(COMPASSES, lines=[*lines[:4], lines[6]])
    assert bands(reply) == dict.fromkeys(range(5), "accept")
    assert bands(ask(COMPASSES, lines=lines[:3])) == dict.fromkeys(range(3), "accept")


def test_a_side_that_misses_the_crossing_is_found() -> None:
    """The dashed line goes from the tip to the corner: one turned by five degrees does not."""
    lines = first_parallelogram()
    one, _ = tips()
    lines[4] = between("dashed", one, moved(one, TWO[0], TWO[1] + 5.0))
    reply = ask(COMPASSES, lines=lines[:6])
    assert bands(reply) == {0: "accept", 1: "accept", 2: "accept", 3: "accept", 4: "wrong", 5: "accept"}
    assert "misses its point by" in reply["announce"]


def test_each_arc_is_judged_from_the_learners_own_arrows() -> None:
    """An arrow a centimetre too long: it alone is wrong, the arc with its length is right."""
    begun = start()
    one, two = moved(begun, *ONE), moved(begun, TWO[0] + 10.0, TWO[1])
    lines = [between("arrow", begun, one, "i1"), between("arrow", begun, two, "i2"),
             arc(one, TWO[0] + 10.0, TWO[1]), arc(two, *ONE)]  # fmt: skip
    assert bands(ask(COMPASSES, lines=lines)) == {0: "accept", 1: "wrong", 2: "accept", 3: "accept"}
    lines[2] = arc(one, *TWO)
    assert bands(ask(COMPASSES, lines=lines))[2] == "wrong"


def test_a_wrong_radius_is_found_at_its_arc_and_what_follows_is_right_for_it() -> None:
    """The sides go to where the arcs cross: they are right."""
    one, two = tips()
    wrong = TWO[0] + 5.0
    first, second = arc(one, wrong, TWO[1], 20.0), arc(two, ONE[0], ONE[1], 20.0)
    lines = first_parallelogram(first, second)
    far, high = two[0] - one[0], one[1] - two[1]
    # Where two circles cross, by the law of cosines.
    apart = math.hypot(far, high)
    between_them = math.degrees(math.acos((apart**2 + wrong**2 - ONE[0] ** 2) / (2 * apart * wrong)))
    corner = moved(one, wrong, math.degrees(math.atan2(high, far)) + between_them)
    assert math.dist(corner, two) == pytest.approx(ONE[0])
    lines[4:] = [between("dashed", one, corner), between("dashed", two, corner), between("arrow", start(), corner)]
    reply = ask(COMPASSES, lines=lines)
    assert bands(reply) == {**dict.fromkeys(range(7), "accept"), 2: "wrong"}, reply["announce"]
    assert "The radius of the arc round the tip of I₁ is off by 5.0 mm" in reply["announce"]
    assert "Look at move 4." in reply["announce"]


def said_of(first: Line, second: Line, **more: Any) -> str:
    """What is said of two arcs, of which the first alone is wrong."""
    reply = ask(COMPASSES, lines=first_parallelogram(first, second)[:4], **more)
    assert bands(reply) == {0: "accept", 1: "accept", 2: "wrong", 3: "accept"}, reply
    said: str = reply["announce"]
    return said


def test_swapped_lengths_are_named_at_their_arcs() -> None:
    """Each arc with the length of the arrow on whose tip it has its centre."""
    one, two = tips()
    lines = first_parallelogram(arc(one, ONE[0], -30.0), arc(two, TWO[0], 90.0))[:4]
    reply = ask(COMPASSES, lines=lines)
    assert bands(reply) == {0: "accept", 1: "accept", 2: "wrong", 3: "wrong"}
    assert "the compasses were opened to the length of I₁ itself" in reply["announce"]
    assert "opened to the length of I₁ itself" in said_of(arc(one, ONE[0], -30.0), arc(two, *ONE))


def test_usual_slips_of_compasses_are_named() -> None:
    """A centimetre more or less, the third current's length, another centre."""
    one, two = tips()
    right = arc(two, *ONE)
    assert "exactly one centimetre too far" in said_of(arc(one, TWO[0] + 10.0, TWO[1]), right)
    assert "exactly one centimetre too little" in said_of(arc(one, TWO[0] - 10.0, TWO[1]), right)
    assert "opened to the length of I₃" in said_of(arc(one, THREE[0], TWO[1]), right)
    astray = said_of(arc(start(), TWO[0], 10.0), right)
    assert "the point of the compasses was not on the tip of I₁" in astray and "mm beside that tip" not in astray
    held = said_of(arc(one, TWO[0] + 10.0, TWO[1]), right, veiled=True)
    assert "off by" not in held and "one centimetre too far" in held


def test_the_nearer_crossing_of_two_arcs_is_named() -> None:
    """Circles cross twice: arcs that cross only on the side of the start give no corner."""
    one, two = tips()
    corner = moved(one, *TWO)
    # The corner in the mirror of the line through both tips.
    axis, turn = way(one, two), way(one, corner)
    wrong = moved(one, TWO[0], 2.0 * axis - turn)
    lines = first_parallelogram(arc(one, TWO[0], way(one, wrong)), arc(two, ONE[0], way(two, wrong)))[:4]
    lines += [between("dashed", one, wrong), between("dashed", two, wrong)]
    reply = ask(COMPASSES, lines=lines)
    assert bands(reply) == {0: "accept", 1: "accept", 2: "wrong", 3: "wrong", 4: "accept", 5: "accept"}
    assert "the arcs cross on the wrong side" in reply["announce"]


def test_arcs_too_short_to_meet_and_full_circles_are_no_fault() -> None:
    """The circles cross farther from the start in any case."""
    one, two = tips()
    short = first_parallelogram(arc(one, TWO[0], 0.0, 5.0), arc(two, *ONE))
    circles = first_parallelogram(arc(one, TWO[0], 0.0, 180.0), arc(two, ONE[0], 0.0, 180.0))
    for lines in (short, circles):
        assert set(bands(ask(COMPASSES, lines=lines)).values()) == {"accept"}


def test_every_parallelogram_of_every_calculator_has_its_arcs() -> None:
    """Two for each corner whose construction draws arcs; none in tip to tail."""
    drawn = 0
    for page in CALCULATORS.values():
        methods = next(field.options for field in page.fields if field.name == "method")
        if "parallelogram" not in [option.value for option in methods]:
            continue
        form = {**default_form(page.fields), "method": "parallelogram", "parallels": "compasses"}
        task = drawing_task(page, form)
        construction = task.own.drawing.construction
        crossings = [move for move in construction.moves if type(move).__name__ == "CrossArcs"]
        assert len(wanted_arcs(construction)) >= 2 * len(crossings)
        drawn += len(crossings)
    assert drawn >= 5
    tail = drawing_task(CALCULATORS[SLUG], {**FORM, "method": "tip-to-tail"}).own.drawing.construction
    assert wanted_arcs(tail) == ()


@pytest.mark.parametrize("line", [["arc", 0, 0, 1, 1, ""], ["arc", 0, 0, 1, 1], ["arc", 0, 0, 1, 1, 1e9]],
                         ids=json.dumps)  # fmt: skip
def test_arcs_that_no_page_sends_are_refused(line: Line) -> None:
    """A sweep is a number of degrees."""
    reply = ask(lines=[line])
    assert not reply["ok"] and reply["announce"]


def test_an_arc_alone_and_a_dot_are_no_fault() -> None:
    """Nothing is drawn yet that could tell what an arc is."""
    assert "Nothing to judge yet" in ask(lines=[arc((100.0, 100.0), 30.0, 0.0)])["announce"]
    assert ask(lines=[["arc", 100.0, 100.0, 100.0, 100.0, 20.0]])["bands"] == []
