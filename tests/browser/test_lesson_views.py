"""The views of the classroom and how they are reached: menu and letters, why, waves, the class's own arrow, motion."""

import math
import time

import pytest
from browser.asking import wait_until
from browser.classroom import FINISHED, STEPS, at, do, is_open, until_address, until_at, visible


def test_each_view_and_method_has_a_letter_in_the_menu_and_without_it(lesson) -> None:
    """From the parallelogram to tip to tail to all methods together in three presses: M, T, A, or without M in two."""
    page = lesson("&view=lesson&step=9")
    shown = page.eval_on_selector_all("[data-lesson-key]:not([hidden]) kbd", "all => all.map(one => one.textContent)")
    assert len(shown) == len(set(shown)) and {"D", "U", "A", "R", "V", "P", "T", "C"} <= set(shown)
    page.keyboard.press("m")
    assert page.locator("[data-lesson-panel]").is_visible()
    page.keyboard.press("t")
    until_address(page, "method=tip-to-tail")
    wait_until(page, "document.querySelector('.lesson-step')?.textContent === 'Step 1 of 6'")
    assert page.locator("[data-lesson-panel]").is_hidden()
    page.keyboard.press("a")
    until_address(page, "view=together&step=1")
    page.keyboard.press("p")
    until_address(page, "view=lesson&step=1")
    wait_until(page, "document.querySelector('.lesson-step')?.textContent === 'Step 1 of 12'")
    for letter, view in (("u", "numbers"), ("r", "pull"), ("v", "waves"), ("d", "lesson")):
        page.keyboard.press(letter)
        until_address(page, f"view={view}&step=1")


def test_page_keys_never_change_a_choice_that_has_the_focus(lesson) -> None:
    """They are those of a remote control: the lesson goes on, the choice stays."""
    page = lesson("&view=lesson&step=3")
    do(page, "more")
    page.focus("[data-lesson-set=order]")
    before = page.input_value("[data-lesson-set=order]")
    page.keyboard.press("PageDown")
    until_at(page, 4)
    assert before == page.input_value("[data-lesson-set=order]")


def test_two_keys_reach_every_view(lesson) -> None:
    """Those of a remote control. Past the last step the menu offers the next view; a second press shows it."""
    page = lesson(f"&view=lesson&step={STEPS}")
    offered = "document.querySelector('[data-lesson-panel] [data-offered]')?.textContent ?? ''"

    def press(key: str, then: str) -> None:
        page.keyboard.press(key)
        wait_until(page, f"{offered} === {then!r}" if then else f"{offered} === ''")

    press("PageDown", "")
    until_at(page, FINISHED)
    press("PageDown", "TTip to tail")
    assert visible(page, "[data-lesson-panel]") and visible(page, '[data-lesson-region="lesson-picture"] svg')
    lead = page.locator("[data-lesson-lead]")
    assert "The next view is Tip to tail. Press again to open it." == lead.inner_text()
    assert lead.evaluate("(one) => parseFloat(getComputedStyle(one).fontSize)") >= 40
    assert not visible(page, ".lesson-menu-head > :first-child"), "the title does not run into the sentence"
    assert "Tip to tail" in page.locator("[data-lesson-live]").text_content()
    press("PageUp", "")
    assert FINISHED == at(page) and not visible(page, "[data-lesson-panel]")
    assert "method=tip-to-tail" not in page.evaluate("location.hash")
    press("PageDown", "TTip to tail")
    press("PageDown", "")
    until_address(page, "method=tip-to-tail&view=lesson&step=1")
    # The address is ahead of the step: a press before it has come belongs to the view that is left.
    wait_until(page, "document.querySelector('.lesson-step')?.textContent === 'Step 1 of 6'")
    press("PageUp", "PParallelogram")
    press("PageUp", "")
    until_address(page, f"view=lesson&step={FINISHED}")
    assert "method=tip-to-tail" not in page.evaluate("location.hash")
    found = []
    for _ in range(6):
        page.keyboard.press("End")
        wait_until(page, "document.querySelector('[data-lesson-do=next]').textContent === 'Next view'")
        page.keyboard.press("PageDown")
        found.append(page.evaluate(offered)[1:])
        press("PageDown", "")
        wait_until(page, "document.querySelector('.lesson-step')?.dataset.frame === '1'")
    views = ["The numbers alone", "All methods on one drawing", "Ropes on a ring", "Waves"]
    assert ["Tip to tail", "Components", *views] == found
    page.keyboard.press("Home")
    until_address(page, "view=waves&step=1")
    press("PageUp", "RRopes on a ring")


