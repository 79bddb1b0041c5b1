"""The answer checker: a printed code is scanned, the answer wrong, the mistake told and followed, the answer right."""

import json

import pypdfium2
import pytest
import zxingcpp
from browser.asking import DESK, PHONE, SLUG, show_beside, wait_until
from browser.classroom import until_address
from browser.test_page_access import violations
from playwright.sync_api import Page, expect

from pycore.api import handle
from pycore.calculators.neutral_current.page import NeutralCurrent
from pycore.calculators.registry import CALCULATORS
from pycore.practice.codes import Code, read
from pycore.practice.task import Mistake, Task
from pycore.words import plain

CODE = "333-JDL-2GA"
PAGE = NeutralCurrent()
FORM = {**PAGE.practice_form(read(CODE)), "code": CODE, "sheet": "problem"}
TOUCH = {"viewport": PHONE, "has_touch": True, "is_mobile": True}
LYING = {"width": PHONE["height"], "height": PHONE["width"]}
LEVEL = str.maketrans("₀₁₂₃₄₅₆₇₈₉\u00a0", "0123456789 ", "_")
"""Subscripts as a page's text has them."""
RESULTS = ("neutral-current", "neutral-length", "neutral-angle")


@pytest.fixture(scope="module")
def task() -> Task:
    return PAGE.task(FORM)


@pytest.fixture(scope="module")
def scanned() -> str:
    """The fragment that a phone reads off the printed problem sheet."""
    request = {"do": "pdf", "page": SLUG, "form": FORM, "base": "https://folio.example/neutral-current/", "code": True}
    data = handle(json.dumps(request))[1]
    assert data is not None
    picture = pypdfium2.PdfDocument(data)[0].render(scale=4).to_pil()
    found = [one.text for one in zxingcpp.read_barcodes(picture)]
    assert 1 == len(found)
    return found[0].partition("#")[2]


def left_out(task: Task) -> Mistake:
    return next(one for one in task.mistakes if one.key == "left-out" and one.about == ("i2",))


def in_mm(task: Task, size: float) -> str:
    return f"{round(size * task.factor, 1)} mm"


def right(task: Task) -> str:
    """The right answer with its direction, as it may be typed in one field."""
    side = "anticlockwise" if task.angle * task.sense > 0 else "clockwise"
    return f"{in_mm(task, task.size)} at {abs(task.angle):.1f} {side}"


def go(page: Page, site: str, ready, answered, fragment: str = f"v=1&code={CODE}") -> None:
    page.goto(f"{site}{SLUG}/#{fragment}")
    ready(page)
    answered(page)


def give(page: Page, size: str, how: str = "drawn", **more: str) -> None:
    page.check(f"[name=answer-how][value={how}]")
    page.fill("[name=answer]", size)
    for name, value in more.items():
        page.fill(f"[name={name.replace('_', '-')}]", value)
    page.click("[data-action=check]")


def band(page: Page) -> str | None:
    return page.get_attribute("[data-region=marked] .marked", "data-band")


def results_in_view(page: Page) -> list[str]:
    """The results that can be seen."""
    return [name for name in RESULTS if page.locator(f'output[name="{name}"]').first.is_visible()]


def test_a_learner_scans_errs_is_told_follows_the_step_and_finds_it(open_page, site, ready, answered, task, scanned):
    page = open_page(**TOUCH)
    go(page, site, ready, answered, scanned)
    expect(page.locator(".problem-code")).to_have_text(f"Problem {CODE}")
    assert [FORM["i1"], FORM["i2"], FORM["i3"]] == [page.input_value(f"[name={name}]") for name in ("i1", "i2", "i3")]
    assert [] == results_in_view(page)
    expect(page.locator("[data-region=workings]")).to_be_hidden()
    expect(page.locator("[data-region=view]")).to_be_hidden()

    give(page, in_mm(task, left_out(task).size))
    marked = page.locator("[data-region=marked]")
    expect(marked).to_contain_text("I2 was left out")
    assert "wrong" == band(page)
    way = marked.locator("li", has_text="I2 was left out").locator("a[data-to-step]")
    step = way.get_attribute("data-to-step")
    way.tap()
    wait_until(page, "document.querySelector('dialog[data-lesson]').open")
    expect(page.locator(".lesson-step")).to_have_attribute("data-frame", step)
    until_address(page, f"step={step}&ask=1")
    page.keyboard.press("Escape")
    assert [] == results_in_view(page)

    give(page, right(task))
    wait_until(page, "document.querySelector('[data-region=marked] .marked')?.dataset.band === 'accept'")
    assert [] == results_in_view(page)
    veil = page.locator(".veil")
    expect(veil.get_by_role("heading")).to_have_text("You have solved it")
    expect(veil.locator("[data-hint-step]"), "no hint for what is solved").to_be_hidden()
    page.tap("[data-action=unveil]")
    answered(page)
    wait_until(page, "document.querySelector('output[name=neutral-current]').checkVisibility()")
    shown = float(page.get_attribute('output[name="neutral-current"]', "data-value"))
    assert task.size == pytest.approx(shown, rel=1e-9)
    assert "answer" == page.evaluate("document.activeElement.id")
    wait_until(page, "!document.querySelector('[data-region=workings]').ariaBusy")
    expect(page.locator("[data-region=workings]")).to_be_visible()


