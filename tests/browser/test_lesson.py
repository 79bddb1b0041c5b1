"""The lesson view step by step: every key, and the instruments read off the picture."""

import math

import pytest
from browser.asking import neutral, wait_until
from browser.classroom import (
    FINISHED,
    SCREENS,
    STEPS,
    at,
    check_step,
    do,
    is_open,
    place,
    reveal,
    until_address,
    until_at,
    visible,
)
from browser.instruments import Seen, crossing
from playwright.sync_api import Page

# Step by step.


@pytest.mark.parametrize("screen", list(SCREENS))
def test_each_step_lays_its_instrument_where_it_belongs(lesson, screen: str) -> None:
    """By the buttons from the first step to the last; the picture is in view each time, and the address says where."""
    page = lesson(screen=screen)
    for step in range(1, STEPS + 1):
        until_at(page, step)
        reveal(page)
        check_step(Seen(page), step)
        box = page.locator('[data-lesson-region="lesson-picture"] svg').first.bounding_box()
        size = SCREENS[screen]
        assert box["x"] >= 0 and box["y"] >= 0
        assert box["x"] + box["width"] <= size["width"] + 1 and box["y"] + box["height"] <= size["height"] + 1
        assert page.evaluate("document.documentElement.scrollWidth") <= size["width"]
        for name in ("back", "next", "close"):
            button = page.locator(f'[data-lesson-do="{name}"]').bounding_box()
            assert button["height"] >= 48 and button["y"] + button["height"] <= size["height"]
        do(page, "next")
    until_address(page, f"step={FINISHED}")
    until_at(page, FINISHED)
    assert not page.locator(".lesson-figure [data-instrument]").count()
    told = page.locator(".lesson-text").inner_text().replace("\u00a0", " ")
    assert "Finished drawing" in told and "11.6 A" in told
    assert "Next view" == page.locator('[data-lesson-do="next"]').text_content()


def test_the_parallelogram_followed_on_paper_gives_the_same_neutral(lesson) -> None:
    """From the lesson view alone: directions and lengths as read off its instruments, points by drawing."""
    page = lesson()
    read: dict[int, Seen] = {}
    for step in range(1, STEPS + 1):
        until_at(page, step)
        reveal(page)
        read[step] = Seen(page)
        page.keyboard.press("ArrowRight")

    def set_off(step: int) -> float:
        return read[step].direction(read[step].amount)

    def arrow(length: float, degrees: float) -> complex:
        return complex(length * math.cos(math.radians(degrees)), length * math.sin(math.radians(degrees)))

    one = arrow(read[2].amount, read[2].ruler()[1])
    two = arrow(read[4].amount, set_off(3))
    diagonal = crossing((one, set_off(5)), (two, set_off(7)))
    assert abs(abs(diagonal) - read[10].amount) < 0.5
    three = arrow(read[12].amount, set_off(11))
    total = crossing((diagonal, set_off(14)), (three, set_off(16)))
    amperes = abs(total) / 10.0 * 2.0
    assert math.isclose(amperes, neutral(18.4, 11.2, 24.6), rel_tol=0.01)
    assert math.isclose(read[19].amount / 10.0 * 2.0, neutral(18.4, 11.2, 24.6), rel_tol=0.01)


METHODS = {
    "": 21, "&parallels=set-squares": 20, "&parallels=compasses": 20, "&method=tip-to-tail": 10,
    "&method=components": 29,
}  # fmt: skip


