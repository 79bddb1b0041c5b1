"""Fixtures of the browser tests: the calculator's page, opened and answered."""

from collections.abc import Callable

import pytest
from browser.asking import SLUG, wait_until
from browser.classroom import PROBLEM, SCREENS
from playwright.sync_api import Page


@pytest.fixture
def opened(page: Page, site: str, ready, answered) -> Page:
    """The calculator's page, its Python ready and its first answer given."""
    page.goto(f"{site}{SLUG}/")
    ready(page)
    answered(page)
    return page


@pytest.fixture
def lesson(open_page: Callable[..., Page], site: str) -> Callable[..., Page]:
    """`lesson(fragment, screen)` opens a link straight into the classroom view."""

    def open_lesson(fragment: str = "&view=lesson&step=1", screen: str = "projector", **options: object) -> Page:
        page = open_page(viewport=SCREENS[screen], **options)
        page.goto(f"{site}{SLUG}/{PROBLEM}{fragment}")
        wait_until(page, "document.querySelector('.lesson-step') !== null", 60.0)
        return page

    return open_lesson
