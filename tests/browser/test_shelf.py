"""The shelf's pages in a browser: values typed, choices made, links opened, the fold, the front page."""

import math
from collections.abc import Callable

import pytest
from browser.asking import DESK, PHONE, result, state, wait_old, wait_until
from playwright.sync_api import Page, expect

from pycore.calculators.registry import CALCULATORS


@pytest.fixture
def at(open_page: Callable[..., Page], site: str, ready, answered) -> Callable[..., Page]:
    """`at(slug, fragment, screen)` opens a page with its first answer given."""

    def open_at(slug: str, fragment: str = "", screen: dict = DESK) -> Page:
        page = open_page(viewport=screen)
        page.goto(f"{site}{slug}/{fragment}")
        ready(page)
        answered(page)
        return page

    return open_at


def test_phasors_of_either_form_are_added_and_taken_off(at, answered) -> None:
    page = at("add-phasors")
    page.fill("[name=p1]", "3 + j4")
    page.fill("[name=p2]", "2 at 90")
    answered(page)
    assert math.isclose(math.hypot(3, 6), result(page, "sum"), rel_tol=1e-11)
    expect(page.locator('[data-echo-for="p1"]')).to_have_text("3 + j4 A = 5 A at 53.1°")
    page.check("[name=combine][value=difference]", force=True)
    answered(page)
    assert math.isclose(math.hypot(3, 2), result(page, "sum"), rel_tol=1e-11)


def test_all_six_phasors_are_in_view(at, answered) -> None:
    page = at("add-phasors", screen=PHONE)
    expect(page.locator("[name=p3]")).to_be_in_viewport()
    expect(page.locator("[name=p6]")).to_be_in_viewport()
    page.fill("[name=p5]", "5 at 180")
    answered(page)
    assert math.isclose(abs(20 + 15 * complex(0.5, math.sqrt(0.75)) - 5), result(page, "sum"), rel_tol=1e-9)
    again = at("add-phasors", "#v=1&p1=6&p2=8%20at%2090&p4=1%20at%2045")
    expect(again.locator("[name=p4]")).to_be_visible()
    assert math.isclose(abs(6 + 8j + complex(1, 1) / math.sqrt(2)), result(again, "sum"), rel_tol=1e-9)


def test_what_is_no_phasor_is_named_at_its_field_and_the_old_answer_stays(at, answered) -> None:
    page = at("add-phasors")
    page.fill("[name=p2]", "north")
    page.locator("[name=p2]").blur()
    wait_old(page)
    expect(page.locator('[data-message-for="p2"]')).to_contain_text("“north”")
    assert "true" == page.get_attribute("[name=p2]", "aria-invalid")
    assert math.isclose(math.sqrt(925), result(page, "sum"), rel_tol=1e-9)
    page.fill("[name=p2]", "15 at 60")
    answered(page)
    assert "fresh" == state(page)


def test_the_line_of_a_delta_is_the_learners_choice(at, answered) -> None:
    page = at("star-and-delta", "#v=1&z1=20&z2=25&z3=40&volts=400&line=2")
    assert math.isclose(math.sqrt(976), result(page, "result"), rel_tol=1e-9)
    page.check("[name=connection][value=star]", force=True)
    answered(page)
    assert math.isclose(400, result(page, "result"), rel_tol=1e-9)
    assert "L2 minus L3" == page.text_content("[name=line] option:checked")


def test_the_component_that_is_drawn_is_a_choice(at, answered) -> None:
    page = at("sequence-components", "#v=1&p1=30&p2=0&p3=0")
    for part in ("zero", "positive", "negative"):
        page.check(f"[name=part][value={part}]", force=True)
        answered(page)
        assert math.isclose(10, result(page, part), rel_tol=1e-9)
        assert math.isclose(30, result(page, "threefold"), rel_tol=1e-9)


@pytest.mark.parametrize("slug", CALCULATORS)
def test_the_classroom_view_opens_and_goes_on(at, slug: str) -> None:
    """Of the desk's page nothing runs over its edge; other windows: test_standing.py."""
    page = at(slug)
    assert DESK["width"] >= page.evaluate("document.documentElement.scrollWidth")
    page.click("[data-action=lesson]")
    wait_until(page, "document.querySelector('.lesson-step') !== null", 60.0)
    before = page.text_content(".lesson-step")
    page.keyboard.press("ArrowRight")
    wait_until(page, f"document.querySelector('.lesson-step').textContent !== {before!r}", 30.0)


@pytest.mark.parametrize("screen", [{"width": 1920, "height": 1080}, PHONE], ids=["desk", "phone"])
def test_the_front_page_is_a_shelf_of_every_page(open_page: Callable[..., Page], site: str, screen: dict) -> None:
    page = open_page(viewport=screen)
    page.goto(site)
    titles = page.locator(".board h3 a")
    assert sorted(one.title for one in CALCULATORS.values()) == sorted(titles.all_text_contents())
    assert screen["width"] >= page.evaluate("document.documentElement.scrollWidth")
    drawings = page.locator(".board .picture svg")
    assert len(CALCULATORS) == drawings.count()
    for index in range(drawings.count()):
        box = drawings.nth(index).bounding_box()
        assert box and box["width"] > 60 and 12 < box["height"] <= 460
    name = titles.nth(1).text_content()
    titles.nth(1).click()
    assert next(slug for slug, one in CALCULATORS.items() if one.title == name) in page.url
