"""A link or a code shows its own values, or what it waits for: nothing of the example stands in its place."""

import re
import threading
import time
from collections.abc import Callable
from pathlib import Path
from typing import BinaryIO

import pytest
from browser.asking import DESK, PHONE, SLUG, neutral, result, wait_until
from browser.test_page_access import violations
from making.serve import Server, serving
from playwright.sync_api import Browser, Page, Route, expect

from pycore.calculators.registry import CALCULATORS
from pycore.practice.codes import Code
from pycore.words import furniture

OWN = {"i1": "9.2", "i2": "14.7", "i3": "6.5"}
LINK = "#v=3&" + "&".join(f"{name}={value}" for name, value in OWN.items())
CODE = Code(0, "core", seed=1234, number=7)
SAID = "[data-progress-text]"
SEEN = """() => [...document.querySelectorAll("main *")]
  .filter((one) => one.checkVisibility({ visibilityProperty: true, opacityProperty: true }) && !one.closest("dialog"))
  .filter((one) => getComputedStyle(one).color !== "rgba(0, 0, 0, 0)")
  .flatMap((one) => [one.tagName === "INPUT" && one.type === "text" ? one.value : "",
    ...[...one.childNodes].filter((node) => node.nodeType === 3).map((node) => node.data.trim())])
  .filter(Boolean)"""
DRAWN = """() => [...document.querySelectorAll("main svg [data-step]")]
  .some((one) => one.checkVisibility({ visibilityProperty: true }))"""


WHEN_FRESH = f"""() => {{
  const root = document.documentElement;
  const seen = {SEEN};
  new MutationObserver(() => {{ if (root.dataset.answer === "fresh") root.seen ??= seen(); }})
    .observe(root, {{ attributeFilter: ["data-answer"] }});
}}"""
"""Keeps what is seen when the first answer is there."""


def values(page: Page) -> dict[str, str]:
    """What stands in the fields."""
    return {name: page.input_value(f"[name={name}]") for name in OWN}


def assert_nothing_of_the_example(page: Page) -> None:
    """Neither its values nor its answer, drawing, moves or story are to be seen."""
    seen = page.evaluate(SEEN)
    assert [] == [text for text in seen if re.search(r"\b(18\.4|11\.2|24\.6|11\.6|87\.5)\b", text)]
    assert not [text for text in seen if "Community hall" in text or "Choose the scale" in text]
    assert not page.evaluate(DRAWN)


@pytest.fixture
def held(open_page: Callable[..., Page], site: str) -> Callable[..., tuple[Page, Callable[[], None]]]:
    """`held(address, **options)`: a page whose Python waits for its library, and what lets it go on."""

    def open_held(address: str, **options: object) -> tuple[Page, Callable[[], None]]:
        routes: list[Route] = []
        page = open_page(fresh=True, **options)
        page.route("**/library.zip", lambda route, _request: routes.append(route))
        page.goto(site + address)
        wait_until(page, "document.documentElement.dataset.opening !== 'unread'")

        def go_on() -> None:
            wait_until(page, "true")
            while not routes:
                page.wait_for_timeout(20)
            for route in routes:
                route.continue_()

        return page, go_on

    return open_held


@pytest.mark.parametrize("screen", [PHONE, DESK], ids=["phone", "desk"])
def test_the_values_of_a_link_stand_in_the_fields_before_python_is_there(held, answered, screen) -> None:
    page, go_on = held(f"{SLUG}/{LINK}", viewport=screen)
    assert OWN == values(page)
    assert_nothing_of_the_example(page)
    expect(page.locator(SAID)).to_be_visible()
    assert furniture.LOADING_VALUES in page.inner_text(SAID)
    assert [] == violations(page)
    page.evaluate(WHEN_FRESH)
    go_on()
    answered(page, 60.0)
    assert result(page) == pytest.approx(neutral(9.2, 14.7, 6.5), rel=1e-11)
    # The moves come after the answer: until then those of the example are away too.
    assert not [text for text in page.evaluate("document.documentElement.seen") if re.search(r"24\.6|92 mm", text)]
    wait_until(page, "document.querySelector('.workings').checkVisibility()")
    assert page.evaluate(DRAWN) and page.get_attribute("html", "data-opening") is None


