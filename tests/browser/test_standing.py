"""Where things stand on every calculator's page: what is put in, what is found, the sheet, the moves and the actions
are in view at once on a desk; on a phone the drawing begins high and the actions are always in reach."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from browser.asking import wait_until
from browser.kept import FRESH, READY
from making.programs import CHROMIUM_OPTIONS
from playwright.sync_api import Browser, Page, Playwright
from rooms import UNIMPROVED

from pycore.calculators.registry import CALCULATORS

DESKS = [(1366, 850), (1920, 1080), (1280, 800)]
PHONE = (390, 844)
BETWEEN = [(768, 1024), (1024, 768)]
NARROW = (320, 640)
DRAWING_BEGINS, BEFORE_MOVES = 330, 490  # of which the row of scale and paper takes up to 100
"""The lowest y at which a phone's drawing may begin, and the most that may stand between it and the first move."""
PLACES = """() => {
  const box = (selector) => {
    const found = [...document.querySelectorAll(selector)].find((one) => one.checkVisibility());
    if (!found) return null;
    const { left, top, right, bottom } = found.getBoundingClientRect();
    return { left, top, right, bottom };
  };
  const wide = (one) => one.checkVisibility() && one.scrollWidth > one.clientWidth + 1;
  return {
    fields: box(".values"), answer: box(".answer output"), drawing: box("svg[data-view], svg[data-sheet]"),
    sheet: box("svg[data-sheet]"), list: box(".list"), move: box("section.working .moves li"),
    actions: box(".action-bar"), lesson: box("[data-action=lesson]"), settings: box("[data-settings-switch]"),
    across: document.documentElement.scrollWidth, scrolled: scrollY,
    beside: box(".how-to > summary") ?? box(".story"),
    whole: box(".request > summary"), tabs: box(".tabs"), method: box("[data-field=method]"),
    cut: [...document.querySelectorAll(`.answer, .figures, .big, .action-bar button, .tabs button, .kinds button, h1,
      .values input`)].filter(wide).map((one) => one.outerHTML.slice(0, 90)),
  };
}"""
CUT_EQUATIONS = """() => [...document.querySelectorAll(".equation")]
  .filter((one) => one.checkVisibility() && one.scrollWidth > one.clientWidth + 1)
  .map((one) => one.textContent)"""
CUT_CHOICES = """() => {
  const pen = document.createElement("canvas").getContext("2d");
  const cut = (select) => {
    const style = getComputedStyle(select);
    const room = select.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight);
    pen.font = style.font;
    return [...select.options].map((one) => one.text).filter((text) => pen.measureText(text).width > room);
  };
  return [...document.querySelectorAll(".choices select")].filter((one) => one.checkVisibility()).flatMap(cut);
}"""
Box = dict[str, float]


def places(page: Page, site: str, slug: str, size: tuple[int, int]) -> dict:
    """Where everything is on a page as it opens, before anything is scrolled."""
    page.set_viewport_size({"width": size[0], "height": size[1]})
    page.goto(f"{site}{slug}/")
    wait_until(page, f"{READY} && {FRESH}", 60)
    found = page.evaluate(PLACES)
    assert 0 == found["scrolled"]
    assert found["across"] <= size[0], "the page is wider than its window"
    assert [] == found["cut"], "text is cut off"
    return found


def overlap(one: Box, other: Box) -> bool:
    return (one["left"] < other["right"] - 0.5 and other["left"] < one["right"] - 0.5
            and one["top"] < other["bottom"] - 0.5 and other["top"] < one["bottom"] - 0.5)  # fmt: skip


def calculations_break_before_their_signs(page: Page) -> None:
    """None is cut off, whichever is opened."""
    page.click("[data-tab=results]")
    page.evaluate("for (const part of document.querySelectorAll('.workings details')) part.open = true")
    wait_until(page, "[...document.querySelectorAll('.equation')].some((one) => one.checkVisibility())")
    assert [] == page.evaluate(CUT_EQUATIONS)


def no_choice_of_the_settings_is_cut_off(page: Page) -> None:
    page.click(".action-bar [data-settings-switch]")
    assert page.locator(".on-sheet").is_visible()
    assert [] == page.evaluate(CUT_CHOICES)


