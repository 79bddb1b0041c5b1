"""A page whose own scripts do not come, or whose browser is too old, says so; no value stands beside another's answer.

Fields and buttons are off until the page's script turns them on, so whatever is cut, nothing can be typed into a page
that does not calculate.
"""

import math
import re
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from browser.asking import PHONE, SLUG, neutral, result, wait_until
from browser.engines import opened
from browser.kept import FRESH, OFFLINE, READY, keeping, visit
from making.serve import serving
from playwright.sync_api import Browser, Page, Playwright, Route

from pycore.words import start
from pycore.words.api import PART_MISSING

NOTICE = "[data-start-notice]"
STATE = "document.documentElement?.dataset.script"
SETTLED = f"{STATE} === 'stopped' || ({STATE} === 'runs' && {READY} && {FRESH})"
CONTROLS = "button, input, select, textarea"
ON = f"""[...document.querySelectorAll({CONTROLS!r})]
  .filter((one) => !one.disabled && !one.matches('[data-theme-switch], [data-start-again], [popovertarget]')).length"""
EXAMPLE = (18.4, 11.2, 24.6)


@pytest.fixture
def cut(browser: Browser, site: str) -> Iterator[Callable[..., Page]]:
    """`cut(pattern, how)` opens the calculator's page with the files of a pattern answered by `how(route)`."""
    options = {"service_workers": "block", "viewport": {"width": 1366, "height": 850}}
    with keeping(browser, site, faults=True, **options) as context:

        def open_cut(pattern: str, how: Callable[[Route], None], fragment: str = "", init: str = "") -> Page:
            page = context.new_page()
            page.add_init_script(init)
            page.route(re.compile(pattern), how)
            page.goto(f"{site}{SLUG}/{fragment}", wait_until="commit")
            return page

        yield open_cut


def said(page: Page) -> list[str]:
    """The sentences of the notice."""
    return page.locator(f"{NOTICE} p").all_inner_texts()


def stopped(page: Page) -> list[str]:
    """Wait until a page has said why it does not start; gives what it says. Every field and button is off."""
    wait_until(page, f"{STATE} === 'stopped' && !!document.querySelector({NOTICE!r})", 20)
    wait_until(page, "document.readyState === 'complete'", 20)
    assert 0 == page.evaluate(ON)
    return said(page)


def type_into(page: Page, name: str, text: str) -> None:
    """What a hasty reader does: press the field, clear it, type."""
    page.mouse.click(*page.locator(f"[name={name}]").evaluate(
        "(one) => { one.scrollIntoView(); const b = one.getBoundingClientRect(); return [b.x + 9, b.y + 9]; }"
    ))  # fmt: skip
    page.keyboard.press("Control+A")
    page.keyboard.type(text)


def assert_own_answer(page: Page) -> None:
    """The answer in view is that of the values in the fields, or is marked as another's, or is not in view."""
    values = [page.input_value(f"[name={name}]") for name in ("i1", "i2", "i3")]
    if page.get_attribute("html", "data-opening") or page.get_attribute("html", "data-answer") == "old":
        return
    assert math.isclose(neutral(*map(float, values)), result(page), rel_tol=1e-9), values


def missing(route: Route) -> None:
    route.fulfill(status=404, content_type="text/html", body="<h1>Not found</h1>")


def page_instead(route: Route) -> None:
    """As a host that gives its front page for whatever it lacks."""
    route.fulfill(status=200, content_type="text/html; charset=utf-8", body="<!doctype html><title>Home</title>")


def page_as_script(route: Route) -> None:
    route.fulfill(status=200, content_type="text/javascript", body="<!doctype html><title>Home</title>")


def plain_text(route: Route) -> None:
    """As a host that does not know the type, and forbids guessing."""
    headers = {"content-type": "text/plain", "x-content-type-options": "nosniff"}
    route.fulfill(status=200, headers=headers, body=route.fetch().text())


