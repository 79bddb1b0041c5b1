"""A pile of photographs in a browser: codes and marks found by themselves, points pressed, faults said in rows."""

import json
from collections.abc import Callable
from pathlib import Path

import pymupdf
import pytest
from browser.asking import DESK, wait_until
from browser.photo_panel import picture, show_points
from photographs import Conditions, Taken
from piled import jpeg, learners, pencilled_sheet, sheet, without_code, without_marks
from playwright.sync_api import Page, expect

READ = """document.querySelector('[data-share]').hidden
  && document.querySelectorAll('tr[data-kind]').length === {count}
  && !document.querySelector('tr[data-kind=waiting], tr[data-kind=reading]')"""
PATIENCE = 90.0
ELSEWHERE = Conditions(4.0, 18, 220, 183, -0.01, 0.7, 4, 0.2)
"""From the other side, upside down."""
ROLL = "Ada Lark\nBo Finch\nCy Wren"


@pytest.fixture
def pile(open_page: Callable[..., Page], site: str, ready) -> Callable[..., Page]:
    """`pile(kept)` opens the page where the device keeps this of a class."""

    def open_pile(kept: dict[str, object] | None = None) -> Page:
        page = open_page(viewport=DESK)
        if kept is not None:
            page.goto(f"{site}licences.txt")
            page.evaluate("([key, text]) => localStorage.setItem(key, text)", ["phasor-folio-class", json.dumps(kept)])
        page.goto(f"{site}photographs/")
        ready(page)
        return page

    return open_pile


def add(page: Page, files: dict[str, bytes], count: int) -> None:
    """Choose files, and wait until all rows are read."""
    page.set_input_files("#pile-choose", [
        {"name": name, "mimeType": "image/jpeg", "buffer": data} for name, data in files.items()
    ])  # fmt: skip
    wait_until(page, READ.format(count=count), PATIENCE)


def row(page: Page, number: int) -> str:
    """What stands in a row."""
    return page.locator("table.pile tbody tr").nth(number - 1).inner_text()


def press(page: Page, number: int, shot: Taken) -> None:
    """Press the points of a row's drawing in the panel."""
    page.locator("table.pile tbody tr").nth(number - 1).locator("button").click()
    page.click('[data-do="press"]')
    wait_until(page, "document.querySelector('dialog.photo')?.dataset.stage === 'taps'", PATIENCE)
    show_points(page, shot, touch=False)
    page.click('[data-photo-do="close"]')
    page.wait_for_selector("dialog.photo[open]", state="hidden")


def test_a_pile_is_read_marked_and_put_into_the_register(pile: Callable[..., Page], site: str, ready):
    own = learners(0, 3)
    page = pile({"version": 1, "roll": ROLL, "results": "", "set": "v=3&learners=3&method=parallelogram&seed=0"})
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    assert not [url for url in asked if "/codes/" in url or "photo-worker" in url]
    right, wrong = sheet(own[0], 1), sheet(own[1], 2, slip=("T3", 12.0))
    add(page, {"a.jpg": right.jpeg(), "b.jpg": wrong.jpeg(exif=6)}, 2)
    assert {url.split("/")[2] for url in asked if url.startswith("http")} == {site.split("/")[2]}
    assert len([url for url in asked if "/codes/" in url]) >= 2
    assert "Ada Lark" in row(page, 1) and str(own[1].code) in row(page, 2)
    press(page, 1, right)
    expect(page.locator("table.pile tbody tr").nth(0)).to_contain_text("4 of 4")
    press(page, 2, wrong)
    expect(page.locator("table.pile tbody tr").nth(1)).to_contain_text("off")
    picture(page, "pile-judged")
    assert "right" in row(page, 1) and "A" in row(page, 1)
    page.click('[data-do="accept-sure"]')
    expect(page.locator("table.pile tbody tr").nth(0)).to_contain_text("Accepted")
    page.select_option("#pile-mark", "2")
    expect(page.locator("table.pile tbody tr").nth(1)).to_contain_text("2 of 4")
    with page.expect_download() as saved:
        page.click('[data-do="save-table"]')
    lines = Path(saved.value.path()).read_text("utf-8-sig").splitlines()
    assert lines[1].startswith(f"1,{own[0].code},Ada Lark,") and ",4,4,4,yes,a.jpg," in lines[1]
    # The way back to the learners: a sheet for each, with the photograph.
    with page.expect_download() as sheets:
        page.click('[data-do="feedback"]')
    document = pymupdf.open(sheets.value.path())
    assert ["Ada Lark", "Bo Finch"] == [one.get_text().split("\n")[0] for one in document]
    assert all(len(one.get_images()) == 1 for one in document)
    assert Path(sheets.value.path()).stat().st_size < 2 * 150_000
    expect(page.locator("[data-said]")).to_have_text("2 feedback sheets are saved.")
    page.click('[data-do="register"]')
    wait_until(page, "localStorage.getItem('phasor-folio-register') !== null", 10)
    page.goto(f"{site}register/")
    ready(page)
    expect(page.locator("table.register").first).to_contain_text("Ada Lark")
    expect(page.locator("table.register").first).to_contain_text("2 of 4")
    # The rows are found again, without the photographs; one press erases them.
    page.goto(f"{site}photographs/")
    ready(page)
    wait_until(page, "document.querySelectorAll('tr[data-kind=accepted]').length === 2", 20)
    page.locator("table.pile tbody tr").nth(0).locator("button").click()
    expect(page.locator("[data-gone]")).to_be_visible()
    page.click('[data-do="erase"]')
    wait_until(page, "localStorage.getItem('phasor-folio-pile') === null", 10)
    expect(page.locator("[data-region=pile]")).to_contain_text("no photographs")


