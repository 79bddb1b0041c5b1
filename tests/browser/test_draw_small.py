"""Drawing on the screen of a phone: the paper has its room upright, lying and with large letters; what was read off the
drawing is filled in where the answer is checked."""

import json
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from browser.asking import PHONE, SLUG, wait_until
from browser.drawn_by_hand import PATIENCE, Hand
from browser.test_draw_here import arrow
from making.programs import CHROMIUM_OPTIONS
from playwright.sync_api import Browser, Page, Playwright, expect
from rooms import UNIMPROVED

PROBLEM = "#v=3&i1=9.2&i2=14.7&i3=6.1"
PLACES = """() => Object.fromEntries(["board", "words", "bar", "head", "prompt"].map((part) => {
  const name = `.draw-${part}`;
  const { left, top, right, bottom, width, height } = document.querySelector(name).getBoundingClientRect();
  return [name, { left, top, right, bottom, width, height }];
}))"""


@pytest.fixture(scope="module")
def large_letters(playwright: Playwright, chromium_path: Path) -> Iterator[Browser]:
    """A browser whose reader has set text of twice the usual size."""
    options = [*CHROMIUM_OPTIONS, UNIMPROVED, "--blink-settings=defaultFontSize=32"]
    chromium = playwright.chromium.launch(executable_path=str(chromium_path), args=options)
    yield chromium
    chromium.close()


def shown(page: Page, site: str, size: tuple[int, int], fragment: str = PROBLEM) -> dict:
    """Where everything is as the view opens."""
    page.set_viewport_size({"width": size[0], "height": size[1]})
    page.goto(f"{site}{SLUG}/{fragment}&view=draw")
    Hand(page).opened()
    found: dict = page.evaluate(PLACES)
    assert page.evaluate("document.querySelector('.draw').scrollWidth") <= size[0]
    assert page.evaluate("document.querySelector('.draw-words').scrollWidth") <= found[".draw-words"]["width"]
    return found


@pytest.mark.parametrize("size", [(844, 390), (667, 375), (932, 430)], ids=str)
def test_on_a_phone_that_lies_the_paper_is_as_high_as_the_window(page: Page, site: str, size: tuple[int, int]) -> None:
    """Head, words and bar stood above and below it, and left it a quarter of the height."""
    found = shown(page, site, size)
    board = found[".draw-board"]
    assert board["height"] >= size[1] - 1 and board["width"] >= 0.5 * size[0]
    for name in (".draw-words", ".draw-bar", ".draw-head"):
        assert found[name]["right"] <= board["left"] + 1, name
        assert found[name]["bottom"] <= size[1] + 0.5, name
    assert found[".draw-prompt"]["bottom"] <= found[".draw-bar"]["top"]


@pytest.mark.parametrize("size", [(390, 844), (320, 640), (1024, 768)], ids=str)
def test_what_is_said_of_the_lines_lies_over_the_paper(page: Page, site: str, size: tuple[int, int]) -> None:
    """It took its room from the paper. A press on the paper, or its button, puts it aside."""
    board = shown(page, site, size)[".draw-board"]
    assert board["height"] >= 0.45 * size[1]
    result = page.locator("[data-draw-result]")
    for leave in (lambda: page.click("[data-draw-do=paper]"),
                  lambda: page.mouse.click(size[0] / 2, board["bottom"] - 60)):  # fmt: skip
        page.click("[data-draw-do=judge]")
        result.wait_for()
        assert page.evaluate(PLACES)[".draw-board"] == board
        box = result.bounding_box()
        assert box and board["top"] <= box["y"] and box["height"] <= 0.71 * board["height"]
        leave()
        result.wait_for(state="hidden")


def test_it_lies_over_the_paper_where_the_view_scrolls(page: Page, site: str) -> None:
    """With letters large for a narrow window the paper comes before the words: it lay over those."""
    shown(page, site, (256, 640))
    page.click("[data-draw-do=judge]")
    page.locator("[data-draw-result]").wait_for()
    box, board = page.locator("[data-draw-result]").bounding_box(), page.evaluate(PLACES)[".draw-board"]
    assert box and board["top"] <= box["y"] and box["y"] + box["height"] <= 0.71 * board["height"] + board["top"]


@pytest.mark.parametrize("size", [(390, 844), (844, 390)], ids=str)
def test_with_large_letters_the_paper_is_in_view_at_once(large_letters: Browser, site: str, size) -> None:
    """It began below the window: words and bar filled that."""
    page = large_letters.new_page(service_workers="block")
    found = shown(page, site, size)
    board, bar = found[".draw-board"], found[".draw-bar"]
    assert board["height"] >= size[1] / 2
    assert board["bottom"] <= (bar["top"] if size[0] < size[1] else size[1]) + 1
    assert bar["bottom"] <= size[1] + 0.5
    page.close()


def reading_of(page: Page) -> dict[str, str]:
    """What stands in the form of the answer."""
    how = page.evaluate("document.querySelector('[name=answer-how]:checked')?.value ?? ''")
    fields = ("answer", "answer-angle", "answer-side", "answer-unit")
    return {"how": how, **{name: page.input_value(f"#check [name={name}]") for name in fields}}