def test_why_is_a_picture_of_its_own(lesson) -> None:
    """W shows it in place of the step, and Next, W or Escape lead back; it waits until the class has answered."""
    page = lesson("&view=lesson&step=5")
    for leave in ("w", "ArrowRight", "Escape"):
        page.keyboard.press("w")
        assert visible(page, '[data-lesson-region="lesson-why-picture"] svg')
        assert not visible(page, '[data-lesson-region="lesson-picture"] svg')
        told = page.locator('[data-lesson-region="lesson-why"]').inner_text().replace("\u00a0", " ")
        assert "180° − 120° = 60°" in told
        assert "180° − 120° =" in page.locator("[data-lesson-live]").text_content()
        page.keyboard.press(leave)
        assert is_open(page) and 5 == at(page)
        assert not visible(page, '[data-lesson-region="lesson-why-picture"] svg')
    page.keyboard.press("q")
    page.keyboard.press("w")
    assert not visible(page, '[data-lesson-region="lesson-why-picture"] svg')
    page.keyboard.press("q")
    page.keyboard.press("ArrowRight")
    until_at(page, 6)
    wait_until(page, "getComputedStyle(document.querySelector('[data-lesson-do=why]')).visibility === 'hidden'")


def test_the_screen_can_be_blank(lesson) -> None:
    page = lesson()
    for key in ("b", "."):
        page.keyboard.press(key)
        assert visible(page, "[data-lesson-dark]")
        page.keyboard.press(key)
        assert not visible(page, "[data-lesson-dark]")


def test_the_class_places_an_arrow_that_stays_to_the_end(lesson) -> None:
    """From the common point to where the picture was pressed; X clears it, other views do not show it."""
    page = lesson("&view=lesson&step=2")
    stage = page.locator(".lesson-stage").bounding_box()
    x, y = stage["x"] + 300, stage["y"] + 400
    page.mouse.click(x, y)
    ends = """() => { const line = document.querySelector('[data-lesson-guess] line').getBoundingClientRect();
        return [line.left, line.top, line.right, line.bottom]; }"""
    assert visible(page, "[data-lesson-guess]")
    first = page.evaluate(ends)
    assert min(abs(first[0] - x), abs(first[2] - x)) < 50
    start = page.evaluate("""() => { const one = document.querySelector(
        '[data-lesson-region="lesson-picture"] [data-step] > circle').getBoundingClientRect();
        return [one.x + one.width / 2, one.y + one.height / 2]; }""")
    assert min(abs(first[0] - start[0]), abs(first[2] - start[0])) < 2
    page.keyboard.press("End")
    until_at(page, FINISHED)
    assert visible(page, "[data-lesson-guess]") and first == page.evaluate(ends)
    page.keyboard.press("r")
    until_address(page, "view=pull")
    assert not visible(page, "[data-lesson-guess]")
    page.keyboard.press("d")
    until_address(page, "view=lesson")
    assert visible(page, "[data-lesson-guess]")
    page.keyboard.press("x")
    assert not visible(page, "[data-lesson-guess]")


@pytest.mark.parametrize("motion", ["no-preference", "reduce"])
def test_the_instrument_slides_and_the_line_grows_unless_motion_is_reduced(lesson, motion: str) -> None:
    page = lesson("&view=lesson&step=3", reduced_motion=motion)
    page.evaluate("""() => { window.moved = []; const animate = Element.prototype.animate;
        Element.prototype.animate = function (frames, options) {
            window.moved.push([this.dataset.name, options.duration]);
            return animate.call(this, frames, options); }; }""")
    page.keyboard.press("ArrowRight")
    until_at(page, 4)
    moved = page.evaluate("window.moved")
    assert ([["fresh", 150]] if motion == "no-preference" else []) == moved
    page.evaluate("window.moved = []")
    page.keyboard.press("PageDown")
    until_at(page, 5)
    page.keyboard.press("PageDown")
    until_at(page, 6)
    page.evaluate("window.moved = []")
    page.keyboard.press("PageUp")
    until_at(page, 5)
    assert [] == page.evaluate("window.moved")