def test_nothing_of_the_answer_is_in_the_page_before_it_is_asked_for(page: Page, site, ready, answered, task):
    """Hidden from the eye is not enough: what a reader's program finds must not hold it either."""
    go(page, site, ready, answered)
    html = page.content()
    shown = PAGE.answer({**FORM, "sheet": "construction"})
    said = [output.text for output in shown.outputs if output.name in RESULTS]
    assert [] == [text for text in said if f">{text}<" in html]
    assert f"{task.size:.11g}"[:8] not in html


def test_a_page_without_a_problem_keeps_the_checker_aside(opened: Page):
    expect(opened.locator("[name=answer-how]").first).to_be_hidden()
    assert ["neutral-current"] == results_in_view(opened)[:1]
    expect(opened.locator(".veil")).to_be_hidden()


def test_the_first_question_comes_first(page: Page, site, ready, answered):
    go(page, site, ready, answered)
    expect(page.locator("[name=answer]")).to_be_hidden()
    page.check("[value=drawn]")
    expect(page.locator("[name=answer]")).to_be_visible()
    assert "mm" == page.input_value("[name=answer-unit]")
    expect(page.locator("[data-judged-by]")).to_be_visible()
    page.check("[value=calculated]")
    expect(page.locator("[data-judged-by]"), "no length is judged by the scale").to_be_hidden()
    assert "A" == page.input_value("[name=answer-unit]")
    page.select_option("[name=answer-unit]", "cm")
    page.check("[value=drawn]")
    assert "cm" == page.input_value("[name=answer-unit]")


def test_the_fields_follow_the_conventions(opened: Page):
    show_beside(opened, "check")
    opened.check("[value=drawn]")
    expect(opened.locator("[data-label-for=answer-angle]")).to_have_text("Angle from I1")
    opened.evaluate("document.querySelector('[data-on-the-way]').open = true")
    expect(opened.locator("[name=answer-first]")).to_be_visible()
    opened.check("[name=method][value=components]")
    expect(opened.locator("[name=answer-across]")).to_be_visible()
    expect(opened.locator("[name=answer-first]")).to_be_hidden()


def test_a_bad_answer_is_refused_at_its_field_and_the_last_reply_stays(page: Page, site, ready, answered, task):
    go(page, site, ready, answered)
    give(page, right(task))
    wait_until(page, "document.querySelector('[data-region=marked] .marked')?.dataset.band === 'accept'")
    give(page, "12 volts")
    message = page.locator('[data-message-for="answer"]')
    expect(message).to_contain_text("“12 volts” cannot be read")
    assert "true" == page.get_attribute("[name=answer]", "aria-invalid")
    assert "answer" == page.evaluate("document.activeElement.name")
    assert "accept" == band(page)
    expect(page.locator(".marked-old")).to_be_visible()
    page.fill("[name=answer]", "12")
    expect(message).to_be_hidden()
    assert page.get_attribute("[name=answer]", "aria-invalid") is None
    give(page, right(task))
    expect(page.locator(".marked-old")).to_be_hidden()


def test_what_was_said_of_another_problem_goes(opened: Page, answered):
    show_beside(opened, "check")
    give(opened, "58 mm at 87.5 anticlockwise")
    wait_until(opened, "document.querySelector('[data-region=marked] .marked')?.dataset.band === 'accept'")
    opened.fill("[name=i1]", "12")
    answered(opened)
    assert 0 == opened.locator("[data-region=marked] .marked").count()


