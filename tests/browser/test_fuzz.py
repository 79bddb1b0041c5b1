"""Malformed links and files of storage: no exception, no markup that runs, always an answer or a message, values kept.

PHASOR_FOLIO_FUZZ gives the number of links; `build.py bench` opens 5,000, a test run a seeded tenth.
"""

import os
from collections.abc import Callable

import pytest
from browser.asking import SLUG, wait_until
from browser.hostile import fragment
from playwright.sync_api import Page, expect

from pycore.words import api as words

COUNT = int(os.environ.get("PHASOR_FOLIO_FUZZ", "500"))
LONG = {"read in part": (100_000, words.LONG_LINK), "refused": (1_900_000, words.REQUEST_TOO_LONG)}
"""Links of so many characters, the longer near the end of what Chromium opens at all, and what is said of them."""

OPEN = """async (fragments) => {
  const root = document.documentElement;
  const wrong = [];
  const settled = async () => {
    for (let turn = 0; turn < 2000; turn++) {
      await new Promise((resolve) => setTimeout(resolve, 4));
      if (root.dataset.answer !== "pending") return true;
    }
    return false;
  };
  for (const [number, fragment] of fragments) {
    location.hash = "";
    location.hash = fragment;
    await new Promise((resolve) => setTimeout(resolve, 0));
    if (!(await settled())) wrong.push([number, "never settled"]);
    if (window.hurt || ({}).x || ({}).polluted) wrong.push([number, "something ran"]);
    if (document.querySelector("main :is(script, img, iframe, b)")) wrong.push([number, "markup"]);
    const places = "[data-message-for]:not([hidden]), [data-waiting], [data-open-notices]";
    const said = [...document.querySelectorAll(places)];
    const silent = said.every((place) => !place.textContent.trim());
    if (root.dataset.answer === "old" && silent) wrong.push([number, "old without a word"]);
  }
  return wrong;
}"""


def test_malformed_links_stop_nothing_and_run_nothing(page: Page, site: str, ready, answered) -> None:
    page.goto(f"{site}{SLUG}/")
    ready(page)
    answered(page)
    for start in range(0, COUNT, 50):
        batch = [[number, fragment(number)] for number in range(start, min(start + 50, COUNT))]
        assert [] == [(number, what, fragment(number)[:200]) for number, what in page.evaluate(OPEN, batch)]
    page.evaluate("location.hash = '#v=1&i1=1&i2=2&i3=3'")
    wait_until(page, "document.querySelector('[name=i1]').value === '1'")
    answered(page)


@pytest.mark.parametrize(("length", "said"), LONG.values(), ids=LONG)
def test_a_link_that_is_too_long_is_refused_in_words(page: Page, site, ready, answered, length: int, said: str) -> None:
    page.goto(f"{site}{SLUG}/")
    ready(page)
    answered(page)
    page.evaluate("(length) => { location.hash = '#v=1&i1=' + '9'.repeat(length); }", length)
    assert length < page.evaluate("location.hash.length"), "the browser has not opened the link"
    told = page.locator("[data-open-notices]:not([hidden]), [data-waiting]:not([hidden])", has_text=said)
    expect(told.first).to_be_visible(timeout=30_000)
    for name in ("i1", "i2", "i3"):
        page.fill(f"[name={name}]", "31.5")
    wait_until(page, "document.documentElement.dataset.answer === 'fresh'", 30)


def test_hostile_storage_is_left_aside(open_page: Callable[..., Page], site: str, ready) -> None:
    """Deep JSON, prototype keys and markup where the device keeps its printer and its theme."""
    deep, wrong = "[" * 100_000, '{"version":1,"printer":{"along":"<b>"}}'
    values = ['{"__proto__":{"polluted":1}}', deep, wrong, "<img src=x>", "null"]
    page = open_page()
    page.goto(site)
    for value in values:
        for key in ("phasor-folio", "theme"):
            page.evaluate("([key, value]) => localStorage.setItem(key, value)", [key, value])
        page.goto(f"{site}{SLUG}/")
        ready(page)
        assert page.evaluate("({}).polluted === undefined && !document.querySelector('main img[src=x]')")
