"""Python's warm data in a page: its first answer comes without, and all else waits for it.

What waits is held back here on its way, and until it comes its place in memory is not even zero: what reads it too
early says something else.
"""

import json
import math
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from browser.asking import DESK, PHONE, SLUG, result, state, wait_until
from browser.engines import opened
from browser.kept import FRESH, MADE, OFFLINE, READY, SOON, keeping, visit
from browser.resplit import resplit
from making import called
from making.paths import PYODIDE
from making.serve import serving
from making.splitting import WARM, WASM
from playwright.sync_api import Browser, BrowserContext, Page, Playwright, Route

from pycore import api
from pycore.calculators.registry import CALCULATORS
from pycore.words import furniture
from pycore.words.api import PART_MISSING

LISTENS = """window.asked = [];
window.replies = [];
window.Worker = new Proxy(Worker, { construct(made, given) {
  const worker = new made(...given);
  const post = worker.postMessage;
  worker.postMessage = (message, ...more) => {
    if (message.text) window.asked.push(message.text);
    return post.call(worker, message, ...more);
  };
  worker.addEventListener("message", ({ data }) => data.text && window.replies.push(data.text));
  return worker;
} });"""
"""Notes what a page asks of Python, and what Python says."""

FORGET = """async () => {
  for (const name of await caches.keys()) if (name.startsWith("phasor-folio-memory")) await caches.delete(name);
}"""
FAR = "document.querySelector('[data-progress-far]').textContent"
SAID = "document.querySelector('[data-progress-text]').textContent"


