"""Python's cold module in a page: fetched when a call needs it, said when it cannot be had, there without a network.

No page of the site needs it. Here one does: its Python is split as if nobody had ever packed a PDF.
"""

import json
import re
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from browser.asking import SLUG, wait_until
from browser.engines import opened
from browser.kept import FRESH, MADE, OFFLINE, READY, SOON, keeping, visit
from browser.resplit import resplit
from browser.test_pdf_files import by_cpython, saved
from making import called
from making.paths import PYODIDE
from making.serve import serving
from making.splitting import COLD, WASM
from making.wasm.module import Module
from playwright.sync_api import Browser, BrowserContext, Playwright

from pycore.words import furniture
from pycore.words.api import PART_MISSING

PACKS = "deflate"
"""The function that packs what is in a PDF."""

CATCH = """const plain = URL.createObjectURL;
URL.createObjectURL = (blob) => { window.saved = blob; return plain.call(URL, blob); };
document.querySelector('[data-action=pdf]').click();"""


STARTS = "PyInit_math"
"""One that every start calls which no kept memory spares."""


def without(name: str, dist: Path, host: Path) -> Path:
    """The site, under a sub-path of `host`, with the function of that name in the cold module."""
    wasm = (PYODIDE / WASM).read_bytes()
    whole, used = Module(wasm), called.used_in(wasm)
    assert used
    one = next(one.number - whole.asked for one in whole.exports if one.name == name)
    return resplit(dist, host, replace(used, called=used.called - {one}))


