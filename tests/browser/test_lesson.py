"""The classroom view in a browser: every step, every key, and the instruments read off the picture."""

import math
import shutil
import time
from collections.abc import Callable
from pathlib import Path

import pytest
import zxingcpp
from browser.asking import SLUG, neutral, wait_until
from browser.instruments import Seen, apart, crossing, way
from browser.test_page_access import violations
from making.serve import serving
from PIL import Image
from playwright.sync_api import Page

PROBLEM = "#v=1&i1=18.4&i2=11.2&i3=24.6"
SCREENS = {
    "projector": {"width": 1920, "height": 1080}, "small projector": {"width": 1280, "height": 720},
    "phone": {"width": 390, "height": 844}, "small phone": {"width": 320, "height": 568},
}  # fmt: skip
STEPS = 20
CENTRES = {3: "O", 5: "i1", 7: "i2", 11: "O", 13: "O", 14: "i12", 16: "i3", 20: "O"}
"""Where the protractor's centre belongs in each step of the parallelogram that has one."""
RULERS = {2: "i1", 4: "i2", 10: "i12", 12: "i3", 19: "sum"}
"""The phasor along which the ruler lies, zero on its tail, reading at its tip."""


def at(page: Page) -> int:
    """The step in view, by its words."""
    words = page.locator(".lesson-step").text_content()
    return int(words.split()[1])


def until_at(page: Page, step: int) -> None:
    """Wait until a step is in view."""
    try:
        wait_until(page, f"""document.querySelector(".lesson-step")?.textContent.startsWith("Step {step} of")""")
    except AssertionError:
        raise AssertionError(f"step {at(page)} is in view, not {step}") from None


def is_open(page: Page) -> bool:
    return page.evaluate("document.querySelector('[data-lesson]').open")


def until_address(page: Page, part: str) -> None:
    wait_until(page, f"location.hash.includes({part!r})")


@pytest.fixture
def lesson(open_page: Callable[..., Page], site: str) -> Callable[..., Page]:
    """`lesson(fragment, screen)` opens a link straight into the classroom view."""

    def open_lesson(fragment: str = "&view=lesson&step=1", screen: str = "projector", **options: object) -> Page:
        page = open_page(viewport=SCREENS[screen], **options)
        page.goto(f"{site}{SLUG}/{PROBLEM}{fragment}")
        wait_until(page, "document.querySelector('.lesson-step') !== null", 60.0)
        return page

    return open_lesson


def do(page: Page, name: str) -> None:
    page.click(f'[data-lesson-do="{name}"]')


def reveal(page: Page) -> None:
    """Show a reading that waits to be asked for."""
    if page.locator('[data-lesson-do="next"]').text_content() == "Show the reading":
        page.keyboard.press("Enter")


# Step by step.


@pytest.mark.parametrize("screen", list(SCREENS))
def test_each_step_lays_its_instrument_where_it_belongs(lesson, screen: str) -> None:
    """By the buttons from the first step to the last; the picture is in view each time, and the address says where."""
    page = lesson(screen=screen)
    for step in range(1, STEPS + 1):
        until_at(page, step)
        reveal(page)
        check_step(Seen(page), step)
        box = page.locator('[data-lesson-region="lesson-picture"] svg').bounding_box()
        size = SCREENS[screen]
        assert box["x"] >= 0 and box["y"] >= 0
        assert box["x"] + box["width"] <= size["width"] + 1 and box["y"] + box["height"] <= size["height"] + 1
        assert page.evaluate("document.documentElement.scrollWidth") <= size["width"]
        for name in ("back", "next", "close"):
            button = page.locator(f'[data-lesson-do="{name}"]').bounding_box()
            assert button["height"] >= 48 and button["y"] + button["height"] <= size["height"]
        if step < STEPS:
            do(page, "next")
    until_address(page, f"step={STEPS}")
    assert "true" == page.locator('[data-lesson-do="next"]').get_attribute("aria-disabled")


