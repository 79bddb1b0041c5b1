"""What a page does for later visits waits until nobody types: it would make every answer late."""

from datetime import UTC, datetime, timedelta

from browser.asking import SLUG, wait_until
from browser.kept import FRESH, MADE, OFFLINE, READY, keeping
from playwright.sync_api import Browser, Page

BEGAN = datetime(2026, 1, 1, tzinfo=UTC)
SECONDS = 1000  # ms
TYPED = 5
"""How often two values are typed, each a second after the last: in all longer than any wait counted from the start."""


def edit(page: Page, value: str) -> None:
    """Type a value and wait for its answer, while the page's clock stands."""
    page.fill("[name=i1]", value)
    wait_until(page, FRESH)


def test_neither_site_nor_memory_is_kept_while_somebody_types(browser: Browser, site: str) -> None:
    with keeping(browser, site) as context:
        page = context.new_page()
        # The page's clock stands still but for what is run below: a slow machine cannot make it later.
        page.clock.install(time=BEGAN)
        page.clock.pause_at(BEGAN + timedelta(seconds=1))
        page.goto(f"{site}{SLUG}/")
        wait_until(page, f"{READY} && {FRESH}", 60)
        for number in range(TYPED):
            edit(page, f"2{number}.5")
            page.clock.run_for(SECONDS)
            edit(page, f"3{number}.5")
            page.clock.run_for(SECONDS)
        assert 1 == len(page.workers)
        assert not page.evaluate("navigator.serviceWorker.getRegistrations().then((found) => found.length)")
        page.clock.resume()
        wait_until(page, f"{OFFLINE} && {MADE}", 60)
