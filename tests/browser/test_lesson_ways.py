"""The ways into the lesson view and out of it, its other views, everyone's access, and the large code."""

import math
import shutil
import time
from pathlib import Path

import pytest
import zxingcpp
from browser.asking import SLUG, show_more, wait_until
from browser.classroom import FINISHED, PROBLEM, SCREENS, check_step, do, is_open, until_address, until_at, visible
from browser.instruments import Seen, apart, way
from browser.test_page_access import violations
from making.serve import serving
from PIL import Image
from playwright.sync_api import Page

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
    until_at(page, FINISHED)
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
    ("&view=lesson&step=99", FINISHED, "99"), ("&method=tip-to-tail&view=lesson&step=20", 10, "20"),
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
    page.click('[data-lesson-method="tip-to-tail"]')
    wait_until(page, "document.querySelector('.lesson-step')?.textContent === 'Step 1 of 6'")
    until_address(page, "method=tip-to-tail")
    assert page.locator("[name=method][value=tip-to-tail]").is_checked()
    do(page, "more")
    assert page.locator("[data-lesson-choice=parallels]").is_hidden()
    page.select_option("[data-lesson-set=order]", "23")
    until_address(page, "order=23")
    page.click('[data-lesson-view="pull"]')
    wait_until(page, "document.querySelector('.lesson-step')?.textContent === 'Step 1 of 4'")
    do(page, "more")
    page.keyboard.press("Escape")
    assert is_open(page) and page.locator("[data-lesson-panel]").is_hidden()


def test_the_waves_turn_by_ten_degrees_at_an_arrow_key(lesson) -> None:
    """The slider's keys are the view's; the phasor of L1 stands where it was turned to."""
    page = lesson("&view=waves&step=1")
    page.focus("[data-lesson-slider]")
    assert page.locator('[data-name="cursor"]').is_visible()
    for step in (2, 3):
        page.keyboard.press("ArrowRight")
        until_at(page, step)
        tail, tip = Seen(page).phasor("i1")
        assert apart(way(tail, tip), 10.0 * (step - 1)) < 0.05
        assert f"{10 * (step - 1)}°" in page.locator(".lesson-sentence").text_content()


def test_a_view_that_a_problem_does_not_offer_is_no_choice_and_opens_the_lesson(open_page, site: str) -> None:
    """Powers are no sine waves."""
    page = open_page(viewport=SCREENS["projector"])
    page.goto(f"{site}power-triangle/#v=1&view=waves&step=10")
    until_at(page, 1)
    assert "Waves" in page.locator("[data-lesson-notice]").text_content()
    until_address(page, "view=lesson&step=1")
    offered = "[data-lesson-view]:not([hidden])"
    views = page.locator(offered).evaluate_all("all => all.map(one => one.dataset.lessonView)")
    assert ["lesson", "numbers", "together", "pull"] == views


def test_all_methods_end_on_one_point(lesson) -> None:
    page = lesson("&view=together&step=1")
    rings = []
    for step in range(1, 8):
        until_at(page, step)
        rings.append(page.evaluate("""() => {
            const ring = [...document.querySelectorAll('.lesson-figure [data-name="answer"] circle')].at(-1);
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
    for step, frame in ((1, 1), (4, 5), (6, 9), (8, 13)):
        page.keyboard.type(str(step))
        page.keyboard.press("Enter")
        until_at(page, frame)
        assert [] == violations(page)
    page.keyboard.type("4")
    page.keyboard.press("Enter")
    until_at(page, 5)
    page.keyboard.press("w")
    assert [] == violations(page)
    page.keyboard.press("w")
    page.keyboard.press("v")
    until_address(page, "view=waves")
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
    # "appear" is a wait, not a movement: the mark of old text holds back for a moment, then stands.
    moving = "document.getAnimations().filter(({ animationName }) => animationName !== 'appear').length"
    page.keyboard.press("ArrowRight")
    until_at(page, 6)
    assert 0 == page.evaluate(moving)


def test_the_lesson_waits_for_python_and_says_so(open_page, site: str) -> None:
    """A link opens the view at once; the step comes when it can be worked out, and Escape works meanwhile."""
    page, held, free = open_page(fresh=True, viewport=SCREENS["projector"]), [], []
    page.route("**/*.wasm", lambda route, _request: route.continue_() if free else held.append(route))
    page.goto(f"{site}{SLUG}/{PROBLEM}&view=lesson&step=3", wait_until="domcontentloaded")
    wait_until(page, "document.querySelector('[data-lesson]').open", 10.0)
    assert "Loading" in page.locator(".lesson-text").text_content()
    page.keyboard.press("ArrowRight")
    while not held:
        page.wait_for_timeout(20)
    free.append(True)
    for route in held:
        route.continue_()
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
    show_more(page)
    page.click("[data-action=code]")
    page.locator("[data-share-panel]").wait_for(state="visible")
    assert page.locator("[data-share-note]").is_visible()
    assert 0 == page.locator("[data-share-panel] svg").count()
    assert "view=" not in page.input_value("#code-link")
    page.click('[data-share-do="close"]')
    # The button's panel has closed: its own button has the focus.
    assert page.evaluate("document.activeElement.matches('[data-more] > summary')")


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
