"""Contexts in which tests come one after another, so that each need not start Python anew from nothing.

Its Chromium keeps all pages of the site in one process, where one anchor holds the compiled WebAssembly, and its site
the memory that a visitor's browser makes of a started Python: a page starts as on a return visit. Between two tests
all pages are closed and all that they kept is erased, that memory apart.
"""

from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass

from browser.asking import wait_until
from browser.kept import FRESH, MADE, READY, SOON, hold
from playwright.sync_api import Browser, BrowserContext, Page
from playwright.sync_api import Error as PlaywrightError

ONE_PROCESS = "--process-per-site"
"""Or else no page could use what another has compiled."""
UNIMPROVED = "--js-flags=--liftoff-only"
"""WebAssembly runs as it was compiled first, as at every visitor's start, and is not compiled anew meanwhile: that is
two fifths of a start from nothing (2.8 s of a processor against 1.6). Shared rooms do improve it, once."""
MEDIA = ("color_scheme", "reduced_motion", "forced_colors")
BY_PAGE = ("viewport", *MEDIA)
"""Options that a page can be given by itself."""
USUAL = {"accept_downloads": True, "has_touch": False, "is_mobile": False}
"""What a context has where nothing is said."""
SHARED = ({}, {"has_touch": True}, {"has_touch": True, "is_mobile": True})
"""The contexts that are shared; what asks for other options gets a context of its own."""
VISITS = (10, 20, 40, 80)
"""Seconds for each visit. A page that is at work when its quiet seconds are over makes no memory until the next visit;
and a visit that ends while one is made stops the making, which takes long on a busy machine."""
ANEW = "'memoryMade' in document.documentElement.dataset"
KEPT = """async () => {
  localStorage.clear();
  sessionStorage.clear();
  const names = await caches.keys();
  const sizes = names.map(async (name) => (await (await caches.open(name)).keys()).length);
  return [names.map((name) => name.split(" ")[0]), await Promise.all(sizes)];
}"""


@dataclass(frozen=True)
class Room:
    """One shared context and the page in it that stays."""

    context: BrowserContext
    anchor: Page

    def clear(self) -> None:
        """Close every page but the anchor and erase what they kept. Fails if the kept memory did not restore, even if
        a page has made another meanwhile."""
        others = [page for page in self.context.pages if page != self.anchor]
        anew = [page.url for page in others if not page.is_closed() and page.evaluate(ANEW)]
        for page in others:
            page.close()
        self.context.clear_cookies()
        found = self.anchor.evaluate(KEPT)
        assert not anew and [["phasor-folio-memory"], [1]] == found, f"the kept memory did not restore: {found} {anew}"


class Rooms:
    """The shared contexts of one Chromium, each made when first asked for."""

    def __init__(self, browser: Browser, site: str) -> None:
        self.browser, self.site = browser, site
        self._made: dict[str, Room] = {}
        self._taken: set[str] = set()

    def room(self, options: dict[str, object]) -> Room | None:
        """The shared context with these options, that nobody is in; else None."""
        asked = {name: value for name, value in options.items() if name not in BY_PAGE and USUAL.get(name) != value}
        key = repr(sorted(asked.items()))
        if asked not in SHARED or key in self._taken:
            return None
        if key not in self._made:
            self._made[key] = make_room(self.browser, self.site, asked)
        self._taken.add(key)
        return self._made[key]

    @contextmanager
    def test(self) -> Iterator["Rooms"]:
        """What one test has taken is cleared after it; a room that cannot be is given up: one fault is one fault."""
        faults = []
        try:
            yield self
        finally:
            taken, self._taken = self._taken, set()
            for key in taken:
                try:
                    self._made[key].clear()
                except (AssertionError, PlaywrightError) as fault:
                    faults.append(fault)
                    self._give_up(key)
        if faults:
            raise faults[0]

    def _give_up(self, key: str) -> None:
        """Forget a room; the next test that asks gets a new one."""
        room = self._made.pop(key)
        with suppress(PlaywrightError):
            room.context.close()


def make_room(browser: Browser, site: str, options: dict[str, object]) -> Room:
    """A context with a kept memory, made as a visitor's browser makes it."""
    context = browser.new_context(service_workers="block", **options)
    page = context.new_page()
    # For this page alone: a context's clock would be that of every page in it.
    page.add_init_script(SOON)
    for patience in VISITS:
        page.goto(f"{site}print-setup/")
        wait_until(page, f"{READY} && {FRESH}", 60)
        with suppress(AssertionError):
            wait_until(page, MADE, patience)
            break
    wait_until(page, MADE)
    anchor = hold(context, site, page)
    page.close()
    return Room(context, anchor)


def dress(page: Page, options: dict[str, object]) -> Page:
    """Give a page of a shared context the options that it can have by itself."""
    if "viewport" in options:
        page.set_viewport_size(options["viewport"])
    media = {name: options[name] for name in MEDIA if name in options}
    if media:
        page.emulate_media(**media)
    return page
