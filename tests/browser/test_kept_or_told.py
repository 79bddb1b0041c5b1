"""What the browser does not keep is said, with a file on offer; a newer edition takes along all that is typed."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from browser.asking import PHONE, SLUG, show_beside, wait_until
from browser.kept import FRESH, keeping, visit
from browser.test_class_set import LINK, right_answers
from browser.test_faults import DENIED, FULL
from browser.test_offline import OFFERED, make_newer
from browser.test_page_access import violations
from playwright.sync_api import Browser, BrowserContext, Page, expect

from pycore.words import class_set as words
from pycore.words import furniture

STRIP = "[data-not-kept]"
REFUSALS = pytest.mark.parametrize("refusal", [DENIED, FULL], ids=["denied", "full"])


@pytest.fixture
def refused(browser: Browser, site: str) -> Callable[..., Page]:
    """`refused(refusal, address)` opens a page in a browser that keeps nothing."""
    contexts = []

    def opened(refusal: str, address: str) -> Page:
        holding = keeping(browser, site, service_workers="block", viewport=PHONE)
        context: BrowserContext = holding.__enter__()
        contexts.append(holding)
        context.add_init_script(refusal)
        return visit(context, site + address)

    yield opened
    for one in contexts:
        one.__exit__(None, None, None)


def file_of(page: Page, button: str) -> str:
    """The text of the file that a button gives."""
    with page.expect_download() as download:
        page.click(button)
    return Path(download.value.path()).read_text("utf-8")


@REFUSALS
def test_names_and_answers_that_are_not_kept_are_said_with_a_file_of_them(refused, refusal: str) -> None:
    """Of the answers nothing was said; they were gone after a reload."""
    page = refused(refusal, LINK.format(3))
    wait_until(page, FRESH, 30)
    for field, text in (("#roll", "Amber Okafor\nBilal Haddad"), ("#results", "334-PEK-23G; 7.5 A")):
        page.reload()
        wait_until(page, FRESH, 30)
        page.evaluate("for (const one of document.querySelectorAll('details')) one.open = true")
        page.fill(field, text)
        expect(page.locator(f"{STRIP} p")).to_have_text(furniture.NOT_KEPT["class"])
        assert text == file_of(page, f"{STRIP} [data-not-kept-do=save]").strip()
    assert [] == violations(page)
    page.click(f"{STRIP} [data-not-kept-do=close]")
    expect(page.locator(STRIP)).to_be_hidden()
    page.fill("#results", "another")
    page.wait_for_timeout(100)
    expect(page.locator(STRIP)).to_be_hidden()


@REFUSALS
def test_a_practice_record_that_is_not_kept_is_said_where_it_is_seen(refused, refusal: str) -> None:
    """It was said within what was folded away."""
    page = refused(refusal, "practice/")
    expect(page.locator(f"{STRIP} p")).to_have_text(furniture.NOT_KEPT["practice"])
    record = json.loads(file_of(page, f"{STRIP} [data-not-kept-do=save]"))
    assert "phasor-folio-practice" == record["kind"]
    code = page.inner_text("#answer h2")
    page.select_option("[name=way]", "0.components")
    wait_until(page, FRESH, 20)
    page.select_option("[name=way]", "0.parallelogram")
    wait_until(page, f"document.querySelector('#answer h2').innerText === {code!r}")


def test_a_printers_set_up_that_is_not_kept_is_in_a_file_that_can_be_loaded(refused, open_page, site, tmp_path) -> None:
    page = refused(FULL, "print-setup/")
    page.click("[data-do=keep-screen]")
    expect(page.locator(f"{STRIP} p")).to_have_text(furniture.NOT_KEPT["device"])
    file = tmp_path / "kept.json"
    file.write_text(file_of(page, f"{STRIP} [data-not-kept-do=save]"), "utf-8")
    other = open_page(fresh=True)
    other.goto(f"{site}this-device/")
    other.set_input_files("[data-kept-file]", file)
    expect(other.locator("[data-kept-rows]")).to_contain_text("Size of your screen")


@REFUSALS
def test_a_choice_that_is_not_kept_is_said(refused, refusal: str) -> None:
    page = refused(refusal, f"{SLUG}/")
    page.click(".menu")
    page.click("[data-theme-switch]")
    expect(page.locator(f"{STRIP} p")).to_have_text(furniture.NOT_KEPT["choice"])
    assert not page.is_visible(f"{STRIP} [data-not-kept-do=save]")


def test_names_and_answers_are_given_as_files_at_any_time(open_page, site: str, ready) -> None:
    page = open_page()
    page.goto(site + LINK.format(3))
    ready(page)
    page.evaluate("for (const one of document.querySelectorAll('details')) one.open = true")
    page.fill("#roll", "Amber")
    page.fill("#results", "334-PEK-23G; 7.5 A")
    assert ["Amber", "334-PEK-23G; 7.5 A"] == [file_of(page, f"[data-do=save-{one}]") for one in ("roll", "results")]


def newer(page: Page, folder: Path) -> None:
    """A newer edition is offered on a page."""
    make_newer(folder)
    page.evaluate("navigator.serviceWorker.getRegistration().then((found) => found.update()).then(() => {})")
    wait_until(page, OFFERED, 30)


def take(page: Page) -> None:
    """Take it over, and wait until the page has answered again."""
    with page.expect_event("load", timeout=30_000):
        page.click("[data-edition-offer] button")
    wait_until(page, FRESH, 60)


def test_an_answer_that_is_being_typed_goes_along(browser: Browser, site_copy: tuple[Path, str]) -> None:
    """Only the form of the problem did."""
    folder, address = site_copy
    with keeping(browser, address) as context:
        page = visit(context, f"{address}practice/", whole=True)
        page.check("[value=calculated]")
        page.fill("[name=answer]", "12.5")
        page.select_option("[name=answer-unit]", index=0)
        newer(page, folder)
        take(page)
        wait_until(page, "document.querySelector('[name=answer]').value === '12.5'", 20)
        assert page.is_checked("[value=calculated]")
        expect(page.locator("[data-check-rest]")).to_be_visible()


def test_a_set_that_is_being_made_is_finished_first(browser: Browser, site_copy: tuple[Path, str]) -> None:
    """It was lost without a word."""
    folder, address = site_copy
    with keeping(browser, address) as context:
        page = visit(context, address + LINK.format(1000), whole=True)
        newer(page, folder)
        page.evaluate("for (const one of document.querySelectorAll('details')) one.open = true")
        page.fill("#results", right_answers(1)[0][0])
        page.click('[data-do="make"]')
        wait_until(page, "Number(document.querySelector('[data-share]').value) > 0", 30)
        page.evaluate("window.before = true")
        page.click("[data-edition-offer] button")
        expect(page.locator("[data-edition-offer] p")).to_have_text(words.IN_HAND)
        page.wait_for_timeout(300)
        assert page.evaluate("window.before")
        page.click('[data-do="stop"]')
        wait_until(page, "document.documentElement.dataset.working === undefined", 30)
        take(page)
        assert right_answers(1)[0][0] == page.input_value("#results")


def test_an_answer_that_is_hidden_stays_hidden(browser: Browser, site_copy: tuple[Path, str]) -> None:
    folder, address = site_copy
    with keeping(browser, address) as context:
        page = visit(context, f"{address}{SLUG}/#v=3&i1=18.4&i2=11.2&i3=24.6", whole=True)
        wait_until(page, FRESH, 30)
        show_beside(page, "check")
        page.click("[data-action=unveil]")
        page.click("[data-action=veil]")
        wait_until(page, FRESH, 20)
        newer(page, folder)
        take(page)
        assert page.get_attribute("html", "data-veiled")
        assert "11.6" not in page.text_content("body")


def test_what_cannot_go_along_is_said_before_it_goes(browser: Browser, site_copy: tuple[Path, str]) -> None:
    folder, address = site_copy
    with keeping(browser, address) as context:
        page = visit(context, f"{address}practice/", whole=True)
        newer(page, folder)
        page.evaluate("() => { Storage.prototype.setItem = () => { throw new DOMException('full'); }; }")
        page.check("[value=calculated]")
        page.fill("[name=answer]", "12.5")
        page.click("[data-edition-offer] button")
        expect(page.locator("[data-edition-offer] p")).to_have_text(furniture.EDITION_LOSES)
        assert "12.5" == page.input_value("[name=answer]")
        take(page)
        assert "" == page.input_value("[name=answer]")


NOT_HEARD = """(times) => {
    const post = ServiceWorker.prototype.postMessage;
    ServiceWorker.prototype.postMessage = function (data, ...more) {
        if (data === "take over" && times-- > 0) return;
        post.call(this, data, ...more);
    };
}"""


@pytest.mark.parametrize("times", [2, 100])
def test_a_press_is_never_without_effect(browser: Browser, site_copy: tuple[Path, str], times: int) -> None:
    """The newer edition may not take over at once, or not at all: the page is loaded anew, with what was typed."""
    folder, address = site_copy
    with keeping(browser, address) as context:
        page = visit(context, f"{address}practice/", whole=True)
        newer(page, folder)
        page.evaluate(NOT_HEARD, times)
        page.check("[value=calculated]")
        page.fill("[name=answer]", "12.5")
        take(page)
        wait_until(page, "document.querySelector('[name=answer]').value === '12.5'", 20)