def test_the_waves_are_turned_dragged_and_played(lesson) -> None:
    """Arrows 10°, with Shift 1°; the cursor follows the mouse; Space plays and stops."""
    page = lesson("&view=waves&step=10")
    turned = "document.querySelector('.lesson-sentence')?.textContent.match(/After (\\d+)°/)[1]"
    page.keyboard.press("Shift+ArrowRight")
    wait_until(page, f"{turned} === '91'")
    until_address(page, "view=waves&step=10.1")
    page.keyboard.press("ArrowLeft")
    wait_until(page, f"{turned} === '81'")
    axis = page.locator('[data-name="axis"] line').bounding_box()
    page.mouse.move(axis["x"] + axis["width"] / 4, axis["y"])
    page.mouse.down()
    wait_until(page, f"{turned} === '90'")
    page.mouse.move(axis["x"] + axis["width"] / 2, axis["y"], steps=4)
    page.mouse.up()
    wait_until(page, f"{turned} === '180'")
    page.keyboard.press(" ")
    assert "Pause" == page.locator('[data-lesson-do="play"]').text_content()
    wait_until(page, f"Number({turned}) > 200")
    page.keyboard.press(" ")
    assert "Play" == page.locator('[data-lesson-do="play"]').text_content()
    page.wait_for_timeout(150)
    stopped = page.evaluate(turned)
    page.wait_for_timeout(300)
    assert stopped == page.evaluate(turned)


def test_one_turn_is_played_in_six_seconds(lesson) -> None:
    """The address follows when it stands: browsers refuse one that changes a hundred times in half a minute."""
    page = lesson("&view=waves&step=1")
    page.evaluate("""() => { window.changes = 0; const replace = history.replaceState;
        history.replaceState = function (...all) { window.changes += 1; return replace.apply(this, all); }; }""")
    start = time.monotonic()
    page.keyboard.press(" ")
    wait_until(page, "document.querySelector('[data-lesson-do=\"play\"]').textContent === 'Play'", 20.0)
    assert 5.8 <= time.monotonic() - start <= 8.0
    wait_until(page, "document.querySelector('.lesson-sentence').textContent.includes('After 0°')")
    assert page.evaluate("window.changes") <= 3


def test_the_common_point_does_not_move_by_a_pixel(lesson) -> None:
    """From the first arrow to the answer."""
    page = lesson("&view=lesson&step=2")
    places = []
    for step in range(2, STEPS + 1):
        until_at(page, step)
        places.append(page.evaluate("""() => { const one = document.querySelector(
            '[data-lesson-region="lesson-picture"] [data-step] > circle').getBoundingClientRect();
            return [one.x, one.y]; }"""))
        if page.locator('[data-lesson-do="next"]').text_content() == "Show the reading":
            page.keyboard.press("Enter")
        page.keyboard.press("ArrowRight")
    assert all(math.dist(place, places[0]) < 0.1 for place in places)


@pytest.mark.parametrize("fragment", ["&view=waves&step=7", "&view=lesson&step=5"])
def test_the_menu_leaves_the_picture_where_it_is(lesson, fragment: str) -> None:
    page = lesson(fragment, "small projector")
    before = page.locator(".lesson-stage").bounding_box()
    page.keyboard.press("m")
    assert page.locator("[data-lesson-panel]").is_visible()
    assert before == page.locator(".lesson-stage").bounding_box()


SMALLEST = """(least) => {
    const shown = (one) => one.checkVisibility({ visibilityProperty: true });
    const texts = [...document.querySelectorAll('[data-lesson] *')].filter((one) => shown(one)
        && !one.closest('.away, .live, sub, .lesson-switches, option, defs, title, desc')
        && [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim()));
    return texts.map((one) => {
        const matrix = one.ownerSVGElement ? one.getScreenCTM() : { a: 1, b: 0 };
        const scale = Math.hypot(matrix.a, matrix.b);
        return [Math.round(10 * parseFloat(getComputedStyle(one).fontSize) * scale) / 10, one.textContent.slice(0, 20)];
    }).filter(([size]) => size < least); }"""


@pytest.mark.parametrize(("fragment", "keys"), [
    ("&view=lesson&step=5", ""), ("&view=lesson&step=5", "w"), ("&view=lesson&step=5", "m"),
    ("&view=lesson&step=10", ""), ("&view=lesson&step=12", ""), ("&view=waves&step=7", ""),
    ("&view=pull&step=4", ""), ("&view=together&step=3", ""), ("&view=lesson&step=21", ""),
    ("&view=numbers&step=1", ""), ("&view=numbers&step=2", ""),
])  # fmt: skip
def test_nothing_is_smaller_than_28_pixels_of_1080(lesson, fragment: str, keys: str) -> None:
    """The keys at the foot have 24; an index has seven tenths of its letter."""
    page = lesson(fragment)
    for key in keys:
        page.keyboard.press(key)
    small = [one for one in page.evaluate(SMALLEST, 27.9) if one[1].strip() not in ("1", "2", "3", "N", "1,3")]
    assert [] == small
    sizes = "all => all.map((one) => getComputedStyle(one).fontSize)"
    foot = page.eval_on_selector_all(".lesson-switches button", sizes)
    assert all(float(size.removesuffix("px")) >= 24 for size in foot)
