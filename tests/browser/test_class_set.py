"""The page of class sets in a browser: made and saved, stopped, typed beside, marked, kept on the device and erased."""

import csv
import io
import re
from collections.abc import Callable
from pathlib import Path

import pypdfium2
import pytest
from browser.asking import DESK, PHONE, wait_until
from playwright.sync_api import Page, expect

from pycore.forms.fields import default_form
from pycore.pages.class_job import learners_of
from pycore.pages.class_set import FIELDS, read_set
from pycore.words import class_set as words
from pycore.words import register as register_words

FRESH = "document.documentElement.dataset.answer === 'fresh'"
IDLE = "document.documentElement.dataset.working === undefined"
KEPT = "version roll results set"
HELD = "(({roll, results}) => roll + results)(JSON.parse(localStorage.getItem('phasor-folio-class')))"
LINK = "class-set/#v=3&topic=neutral-current&tier=core&learners={}&method=any&paper=A4&seed=77"


@pytest.fixture
def sets(open_page: Callable[..., Page], site: str, ready) -> Callable[..., Page]:
    """`sets(learners)` opens the page with a link to a set, its preview made."""

    def open_sets(learners: int = 4, screen: dict | None = None) -> Page:
        page = open_page(viewport=screen or DESK)
        page.goto(site + LINK.format(learners))
        ready(page)
        wait_until(page, FRESH, 30)
        return page

    return open_sets


def saved(page: Page, does: str) -> bytes:
    """The file that a button gives."""
    with page.expect_download(timeout=120_000) as download:
        page.click(f'[data-do="{does}"]')
    return Path(download.value.path()).read_bytes()


def right_answers(count: int, seed: int = 77) -> list[tuple[str, float, float]]:
    """The codes of a set with their right sizes and angles, as pycore in CPython has them."""
    group = read_set(default_form(FIELDS) | {"learners": str(count), "seed": str(seed)})
    learners = [learner for learner in learners_of(group) if learner is not None]
    tasks = [group.topic.task(learner.form) for learner in learners]
    return [(str(learner.code), task.size, task.angle) for learner, task in zip(learners, tasks, strict=True)]


def test_a_set_of_sixty_is_made_and_saved(sets: Callable[..., Page]):
    page = sets(60)
    assert "60 problem sheets, 60 overlays" in page.text_content('[data-region="set"]')
    document = pypdfium2.PdfDocument(saved(page, "make"))
    first = document[0].get_textpage().get_text_bounded()
    assert len(document) > 120
    assert right_answers(1)[0][0] in first
    assert "1 of 60" in first
    assert page.text_content("[data-said]") == (
        "The PDF is saved. Print it at 100 %, single-sided. Problem sheets: pages 1–60, overlays: pages 61–120, "
        f"then the key. {words.NO_QR_HERE}"
    )
    document.close()


def test_making_can_be_stopped_and_typed_beside(sets: Callable[..., Page]):
    page = sets(1000)
    page.click('[data-do="make"]')
    wait_until(page, "Number(document.querySelector('[data-share]').value) > 0", 30)
    assert re.fullmatch(r"Learner \d+ of 1000", page.text_content("[data-work-said]"))
    page.fill('[name="learners"]', "17")
    wait_until(page, "document.querySelector('[data-region=set]').textContent.includes('17 problem sheets')", 30)
    assert page.is_visible("[data-working]")
    page.click('[data-do="stop"]')
    wait_until(page, IDLE, 30)
    assert "Stopped. Nothing was saved." == page.text_content("[data-said]")
    assert not page.is_visible("[data-working]")


def test_too_many_learners_are_refused_at_the_field_and_the_last_set_stays(sets: Callable[..., Page]):
    page = sets(5)
    before = page.text_content('[data-region="set"]')
    page.fill('[name="learners"]', "10000")
    wait_until(page, "document.documentElement.dataset.answer === 'old'", 20)
    assert "One set has at most 1023 learners" in page.text_content("#m-learners")
    assert "true" == page.get_attribute('[name="learners"]', "aria-invalid")
    page.click('[data-do="make"]')
    wait_until(page, IDLE, 20)
    assert before == page.text_content('[data-region="set"]')


def test_names_stay_on_the_device_out_of_the_link_and_are_erased(sets: Callable[..., Page]):
    page = sets(5)
    page.click('[data-group="roll"] > summary')
    page.fill("#roll", "Amber Okafor\nBilal Haddad")
    wait_until(page, "document.querySelector('[data-region=set]').textContent.includes('2 problem sheets')", 20)
    assert "Amber" not in page.url
    page.reload()
    wait_until(page, FRESH, 60)
    assert "Amber Okafor\nBilal Haddad" == page.input_value("#roll")
    text = pypdfium2.PdfDocument(saved(page, "make"))[1].get_textpage().get_text_bounded()
    assert "Bilal Haddad" in text
    page.click('[data-do="erase-roll"]')
    wait_until(page, "document.querySelector('[data-region=set]').textContent.includes('5 problem sheets')", 20)
    assert KEPT == page.evaluate("Object.keys(JSON.parse(localStorage.getItem('phasor-folio-class'))).join(' ')")
    assert not page.evaluate(HELD)