@pytest.fixture(scope="module")
def folder(dist: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site whose later data is not zero before it comes."""
    used = called.used_in((PYODIDE / WASM).read_bytes())
    assert used and used.touched
    return resplit(dist, tmp_path_factory.mktemp("host"), used, poison=True)


@pytest.fixture(scope="module")
def warm_site(folder: Path) -> Iterator[str]:
    """Its address."""
    with serving(folder.parent) as address:
        yield f"{address}{folder.name}/"


class Held:
    """The warm data's requests, held back until they are let go."""

    def __init__(self, context: BrowserContext) -> None:
        self.routes: list[Route] | None = []
        context.route(f"**/{WARM}*", self._hold)

    def _hold(self, route: Route) -> None:
        if self.routes is None:
            route.continue_()
        else:
            self.routes.append(route)

    def let_go(self) -> None:
        """Let all requests through, those to come too."""
        waiting, self.routes = self.routes or [], None
        for route in waiting:
            route.continue_()


def same_as_here(page: Page) -> int:
    """How many replies the page has had, each of which is what pycore says here, unless its modules had yet to come."""
    asked, replies = page.evaluate("[window.asked, window.replies]")
    for request, reply in zip(asked, replies, strict=False):
        if '"missing"' in reply:
            continue
        assert json.loads(api.handle(request)[0]) == json.loads(reply), request
    return len(replies)


@pytest.mark.parametrize(("slug", "screen"), [*((slug, PHONE) for slug in CALCULATORS), (SLUG, DESK)])
def test_a_first_answer_is_what_it_is_without_the_warm_data(
    browser: Browser, warm_site: str, slug: str, screen: dict[str, int]
) -> None:
    """On a phone the page asks for one part more. What else is asked later is right as well."""
    with keeping(browser, warm_site, service_workers="block", viewport=screen, locale="pt-BR") as context:
        held, page = Held(context), context.new_page()
        page.add_init_script(LISTENS)
        page.goto(f"{warm_site}{slug}/")
        wait_until(page, f"{READY} && {FRESH}", 60)
        assert 1 == same_as_here(page)
        assert held.routes
        held.let_go()
        wait_until(page, "window.replies.length > 1", 60)
        assert same_as_here(page) > 1


def assert_said(page: Page, sentence: str) -> None:
    """What the page waits for is said, with how much of all that is here: the warm data is counted."""
    wait_until(page, f"{SAID}.startsWith({json.dumps(sentence)})", 20)
    assert page.is_visible("[data-progress]")
    wait_until(page, f"/here/.test({FAR})", 10)
    _, whole = map(float, re.findall(r"\d+\.\d", page.evaluate(FAR)))
    wasm, archives, coded, warm = map(int, (page.get_attribute("html", "data-size") or "").split())
    assert math.isclose(whole, (wasm + archives + warm + (coded if "code=" in page.url else 0)) / 1e6, abs_tol=0.06)


def test_an_edit_waits_for_it(browser: Browser, warm_site: str) -> None:
    with keeping(browser, warm_site, service_workers="block") as context:
        held, page = Held(context), visit(context, f"{warm_site}{SLUG}/")
        wait_until(page, FRESH)
        before = result(page)
        page.fill("[name=i1]", "31.5")
        page.wait_for_timeout(700)
        assert ("pending", before) == (state(page), result(page))
        assert_said(page, furniture.LOADING_REST)
        held.let_go()
        wait_until(page, f"{FRESH} && location.hash.includes('31.5')", 30)
        assert before != result(page)
        assert not page.get_attribute("html", "data-cold")
        assert not page.is_visible("[data-progress]")


@pytest.mark.parametrize(("link", "said"), [
    ("#v=3&i1=31.5&i2=20&i3=10", furniture.LOADING_VALUES),
    ("#v=3&code=332-6M9-239", furniture.LOADING_CODE.format(code="332-6M9-239")),
    ("#v=3&sheet=problem", furniture.LOADING_REST),
])  # fmt: skip
def test_a_link_waits_for_it_and_says_so(browser: Browser, warm_site: str, link: str, said: str) -> None:
    """It said for half a minute of a slow network that all was here, or nothing."""
    with keeping(browser, warm_site, service_workers="block") as context:
        held, page = Held(context), context.new_page()
        page.goto(f"{warm_site}{SLUG}/{link}")
        wait_until(page, "document.documentElement.dataset.answer === 'pending'", 20)
        page.wait_for_timeout(4000)
        assert "pending" == state(page)
        assert_said(page, said)
        held.let_go()
        wait_until(page, f"{READY} && document.documentElement.dataset.answer !== 'pending'", 60)


@pytest.mark.parametrize("place", ["class-set", "practice", "print-setup", "graph-paper"])
def test_a_page_of_another_kind_starts_with_it(browser: Browser, warm_site: str, place: str) -> None:
    with keeping(browser, warm_site, service_workers="block") as context:
        visit(context, f"{warm_site}{place}/").wait_for_timeout(500)


def test_where_it_cannot_be_had_it_is_said_and_the_next_request_tries_anew(browser: Browser, warm_site: str) -> None:
    with keeping(browser, warm_site, faults=True, service_workers="block") as context:
        context.route(f"**/{WARM}*", lambda route: route.abort())
        page = visit(context, f"{warm_site}{SLUG}/")
        wait_until(page, FRESH)
        page.fill("[name=i1]", "31.5")
        wait_until(page, f"{SAID} === {json.dumps(PART_MISSING)}", 30)
        assert ("old", "31.5") == (state(page), page.input_value("[name=i1]"))
        context.unroute(f"**/{WARM}*")
        page.fill("[name=i1]", "32.5")
        wait_until(page, f"{FRESH} && location.hash.includes('32.5')", 30)


def test_a_memory_holds_it(browser: Browser, warm_site: str) -> None:
    """A page that is restored asks for it no more, and answers all the same."""
    with keeping(browser, warm_site, service_workers="block") as context:
        page = context.new_page()
        page.add_init_script(SOON)
        page.goto(f"{warm_site}{SLUG}/")
        wait_until(page, MADE, 60)
        held, again = Held(context), visit(context, f"{warm_site}{SLUG}/")
        assert "true" == again.get_attribute("html", "data-restored")
        again.fill("[name=i1]", "31.5")
        wait_until(again, f"{FRESH} && location.hash.includes('31.5')", 30)
        assert [] == held.routes


def test_it_is_on_the_device_without_a_network(browser: Browser, folder: Path) -> None:
    with serving(folder.parent) as address, keeping(browser, address, faults=True) as context:
        page = visit(context, f"{address}{folder.name}/{SLUG}/", whole=True)
        wait_until(page, OFFLINE, 60)
        context.set_offline(True)
        page.evaluate(FORGET)
        page.reload()
        wait_until(page, f"{READY} && {FRESH}", 60)
        page.fill("[name=i1]", "31.5")
        wait_until(page, f"{FRESH} && location.hash.includes('31.5')", 30)


@pytest.mark.parametrize("name", ["Firefox", "WebKitGTK"])
def test_other_engines_answer_first_without_it_too(
    playwright: Playwright, folder: Path, tmp_path: Path, name: str, tmp_path_factory: pytest.TempPathFactory
) -> None:
    with serving(folder.parent) as address, opened(name, playwright, tmp_path_factory.mktemp("home")) as engine:
        engine.go(f"{address}{folder.name}/{SLUG}/")
        engine.wait(f"{READY} && {FRESH}")
        engine.type("i1", "31.5")
        engine.wait(f"{FRESH} && location.hash.includes('31.5')")
        assert [] == engine.faults()
