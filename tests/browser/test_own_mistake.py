"""After a wrong answer on a phone: the reason, the step at one press, one more problem; an answer that is hidden leaves
the page, and hints lead on without it."""

import json

import pytest
from browser.asking import DESK, PHONE, SLUG, show_beside, wait_until
from browser.test_check import CODE, give, go
from playwright.sync_api import Page, expect

TOUCH = {"viewport": PHONE, "has_touch": True, "is_mobile": True}
SCREENS = pytest.mark.parametrize("screen", [PHONE, DESK], ids=["phone", "desk"])


def until_marked(page: Page) -> None:
    wait_until(page, "document.querySelector('[data-region=marked] .marked') !== null")


@SCREENS
def test_the_own_arrow_stands_beside_the_right_one_and_the_step_is_one_press_away(open_page, site, ready, screen):
    page = open_page(viewport=screen)
    page.goto(f"{site}{SLUG}/")
    ready(page)
    show_beside(page, "check")
    page.click("[data-action=unveil]")
    give(page, "16.06 A at 40 clockwise")
    until_marked(page)
    expect(page.locator(".own-arrow")).to_be_visible()
    box = page.locator(".own-arrow").bounding_box()
    assert box["width"] >= 150 and box["x"] + box["width"] <= screen["width"]
    hint = page.locator(".marked .hint").first
    hint.locator("summary").click()
    expect(hint.locator("p")).to_contain_text("Step ")
    page.locator(".marked a[data-to-step]").first.click()
    wait_until(page, "document.querySelector('dialog[data-lesson]').open")


def test_one_press_brings_one_more_problem_with_its_answer_held_back(open_page, site, ready, answered):
    page = open_page(**TOUCH)
    go(page, site, ready, answered)
    give(page, "3.1 mm at 12 clockwise")
    until_marked(page)
    expect(page.locator(".own-arrow")).to_have_count(0)
    page.get_by_role("link", name="One more problem of this kind").tap()
    wait_until(page, f"!document.querySelector('.problem-code').textContent.includes('{CODE}')")
    answered(page)
    expect(page.locator(".problem-code")).to_contain_text("Problem ")
    assert page.evaluate("document.documentElement.dataset.veiled") == "all"
    expect(page.locator("[data-region=marked] .marked")).to_have_count(0)
    assert "" == page.input_value("[name=answer]") == page.input_value("[name=answer-angle]")
    expect(page.locator("[name=i1]")).to_be_in_viewport()


@SCREENS
def test_an_answer_that_is_hidden_is_nowhere_in_the_page(open_page, site, ready, answered, screen):
    page = open_page(viewport=screen)
    page.goto(f"{site}{SLUG}/#v=3&i1=18.4&i2=11.2&i3=24.6")
    ready(page)
    answered(page)
    wait_until(page, "!document.querySelector('[data-region=workings]').ariaBusy")
    show_beside(page, "check")
    page.click("[data-action=unveil]")
    page.click("[data-action=veil]")
    answered(page)
    wait_until(page, "document.querySelector('[data-region=sheet] svg') !== null")
    for told in ("11.6", "58.1", "87.5", "11.62"):
        assert told not in page.locator("body").evaluate("(body) => body.textContent"), told
    assert page.locator("[data-phasor=sum]").count() == 0
    # Values that change meanwhile stay without their answer.
    page.evaluate("""() => {
      const field = document.querySelector('[name=i1]');
      field.value = '18.5';
      field.dispatchEvent(new Event('input', { bubbles: true }));
    }""")
    answered(page)
    assert page.locator("output[name=neutral-current]").count() == 0
    page.click("[data-action=unveil]")
    answered(page)
    wait_until(page, "document.querySelector('output[name=neutral-current]')?.checkVisibility()")
    wait_until(page, "document.querySelector('[data-region=workings]').childElementCount > 0")


def test_hints_lead_from_where_to_look_to_the_move_to_the_move_done(open_page, site, ready, answered):
    page = open_page(**TOUCH)
    go(page, site, ready, answered)
    page.locator(".veil [data-hint-step]").first.tap()
    hints = page.locator("[data-region=hint]")
    expect(hints.locator("h3")).to_contain_text("Step 2")
    expect(hints.locator("p").first).to_contain_text("How long is")
    hints.get_by_role("button", name="Next hint: the move").tap()
    expect(hints).to_contain_text("Draw")
    hints.get_by_role("button", name="Hint for the next step").tap()
    expect(hints.locator("h3")).to_contain_text("Step 3")
    hints.get_by_role("button", name="Next hint: the move").tap()
    hints.get_by_role("link", name="Show this move done").tap()
    wait_until(page, "document.querySelector('dialog[data-lesson]').open")
    wait_until(page, "!location.hash.includes('ask=1')")


def test_in_practice_the_answer_shown_says_what_was_wrong(open_page, site, ready):
    page = open_page(**TOUCH)
    page.goto(f"{site}practice/")
    ready(page)
    wait_until(page, "document.documentElement.dataset.answer === 'fresh'")
    page.check("[name=answer-how][value=calculated]")
    page.fill("[name=answer]", "1.1 A at 12 clockwise")
    page.click("[data-action=check]")
    until_marked(page)
    expect(page.locator(".own-arrow")).to_have_count(0)
    page.tap("[data-do=show]")
    page.locator(".own-arrow").wait_for()
    expect(page.locator("[data-region=marked]")).to_contain_text("Not yet")
    page.tap("[data-do=next]")
    wait_until(page, "document.querySelector('main').dataset.state === 'asking'")
    expect(page.locator("[data-region=marked] .marked")).to_have_count(0)
    page.check("[name=answer-how][value=calculated]")
    page.fill("[name=answer]", "1.1 A at 12 clockwise")
    page.click("[data-action=check]")
    until_marked(page)
    page.tap("[data-do=another]")
    wait_until(page, "JSON.parse(localStorage['phasor-folio-practice']).ways['0.parallelogram'].had >= 3")
    kept = json.loads(page.evaluate("localStorage['phasor-folio-practice']"))
    assert kept["mistakes"] == {"not-named": 2}


def test_a_first_diagonal_is_checked_alone(open_page, site, ready, answered):
    page = open_page(**TOUCH)
    go(page, site, ready, answered)
    page.check("[name=answer-how][value=drawn]")
    page.evaluate("document.querySelector('[data-on-the-way]').open = true")
    page.fill("[name=answer-first]", "2 mm")
    page.click("[data-action=check]")
    until_marked(page)
    expect(page.locator(".marked")).to_contain_text("First diagonal: not yet")
