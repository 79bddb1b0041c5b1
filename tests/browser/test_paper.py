"""Blank paper as a visitor meets it: chosen, printed true, saved, shared, opened by a link, refused kindly."""

import io
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pypdfium2
import pytest
from browser.asking import DESK, PHONE, wait_until, waiting_actions
from browser.test_page_access import violations
from browser.test_print import PIXEL, POINT, TOLERANCE, straight_lines
from playwright.sync_api import Page, expect

from pycore.drawing import Line
from pycore.geometry import Point
from pycore.pages.paper import PAPER_PAGES
from pycore.sheet.media import size_of
from pycore.writers import pdf
from pycore.writers.collect import collect

SHEETS = {
    "graph-paper": (("kind=millimetre", "A4", "portrait"), ("kind=polar", "letter", "landscape"),
                    ("kind=sixty", "A5", "portrait")),
    "ruler-and-protractor": (("protractor=180", "A4", "landscape"), ("protractor=360", "A3", "portrait")),
}  # fmt: skip
CASES = [(slug, *sheet) for slug, sheets in SHEETS.items() for sheet in sheets]


def drawn(slug: str, kind: str, paper: str, orientation: str) -> list[tuple[float, float, float, float]]:
    """Every straight line of the sheet, mm from the upper left corner, as pycore places it."""
    name, _, value = kind.partition("=")
    page = PAPER_PAGES[slug].make({name: value, "paper": paper, "orientation": orientation}).page
    lines = [placed.item for placed in collect(page) if isinstance(placed.item, Line)]
    return [(line.start.x, page.height - line.start.y, line.end.x, page.height - line.end.y) for line in lines]


@pytest.fixture
def opened(open_page: Callable[..., Page], site: str, ready, answered) -> Callable[..., Page]:
    """Opens a page of blank paper, its Python ready and its sheet fresh."""

    def open_one(address: str, state: str = "fresh", **options: object) -> Page:
        page = open_page(**{"viewport": DESK, "accept_downloads": True, **options})
        page.goto(site + address)
        ready(page)
        if state == "fresh":
            answered(page)
        return page

    return open_one


@pytest.mark.parametrize(("slug", "kind", "paper", "orientation"), CASES)
def test_a_link_gives_its_sheet_which_prints_true(
    opened, tmp_path: Path, slug: str, kind: str, paper: str, orientation: str
) -> None:
    """One page of the paper's size; every line of the sheet where pycore places it, within a twentieth of a mm."""
    page = opened(f"{slug}/#v=1&{kind}&paper={paper}&orientation={orientation}")
    target = tmp_path / "sheet.pdf"
    page.pdf(prefer_css_page_size=True, path=target)
    document = pypdfium2.PdfDocument(target)
    assert 1 == len(document)
    sides = [side * POINT for side in document[0].get_size()]
    document.close()
    assert list(size_of(paper, orientation)) == pytest.approx(sides, abs=PIXEL)
    printed = np.array(straight_lines(target))
    wanted = drawn(slug, kind, paper, orientation)
    assert len(wanted) > 60
    assert [] == [line for line in wanted if not near(line, printed)]


def near(line: tuple[float, float, float, float], printed: np.ndarray) -> bool:
    """Whether a printed line covers the wanted one, whichever way round it was drawn."""
    turned = (*line[2:], *line[:2])
    return any(bool((np.abs(printed - way).max(axis=1) < TOLERANCE).any()) for way in (line, turned))


@pytest.mark.parametrize("slug", list(PAPER_PAGES))
def test_a_choice_makes_another_sheet_writes_the_link_and_saves_the_same_pdf_as_cpython(
    opened, tmp_path: Path, slug: str
) -> None:
    page = opened(f"{slug}/")
    assert "" == page.evaluate("location.hash")
    other = PAPER_PAGES[slug].fields[0].options[1]
    page.check(f'[name="{PAPER_PAGES[slug].fields[0].name}"][value="{other.value}"]')
    page.select_option("[name=paper]", "letter")
    form = {PAPER_PAGES[slug].fields[0].name: other.value, "paper": "letter"}
    expect(page.locator(".caption")).to_contain_text("letter")
    expect(page.locator("svg[data-sheet] > title")).to_have_text(PAPER_PAGES[slug].make(form).page.title)
    for name, value in form.items():
        wait_until(page, f"location.hash.slice(1).split('&').includes('{name}={value}')")
    with page.expect_download() as download:
        page.click("[data-action=pdf]")
    download.value.save_as(tmp_path / "sheet.pdf")
    assert f"{slug}.pdf" == download.value.suggested_filename
    assert pdf.write(PAPER_PAGES[slug].document(form)) == (tmp_path / "sheet.pdf").read_bytes()


