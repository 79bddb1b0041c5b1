"""Whatever happens to worker, files, storage, clock or window: the page recovers, says so, and keeps what was typed."""

import math
import time
from pathlib import Path

import pytest
from browser.asking import SLUG, neutral, result, wait_until
from browser.kept import FRESH, HOLD, READY, WASM, keeping, visit
from playwright.sync_api import Browser, Page

DEATHS = 20
TOLD = "!document.querySelector('[data-progress]').hidden && document.querySelector('[data-progress-text]').textContent"


def kill(page: Page) -> None:
    """End Python's thread from inside, as a browser that is short of memory would: the page is not told."""
    page.workers[-1].evaluate("setTimeout(() => self.close())")


def test_a_worker_killed_twenty_times_in_mid_calculation_costs_nothing(browser: Browser, site: str) -> None:
    """The edit is answered all the same, by the next worker; what happened is said; nothing typed is lost."""
    with keeping(browser, site, faults=True, service_workers="block") as context:
        page = visit(context, f"{site}{SLUG}/")
        page.evaluate("document.documentElement.dataset.memory = ''")
        page.evaluate(HOLD, page.evaluate(WASM))  # twenty starts need not compile it twenty times
        for death in range(DEATHS):
            value = f"{20 + death}.5"
            kill(page)
            page.fill("[name=i1]", value)
            wait_until(page, TOLD, 20)
            assert page.get_attribute("[data-progress]", "data-again") == page.inner_text("[data-progress-text]")
            wait_until(page, f"{READY} && {FRESH}", 60)
            assert value == page.input_value("[name=i1]")
            assert math.isclose(neutral(float(value), 11.2, 24.6), result(page), rel_tol=1e-11)


def test_a_worker_that_hangs_is_ended_and_the_next_edit_answered(browser: Browser, site: str) -> None:
    with keeping(browser, site, faults=True, service_workers="block") as context:
        page = context.new_page()
        page.clock.install()
        page.goto(f"{site}{SLUG}/")
        wait_until(page, READY, 60)
        page.workers[-1].evaluate("setTimeout(() => { for (;;); })")
        page.fill("[name=i1]", "31.5")
        # By then it has been asked; that a worker is silent for so long need not be waited for.
        wait_until(page, "'late' in document.documentElement.dataset")
        page.clock.fast_forward(20_000)
        wait_until(page, TOLD, 20)
        wait_until(page, f"{READY} && {FRESH}", 60)
        assert math.isclose(neutral(31.5, 11.2, 24.6), result(page), rel_tol=1e-11)


