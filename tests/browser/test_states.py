"""What the page says of itself while it cannot answer: old answers, failed starts, faults and their ways out."""

import json
import math
from collections.abc import Callable, Iterator

import pytest
from browser.asking import (
    DESK,
    PHONE,
    SLUG,
    neutral,
    result,
    show_beside,
    show_settings,
    state,
    wait_old,
    wait_until,
    waiting_actions,
)
from playwright.sync_api import Browser, Page, expect


@pytest.fixture
def stopped(browser: Browser, site: str) -> Iterator[Page]:
    """The page after a start that failed: its library cannot be had."""
    context = browser.new_context(viewport=DESK)
    page = context.new_page()
    page.route("**/library.zip", lambda route: route.abort())
    page.goto(f"{site}{SLUG}/")
    wait_until(page, "document.documentElement.dataset.python === 'failed'", 30)
    yield page
    context.close()


NEED_PYTHON = {"pdf", "pdf-all", "share", "lesson", "code", "handout", "photo", "check", "draw", "find-code", "unveil",
               "veil", "easy", "give"}
"""What cannot be done with an answer that merely stands."""


HATCHED = """() => {
  const paper = getComputedStyle(document.querySelector(".paper"));
  return paper.backgroundImage === "none" ? "clean" : "hatched";
}"""
"""Whether the sheet is hatched as one whose values cannot be used."""


def moves(page: Page) -> str:
    """The text of the drawing's moves."""
    return page.locator("section.working").inner_text()


def test_without_python_the_example_stands_and_can_be_printed(stopped: Page) -> None:
    """It is the answer to the form as it stands; only what needs Python waits."""
    assert "fresh" == state(stopped)
    assert NEED_PYTHON == waiting_actions(stopped)
    expect(stopped.locator(".answer .when-old").first).to_be_hidden()


def test_without_python_what_is_typed_makes_the_example_old(stopped: Page) -> None:
    stopped.fill("[name=i1]", "40")
    wait_old(stopped)
    assert NEED_PYTHON | {"print", "true-size"} >= waiting_actions(stopped) >= {"print", "pdf", "share", "lesson"}
    for place in (".answer", ".paper-scroll", ".workings"):
        expect(stopped.locator(f"{place} .when-old").last).to_be_visible()
    assert stopped.inner_text("[data-waiting]")
    stopped.fill("[name=i1]", "18.4")
    wait_until(stopped, "document.documentElement.dataset.answer === 'fresh'")
    assert "print" not in waiting_actions(stopped)


def test_without_python_a_link_makes_the_example_old(stopped: Page) -> None:
    stopped.evaluate("location.hash = '#v=1&i1=1&i2=2&i3=3'")
    wait_old(stopped)
    assert "print" in waiting_actions(stopped)


def test_another_try_answers_what_was_typed_meanwhile(stopped: Page, ready, answered) -> None:
    stopped.fill("[name=i1]", "40")
    wait_old(stopped)
    stopped.unroute("**/library.zip")
    stopped.click("[data-retry]")
    ready(stopped)
    answered(stopped)
    assert math.isclose(neutral(40, 11.2, 24.6), result(stopped), rel_tol=1e-11)
    assert set() == waiting_actions(stopped)


def test_while_python_is_slow_to_start_what_was_typed_has_no_answer_yet(fresh_page: Page, site: str, answered) -> None:
    """The example beside other values is named as such as soon as somebody could read it; nothing is hatched."""
    held = []
    fresh_page.route("**/library.zip", lambda route, _request: held.append(route))
    fresh_page.goto(f"{site}{SLUG}/")
    fresh_page.fill("[name=i1]", "40")
    wait_until(fresh_page, "'late' in document.documentElement.dataset")
    expect(fresh_page.locator(".answer .when-late")).to_be_visible()
    assert "hatched" not in fresh_page.evaluate(HATCHED)
    assert "print" in waiting_actions(fresh_page)
    while not held:
        fresh_page.wait_for_timeout(20)
    held[0].continue_()
    answered(fresh_page, 60.0)
    expect(fresh_page.locator(".answer .when-late")).to_be_hidden()
    assert set() == waiting_actions(fresh_page)