@pytest.mark.parametrize("slug", list(PAPER_PAGES))
def test_what_is_not_on_offer_is_said_at_its_field_and_the_old_sheet_stays_marked(opened, slug: str) -> None:
    page = opened(f"{slug}/#v=1&paper=A9", state="old")
    expect(page.locator('[data-message-for="paper"]')).to_contain_text("“A9”")
    assert "old" == page.evaluate("document.documentElement.dataset.answer")
    expect(page.locator(".old-label")).to_be_visible()
    assert {"print", "pdf", "share"} <= waiting_actions(page)
    page.select_option("[name=paper]", "A4")
    expect(page.locator('[data-message-for="paper"]')).to_be_hidden()
    expect(page.locator(".old-label")).to_be_hidden()
    assert set() == waiting_actions(page)


def test_a_link_of_another_version_or_with_other_keys_says_so(opened) -> None:
    page = opened("graph-paper/#v=9&kind=polar&spokes=7")
    notices = page.locator("[data-open-notices]")
    expect(notices).to_contain_text("“9”")
    expect(notices).to_contain_text("“spokes”")
    assert page.locator("[name=kind][value=polar]").is_checked()


def test_a_kept_correction_stretches_the_saved_sheet(opened, tmp_path: Path) -> None:
    page = opened("graph-paper/")
    page.evaluate("""localStorage.setItem("phasor-folio", JSON.stringify({version: 1, printer: {along: 1.01,
      across: 0.99, edge: "short", lead: 210, pages: {a4p: [0.99, 1.01]}}}))""")
    page.reload()
    expect(page.locator("[data-corrected]")).to_be_visible()
    with page.expect_download() as download:
        page.click("[data-action=pdf]")
    download.value.save_as(tmp_path / "sheet.pdf")
    expected = pdf.write(PAPER_PAGES["graph-paper"].document({}), correction=Point(0.99, 1.01))
    assert expected == (tmp_path / "sheet.pdf").read_bytes()


@pytest.mark.parametrize("slug", list(PAPER_PAGES))
def test_the_default_sheet_stands_without_scripts_and_prints(
    open_page: Callable[..., Page], site: str, slug: str
) -> None:
    page = open_page(java_script_enabled=False, viewport=DESK)
    page.goto(f"{site}{slug}/")
    expect(page.locator("svg[data-sheet]")).to_be_visible()
    expect(page.locator("noscript .notice")).to_be_visible()
    printed = pypdfium2.PdfDocument(io.BytesIO(page.pdf(prefer_css_page_size=True)))
    assert 1 == len(printed)


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("viewport", [PHONE, DESK], ids=["phone", "desk"])
@pytest.mark.parametrize("slug", list(PAPER_PAGES))
def test_no_rule_of_access_is_broken_and_nothing_is_wider_than_the_screen(opened, slug, viewport, scheme) -> None:
    page = opened(f"{slug}/", viewport=viewport, color_scheme=scheme, reduced_motion="reduce")
    assert [] == violations(page)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


@pytest.mark.parametrize("viewport", [PHONE, DESK], ids=["phone", "desk"])
def test_the_foot_of_the_front_page_leads_to_each(
    open_page: Callable[..., Page], site: str, answered, viewport
) -> None:
    page = open_page(viewport=viewport)
    for slug, paper in PAPER_PAGES.items():
        page.goto(site)
        page.locator(f'.foot a[href="./{slug}/"]').click()
        answered(page)
        expect(page.locator("h1")).to_have_text(paper.title)
        expect(page.locator("svg[data-sheet]")).to_have_count(1)
