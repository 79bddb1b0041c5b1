"""Whatever file of Python does not come whole, the page hears of it soon, says so, and shows no answer of another."""

import re
from collections.abc import Callable

import pytest
from browser.asking import SLUG, neutral, result, wait_until
from browser.kept import keeping
from browser.test_watch import assert_own_answer, broken_off, missing, page_instead
from playwright.sync_api import Browser, Page, Route

from pycore.words import furniture

NEEDED = ("worker.js", "pyodide.js", "pyodide.asm.js", "pyodide.asm.wasm", "library.zip", f"{SLUG}.zip",
          "pyodide-lock.json")  # fmt: skip
OVER = "['ready', 'failed'].includes(document.documentElement.dataset.python)"


def half(route: Route) -> None:
    response = route.fetch()
    body = response.body()
    route.fulfill(status=200, headers={"content-type": response.headers["content-type"]}, body=body[: len(body) // 2])


HOW = (missing, page_instead, half, broken_off)


@pytest.fixture
def opened_without(browser: Browser, site: str):
    """`opened_without(file, how)` opens the page with one file answered by `how(route)`, and waits for its start."""
    with keeping(browser, site, faults=True, service_workers="block") as context:

        def open_without(file: str, how: Callable[[Route], None]) -> Page:
            page = context.new_page()
            page.route(re.compile(rf"/{re.escape(file)}$"), how)
            page.goto(f"{site}{SLUG}/")
            wait_until(page, OVER, 20)
            return page

        yield open_without


@pytest.mark.parametrize("how", HOW, ids=lambda how: how.__name__)
@pytest.mark.parametrize("file", NEEDED)
def test_a_start_without_one_of_its_files_fails_soon_and_in_words(opened_without, file: str, how) -> None:
    page = opened_without(file, how)
    assert "failed" == page.get_attribute("html", "data-python")
    assert furniture.FAILED == page.inner_text("[data-progress-text]")
    assert page.locator("[data-retry]").is_visible()
    assert_own_answer(page)
    page.fill("[name=i1]", "31.5")
    wait_until(page, "document.documentElement.dataset.answer === 'old'")
    page.unroute(re.compile(rf"/{re.escape(file)}$"))
    page.click("[data-retry]")
    wait_until(page, "document.documentElement.dataset.answer === 'fresh'", 40)
    assert abs(neutral(31.5, 11.2, 24.6) - result(page)) < 1e-9


@pytest.mark.parametrize("how", HOW, ids=lambda how: how.__name__)
def test_what_follows_the_answer_is_not_waited_for(opened_without, how) -> None:
    page = opened_without("later.zip", how)
    page.fill("[name=i1]", "31.5")
    wait_until(page, "document.documentElement.dataset.answer === 'fresh' && location.hash.includes('31.5')")
    assert_own_answer(page)