def test_a_problem_whose_sheet_has_not_come_yet_shows_no_solved_sheet(fresh_page: Page, site: str, answered) -> None:
    """While Python starts the page still has the example's drawing: beside "The answer is hidden" stood an answer."""
    held = []
    fresh_page.route("**/library.zip", lambda route, _request: held.append(route))
    fresh_page.goto(f"{site}{SLUG}/#v=2&i1=20&i2=10&i3=15&sheet=problem")
    wait_until(fresh_page, "'veiled' in document.documentElement.dataset")
    sheet = fresh_page.locator("svg[data-sheet]")
    expect(sheet).to_be_hidden()
    while not held:
        fresh_page.wait_for_timeout(20)
    held[0].continue_()
    answered(fresh_page, 60.0)
    expect(sheet).to_be_visible()
    assert 0 == fresh_page.locator('svg[data-sheet] g[data-phasor="sum"]').count()


def test_moves_for_older_values_are_never_unmarked(opened: Page, answered) -> None:
    """At every moment after an edit they are the new moves, or marked as the old ones."""
    before = moves(opened)
    opened.evaluate("""() => {
      window.unmarked = [];
      const old = document.querySelector("section.working").innerText;
      const look = () => {
        const fresh = document.documentElement.dataset.answer === "fresh";
        const marked = document.querySelector(".workings").getAttribute("aria-busy") === "true";
        const same = document.querySelector("section.working").innerText === old;
        if (fresh && same && !marked) window.unmarked.push(performance.now());
      };
      document.querySelector("[name=i1]").addEventListener("input", () => new MutationObserver(look).observe(
        document.documentElement, { attributes: true, childList: true, subtree: true }));
    }""")
    opened.fill("[name=i1]", "31.5")
    answered(opened)
    wait_until(opened, "!document.querySelector('.workings').hasAttribute('aria-busy')")
    assert before != moves(opened)
    assert "31.5" in moves(opened)
    assert [] == opened.evaluate("window.unmarked")


def test_moves_follow_off_screen_too(open_page: Callable[..., Page], site: str, ready, answered) -> None:
    """They can be found, copied and read aloud there."""
    page = open_page(viewport=PHONE)
    page.goto(f"{site}{SLUG}/")
    ready(page)
    answered(page)
    page.fill("[name=i1]", "31.5")
    answered(page)
    wait_until(page, "document.querySelector('section.working').textContent.includes('31.5')")
    assert 0 == page.evaluate("scrollY")


def test_moves_behind_an_unusable_input_are_marked_old(opened: Page) -> None:
    opened.fill("[name=i2]", "11.2 V")
    wait_old(opened)
    assert "hatched" == opened.evaluate(HATCHED)
    label = opened.locator(".workings > .old-label")
    expect(label).to_be_visible()
    assert "18.4" in label.inner_text()


def test_half_typed_numbers_never_become_the_old_answer(opened: Page, answered) -> None:
    """Typing 40 gives an answer for 4 on the way; if it ends as 40 V, what stood before is the old answer."""
    before = result(opened)
    opened.evaluate("window.drawn = document.querySelector('svg[data-sheet]').cloneNode(true)")
    opened.focus("[name=i1]")
    opened.fill("[name=i1]", "4")
    answered(opened)
    assert before != result(opened)
    opened.fill("[name=i1]", "40")
    answered(opened)
    opened.fill("[name=i1]", "40 V")
    wait_old(opened)
    assert before == result(opened)
    assert opened.evaluate("window.drawn.isEqualNode(document.querySelector('svg[data-sheet]'))")
    assert "18.4" in opened.locator(".old-values").inner_text()
    opened.fill("[name=i1]", "40")
    answered(opened)
    assert math.isclose(neutral(40, 11.2, 24.6), result(opened), rel_tol=1e-11)


