"""Where the browser keeps nothing, no page promises to keep something: each says that it is lost."""

import re

import pytest
from browser.kept import keeping
from browser.test_faults import DENIED, FULL
from playwright.sync_api import Browser

from pycore.words import college, furniture
from pycore.words import this_device as words

PROMISE = re.compile(
    r"(?<!No correction is )\b(?:stays?|kept|keeps|saved) (?:on|in|here on) this (?:device|browser)"
    r"|\b(?:days|a year) after|until you erase it"
    r"|\bthis device (?:uses(?! no)|opens)|pages that you open (?:without|from)"
    r"|can open it\.|has a button “True size”|starts? with an empty record|everything is erased",
    re.IGNORECASE,
)
FRESH = "html[data-answer=fresh]"
PAGES = (
    "practice/", "register/", "class-set/", "question-papers/", "photographs/", "college-settings/", "print-setup/",
    "this-device/",
)  # fmt: skip
OPENED = """() => {
    for (const one of document.querySelectorAll("details")) one.open = true;
    for (const one of document.querySelectorAll("main select")) one.hidden = true;
    return document.querySelector("main").innerText;
}"""


def opened(browser: Browser, site: str, name: str, refusal: str) -> list[str]:
    """The lines of a page, with all that is folded away."""
    with keeping(browser, site, service_workers="block") as context:
        context.add_init_script(refusal)
        page = context.new_page()
        page.goto(site + name)
        lines: list[str] = page.evaluate(OPENED).splitlines()
        return lines


@pytest.mark.parametrize("name", PAGES)
def test_a_page_promises_only_what_the_browser_keeps(browser: Browser, site: str, name: str) -> None:
    kept = opened(browser, site, name, "")
    assert [line for line in kept if PROMISE.search(line)], "the page has no promise that could be withdrawn"
    assert furniture.UNKEPT not in "\n".join(kept)
    for refusal in (DENIED, FULL):
        lines = opened(browser, site, name, refusal)
        assert [] == [line for line in lines if PROMISE.search(line)]
        assert furniture.UNKEPT in "\n".join(lines)


@pytest.mark.parametrize(
    ("name", "press", "said"),
    [
        ("this-device/", "[data-device-do=erase-all]", words.REFUSED),
        ("this-device/", "[data-device-do=save-all]", words.REFUSED),
        ("print-setup/", "[data-do=keep-screen]", furniture.NOT_KEPT["device"]),
        ("college-settings/#v=1&colours=british-old", f"{FRESH} [data-do=use]:enabled", college.NOT_STORED),
    ],
)
def test_a_press_that_would_keep_or_erase_says_that_nothing_is_kept(
    browser: Browser, site: str, name: str, press: str, said: str
) -> None:
    with keeping(browser, site, service_workers="block") as context:
        context.add_init_script(DENIED)
        page = context.new_page()
        page.goto(site + name)
        page.wait_for_selector(press, timeout=30_000)
        page.click(press)
        page.get_by_text(said).locator("visible=true").first.wait_for(timeout=5000)


@pytest.mark.parametrize("name", PAGES)
def test_where_there_is_no_room_for_more_what_was_kept_is_not_denied(browser: Browser, site: str, name: str) -> None:
    """A full storage that can be read was called one that stores nothing."""
    with keeping(browser, site, service_workers="block") as context:
        page = context.new_page()
        page.goto(site + name)
        page.evaluate("localStorage.setItem('phasor-folio-theme', 'day')")
        context.add_init_script(FULL)
        page.goto(f"{site}checks/")
        page.goto(site + name)
        text = page.evaluate(OPENED)
        assert furniture.FULL in text
        assert furniture.UNKEPT not in text