def test_a_typed_code_gives_the_set_again_and_a_button_another(sets: Callable[..., Page]):
    page = sets(3)
    first = page.text_content(".which")
    page.click('[data-group="again"] > summary')
    page.click('[data-do="another"]')
    wait_until(page, f"document.querySelector('.which').textContent !== {first!r}", 20)
    page.fill('[name="code"]', right_answers(2)[1][0])
    page.click('[data-do="open-code"]')
    wait_until(page, f"document.querySelector('.which').textContent === {first!r}", 20)
    page.fill('[name="code"]', "222-222-223")
    page.click('[data-do="open-code"]')
    wait_until(page, "!document.getElementById('m-code').hidden", 20)
    assert "one character is wrong" in page.text_content("#m-code")


def test_the_page_opens_with_the_set_last_shown_until_another_is_asked_for(
    open_page: Callable[..., Page], site: str, ready
):
    """An answer given next week is of this set, not of one that a reload drew."""
    page = open_page(viewport=DESK)

    def opened() -> str:
        page.goto("about:blank")
        page.goto(site + "class-set/")
        ready(page)
        wait_until(page, FRESH, 30)
        return page.text_content(".which")

    first = opened()
    page.fill('[name="learners"]', "7")
    wait_until(page, "document.querySelector('[data-region=set]').textContent.includes('7 problem sheets')", 20)
    assert first == opened()
    assert "7" == page.input_value('[name="learners"]')
    page.click('[data-do="another"]')
    wait_until(page, f"document.querySelector('.which').textContent !== {first!r}", 20)
    second = page.text_content(".which")
    assert second == opened() != first


def test_a_kept_set_that_cannot_be_used_is_said_at_its_field_and_another_drawn(
    open_page: Callable[..., Page], site: str, ready
):
    page = open_page(viewport=DESK)
    page.add_init_script("localStorage.setItem('phasor-folio-class', '{\"version\": 1, \"set\": \"v=9&seed=<b>%ZZ\"}')")
    page.goto(site + "class-set/")
    ready(page)
    wait_until(page, "document.documentElement.dataset.answer === 'old'", 30)
    assert "cannot be used" in page.text_content("#m-seed")
    page.click('[data-do="another"]')
    wait_until(page, FRESH, 20)
    assert not page.text_content("#m-seed")


def test_three_decisions_and_a_button_make_a_set(open_page: Callable[..., Page], site: str, ready):
    """Topic, level and how many; what else there is stands folded, with a good value."""
    page = open_page(viewport=PHONE)
    page.goto(site + "class-set/")
    ready(page)
    wait_until(page, FRESH, 30)
    asked = page.eval_on_selector_all(
        ".choose :is(input, select, textarea)",
        "all => [...new Set(all.filter((one) => one.checkVisibility()).map(({name}) => name))]",
    )
    assert ["topic", "tier", "learners"] == asked
    page.select_option('[name="topic"]', "add-phasors")
    page.click('.choose label:has([value="support"])')
    page.fill('[name="learners"]', "2")
    wait_until(page, "document.querySelector('[data-region=set]').textContent.includes('2 problem sheets')", 20)
    assert "Problem sheets: pages 1–2" in (saved(page, "make") and page.text_content("[data-said]"))


def test_answers_are_marked_kept_over_a_reload_saved_and_erased(sets: Callable[..., Page]):
    page = sets(4)
    given = right_answers(4)
    lines = [
        f"{code};{size:.2f};{abs(angle):.1f};{'anti' if angle > 0 else ''}clockwise".replace(".", ",")
        for code, size, angle in given[:3]
    ]
    table = "\ufeffCode;Answer;Angle;Side\r\n" + "\r\n".join((*lines, f"{given[3][0]};999", "3CD;5"))
    page.fill("#results", table)
    page.click('[data-do="mark"]')
    wait_until(page, "document.querySelectorAll('.verdicts tbody tr').length === 4", 60)
    bands = page.eval_on_selector_all(".verdicts .band", "all => all.map((one) => one.dataset.band)")
    assert ["accept", "accept", "accept", "wrong"] == bands
    assert "Line 6: Code “3CD”" in page.text_content('[data-region="marks"] .notices')
    assert table.replace("\r\n", "\n") == page.input_value("#results")
    rows = list(csv.DictReader(io.StringIO(saved(page, "save-marks").decode("utf-8-sig"), newline="")))
    assert [code for code, _, _ in given] == [row["Code"] for row in rows]
    page.reload()
    wait_until(page, FRESH, 60)
    assert "3CD;5" in page.input_value("#results")
    page.click('[data-do="erase-results"]')
    assert "" == page.input_value("#results")
    assert KEPT == page.evaluate("Object.keys(JSON.parse(localStorage.getItem('phasor-folio-class'))).join(' ')")
    assert not page.evaluate(HELD)