def check_step(seen: Seen, step: int) -> None:
    """The instrument of one step of the parallelogram, read off the picture."""
    if step in CENTRES:
        centre, _ = seen.protractor()
        place = seen.start if CENTRES[step] == "O" else seen.phasor(CENTRES[step])[1]
        assert abs(centre - place) < 0.02, step
        far = max((end for line in seen.found["reading"] for end in ends_of(line)), key=lambda end: abs(end - centre))
        assert apart(way(centre, far), seen.direction(seen.amount)) < 0.1, step
    elif step in RULERS:
        zero, along, unit = seen.ruler()
        tail, tip = seen.phasor(RULERS[step])
        assert abs(zero - tail) < 0.01 and apart(along, way(tail, tip)) < 0.02, step
        assert abs(abs(tip - tail) / unit - seen.amount) <= 0.26, step
    elif step in (6, 8, 15, 17):
        assert "ruler" in seen.found["instruments"]


def ends_of(line: list[float]) -> tuple[complex, complex]:
    return complex(line[0], -line[1]), complex(line[2], -line[3])


def test_the_parallelogram_followed_on_paper_gives_the_same_neutral(lesson) -> None:
    """From the classroom view alone: directions and lengths as read off its instruments, points by drawing."""
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
    "": 20, "&parallels=set-squares": 19, "&parallels=compasses": 19, "&method=tip-to-tail": 9,
    "&method=components": 28,
}  # fmt: skip


@pytest.mark.parametrize(("screen", "method"), [
    *(("projector", method) for method in METHODS), ("small projector", ""), ("small projector", "&method=components"),
])  # fmt: skip
def test_every_step_is_read_from_the_back_row_and_fits(lesson, screen: str, method: str) -> None:
    """Capitals of sentence, reading and zero are a 23rd of the screen's height; no sentence is cut off."""
    page, height = lesson(f"{method}&view=lesson&step=1", screen), SCREENS[screen]["height"]
    for step in range(1, METHODS[method] + 1):
        until_at(page, step)
        reveal(page)
        for part in (".lesson-sentence", ".lesson-reading"):
            for size in page.eval_on_selector_all(part, "all => all.map((one) => getComputedStyle(one).fontSize)"):
                assert float(size.removesuffix("px")) * 0.657 >= height / 23, (step, part)
        drawn = page.locator('[data-lesson-region="lesson-picture"] svg').bounding_box()["height"]
        assert [] == [share for share in Seen(page).capitals() if share * drawn < height / 23], step
        over = "(() => { const t = document.querySelector('.lesson-text'); return t.scrollHeight - t.clientHeight; })()"
        assert page.evaluate(over) <= 0, step
        page.keyboard.press("ArrowRight")


# Keys.


@pytest.mark.parametrize(("key", "reached"), [
    ("ArrowRight", 5), ("ArrowDown", 5), (" ", 5), ("PageDown", 5), ("ArrowLeft", 3), ("ArrowUp", 3),
    ("Shift+ ", 3), ("PageUp", 3), ("Home", 1), ("End", STEPS),
])  # fmt: skip
def test_each_key_moves(lesson, key: str, reached: int) -> None:
    """The step is announced, the address follows, and the focus stays where it was."""
    page = lesson("&view=lesson&step=4")
    before = page.evaluate("document.activeElement.dataset.lessonDo")
    page.keyboard.press(key)
    until_at(page, reached)
    until_address(page, f"&step={reached}")
    assert f"Step {reached} of {STEPS}" in page.locator("[data-lesson-live]").text_content()
    assert "next" == before == page.evaluate("document.activeElement.dataset.lessonDo")