def test_pencil_lines_are_read_and_what_is_unsure_is_asked_with_one_press(pile: Callable[..., Page]):
    own = learners(0, 3)
    page = pile({"version": 1, "roll": ROLL, "results": "", "set": "v=3&learners=3&method=parallelogram&seed=0"})
    files = {}
    for learner, number, method in zip(own, (5001, 5003, 5005), ("tip-to-tail", "tip-to-tail", "parallelogram"),
                                       strict=True):  # fmt: skip
        files[f"{learner.place}.jpg"], _ = pencilled_sheet(learner, number, method)
    add(page, files, 3)
    picture(page, "pile-read")
    kinds = page.eval_on_selector_all("tr[data-kind]", "rows => rows.map((row) => row.dataset.kind)")
    read = [number for number, kind in enumerate(kinds, start=1) if kind == "judged"]
    assert len(read) >= 1, kinds
    page.locator("table.pile tbody tr").nth(read[0] - 1).locator("button").click()
    expect(page.locator("[data-region=look]")).to_contain_text("The drawing, line by line")
    if page.locator('[data-region=look] [data-do="accept"]').count():
        page.click('[data-region=look] [data-do="accept"]')
    else:  # A range is no mark: choosing one accepts it.
        page.select_option("#pile-mark", "3")
    expect(page.locator("table.pile tbody tr").nth(read[0] - 1)).to_contain_text("Accepted")


def test_every_fault_is_said_in_its_row_and_nothing_else_stops(pile: Callable[..., Page]):
    own, other = learners(0, 4), learners(77, 1)[0]
    page = pile()
    first, bare = sheet(own[0], 1), sheet(own[2], 4)
    again = sheet(own[0], 9, how=ELSEWHERE)
    add(page, {
        "a.jpg": first.jpeg(), "same.jpg": first.jpeg(), "again.jpg": again.jpeg(), "b.jpg": sheet(own[1], 2).jpeg(),
        "other.jpg": sheet(other, 3).jpeg(), "thumb.jpg": without_code(bare, own[2]),
        "bare.jpg": without_marks(sheet(own[3], 5)), "letter.jpg": b"no picture at all",
        "tiny.jpg": jpeg(first.picture.resize((300, 200))),
    }, 9)  # fmt: skip
    picture(page, "pile-faults")
    assert "Learner 1" in row(page, 1) and "Learner 2" in row(page, 4)
    assert "same photograph as in row 1" in row(page, 2)
    assert "row 1" in row(page, 3).lower()
    assert "another class set" in row(page, 5)
    assert "No code was found" in row(page, 6)
    assert "No marks were found" in row(page, 7)
    assert "cannot be opened as a picture" in row(page, 8)
    assert "too small" in row(page, 9)
    # With points in both, it is known whether one drawing was photographed twice.
    press(page, 1, first)
    press(page, 3, again)
    expect(page.locator("table.pile tbody tr").nth(2)).to_contain_text("second photograph of the sheet in row 1")
    # A code that was covered is typed; one that is none is said.
    page.locator("table.pile tbody tr").nth(5).locator("button").click()
    page.fill("#pile-code", str(own[2].code))
    page.click('[data-do="use-code"]')
    expect(page.locator("table.pile tbody tr").nth(5)).to_contain_text("Learner 3", timeout=PATIENCE * 1000)
    # By keys: to the next row that is to be asked, and away with a row.
    page.locator("table.pile tbody tr").nth(0).locator("button").focus()
    page.keyboard.press("ArrowDown")
    expect(page.locator("table.pile tbody tr").nth(1)).to_have_attribute("aria-current", "true")
    page.click('[data-do="take-away"]')
    expect(page.locator("table.pile tbody tr")).to_have_count(8)