def test_answers_changed_since_are_told_and_what_is_erased_stays_so(sets: Callable[..., Page]):
    """A table of other answers is not saved; a marking under way brings nothing back that was erased."""
    page = sets(4)
    code, size, _ = right_answers(4)[0]
    page.fill("#results", f"{code};{size:.2f}")
    page.click('[data-do="mark"]')
    wait_until(page, "document.querySelectorAll('.verdicts tbody tr').length === 1", 60)
    page.fill("#results", f"{code};{size + 9:.2f}")
    expect(page.locator("[data-marks-said]")).to_contain_text("changed since they were marked")
    expect(page.locator('[data-do="save-marks"]')).to_be_hidden()
    page.evaluate("""for (const name of ["mark", "erase-results"]) {
      document.querySelector(`[data-do="${name}"]`).click();
    }""")
    wait_until(page, "document.documentElement.dataset.working === undefined", 60)
    assert ["", ""] == [page.input_value("#results"), page.text_content('[data-region="marks"]')]
    expect(page.locator("[data-marks-said]")).to_contain_text("erased")


def test_what_stands_in_the_storage_is_hostile_until_read(open_page: Callable[..., Page], site: str, ready):
    page = open_page(viewport=PHONE)
    page.add_init_script("localStorage.setItem('phasor-folio-class', JSON.stringify("
                         "{version: 1, roll: {a: 1}, results: [7], set: ['v=1']}))")  # fmt: skip
    page.goto(site + LINK.format(3))
    ready(page)
    wait_until(page, FRESH, 30)
    assert "" == page.input_value("#roll")
    assert "" == page.input_value("#results")


def test_a_list_beyond_the_limit_is_refused_at_its_field_and_stands_whole_after_a_reload(sets: Callable[..., Page]):
    """Of 200,000 characters nothing came back; of more than a table takes, the end was cut."""
    page = sets(3)
    long = "334-PEK-23G; 7.5 A\n" * 60_000
    page.evaluate("""(text) => {
      const area = document.querySelector("#results");
      area.value = text;
      area.dispatchEvent(new Event("input", { bubbles: true }));
    }""", long)
    page.click('[data-do="mark"]')
    expect(page.locator("#m-results")).to_contain_text("more than 1\u00a0000\u00a0000 characters")
    page.reload()
    wait_until(page, FRESH, 60)
    assert long == page.input_value("#results")


@pytest.mark.parametrize("screen", [PHONE, DESK], ids=["phone", "desk"])
def test_nothing_runs_over_the_edge_and_every_control_has_a_name(sets: Callable[..., Page], screen: dict):
    page = sets(3, screen)
    for summary in page.query_selector_all(".group > summary"):
        summary.click()
    page.fill("#results", "\n".join(f"{code};{3 * size:.1f}" for code, size, _ in right_answers(3)))
    page.click('[data-do="mark"]')
    wait_until(page, "document.querySelectorAll('.verdicts tbody tr').length === 3", 60)
    assert page.evaluate("document.documentElement.scrollWidth") <= screen["width"]
    assert [] == page.evaluate(
        "[...document.querySelectorAll('main :is(input, select, textarea)')].filter((one) => !one.labels?.length)"
        ".map((one) => one.outerHTML)"
    )


def test_a_mistyped_code_is_suggested_and_taken(sets: Callable[..., Page]):
    page = sets(2)
    (code, size, _), _ = right_answers(2)
    typed = code[:-1] + ("3" if code[-1] != "3" else "4")
    page.fill("#results", f"{typed};{size:.2f}")
    page.click('[data-do="mark"]')
    page.click('[data-do="take-code"]')
    expect(page.locator("table.verdicts")).to_contain_text(code)
    assert f"{code};{size:.2f}" == page.input_value("#results")
    assert "results" == page.evaluate("document.activeElement.id")


def test_marks_go_into_the_register_and_what_would_change_is_said(sets: Callable[..., Page], site: str, ready):
    page = sets(2)
    lines = [
        f"{code};{size:.2f};{abs(angle):.1f};{'acw' if angle > 0 else 'cw'}" for code, size, angle in right_answers(2)
    ]
    assert page.is_hidden('[data-do="register"]')
    page.fill("#results", "\n".join(lines))
    page.click('[data-do="mark"]')
    page.click('[data-do="register"]')
    expect(page.locator("[data-marks-said]")).to_have_text(register_words.ADDED)
    page.fill("#results", f"{lines[0]}\n{right_answers(2)[1][0]};99")
    assert page.is_hidden('[data-do="register"]')
    page.click('[data-do="mark"]')
    page.click('[data-do="register"]')
    expect(page.locator("[data-ask]")).to_contain_text("Learner 2: 4 becomes 0.")
    page.click('[data-do="add-not"]')
    page.goto(f"{site}register/")
    ready(page)
    expect(page.locator("table.register tr.average").first).to_contain_text("100 %")
    expect(page.locator("table.register").first).to_contain_text("4 of 4")