@pytest.mark.parametrize("slug", CALCULATORS)
@pytest.mark.parametrize("size", DESKS, ids=str)
def test_on_a_desk_all_that_matters_is_in_view_at_once(page: Page, site: str, slug: str, size: tuple[int, int]) -> None:
    found = places(page, site, slug, size)
    width, height = size
    foot = found["actions"]["top"]
    assert found["actions"]["bottom"] <= height + 0.5
    assert found["answer"]["bottom"] <= 172
    assert found["fields"]["top"] < found["answer"]["bottom"] and found["answer"]["top"] < found["fields"]["bottom"]
    for name in ("sheet", "move"):
        box = found[name]
        assert 0 <= box["left"] and box["right"] <= width, name
        assert found["answer"]["bottom"] <= box["top"] and box["bottom"] <= foot, name
    assert not overlap(found["sheet"], found["move"])
    assert found["move"]["bottom"] <= found["list"]["bottom"] + 0.5, "the first move is cut off"
    if size == DESKS[0]:
        calculations_break_before_their_signs(page)
        no_choice_of_the_settings_is_cut_off(page)


def test_on_a_desk_the_sheet_is_as_large_as_the_window_allows(page: Page, site: str) -> None:
    """Level paper has the height that is there; the words keep a column that can be read."""
    for size, least in (((1366, 850), 800), ((1920, 1080), 1090)):
        sheet = places(page, site, "neutral-current", size)["sheet"]
        assert sheet["right"] - sheet["left"] >= least


def test_on_a_desk_only_the_list_scrolls_and_the_sheet_stays(page: Page, site: str) -> None:
    before = places(page, site, "neutral-current", DESKS[0])
    page.hover("section.working .moves li")
    page.mouse.wheel(0, 900)
    wait_until(page, "document.querySelector('.list').scrollTop > 300")
    after = page.evaluate(PLACES)
    assert 0 == after["scrolled"]
    still = ("sheet", "answer", "actions")
    assert [before[name] for name in still] == [after[name] for name in still]


@pytest.mark.parametrize("slug", CALCULATORS)
def test_on_a_phone_the_drawing_begins_high_and_the_actions_are_in_reach(page: Page, site: str, slug: str) -> None:
    found = places(page, site, slug, PHONE)
    assert found["answer"]["bottom"] <= found["drawing"]["top"] <= DRAWING_BEGINS
    assert 0 <= found["drawing"]["left"] and found["drawing"]["right"] <= PHONE[0]
    assert found["actions"]["top"] < found["actions"]["bottom"] == PHONE[1]
    assert found["move"]["top"] - found["drawing"]["bottom"] <= BEFORE_MOVES
    assert found["beside"]["top"] < found["whole"]["bottom"], "the way to the whole sheet shares a row"
    assert not overlap(found["beside"], found["whole"])
    page.evaluate("scrollTo(0, 1200)")
    wait_until(page, "document.querySelector('.figure').hasAttribute('data-band')")
    scrolled = page.evaluate(PLACES)
    assert PHONE[1] == scrolled["actions"]["bottom"]
    # The answer stays with the drawing, in its corner.
    answer = scrolled["answer"]
    assert 0 <= answer["top"] and answer["bottom"] <= scrolled["drawing"]["bottom"]
    at = [(answer["left"] + answer["right"]) / 2, (answer["top"] + answer["bottom"]) / 2]
    assert page.evaluate("([x, y]) => Boolean(document.elementFromPoint(x, y).closest('.answer'))", at)


@pytest.mark.parametrize("scrolled", [0, 250, 420])
def test_on_a_phone_the_whole_sheet_comes_into_view_when_it_is_asked_for(page: Page, site: str, scrolled: int) -> None:
    places(page, site, "neutral-current", PHONE)
    page.evaluate("(y) => scrollTo(0, y)", scrolled)
    page.click(".request > summary")
    wait_until(page, """(() => {
      const { top, bottom } = document.querySelector('svg[data-sheet]').getBoundingClientRect();
      return top >= 0 && bottom <= document.querySelector('.action-bar').getBoundingClientRect().top;
    })()""")


def test_a_link_that_cannot_be_copied_by_itself_is_copied_by_a_button_and_closed(page: Page, site: str) -> None:
    """On an address without encryption there is no clipboard: the link stood there and could only be reloaded away."""
    page.add_init_script("Object.defineProperty(navigator, 'clipboard', { value: undefined })")
    places(page, site, "neutral-current", PHONE)
    row = page.locator("[data-link]")
    for leave in (lambda: page.keyboard.press("Escape"), lambda: page.click("[data-link-do=close]")):
        page.click("[data-action=share]")
        row.wait_for()
        leave()
        row.wait_for(state="hidden")
        assert "share" == page.evaluate("document.activeElement.dataset.action")
    page.click("[data-action=share]")
    page.click("[data-link-do=copy]")
    row.wait_for(state="hidden")
    assert "copied" in (page.text_content("[data-said]") or "")


