"""What the browser tests ask of a page: a result, its state, and patience."""

import math
import time

from playwright.sync_api import Page

SLUG = "neutral-current"
DESK = {"width": 1440, "height": 900}
PHONE = {"width": 390, "height": 844}


def result(page: Page, name: str = "neutral-current") -> float:
    """A result's value in its SI unit."""
    return float(page.get_attribute(f'output[name="{name}"]', "data-value") or "nan")


def neutral(a: float, b: float, c: float) -> float:
    """The neutral current of three lines 120° apart: √(½[(a−b)² + (b−c)² + (c−a)²])."""
    return math.sqrt(((a - b) ** 2 + (b - c) ** 2 + (c - a) ** 2) / 2)


def state(page: Page) -> str:
    """Whether the answer is fresh, pending or old."""
    return page.evaluate("document.documentElement.dataset.answer")


def wait_until(page: Page, expression: str, seconds: float = 10.0) -> None:
    """Poll from outside: waiting inside the page is refused by its policy."""
    end = time.monotonic() + seconds
    while not page.evaluate(expression):
        assert time.monotonic() < end, f"not within {seconds} s: {expression}"
        time.sleep(0.02)


def wait_old(page: Page) -> None:
    """Wait until the answer is marked old."""
    wait_until(page, "document.documentElement.dataset.answer === 'old'")


def waiting_actions(page: Page) -> set[str]:
    """The actions that wait."""
    return set(page.evaluate(
        "[...document.querySelectorAll('[data-action][aria-disabled=true]')].map((button) => button.dataset.action)"
    ))


def show_settings(page: Page) -> None:
    """Have the settings in view; the sheet stands beside them or above."""
    switch = page.locator("[data-settings-switch]:visible")
    if switch.get_attribute("aria-pressed") == "false":
        switch.click()


def show_beside(page: Page, name: str) -> None:
    """Have one of the things in view that stand beside the sheet: `moves`, `results`, `check` or `compare`."""
    page.click(f"[data-tab={name}]")


def show_more(page: Page) -> None:
    """Open what is wanted more rarely, beside the buttons at the foot."""
    if page.get_attribute("[data-more]", "open") is None:
        page.click("[data-more] > summary")