READ = {"how": "drawn", "answer": "61.5", "answer-angle": "88", "answer-side": "clockwise", "answer-unit": "mm"}


def draw_and_read(page: Page) -> None:
    """One arrow, so that there is a drawing, and a reading."""
    hand = Hand(page).opened()
    arrow(hand, hand.start(), 90.0, 25.0, "i1")
    page.evaluate("for (const one of document.querySelectorAll('[data-draw-fold]')) one.open = true")
    page.fill("#draw-answer", "61.5")
    page.fill("#draw-answer-angle", "88")
    page.select_option("#draw-answer-side", "clockwise")


@pytest.mark.parametrize("screen", [PHONE, {"width": 1366, "height": 850}], ids=["phone", "desk"])
def test_what_was_read_off_the_drawing_is_checked_in_practice(open_page: Callable[..., Page], site: str, ready, screen):
    """There was no way back, and the values had to be typed once more."""
    page = open_page(viewport=screen)
    page.goto(f"{site}practice/")
    ready(page)
    wait_until(page, "document.documentElement.dataset.answer === 'fresh'")
    page.click("[data-region=draw] a[href*='view=draw']")
    draw_and_read(page)
    way = page.locator("dialog.draw [data-in-practice]")
    expect(way).to_be_visible()
    way.click()
    ready(page)
    wait_until(page, "document.querySelector('[name=answer-how]:checked') !== null", PATIENCE)
    assert READ == reading_of(page)
    expect(page.locator("[data-filled-in]")).to_be_visible()
    page.click("[data-action=check]")
    page.locator("[data-region=marked] .marked").wait_for()
    # What is typed instead stays, and the next problem begins empty.
    page.fill("#check [name=answer]", "70")
    expect(page.locator("[data-filled-in]")).to_be_hidden()
    page.click("[data-do=show]")
    wait_until(page, "document.querySelector('.practice').dataset.state === 'done'")
    page.click("[data-do=next]")
    wait_until(page, "document.querySelector('.practice').dataset.state === 'asking'")
    assert "" == page.input_value("#check [name=answer]")


def test_what_was_read_off_the_drawing_is_under_check_when_it_is_closed(page: Page, site: str, ready, answered) -> None:
    """Of a problem that is not the one in Practice, so there is no way there."""
    page.goto(f"{site}{SLUG}/#v=3&code=333-JDL-2GA")
    ready(page)
    answered(page)
    page.click(".check [data-action=draw]")
    draw_and_read(page)
    expect(page.locator("dialog.draw [data-in-practice]")).to_be_hidden()
    page.click("[data-draw-do=close]")
    assert READ == reading_of(page)
    # An answer that was begun by hand stays when the drawing is only looked at.
    page.fill("#check [name=answer]", "70")
    page.click(".check [data-action=draw]")
    Hand(page).opened()
    assert "61.5" == page.input_value("#draw-answer")
    page.click("[data-draw-do=close]")
    assert "70" == page.input_value("#check [name=answer]")


def test_what_was_read_is_in_millimetres_whatever_unit_was_chosen(page: Page, site: str, ready, answered) -> None:
    """The unit that was chosen for a calculated answer stayed, and 61.5 mm were marked as 61.5 cm."""
    page.goto(f"{site}{SLUG}/#v=3&code=333-JDL-2GA")
    ready(page)
    answered(page)
    page.evaluate("document.querySelector('[name=answer-how][value=calculated]').click()")
    page.select_option("#check [name=answer-unit]", "cm")
    page.click(".check [data-action=draw]")
    draw_and_read(page)
    page.click("[data-draw-do=close]")
    assert READ == reading_of(page)


def test_a_reading_goes_with_its_drawing(page: Page, site: str, tmp_path: Path) -> None:
    """Begun afresh, the old reading stayed; of a drawing opened from a file, the fields kept the one before."""
    shown(page, site, (390, 844))
    draw_and_read(page)
    fields = "#draw-answer", "#draw-answer-angle", "#draw-answer-side"
    values = [page.input_value(field) for field in fields]
    with page.expect_download() as taken:
        page.click("[data-draw-do=save]")
    taken.value.save_as(tmp_path / "drawing.json")
    page.click("[data-draw-read] [type=submit]")
    page.locator("[data-draw-marked] .marked").wait_for()
    page.click("[data-draw-do=afresh]")
    assert ["", ""] == [page.input_value(field) for field in fields[:2]]
    assert not page.locator("[data-draw-marked] .marked").count()
    assert not any(kept_reading(page).values())
    page.click("[data-draw-do=undo]")
    assert values == [page.input_value(field) for field in fields] == list(kept_reading(page).values())
    page.click("[data-draw-do=redo]")
    page.fill("#draw-answer", "7")
    page.set_input_files("[data-draw-open]", str(tmp_path / "drawing.json"))
    expect(page.locator("#draw-answer")).to_have_value("61.5")
    assert values == [page.input_value(field) for field in fields] == list(kept_reading(page).values())


