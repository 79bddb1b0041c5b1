"""The page of a pile as a lecturer uses it: what is erased comes back, a press is answered in view, lines over a
photograph say what they are, and the marks go on paper."""

import hashlib
import io
import json
from collections.abc import Callable
from typing import Any

import pymupdf
import pytest
from browser.asking import PHONE, wait_until
from browser.test_pile import READ, pile
from host.piles import ROLL, SET, kept
from PIL import Image
from playwright.sync_api import Page, expect
from unit.from_above import jpeg

__all__ = ["pile"]
LAPTOP = {"width": 1366, "height": 768}
MARGIN = 30.0
"""Points of an A4 page that stay white at its sides."""


def photographed(number: int, slip: float = 0.0) -> tuple[dict[str, Any], bytes]:
    """A row of the pile, and its photograph, half as large as `kept` has it."""
    data = jpeg(180 + number)
    row = kept(number, slip, digest=hashlib.sha256(data).hexdigest()[:24])
    seen = row["seen"]
    small = {"photo": {"width": 1200, "height": 850, "tap": 0.6},
             "marks": [[x / 2, y / 2] for x, y in seen["marks"]]}  # fmt: skip
    taps = {name: [x / 2, y / 2] for name, (x, y) in row["taps"].items()}
    return row | {"seen": seen | small, "taps": taps}, data


def red_in(page: Page) -> int:
    """How many pixels of the photograph are red."""
    seen = Image.open(io.BytesIO(page.locator("[data-canvas]").screenshot())).convert("RGB")
    return len([1 for red, green, blue in seen.get_flattened_data() if red > 140 and green < 90 and blue < 90])


@pytest.fixture
def marked(pile: Callable[..., Page], ready) -> Callable[..., Page]:
    """`marked(size)` opens the page on a screen with three marked rows, the first two with their photographs."""

    def open_marked(size: dict[str, int]) -> Page:
        page = pile({"version": 1, "roll": ROLL, "results": "", "set": SET})
        page.set_viewport_size(size)
        listed = [photographed(1, slip=24.0), photographed(2), photographed(3)]
        text = json.dumps({"version": 1, "rows": [row for row, _ in listed]})
        page.evaluate("(text) => localStorage.setItem('phasor-folio-pile', text)", text)
        page.reload()
        ready(page)
        wait_until(page, "document.querySelectorAll('tr[data-kind=accepted]').length === 3", 20)
        page.set_input_files("#pile-choose", [
            {"name": f"{number}.jpg", "mimeType": "image/jpeg", "buffer": data}
            for number, (_, data) in enumerate(listed[:2], 1)
        ])  # fmt: skip
        wait_until(page, READ.format(count=3), 20)
        return page

    return open_marked


def rows_kept(page: Page) -> list[dict[str, Any]]:
    rows = page.evaluate("JSON.parse(localStorage.getItem('phasor-folio-pile') ?? '{\"rows\": []}').rows")
    return list(rows)


@pytest.mark.parametrize("size", [LAPTOP, PHONE], ids=["laptop", "phone"])
def test_an_erased_pile_comes_back_with_its_marks_and_photographs(marked: Callable[..., Page], size: dict[str, int]):
    page = marked(size)
    before = rows_kept(page)
    page.click('[data-do="erase"]')
    expect(page.locator("[data-region=pile]")).to_contain_text("no photographs")
    expect(page.locator("[data-said]")).to_be_in_viewport(ratio=1)
    expect(page.locator("[data-said]")).to_have_text("The pile is erased.")
    assert [] == rows_kept(page)
    expect(page.locator('[data-do="undo"]')).to_be_in_viewport(ratio=1)
    page.click('[data-do="undo"]')
    expect(page.locator("tr[data-kind=accepted]")).to_have_count(3)
    assert before == rows_kept(page)
    page.locator("table.pile tbody tr").nth(0).locator("button").click()
    expect(page.locator("[data-picture]")).to_be_in_viewport(ratio=1)
    # So does one row that was taken away, in its place.
    page.click('[data-region=look] [data-do="take-away"]')
    expect(page.locator("tr[data-row]")).to_have_count(2)
    expect(page.locator('[data-do="undo"]')).to_be_in_viewport(ratio=1)
    page.click('[data-do="undo"]')
    expect(page.locator("tr[data-row]")).to_have_count(3)
    assert before == rows_kept(page)
    expect(page.locator('[data-do="undo"]')).to_be_hidden()


@pytest.mark.parametrize("size", [LAPTOP, PHONE], ids=["laptop", "phone"])
def test_a_press_on_a_button_at_the_foot_is_answered_in_view(marked: Callable[..., Page], size: dict[str, int]):
    page = marked(size)
    for end in ("start", "end"):
        page.locator('.pile-actions [data-do="register"]').evaluate(
            "(button, block) => button.scrollIntoView({ block })", end
        )
        page.evaluate("document.querySelector('[data-said]').textContent = ''")
        page.locator('.pile-actions [data-do="register"]').dispatch_event("click")
        expect(page.locator("[data-said]")).to_have_text("The accepted marks are in the register.")
        expect(page.locator("[data-said]")).to_be_in_viewport(ratio=1)


