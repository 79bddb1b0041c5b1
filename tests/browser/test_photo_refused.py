"""Photographs that are turned, unfinished, of something else, or judged while the answer is held back; a phone on its
side; rings that follow the finger."""

import io
import time
from collections.abc import Callable

import numpy as np
import pytest
from browser.asking import DESK, SLUG, wait_until
from browser.photo_panel import (
    FAIR,
    PATIENCE,
    STAGE,
    TOUCH,
    bands,
    choose,
    finger,
    on_screen,
    picture,
    show_points,
)
from browser.test_page_access import violations
from photographs import Conditions, taken
from PIL import Image
from playwright.sync_api import Page

SIDEWAYS = {"viewport": {"width": 844, "height": 390}, "has_touch": True, "is_mobile": True}
PROMPT = "document.querySelector('[data-photo-prompt]').textContent"
CODE = "#v=1&code=333-JDL-2GA"


def turned(roll: float) -> Conditions:
    """A fair photograph with the sheet turned by so many degrees in it."""
    return Conditions(2.9, 24, 40, roll, -0.02, 0.8, 4, 0.35)


def of_something_else() -> bytes:
    """A picture without any sheet."""
    random = np.random.default_rng(4)
    rough = Image.fromarray(random.integers(40, 220, (12, 16, 3), dtype=np.uint8)).resize((1600, 1200))
    data = io.BytesIO()
    rough.save(data, "JPEG")
    return data.getvalue()


@pytest.mark.parametrize("roll", [94, 184])
def test_a_picture_on_its_side_or_upside_down_is_turned_by_its_marks(opened_for, roll: int):
    shot = taken(5, how=turned(roll))
    page = opened_for(viewport=DESK)
    assert "taps" == choose(page, shot.jpeg())
    left, right = on_screen(page, shot, shot.marks[0]), on_screen(page, shot, shot.marks[2])
    foot = on_screen(page, shot, shot.marks[6])
    assert left[0] < right[0] and left[1] < foot[1]
    show_points(page, shot, touch=False)
    assert {"accept"} == set(bands(page).values())


def test_a_picture_of_something_else_is_never_judged(opened_for):
    """No marks, and rings that nobody moved: both are said, and no point is asked for."""
    page = opened_for(**TOUCH)
    assert "marks" == choose(page, of_something_else())
    assert "No marks were found" in page.evaluate(PROMPT)
    picture(page, "photo-other")
    page.click('[data-photo-do="marks-done"]')
    wait_until(page, f"{PROMPT}.includes('not moved')", PATIENCE)
    assert "marks" == page.evaluate(STAGE)
    picture(page, "photo-untouched")
    shape = page.evaluate("document.querySelector('[data-photo-picture]').dataset.view.split(' ').map(Number)")
    page.click('[data-photo-do="turn"]')
    again = page.evaluate("document.querySelector('[data-photo-picture]').dataset.view.split(' ').map(Number)")
    assert [shape[3], shape[2], 1] == again[2:]


def test_a_sheet_of_another_size_is_refused_by_its_rings(opened_for):
    page = opened_for(viewport=DESK)
    assert "marks" == choose(page, taken(5, {"paper": "A5"}, how=FAIR).jpeg())
    assert "do not fit a sheet on A4" in page.evaluate(PROMPT)
    page.click('[data-photo-do="marks-done"]')
    page.wait_for_timeout(1000)
    assert "marks" == page.evaluate(STAGE)


def test_a_ring_follows_the_finger_with_a_square_close_up_away_from_it(opened_for):
    """A finger that moves at 250 px in a second; by its end the ring is where the finger is."""
    page = opened_for(**TOUCH)
    choose(page, of_something_else())
    ring = page.locator(".photo-handle").first
    box = ring.bounding_box()
    assert box is not None
    start = box["x"] + 22, box["y"] + 22
    session = page.context.new_cdp_session(page)
    for index in range(21):
        kind = "touchMove" if index else "touchStart"
        x, y = start[0] + 6 * index, start[1] + 4 * index
        session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": [{"x": x, "y": y}]})
        time.sleep(0.028)
    picture(page, "photo-ring")
    after = ring.bounding_box()
    assert after is not None
    assert (start[0] + 120, start[1] + 80) == pytest.approx((after["x"] + 22, after["y"] + 22), abs=6)
    loupe = page.locator("[data-photo-loupe]").bounding_box()
    assert loupe is not None
    assert loupe["width"] == pytest.approx(loupe["height"], abs=1)
    assert "0px" == page.locator("[data-photo-loupe]").evaluate("one => getComputedStyle(one).borderRadius")
    apart_across = max(loupe["x"] - x, x - loupe["x"] - loupe["width"])
    apart_down = max(loupe["y"] - y, y - loupe["y"] - loupe["height"])
    assert max(apart_across, apart_down) > 20
    session.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})


