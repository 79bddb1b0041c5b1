"""The front page: alive with the first value that is typed, calm before it; codes; the head and foot of every page."""

from collections.abc import Callable

import pytest
from browser.asking import DESK, PHONE, neutral, result, wait_until
from browser.test_page_access import violations
from playwright.sync_api import Page, Route, expect

from pycore.calculators.registry import CALCULATORS
from pycore.practice.codes import ALPHABET, GROUP, Code, write_as
from pycore.words import furniture

SMALL = {"width": 320, "height": 640}
FRESH = "document.documentElement.dataset.answer === 'fresh'"
OLD = "document.documentElement.dataset.answer === 'old'"
READY = "document.documentElement.dataset.python === 'ready'"


@pytest.fixture
def home(open_page: Callable[..., Page], site: str) -> Callable[..., Page]:
    def open_home(**options: object) -> Page:
        page = open_page(**{"viewport": DESK, **options})
        page.goto(site)
        return page

    return open_home


def carried(page: Page) -> str:
    return page.get_attribute(".uses .first", "href")


def test_nobody_waits_for_python_who_only_looks(fresh_page: Page, site: str) -> None:
    """The example is complete; what a visitor does not use is not fetched."""
    asked: list[str] = []
    fresh_page.on("request", lambda request: asked.append(request.url))
    fresh_page.goto(site)
    fresh_page.mouse.wheel(0, 2000)
    fresh_page.wait_for_timeout(500)
    assert [] == [url for url in asked if "/py/" in url or "/lib/" in url]
    assert 0 == len(fresh_page.workers) and "idle" == fresh_page.get_attribute("html", "data-python")
    fresh_page.focus("[name=i1]")
    wait_until(fresh_page, READY, 60)
    assert 1 == len(fresh_page.workers)


def test_a_value_is_answered_where_it_is_typed_and_goes_along_to_the_sheet(home, ready, answered) -> None:
    page = home()
    drawn = page.locator(".front svg").inner_html()
    page.fill("[name=i1]", "30")
    wait_until(page, f"{READY} && {FRESH}", 60)
    assert result(page) == pytest.approx(neutral(30, 11.2, 24.6), rel=1e-11)
    assert drawn != page.locator(".front svg").inner_html()
    assert carried(page).endswith("#v=3&i1=30&i2=11.2&i3=24.6")
    page.click(".uses .first")
    ready(page)
    answered(page)
    assert page.url.endswith("/neutral-current/#v=3&i1=30&i2=11.2&i3=24.6")
    assert result(page) == pytest.approx(neutral(30, 11.2, 24.6), rel=1e-11)


def test_values_that_nobody_waited_for_go_along_too(home, ready, answered) -> None:
    """Whoever types and presses at once loses nothing."""
    page = home()
    page.fill("[name=i2]", "20,5 A")
    page.click(".uses a:nth-child(2)")
    page.wait_for_url("**/neutral-current/**")
    ready(page)
    answered(page)
    assert "20,5 A" == page.input_value("[name=i2]")
    expect(page.locator(".lesson-step")).to_be_visible()


def test_a_bad_value_is_named_and_the_answer_from_before_stays(home) -> None:
    page = home()
    page.focus("[name=i1]")
    page.locator("[name=i1]").press_sequentially("18,4,0")
    wait_until(page, f"{READY} && {OLD}", 60)
    expect(page.locator('[data-message-for="i1"]')).to_contain_text("decimal mark")
    assert result(page) == pytest.approx(neutral(18.4, 11.2, 24.6), rel=1e-11)
    expect(page.locator(".home .old-values")).to_contain_text("18.4 A, 11.2 A, 24.6 A")
    page.fill("[name=i1]", "18.4")
    wait_until(page, FRESH)
    expect(page.locator('[data-message-for="i1"]')).to_be_hidden()


LONG = write_as(2, Code(5, "core", "any", "A4", 1234, 7))


def wrong(code: str, place: int) -> str:
    """A code with another character at a place."""
    return code[:place] + ALPHABET[(ALPHABET.index(code[place]) + 5) % 32] + code[place + 1 :]


@pytest.mark.parametrize(("code", "said", "part"), [
    ("333-jdl-2gb", "one character is wrong, or two are swapped", "333-jdl-2gb"),
    ("333-JDL", "has 6 characters", "333-JDL"),
    ("333-JOL-2GA", "“O” is not used in codes", "O"),
    (wrong(LONG, 5), f"check the second group, “{wrong(LONG, 5)[4 : 4 + GROUP]}”", wrong(LONG, 5)[4 : 4 + GROUP]),
    ("", "Type a code", ""),
])  # fmt: skip
def test_a_wrong_code_stays_where_it_was_typed_and_nothing_else_happens(home, site, code, said, part) -> None:
    page = home()
    before = (page.locator(".answer").inner_html(), page.locator(".front").inner_html())
    page.fill("[name=typed-code]", code)
    page.press("[name=typed-code]", "Enter")
    expect(page.locator('[data-message-for="typed-code"]')).to_contain_text(said, timeout=60_000)
    assert (site, code) == (page.url, page.input_value("[name=typed-code]"))
    assert before == (page.locator(".answer").inner_html(), page.locator(".front").inner_html())
    assert "true" == page.get_attribute("[name=typed-code]", "aria-invalid")
    assert "typed-code" == page.evaluate("document.activeElement.name")
    assert part == (page.locator('[data-marks-for="typed-code"] u').text_content() if part else "")
    assert [] == violations(page)