def test_lines_over_a_photograph_are_told_apart_and_a_switch_says_what_it_does(marked: Callable[..., Page]):
    page = marked(LAPTOP)
    page.locator("table.pile tbody tr").nth(0).locator("button").click()
    legend = page.locator(".pile-legend li:visible")
    expect(legend).to_have_text(
        ["Red dots: the first line to look at", "Dots: what was read", "Green lines: the right drawing"]
    )
    assert red_in(page) > 50
    page.get_by_role("button", name="Hide dots").click()
    expect(legend).to_have_text(["Green lines: the right drawing"])
    assert 0 == red_in(page)
    page.get_by_role("button", name="Show dots").click()
    page.get_by_role("button", name="Hide the right drawing").click()
    expect(page.get_by_role("button", name="Show the right drawing")).to_be_visible()
    expect(legend).to_have_count(2)
    # Another row begins with its photograph, however far the last one was scrolled.
    panel = page.locator("[data-look]")
    panel.evaluate("(panel) => panel.scrollTo(0, 400)")
    assert panel.evaluate("(panel) => panel.scrollTop") > 100
    page.locator("table.pile tbody tr").nth(1).locator("button").focus()
    page.keyboard.press("ArrowUp")
    page.keyboard.press("ArrowDown")
    expect(page.locator("#pile-row")).to_contain_text("Row 2")
    expect(page.locator("[data-picture]")).to_be_in_viewport(ratio=1)
    # Larger: the list keeps its codes and marks, what is asked stands beside.
    page.get_by_role("button", name="Larger").click()
    assert page.locator(".wide-table").evaluate("(table) => table.scrollWidth <= table.clientWidth")
    expect(page.locator("#pile-mark")).to_be_in_viewport(ratio=1)
    expect(page.get_by_role("button", name="Smaller")).to_be_visible()


def test_the_marks_are_printed_as_one_table_that_fits_the_paper(marked: Callable[..., Page]):
    page = marked(LAPTOP)
    page.evaluate("() => { window.print = () => { window.asked = (window.asked ?? 0) + 1; }; }")
    page.click('[data-do="print"]')
    assert 1 == page.evaluate("window.asked")
    document = pymupdf.open(stream=page.pdf(prefer_css_page_size=True))
    assert 1 == len(document)
    (sheet,) = document
    assert (595, 842) == (round(sheet.rect.width), round(sheet.rect.height))
    words = [word[4] for word in sheet.get_text("words")]
    assert {"Ada", "Bo", "Cy", "Mark", "Code"} <= set(words)
    assert not {"Menu", "Learn", "Register", "Print", "Add"} & set(words)
    assert all(MARGIN < left and right < sheet.rect.width - MARGIN for left, _, right, *_ in sheet.get_text("words"))


def test_on_a_phone_a_row_that_asks_something_is_opened_after_reading(marked: Callable[..., Page]):
    page = marked(PHONE)
    expect(page.locator("[data-look]")).to_be_hidden()
    page.set_input_files("#pile-choose", [{"name": "x.jpg", "mimeType": "image/jpeg", "buffer": b"no picture"}])
    expect(page.locator("#pile-row")).to_contain_text("Row 4")
    expect(page.locator("#pile-row")).to_be_in_viewport(ratio=1)
    expect(page.locator('[data-do="larger"]')).to_be_hidden()


SLOW = """() => {
  const open = window.createImageBitmap.bind(window);
  window.opening = 0;
  window.createImageBitmap = async (...all) => {
    window.opening += 1;
    await new Promise((done) => setTimeout(done, 1500));
    return open(...all);
  };
}"""


def test_a_row_pressed_again_while_its_photograph_is_opened_shows_it(marked: Callable[..., Page]):
    """The second press found the photograph being opened, and the first then took itself for overtaken: none
    came, and that of the row before stayed."""
    page = marked(LAPTOP)
    page.evaluate("document.querySelectorAll('table.pile tbody tr button')[2].click()")
    expect(page.locator("#pile-row")).to_contain_text("Row 3")
    expect(page.locator("[data-picture]")).to_be_hidden()
    page.evaluate(SLOW)
    press = "document.querySelectorAll('table.pile tbody tr button')[0].click()"
    page.evaluate(press)
    wait_until(page, "window.opening === 1", 20)
    page.evaluate(press)
    expect(page.locator("#pile-row")).to_contain_text("Row 1", timeout=20_000)
    expect(page.locator("[data-picture]")).to_be_visible()
