"""The photo's panel as a learner uses it: a file chosen, points pressed with a finger or a mouse."""

import os
import time
from pathlib import Path

from browser.asking import PHONE, show_more, wait_until
from photographs import Conditions, Taken
from playwright.sync_api import Page

PATIENCE = 40.0
FAIR = Conditions(2.9, 24, 40, 4, -0.02, 0.8, 4, 0.35)
TOUCH = {"viewport": PHONE, "has_touch": True, "is_mobile": True}
STAGE = "document.querySelector('dialog.photo')?.dataset.stage"


def open_panel(page: Page) -> None:
    """Press the button, and wait for the panel."""
    show_more(page)
    page.click('.more [data-action="photo"]')
    wait_until(page, "document.querySelector('dialog.photo[open] [data-photo-file]') !== null", PATIENCE)


def choose(page: Page, data: bytes, stages: tuple[str, ...] = ("taps", "marks"), name: str = "drawing.jpg") -> str:
    """Give a file; returns the stage that follows, once it is one of these."""
    page.set_input_files("#photo-choose", {"name": name, "mimeType": "image/jpeg", "buffer": data})
    wait_until(page, f"{list(stages)!r}.includes({STAGE})", PATIENCE)
    return page.evaluate(STAGE)


def on_screen(page: Page, taken: Taken, place: tuple[float, float]) -> tuple[float, float]:
    """Where a point of the sheet (mm) is on the screen now."""
    page.locator("[data-photo-picture]").scroll_into_view_if_needed()
    box = page.locator("[data-photo-canvas]").bounding_box()
    assert box is not None
    left, top, width, _, quarters = map(float, page.get_attribute("[data-photo-picture]", "data-view").split())
    share = min(1.0, 2000 / max(taken.camera.width, taken.camera.height))
    u, v = (share * number for number in taken.camera.seen(*place))
    wide, high = share * taken.camera.width, share * taken.camera.height
    for _ in range(int(quarters)):
        u, v, wide, high = high - v, u, high, wide
    return box["x"] + (u - left) * box["width"] / width, box["y"] + (v - top) * box["width"] / width


def finger(page: Page, *ways: tuple[float, float]) -> None:
    """A finger put down at the first place, led along the others slowly, and lifted."""
    session = page.context.new_cdp_session(page)
    for index, (x, y) in enumerate(ways):
        kind = "touchMove" if index else "touchStart"
        session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": [{"x": x, "y": y}]})
    session.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
    session.detach()


def show_points(page: Page, taken: Taken, *, touch: bool) -> None:
    """Show every point of the drawing in the order in which it is asked for."""
    for index, place in enumerate(taken.points.values()):
        x, y = on_screen(page, taken, place)
        if touch:
            finger(page, (x, y))
        else:
            page.mouse.click(x, y)
        wait_until(page, f"document.querySelectorAll('.photo-handle').length === {index + 1}", PATIENCE)
    wait_until(page, f"{STAGE} === 'result'", PATIENCE)


def bands(page: Page) -> dict[str, str]:
    """The band of every line by its ends."""
    return dict(page.eval_on_selector_all(
        "[data-photo-line]", "rows => rows.map((row) => [row.dataset.photoLine, row.dataset.band])"
    ))


def picture(page: Page, name: str) -> None:
    """Keep a picture of the page where PHASOR_FOLIO_PICTURES says so."""
    folder = os.environ.get("PHASOR_FOLIO_PICTURES")
    if folder:
        time.sleep(0.3)
        page.screenshot(path=Path(folder) / f"{name}.png")