def test_an_answer_between_two_fields_is_what_becomes_old(opened: Page, answered) -> None:
    opened.fill("[name=i1]", "40")
    answered(opened)
    opened.fill("[name=i2]", "x")
    wait_old(opened)
    assert math.isclose(neutral(40, 11.2, 24.6), result(opened), rel_tol=1e-11)
    assert "40" in opened.locator(".old-values").inner_text()


def test_a_fault_offers_its_ways_out_by_keyboard(opened: Page, answered) -> None:
    """Each is a button as high as a finger; taking one brings its values, and the focus back to the field."""
    opened.fill("#f-scale", "0.5")
    ways = opened.locator("[data-message-for=scale] [data-set]")
    ways.first.wait_for()
    offered = [json.loads(way.get_attribute("data-set") or "") for way in ways.all()]
    assert any("scale" in values for values in offered)
    assert all((way.bounding_box() or {"height": 0})["height"] >= 48 for way in ways.all())
    opened.keyboard.press("Tab")
    assert offered[0] == json.loads(opened.evaluate("document.activeElement.dataset.set"))
    opened.keyboard.press("Enter")
    wait_until(opened, "document.querySelector('[data-message-for=scale]').hidden")
    answered(opened)
    assert offered[0]["scale"] == opened.input_value("#f-scale")
    assert "f-scale" == opened.evaluate("document.activeElement.id")
    assert float(offered[0]["scale"]) == result(opened, "scale")


def test_a_fault_out_of_sight_is_said_beside_the_answer_with_the_way_to_its_field(opened: Page) -> None:
    show_settings(opened)
    opened.fill("[name=place]", "Theatre \N{SNOWMAN}")
    opened.locator("[data-message-for=place]").wait_for()
    expect(opened.locator("[data-elsewhere]")).to_be_hidden()
    said = opened.inner_text("[data-message-for=place]")
    opened.click("[data-settings-switch]:visible")
    expect(opened.locator("[name=place]")).to_be_hidden()
    place = opened.locator("[data-elsewhere]")
    place.wait_for()
    assert said in place.inner_text()
    place.locator("[data-go]").click()
    assert "place" == opened.evaluate("document.activeElement.name")
    expect(opened.locator("[name=place]")).to_be_in_viewport()


def test_the_side_of_a_power_factor_is_written_by_pycore(opened: Page, answered) -> None:
    """Degrees turn to degrees of the other sign, a power factor to the other word; an angle past 90° has none."""
    show_settings(opened)
    opened.fill("[name=a1]", "30")
    answered(opened)
    assert "0.866" == opened.input_value("#pf-a1")
    opened.select_option("[data-sense-of=a1]", "lead")
    assert "−30" == opened.input_value("[name=a1]")
    answered(opened)
    opened.fill("#pf-a1", "0.5")
    assert "0.5 lead" == opened.input_value("[name=a1]")
    answered(opened)
    opened.fill("#pf-a1", "")
    assert "" == opened.input_value("[name=a1]")
    opened.fill("[name=a1]", "120")
    answered(opened)
    assert "" == opened.input_value("#pf-a1")


def test_a_unit_gives_way_to_letters(opened: Page) -> None:
    show_settings(opened)
    unit = opened.locator("#u-a1")
    expect(unit).to_be_visible()
    opened.fill("[name=a1]", "0.8 lag")
    expect(unit).to_be_hidden()
    opened.fill("[name=a1]", "25")
    expect(unit).to_be_visible()


def test_labels_and_options_follow_the_names_of_the_lines(opened: Page, answered) -> None:
    show_settings(opened)
    opened.select_option("[name=names]", "ABC")
    answered(opened)
    labels = {name: opened.inner_text(f"[data-label-for={name}]") for name in ("i1", "i2", "i3", "a2")}
    assert {"i1": "A", "i2": "B", "i3": "C", "a2": "Lag of B"} == labels
    assert "A and C" == opened.inner_text("select[name=order] option[value='13']")
    assert "A, C, B" == opened.inner_text("select[name=sequence] option[value='132']")
    assert 1 == opened.locator("label[for=f-i1] svg").count()


