"""Fixtures of the browser tests: the calculator's page, opened and answered."""

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from browser.asking import SLUG, wait_until
from browser.classroom import PROBLEM, SCREENS
from browser.photo_panel import open_panel
from making.serve import serving
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
    """`lesson(fragment, screen)` opens a link straight into the lesson view."""

    def open_lesson(fragment: str = "&view=lesson&step=1", screen: str = "projector", **options: object) -> Page:
        page = open_page(viewport=SCREENS[screen], **options)
        page.goto(f"{site}{SLUG}/{PROBLEM}{fragment}")
        wait_until(page, "document.querySelector('.lesson-step') !== null", 60.0)
        return page

    return open_lesson


@pytest.fixture
def opened_for(open_page: Callable[..., Page], site: str, ready, answered) -> Callable[..., Page]:
    """`opened_for(fragment, options)` opens the panel over a problem."""

    def open_for(fragment: str = "", **options: object) -> Page:
        page = open_page(**options)
        page.goto(f"{site}{SLUG}/{fragment}")
        ready(page)
        answered(page)
        open_panel(page)
        return page

    return open_for


@pytest.fixture
def site_copy(dist: Path, tmp_path: Path) -> Iterator[tuple[Path, str]]:
    """A copy of the site that a test may change, and its address."""
    folder = tmp_path / "folio"
    shutil.copytree(dist, folder)
    with serving(folder) as address:
        yield folder, address
