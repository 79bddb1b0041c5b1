"""The example on a page: what is left of it is cleared in one press, and nothing of it stays unseen."""

from collections.abc import Callable

import pytest
from browser.asking import wait_until
from playwright.sync_api import Page, expect

from pycore.words import furniture

OFFER = "[data-clear-example]"
PHONE = {"viewport": {"width": 390, "height": 844}, "has_touch": True, "is_mobile": True}
DESK = {"viewport": {"width": 1280, "height": 800}}
VALUES = {
    "neutral-current": {"i1": "18.4", "i2": "11.2", "i3": "24.6", "measured": ""},
    "two-wattmeters": {"volts": "400", "amps": "10", "lag": "40"},
}
"""The example's values in view, the first of them to be typed anew."""
PLACES = """() => [...document.querySelectorAll('#problem input[type=text][name], #problem label')]
    .filter((one) => one.offsetParent).map((one) => one.getBoundingClientRect().top + scrollY)"""


@pytest.fixture
def at(open_page: Callable[..., Page], site: str, ready, answered) -> Callable[..., Page]:
    """`at(slug, fragment, options)` opens a page with its answer."""

    def go(slug: str, fragment: str = "", options: dict | None = None) -> Page:
        page = open_page(**(options or DESK))
        page.goto(f"{site}{slug}/{fragment}")
        ready(page)
        answered(page)
        return page

    return go


def values(page: Page, slug: str) -> list[str]:
    return [page.input_value(f"#f-{name}") for name in VALUES[slug]]


@pytest.mark.parametrize("options", [DESK, PHONE], ids=["desk", "phone"])
@pytest.mark.parametrize("slug", VALUES)
def test_the_example_is_cleared_by_keyboard_and_what_was_typed_is_kept(at, answered, slug: str, options: dict) -> None:
    page = at(slug, "", options)
    expect(page.locator(OFFER)).to_be_hidden()
    first, second = list(VALUES[slug])[:2]
    before = page.evaluate(PLACES)
    page.focus(f"#f-{first}")
    page.fill(f"#f-{first}", "12")
    expect(page.locator(OFFER)).to_be_visible()
    answered(page)
    assert before == page.evaluate(PLACES), "no field moves"
    place = page.locator("[data-example]")
    assert "status" == place.get_attribute("role")
    assert furniture.EXAMPLE_LEFT in place.inner_text()
    page.keyboard.press("Shift+Tab")
    assert page.evaluate("(offer) => document.activeElement === document.querySelector(offer)", OFFER)
    page.keyboard.press("Enter")
    assert ["12", *[""] * (len(VALUES[slug]) - 1)] == values(page, slug)
    expect(page.locator(OFFER)).to_be_hidden()
    assert furniture.EXAMPLE_CLEARED in place.text_content()
    assert f"f-{second}" == page.evaluate("document.activeElement.id")
    page.fill(f"#f-{second}", "3")
    assert "" == place.text_content().replace(furniture.CLEAR_EXAMPLE, "")


@pytest.mark.parametrize("options", [DESK, PHONE], ids=["desk", "phone"])
def test_the_offer_can_be_pressed_and_hides_nothing(at, options: dict) -> None:
    page = at("harmonics-in-the-neutral", "", options)
    page.fill("#f-i1", "12")
    box = page.locator(OFFER).bounding_box()
    assert box["height"] >= 44 and box["width"] >= 44
    for other in ("h1", "[data-field=i1] label", "[data-field=i1] input", ".answer output", ".figure svg:visible",
                  ".tabs"):  # fmt: skip
        beside = page.locator(other).first.bounding_box()
        assert (
            box["y"] + box["height"] <= beside["y"] + 1 or box["y"] >= beside["y"] + beside["height"] - 16
            or box["x"] + box["width"] <= beside["x"] or box["x"] >= beside["x"] + beside["width"]
        ), other  # fmt: skip
    page.locator(OFFER).click()
    assert ["12", "", "", ""] == [page.input_value(f"#f-{name}") for name in ("i1", "i2", "i3", "h3")]


def test_nothing_is_offered_once_every_value_is_ones_own(at) -> None:
    """A value typed as it stands in the example is one's own too."""
    page = at("neutral-current")
    page.fill("#f-i1", "12")
    page.fill("#f-i2", "13")
    expect(page.locator(OFFER)).to_be_visible()
    page.fill("#f-i3", "2")
    page.fill("#f-i3", VALUES["neutral-current"]["i3"])
    expect(page.locator(OFFER)).to_be_hidden()


@pytest.mark.parametrize("fragment", ["#v=1&i1=18.4&i2=11.2&i3=24.6", "#v=2&i1=18.4&i2=11.2&i3=5"])
def test_values_of_a_link_are_no_example(at, answered, fragment: str) -> None:
    page = at("neutral-current", fragment)
    page.fill("#f-i1", "12")
    answered(page)
    expect(page.locator(OFFER)).to_be_hidden()
    page.evaluate("location.hash = '#v=2&method=tip-to-tail'")
    wait_until(page, "document.querySelector('#f-i1').value === '18.4'")
    answered(page)
    page.fill("#f-i1", "12")
    expect(page.locator(OFFER)).to_be_visible()


def test_lags_that_a_link_of_version_1_means_are_said_with_the_way_to_them(at) -> None:
    page = at("harmonics-in-the-neutral", "#v=1&i1=10&i2=10&i3=10&h3=30")
    assert "20" == page.input_value("#f-a2")
    said = page.locator("[data-also-said]")
    expect(said).to_contain_text("Lag of L2 20°")
    said.locator("button").click()
    expect(page.locator("#f-a2")).to_be_in_viewport()
    page = at("harmonics-in-the-neutral", "#v=2&i1=10&i2=10&i3=10&h3=30")
    assert "0" == page.input_value("#f-a2")
    expect(page.locator("[data-also-said]")).to_have_text("Lag and power factor")
    expect(page.locator("#f-a2")).to_be_hidden()


@pytest.mark.parametrize("slug", ["neutral-current", "harmonics-in-the-neutral"])
def test_lags_are_one_press_from_the_values(at, answered, slug: str) -> None:
    """They were found in the settings alone."""
    page = at(slug, "#v=3")
    said = page.locator("[data-also-said]")
    said.locator("button").click()
    expect(page.locator("#f-a1")).to_be_focused()
    page.fill("#f-a2", "30")
    answered(page)
    expect(said).to_contain_text("Also set: Lag of L2 30°.")
    page.fill("#f-a2", "0")
    answered(page)
    expect(said).to_have_text("Lag and power factor")


@pytest.mark.parametrize("slug", ["neutral-current", "series-circuit"])
def test_the_paper_is_one_press_from_the_scale(at, slug: str) -> None:
    page = at(slug, "#v=3", {"viewport": {"width": 1280, "height": 900}})
    page.click(".scale-row [data-also-go]")
    expect(page.locator("#f-paper")).to_be_focused()
    expect(page.locator("#f-paper")).to_be_in_viewport()
