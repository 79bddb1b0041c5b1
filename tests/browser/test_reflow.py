"""The browser's own text size at 200 %, and a window of 320 by 210 pixels: 1280 by 840 at a zoom of 400 %."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from browser.asking import PHONE, SLUG, wait_until
from browser.classroom import PROBLEM
from browser.test_page_access import violations
from making.programs import CHROMIUM_OPTIONS
from playwright.sync_api import Page, Playwright
from rooms import UNIMPROVED

ZOOMED = {"width": 320, "height": 210}
LARGE_TEXT = "--blink-settings=defaultFontSize=32"
FLAT = """() => [...document.querySelectorAll("main *, header *, footer *, dialog[open] *")].filter((one) => {
  const words = [...one.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim());
  const shown = one.checkVisibility({ visibilityProperty: true });
  if (!words || !shown || one.closest("svg, math, .visually-hidden")) return false;
  const { width, height } = one.getBoundingClientRect();
  return width < 1 || height < 1;
}).map((one) => one.outerHTML.slice(0, 120))"""
"""What has words and no height or width."""
CUT = """() => [...document.querySelectorAll(".action-bar button, .action-bar summary")].filter((one) =>
  one.checkVisibility() && (one.scrollWidth > one.clientWidth || one.scrollHeight > one.clientHeight + 1)
).map((one) => `${one.textContent.trim()}: ${one.scrollWidth} in ${one.clientWidth}`)"""
"""Buttons at the foot whose name does not fit them."""

HALF_SEEN = """() => [...document.querySelectorAll("main .values input[type=text]")].filter((one) =>
  one.checkVisibility() && one.value && one.scrollWidth > one.clientWidth
).map((one) => `${one.name}: ${one.scrollWidth} in ${one.clientWidth}`)"""
"""Fields whose value does not fit them."""


UNDER_UNIT = """() => [...document.querySelectorAll(".entry")].flatMap((entry) => {
  const [field, unit] = [entry.querySelector("input"), entry.querySelector(".unit")];
  if (!field?.checkVisibility() || !unit?.checkVisibility({ visibilityProperty: true })) return [];
  const end = field.getBoundingClientRect().right - parseFloat(getComputedStyle(field).paddingRight);
  const words = document.createRange();
  words.selectNodeContents(unit);
  const { left, top, bottom } = words.getBoundingClientRect();
  const middle = field.getBoundingClientRect();
  const isHigh = top < middle.top || bottom > middle.bottom;
  return left < end - 2 || isHigh ? [`${field.name}: ${unit.textContent} at ${left}, text to ${end}`] : [];
})"""
"""Units that stand over the text of their field, or above or below it."""
CUT_EXAMPLE = """() => [...document.querySelectorAll("input[placeholder]")].filter((one) => {
  if (!one.checkVisibility()) return false;
  const before = one.value;
  one.value = one.placeholder;
  const isCut = one.scrollWidth > one.clientWidth;
  one.value = before;
  return isCut;
}).map((one) => `${one.id}: ${one.placeholder}`)"""
"""Fields in which the example of what belongs there does not fit."""
LAPTOP = {"width": 1366, "height": 850}


@pytest.fixture
def large(playwright: Playwright, chromium_path: Path) -> Iterator[Page]:
    """A phone whose browser is set to letters twice as large."""
    options = [*CHROMIUM_OPTIONS, UNIMPROVED, LARGE_TEXT]
    chromium = playwright.chromium.launch(executable_path=str(chromium_path), args=options)
    yield chromium.new_context(viewport=PHONE, reduced_motion="reduce").new_page()
    chromium.close()


def pages_of(dist: Path) -> list[str]:
    """Every page, of lesson plans and cover lessons the first: the others have the same parts."""
    listed = ["", *sorted(f"{one.parent.relative_to(dist).as_posix()}/" for one in dist.glob("*/index.html"))]
    return [slug for slug in listed if not slug.startswith(("lesson-plan-", "cover-lesson-"))]


def test_every_page_follows_the_browsers_text_size(large: Page, site: str, dist: Path) -> None:
    for slug in pages_of(dist):
        large.goto(site + slug, wait_until="domcontentloaded")
        assert "32px" == large.evaluate("getComputedStyle(document.documentElement).fontSize")
        assert 390 >= large.evaluate("document.documentElement.scrollWidth"), slug
        assert [] == large.evaluate(FLAT), slug
        assert [] == large.evaluate(CUT), slug
        assert [] == large.evaluate(HALF_SEEN), slug
        assert [] == large.evaluate(UNDER_UNIT), slug
        assert [] == large.evaluate(CUT_EXAMPLE), slug
        assert [] == violations(large), slug


def test_letters_twice_as_large_have_room_on_a_laptop(large: Page, site: str, dist: Path) -> None:
    """The front page's code field showed five signs of eleven, and units stood over numbers."""
    large.set_viewport_size(LAPTOP)
    for slug in pages_of(dist):
        large.goto(site + slug, wait_until="domcontentloaded")
        assert LAPTOP["width"] >= large.evaluate("document.documentElement.scrollWidth"), slug
        for fault in (FLAT, CUT, HALF_SEEN, UNDER_UNIT, CUT_EXAMPLE):
            assert [] == large.evaluate(fault), slug


def test_every_page_can_be_read_at_400_per_cent(open_page: Callable[..., Page], site: str, dist: Path) -> None:
    page = open_page(viewport=ZOOMED, reduced_motion="reduce")
    for slug in pages_of(dist):
        page.goto(site + slug, wait_until="domcontentloaded")
        assert 320 >= page.evaluate("document.documentElement.scrollWidth"), slug
        assert [] == page.evaluate(FLAT), slug
        assert [] == violations(page), slug


def test_at_400_per_cent_no_bar_takes_the_window_from_the_page(open_page: Callable[..., Page], site: str) -> None:
    page = open_page(viewport=ZOOMED, reduced_motion="reduce")
    page.goto(f"{site}{SLUG}/")
    assert "fixed" != page.evaluate("getComputedStyle(document.querySelector('.action-bar')).position")
    page.mouse.wheel(0, 1500)
    page.wait_for_timeout(300)
    assert 1000 < page.evaluate("scrollY")
    assert not page.evaluate("document.querySelector('.figure').hasAttribute('data-band')")
    assert page.evaluate("!document.elementFromPoint(160, 205).closest('.action-bar')")


def test_at_400_per_cent_the_lesson_scrolls_as_a_whole(open_page: Callable[..., Page], site: str) -> None:
    page = open_page(viewport=ZOOMED, reduced_motion="reduce")
    page.goto(f"{site}{SLUG}/{PROBLEM}&view=lesson&step=5")
    wait_until(page, "document.querySelector('.lesson-step') !== null", 60.0)
    room = page.evaluate("""() => {
      const lesson = document.querySelector("[data-lesson]");
      const heights = [".lesson-text", ".lesson-stage", ".lesson-stepping"].map((part) =>
        document.querySelector(part).getBoundingClientRect().height);
      return { whole: lesson.scrollHeight, window: lesson.clientHeight, across: lesson.scrollWidth, heights };
    }""")
    assert room["whole"] > 2 * room["window"] and 320 >= room["across"]
    text, stage, ways = room["heights"]
    assert text > 60 and stage > 150 and ways > 48
    page.evaluate("document.querySelector('[data-lesson]').scrollTo(0, 9999)")
    assert page.evaluate("document.querySelector('[data-lesson]').scrollTop") > 100
    assert [] == page.evaluate(FLAT)
    assert [] == violations(page)
