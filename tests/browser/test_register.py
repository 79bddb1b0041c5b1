"""The register in a browser: through a file, on paper, and erased; a file that is none changes nothing."""

import json
from collections.abc import Callable
from pathlib import Path

import pymupdf
from browser.asking import DESK, PHONE
from playwright.sync_api import Page, expect


def test_a_register_goes_through_a_file(open_page: Callable[..., Page], site: str, ready, tmp_path: Path):
    page = open_page(viewport=DESK)
    page.goto(f"{site}register/")
    ready(page)
    marks = [{"place": 1, "name": "Ada Lark", "low": 3, "high": 3, "mistakes": []}]
    kept = {"paper": "7AB-CDE-FGH", "title": "Hall lighting", "group": "", "of": 10, "day": 20_000, "marks": marks}
    file = tmp_path / "register.json"
    file.write_text(json.dumps({"format": "phasor-folio register", "version": 1, "papers": [kept]}), encoding="utf-8")
    page.set_input_files("#f-register", file)
    expect(page.locator("table.register").first).to_contain_text("3 of 10")
    with page.expect_download() as download:
        page.click('[data-do="save-file"]')
    assert [kept] == json.loads(Path(download.value.path()).read_text("utf-8"))["papers"]
    file.write_text("nothing", encoding="utf-8")
    page.set_input_files("#f-register", file)
    expect(page.locator("[data-said]")).to_contain_text("Nothing has changed")
    words = {word[4] for word in pymupdf.open(stream=page.pdf(prefer_css_page_size=True))[0].get_text("words")}
    assert {"Ada", "Total"} <= words and not {"Menu", "Learn", "Undo"} & words
    # What was erased is said where Undo stands.
    page.set_viewport_size({**PHONE, "height": 500})
    page.click('[data-do="erase"]')
    expect(page.locator('[data-do="undo"]')).to_be_in_viewport(ratio=1)
    expect(page.locator("[data-said]")).to_have_text("The paper is erased from the register.")
    expect(page.locator("[data-said]")).to_be_in_viewport(ratio=1)