def test_digits_and_enter_jump(lesson) -> None:
    """The digits are shown until Enter; Escape takes them back and closes nothing."""
    page = lesson()
    page.keyboard.type("12")
    assert "12" in page.locator("[data-lesson-typed]").text_content()
    page.keyboard.press("Enter")
    until_at(page, 12)
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
    page.fill("[data-lesson-jump]", "7")
    do(page, "jump")
    until_at(page, 7)
    do(page, "back")
    until_at(page, 6)
    page.locator("[data-lesson-slider]").fill("9")
    until_at(page, 9)
    assert f"Step 9 of {STEPS}" == page.locator("[data-lesson-slider]").get_attribute("aria-valuetext")


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


def visible(page: Page, selector: str) -> bool:
    return page.locator(selector).first.is_visible()


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
    assert "157.2" in page.locator(".lesson-reading").text_content() and visible(page, ".lesson-reading")


@pytest.mark.parametrize("fragment", ["&view=lesson&step=19", "&view=together&step=1", "&view=pull&step=4"])
def test_the_answer_is_blanked_at_one_key(lesson, fragment: str) -> None:
    page = lesson(fragment)
    assert visible(page, ".lesson-reading")
    page.keyboard.press("b")
    assert not visible(page, ".lesson-reading") and visible(page, ".lesson-hidden")
    shown = page.locator(".lesson-words").inner_text() + page.locator("[data-lesson-live]").text_content()
    assert "11.6" not in shown and "58 mm" not in shown
    if "view=lesson" in fragment:
        assert not visible(page, '[data-name="reading"]')
    do(page, "blank")
    assert visible(page, ".lesson-reading")


# In and out.


def test_the_button_opens_and_closing_loses_nothing(opened: Page, answered) -> None:
    """Values typed, the answer, the place of the focus: all as before."""
    page = opened
    page.fill("[name=i1]", "20")
    answered(page)
    page.click("[data-action=lesson]")
    until_at(page, 1)
    until_address(page, "view=lesson&step=1")
    page.keyboard.press("End")
    until_at(page, STEPS)
    page.keyboard.press("Escape")
    assert not is_open(page)
    assert "20" == page.input_value("[name=i1]")
    assert "lesson" == page.evaluate("document.activeElement.dataset.action")
    wait_until(page, "!location.hash.includes('view=')")
    assert "i1=20" in page.evaluate("location.hash")


def test_the_lesson_is_the_first_action_and_filled(opened: Page) -> None:
    first = opened.locator(".actions button").first
    assert ("lesson", "first") == (first.get_attribute("data-action"), first.get_attribute("class"))


def test_a_link_opens_at_its_step_and_a_later_link_too(lesson) -> None:
    page = lesson("&method=tip-to-tail&view=lesson&step=4")
    until_at(page, 4)
    page.evaluate(f"location.hash = '{PROBLEM}&view=waves&step=10'")
    until_at(page, 10)
    assert "90°" in page.locator(".lesson-sentence").text_content()
    page.evaluate(f"location.hash = '{PROBLEM}'")
    wait_until(page, "!document.querySelector('[data-lesson]').open")


@pytest.mark.parametrize(("fragment", "step", "told"), [
    ("&view=lesson&step=99", STEPS, "99"), ("&method=tip-to-tail&view=lesson&step=20", 9, "20"),
    ("&view=lesson&step=zero", 1, "zero"), ("&view=cinema&step=3", 3, "cinema"), ("&view=lesson", 1, ""),
])  # fmt: skip
def test_what_is_not_there_opens_the_nearest_and_says_so(lesson, fragment: str, step: int, told: str) -> None:
    page = lesson(fragment)
    until_at(page, step)
    notice = page.locator("[data-lesson-notice]")
    assert bool(told) == notice.is_visible()
    assert told in notice.text_content()
    page.keyboard.press("Home" if step > 1 else "End")
    wait_until(page, "document.querySelector('[data-lesson-notice]').hidden")