def test_a_tapped_field_is_replaced_by_what_is_typed(opened: Page, answered) -> None:
    opened.click("[name=i1]")
    opened.keyboard.type("40")
    assert "40" == opened.input_value("[name=i1]")
    opened.click("[name=i1]")
    opened.keyboard.press("End")
    opened.keyboard.type(".5")
    assert "40.5" == opened.input_value("[name=i1]")


def test_what_is_private_enters_no_link(opened: Page, answered) -> None:
    show_settings(opened)
    for name in ("who", "group", "date"):
        opened.fill(f"[name={name}]", f"secret {name}")
    opened.fill("[name=i1]", "19")
    answered(opened)
    wait_until(opened, "location.hash.includes('i1=19')")
    printed = opened.locator("svg[data-sheet]").text_content() or ""
    assert all(f"secret {name}" in printed for name in ("who", "group", "date"))
    opened.evaluate("() => { navigator.clipboard.writeText = () => Promise.reject(new Error('refused')); }")
    opened.click("[data-action=share]")
    expect(opened.locator("#link")).to_be_visible()
    assert "i1=19" in opened.input_value("#link")
    assert "secret" not in opened.input_value("#link") + opened.evaluate("location.href")


def test_a_link_leaves_what_is_private_as_it_stands(opened: Page, answered) -> None:
    show_settings(opened)
    opened.fill("[name=who]", "Class 2")
    answered(opened)
    opened.evaluate("location.hash = '#v=1&i1=1&i2=2&i3=3&who=Somebody'")
    wait_until(opened, "document.querySelector('[name=i1]').value === '1'")
    answered(opened)
    assert "Class 2" == opened.input_value("[name=who]")


def test_a_fault_that_leaves_the_answer_standing_is_shown_all_the_same(opened: Page, answered) -> None:
    """A slip in the optional reading is named at its field; the answer stays fresh and can be printed."""
    show_beside(opened, "compare")
    opened.fill("[name=measured]", "11 V")
    opened.locator("[data-message-for=measured]").wait_for()
    answered(opened)
    assert "true" == opened.get_attribute("[name=measured]", "aria-invalid")
    assert set() == waiting_actions(opened)
    expect(opened.locator(".answer .when-old").first).to_be_hidden()


def test_a_field_without_a_meaning_is_not_shown(opened: Page, answered) -> None:
    show_settings(opened)
    for kind, shown in (("construction", set()), ("problem", {"start", "further"}), ("overlay", {"mirror"})):
        opened.click(f"""[data-set='{{"sheet":"{kind}"}}']""")
        answered(opened)
        fields = ("start", "further", "mirror")
        assert shown == {name for name in fields if opened.locator(f"[name={name}]").is_visible()}


def test_the_examples_story_goes_with_its_values(opened: Page, answered) -> None:
    expect(opened.locator("[data-scenario]")).to_be_visible()
    opened.fill("[name=i1]", "19")
    answered(opened)
    expect(opened.locator("[data-scenario]")).to_be_hidden()
    opened.fill("[name=i1]", "18.4")
    answered(opened)
    assert opened.inner_text("[data-scenario]")


def test_on_a_phone_the_whole_sheet_is_seen_at_once(open_page: Callable[..., Page], site: str) -> None:
    page = open_page(viewport=PHONE)
    page.goto(f"{site}{SLUG}/")
    page.click("details.request > summary")
    box = page.locator("svg[data-sheet]").bounding_box()
    assert box is not None
    assert 0 <= box["x"] and box["x"] + box["width"] <= PHONE["width"]


def test_the_keyboard_goes_from_the_values_to_what_can_be_done(opened: Page, answered) -> None:
    """Values, what stands beside the sheet, method, the list, the kinds of sheet, the buttons at the foot."""
    order = opened.evaluate("""() => {
      const marks = [".values input", "[data-tab]", ".method input", ".moves li[tabindex='0']", ".kinds button",
        "[data-action=lesson]", "[data-more] > summary"];
      const all = [...document.querySelectorAll("main *")];
      return marks.map((mark) => all.indexOf(document.querySelector(mark)));
    }""")
    assert sorted(order) == order and -1 not in order
