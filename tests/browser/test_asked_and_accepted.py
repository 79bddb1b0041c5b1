"""The right answer to what is asked is accepted, in free practice level after level and in the checker, where the asked
quantity is not simply the drawn sum."""

import json
from collections.abc import Callable

import pytest
from browser.asking import PHONE, show_beside, wait_until
from playwright.sync_api import Page, expect

from pycore.calculators.registry import CALCULATORS
from pycore.pages.practice import choices, problem_of
from pycore.practice import ladder
from pycore.practice.codes import TIERS, Code
from pycore.practice.task import Task
from pycore.practice.typed import units
from pycore.render.phrase import phrase_html
from pycore.words import checking

SLUGS = ("power-triangle", "series-circuit", "open-neutral", "two-wattmeters")
KEY = "phasor-folio-practice"
IN_A_ROW = 5
"""So many solved in a row lead through all three levels."""


def settled(page: Page) -> None:
    wait_until(page, "document.documentElement.dataset.answer === 'fresh'")


def answer(page: Page, task: Task, unit: str) -> None:
    """Give the right answer in a unit that the form offers, with its angle where the form asks for one."""
    length = {"mm": task.factor, "cm": task.factor / 10.0}
    size = task.size * length.get(unit, 1.0 / task.writing.factor)
    page.check(f"[name=answer-how][value={'drawn' if unit in length else 'calculated'}]")
    label = page.locator("[data-label-for=answer]")
    assert label.inner_html() == str(phrase_html(checking.answer_label(task.symbol)))
    assert page.locator("[name=answer-unit] option").all_inner_texts() == list(units(task))
    page.select_option("[name=answer-unit]", unit)
    page.fill("[name=answer]", f"{size:.5g}")
    expect(page.locator("[name=answer-angle]")).to_be_visible(visible=task.angled)
    expect(page.locator("[name=answer-side]")).to_be_visible(visible=task.angled)
    if task.angled and task.angle is not None:
        turned = task.sense * ((task.angle - task.turn + 180.0) % 360.0 - 180.0)
        page.fill("[name=answer-angle]", f"{abs(turned):.1f}")
        page.select_option("[name=answer-side]", "anticlockwise" if turned > 0 else "clockwise")
    page.click("[data-action=check]")
    page.locator("[data-region=marked] .marked").wait_for()
    wait_until(page, "document.querySelector('.marked').dataset.band === 'accept'")


@pytest.mark.parametrize("slug", SLUGS)
def test_practice_accepts_the_right_answers_of_every_level(
    open_page: Callable[..., Page], site: str, ready, slug: str
) -> None:
    page = open_page(viewport=PHONE, has_touch=True, is_mobile=True)
    page.goto(f"{site}practice/")
    ready(page)
    settled(page)
    way = next(one.key for one in choices() if one.key.startswith(f"{CALCULATORS[slug].topic}."))
    page.select_option("[name=way]", way)
    wait_until(page, f"JSON.parse(localStorage['{KEY}']).way === '{way}'")
    settled(page)
    tiers = []
    for number in range(IN_A_ROW):
        found = problem_of(ladder.read(json.loads(page.evaluate(f"localStorage.getItem('{KEY}')"))))
        expect(page.locator("[data-region=problem]")).to_contain_text(str(found.code))
        tiers.append(found.code.tier)
        task = found.page.task(found.form)
        answer(page, task, units(task)[number % len(units(task))])
        expect(page.locator("[data-region=drawn] svg").first).to_be_visible()
        page.tap("[data-do=next]")
        settled(page)
    assert list(dict.fromkeys(tiers)) == list(TIERS)


@pytest.mark.parametrize("slug", SLUGS)
def test_checker_accepts_the_right_answer_to_each_levels_code(
    open_page: Callable[..., Page], site: str, ready, answered, slug: str
) -> None:
    calculator = CALCULATORS[slug]
    page = open_page()
    for number, tier in enumerate(TIERS):
        code = Code(calculator.topic, tier, seed=7, number=3)
        page.goto("about:blank")
        page.goto(f"{site}{slug}/#v=1&code={code}")
        ready(page)
        answered(page)
        expect(page.locator("[name=answer-how]").first).to_be_attached()  # beside a problem, its check is in view
        task = calculator.task(calculator.practice_form(code))
        answer(page, task, units(task)[number % len(units(task))])


@pytest.mark.parametrize("slug", SLUGS)
def test_checker_accepts_the_right_answer_to_the_pages_own_example(
    open_page: Callable[..., Page], site: str, ready, answered, slug: str
) -> None:
    page = open_page()
    page.goto(f"{site}{slug}/")
    ready(page)
    answered(page)
    show_beside(page, "check")
    task = CALCULATORS[slug].task({})
    answer(page, task, units(task)[0])