@pytest.mark.parametrize("slug", CALCULATORS)
@pytest.mark.parametrize("size", BETWEEN, ids=str)
def test_between_phone_and_desk_the_sheet_is_whole(page: Page, site: str, slug: str, size: tuple[int, int]) -> None:
    found = places(page, site, slug, size)
    assert found["answer"]["bottom"] <= found["sheet"]["top"]
    assert found["sheet"]["bottom"] <= found["actions"]["top"]
    assert 0 <= found["sheet"]["left"] and found["sheet"]["right"] <= size[0]


@pytest.mark.parametrize("slug", CALCULATORS)
def test_at_320_pixels_nothing_is_cut_off(page: Page, site: str, slug: str) -> None:
    found = places(page, site, slug, NARROW)
    assert found["actions"]["bottom"] == NARROW[1]
    assert found["tabs"]["bottom"] - found["tabs"]["top"] < 60, "one row"
    assert not found["method"] or found["method"]["bottom"] - found["method"]["top"] < 70, "one row"
    for tab in page.locator("[data-tab]").all():
        tab.click()
        assert page.evaluate("document.documentElement.scrollWidth") <= NARROW[0]
    calculations_break_before_their_signs(page)


@pytest.fixture(scope="module")
def large_text(playwright: Playwright, chromium_path: Path) -> Iterator[Browser]:
    """A browser whose reader has set text of twice the usual size."""
    options = [*CHROMIUM_OPTIONS, UNIMPROVED, "--blink-settings=defaultFontSize=32"]
    chromium = playwright.chromium.launch(executable_path=str(chromium_path), args=options)
    yield chromium
    chromium.close()


@pytest.mark.parametrize("slug", ["neutral-current", "power-triangle", "open-neutral"])
@pytest.mark.parametrize("size", [DESKS[0], PHONE], ids=str)
def test_text_of_twice_the_size_can_be_used(large_text: Browser, page: Page, site: str, slug: str, size) -> None:
    """Every word grows with the browser's own text size, and nothing of the page leaves the window."""
    sizes = "(all) => all.map((one) => parseFloat(getComputedStyle(document.querySelector(one)).fontSize))"
    words = ["h1", ".values label", ".values input", ".big", ".summary", ".tabs button", ".moves li", ".kinds button"]
    places(page, site, slug, PHONE)
    usual = page.evaluate(sizes, words)
    large = large_text.new_page(service_workers="block")
    found = places(large, site, slug, size)
    assert [2 * one for one in usual] == large.evaluate(sizes, words)
    assert found["actions"]["bottom"] <= size[1] + 0.5
    for tab in large.locator("[data-tab]").all():
        tab.click()
        assert large.evaluate("document.documentElement.scrollWidth") <= size[0]
    large.close()


@pytest.mark.parametrize("size", [DESKS[0], PHONE], ids=str)
def test_with_text_of_twice_the_size_no_page_is_wider_than_its_window(large_text: Browser, site, dist, size):
    page = large_text.new_page(service_workers="block", viewport={"width": size[0], "height": size[1]})
    for slug in sorted(one.parent.relative_to(dist).as_posix() for one in dist.rglob("index.html")):
        page.goto(f"{site}{slug}/", wait_until="domcontentloaded")
        assert size[0] >= page.evaluate("document.documentElement.scrollWidth"), slug
    page.close()


@pytest.mark.parametrize("size", [DESKS[0], PHONE], ids=str)
def test_with_text_of_twice_the_size_a_drawing_keeps_its_paper(large_text: Browser, site: str, size) -> None:
    """Its view scrolls then: the paper has half of the window, and the buttons stay in reach."""
    page = large_text.new_page(service_workers="block")
    places(page, site, "neutral-current", size)
    page.evaluate("document.querySelector('[data-action=draw]').click()")
    wait_until(page, "document.querySelector('.draw-board svg') !== null", 30)
    page.evaluate("document.querySelector('.draw').scrollTop = 9999")
    board, bar = (page.locator(name).bounding_box() for name in (".draw-board", ".draw-bar"))
    assert board and bar and board["height"] >= size[1] / 2
    assert bar["y"] + bar["height"] <= size[1] + 0.5
    assert page.evaluate("document.querySelector('.draw').scrollWidth") <= size[0]
    assert "32px" == page.evaluate("getComputedStyle(document.querySelector('.draw-prompt')).fontSize")
    page.close()


@pytest.mark.parametrize("slug", CALCULATORS)
def test_the_list_of_every_result_opens_at_its_beginning(page: Page, site: str, slug: str) -> None:
    """What stands before the results in it is not scrolled past."""
    places(page, site, slug, (1366, 768))
    page.click("[data-tab=results]")
    assert 0 == page.evaluate("document.querySelector('[data-list]').scrollTop")