def test_the_drawings_on_the_boards_have_one_scale(home) -> None:
    for screen in (PHONE, DESK, {"width": 1920, "height": 1080}):
        page = home(viewport=screen)
        scales = page.eval_on_selector_all(
            ".board svg", "(all) => all.map((one) => one.getBoundingClientRect().width / one.viewBox.baseVal.width)"
        )
        assert len(CALCULATORS) == len(scales)
        assert max(scales) < 1.03 * min(scales)


@pytest.mark.parametrize("screen", [SMALL, PHONE, {"width": 768, "height": 1024}, DESK], ids=lambda one: one["width"])
def test_no_text_is_small_and_nothing_runs_over_the_edge(home, screen) -> None:
    page = home(viewport=screen)
    assert screen["width"] >= page.evaluate("document.documentElement.scrollWidth")
    sizes = page.evaluate("""() => [...document.querySelectorAll("body *")]
      .filter((one) => [...one.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim())
        && one.checkVisibility() && !one.closest("svg, sub, .unit"))
      .map((one) => [parseFloat(getComputedStyle(one).fontSize), one.textContent.slice(0, 30)])""")
    assert [] == [found for found in sizes if found[0] < 14]


PAGES = ["", "neutral-current/", "practice/", "class-set/", "lesson-plan/", "graph-paper/", "print-setup/", "checks/"]


@pytest.mark.parametrize("slug", PAGES)
def test_the_pages_of_the_site_are_reached_from_every_page_on_a_phone_too(open_page, site: str, slug: str) -> None:
    page = open_page(viewport=PHONE)
    page.goto(site + slug)
    link = page.locator(".pages a", has_text="Class sets")
    expect(link).to_be_hidden()
    page.focus(".menu")
    page.keyboard.press("Enter")
    expect(link).to_be_visible()
    assert [] == violations(page)
    page.keyboard.press("Escape")
    expect(link).to_be_hidden()
    assert "menu" == page.evaluate("document.activeElement.className")
    page.keyboard.press("Enter")
    for _ in range(3):
        page.keyboard.press("Tab")
    assert "Class sets" == page.evaluate("document.activeElement.textContent")
    page.set_viewport_size(DESK)
    page.reload()
    expect(link).to_be_visible()
    expect(page.locator(".menu")).to_be_hidden()


@pytest.mark.parametrize("slug", PAGES)
def test_every_link_of_head_and_foot_leads_to_something(open_page, site: str, slug: str) -> None:
    page = open_page(viewport=DESK)
    page.goto(site + slug)
    found = page.eval_on_selector_all(".head a, .foot a", "(all) => all.map((one) => one.href)")
    assert len(found) > 20
    for address in set(found):
        whole, _, anchor = address.partition("#")
        assert page.request.get(whole).ok, address
        if anchor and whole == (site + slug):
            assert 1 == page.locator(f"[id='{anchor}']").count(), address


def test_the_example_s_answer_is_old_beside_typed_values_while_python_is_awaited(fresh_page: Page, site: str) -> None:
    """It stood there for minutes on a slow network, as if it were the answer to them."""
    held: list[Route] = []
    fresh_page.route("**/library.zip", lambda route, _request: held.append(route))
    fresh_page.goto(site)
    fresh_page.fill("[name=i1]", "9.2")
    wait_until(fresh_page, "'late' in document.documentElement.dataset", 10)
    expect(fresh_page.locator(".home .when-old").first).to_be_visible()
    while not held:
        fresh_page.wait_for_timeout(20)
    for route in held:
        route.continue_()
    wait_until(fresh_page, "document.documentElement.dataset.answer === 'fresh'", 60)
    expect(fresh_page.locator(".home .when-old").first).to_be_hidden()


def test_without_scripts_the_example_and_every_page_are_there(open_page, site: str) -> None:
    page = open_page(viewport=PHONE, java_script_enabled=False)
    page.goto(site)
    expect(page.locator(".pages a", has_text="Class sets")).to_be_visible()
    expect(page.locator(".front svg")).to_be_visible()
    expect(page.locator(".home .big")).to_have_text("11.6\u00a0A")
    expect(page.locator("noscript .notice")).to_be_visible()
    page.click(".uses .first")
    assert page.url.endswith("/neutral-current/#v=3&i1=18.4&i2=11.2&i3=24.6")


def test_a_code_that_python_is_still_awaited_for_says_which_problem_is_loaded(fresh_page: Page, site: str) -> None:
    """And takes what a code needs, not all that pycore has; the strip goes with the page."""
    held: list[Route] = []
    asked: list[str] = []
    fresh_page.on("request", lambda request: asked.append(request.url.rsplit("/", 1)[-1]))
    fresh_page.route("**/library.zip", lambda route, _request: held.append(route))
    fresh_page.goto(site)
    code = str(Code(0, "core", seed=1234, number=7))
    fresh_page.fill("[name=typed-code]", code.lower())
    fresh_page.press("[name=typed-code]", "Enter")
    expect(fresh_page.locator("[data-progress-text]")).to_contain_text(furniture.LOADING_CODE.format(code=code))
    while not held:
        fresh_page.wait_for_timeout(20)
    for route in held:
        route.continue_()
    fresh_page.wait_for_url("**/neutral-current/**", timeout=60_000)
    assert "coded.zip" in asked
    assert f"code={code}" in fresh_page.url
