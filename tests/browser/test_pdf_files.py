"""The PDF that the browser makes is, byte for byte, the one that CPython makes of the same form."""

import json
from pathlib import Path

import pypdfium2
import pytest
from browser.asking import SLUG, show_more, show_settings
from playwright.sync_api import Page

from pycore import api

FORM = {"i1": "18.4", "i2": "11,2 A", "i3": "24600 mA", "place": "Village hall, main board"}


def saved(page: Page, action: str, target: Path) -> bytes:
    """What a button saves, which is asked for only when the answer is there."""
    with page.expect_download() as download:
        page.click(f"[data-action={action}]")
    download.value.save_as(target)
    return target.read_bytes()


def by_cpython(page: Page, **more: object) -> bytes:
    """The same request, answered here: the whole form as the page holds it, and the page's address."""
    form = page.evaluate("""() => Object.fromEntries([...document.getElementById("problem").elements]
      .filter((one) => one.name && (one.type !== "radio" || one.checked)).map((one) => [one.name, one.value]))""")
    base = page.url.partition("#")[0]
    request = {"do": "pdf", "page": SLUG, "form": form, "base": base, "code": True, **more}
    reply, data = api.handle(json.dumps(request))
    assert json.loads(reply)["ok"]
    assert data is not None
    return data


@pytest.mark.parametrize("method", ["parallelogram", "tip-to-tail", "components"])
def test_the_file_is_the_same_in_both_hosts(opened: Page, answered, tmp_path: Path, method: str) -> None:
    for name, text in FORM.items():
        control = opened.locator(f"[name={name}]")
        if not control.is_visible():
            show_settings(opened)
        control.fill(text)
    if opened.locator("[data-settings-switch][aria-pressed=true]:visible").count():
        opened.click("[data-settings-switch]:visible")
    opened.check(f"[name=method][value={method}]")
    answered(opened)
    data = saved(opened, "pdf", tmp_path / "sheet.pdf")
    assert b"%PDF-1.7" == data[:8]
    assert by_cpython(opened) == data


def test_all_three_kinds_come_in_one_file(opened: Page, tmp_path: Path) -> None:
    show_more(opened)
    data = saved(opened, "pdf-all", tmp_path / "sheets.pdf")
    assert by_cpython(opened, kinds=["problem", "construction", "overlay"]) == data
    document = pypdfium2.PdfDocument(tmp_path / "sheets.pdf")
    words = [page.get_textpage().get_text_range() for page in document]
    document.close()
    assert 3 == len(words)
    assert len(set(words)) == len(words)


def test_the_kinds_of_sheet_are_chosen_under_the_sheet(opened: Page, answered) -> None:
    """The one that is shown is pressed; the focus stays on the button, the form and the link follow."""
    for kind in ("problem", "overlay", "construction"):
        button = opened.locator(f".kinds [data-set='{json.dumps({'sheet': kind}, separators=(',', ':'))}']")
        button.focus()
        opened.keyboard.press("Enter")
        button.and_(opened.locator("[aria-pressed=true]")).wait_for()
        answered(opened)
        assert kind == opened.input_value("[name=sheet]")
        assert 1 == opened.locator(".kinds [aria-pressed=true]").count()
        assert opened.evaluate("document.activeElement.getAttribute('aria-pressed')") == "true"
