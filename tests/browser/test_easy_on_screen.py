"""The moves for easy reading on the screen: larger, one action on a line, ticked off, read aloud when asked."""

from browser.asking import wait_until
from browser.test_page_access import violations
from playwright.sync_api import Page, expect

VOICE = """
  window.said = [];
  const speak = (saying) => window.said.push([saying.text, saying.lang]);
  const voice = { speak, cancel: () => { window.said.hushed = true; } };
  Object.defineProperty(window, "speechSynthesis", { value: voice, configurable: true });
"""
SILENT = "delete window.speechSynthesis; delete Window.prototype.speechSynthesis;"
LIST = ".easy-moves li"


def show(page: Page) -> None:
    page.locator("[data-more] > summary").click()
    page.locator('[data-action="easy"]').click()
    page.locator(LIST).first.wait_for(state="visible")


def opened_with(page: Page, site: str, script: str, ready, answered) -> Page:
    page.add_init_script(script)
    page.goto(f"{site}neutral-current/")
    ready(page)
    answered(page)
    return page


def test_each_action_has_a_line_larger_and_further_apart(page: Page, site: str, ready, answered) -> None:
    opened_with(page, site, VOICE, ready, answered)
    usual = page.locator("section.working .moves li").first
    size = usual.evaluate("(one) => parseFloat(getComputedStyle(one).fontSize)")
    moves = page.locator("section.working .moves li").count()
    show(page)
    expect(usual).to_be_hidden()
    assert moves == page.locator(LIST).count()
    found = page.locator(f"{LIST} p").first.evaluate(
        "(one) => [parseFloat(getComputedStyle(one).fontSize), parseFloat(getComputedStyle(one).lineHeight)]"
    )
    assert found[0] > size and found[1] > 1.5 * found[0]
    for line in page.locator(f"{LIST} p").all_inner_texts():
        assert ". " not in line.replace("\u00a0", "_"), line
    assert [] == violations(page)
    page.click("[data-easy-close]")
    expect(usual).to_be_visible()


def test_ticks_stay_until_the_moves_are_others(page: Page, site: str, ready, answered) -> None:
    opened_with(page, site, VOICE, ready, answered)
    show(page)
    page.locator(".tick").nth(1).click()
    assert "true" == page.locator(".tick").nth(1).get_attribute("aria-pressed")
    page.click("[data-easy-close]")
    show(page)
    assert "true" == page.locator(".tick").nth(1).get_attribute("aria-pressed")
    assert "Done: move 2" == page.locator(".tick").nth(1).get_attribute("aria-label")
    page.fill("[name=i1]", "12")
    answered(page)
    wait_until(page, "document.querySelectorAll('.tick[aria-pressed=true]').length === 0")


def test_nothing_is_read_aloud_until_it_is_asked_for_and_then_in_words(page: Page, site: str, ready, answered) -> None:
    opened_with(page, site, VOICE, ready, answered)
    show(page)
    assert [] == page.evaluate("window.said")
    page.click("[data-aloud]")
    said = page.evaluate("window.said")
    assert page.locator(f"{LIST} p").count() == len(said) and {"en-GB"} == {language for _, language in said}
    whole = " ".join(words for words, _ in said)
    assert "I N" in whole and "degrees" in whole and "millimetres" in whole and "amperes" in whole
    assert "°" not in whole
    assert "Stop reading" == page.inner_text("[data-aloud]")
    page.click("[data-aloud]")
    assert page.evaluate("window.said.hushed") and "Read aloud" == page.inner_text("[data-aloud]")


def test_without_a_voice_nobody_is_offered_one(page: Page, site: str, ready, answered) -> None:
    opened_with(page, site, SILENT, ready, answered)
    show(page)
    expect(page.locator("[data-aloud]")).to_be_hidden()
