"""Back closes what lies over the page, and not the page: lesson, settings, Share, photograph, one after another."""

import pytest
from browser.asking import DESK, PHONE, SLUG, neutral, result, show_more, show_settings, wait_until
from playwright.sync_api import Page, expect

PROBLEM = "#v=3&i1=9.2&i2=14.7&i3=6.5"
LESSON, SHARE, PHOTO = "[data-lesson]", "[data-share-panel]", "dialog.photo"


@pytest.fixture
def sheet(open_page, site: str, ready, answered):
    """`sheet(screen)`: a problem that was come to from the front page; a mark says whether it was loaded anew."""

    def open_sheet(screen: dict[str, int] = PHONE) -> Page:
        page = open_page(viewport=screen)
        page.goto(site)
        page.goto(f"{site}{SLUG}/{PROBLEM}")
        ready(page)
        answered(page)
        page.evaluate("window.mark = 1")
        return page

    return open_sheet


def back(page: Page) -> None:
    """Press Back, and let the page hear of it."""
    page.evaluate("history.back()")
    page.wait_for_timeout(500)


def forward(page: Page) -> None:
    page.evaluate("history.forward()")
    page.wait_for_timeout(500)


def assert_as_it_was(page: Page, size: float = neutral(9.2, 14.7, 6.5)) -> None:
    """The same page, not loaded anew, with its problem in fields and address, and nothing over it."""
    assert page.evaluate("window.mark") == 1
    assert not page.evaluate("document.querySelector('dialog[open]')")
    assert result(page) == pytest.approx(size, rel=1e-11)
    assert f"i1={page.input_value('[name=i1]')}&" in page.url and "view=" not in page.url


def open_lesson(page: Page) -> None:
    page.click("[data-action=lesson]")
    expect(page.locator(".lesson-step")).to_be_visible()
    wait_until(page, "location.hash.includes('view=lesson')")


@pytest.mark.parametrize("screen", [PHONE, DESK], ids=["phone", "desk"])
def test_back_closes_the_lesson_and_forward_opens_it_again(sheet, screen) -> None:
    page = sheet(screen)
    open_lesson(page)
    page.click('[data-lesson-do="next"]')
    wait_until(page, "location.hash.includes('step=2')")
    back(page)
    assert_as_it_was(page)
    forward(page)
    expect(page.locator(LESSON)).to_be_visible()
    page.keyboard.press("Escape")
    expect(page.locator(LESSON)).to_be_hidden()
    wait_until(page, "!location.hash.includes('view=')")


def test_a_lesson_closed_by_its_button_leaves_no_step_behind(sheet, site: str) -> None:
    page = sheet()
    open_lesson(page)
    page.click('[data-lesson-do="close"]')
    page.wait_for_timeout(500)
    assert_as_it_was(page)
    page.go_back()
    assert site == page.url


def test_what_was_chosen_in_the_lesson_stays_when_back_closes_it(sheet, answered) -> None:
    """The step that is come back to has an older address, which nobody asks for."""
    page = sheet(DESK)
    open_lesson(page)
    page.locator('[data-lesson-method="tip-to-tail"]').evaluate("(one) => one.click()")
    wait_until(page, "location.hash.includes('method=tip-to-tail')")
    back(page)
    answered(page)
    assert "tip-to-tail" == page.evaluate("document.querySelector('[name=method]:checked').value")
    wait_until(page, "location.hash.includes('method=tip-to-tail') && !location.hash.includes('view=')")
    assert_as_it_was(page)


@pytest.mark.parametrize("screen", [PHONE, DESK], ids=["phone", "desk"])
def test_back_closes_the_settings_and_keeps_what_was_set(sheet, site: str, answered, screen) -> None:
    page = sheet(screen)
    show_settings(page)
    page.select_option("[name=paper]", "A3")
    answered(page)
    back(page)
    assert page.get_attribute("main", "data-settings") is None
    assert "A3" == page.input_value("[name=paper]")
    assert_as_it_was(page)
    wait_until(page, "location.hash.includes('paper=A3')")
    page.go_back()
    assert site == page.url


def test_settings_closed_by_their_button_leave_no_step_behind(sheet, site: str) -> None:
    page = sheet(DESK)
    show_settings(page)
    page.click("[data-settings-switch]:visible")
    page.wait_for_timeout(500)
    assert_as_it_was(page)
    page.go_back()
    assert site == page.url


def test_back_closes_what_lies_uppermost_first(sheet) -> None:
    page = sheet(DESK)
    open_lesson(page)
    page.locator('[data-lesson-do="share"]').first.evaluate("(one) => one.click()")
    expect(page.locator(SHARE)).to_be_visible()
    back(page)
    expect(page.locator(SHARE)).to_be_hidden()
    expect(page.locator(LESSON)).to_be_visible()
    back(page)
    assert_as_it_was(page)


def test_back_closes_the_photograph(sheet) -> None:
    page = sheet()
    show_more(page)
    page.click(".more [data-action=photo]")
    expect(page.locator(PHOTO)).to_be_visible(timeout=30_000)
    back(page)
    expect(page.locator(PHOTO)).to_be_hidden()
    assert_as_it_was(page)


def test_a_link_that_is_opened_over_a_lesson_is_opened(sheet, answered) -> None:
    page = sheet(DESK)
    open_lesson(page)
    page.evaluate("location.hash = '#v=3&i1=10&i2=20&i3=30'")
    wait_until(page, "document.querySelector('[name=i1]').value === '10'")
    answered(page)
    assert_as_it_was(page, neutral(10, 20, 30))


def test_a_lesson_that_was_loaded_anew_is_closed_by_back_too(sheet, ready, answered) -> None:
    page = sheet(DESK)
    open_lesson(page)
    page.reload()
    ready(page)
    answered(page)
    expect(page.locator(".lesson-step")).to_be_visible()
    page.evaluate("window.mark = 1")
    back(page)
    answered(page)
    assert_as_it_was(page)
