"""Where a browser blocks what sites keep, Python starts all the same, and what cannot be kept says so."""

import math
import re

import pytest
from browser.asking import SLUG, neutral, result, wait_until
from browser.engines import Firefox
from browser.kept import FRESH, READY, SOON
from playwright.sync_api import Page, Playwright, Route

from pycore.words import furniture

THROWS = """Object.defineProperty({owner}, "{name}",
  {{ configurable: true, get() {{ throw new DOMException("blocked", "SecurityError"); }} }});"""
GONE = """Object.defineProperty({owner}, "{name}", {{ configurable: true, value: undefined }});"""
REJECTS = """{owner}.prototype.{name} = () => Promise.reject(new DOMException("blocked", "SecurityError"));"""

IN_BOTH = {
    "caches throws": THROWS.format(owner="globalThis", name="caches"),
    "caches is missing": GONE.format(owner="globalThis", name="caches"),
    "caches does not open": REJECTS.format(owner="CacheStorage", name="open"),
    "caches does not delete": REJECTS.format(owner="CacheStorage", name="delete"),
    "a cache gives nothing": REJECTS.format(owner="Cache", name="match"),
    "locks throws": THROWS.format(owner="navigator", name="locks"),
    "locks is missing": GONE.format(owner="navigator", name="locks"),
    "a lock is refused": REJECTS.format(owner="LockManager", name="request"),
    "storage throws": THROWS.format(owner="navigator", name="storage"),
    "room is not told": REJECTS.format(owner="StorageManager", name="estimate"),
    "indexedDB throws": THROWS.format(owner="globalThis", name="indexedDB"),
    "randomUUID is missing": GONE.format(owner="crypto", name="randomUUID"),
}
IN_PAGE = IN_BOTH | {
    "localStorage throws": THROWS.format(owner="globalThis", name="localStorage"),
    "localStorage is missing": GONE.format(owner="globalThis", name="localStorage"),
    "localStorage is full": "Storage.prototype.setItem = () => { throw new DOMException('', 'QuotaExceededError'); };",
    "sessionStorage throws": THROWS.format(owner="globalThis", name="sessionStorage"),
    "serviceWorker throws": THROWS.format(owner="navigator", name="serviceWorker"),
    "serviceWorker is missing": GONE.format(owner="navigator", name="serviceWorker"),
    "no registration": REJECTS.format(owner="ServiceWorkerContainer", name="register"),
}
SAID = "document.querySelector('[data-stored-line] span').textContent"


def lose_in_worker(page: Page, loss: str) -> None:
    """Let Python's worker run `loss` before all else."""

    def fulfil(route: Route) -> None:
        response = route.fetch()
        route.fulfill(response=response, body=f"{loss}\n{response.text()}")

    page.route(re.compile(r"/js/worker\.js$"), fulfil)


def answers(page: Page, address: str) -> None:
    """Python starts, and a value that is typed has its own answer."""
    page.goto(address)
    wait_until(page, f"{READY} && {FRESH}", 30)
    page.fill("[name=i1]", "31.5")
    wait_until(page, f"{FRESH} && location.hash.includes('31.5')")
    assert math.isclose(neutral(31.5, 11.2, 24.6), result(page), rel_tol=1e-11)


@pytest.mark.parametrize("loss", IN_PAGE.values(), ids=IN_PAGE)
def test_a_loss_in_the_page_costs_only_what_it_is_for(page: Page, site: str, loss: str) -> None:
    page.add_init_script(loss)
    answers(page, f"{site}{SLUG}/")


@pytest.mark.parametrize("loss", IN_BOTH.values(), ids=IN_BOTH)
def test_a_loss_in_the_worker_costs_only_what_it_is_for(open_page, site: str, loss: str) -> None:
    # A memory that cannot be read is thrown away: it must not be the one that tests share.
    page = open_page(fresh="CacheStorage" in loss or "Cache." in loss)
    lose_in_worker(page, loss)
    answers(page, f"{site}{SLUG}/")


def test_all_of_it_blocked_in_page_and_worker(fresh_page: Page, site: str) -> None:
    """As where a school's policy blocks cookies: nothing is made for return visits, and what is not kept is said."""
    names = ("caches throws", "locks throws", "storage throws", "indexedDB throws")
    lose_in_worker(fresh_page, "\n".join(IN_BOTH[name] for name in names))
    fresh_page.add_init_script(SOON)
    more = ("localStorage throws", "sessionStorage throws", "serviceWorker throws")
    fresh_page.add_init_script("\n".join(IN_PAGE[name] for name in (*names, *more)))
    answers(fresh_page, f"{site}{SLUG}/")
    assert furniture.CANNOT_STORE == fresh_page.evaluate(SAID)
    assert fresh_page.locator("[data-store]:visible").count() == 0
    fresh_page.wait_for_timeout(1500)
    assert fresh_page.get_attribute("html", "data-memory-made") is None


def test_storing_that_is_refused_when_it_is_asked_for_is_said(page: Page, site: str) -> None:
    page.add_init_script(IN_PAGE["caches does not open"] + "localStorage.setItem('phasor-folio-store', 'no');")
    page.goto(f"{site}{SLUG}/")
    page.click("[data-stored-line] [data-store=yes]", timeout=20_000)
    wait_until(page, f"{SAID} === {furniture.CANNOT_STORE!r}")


def test_firefox_with_all_site_data_blocked(
    playwright: Playwright, site: str, tmp_path_factory: pytest.TempPathFactory
) -> None:
    """The real policy: `network.cookie.cookieBehavior` 2."""
    engine = Firefox(playwright, tmp_path_factory.mktemp("home"), {"network.cookie.cookieBehavior": 2})
    try:
        engine.go(f"{site}{SLUG}/")
        engine.wait(f"{READY} && {FRESH}", 40)
        engine.type("i1", "31.5")
        engine.wait(f"{FRESH} && location.hash.includes('31.5')")
        found = float(engine.value("document.querySelector('output[name=neutral-current]').dataset.value"))
        assert math.isclose(neutral(31.5, 11.2, 24.6), found, rel_tol=1e-11)
        engine.wait(f"{SAID} === {furniture.CANNOT_STORE!r}", 20)
        assert [] == engine.faults()
    finally:
        engine.close()