def test_what_is_not_drawn_yet_is_passed_over_and_the_rest_judged(opened_for):
    shot = taken(5, how=FAIR)
    page = opened_for(**TOUCH)
    choose(page, shot.jpeg())
    for name in ("O", "T1", "T2"):
        finger(page, on_screen(page, shot, shot.points[name]))
    wait_until(page, "document.querySelectorAll('.photo-handle').length === 3", PATIENCE)
    for _ in range(3):
        page.click('[data-photo-do="not-drawn"]')
    wait_until(page, f"{STAGE} === 'result'", PATIENCE)
    assert {"O-T1": "accept", "O-T2": "accept"} == bands(page)
    assert "Not drawn yet: the end of the diagonal" in page.inner_text("[data-photo-result]")
    picture(page, "photo-partly")


def test_on_a_sheet_of_a_code_the_button_is_there_and_the_answer_is_not_told(
    open_page: Callable[..., Page], site: str, ready, answered
):
    page = open_page(**TOUCH)
    page.goto(f"{site}{SLUG}/{CODE}")
    ready(page)
    answered(page)
    assert "all" == page.evaluate("document.documentElement.dataset.veiled")
    button = page.locator('[data-check] [data-action="photo"]')
    button.scroll_into_view_if_needed()
    picture(page, "photo-code-button")
    button.click()
    wait_until(page, "document.querySelector('dialog.photo[open] [data-photo-file]') !== null", PATIENCE)
    picture(page, "photo-code-panel")


def test_while_the_answer_is_held_back_the_panel_shows_own_values_alone(opened_for):
    """A problem's sheet holds its answer back."""
    shot = taken(5, slip=("T3", 10.0), how=FAIR)
    page = opened_for("#v=1&sheet=problem", **TOUCH)
    assert "sheet" == page.evaluate("document.documentElement.dataset.veiled")
    choose(page, shot.jpeg())
    show_points(page, shot, touch=True)
    said = page.inner_text("[data-photo-result]")
    assert "still hidden" in said
    assert "The calculation gives" not in said
    assert not page.locator('[data-photo-do="overlay"]').is_visible()
    page.locator("[data-photo-result]").scroll_into_view_if_needed()
    picture(page, "photo-held")


def test_on_a_phone_on_its_side_the_page_scrolls_beside_the_photo(opened_for):
    shot = taken(5, slip=("T3", 10.0), how=FAIR)
    page = opened_for(**SIDEWAYS)
    picture(page, "photo-side-1")
    choose(page, shot.jpeg())
    picture(page, "photo-side-2")
    show_points(page, shot, touch=True)
    picture(page, "photo-side-3")
    dialog = page.locator("dialog.photo")
    for name in ("again", "move-marks", "save", "overlay", "whole"):
        one = page.locator(f'[data-photo-do="{name}"]')
        one.scroll_into_view_if_needed()
        box = one.bounding_box()
        assert box is not None and box["y"] >= 0 and box["y"] + box["height"] <= 390 and box["x"] + box["width"] <= 844
    dialog.evaluate("one => one.scrollTo(0, one.scrollHeight)")
    photo = page.locator("[data-photo-picture]").bounding_box()
    result = page.locator("[data-photo-result]").bounding_box()
    assert photo is not None and result is not None
    assert -1 <= photo["y"] and photo["y"] + photo["height"] <= 391
    assert result["x"] >= photo["x"] + photo["width"]
    assert page.evaluate("document.querySelector('dialog.photo').scrollWidth <= innerWidth")
    picture(page, "photo-side-4")
    assert [] == violations(page)
