"""Before the site is stored over a metered or slow connection, it is asked; the choice is kept, and can be changed."""

import pytest
from browser.asking import PHONE, SLUG, wait_until
from browser.kept import FRESH, OFFLINE, READY, keeping
from browser.test_offline import make_newer
from browser.test_page_access import violations
from playwright.sync_api import Browser, Page, expect

ASK, LINE = "[data-store-ask]", "[data-stored-line]"
REGISTERED = "navigator.serviceWorker.getRegistration().then((found) => Boolean(found))"


def connection(**kind: object) -> str:
    """A script that makes the connection be of a kind."""
    return f"Object.defineProperty(navigator, 'connection', {{ get: () => ({kind}) }});".replace("True", "true")


def visited(context, address: str) -> Page:
    """A page that has answered, on a connection that is slow."""
    page = context.new_page()
    page.goto(address)
    wait_until(page, f"{READY} && {FRESH}", 60)
    return page


@pytest.mark.parametrize("kind", [
    {"effectiveType": "3g"}, {"effectiveType": "slow-2g"}, {"effectiveType": "4g", "saveData": True},
], ids=["3g", "slow-2g", "saving"])  # fmt: skip
def test_it_is_asked_before_anything_is_stored(browser: Browser, site: str, kind: dict) -> None:
    with keeping(browser, site, viewport=PHONE) as context:
        context.add_init_script(connection(**kind))
        page = visited(context, f"{site}{SLUG}/")
        expect(page.locator(ASK)).to_be_visible(timeout=10_000)
        assert "MB" in page.inner_text(ASK) and "{" not in page.inner_text(ASK)
        assert not page.evaluate(REGISTERED)
        strip, bar = page.locator(ASK).bounding_box(), page.locator(".action-bar").bounding_box()
        assert strip and bar and strip["y"] + strip["height"] <= bar["y"] + 1
        assert [] == violations(page)
        page.click(f"{ASK} [data-store=no]")
        expect(page.locator(ASK)).to_be_hidden()
        page.reload()
        wait_until(page, f"{READY} && {FRESH}", 60)
        page.wait_for_timeout(4_500)
        expect(page.locator(ASK)).to_be_hidden()
        assert not page.evaluate(REGISTERED)


SLOW_START = """window.Worker = class extends Worker {
  constructor(...given) {
    super(...given);
    this.addEventListener("message", ({ data }) => { if (data.stage === "ready") data.pace = 50_000; });
  }
};
Object.defineProperty(navigator, "connection", { get: () => undefined });"""
"""Python comes at 50 kB a second, of which the browser says nothing."""


def test_it_is_asked_where_the_start_was_slow(browser: Browser, site: str) -> None:
    """Some browsers know nothing of their connection, and stored the whole site over any."""
    with keeping(browser, site, viewport=PHONE) as context:
        context.add_init_script(SLOW_START)
        page = visited(context, f"{site}{SLUG}/")
        expect(page.locator(ASK)).to_be_visible(timeout=10_000)
        assert not page.evaluate(REGISTERED)


def test_what_was_refused_can_be_had_at_the_foot_of_any_page_and_removed_again(browser: Browser, site: str) -> None:
    with keeping(browser, site, viewport=PHONE) as context:
        context.add_init_script(connection(effectiveType="2g"))
        page = visited(context, f"{site}{SLUG}/")
        page.click(f"{ASK} [data-store=no]")
        page.goto(f"{site}checks/")
        expect(page.locator(LINE)).to_contain_text("not stored", timeout=10_000)
        page.click(f"{LINE} [data-store=yes]")
        wait_until(page, OFFLINE, 60)
        expect(page.locator(LINE)).to_contain_text("works without a network")
        page.click(f"{LINE} [data-store=no]")
        expect(page.locator(LINE)).to_contain_text("not stored")
        wait_until(page, f"{REGISTERED}.then((is) => !is)")
        assert [] == [name for name in page.evaluate("caches.keys()") if "edition" in name]


def test_on_a_good_connection_nothing_is_asked(browser: Browser, site: str) -> None:
    with keeping(browser, site) as context:
        context.add_init_script(connection(effectiveType="4g"))
        page = visited(context, f"{site}{SLUG}/")
        assert float(page.get_attribute("html", "data-pace") or 0) > 64_000
        wait_until(page, OFFLINE, 60)
        expect(page.locator(ASK)).to_be_hidden()


def test_a_newer_version_is_not_loaded_unasked_over_a_slow_connection_either(browser: Browser, site_copy) -> None:
    """It was stored over a good one. Small changes come all the same."""
    folder, address = site_copy
    worker = folder / "service-worker.js"
    with keeping(browser, address) as context:
        page = visited(context, f"{address}{SLUG}/")
        wait_until(page, OFFLINE, 60)
        make_newer(folder)
        for library in folder.glob("lib/*"):
            library.rename(library.with_name("anew"))
        for runtime in folder.glob("py/*"):
            runtime.rename(runtime.with_name("anew"))
        make_newer(folder, "Large")
        large = {str(path.relative_to(folder)): path.stat().st_size for path in folder.rglob("anew/*")}
        head, source = worker.read_text("utf-8").split(";\n", 1)
        slow = connection(effectiveType="3g").replace("navigator,", "self.navigator,")
        sizes = ", ".join(f'"{name}": {size}' for name, size in large.items())
        worker.write_text(f"{head};\nEDITION.bytes = {{{sizes}}};\n{slow}\n{source}", encoding="utf-8")
        ended = """navigator.serviceWorker.getRegistration().then((found) => found.update()).then((found) =>
          new Promise((done) => found.installing
            ? found.installing.addEventListener("statechange", ({ target }) => done(target.state)) : done("none")))"""
        assert "redundant" == page.evaluate(ended)
        assert page.evaluate("navigator.serviceWorker.getRegistration().then((found) => Boolean(found.active))")