@pytest.mark.parametrize(("screen", "method"), [
    *(("projector", method) for method in METHODS), ("small projector", ""), ("small projector", "&method=components"),
])  # fmt: skip
def test_every_step_is_read_from_the_back_row_and_fits(lesson, screen: str, method: str) -> None:
    """64 of 1080 for the sentence, 44 to 52 for why, capitals of reading and zero a 23rd; no sentence is cut off."""
    page, height = lesson(f"{method}&view=lesson&step=1", screen), SCREENS[screen]["height"]
    for step in range(1, METHODS[method] + 1):
        until_at(page, step)
        reveal(page)
        for part in (".lesson-sentence", ".lesson-reading"):
            for size in page.eval_on_selector_all(part, "all => all.map((one) => getComputedStyle(one).fontSize)"):
                least = 52 if page.locator('.lesson-said[data-length="longer"]').count() else 63.9
                assert float(size.removesuffix("px")) >= least * height / 1080, (step, part)
        for size in page.eval_on_selector_all(".lesson-why", "all => all.map((one) => getComputedStyle(one).fontSize)"):
            assert float(size.removesuffix("px")) >= 43.9 * height / 1080, step
        drawn = page.locator('[data-lesson-region="lesson-picture"] svg').first.bounding_box()["height"]
        assert [] == [share for share in Seen(page).capitals() if share * drawn < height / 23], step
        over = "(() => { const t = document.querySelector('.lesson-text'); return t.scrollHeight - t.clientHeight; })()"
        assert page.evaluate(over) <= 0, step
        page.keyboard.press("ArrowRight")


# Keys.


@pytest.mark.parametrize(("key", "reached"), [
    ("ArrowRight", 5), ("ArrowDown", 5), (" ", 5), ("PageDown", 5), ("ArrowLeft", 3), ("ArrowUp", 3),
    ("Shift+ ", 3), ("PageUp", 3), ("Home", 1), ("End", FINISHED),
])  # fmt: skip
def test_each_key_moves(lesson, key: str, reached: int) -> None:
    """The step is announced, the address follows, and the focus stays where it was."""
    page = lesson("&view=lesson&step=4")
    before = page.evaluate("document.activeElement.dataset.lessonDo")
    page.keyboard.press(key)
    until_at(page, reached)
    until_address(page, f"&step={reached}")
    assert place(reached) in page.locator("[data-lesson-live]").text_content()
    assert "next" == before == page.evaluate("document.activeElement.dataset.lessonDo")


def test_digits_and_enter_jump(lesson) -> None:
    """By the numbers of the list on the page; they are shown until Enter, and Escape takes them back."""
    page = lesson()
    page.keyboard.type("10")
    assert "10" in page.locator("[data-lesson-typed]").text_content()
    page.keyboard.press("Enter")
    until_at(page, 16)
    assert "Step 10 of 12" in page.locator(".lesson-step").first.text_content()
    page.keyboard.type("3")
    page.keyboard.press("Escape")
    assert page.locator("[data-lesson-typed]").is_hidden() and is_open(page)
    page.keyboard.type("99")
    page.keyboard.press("Enter")
    until_at(page, STEPS)
    assert "99" in page.locator("[data-lesson-notice]").text_content()


def test_the_same_by_buttons_and_slider(lesson) -> None:
    page = lesson()
    do(page, "more")
    page.fill("[data-lesson-jump]", "5")
    do(page, "jump")
    until_at(page, 7)
    do(page, "back")
    until_at(page, 6)
    page.locator("[data-lesson-slider]").fill("9")
    until_at(page, 9)
    assert place(9) == page.locator("[data-lesson-slider]").get_attribute("aria-valuetext")


def test_back_and_forth_without_limit(lesson) -> None:
    """Fast presses are never lost, and never leave the steps that there are."""
    page = lesson("&view=lesson&step=2")
    for _ in range(5):
        page.keyboard.press("ArrowLeft")
    until_at(page, 1)
    for _ in range(9):
        page.keyboard.press("ArrowRight")
    until_at(page, 10)


def swipe(page: Page, across: int) -> None:
    """A finger's swipe over the picture."""
    session = page.context.new_cdp_session(page)
    for kind, x in (("touchStart", 200), ("touchMove", 200 + across // 2), ("touchMove", 200 + across)):
        session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": [{"x": x, "y": 150}]})
    session.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})


def test_swipes_move_on_a_phone(lesson) -> None:
    page = lesson("&view=lesson&step=4", "phone", has_touch=True, is_mobile=True)
    swipe(page, -120)
    until_at(page, 5)
    swipe(page, 120)
    until_at(page, 4)
    swipe(page, -20)
    page.wait_for_timeout(200)
    assert 4 == at(page)