def test_a_reply_to_an_older_answer_is_dropped(opened: Page):
    show_beside(opened, "check")
    opened.check("[value=drawn]")
    opened.fill("[name=answer]", "58 mm")
    # Asked, and changed before the reply can come.
    opened.evaluate("""() => {
      document.querySelector('[data-action=check]').click();
      const field = document.querySelector('[name=answer]');
      field.value = '3 mm';
      field.dispatchEvent(new Event('input', { bubbles: true }));
    }""")
    wait_until(opened, "!document.querySelector('[data-action=check]').ariaBusy")
    assert 0 == opened.locator("[data-region=marked] .marked").count()


def test_a_code_is_typed_and_opened(opened: Page, answered):
    show_beside(opened, "check")
    opened.fill("[name=typed-code]", "333-jdl-2gb")
    opened.press("[name=typed-code]", "Enter")
    expect(opened.locator('[data-message-for="typed-code"]')).to_contain_text("one character is wrong")
    opened.fill("[name=typed-code]", CODE.lower())
    opened.press("[name=typed-code]", "Enter")
    expect(opened.locator(".problem-code")).to_have_text(f"Problem {CODE}")
    answered(opened)
    assert FORM["i2"] == opened.input_value("[name=i2]")
    assert [] == results_in_view(opened)


@pytest.mark.parametrize(("code", "said"), [
    ("333-JDL-2GB", "one character is wrong"), (CODE, "not the values of code"),
])  # fmt: skip
def test_a_link_with_values_and_a_code_that_does_not_hold_says_so(page: Page, site, ready, answered, code, said):
    """The values are what is asked for. A link with such a code alone: test_opening.py."""
    go(page, site, ready, answered, f"v=1&i1=3&i2=4&i3=6&code={code}")
    expect(page.locator("[data-open-notices]")).to_contain_text(said)
    assert "3" == page.input_value("[name=i1]")


def test_none_of_it_enters_the_link(page: Page, site, ready, answered):
    go(page, site, ready, answered)
    page.check("[value=drawn]")
    page.locator("summary", has_text="Tolerance (for the lecturer)").click()
    give(page, "31.9 mm", allow_percent="5")
    page.fill("[name=i1]", "12.5")
    answered(page)
    wait_until(page, "location.hash.includes('i1=12.5')")
    assert "answer" not in page.url
    assert "code" not in page.url


def test_by_keyboard_alone(page: Page, site, ready, answered, task):
    go(page, site, ready, answered)
    page.focus("[name=i1]")
    for _ in range(12):
        page.keyboard.press("Tab")
        if "answer-how" == page.evaluate("document.activeElement.name"):
            break
    page.keyboard.press("Space")
    page.keyboard.press("Tab")
    assert "answer" == page.evaluate("document.activeElement.name")
    page.keyboard.type(right(task))
    page.keyboard.press("Enter")
    wait_until(page, "document.querySelector('[data-region=marked] .marked')?.dataset.band === 'accept'")


def test_on_a_phone_the_whole_verdict_stands_above_the_buttons(open_page, site, ready):
    page = open_page(**TOUCH)
    page.goto(f"{site}{SLUG}/")
    ready(page)
    show_beside(page, "check")
    give(page, "11.4")
    wait_until(page, "document.querySelector('[data-region=marked] .marked') !== null")
    said = page.locator("[data-region=marked] .marked").bounding_box()
    assert said["y"] + said["height"] <= page.locator(".action-bar").bounding_box()["y"]


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("screen", [PHONE, DESK], ids=["phone", "desk"])
def test_no_rule_of_access_is_broken(open_page, site, ready, answered, task, scheme: str, screen: dict[str, int]):
    page = open_page(viewport=screen, color_scheme=scheme, reduced_motion="reduce")
    go(page, site, ready, answered)
    give(page, in_mm(task, left_out(task).size))
    page.locator("[data-region=marked] .marked").wait_for()
    for part in page.locator("details").all():
        part.evaluate("(part) => { part.open = true; }")
    assert [] == violations(page)


