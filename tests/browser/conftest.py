"""Fixtures of the browser tests: the calculator's page, opened and answered."""

import pytest
from browser.asking import SLUG
from playwright.sync_api import Page


@pytest.fixture
def opened(page: Page, site: str, ready, answered) -> Page:
    """The calculator's page, its Python ready and its first answer given."""
    page.goto(f"{site}{SLUG}/")
    ready(page)
    answered(page)
    return page