@pytest.mark.parametrize("fragment", ["", "&sheet=problem"], ids=["code", "problem"])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_code_says_which_problem_is_loaded_and_its_fields_are_empty(held, answered, fragment: str, scheme) -> None:
    page, go_on = held(f"{SLUG}/#v=3&code={CODE}{fragment}", viewport=PHONE, color_scheme=scheme)
    assert dict.fromkeys(OWN, "") == values(page)
    assert_nothing_of_the_example(page)
    expect(page.locator(SAID)).to_be_visible()
    assert furniture.LOADING_CODE.format(code=CODE) in page.inner_text(SAID)
    assert [] == violations(page)
    go_on()
    answered(page, 60.0)
    form = CALCULATORS[SLUG].practice_form(CODE)
    assert {name: form[name] for name in OWN} == values(page)


def test_a_sheet_s_qr_code_has_the_values_too_so_that_drawing_can_begin(held) -> None:
    page, _ = held(f"{SLUG}/{LINK}&sheet=problem&code={CODE}", viewport=PHONE)
    assert OWN == values(page)
    assert_nothing_of_the_example(page)
    said = page.inner_text(SAID)
    assert furniture.LOADING_CODE.format(code=CODE) in said and furniture.LOADING_PROBLEM_FIELDS in said


def test_a_lesson_that_a_link_opens_says_what_it_waits_for_too(held) -> None:
    page, _ = held(f"{SLUG}/{LINK}&view=lesson&step=1", viewport=PHONE)
    place = page.locator("[data-lesson] [data-progress-too]")
    expect(place).to_contain_text(furniture.LOADING_VALUES)
    expect(place).to_contain_text("MB are here", timeout=20_000)
    assert [] == violations(page)


def test_what_is_no_code_is_not_repeated(held) -> None:
    page, _ = held(f"{SLUG}/#v=3&code=%3Cb%3Egrand%20prize%20call%2012%3C%2Fb%3E", viewport=PHONE)
    assert furniture.LOADING_ANY_CODE in page.inner_text(SAID)
    assert "prize" not in page.inner_text("main")


def test_nothing_of_the_example_is_seen_before_the_page_s_script_either(fresh_page: Page, site: str) -> None:
    fresh_page.route(re.compile(r"/js/sheet\.js$"), lambda route, _request: None)
    fresh_page.goto(f"{site}{SLUG}/{LINK}", wait_until="commit")
    styled = "[...document.querySelectorAll('link[rel=stylesheet]')].every((link) => link.sheet)"
    wait_until(fresh_page, f"document.querySelector('.foot') !== null && {styled}")  # nothing is painted before
    assert_nothing_of_the_example(fresh_page)


@pytest.mark.parametrize("fragment", [
    "", "#answer", "#v=3&method=tip-to-tail", "#v=3&i1=18.4&i2=11.2&i3=24.6",
], ids=["plain", "anchor", "method", "example"])  # fmt: skip
def test_the_example_stands_where_it_is_what_was_asked_for(held, fragment: str) -> None:
    page, _ = held(f"{SLUG}/{fragment}", viewport=PHONE)
    assert {"i1": "18.4", "i2": "11.2", "i3": "24.6"} == values(page)
    assert page.evaluate(DRAWN) and page.get_attribute("html", "data-opening") is None


def test_what_is_typed_meanwhile_stays(held, answered) -> None:
    page, go_on = held(f"{SLUG}/{LINK}", viewport=DESK)
    page.fill("[name=i1]", "10")
    go_on()
    answered(page, 60.0)
    assert {**OWN, "i1": "10"} == values(page)
    assert result(page) == pytest.approx(neutral(10, 14.7, 6.5), rel=1e-11)


def test_a_start_that_fails_leaves_the_values_and_shows_no_example(browser: Browser, site: str) -> None:
    context = browser.new_context(viewport=PHONE, service_workers="block")
    page = context.new_page()
    page.route("**/library.zip", lambda route: route.abort())
    page.goto(f"{site}{SLUG}/{LINK}")
    wait_until(page, "document.documentElement.dataset.python === 'failed'", 30)
    assert OWN == values(page)
    assert_nothing_of_the_example(page)
    assert furniture.FAILED_OWN == page.inner_text(SAID)
    page.unroute("**/library.zip")
    page.click("[data-retry]")
    wait_until(page, "document.documentElement.dataset.answer === 'fresh'", 60)
    assert result(page) == pytest.approx(neutral(9.2, 14.7, 6.5), rel=1e-11)
    context.close()


@pytest.mark.parametrize(("address", "region"), [
    ("graph-paper/#v=3&paper=A3", "sheet"), ("class-set/#v=3&topic=add-phasors&seed=5", "set"),
])  # fmt: skip
def test_other_pages_wait_for_what_a_link_asks_for_too(held, answered, address: str, region: str) -> None:
    page, go_on = held(address, viewport=DESK)
    expect(page.locator(f"[data-region={region}]")).to_be_hidden()
    go_on()
    answered(page, 60.0)
    expect(page.locator(f"[data-region={region}]")).to_be_visible()