def test_check_has_the_answer_out_of_view_and_every_other_tab_brings_it_back(opened: Page) -> None:
    """It stood beside the very form that asks for it. Nothing is asked again, so the verdict stays."""
    answer, unveil = opened.locator("output[name=neutral-current]").first, opened.locator("[data-action=unveil]")
    drawing = opened.locator("svg[data-sheet] [data-phasor=sum]").first
    expect(answer).to_be_visible()
    show_beside(opened, "check")
    expect(answer).to_be_hidden()
    expect(drawing).to_be_hidden()
    expect(unveil).to_be_visible()
    expect(opened.locator(".out-of-view")).to_be_visible()
    expect(opened.locator("[data-action=print]"), "the bar stays where it is").to_be_visible()
    give(opened, "12")
    opened.locator("[data-region=marked] .marked").wait_for()
    expect(opened.locator(".own-arrow")).to_have_count(0)
    show_beside(opened, "moves")
    expect(answer).to_be_visible()
    expect(drawing).to_be_visible()
    expect(unveil).to_be_hidden()
    show_beside(opened, "check")
    expect(opened.locator("[data-region=marked] .marked")).to_be_visible()
    expect(answer).to_be_hidden()


def test_the_answer_that_is_asked_for_beside_check_stays_until_the_values_change(opened: Page, answered) -> None:
    answer = opened.locator("output[name=neutral-current]").first
    show_beside(opened, "check")
    opened.click("[data-action=unveil]")
    expect(answer).to_be_visible()
    for tab in ("moves", "check"):
        show_beside(opened, tab)
        expect(answer).to_be_visible()
    opened.fill("[name=i1]", "18.5")
    answered(opened)
    expect(answer).to_be_hidden()
    opened.click("[data-action=unveil]")
    opened.click("[data-action=veil]")
    expect(answer).to_have_count(0)
    assert "unveil" == opened.evaluate("document.activeElement.dataset.action")


def test_the_last_good_answer_comes_back_from_beside_check(opened: Page) -> None:
    """Values that cannot be used leave it, marked old."""
    show_beside(opened, "check")
    opened.fill("[name=i1]", "a lot")
    wait_until(opened, "document.documentElement.dataset.answer === 'old'")
    show_beside(opened, "moves")
    expect(opened.locator("output[name=neutral-current]").first).to_contain_text("11.6")


@pytest.mark.parametrize("screen", [PHONE, LYING, DESK], ids=["phone", "lying", "desk"])
def test_a_problem_opened_by_its_code_says_its_task(open_page, site, ready, answered, screen):
    """Where the answer is asked for: nobody saw what was to be found, by which method and at which scale."""
    page = open_page(viewport=screen)
    go(page, site, ready, answered)
    task = page.locator("[data-region=task]")
    expect(task).to_be_in_viewport(ratio=1)
    said = (task.text_content() or "").replace("\u00a0", " ")
    for part in ("Find the neutral current by drawing.", "Method: Parallelogram", "Scale: 1 cm =", "120° apart"):
        assert part in said
    asks = page.locator(".choose-one:has([name=answer-how])")
    if screen is not LYING:
        expect(asks).to_be_in_viewport(ratio=1)
    assert task.bounding_box()["y"] < asks.bounding_box()["y"]


@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_calculator_says_the_task_of_a_problem(page: Page, site, ready, answered, slug: str):
    """Not the example's, which the page is built with."""
    code = Code(CALCULATORS[slug].topic, "core", seed=7, number=3)
    page.goto(f"{site}{slug}/#v=3&code={code}")
    ready(page)
    answered(page)
    asked = CALCULATORS[slug].answer(CALCULATORS[slug].practice_form(code), ("check",)).answer_request
    said = page.locator("[data-region=task] > p")
    expect(said.first).to_be_visible()
    expected = [plain(line).translate(LEVEL) for line in (asked.question, *asked.notes)]
    assert expected == [line.translate(LEVEL) for line in said.all_text_contents()]


@pytest.mark.parametrize("screen", [PHONE, DESK], ids=["phone", "desk"])
def test_beside_check_its_own_way_to_draw_on_the_screen_is_enough(open_page, site, ready, answered, screen) -> None:
    """It stood beside the scale, beside the sheet and under Check, all in view at once."""
    page = open_page(viewport=screen)
    way = page.locator("[data-action=draw]").filter(visible=True)
    page.goto(f"{site}{SLUG}/")
    ready(page)
    answered(page)
    show_beside(page, "check")
    answered(page)
    expect(way).to_have_count(1)
    page.click("[data-action=unveil]")
    expect(way).to_have_count(1)
    go(page, site, ready, answered)
    expect(way).to_have_count(1)
