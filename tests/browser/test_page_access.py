"""Accessibility by axe-core (WCAG 2.2 A and AA, and its best practices): every page, both grounds, phone and desk."""

from collections.abc import Callable
from pathlib import Path

import pytest
from making.paths import NODE_MODULES
from playwright.sync_api import Page

AXE = Path(NODE_MODULES) / "axe-core" / "axe.min.js"
FAULTS_ALONE = {"resultTypes": ["violations"], "selectors": False}
"""All rules are tried; of what keeps them no list is made."""
SCREENS = {"phone": {"width": 360, "height": 740}, "desk": {"width": 1440, "height": 900}}


def violations(page: Page) -> list[str]:
    """Each broken rule with the elements that break it."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(AXE.read_text("utf-8"))
    found = page.evaluate("async (how) => (await axe.run(document, how)).violations", FAULTS_ALONE)
    return [f"{one['id']}: {[node['html'][:160] for node in one['nodes']]}" for one in found]


def test_a_fault_that_is_put_into_a_page_is_found(page: Page, site: str) -> None:
    page.goto(site)
    page.evaluate("""() => {
      const faint = Object.assign(document.createElement("p"), { textContent: "Faint words" });
      [faint.style.color, faint.style.background] = ["#eee", "#fff"];
      document.querySelector("main").append(faint, document.createElement("button"));
    }""")
    assert ["button-name", "color-contrast"] == sorted(one.partition(":")[0] for one in violations(page))


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("screen", list(SCREENS))
@pytest.mark.parametrize("slug", ["", "neutral-current/"])
def test_no_rule_is_broken(open_page: Callable[..., Page], site: str, ready, answered, scheme, screen, slug) -> None:
    page = open_page(color_scheme=scheme, viewport=SCREENS[screen], reduced_motion="reduce")
    page.goto(site + slug)
    if slug:
        ready(page)
        answered(page)
        for part in page.locator("details").all():
            part.evaluate("(part) => { part.open = true; }")
    assert [] == violations(page)


def test_no_rule_is_broken_on_any_page_and_none_is_wider_than_its_window(open_page, site: str, dist: Path) -> None:
    """As it opens, in turn on a phone and on a desk; nothing touches the window's edge, at 320 pixels too."""
    page = open_page(reduced_motion="reduce")
    pages = sorted(one.parent.relative_to(dist).as_posix() for one in dist.glob("*/index.html"))
    assert len(pages) > 30
    for number, slug in enumerate(pages):
        page.set_viewport_size(list(SCREENS.values())[number % 2])
        page.goto(f"{site}{slug}/", wait_until="domcontentloaded")
        assert [] == violations(page), slug
        page.set_viewport_size({"width": 320, "height": 640})
        assert 320 >= page.evaluate("document.documentElement.scrollWidth"), slug
        assert 8 <= page.evaluate("document.querySelector('h1').getBoundingClientRect().left"), slug


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_rule_is_broken_while_an_input_is_unusable(open_page, site: str, ready, answered, scheme) -> None:
    page = open_page(color_scheme=scheme, viewport=SCREENS["phone"])
    page.goto(f"{site}neutral-current/")
    ready(page)
    answered(page)
    page.fill("[name=i2]", "11.2 V")
    page.locator('[data-message-for="i2"]').wait_for(state="visible")
    assert [] == violations(page)


@pytest.mark.parametrize(("slug", "screen", "scheme"), [
    ("add-phasors/", "phone", "light"), ("add-phasors/", "desk", "dark"), ("star-and-delta/", "phone", "dark"),
    ("sequence-components/", "phone", "light"),
])  # fmt: skip
def test_no_rule_is_broken_on_the_shelf(open_page: Callable[..., Page], site, ready, answered, slug, screen, scheme):
    """Every fold open: further values, choices and workings."""
    test_no_rule_is_broken(open_page, site, ready, answered, scheme, screen, slug)
