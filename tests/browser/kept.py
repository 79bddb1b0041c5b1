"""What the tests of a kept site ask: contexts that may keep it, and how far the keeping is."""

from collections.abc import Iterator
from contextlib import contextmanager

from browser.asking import wait_until
from playwright.sync_api import Browser, BrowserContext, Page
from witness import Witness

READY = "document.documentElement.dataset.python === 'ready'"
FRESH = "document.documentElement.dataset.answer === 'fresh'"
OFFLINE = "document.documentElement.dataset.offline === 'ready' && !!navigator.serviceWorker.controller"
MADE = "Number(document.documentElement.dataset.memoryMade) > 0"

WASM = "new URL(`${document.documentElement.dataset.runtime}pyodide.asm.wasm`, location).href"
HOLD = "async (address) => { window.held = await WebAssembly.compileStreaming(fetch(address)); }"
"""A page that holds the compiled WebAssembly spares all starts in its process the compiling."""
SOON = """const plain = setTimeout;
globalThis.setTimeout = (then, wait, ...more) => plain(then, wait === 5_000 ? 500 : wait, ...more);"""
"""The quiet seconds before a memory is made, which nobody need wait for."""


@contextmanager
def keeping(browser: Browser, site: str, *, faults: bool = False, **options: object) -> Iterator[BrowserContext]:
    """A context whose browser may keep the site; anything that goes wrong fails the test unless `faults` are meant."""
    context, witness = browser.new_context(**options), Witness(site)
    context.on("page", witness.watch)
    yield context
    context.close()
    assert faults or not witness.faults, witness.faults


def visit(context: BrowserContext, address: str, *, whole: bool = False) -> Page:
    """A page whose Python is ready; `whole`: and all of the site is on the device."""
    page = context.new_page()
    page.goto(address)
    wait_until(page, READY, 60)
    if whole:
        wait_until(page, OFFLINE, 60)
    return page


def hold(context: BrowserContext, site: str, page: Page) -> Page:
    """A page without scripts that holds the WebAssembly which `page` uses, for all pages of a Chromium of one process
    for each site."""
    anchor = context.new_page()
    anchor.goto(f"{site}licences.txt")
    anchor.evaluate(HOLD, page.evaluate(WASM))
    return anchor
