"""Free practice on a phone: problems one after another; its record kept, erased, saved to a file and taken from one."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from browser.asking import DESK, PHONE, wait_until
from browser.test_page_access import violations
from playwright.sync_api import Page, expect

from pycore.geometry import Point
from pycore.pages.practice import problem_of
from pycore.practice import ladder
from pycore.practice.task import Task
from pycore.render.guess import sentence_of

TOUCH = {"viewport": PHONE, "has_touch": True, "is_mobile": True}
KEY = "phasor-folio-practice"
SOLUTION = ".practice-sheet .board:visible [data-phasor=sum]"


def record(page: Page) -> dict:
    return json.loads(page.evaluate(f"localStorage.getItem('{KEY}')"))


def task(page: Page) -> Task:
    """The problem in view, as the core knows it."""
    found = problem_of(ladder.read(record(page)))
    expect(page.locator("[data-region=problem]")).to_contain_text(str(found.code))
    return found.page.task(found.form)


def settle(page: Page) -> None:
    wait_until(page, "document.documentElement.dataset.answer === 'fresh'")


@pytest.fixture
def start(open_page: Callable[..., Page], site: str, ready) -> Callable[..., Page]:
    def begin(**options: object) -> Page:
        page = open_page(**{**TOUCH, **options})
        page.goto(f"{site}practice/")
        ready(page)
        settle(page)
        return page

    return begin


def give(page: Page, size: float, angle: float | None = None) -> None:
    """Check a calculated answer in amperes; an angle is positive anticlockwise, None leaves its field empty."""
    page.check("[name=answer-how][value=calculated]")
    page.fill("[name=answer]", f"{size:.6g} A")
    if angle is not None:
        page.fill("[name=answer-angle]", f"{abs(angle):.1f}")
        page.select_option("[name=answer-side]", "anticlockwise" if angle > 0 else "clockwise")
    page.click("[data-action=check]")
    page.locator("[data-region=marked] .marked").wait_for()
    settle(page)


def test_three_problems_with_a_reload_between(start, ready):
    page = start()
    asked = task(page)
    expect(page.locator(".given dt .sample")).to_have_count(3)
    expect(page.locator(SOLUTION)).to_have_count(0)
    give(page, asked.size, asked.angle)
    expect(page.locator(SOLUTION).first).to_be_visible()
    expect(page.locator("[data-region=standing]")).to_contain_text("for level 2: one more right first time")
    expect(page.locator(".level-scale .done")).to_have_count(2)
    assert "next" == page.evaluate("document.activeElement.dataset.do")
    page.tap("[data-do=next]")
    settle(page)

    page.reload()
    ready(page)
    settle(page)
    assert 2 == record(page)["ways"]["0.parallelogram"]["had"]
    asked = task(page)
    give(page, 5.77 * asked.size)
    assert "wrong" == page.get_attribute(".marked", "data-band")
    give(page, asked.size, asked.angle)
    wait_until(page, "document.querySelector('.marked').dataset.band === 'accept'")
    expect(page.locator("[data-region=standing]")).to_contain_text("for level 2: two right first time")
    page.reload()
    ready(page)
    settle(page)
    expect(page.locator(SOLUTION).first).to_be_visible()
    page.tap("[data-do=next]")
    settle(page)

    page.tap("[data-do=show]")
    expect(page.locator("[data-region=drawn]")).to_contain_text("does not count as solved")
    expect(page.locator(SOLUTION).first).to_be_visible()
    assert "in a row" not in page.locator("main").inner_text()
    way = record(page)["ways"]["0.parallelogram"]
    assert (3, 2, "shown") == (way["had"], way["solved"], way["done"])


def test_another_way_and_back_leaves_the_problem_as_it_was(start):
    page = start()
    first = record(page)["ways"]["0.parallelogram"]["code"]
    page.select_option("[name=way]", "0.components")
    wait_until(page, f"JSON.parse(localStorage['{KEY}']).way === '0.components'")
    settle(page)
    page.check("[value=calculated]")
    page.evaluate("document.querySelector('[data-on-the-way]').open = true")
    expect(page.locator("[name=answer-across]")).to_be_visible()
    page.select_option("[name=way]", "0.parallelogram")
    wait_until(page, f"JSON.parse(localStorage['{KEY}']).way === '0.parallelogram'")
    settle(page)
    expect(page.locator("[data-region=problem]")).to_contain_text(first)


def test_a_bad_answer_is_refused_at_its_field(start):
    page = start()
    page.check("[value=drawn]")
    page.fill("[name=answer]", "ten")
    page.click("[data-action=check]")
    expect(page.locator('[data-message-for="answer"]')).to_contain_text("“ten” cannot be read")
    assert 0 == record(page)["ways"]["0.parallelogram"]["tries"]


def test_what_another_page_keeps_does_not_drop_a_marking(start):
    """Each letter of a class list typed in another window is told to this one too."""
    page = start()
    page.check("[value=drawn]")
    page.fill("[name=answer]", "1")
    page.evaluate("""() => {
      document.querySelector("[data-action=check]").click();
      dispatchEvent(new StorageEvent("storage", { key: "phasor-folio-class" }));
    }""")
    wait_until(page, f"JSON.parse(localStorage['{KEY}']).ways['0.parallelogram'].tries === 1")


def unfold(page: Page) -> None:
    page.locator(".keeping summary").click()


def test_the_record_is_saved_erased_undone_and_taken_again(start, tmp_path: Path):
    page = start()
    give(page, 5.77 * task(page).size)
    kept = record(page)
    unfold(page)
    with page.expect_download() as download:
        page.click("[data-do=export]")
    file = tmp_path / "record.json"
    download.value.save_as(file)
    assert kept == json.loads(file.read_text("utf-8"))
    assert "phasor-folio-practice.json" == download.value.suggested_filename

    page.click("[data-do=erase]")
    expect(page.locator("[data-said]")).to_contain_text("Erased")
    settle(page)
    assert 0 == record(page)["ways"]["0.parallelogram"]["tries"]
    page.click("[data-do=undo]")
    wait_until(page, f"JSON.parse(localStorage['{KEY}']).ways['0.parallelogram'].tries === 1")
    settle(page)
    assert kept == record(page)

    page.set_input_files("[data-file]", file)
    page.locator("[data-do=merge]").wait_for()
    assert kept == record(page)
    page.click("[data-do=replace]")
    expect(page.locator("[data-said]")).to_contain_text("Loaded from the file")
    assert kept == record(page)


@pytest.mark.parametrize(("name", "text", "said"), [
    ("deep", "[" * 60_000, "too many nested levels"),
    ("large", " " * 10_000_000, "too large for a practice record"),
    ("proto", '{"__proto__": {"polluted": true}}', "not a practice record"),
    ("html", "<script>alert(1)</script>", "not JSON"),
    ("binary", "\ufffd\x00\x01", "not JSON"),
])  # fmt: skip
def test_hostile_files_are_refused_and_the_record_stays(start, tmp_path: Path, name: str, text: str, said: str):
    page = start()
    before = record(page)
    unfold(page)
    file = tmp_path / f"{name}.json"
    file.write_text(text, "utf-8")
    page.set_input_files("[data-file]", file)
    expect(page.locator("[data-said]")).to_contain_text(said)
    assert before == record(page)
    assert page.evaluate("({}).polluted") is None


@pytest.mark.parametrize("text", ["{", "[]", '{"kind": "other"}', "null", '{"__proto__": {}}'])
def test_a_damaged_record_begins_anew_and_says_so(start, ready, text: str):
    page = start()
    page.evaluate(f"text => localStorage.setItem('{KEY}', text)", text)
    page.reload()
    ready(page)
    settle(page)
    assert "phasor-folio-practice" == record(page)["kind"]
    if text != "null":
        expect(page.locator("[data-said]")).to_have_text(
            "Your stored record could not be read, so a new record has started.")  # fmt: skip


def test_by_keyboard_alone(start):
    page = start(has_touch=False, is_mobile=False)
    asked = task(page)
    page.focus("[name=way]")
    for _ in range(6):
        page.keyboard.press("Tab")
        if "answer-how" == page.evaluate("document.activeElement.name"):
            break
    page.keyboard.press("Space")
    page.keyboard.press("Tab")
    page.keyboard.type(f"{asked.size:.6g} A at {abs(asked.angle):.1f}° {'anti' if asked.angle > 0 else ''}clockwise")
    page.keyboard.press("Enter")
    wait_until(page, "document.activeElement.dataset.do === 'next'")
    before = record(page)["ways"]["0.parallelogram"]["code"]
    page.keyboard.press("Enter")
    wait_until(page, f"JSON.parse(localStorage['{KEY}']).ways['0.parallelogram'].code !== '{before}'")


GUESSED = "[data-region=guess]"


def end_of_guess(page: Page) -> tuple[float, float]:
    """How far the arrow reaches from the starting point on the board in view: mm to the right and up."""
    x1, y1, x2, y2 = page.locator(".board:visible .guess line").evaluate(
        "(line) => ['x1', 'y1', 'x2', 'y2'].map((name) => Number(line.getAttribute(name)))"
    )
    return x2 - x1, y1 - y2


@pytest.mark.parametrize("screen", [PHONE, DESK], ids=["phone", "desk"])
def test_a_guess_is_dragged_said_in_words_and_never_counted(start, screen: dict[str, int]):
    page = start(viewport=screen, has_touch=False, is_mobile=False)
    before = record(page)
    board = page.locator(".board:visible")
    board.scroll_into_view_if_needed()
    page.locator(".board:visible .guess-end").hover()
    page.mouse.down()
    box = board.bounding_box()
    x, y = (float(board.locator(".guess").get_attribute(f"data-{name}")) for name in "xy")
    scale = box["width"] / board.locator(".guess").evaluate("(one) => one.viewBox.baseVal.width")
    page.mouse.move(box["x"] + (x - 20) * scale, box["y"] + (y - 20) * scale, steps=4)
    page.mouse.up()
    assert end_of_guess(page) == pytest.approx((-20, 20), abs=1.0)
    found = problem_of(ladder.read(before))
    placed = found.page.placed(found.form)
    expect(page.locator(GUESSED)).to_contain_text("up to the left")
    expect(page.locator(GUESSED)).to_have_text(sentence_of(placed, Point(-20.0, 20.0)))
    assert before == record(page)
    page.click("[data-do=show]")
    page.locator(SOLUTION).first.wait_for()
    expect(page.locator(GUESSED)).to_contain_text("up to the left")
    expect(page.locator(".guess-end").first).to_be_hidden()
    if screen is DESK:
        assert end_of_guess(page) == pytest.approx((-20, 20), abs=1.0)
        expect(page.locator(".board:visible .guess")).to_be_visible()
    page.click("[data-do=next]")
    wait_until(page, "document.querySelector('main').dataset.state === 'asking'")
    expect(page.locator(GUESSED)).to_have_text("")


def test_a_guess_is_moved_by_keys(start):
    page = start(viewport=DESK, has_touch=False, is_mobile=False)
    x, y = end_of_guess(page)
    page.focus(".board:visible .guess-end")
    page.keyboard.press("ArrowLeft")
    page.keyboard.press("Shift+ArrowDown")
    assert end_of_guess(page) == pytest.approx((x - 5, y - 1), abs=0.05)
    expect(page.locator(GUESSED)).to_contain_text("Your guess: about")


def test_without_a_guess_none_is_shown_beside_the_solution(start):
    page = start(viewport=DESK, has_touch=False, is_mobile=False)
    page.click("[data-do=show]")
    expect(page.locator(".drawn .big")).to_be_visible()
    expect(page.locator(".drawn .when-late")).to_be_hidden()  # nothing is being worked on
    expect(page.locator(".drawn .when-old").first).to_be_hidden()
    page.locator(SOLUTION).first.wait_for()
    expect(page.locator(".guess").first).to_be_hidden()


def test_the_sheet_of_a_problem_holds_nothing_of_its_answer(start):
    """What is not in the page cannot be found there."""
    page = start(viewport=DESK, has_touch=False, is_mobile=False)
    asked = task(page)
    sheet = page.locator(".practice-sheet")
    assert 'data-phasor="sum"' not in sheet.inner_html()
    assert f"{asked.size:.1f}" not in sheet.inner_text()


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("screen", [PHONE, DESK], ids=["phone", "desk"])
def test_no_rule_of_access_is_broken(start, scheme: str, screen: dict[str, int]):
    page = start(viewport=screen, color_scheme=scheme, reduced_motion="reduce")
    give(page, 5.77 * task(page).size)
    for part in page.locator("details").all():
        part.evaluate("(part) => { part.open = true; }")
    assert [] == violations(page)
    page.click("[data-do=show]")
    page.locator(SOLUTION).first.wait_for()
    assert [] == violations(page)


def test_a_code_typed_on_the_front_page_opens_its_problem(page: Page, site: str, ready, answered):
    page.goto(site)
    page.fill("[name=typed-code]", "333-jdl-2ga")
    page.press("[name=typed-code]", "Enter")
    page.wait_for_url("**/neutral-current/**")
    ready(page)
    answered(page)
    expect(page.locator(".problem-code")).to_have_text("Problem 333-JDL-2GA")
    expect(page.locator('output[name="neutral-current"]').first).to_be_hidden()


def test_another_pages_code_is_taken_there(page: Page, site: str, ready, answered):
    page.goto(f"{site}neutral-current/#v=1&code=3Q2-227-28W")
    page.wait_for_url("**/open-neutral/**")
    ready(page)
    answered(page)
    expect(page.locator(".problem-code")).to_have_text("Problem 3Q2-227-28W")


def test_no_other_problem_stands_there_while_ones_own_is_loaded(open_page, site: str, ready):
    """On a slow network one could read, draw and answer the built problem for minutes; then it was another's."""
    page = open_page(fresh=True, viewport=PHONE)
    held = []
    page.route("**/library.zip", lambda route, _request: held.append(route))
    page.goto(f"{site}practice/")
    expect(page.locator("[data-progress-text]")).to_contain_text("Loading your problem.")
    assert "You can type already" not in page.inner_text("[data-progress]")
    for place in ("[data-region=problem]", "[data-region=sheet]", "[name=answer]"):
        assert not page.is_visible(place), place
    while not held:
        page.wait_for_timeout(20)
    for route in held:
        route.continue_()
    ready(page)
    settle(page)
    expect(page.locator("[data-region=problem]")).to_be_visible()
    expect(page.locator("[data-region=sheet]")).to_be_visible()
    assert "opening" not in page.evaluate("({ ...document.documentElement.dataset })")
