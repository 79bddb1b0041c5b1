"""Beside Check on a desk stands the problem's own sheet; what hiding the answer says; one way to draw on the screen."""

from collections.abc import Callable

import pytest
from browser.asking import PHONE, SLUG, show_beside, wait_until
from playwright.sync_api import Page, expect

from pycore.calculators.registry import CALCULATORS

CODE = "333-JDL-2GA"
BESIDE = "[data-region=problem-sheet]"
THERE = f"document.querySelector('{BESIDE} svg') !== null"


def open_at(page: Page, site: str, ready, answered, address: str = f"{SLUG}/") -> None:
    page.goto(f"{site}{address}")
    ready(page)
    answered(page)


def test_the_problems_sheet_stands_beside_check(opened: Page, answered) -> None:
    """There was nothing but a sentence. Nothing of the answer is on it, and a verdict stays while it comes and goes."""
    show_beside(opened, "check")
    wait_until(opened, THERE)
    sheet = opened.locator(f"{BESIDE} svg")
    expect(sheet).to_be_visible()
    expect(sheet).to_contain_text("18.4")
    expect(sheet.locator("[data-phasor]")).to_have_count(0)
    expect(opened.locator("svg[data-sheet] [data-phasor=sum]").first, "what is printed stays").to_be_hidden()
    opened.check("[name=answer-how][value=calculated]")
    opened.fill("[name=answer]", "12")
    opened.click("[data-action=check]")
    opened.locator("[data-region=marked] .marked").wait_for()
    show_beside(opened, "moves")
    expect(sheet).to_be_hidden()
    show_beside(opened, "check")
    expect(sheet).to_be_visible()
    expect(opened.locator("[data-region=marked] .marked")).to_be_visible()
    opened.fill("[name=i1]", "17.3")
    answered(opened)
    expect(sheet).to_contain_text("17.3")


def test_the_problems_sheet_is_marked_old_with_the_answer(opened: Page) -> None:
    """Values that cannot be used leave it, with the values that it is for."""
    show_beside(opened, "check")
    wait_until(opened, THERE)
    opened.fill("[name=i1]", "a lot")
    wait_until(opened, "document.documentElement.dataset.answer === 'old'")
    expect(opened.locator(f"{BESIDE} .old-label")).to_be_visible()
    expect(opened.locator(f"{BESIDE} .old-label")).to_contain_text("18.4")


def test_a_phone_is_not_asked_for_it(open_page: Callable[..., Page], site: str, ready, answered) -> None:
    """It has no room for a sheet beside the questions."""
    page = open_page(viewport=PHONE)
    open_at(page, site, ready, answered)
    show_beside(page, "check")
    answered(page)
    page.wait_for_timeout(600)
    assert not page.evaluate(THERE)


def test_it_is_not_printed(opened: Page) -> None:
    """The sheet that is printed is the one that was chosen."""
    show_beside(opened, "check")
    wait_until(opened, THERE)
    opened.emulate_media(media="print")
    expect(opened.locator(BESIDE)).to_be_hidden()
    expect(opened.locator("svg[data-sheet] [data-phasor=sum]").first).to_be_visible()


def test_hiding_the_answer_says_nothing_of_filled_in_values(page: Page, site: str, ready, answered) -> None:
    """It announced once more that the values of the problem are filled in."""
    open_at(page, site, ready, answered, f"{SLUG}/#v=1&code={CODE}")
    live = page.locator("[data-live]")
    expect(live).to_have_text("The values of the problem are filled in. The answer is hidden until you ask for it.")
    page.click("[data-action=unveil]")
    answered(page)
    show_beside(page, "check")
    page.click("[data-action=veil]")
    expect(live).to_have_text("The answer is hidden until you ask for it.")


def test_the_code_that_opened_the_page_stands_where_one_types_it(page: Page, site: str, ready, answered) -> None:
    """The field was empty. It goes with its problem, and another code that is being typed stays."""
    open_at(page, site, ready, answered, f"{SLUG}/#v=1&code={CODE}")
    field = page.locator("[name=typed-code]")
    expect(field).to_have_value(CODE)
    page.fill("[name=i1]", "1.5")
    answered(page)
    expect(field).to_have_value("")
    field.fill("333-J")
    page.goto(f"{site}{SLUG}/#v=1&code={CODE}&sheet=problem")
    wait_until(page, f"document.querySelector('.problem-code').textContent.includes('{CODE}')")
    expect(field).to_have_value("333-J")