# A code with a slip of the pen.


def mistyped() -> str:
    """A code of nine characters, its last one wrong."""
    text = str(CODE)
    return text[:-1] + ("2" if text[-1] != "2" else "3")


@pytest.mark.parametrize("screen", [PHONE, DESK], ids=["phone", "desk"])
def test_a_link_with_a_mistyped_code_shows_no_other_problem(open_page, site: str, ready, screen) -> None:
    page = open_page(viewport=screen)
    page.goto(f"{site}{SLUG}/#v=3&code={mistyped()}")
    message = page.locator('[data-message-for="typed-code"]')
    expect(message).to_contain_text("one character is wrong", timeout=60_000)
    assert 1 == page.locator(".message:visible, .messages p:visible").count()
    assert mistyped() == page.input_value("[name=typed-code]")
    assert dict.fromkeys(OWN, "") == values(page)
    assert_nothing_of_the_example(page)
    assert [] == violations(page)
    page.fill("[name=typed-code]", str(CODE))
    page.press("[name=typed-code]", "Enter")
    wait_until(page, "document.querySelector('[name=i1]').value !== ''", 20)
    form = CALCULATORS[SLUG].practice_form(CODE)
    assert {name: form[name] for name in OWN} == values(page)


def test_a_mistyped_code_beside_an_answer_changes_nothing(open_page, site: str, ready, answered) -> None:
    page = open_page(viewport=DESK)
    page.goto(f"{site}{SLUG}/{LINK}")
    ready(page)
    answered(page)
    wait_until(page, "!document.querySelector('.workings').hasAttribute('aria-busy')")
    before = (page.url, page.inner_text(".answer"), page.text_content("section.working"))
    page.click("[data-tab=check]")
    page.fill("[name=typed-code]", mistyped())
    page.press("[name=typed-code]", "Enter")
    expect(page.locator('[data-message-for="typed-code"]')).to_contain_text("one character is wrong")
    assert mistyped() == page.input_value("[name=typed-code]")
    page.click("[data-tab=moves]")
    assert before == (page.url, page.inner_text(".answer"), page.text_content("section.working"))


def test_a_mistyped_code_of_a_class_set_changes_nothing(open_page, site: str, ready, answered) -> None:
    page = open_page(viewport=DESK)
    page.goto(f"{site}class-set/#v=3&seed=5")
    ready(page)
    answered(page)
    before = page.inner_text("[data-region=set]")
    page.locator("[name=code]").evaluate("(one) => one.closest('details')?.setAttribute('open', '')")
    page.fill("[name=code]", mistyped())
    page.click('[data-do="open-code"]')
    expect(page.locator('[data-message-for="code"]')).to_contain_text("one character is wrong")
    assert (mistyped(), before) == (page.input_value("[name=code]"), page.inner_text("[data-region=set]"))


# How far the start is.


class Slow(Server):
    """A server at the end of a slow link."""

    link = threading.Lock()
    rate = 45_000

    def send(self, source: BinaryIO, target: BinaryIO) -> None:
        """Send a file piece by piece, as fast as the link takes them."""
        while piece := source.read(4096):
            with self.link:
                time.sleep(len(piece) / self.rate)
                target.write(piece)


def test_a_slow_start_says_how_much_is_here_and_how_long_the_rest_takes(browser: Browser, dist: Path) -> None:
    """On a plain page beside the example, which can be read meanwhile and is covered by nothing."""
    with serving(dist, Slow) as address:
        context = browser.new_context(viewport=PHONE, service_workers="block")
        page = context.new_page()
        page.goto(f"{address}{SLUG}/")
        wait_until(page, f"/About . minutes? left/.test(document.querySelector('{SAID}').textContent)", 40)
        said = page.inner_text(SAID)
        assert furniture.LOADING in said and furniture.LOADING_EXAMPLE in said
        assert re.search(r"About [12] minutes? left\.", said)
        done, whole = map(float, re.findall(r"\d+\.\d", page.inner_text("[data-progress-far]")))
        assert 0 < done < whole < 12
        strip = page.locator("[data-progress]").bounding_box()
        answer = page.locator(".answer").bounding_box()
        bar = page.locator(".action-bar").bounding_box()
        assert strip and answer and bar
        assert strip["y"] > answer["y"] + answer["height"] and strip["y"] + strip["height"] <= bar["y"] + 1
        assert page.evaluate(DRAWN)
        assert [] == violations(page)
        context.close()