def test_a_link_with_an_unusable_value_says_what_is_wrong(open_page, site: str) -> None:
    """In the lesson, and at the field once it is closed."""
    page = open_page(viewport=SCREENS["projector"])
    page.goto(f"{site}{SLUG}/#v=1&i1=18.4&i2=many&i3=24.6&view=lesson&step=4")
    wait_until(page, "!document.querySelector('[data-lesson-notice]').hidden", 60.0)
    assert "many" in page.locator("[data-lesson-notice]").text_content()
    page.keyboard.press("ArrowRight")
    page.keyboard.press("Escape")
    assert not is_open(page)
    assert "true" == page.get_attribute("[name=i2]", "aria-invalid")


def test_method_and_order_are_chosen_in_the_view(lesson) -> None:
    """They are the form's own: the page behind, the address and the lesson follow."""
    page = lesson("&view=lesson&step=9")
    do(page, "more")
    page.select_option("[data-lesson-set=method]", "tip-to-tail")
    wait_until(page, "document.querySelector('.lesson-step')?.textContent === 'Step 1 of 9'")
    until_address(page, "method=tip-to-tail")
    assert page.locator("[name=method][value=tip-to-tail]").is_checked()
    assert page.locator("[data-lesson-choice=parallels]").is_hidden()
    page.select_option("[data-lesson-set=order]", "23")
    until_address(page, "order=23")
    page.select_option("[data-lesson-view]", "pull")
    wait_until(page, "document.querySelector('.lesson-step')?.textContent === 'Step 1 of 4'")
    page.keyboard.press("Escape")
    assert is_open(page) and page.locator("[data-lesson-panel]").is_hidden()


def test_the_waves_turn_by_ten_degrees_at_an_arrow_key(lesson) -> None:
    """The slider's keys are the view's; the phasor of L1 stands where it was turned to."""
    page = lesson("&view=waves&step=1")
    page.focus("[data-lesson-slider]")
    for step in (2, 3):
        page.keyboard.press("ArrowRight")
        until_at(page, step)
        tail, tip = Seen(page).phasor("i1")
        assert apart(way(tail, tip), 10.0 * (step - 1)) < 0.05
        assert f"{10 * (step - 1)}°" in page.locator(".lesson-sentence").text_content()


def test_all_methods_end_on_one_point(lesson) -> None:
    page = lesson("&view=together&step=1")
    rings = []
    for step in range(1, 8):
        until_at(page, step)
        rings.append(page.evaluate("""() => {
            const ring = [...document.querySelectorAll('[data-lesson-region="lesson-picture"] circle')].at(-1);
            return [ring.cx.baseVal.value, ring.cy.baseVal.value]; }"""))
        page.keyboard.press("ArrowRight")
    assert len(rings) == 7 and all(math.dist(ring, rings[0]) < 0.01 for ring in rings)


def test_large_print_is_kept_on_the_device(lesson, site: str) -> None:
    page = lesson()
    size = "parseFloat(getComputedStyle(document.querySelector('.lesson-sentence')).fontSize)"
    before = page.evaluate(size)
    do(page, "more")
    do(page, "large")
    assert page.evaluate(size) > 1.1 * before
    page.reload()
    until_at(page, 1)
    assert page.evaluate(size) > 1.1 * before
    do(page, "more")
    assert "true" == page.get_attribute('[data-lesson-do="large"]', "aria-pressed")
    do(page, "large")
    assert page.evaluate(size) == before
    assert page.evaluate("localStorage.getItem('phasor-folio-lesson')") is None


# Everyone.


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("screen", ["projector", "small phone"])
def test_no_rule_of_accessibility_is_broken(lesson, screen: str, scheme: str) -> None:
    """At several steps, with a notice, with the choices open, and with the large code."""
    page = lesson("&view=lesson&step=99", screen, color_scheme=scheme)
    assert [] == violations(page)
    for step in ("1", "5", "10", "13"):
        page.keyboard.type(step)
        page.keyboard.press("Enter")
        until_at(page, int(step))
        assert [] == violations(page)
    do(page, "more")
    assert [] == violations(page)
    do(page, "share")
    page.locator("[data-share-panel]").wait_for(state="visible")
    assert [] == violations(page)