@pytest.fixture(scope="module")
def folder(dist: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site with the function that packs in the cold module."""
    return without(PACKS, dist, tmp_path_factory.mktemp("host"))


@pytest.fixture
def cold_site(folder: Path) -> Iterator[str]:
    """Its address."""
    with serving(folder.parent) as address:
        yield f"{address}{folder.name}/"


def noted(context: BrowserContext) -> list[str]:
    """Every request of the context for the cold module, as it is made."""
    asked: list[str] = []
    context.on("request", lambda request: COLD in request.url and asked.append(request.url))
    return asked


def test_a_call_waits_for_it_and_gives_what_it_always_gives(
    browser: Browser, cold_site: str, tmp_path: Path
) -> None:
    with keeping(browser, cold_site, faults=True, service_workers="block") as context:
        asked, page = noted(context), visit(context, f"{cold_site}{SLUG}/")
        wait_until(page, FRESH)
        assert [] == asked
        found = saved(page, "pdf", tmp_path / "sheet.pdf")
        assert by_cpython(page) == found
        assert found == saved(page, "pdf", tmp_path / "again.pdf")
        assert 1 == len(asked)
        assert re.fullmatch(r"\d+", page.get_attribute("html", "data-cold") or "")


def test_where_it_cannot_be_had_it_is_said_and_the_next_request_tries_anew(
    browser: Browser, cold_site: str, tmp_path: Path
) -> None:
    with keeping(browser, cold_site, faults=True, service_workers="block") as context:
        page = visit(context, f"{cold_site}{SLUG}/")
        page.fill("[name=i1]", "31.5")
        wait_until(page, FRESH)
        page.route(f"**/{COLD}*", lambda route: route.abort())
        page.click("[data-action=pdf]")
        said = "document.querySelector('[data-progress-text]').textContent"
        wait_until(page, f"{said} === {json.dumps(PART_MISSING)}", 60)
        # It stays while the next Python starts.
        page.wait_for_timeout(1500)
        assert PART_MISSING == page.inner_text("[data-progress-text]")
        assert page.locator("[data-progress]").is_visible()
        assert "31.5" == page.input_value("[name=i1]")
        # What does not need it is answered.
        page.fill("[name=i1]", "32.5")
        wait_until(page, f"{READY} && {FRESH} && location.hash.includes('32.5')", 60)
        page.unroute(f"**/{COLD}*")
        assert by_cpython(page) == saved(page, "pdf", tmp_path / "sheet.pdf")


def test_a_start_that_lacks_it_is_tried_anew_and_then_says_so(browser: Browser, dist: Path, tmp_path: Path) -> None:
    """It is no hang: the reader hears of it at once, and can try again once the file can be had."""
    folder = without(STARTS, dist, tmp_path)
    with serving(tmp_path) as address, keeping(browser, address, faults=True, service_workers="block") as context:
        asked, page = noted(context), context.new_page()
        page.route(f"**/{COLD}*", lambda route: route.abort())
        page.goto(f"{address}{folder.name}/{SLUG}/")
        wait_until(page, "document.documentElement.dataset.python === 'failed'", 20)
        assert 2 <= len(asked)
        assert furniture.FAILED == page.inner_text("[data-progress-text]")
        page.unroute(f"**/{COLD}*")
        page.click("[data-retry]")
        wait_until(page, f"{READY} && {FRESH}", 40)
        page.fill("[name=i1]", "31.5")
        wait_until(page, f"{FRESH} && location.hash.includes('31.5')")


def test_a_start_that_lacks_it_once_begins_again_with_it(browser: Browser, dist: Path, tmp_path: Path) -> None:
    folder = without(STARTS, dist, tmp_path)
    with serving(tmp_path) as address, keeping(browser, address, faults=True, service_workers="block") as context:
        page = context.new_page()
        page.route(f"**/{COLD}*", lambda route: route.abort(), times=1)
        page.goto(f"{address}{folder.name}/{SLUG}/")
        wait_until(page, f"{READY} && {FRESH}", 40)


def test_a_memory_is_made_though_that_takes_the_cold_module(browser: Browser, dist: Path, tmp_path: Path) -> None:
    """What the maker says in between is not taken for its end."""
    folder = without(STARTS, dist, tmp_path)
    with serving(tmp_path) as address, keeping(browser, address, faults=True, service_workers="block") as context:
        page = context.new_page()
        page.add_init_script(SOON)
        page.goto(f"{address}{folder.name}/{SLUG}/")
        wait_until(page, f"{READY} && {FRESH}", 40)
        wait_until(page, MADE, 40)


def test_it_comes_last_of_all_onto_the_device_and_from_there_without_a_network(
    browser: Browser, folder: Path, tmp_path: Path
) -> None:
    """The host is gone, not only out of reach: what the page has, it has from the device."""
    with serving(folder.parent) as address, keeping(browser, address, faults=True) as context:
        place = f"{address}{folder.name}/"
        page = visit(context, f"{place}{SLUG}/", whole=True)
        wait_until(page, OFFLINE, 60)
        cached = page.evaluate("""async () => {
          const [name] = (await caches.keys()).filter((one) => one.startsWith("phasor-folio-edition"));
          return (await (await caches.open(name)).keys()).map(({ url }) => url);
        }""")
        assert [url for url in cached if url.endswith(COLD)]
        assert cached.index(next(url for url in cached if url.endswith(COLD))) >= len(cached) - 4
        context.set_offline(True)
        page.reload()
        wait_until(page, f"{READY} && {FRESH}", 60)
        assert by_cpython(page) == saved(page, "pdf", tmp_path / "sheet.pdf")


@pytest.mark.parametrize("name", ["Firefox", "WebKitGTK"])
def test_other_engines_wait_for_it_too(
    playwright: Playwright, cold_site: str, name: str, tmp_path_factory: pytest.TempPathFactory
) -> None:
    with opened(name, playwright, tmp_path_factory.mktemp("home")) as engine:
        engine.go(f"{cold_site}{SLUG}/")
        engine.wait(f"{READY} && {FRESH}")
        engine.run(CATCH)
        engine.wait("window.saved")
        assert engine.value("window.saved.size") > 10_000
        assert engine.value("document.documentElement.dataset.cold")
        assert [] == engine.faults()
