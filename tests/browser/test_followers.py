"""What follows an answer: on a phone the sheet that is out of view does; whoever prints or looks has it at once."""

from collections.abc import Callable
from pathlib import Path

import pypdfium2
import pytest
from browser.asking import DESK, PHONE, SLUG, wait_until
from playwright.sync_api import Page

HEARD = """window.asked = [];
window.Worker = class extends Worker {
  postMessage(message, ...more) {
    if (message.text) window.asked.push(JSON.parse(message.text));
    return super.postMessage(message, ...more);
  }
};"""
SHEET = "document.querySelector('[data-region=sheet]').textContent"
SAID = "This sheet was not printed: it does not show what is typed now. Print again when it does."
PRINTS_NO_SHEET = """() => {
  window.dispatchEvent(new Event("beforeprint"));
  return document.querySelector(".figure").hasAttribute("data-unprintable");
}"""
NOT_YET = "window.requestIdleCallback = () => 0;"  # nothing follows by itself
PRINTED = f"window.printed = []; window.print = () => window.printed.push({SHEET});"


@pytest.fixture
def on_screen(open_page: Callable[..., Page], site: str, ready, answered) -> Callable[..., Page]:
    """The calculator on a screen of this size, whose requests are heard; `scripts` run before the page."""

    def open_on(screen: dict[str, int], *scripts: str) -> Page:
        page = open_page(viewport=screen)
        for script in (HEARD, *scripts):
            page.add_init_script(script)
        page.goto(f"{site}{SLUG}/")
        ready(page)
        answered(page)
        return page

    return open_on


def asked(page: Page) -> list[list[str]]:
    """The parts of each answer that was asked for after the first."""
    return [one["parts"] for one in page.evaluate("window.asked") if one["do"] == "answer"][1:]


def type_value(page: Page, answered) -> None:
    """One edit: the neutral current of 17.3, 11.2 and 24.6 A."""
    page.fill("[name=i1]", "17.3")
    answered(page)


def test_on_a_phone_the_sheet_follows(on_screen: Callable[..., Page], answered) -> None:
    page = on_screen(PHONE)
    type_value(page, answered)
    wait_until(page, f"{SHEET}.includes('17.3')")
    assert ["answer", "view"] == asked(page)[0]
    assert any("sheet" in parts for parts in asked(page)[1:])


def test_a_sheet_in_view_comes_with_the_answer(on_screen: Callable[..., Page], answered) -> None:
    page = on_screen(DESK, NOT_YET)
    type_value(page, answered)
    assert [["answer", "sheet"]] == asked(page)
    phone = on_screen(PHONE, NOT_YET)
    phone.click(".request > summary")
    type_value(phone, answered)
    assert [["answer", "view", "sheet"]] == asked(phone)


def test_whoever_prints_or_looks_before_has_the_sheet_of_the_answer(on_screen: Callable[..., Page], answered) -> None:
    page = on_screen(PHONE, NOT_YET, PRINTED)
    type_value(page, answered)
    assert "18.4" in page.evaluate(SHEET) and "17.3" not in page.evaluate(SHEET)
    page.click(".request > summary")
    wait_until(page, f"{SHEET}.includes('17.3')")
    page.click(".request > summary")
    page.fill("[name=i1]", "16.3")
    answered(page)
    page.click('[data-action="print"]:visible')
    wait_until(page, "window.printed.length > 0")
    assert "16.3" in page.evaluate("window.printed[0]")


def test_a_sheet_that_is_behind_is_not_printed_where_python_is_lost(on_screen: Callable[..., Page], answered) -> None:
    """The answer in view stands; the sheet is an earlier one's, so its button waits."""
    page = on_screen(PHONE, NOT_YET)
    type_value(page, answered)
    page.evaluate(
        "() => { window.Worker = class { addEventListener(_name, hear) { setTimeout(() => hear(new Event('error'))); }"
        " postMessage() {} terminate() {} }; }"
    )
    for worker in page.workers:
        worker.evaluate("self.close()")
    wait_until(page, "document.documentElement.dataset.python === 'failed'")
    assert "true" == page.get_attribute('[data-action="print"]', "aria-disabled")


def test_what_is_recalled_has_its_own_sheet(on_screen: Callable[..., Page], answered) -> None:
    """A field is gone into at once after an edit; what followed meanwhile belongs to what is put back."""
    page = on_screen(PHONE)
    type_value(page, answered)
    page.focus("[name=i2]")
    wait_until(page, f"{SHEET}.includes('17.3')")
    page.fill("[name=i2]", "x")
    wait_until(page, "document.documentElement.dataset.answer === 'old'")
    assert "17.3" in page.evaluate(SHEET)


def printed_text(page: Page, path: Path) -> str:
    """What the browser's own print has, of all its pages."""
    page.pdf(path=path, prefer_css_page_size=True)
    document = pypdfium2.PdfDocument(path)
    text = " ".join(document[number].get_textpage().get_text_bounded() for number in range(len(document)))
    document.close()
    return " ".join(text.split())


def test_a_browsers_own_print_has_no_earlier_sheet(on_screen: Callable[..., Page], answered, tmp_path: Path) -> None:
    """It waits for nothing, so in the place of a sheet that is behind it has a sentence."""
    page = on_screen(PHONE, NOT_YET)
    path = tmp_path / "printed.pdf"
    type_value(page, answered)
    assert SAID == printed_text(page, path)
    page.click(".request > summary")
    wait_until(page, f"{SHEET}.includes('17.3')")
    text = printed_text(page, path)
    assert "17.3" in text and SAID not in text


def test_an_edit_without_its_answer_is_not_printed(on_screen: Callable[..., Page], answered) -> None:
    """Neither one whose answer is awaited nor one that is refused; the values that the sheet has are printed again."""
    page = on_screen(DESK)
    assert not page.evaluate(PRINTS_NO_SHEET)
    typed = "() => { const one = document.querySelector('[name=i1]'); one.value = '%s';" + (
        f" one.dispatchEvent(new Event('input', {{ bubbles: true }})); return ({PRINTS_NO_SHEET})(); }}")
    assert page.evaluate(typed % "17.3")
    answered(page)
    assert not page.evaluate(PRINTS_NO_SHEET)
    assert page.evaluate(typed % "17.3.")
    wait_until(page, "document.documentElement.dataset.answer === 'old'")
    assert page.evaluate(PRINTS_NO_SHEET)
    page.evaluate(typed % "17.3")
    answered(page)
    assert not page.evaluate(PRINTS_NO_SHEET)


def test_blank_paper_is_not_printed_by_earlier_choices(open_page, site: str, ready, answered) -> None:
    page = open_page(viewport=DESK)
    page.goto(f"{site}graph-paper/")
    ready(page)
    answered(page)
    assert not page.evaluate(PRINTS_NO_SHEET)
    assert page.evaluate(f"""() => {{ const one = document.querySelector('[name=paper]'); one.value = 'A5';
        one.dispatchEvent(new Event('input', {{ bubbles: true }})); return ({PRINTS_NO_SHEET})(); }}""")
    answered(page)
    assert not page.evaluate(PRINTS_NO_SHEET)