def test_webassembly_cut_short_is_fetched_again_then_said(browser: Browser, site: str, dist: Path) -> None:
    """Once: the page starts all the same. Always: it says that it failed, soon, and another try works."""
    whole = next((dist / "py").rglob("pyodide.asm.wasm")).read_bytes()
    with keeping(browser, site, faults=True, service_workers="block") as context:
        page = context.new_page()
        cut: list[int] = []

        def half(route) -> None:
            cut.append(1)
            route.fulfill(body=whole[: len(whole) // 2], content_type="application/wasm")

        page.route("**/*.wasm", half, times=1)
        page.goto(f"{site}{SLUG}/")
        wait_until(page, READY, 60)
        assert [1] == cut
        page.route("**/*.wasm", half)
        page.reload()
        page.fill("[name=i1]", "31.5")
        began = time.monotonic()
        wait_until(page, "document.documentElement.dataset.python === 'failed'", 40)
        assert time.monotonic() - began < 40
        assert page.get_attribute("[data-progress]", "data-failed") == page.inner_text("[data-progress-text]")
        assert "31.5" == page.input_value("[name=i1]")
        page.unroute("**/*.wasm")
        page.click("[data-retry]")
        wait_until(page, f"{READY} && {FRESH}", 60)
        assert math.isclose(neutral(31.5, 11.2, 24.6), result(page), rel_tol=1e-11)


DENIED = """for (const name of ["localStorage", "sessionStorage", "caches", "indexedDB"]) {
  Object.defineProperty(globalThis, name, { get() { throw new DOMException("denied", "SecurityError"); } });
}
Object.defineProperty(navigator, "serviceWorker", { value: { register: () => Promise.reject(new Error("denied")),
  addEventListener() {} } });"""
FULL = """const full = () => { throw new DOMException("full", "QuotaExceededError"); };
Storage.prototype.setItem = full;
if (globalThis.Cache) Cache.prototype.put = () => Promise.reject(new DOMException("full", "QuotaExceededError"));
if (navigator.storage) navigator.storage.estimate = () => Promise.resolve({ quota: 1000, usage: 999 });"""
CORRUPT = """try { for (const key of ["phasor-folio", "theme"]) localStorage.setItem(key, "{]\\u0000"); } catch {}
try { sessionStorage.setItem("phasor-folio-typed", '{"page":"neutral-current","values":[[1,2],null]}'); }
catch {}"""
CLOCK = """const now = Date.now; Date.now = () => now() - 40 * 365.25 * 86400e3;"""


@pytest.mark.parametrize("fault", [DENIED, FULL, CORRUPT, CLOCK], ids=["denied", "full", "corrupt", "clock"])
def test_storage_and_clock_may_fail(browser: Browser, site: str, fault: str) -> None:
    with keeping(browser, site, service_workers="block") as context:
        context.add_init_script(fault)
        page = visit(context, f"{site}{SLUG}/")
        page.fill("[name=i1]", "31.5")
        wait_until(page, FRESH)
        assert math.isclose(neutral(31.5, 11.2, 24.6), result(page), rel_tol=1e-11)
        page.wait_for_timeout(2500)
        page.goto(f"{site}print-setup/")
        wait_until(page, READY, 60)


def test_two_windows_do_not_disturb_each_other(browser: Browser, site: str) -> None:
    with keeping(browser, site) as context:
        one = visit(context, f"{site}{SLUG}/", whole=True)
        two = visit(context, f"{site}{SLUG}/")
        one.fill("[name=i1]", "31.5")
        two.fill("[name=i1]", "12.5")
        for page, value in ((one, 31.5), (two, 12.5)):
            wait_until(page, FRESH)
            assert math.isclose(neutral(value, 11.2, 24.6), result(page), rel_tol=1e-11)


def test_a_page_that_is_gone_back_to_goes_on(browser: Browser, site: str) -> None:
    with keeping(browser, site, service_workers="block") as context:
        page = visit(context, f"{site}{SLUG}/")
        page.fill("[name=i1]", "31.5")
        wait_until(page, FRESH)
        page.wait_for_timeout(500)
        page.goto(site)
        page.go_back()
        wait_until(page, f"{READY} && {FRESH}", 60)
        assert "31.5" == page.input_value("[name=i1]")
        page.fill("[name=i2]", "16.5")
        wait_until(page, FRESH, 60)
        assert math.isclose(neutral(31.5, 16.5, 24.6), result(page), rel_tol=1e-11)


def test_a_page_that_left_and_came_back_whole_has_python_again(browser: Browser, site: str) -> None:
    """What a browser does that keeps left pages: `pagehide`, long nothing, `pageshow` with `persisted`."""
    with keeping(browser, site, service_workers="block") as context:
        page = visit(context, f"{site}{SLUG}/")
        page.evaluate("dispatchEvent(new PageTransitionEvent('pagehide', { persisted: true }))")
        for _ in range(500):
            page.wait_for_timeout(20)
            if not page.workers:
                break
        assert [] == page.workers
        page.fill("[name=i1]", "31.5")
        page.evaluate("dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true }))")
        wait_until(page, FRESH, 60)
        assert math.isclose(neutral(31.5, 11.2, 24.6), result(page), rel_tol=1e-11)


def test_a_page_hidden_for_long_whose_worker_was_taken_goes_on(browser: Browser, site: str) -> None:
    with keeping(browser, site, faults=True, service_workers="block") as context:
        page = visit(context, f"{site}{SLUG}/")
        cover = context.new_page()
        cover.goto(site)
        cover.bring_to_front()
        kill(page)
        page.wait_for_timeout(2000)
        page.bring_to_front()
        page.fill("[name=i1]", "31.5")
        wait_until(page, f"{READY} && {FRESH}", 60)
        assert math.isclose(neutral(31.5, 11.2, 24.6), result(page), rel_tol=1e-11)
