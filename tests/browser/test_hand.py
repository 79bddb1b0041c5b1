"""The move in hand: pointing, focus or a press on a sentence inks its lines, a press on a line brings its sentence."""

from collections.abc import Callable

import pytest
from browser.asking import DESK, PHONE, SLUG, wait_until
from browser.kept import FRESH, READY
from playwright.sync_api import Page

MOVE = "section.working .moves li"
SIXTH = 5
"""The diagonal of the first parallelogram, by its place in the list."""
INKED = """() => {
  const drawings = [...document.querySelectorAll("svg[data-sheet], svg[data-view]")];
  const drawing = drawings.find((one) => one.checkVisibility());
  const numbers = (all) => [...all].map((one) => Number(one.dataset.step));
  const steps = (mark) => numbers(drawing.querySelectorAll(`g[data-step]${mark}`));
  const current = [...document.querySelectorAll("section.working .moves li[aria-current=step]")];
  return {
    own: steps(":not([data-when])"), before: steps("[data-when=before]"), later: steps("[data-when=later]"),
    current: current.map((one) => Number(one.dataset.forStep)),
    number: [...drawing.querySelectorAll(".step-mark text")].map((one) => one.textContent),
  };
}"""


@pytest.fixture
def shown(open_page: Callable[..., Page], site: str) -> Callable[..., Page]:
    """`shown(screen)` gives the page on a screen, answered, its sheet complete with its QR code."""

    def show(screen: dict[str, int], **options: object) -> Page:
        page = open_page(viewport=screen, **options)
        page.goto(f"{site}{SLUG}/")
        wait_until(page, f"{READY} && {FRESH}", 60)
        return page

    return show


def all_steps(page: Page) -> list[int]:
    return page.evaluate(INKED)["own"]


def in_hand(page: Page, step: int, steps: list[int]) -> None:
    """Hold that this step is inked, those before it are paler, those after it paler still."""
    wait_until(page, f"({INKED})().current.join() === '{step}'")
    found = page.evaluate(INKED)
    assert [step] == found["own"]
    assert [one for one in steps if one < step] == found["before"]
    assert [one for one in steps if one > step] == found["later"]
    assert [str(step)] == found["number"]


def test_pointing_at_a_move_inks_its_lines_and_leaving_it_gives_the_drawing_back(shown) -> None:
    page = shown(DESK)
    steps = all_steps(page)
    assert len(steps) > SIXTH + 1
    page.locator(MOVE).nth(1).hover()
    in_hand(page, int(page.locator(MOVE).nth(1).get_attribute("data-for-step") or 0), steps)
    page.mouse.move(DESK["width"] - 5, 5)
    wait_until(page, f"({INKED})().current.length === 0")
    assert steps == all_steps(page)


@pytest.mark.parametrize("screen", [DESK, PHONE], ids=["desk", "phone"])
def test_a_pressed_move_stays_in_hand_through_an_edit_and_says_why(shown, answered, screen: dict[str, int]) -> None:
    page = shown(screen)
    steps = all_steps(page)
    move = page.locator(MOVE).nth(SIXTH)
    assert not move.locator(".why").is_visible()
    move.click()
    step = int(move.get_attribute("data-for-step") or 0)
    in_hand(page, step, steps)
    assert move.locator(".why").is_visible()
    page.mouse.move(5, 5)
    page.evaluate("""() => {
      const field = document.querySelector("[name=i1]");
      field.value = "19.5";
      field.dispatchEvent(new Event("input", { bubbles: true }));
    }""")
    wait_until(page, f"{FRESH} && !document.querySelector('[data-region=workings]').hasAttribute('aria-busy')")
    wait_until(page, f"({INKED})().number.length === 1")
    in_hand(page, step, steps)


def test_up_and_down_walk_the_list_and_escape_lets_go(shown) -> None:
    page = shown(DESK)
    steps = all_steps(page)
    page.focus(f"{MOVE}[tabindex='0']")
    for _ in range(3):
        page.keyboard.press("ArrowDown")
    in_hand(page, int(page.locator(MOVE).nth(3).get_attribute("data-for-step") or 0), steps)
    assert 1 == page.locator(f"{MOVE}[tabindex='0']").count()
    page.keyboard.press("ArrowUp")
    in_hand(page, int(page.locator(MOVE).nth(2).get_attribute("data-for-step") or 0), steps)
    page.keyboard.press("End")
    in_hand(page, int(page.locator(MOVE).last.get_attribute("data-for-step") or 0), steps)
    page.keyboard.press("Escape")
    assert steps == all_steps(page)


def test_pressing_a_line_brings_its_move(shown) -> None:
    """Also from another thing beside the sheet, and with a finger that is a little off the line."""
    page = shown(DESK)
    steps = all_steps(page)
    page.click("[data-tab=results]")
    spot = page.evaluate("""() => {
      const line = document.querySelector('svg[data-sheet] g[data-step] g[data-phasor="i3"] line');
      const { left, top, width, height } = line.getBoundingClientRect();
      const step = Number(line.closest("g[data-step]").dataset.step);
      return { x: left + width * 0.25 + 4, y: top + height * 0.75 + 4, step };
    }""")
    page.mouse.click(spot["x"], spot["y"])
    in_hand(page, spot["step"], steps)
    assert "moves" == page.get_attribute(".column", "data-shows")
    assert spot["step"] == page.evaluate("Number(document.activeElement.dataset.forStep)")
    box, listed = (page.evaluate(
        f"(() => {{ const {{ top, bottom }} = document.querySelector({mark!r}).getBoundingClientRect();"
        " return { top, bottom }; })()"
    ) for mark in (f"{MOVE}[aria-current]", ".list"))  # fmt: skip
    assert listed["top"] <= box["top"] and box["bottom"] <= listed["bottom"] + 1


