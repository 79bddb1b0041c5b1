"""What no page's first answer needs follows it: nothing waits for it but what cannot do without."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from browser.asking import SLUG, wait_until
from browser.kept import FRESH, READY, keeping
from playwright.sync_api import Browser, BrowserContext, Download, Page, Route, expect


@pytest.fixture
def context(browser: Browser, site: str) -> Iterator[BrowserContext]:
    """A fresh visit, whose archives a test may hold up."""
    with keeping(browser, site, faults=True, service_workers="block") as fresh:
        yield fresh


def held(page: Page, routes: list[Route]) -> Route:
    """The one request for the rest of pycore, once it has been asked for."""
    for _ in range(500):
        page.wait_for_timeout(20)
        if routes:
            break
    [route] = routes
    return route


def test_the_first_answers_come_before_the_rest_and_a_pdf_waits_for_it(context: BrowserContext, site: str) -> None:
    routes: list[Route] = []
    downloads: list[Download] = []
    page = context.new_page()
    page.on("download", lambda download: downloads.append(download))
    page.route("**/later.zip", lambda route, _request: routes.append(route))
    page.goto(f"{site}{SLUG}/")
    wait_until(page, f"{READY} && {FRESH}", 60)
    route = held(page, routes)
    page.fill("[name=i1]", "31.5")
    wait_until(page, FRESH)
    page.click("[data-action=pdf]")
    page.fill("[name=i1]", "32.5")
    wait_until(page, FRESH)
    assert [] == downloads
    with page.expect_download() as waiting:
        route.continue_()
    assert b"%PDF-1.7" == Path(waiting.value.path()).read_bytes()[:8]
    assert 1 == len(routes)


def test_where_the_rest_cannot_be_had_it_is_said_and_the_next_try_works(context: BrowserContext, site: str) -> None:
    page = context.new_page()
    page.route("**/later.zip", lambda route: route.abort())
    page.goto(f"{site}{SLUG}/")
    wait_until(page, f"{READY} && {FRESH}", 60)
    page.click("[data-action=pdf]")
    expect(page.get_by_text("could not be loaded").first).to_be_attached(timeout=20_000)
    page.fill("[name=i1]", "31.5")
    wait_until(page, FRESH)
    page.unroute("**/later.zip")
    with page.expect_download() as waiting:
        page.click("[data-action=pdf]")
    assert b"%PDF-1.7" == Path(waiting.value.path()).read_bytes()[:8]


def test_a_page_asks_for_its_own_archive_and_no_other_pages(context: BrowserContext, site: str) -> None:
    page = context.new_page()
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(f"{site}two-wattmeters/")
    wait_until(page, f"{READY} && {FRESH}", 60)
    names = [url.rsplit("/", 1)[1] for url in asked if url.endswith(".zip")]
    assert {"library.zip", "two-wattmeters.zip"} <= set(names) <= {"library.zip", "two-wattmeters.zip", "later.zip"}