# Ask first, and the blanked answer.


def test_ask_first_hides_each_reading_until_it_is_revealed(lesson) -> None:
    """In words, in the picture and to the ear; Next shows it before it goes on."""
    page = lesson("&view=lesson&step=5&ask=1")
    until_at(page, 5)
    assert visible(page, ".lesson-question") and not visible(page, ".lesson-reading")
    assert not visible(page, '[data-name="reading"]')
    assert "60" not in page.locator("[data-lesson-live]").text_content()
    page.keyboard.press("Enter")
    assert visible(page, ".lesson-reading") and visible(page, '[data-name="reading"]')
    assert not visible(page, ".lesson-question")
    assert "60°" in page.locator("[data-lesson-live]").text_content()
    page.keyboard.press("PageDown")
    until_at(page, 6)
    assert "Show the reading" == page.locator('[data-lesson-do="next"]').text_content()
    do(page, "next")
    assert 6 == at(page) and visible(page, ".lesson-reading")
    page.keyboard.press("q")
    page.keyboard.press("ArrowRight")
    until_at(page, 7)
    assert visible(page, ".lesson-reading")
    wait_until(page, "!location.hash.includes('ask=1')")


def test_the_second_stages_angle_is_asked_for_in_any_case(lesson) -> None:
    page = lesson("&view=lesson&step=13")
    until_at(page, 13)
    assert visible(page, ".lesson-question") and not visible(page, '[data-name="reading"]')
    do(page, "next")
    assert "about 157°" in page.locator(".lesson-reading").text_content() and visible(page, ".lesson-reading")


SUMS_TIP = """() => {
    const ring = [...document.querySelectorAll('.lesson-figure [data-name="answer"] circle')].at(-1);
    if (ring) return [ring.cx.baseVal.value, ring.cy.baseVal.value];
    const line = document.querySelector('.lesson-figure :is([data-phasor="sum"], [data-name="answer"]) line.exact');
    return line ? [line.x2.baseVal.value, line.y2.baseVal.value] : null; }"""
"""Where the sum ends in the picture, in its units."""
MEETING = """([x, y]) => [...document.querySelectorAll('.lesson-figure line')].filter((one) => {
    const near = (end) => Math.hypot(one[`x${end}`].baseVal.value - x, one[`y${end}`].baseVal.value - y) < 0.1;
    return one.checkVisibility({ visibilityProperty: true }) && (near(1) || near(2));
}).length"""
"""How many lines in view end there."""


@pytest.mark.parametrize("fragment", [
    "&view=lesson&step=19", "&view=together&step=1", "&view=pull&step=3", "&view=pull&step=4", "&view=waves&step=7",
])  # fmt: skip
def test_the_answer_is_hidden_at_one_key(lesson, fragment: str) -> None:
    """In words, as an arrow or a curve, and with its name, in every view."""
    page = lesson(fragment)
    assert visible(page, ".lesson-reading")
    answers = '[data-phasor="sum"], [data-name="answer"], [data-name="tag-sum"]'
    seen = f"""[...document.querySelectorAll('.lesson-figure :is({answers})')].filter((one) =>
        one.checkVisibility({{visibilityProperty: true}})).length"""
    assert page.evaluate(seen) > 0
    tip = page.evaluate(SUMS_TIP)
    assert "waves" in fragment or page.evaluate(MEETING, tip) > 0
    page.keyboard.press("h")
    assert 0 == page.evaluate(seen)
    assert "waves" in fragment or 0 == page.evaluate(MEETING, tip), "the answer can be found from what meets there"
    assert not visible(page, ".lesson-reading") and visible(page, ".lesson-hidden")
    shown = page.locator(".lesson-words").inner_text() + page.locator("[data-lesson-live]").text_content()
    assert not [one for one in ("11.6", "58 mm", "8.8 A") if one in shown]
    if "view=lesson" in fragment:
        assert not visible(page, '[data-name="reading"]')
    do(page, "hide")
    assert visible(page, ".lesson-reading") and page.evaluate(seen) > 0
