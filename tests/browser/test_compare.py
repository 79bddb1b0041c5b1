"""Drawn, calculated and measured results are compared in one place, and what is set elsewhere is named."""

from collections.abc import Callable

import pytest
from browser.asking import DESK, PHONE, show_beside, wait_until
from playwright.sync_api import Page, expect

LINK = "neutral-current/#v=3&i1=12.4&i2=8.6&i3=15&a2=30"
Open = Callable[[str, dict[str, int]], Page]
COMPARISON = '[data-working="accuracy"]'


@pytest.fixture
def at(open_page, site: str, ready, answered) -> Open:
    """`at(link, screen)` opens a link and waits for its answer."""

    def open_at(link: str, screen: dict[str, int]) -> Page:
        page = open_page(viewport=screen)
        page.goto(site + link)
        ready(page)
        answered(page)
        return page

    return open_at


@pytest.mark.parametrize("screen", [PHONE, DESK], ids=["phone", "desk"])
def test_three_results_are_compared_where_two_of_them_are_typed(at: Open, answered, screen) -> None:
    """Reading and drawn value stand beside each other; whether they agree follows below them."""
    page = at(LINK, screen)
    expect(page.locator(COMPARISON)).to_be_hidden()
    show_beside(page, "compare")
    for name, typed in (("measured", "5.8"), ("drawn", "45.5 mm")):
        expect(page.locator(f"[name={name}]")).to_be_in_viewport()
        page.fill(f"[name={name}]", typed)
        answered(page)
    comparison = page.locator(COMPARISON)
    expect(comparison).to_contain_text("Do drawing, calculation and meter agree?")
    expect(comparison).to_contain_text("The drawing gives 9.10 A, the calculation 9.06 A.")
    expect(comparison.locator("svg")).to_be_visible()
    expect(page.locator(".notes")).to_contain_text("Meter 5.80 A, calculation 9.06 A: 3.26 A apart.")
    below = "document.querySelector('.notes').getBoundingClientRect().top"
    assert page.evaluate(f"{below} > document.querySelector('[name=drawn]').getBoundingClientRect().bottom")
    expect(page.locator("[data-working=formula]")).to_be_hidden()


def test_the_button_beside_the_headline_leads_to_the_comparison(at: Open, answered) -> None:
    """From every view of the column."""
    page = at(LINK + "&measured=5.8", DESK)
    page.click(".notes [data-to-working]")
    wait_until(page, "document.querySelector('.column').dataset.shows === 'compare'")
    expect(page.locator(COMPARISON)).to_contain_text("Possible reasons in the reading")


def test_what_is_set_elsewhere_is_named_with_its_value(at: Open, answered) -> None:
    """A lag stays named beside a reading; each has its label and unit."""
    page = at(LINK + "&measured=5.8&sequence=132", PHONE)
    said = page.locator("[data-also-said] span")
    expect(said).to_have_text("Also set: Meter on the neutral 5.8\u00a0A; Lag of L2 30°; Phase sequence L1, L3, L2.")


def test_an_answer_that_was_in_view_for_a_while_is_the_old_answer(at: Open, answered) -> None:
    """Who has read the answer for 9 A and then mistypes sees that answer as the old one."""
    page = at(LINK, PHONE)
    page.focus("[name=i2]")
    page.fill("[name=i2]", "9")
    answered(page)
    page.wait_for_timeout(2500)
    page.fill("[name=i2]", "9x")
    wait_until(page, "document.documentElement.dataset.answer === 'old'")
    assert ", 9\u00a0A" in page.locator(".answer .old-values").inner_text()


def test_what_was_understood_of_a_value_goes_with_its_fault(at: Open, answered) -> None:
    """Below a field with a fault nothing is said of the value before."""
    page = at(LINK, PHONE)
    show_beside(page, "compare")
    page.fill("[name=drawn]", "45.5 mm")
    answered(page)
    echo = page.locator("[data-echo-for=drawn]")
    expect(echo).to_contain_text("45.5")
    page.fill("[name=drawn]", "45.5 kg")
    page.locator("[data-message-for=drawn]").wait_for()
    expect(echo).to_be_hidden()


def test_with_the_settings_in_view_no_tab_is_marked(at: Open) -> None:
    """Two looked chosen at once; the one before is marked again when the settings close."""
    page = at(LINK, PHONE)
    show_beside(page, "compare")
    marked = "[...document.querySelectorAll('.tabs [aria-pressed=true]')].map((one) => one.textContent.trim())"
    assert ["Compare"] == page.evaluate(marked)
    page.click(".tabs [data-settings-switch]")
    assert ["Settings"] == page.evaluate(marked)
    page.click(".tabs [data-settings-switch]")
    assert ["Compare"] == page.evaluate(marked)
