"""A lecturer gives own values as a problem; what learners open, save and print holds nothing of the answer."""

import re
from collections.abc import Callable
from pathlib import Path

import pypdfium2
import pytest
from browser.asking import DESK, PHONE, SLUG, show_beside, show_more, wait_until
from browser.test_page_access import violations
from leaks import OWN_VALUES, leaks, readable
from playwright.sync_api import Browser, Page, Route, expect
from unit.test_own_problem import ask, own_form, wanted

from pycore.calculators.registry import CALCULATORS
from pycore.words import codes, give
from pycore.words.furniture import PDF_READY

PANEL = "[data-share-panel]"
HEADLINE = "output >> nth=0"


def link_of(slug: str, form: dict[str, str]) -> str:
    """The fragment that a lecturer's page gives, as pycore in CPython makes it."""
    return "#" + ask("share", slug, form, problem=True)[0]["link"].partition("#")[2]


def held_back(page: Page, numbers: set[str]) -> set[str]:
    """What of the answer stands anywhere in the page."""
    return leaks(readable(page.content()), numbers)


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_given_problem_holds_its_answer_back_until_it_is_asked_for(open_page, site: str, answered, slug: str) -> None:
    """Before Python is there, when its sheet has come, and after an answer was checked; then it can be seen."""
    form, routes = own_form(slug), list[Route]()
    numbers = wanted(slug, form)
    page = open_page(fresh=True, viewport=DESK)
    page.route("**/library.zip", lambda route, _request: routes.append(route))
    page.goto(f"{site}{slug}/{link_of(slug, form)}")
    wait_until(page, "document.documentElement.dataset.opening !== 'unread'")
    assert "sheet" == page.get_attribute("html", "data-veiled")
    assert set() == held_back(page, numbers) and 0 == page.locator("main svg [data-step]").count()
    while not routes:
        page.wait_for_timeout(20)
    routes[0].continue_()
    answered(page, 60.0)
    expect(page.locator("svg[data-sheet]")).to_be_visible()
    code = page.input_value("[name=code]")
    expect(page.locator(".problem-code")).to_have_text(codes.opened(code))
    assert set() == held_back(page, numbers)
    assert 0 == page.locator("[data-phasor=sum], [data-phasor=return], main output").count()
    page.check("[name=answer-how][value=calculated]")
    page.fill("[name=answer]", "1")
    page.click("[data-action=check]")
    wait_until(page, "document.querySelector('[data-region=marked] .marked') !== null", 20.0)
    assert set() == held_back(page, numbers)
    page.click("[data-action=unveil]")
    wait_until(page, "document.querySelector('main output')?.checkVisibility()", 20.0)
    assert held_back(page, numbers)


@pytest.mark.parametrize("screen", [PHONE, DESK], ids=["phone", "desk"])
def test_the_example_given_as_a_problem_is_not_in_the_page_before_python_is(open_page, site: str, screen) -> None:
    """The page as it was built holds the answer to just these values."""
    form = {field.name: field.default for field in CALCULATORS[SLUG].fields}
    page = open_page(fresh=True, viewport=screen)
    page.route("**/library.zip", lambda _route, _request: None)
    page.goto(f"{site}{SLUG}/{link_of(SLUG, form)}")
    wait_until(page, "document.documentElement.dataset.opening !== 'unread'")
    seen = page.content()
    assert "11.6" not in " ".join(readable(seen)) and "data-value" not in seen
    assert [] == violations(page)


def test_from_the_first_paint_on_the_page_is_veiled(open_page: Callable[..., Page], site: str) -> None:
    """While the page's own script is still on its way."""
    page = open_page(fresh=True, viewport=PHONE)
    page.route("**/js/sheet.js", lambda _route, _request: None)
    page.goto(f"{site}{SLUG}/{link_of(SLUG, own_form(SLUG))}", wait_until="commit")
    wait_until(page, "document.readyState !== 'loading'")
    assert "sheet" == page.get_attribute("html", "data-veiled")
    expect(page.locator(".veil")).to_be_visible()
    assert 0 == page.locator("main output").count() and 0 == page.locator("main svg [data-step]").count()


@pytest.fixture(params=[PHONE, DESK], ids=["phone", "desk"])
def giving(request, open_page, site: str, ready, answered) -> Page:
    """A lecturer's page with own values, the panel open."""
    page = open_page(viewport=request.param)
    form = own_form(SLUG)
    page.goto(f"{site}{SLUG}/#v=3&" + "&".join(f"{name}={form[name]}" for name in OWN_VALUES[SLUG]))
    ready(page)
    answered(page)
    show_more(page)
    page.click("[data-action=give]")
    page.locator(PANEL).wait_for(state="visible")
    return page


def test_a_lecturer_gives_link_sheet_and_handout(giving: Page, browser: Browser, tmp_path: Path) -> None:
    numbers = wanted(SLUG, own_form(SLUG))
    panel = giving.locator(PANEL)
    expect(panel.locator("h2")).to_have_text(give.TITLE)
    link = panel.locator("input").input_value()
    code = re.search(r"code=([A-Z0-9-]+)", link)[1]
    expect(panel.locator("[data-share-told]")).to_have_text(give.told(code))
    assert "sheet=problem" in link and "measured" not in link and set() == leaks([link], numbers)
    assert [] == violations(giving)
    with giving.expect_download() as download:
        panel.get_by_text(give.SHEET).click()
    expect(panel.locator("[data-share-said]")).to_have_text(PDF_READY)
    sheet = tmp_path / download.value.suggested_filename
    download.value.save_as(sheet)
    document = pypdfium2.PdfDocument(sheet)
    text = document[0].get_textpage().get_text_range()
    document.close()
    assert "neutral-current-problem.pdf" == sheet.name and code in text and set() == leaks([text], numbers)
    with giving.expect_download() as download:
        panel.get_by_text(give.HANDOUT).click()
    expect(panel.locator("[data-share-said]")).to_have_text(give.HANDOUT_READY)
    handout = tmp_path / download.value.suggested_filename
    download.value.save_as(handout)
    assert "neutral-current-problem.html" == handout.name
    assert set() == leaks(readable(handout.read_text("utf-8")), numbers)
    panel.locator("[data-share-do=close]").click()
    show_more(giving)
    giving.click("[data-action=code]")
    expect(panel.locator("[data-share-do=sheet]")).to_be_hidden()
    expect(panel.locator("h2")).not_to_have_text(give.TITLE)
    expect(panel.locator("[data-share-told]")).to_be_hidden()


