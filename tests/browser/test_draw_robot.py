"""Problems of several calculators drawn by a robot hand that only presses and drags; a drawing outlives its page."""

import math
from collections.abc import Callable

import pytest
from bench import draw_killed
from bench.drawn_by_pointer import Problem, draw, drawn_problems, verdict
from browser.asking import SLUG
from browser.drawn_by_hand import SHEET, Hand
from browser.kept import keeping, visit
from playwright.sync_api import Browser, Page

CLASS = {"width": 1920, "height": 1080}
PROBLEMS = tuple(drawn_problems(4, seed=11))
PROBLEM = "#v=3&i1=9.2&i2=14.7&i3=6.5&view=draw"


@pytest.mark.parametrize("problem", PROBLEMS, ids=lambda one: one.link.partition("/")[0])
def test_a_robot_hand_is_judged_as_its_lines_are(problem: Problem, open_page: Callable[..., Page], site: str) -> None:
    """Slips of half a millimetre and half a degree are right; a usual mistake is found at its line. The bench draws 200
    (`drawn-by-pointer`)."""
    page = open_page(viewport=CLASS)
    page.goto(site + problem.link)
    hand = Hand(page).opened()
    draw(hand, problem.lines)
    drawn = [op for op in hand.items() if op["do"] == "line"]
    for op, (kind, x1, y1, x2, y2, _) in zip(drawn, problem.lines, strict=True):
        assert op["kind"] == kind
        # A slip of the pointer, and what the instruments catch on, at the end of a line of 10 cm.
        assert math.dist((op["x1"], op["y1"]), (x1, y1)) < 1.0 and math.dist((op["x2"], op["y2"]), (x2, y2)) < 2.5
    found = verdict(hand, problem.keys)
    if problem.mistake:
        assert next(place for place, band in found.items() if band == "wrong") == problem.wrong
    else:
        assert set(found.values()) == {"accept"} and len(found) == len(problem.lines)


def test_a_drawing_outlives_a_page_that_is_closed_while_a_line_is_drawn(browser: Browser, site: str) -> None:
    """Closed with the pencil down, then opened again without a network: what was drawn before is there."""
    with keeping(browser, site, faults=True, viewport=CLASS) as context:
        page = visit(context, f"{site}{SLUG}/{PROBLEM}", whole=True)
        hand = Hand(page).opened()
        hand.press("onto")
        hand.press("along")
        hand.line("arrow", 0.0, 46.0)
        hand.name("i1")
        kept, laid = hand.items(), hand.pose("ruler")
        assert len(kept) == 2
        page.mouse.move(*hand.pixel(hand.edge("ruler", 10.0)))
        page.mouse.down()
        page.mouse.move(*hand.pixel(hand.edge("ruler", 30.0)))
        page.close()
        context.set_offline(True)
        again = context.new_page()
        again.goto(f"{site}{SLUG}/{PROBLEM}")
        hand = Hand(again).opened()
        assert hand.items() == kept and hand.pose("ruler") == laid
        assert again.locator(f"{SHEET} ~ .draw-lines [data-kind=arrow]").count() == 1


def test_a_drawing_outlives_a_page_that_ends_at_any_moment(browser: Browser, site: str) -> None:
    """Closed, loaded anew or its process ended, with a network afterwards or without: what was drawn is there. The
    bench ends 24 (`draw-killed`)."""
    counts = draw_killed.count(browser, site, 3, problems=1)
    assert counts["there again"] == 3, counts