def test_on_a_phone_the_drawing_stays_beside_the_move_in_hand(shown) -> None:
    page = shown(PHONE)
    before = page.evaluate("document.documentElement.scrollHeight")
    page.locator(MOVE).nth(SIXTH).click()
    wait_until(page, "document.querySelector('.figure').hasAttribute('data-band')")
    boxes = page.evaluate(f"""() => ["svg[data-view=phone]", "{MOVE}[aria-current]", ".action-bar"].map((mark) => {{
      const {{ top, bottom }} = document.querySelector(mark).getBoundingClientRect();
      return [top, bottom];
    }})""")
    (top, band), (move, _), (foot, _) = boxes
    assert 0 <= top and band <= move and move < foot
    page.evaluate("scrollTo(0, 0)")
    wait_until(page, "!document.querySelector('.figure').hasAttribute('data-band')")
    assert abs(page.evaluate("document.documentElement.scrollHeight") - before) < 120, "only the unfolded reason"


FRAMED = """() => {
  const svg = document.querySelector("svg[data-view=phone]"), band = svg.getBoundingClientRect();
  const parts = [...svg.querySelectorAll("g[data-step]:not([data-when])")].map((one) => one.getBoundingClientRect());
  const current = document.querySelector("section.working .moves li[aria-current=step]");
  const place = current?.getBoundingClientRect();
  return {
    scale: svg.getScreenCTM().a, step: Number(current?.dataset.forStep ?? 0),
    middle: place ? (place.top + place.bottom) / 2 : 0,
    inside: parts.every((one) => one.left >= band.left && one.right <= band.right && one.top >= band.top - 1
      && one.bottom <= band.bottom + 1),
    bottom: document.querySelector(".tabs").getBoundingClientRect().bottom, band: band.bottom,
    tabs: document.querySelector(".tabs").getBoundingClientRect().top,
  };
}"""


CUT = """() => {
  const seen = document.querySelector("svg[data-view=phone]").getBoundingClientRect();
  const whole = ({ left, right, top, bottom }) =>
    left >= seen.left && right <= seen.right && top >= seen.top && bottom <= seen.bottom;
  return [...document.querySelectorAll("svg[data-view=phone] text")]
    .filter((one) => one.checkVisibility({ visibilityProperty: true }) && !whole(one.getBoundingClientRect()))
    .map((one) => one.textContent);
}"""
"""Labels of which only a part would be seen; those wholly outside have gone too."""


def test_the_band_of_a_phone_is_framed_on_the_move_in_view(shown) -> None:
    """Scrolling goes from move to move: each is inked as it comes into view, its lines and readings inside the band."""
    page = shown(PHONE)
    before = page.evaluate(FRAMED)["scale"]
    page.evaluate("document.querySelector('section.working').scrollIntoView()")
    wait_until(page, "document.querySelector('.figure').hasAttribute('data-band')")
    steps, scales, hidden = set(), [], 0
    for _ in range(14):
        page.mouse.wheel(0, 90)
        page.wait_for_timeout(60)
        found = page.evaluate(FRAMED)
        if not found["step"]:
            break
        assert found["inside"] and found["bottom"] < found["middle"], found
        steps.add(found["step"])
        scales.append(found["scale"])
        assert abs(found["tabs"] - found["band"]) < 2, "what else stands there is within reach"
        assert [] == page.evaluate(CUT)
        hidden += page.evaluate("document.querySelectorAll('.view text[data-cut]').length")
    assert hidden, "some labels have no room"
    assert len(steps) > 5, "a move after the other is in hand"
    assert min(scales) > 0.6 * before and max(scales) > 1.2 * before, "some moves are seen larger than by the whole"
    page.click("[data-tab=compare]")
    place = "document.querySelector('[name=measured]').getBoundingClientRect()"
    wait_until(page, f"{place}.top > document.querySelector('.tabs').getBoundingClientRect().bottom")
    assert page.evaluate(f"{place}.bottom") < PHONE["height"] - 60
    page.click("[data-tab=moves]")
    page.evaluate("scrollTo(0, 0)")
    wait_until(page, "!document.querySelector('.figure').hasAttribute('data-band')")
    found = page.evaluate(FRAMED)
    assert before == found["scale"] and 0 == found["step"]
    assert not page.evaluate("document.querySelectorAll('.view text[data-cut]').length")


def test_what_is_printed_knows_of_no_move_in_hand(shown) -> None:
    page = shown(DESK)
    page.locator(MOVE).nth(SIXTH).click()
    wait_until(page, f"({INKED})().number.length === 1")
    page.emulate_media(media="print")
    pale = """() => [...document.querySelectorAll("svg[data-sheet] g[data-step]")]
      .filter((one) => getComputedStyle(one).opacity !== "1").length"""
    assert 0 == page.evaluate(pale)
    assert "none" == page.evaluate("getComputedStyle(document.querySelector('.step-mark')).display")