def halved(route: Route) -> None:
    text = route.fetch().text()
    route.fulfill(status=200, content_type="text/javascript", body=text[: len(text) // 2])


def broken_off(route: Route) -> None:
    route.abort("connectionreset")


HOW = (missing, page_instead, page_as_script, plain_text, halved, broken_off)
SCRIPTS = {
    "the page's script": r"/js/sheet\.js",
    "what it imports": r"/js/chunk-[^/]*\.js|/js/[a-z-]+-[A-Z0-9]{8}\.js",
    "the policy's module": r"/js/trusted\.js",
    "what sends for Python": r"/js/early\.js",
}


@pytest.mark.parametrize("how", HOW, ids=lambda how: how.__name__)
@pytest.mark.parametrize("pattern", SCRIPTS.values(), ids=SCRIPTS)
def test_a_script_that_does_not_come_is_said_and_nothing_can_be_typed(cut, pattern: str, how) -> None:
    page = cut(pattern, how)
    wait_until(page, f"document.readyState === 'complete' && ({SETTLED})", 40)
    type_into(page, "i1", "31.5")
    page.wait_for_timeout(100)
    wait_until(page, SETTLED, 20)
    assert_own_answer(page)
    if page.evaluate(STATE) == "stopped":
        assert start.EXAMPLE == stopped(page)[-1]
        assert re.search(r"\.js\. So the fields", said(page)[0]), said(page)
        assert "18.4" == page.input_value("[name=i1]")
    else:
        # What the page can do without.
        assert how is not missing and "31.5" == page.input_value("[name=i1]")


LATE_NEWS = """addEventListener("error", (event) => {
  if (!event.isTrusted || event.target.tagName !== "SCRIPT") return;
  event.stopImmediatePropagation();
  addEventListener("load", () => setTimeout(() => event.target.dispatchEvent(new Event("error")), 50));
}, true);"""
"""A busy browser: it says which script failed once the page has loaded."""


def test_a_script_whose_failure_is_told_after_the_page_has_loaded_is_named(cut) -> None:
    page = cut(SCRIPTS["the page's script"], missing, init=LATE_NEWS)
    assert "sheet.js" in stopped(page)[0]


def bare(route: Route) -> None:
    route.fulfill(status=404, body="x")


@pytest.mark.parametrize("how", [missing, broken_off, bare], ids=lambda how: how.__name__)
def test_styles_that_do_not_come_stop_the_page_too(cut, how) -> None:
    """They alone hide the example where a link's problem is awaited."""
    page = cut(r"/css/sheet\.css", how)
    assert "sheet.css" in stopped(page)[0]
    assert_own_answer(page)


@pytest.mark.parametrize("share", [0.03, 0.2, 0.4, 0.6, 0.8, 0.97])
def test_a_page_that_is_cut_off_stands_still(cut, share: float) -> None:
    """Cut off before the watch is there, it has nothing to type into either."""

    def how(route: Route) -> None:
        if not route.request.url.endswith(f"{SLUG}/"):
            route.continue_()
            return
        text = route.fetch().text()
        route.fulfill(status=200, content_type="text/html; charset=utf-8", body=text[: int(len(text) * share)])

    page = cut(rf"/{SLUG}/$", how)
    wait_until(page, "document.readyState === 'complete'", 20)
    if page.evaluate(f"{STATE} === undefined"):
        assert 0 == page.locator(CONTROLS).count()
        assert share < 0.1
    else:
        assert start.RELOAD in stopped(page)


def test_what_a_browser_fills_in_again_is_put_back(cut) -> None:
    """As some do when a page is loaded anew: the value is that of the earlier visit, the answer the example's."""
    fills = "addEventListener('DOMContentLoaded', () => { document.querySelector('[name=i1]').value = '31.5'; });"
    page = cut(SCRIPTS["the page's script"], missing, init=fills)
    stopped(page)
    wait_until(page, "document.querySelector('[name=i1]').value === '18.4'")
    assert_own_answer(page)


def test_a_link_in_a_browser_that_is_too_old_shows_nothing_of_the_example(cut) -> None:
    page = cut("^never$", missing, "#v=1&i1=31.5&i2=7.25&i3=12.5", "delete globalThis.WebAssembly;")
    assert start.LINK == stopped(page)[-1]
    assert page.locator("#answer .headline, #answer output").first.is_hidden()
    assert 0 == page.locator("[data-start-again]").count()


def test_a_link_whose_page_does_not_start_shows_nothing_of_the_example(cut) -> None:
    page = cut(SCRIPTS["the page's script"], missing, "#v=1&i1=31.5&i2=7.25&i3=12.5")
    assert start.LINK == stopped(page)[-1]
    assert page.locator("#answer .headline, #answer output").first.is_hidden()


def test_what_an_extension_puts_into_the_page_does_not_stop_it(cut) -> None:
    """A style of another's that is refused, and a script that throws."""
    page = cut("^never$", missing, init="""
      addEventListener("DOMContentLoaded", () => {
        const link = { rel: "stylesheet", href: "http://127.0.0.1:9/other.css" };
        document.head.append(Object.assign(document.createElement("link"), link));
      });
      new MutationObserver(() => { throw new Error("another's"); }).observe(document, { childList: true });""")
    wait_until(page, f"{READY} && {FRESH}", 40)
    assert 0 == page.locator(NOTICE).count()


def test_what_takes_long_is_said_and_taken_back(cut) -> None:
    held: list[Route] = []
    page = cut(SCRIPTS["the page's script"], lambda route: held.append(route))
    wait_until(page, f"!!document.querySelector({NOTICE!r})", 10)
    assert [start.LATE] == said(page)
    assert 0 == page.evaluate(ON)
    held[0].continue_()
    wait_until(page, f"{READY} && {FRESH}", 40)
    assert 0 == page.locator(NOTICE).count()
    page.fill("[name=i1]", "31.5")
    wait_until(page, f"{FRESH} && location.hash.includes('31.5')")
    assert_own_answer(page)


def test_a_part_that_is_gone_from_the_host_is_said_when_it_is_asked_for(cut) -> None:
    """An edition later, a page that is still open asks for a script of its own."""
    page = cut(r"/js/photo-[A-Z0-9]{8}\.js", missing)
    wait_until(page, f"{READY} && {FRESH}", 40)
    page.evaluate("document.querySelector('[data-action=photo]').click()")
    wait_until(page, f"document.querySelector('[data-progress-text]').textContent === {PART_MISSING!r}")


LOSSES = {
    "no WebAssembly": ("wasm", "delete globalThis.WebAssembly;"),
    "WebAssembly is not compiled as it comes": ("wasm", "delete WebAssembly.compileStreaming;"),
    "an old WebAssembly": ("wasm", "WebAssembly.validate = () => false;"),
    "no workers": ("workers", "delete globalThis.Worker;"),
    "no streams": ("streams", "delete globalThis.ReadableStream;"),
    "bodies are no streams": ("streams", "delete Response.prototype.body;"),
    "no dialogs": ("dialogs", "delete HTMLDialogElement.prototype.showModal;"),
    "no dialog element": ("dialogs", "delete globalThis.HTMLDialogElement;"),
    "no modules": ("script", "delete HTMLScriptElement.prototype.noModule;"),
    "no Object.hasOwn": ("script", "delete Object.hasOwn;"),
    "no at": ("script", "delete Array.prototype.at;"),
    "no replaceAll": ("script", "delete String.prototype.replaceAll;"),
    "no checkVisibility": ("script", "delete Element.prototype.checkVisibility;"),
    "no AbortSignal.timeout": ("script", "delete AbortSignal.timeout;"),
}


@pytest.mark.parametrize(("lacks", "loss"), LOSSES.values(), ids=LOSSES)
def test_what_the_browser_lacks_is_said_before_the_start(cut, lacks: str, loss: str) -> None:
    page = cut("^never$", missing, init=loss)
    sentences = stopped(page)
    assert start.OLD.replace("{needed}", start.NEEDED[lacks]) == sentences[0]
    assert start.NEWER == sentences[1]
    assert (start.POLICY in sentences) == (lacks == "wasm")
    assert start.EXAMPLE == sentences[-1]
    assert [] == page.workers
    assert_own_answer(page)


def test_a_page_opened_as_a_file_says_how_to_serve_it(browser: Browser, dist: Path) -> None:
    context = browser.new_context(viewport=PHONE)
    page = context.new_page()
    page.goto(f"file://{dist}/{SLUG}/index.html")
    sentences = stopped(page)
    # What needs no script of the page's works as ever.
    page.click("button.menu")
    assert page.locator(".pages a").first.is_visible()
    page.locator("[data-theme-switch]").click()
    assert "night" == page.get_attribute("html", "data-theme")
    context.close()
    assert [start.FILE, start.SERVE, start.EXAMPLE] == sentences


def test_without_javascript_nothing_can_be_typed(browser: Browser, site: str) -> None:
    context = browser.new_context(java_script_enabled=False, viewport=PHONE)
    page = context.new_page()
    page.goto(f"{site}{SLUG}/")
    assert page.locator("[name=i1]").is_disabled()
    context.close()


def test_loading_again_leaves_a_bad_edition_that_is_kept(browser: Browser, dist: Path, tmp_path: Path) -> None:
    """The kept page's script throws, the host has a good one by now: one press, and the page is the host's."""
    folder = tmp_path / "host" / "folio"
    shutil.copytree(dist, folder)
    with serving(tmp_path / "host") as address, keeping(browser, address, faults=True) as context:
        page = visit(context, f"{address}folio/{SLUG}/", whole=True)
        # As if the kept edition had been published so.
        page.add_init_script("if (!sessionStorage.mended) window.matchMedia = undefined;")
        page.reload()
        assert start.RELOAD in stopped(page)
        page.evaluate("sessionStorage.mended = 1")
        with page.expect_navigation():
            page.click("[data-start-again]")
        wait_until(page, f"{READY} && {FRESH}", 60)
        assert page.evaluate("!navigator.serviceWorker.controller")
        wait_until(page, OFFLINE.split(" && ")[0], 60)


@pytest.mark.parametrize("damage", ["gone", "a page instead", "cut short", "styles gone"])
@pytest.mark.parametrize("name", ["Firefox", "WebKitGTK"])
def test_other_engines_say_it_too(
    playwright: Playwright, dist: Path, tmp_path: Path, name: str, damage: str, tmp_path_factory: pytest.TempPathFactory
) -> None:
    shutil.copytree(dist, tmp_path / "host")
    script, style = (next((tmp_path / "host").glob(f"a/*/{kind}/sheet.{kind}")) for kind in ("js", "css"))
    if damage == "a page instead":
        script.write_text("<!doctype html><title>Home</title>", "utf-8")
    elif damage == "cut short":
        script.write_bytes(script.read_bytes()[:9000])
    else:
        (style if damage == "styles gone" else script).unlink()
    with serving(tmp_path / "host") as address, opened(name, playwright, tmp_path_factory.mktemp("home")) as engine:
        engine.load(f"{address}{SLUG}/")
        engine.wait(f"{STATE} === 'stopped' && document.readyState === 'complete'", 20)
        sentences = engine.value(f"[...document.querySelectorAll('{NOTICE} p')].map((one) => one.textContent)")
        assert [start.RELOAD, start.EXAMPLE] == sentences[1:]
        assert (style if damage == "styles gone" else script).name in sentences[0]
        assert 0 == engine.value(ON)


@pytest.mark.parametrize("slug", [
    "", "practice/", "class-set/", "print-setup/", "graph-paper/", "series-circuit/", "this-device/",
])
def test_every_page_with_fields_is_watched_and_runs(page: Page, site: str, slug: str) -> None:
    page.set_viewport_size(PHONE)
    page.goto(site + slug)
    wait_until(page, f"{STATE} === 'runs'", 20)
    assert 0 == page.locator("[data-off]").count()
    assert 0 == page.locator(NOTICE).count()