def test_a_problem_is_added_to_the_question_paper_of_this_device(giving: Page, site: str) -> None:
    """The link had to be copied, the other page found, and a question there unfolded."""
    panel, paper = giving.locator(PANEL), giving.context.new_page()
    panel.get_by_text(give.TO_PAPER).click()
    expect(panel.locator("[data-share-said]")).to_have_text(give.IN_PAPER.format(number=1))
    paper.goto(f"{site}question-papers/")
    wait_until(paper, "document.documentElement.dataset.answer === 'fresh'", 60)
    assert "1" == paper.input_value('input[name="questions"]')
    expect(paper.locator('[data-region="paper"]')).to_contain_text("your values")
    # A window that shows the paper follows; so does one that is opened later.
    panel.get_by_text(give.TO_PAPER).click()
    expect(panel.locator("[data-share-said]")).to_have_text(give.IN_PAPER.format(number=2))
    wait_until(paper, "document.querySelector('input[name=questions]').value === '2'", 10)
    assert paper.input_value("[name=q1-link]") == paper.input_value("[name=q2-link]") != ""
    paper.close()
    for number in range(3, 12):
        panel.get_by_text(give.TO_PAPER).click()
        said = give.IN_PAPER.format(number=number) if number <= 10 else give.PAPER_FULL.format(most=10)
        expect(panel.locator("[data-share-said]")).to_have_text(said)
    panel.get_by_text(give.OPEN_PAPER).click()
    giving.wait_for_url("**/question-papers/**")
    wait_until(giving, "document.documentElement.dataset.answer === 'fresh'", 60)
    assert "10" == giving.input_value('input[name="questions"]')


@pytest.mark.parametrize("screen", [PHONE, DESK], ids=["phone", "desk"])
def test_the_learner_s_handout_opens_without_a_network_and_prints_its_sheet(browser: Browser, tmp_path, screen) -> None:
    from browser.test_handout import make

    file = tmp_path / "problem.html"
    file.write_bytes(make(OWN_VALUES[SLUG], problem=True, base="https://folio.example/neutral-current/"))
    context = browser.new_context(offline=True, viewport=screen)
    page = context.new_page()
    page.goto(file.as_uri())
    expect(page.locator("svg[data-sheet]")).to_be_visible()
    assert [] == violations(page)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    printed = tmp_path / "printed.pdf"
    page.pdf(path=printed, prefer_css_page_size=True, print_background=True)
    document = pypdfium2.PdfDocument(printed)
    assert 1 == len(document) and (297, 210) == tuple(round(side / 72 * 25.4) for side in document[0].get_size())
    document.close()
    context.close()


def test_values_and_code_typed_by_hand_are_said_to_be_right(open_page, site: str, ready, answered) -> None:
    """On a page where the code came first, the answer is held back while the values are typed."""
    form = own_form(SLUG, a2="0", measured="", drawn="")
    code = re.search(r"code=([A-Z0-9-]+)", link_of(SLUG, form))[1]
    page = open_page(viewport=PHONE)
    page.goto(f"{site}{SLUG}/#v=3&code={code}")
    ready(page)
    wait_until(page, "document.querySelector('[data-message-for=typed-code]').textContent !== ''", 20.0)
    assert codes.VALUES_FIRST in page.inner_text("[data-message-for=typed-code]")
    assert "all" == page.get_attribute("html", "data-veiled") and [] == violations(page)
    for name in ("i1", "i2"):
        page.fill(f"[name={name}]", form[name])
    page.fill("[name=i3]", "32.3")
    answered(page)
    assert 0 == page.locator("main output").count()
    page.click("[data-action=find-code]")
    wait_until(page, "document.querySelector('[data-message-for=typed-code]').textContent.includes('Compare')")
    page.fill("[name=i3]", form["i3"])
    answered(page)
    page.click("[data-action=find-code]")
    wait_until(page, "location.hash.includes('sheet=problem')")
    expect(page.locator(".problem-code")).to_have_text(codes.opened(code))
    assert set() == held_back(page, wanted(SLUG, form)) and 0 == page.locator("main output").count()


def test_the_page_of_other_values_does_not_hold_what_an_earlier_one_told(open_page, site: str, ready, answered) -> None:
    """A link that is opened where an answer stands: nothing of it stays behind the veil."""
    page = open_page(viewport=DESK)
    page.goto(f"{site}{SLUG}/#v=3&i1=19.7&i2=12.9&i3=23.3")
    ready(page)
    answered(page)
    show_beside(page, "results")
    numbers = wanted(SLUG, own_form(SLUG, a2="0"))
    assert held_back(page, numbers)
    page.evaluate(f"location.hash = {link_of(SLUG, own_form(SLUG, a2='0'))!r}")
    wait_until(page, "document.documentElement.dataset.veiled === 'sheet'")
    answered(page)
    wait_until(page, "document.querySelector('main output') === null")
    assert set() == held_back(page, numbers)