def test_a_code_that_was_found_goes_with_its_problem(page: Page, site: str, ready, answered) -> None:
    """A code that was typed, here in place of a bad one, stayed for ever."""
    page.goto(f"{site}{SLUG}/#v=1&code=333-JDL-2GB")
    field = page.locator("[name=typed-code]")
    expect(field).to_have_value("333-JDL-2GB", timeout=20_000)
    field.fill(CODE.lower())
    page.click("[data-action=find-code]")
    expect(field).to_have_value(CODE)
    answered(page)
    page.fill("[name=i1]", "1.5")
    answered(page)
    expect(field).to_have_value("")


def test_a_code_that_was_refused_goes_with_another_link(page: Page, site: str, ready, answered) -> None:
    open_at(page, site, ready, answered)
    show_beside(page, "check")
    field = page.locator("[name=typed-code]")
    field.fill("333-JDL-2GB")
    page.click("[data-action=find-code]")
    expect(field).to_have_attribute("aria-invalid", "true")
    page.goto(f"{site}{SLUG}/#v=1&code={CODE}")
    expect(field).to_have_value(CODE)
    expect(field).not_to_have_attribute("aria-invalid", "true")


def test_the_problems_sheet_of_earlier_values_is_gone(opened: Page, answered) -> None:
    """Values changed while Check was away: its sheet showed those before until the new one was there."""
    show_beside(opened, "check")
    wait_until(opened, THERE)
    show_beside(opened, "moves")
    opened.fill("[name=i1]", "17.3")
    answered(opened)
    assert not opened.evaluate(THERE)
    show_beside(opened, "check")
    expect(opened.locator(f"{BESIDE} svg")).to_contain_text("17.3")


def test_the_problems_sheet_waits_until_nobody_types(opened: Page, answered) -> None:
    """It was asked for with every answer."""
    show_beside(opened, "check")
    wait_until(opened, THERE)
    opened.evaluate(f"""() => {{
      globalThis.sheets = [];
      new MutationObserver(() => {{
        const said = document.querySelector("{BESIDE}").textContent;
        globalThis.sheets.push(["17.1", "17.2", "17.3"].find((one) => said.includes(one)));
      }}).observe(document.querySelector("{BESIDE}"), {{ childList: true, subtree: true, characterData: true }});
    }}""")
    for value in ("17.1", "17.2", "17.3"):
        opened.fill("[name=i1]", value)
        answered(opened)
    expect(opened.locator(f"{BESIDE} svg")).to_contain_text("17.3")
    assert {"17.3"} == set(opened.evaluate("globalThis.sheets"))


def test_what_stands_beside_check_keeps_off_the_edge_of_a_phone(open_page: Callable[..., Page], site: str) -> None:
    page = open_page(viewport=PHONE)
    page.goto(f"{site}{SLUG}/")
    show_beside(page, "check")
    said, story = (page.locator(one).bounding_box() for one in (".out-of-view > p", ".titled > .story"))
    assert said["x"] >= 16
    assert said["y"] + said["height"] <= story["y"], "nothing lies on it"


def test_true_size_is_out_of_view_beside_check(opened: Page) -> None:
    """Its bar stayed without its sheet, and the problem's sheet had no size."""
    show_beside(opened, "check")
    wait_until(opened, THERE)
    wide = opened.locator(f"{BESIDE} svg").bounding_box()["width"]
    show_beside(opened, "moves")
    opened.evaluate("""() => {
      const figure = document.querySelector(".figure");
      figure.toggleAttribute("data-true-size", true);
      figure.style.setProperty("--px-per-mm", "4");
      document.querySelector("[data-true-size-bar]").hidden = false;
    }""")
    expect(opened.locator("[data-true-size-bar]")).to_be_visible()
    show_beside(opened, "check")
    expect(opened.locator("[data-true-size-bar]")).to_be_hidden()
    assert opened.locator(f"{BESIDE} svg").bounding_box()["width"] == pytest.approx(wide, abs=1)


SCREENS = [(390, 844), (800, 1100), (1100, 800), (1250, 900), (1340, 900), (1366, 768), (1440, 900), (1920, 1080)]


@pytest.mark.parametrize("screen", SCREENS, ids=str)
def test_one_way_to_draw_on_the_screen_is_in_view(open_page: Callable[..., Page], site: str, screen) -> None:
    """On a wide desk it stood beside the scale and beside the sheet; elsewhere two scales left no room for any."""
    page = open_page(viewport={"width": screen[0], "height": screen[1]})
    for slug in CALCULATORS:
        page.goto(f"{site}{slug}/")
        expect(page.locator("[data-action=draw]").filter(visible=True), slug).to_have_count(1)