def test_forced_colours_and_reduced_motion_leave_everything_in_view(lesson) -> None:
    page = lesson("&view=lesson&step=5", forced_colors="active", reduced_motion="reduce")
    check_step(Seen(page), 5)
    assert visible(page, ".lesson-reading") and visible(page, '[data-name="reading"]')
    moving = "document.getAnimations().length"
    page.keyboard.press("ArrowRight")
    until_at(page, 6)
    assert 0 == page.evaluate(moving)


def test_the_lesson_waits_for_python_and_says_so(open_page, site: str) -> None:
    """A link opens the view at once; the step comes when it can be worked out, and Escape works meanwhile."""
    page, held = open_page(viewport=SCREENS["projector"]), []
    page.route("**/*.wasm", lambda route, _request: held.append(route))
    page.goto(f"{site}{SLUG}/{PROBLEM}&view=lesson&step=3", wait_until="domcontentloaded")
    wait_until(page, "document.querySelector('[data-lesson]').open", 10.0)
    assert "Getting ready" in page.locator(".lesson-text").text_content()
    page.keyboard.press("ArrowRight")
    while not held:
        page.wait_for_timeout(20)
    held[0].continue_()
    wait_until(page, "document.querySelector('.lesson-step') !== null", 60.0)
    until_at(page, 3)


# The large code.


def test_the_back_row_opens_the_lesson_by_its_code(browser, dist: Path, tmp_path: Path) -> None:
    """Read by another library from a picture of the screen no larger than a phone at eight metres sees it."""
    base = "https://www.folio.example/term/neutral-current/"
    folder = tmp_path / "dist"
    shutil.copytree(dist, folder)
    index = folder / SLUG / "index.html"
    index.write_text(index.read_text("utf-8").replace("<html lang", f'<html data-base="{base}" lang', 1), "utf-8")
    with serving(folder) as address:
        context = browser.new_context(viewport=SCREENS["projector"], color_scheme="dark")
        page = context.new_page()
        page.goto(f"{address}{SLUG}/{PROBLEM}&view=lesson&step=4&ask=1")
        wait_until(page, "document.querySelector('.lesson-step') !== null", 60.0)
        do(page, "more")
        do(page, "share")
        page.locator("[data-share-panel] svg").wait_for(state="visible", timeout=20_000)
        link = page.input_value("#code-link")
        page.screenshot(path=tmp_path / "code.png")
        context.close()
    assert link.startswith(base) and link.endswith("&view=lesson&step=4&ask=1")
    picture = Image.open(tmp_path / "code.png").resize((835, 470), Image.Resampling.LANCZOS)
    found = zxingcpp.read_barcodes(picture, formats=zxingcpp.BarcodeFormat.QRCode, try_invert=False)
    assert [link] == [code.text for code in found]


def test_on_this_machines_own_address_there_is_no_code_and_it_is_said(lesson) -> None:
    page = lesson()
    page.keyboard.press("Escape")
    page.click("[data-action=code]")
    page.locator("[data-share-panel]").wait_for(state="visible")
    assert page.locator("[data-share-note]").is_visible()
    assert 0 == page.locator("[data-share-panel] svg").count()
    assert "view=" not in page.input_value("#code-link")
    page.click('[data-share-do="close"]')
    assert "code" == page.evaluate("document.activeElement.dataset.action")


def test_a_step_is_shown_at_once(lesson) -> None:
    """From the key to the picture in less than a quarter of a second, most of the time."""
    page = lesson("&view=lesson&step=1")
    waits = []
    for step in range(2, 12):
        start = time.monotonic()
        page.keyboard.press("ArrowRight")
        until_at(page, step)
        waits.append(time.monotonic() - start)
    assert sorted(waits)[len(waits) // 2] < 0.25, waits
