"""Python is sent for before the page's own script is there, and nothing that it says meanwhile is lost."""

import math
import re

from browser.asking import SLUG, neutral, result, wait_until
from browser.kept import FRESH, READY, keeping
from playwright.sync_api import Browser, Page, Route

OVERHEARD = """window.stages = [];
window.Worker = class extends Worker {
  constructor(...given) {
    super(...given);
    this.addEventListener("message", ({ data }) => window.stages.push(data.stage ?? data.failed));
  }
};"""


def held(page: Page, address: str) -> Route:
    """Open a page whose own script is held back; gives what lets it go."""
    routes: list[Route] = []
    page.add_init_script(OVERHEARD)
    page.route(re.compile(r"/js/sheet\.js$"), lambda route: routes.append(route))
    page.goto(address, wait_until="commit")
    wait_until(page, "window.stages.length > 0", 60)
    return routes[0]


def test_python_is_ready_before_its_page_and_the_page_hears_of_it(fresh_page: Page, site: str) -> None:
    script = held(fresh_page, f"{site}{SLUG}/#v=1&i1=31.5&i2=11.2&i3=24.6")
    wait_until(fresh_page, "window.stages.includes('ready')", 60)
    assert "starting" == fresh_page.evaluate("document.documentElement.dataset.python")
    script.continue_()
    wait_until(fresh_page, f"{READY} && {FRESH}", 60)
    assert math.isclose(neutral(31.5, 11.2, 24.6), result(fresh_page), rel_tol=1e-11)
    assert 1 == len(fresh_page.workers)


def test_a_start_that_failed_before_its_page_was_there_is_tried_anew(browser: Browser, site: str) -> None:
    with keeping(browser, site, faults=True, service_workers="block") as context:
        page = context.new_page()
        page.route("**/library.zip", lambda route: route.fulfill(status=500, body=""), times=1)
        script = held(page, f"{site}{SLUG}/")
        wait_until(page, "window.stages.some((said) => /500/.test(said))", 60)
        script.continue_()
        wait_until(page, f"{READY} && {FRESH}", 60)
        assert 1 == len(page.workers)