def kept_reading(page: Page) -> dict[str, str]:
    """The reading that is kept with the drawing in view."""
    kept = json.loads(page.evaluate("localStorage.getItem('phasor-folio-drawings')"))
    found: dict[str, str] = kept["drawings"][0]["reading"]
    return found


def test_a_filled_in_answer_goes_when_its_drawing_is_begun_afresh(page: Page, site: str, ready, answered) -> None:
    """It stayed under Check, as the answer of a drawing that is no more; one that was typed by hand stays."""
    page.goto(f"{site}{SLUG}/#v=3&code=333-JDL-2GA")
    ready(page)
    answered(page)
    page.click(".check [data-action=draw]")
    draw_and_read(page)
    page.click("[data-draw-do=close]")
    assert READ == reading_of(page)
    page.click(".check [data-action=draw]")
    Hand(page).opened()
    page.evaluate("document.querySelector('[data-draw-do=afresh]').click()")
    page.click("[data-draw-do=close]")
    expect(page.locator("#check [name=answer]")).to_have_value("")
    expect(page.locator("[name=answer-how]:checked")).to_have_count(0)
    expect(page.locator("[data-filled-in]")).to_be_hidden()


SEEN = """(place) => {
  const [x, y] = document.querySelector(".draw-board").dataset.start.split(" ").map(Number);
  const sheet = document.querySelector(".draw-board > .draw-scene > .draw-paper");
  const { left, top, width } = sheet.getBoundingClientRect();
  const scale = width / sheet.viewBox.baseVal.width;
  const board = document.querySelector(".draw-board").getBoundingClientRect();
  const [across, down] = [(left + x * scale - board.left) / board.width, (top + y * scale - board.top) / board.height];
  return { scale, across, down, whole: left >= board.left && left + width <= board.right };
}"""


def test_a_phone_that_is_turned_has_its_paper_fitted_anew(open_page: Callable[..., Page], site: str, ready) -> None:
    """It kept the place that it had; the line that waits for its end is ended after the turn."""
    page = open_page(viewport=PHONE, has_touch=True)
    page.goto(f"{site}{SLUG}/")
    ready(page)
    page.evaluate("document.querySelector('[data-action=draw]').click()")
    hand = Hand(page).opened()
    arrow(hand, hand.start(), 90.0, 25.0, "i1")
    hand.choose("verb", "draw")
    page.mouse.click(*hand.pixel(hand.edge("ruler", 0.0)))
    expect(page.locator("[data-draw-prompt]")).to_contain_text("ends")
    page.set_viewport_size({"width": PHONE["height"], "height": PHONE["width"]})
    wait_until(page, f"({SEEN})().whole")
    page.set_viewport_size(PHONE)
    wait_until(page, f"Math.abs(({SEEN})().across - 0.5) < 0.02 && Math.abs(({SEEN})().down - 0.5) < 0.02")
    page.mouse.click(*hand.pixel(hand.edge("ruler", 20.0)))
    assert ["line", "name", "line"] == [op["do"] for op in hand.items()]


def test_what_was_moved_by_hand_stays_in_the_middle_when_a_phone_is_turned(
    open_page: Callable[..., Page], site: str, ready
) -> None:
    """At the size that it had."""
    page = open_page(viewport=PHONE, has_touch=True)
    page.goto(f"{site}{SLUG}/")
    ready(page)
    page.evaluate("document.querySelector('[data-action=draw]').click()")
    hand = Hand(page).opened()
    hand.press("closer")
    before = page.evaluate(SEEN)
    page.set_viewport_size({"width": PHONE["height"], "height": PHONE["width"]})
    wait_until(page, f"Math.abs(({SEEN})().across - 0.5) < 0.02")
    assert page.evaluate(SEEN)["scale"] == pytest.approx(before["scale"], rel=0.02)


def test_an_instrument_finds_the_tip_of_an_arrow_that_the_sheet_has_drawn(page: Page, site: str, ready) -> None:
    """Such a problem opened without its two arrows; they are no lines of the learner's, and no rubber takes them."""
    page.goto(f"{site}{SLUG}/{PROBLEM}&sheet=problem&start=two")
    ready(page)
    page.evaluate("document.querySelector('[data-action=draw]').click()")
    hand = Hand(page).opened()
    expect(page.locator(".draw-board > .draw-scene > .draw-paper [data-phasor=i1]").first).to_be_attached()
    x, y = hand.start()
    tip = (x, y - 9.2 * 5.0)
    hand.place("ruler", (tip[0] + 0.4, tip[1] - 0.4))
    assert tip == pytest.approx(hand.pose("ruler")[:2], abs=0.02)
    hand.press("rubber")
    page.mouse.click(*hand.pixel((x, y - 20.0)))
    assert [] == hand.items()
    rows = page.locator("[data-draw-lines] > li")
    told = [f"Arrow {name}: drawn on the sheet already" for name in ("I₁", "I₂")]
    assert told == rows.all_text_contents() and 0 == rows.locator("button").count(), "the list said: nothing is drawn"
    page.evaluate("document.querySelector('[data-draw-do=afresh]').click()")
    expect(page.locator("[data-draw-prompt]")).to_contain_text("Only what the sheet has drawn already is left.")
