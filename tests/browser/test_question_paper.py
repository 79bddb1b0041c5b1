"""The page of question papers in a browser: put together, made, kept, opened again, marked, and in the register."""

import json
import re
from collections.abc import Callable
from pathlib import Path

import pypdfium2
import pytest
from browser.asking import DESK, PHONE, wait_until
from playwright.sync_api import Page, expect

from pycore.words import paper_marks as mark_words
from pycore.words import question_paper as words

FRESH = "document.documentElement.dataset.answer === 'fresh'"
IDLE = "document.documentElement.dataset.working === undefined"
ROLL = "Ada Lark\nBen Stone"
TOPICS = "[...document.querySelectorAll('[data-question]:not([hidden]) select[name$=topic]')].map((one) => one.value)"


@pytest.fixture
def papers(open_page: Callable[..., Page], site: str, ready) -> Callable[..., Page]:
    """`papers(fragment, screen)` opens the page, its preview made."""

    def open_papers(fragment: str = "#v=3&seed=77", screen: dict | None = None) -> Page:
        page = open_page(viewport=screen or DESK)
        page.goto(f"{site}{words.SLUG}/{fragment}")
        ready(page)
        wait_until(page, FRESH, 30)
        return page

    return open_papers


def saved(page: Page, does: str) -> bytes:
    """The file that a button gives."""
    with page.expect_download(timeout=120_000) as download:
        page.click(f'[data-do="{does}"]')
    wait_until(page, IDLE, 10)
    return Path(download.value.path()).read_bytes()


def named(page: Page) -> None:
    """Names and a title of one's own."""
    page.click("[data-group=roll] summary")
    page.fill("#roll", ROLL)
    page.fill("[name=title]", "Hall lighting")
    wait_until(page, FRESH, 30)


def texts(data: bytes) -> list[str]:
    document = pypdfium2.PdfDocument(data)
    found = [page.get_textpage().get_text_range() for page in document]
    document.close()
    return found


def test_a_paper_is_made_marked_and_one_learners_made_again(papers: Callable[..., Page]):
    page = papers()
    named(page)
    expect(page.locator('[data-region="paper"]')).to_contain_text("for 2 learners")
    whole = texts(saved(page, "make"))
    page.fill("#which", "ben stone")
    assert whole[len(whole) // 2 :] == texts(saved(page, "one"))
    assert any("Mark scheme: Hall lighting" in text for text in texts(saved(page, "scheme")))
    page.fill("#which", "Nobody")
    page.click('[data-do="one"]')
    expect(page.locator("#m-which")).to_contain_text("Nobody")


def test_questions_are_added_moved_and_removed_with_all_that_they_hold(papers: Callable[..., Page]):
    page = papers()
    assert ["neutral-current", "add-phasors", "power-triangle"] == page.evaluate(TOPICS)
    page.click('[data-question="1"] details:nth-of-type(2) summary')
    page.fill("[name=q1-before]", "The stage has three circuits.")
    page.click('[data-do="down"][data-of="1"]')
    assert ["add-phasors", "neutral-current", "power-triangle"] == page.evaluate(TOPICS)
    assert "The stage has three circuits." == page.input_value("[name=q2-before]")
    assert "down" == page.evaluate("document.activeElement.dataset.do")
    page.click('[data-do="add"]')
    page.click('[data-do="remove"][data-of="1"]')
    assert ["neutral-current", "power-triangle", "neutral-current"] == page.evaluate(TOPICS)
    wait_until(page, FRESH, 30)
    expect(page.locator('[data-region="paper"]')).to_contain_text("3 questions")


def test_a_lecturers_own_values_come_by_their_link(papers: Callable[..., Page]):
    page = papers()
    page.click('[data-question="1"] details:nth-of-type(2) summary')
    page.fill("[name=q1-link]", "https://folio.example/nowhere/")
    expect(page.locator("#m-q1-link")).to_contain_text("not a link to a calculator")
    page.fill("[name=q1-link]", "https://folio.example/series-circuit/#v=3&r=40&l=100 mH&c=&supply=230&frequency=50")
    expect(page.locator('[data-region="paper"]')).to_contain_text("your values", timeout=20_000)


def test_a_paper_that_was_made_is_kept_and_opened_again(papers: Callable[..., Page]):
    page = papers()
    named(page)
    made = texts(saved(page, "make"))
    lost = re.search(r"Paper (7\w\w-\w{3}-\w{3}), learner 2 of 2", " ".join(made))[1]
    page.fill("[name=title]", "Another")
    page.fill("#roll", "")
    page.select_option("[name=q1-tier]", "stretch")
    wait_until(page, FRESH, 30)
    page.reload()
    wait_until(page, FRESH, 60)
    expect(page.locator("[data-kept-papers]")).to_contain_text("Hall lighting")
    # The code on a lost paper opens the paper that it belongs to.
    page.fill("#which", lost)
    assert any("Ben Stone" in text for text in texts(saved(page, "one")))
    assert "Another" == page.input_value("[name=title]")
    page.click('[data-do="open-kept"]')
    assert ("Hall lighting", ROLL) == (page.input_value("[name=title]"), page.input_value("#roll"))
    page.click('[data-do="back"]')
    assert ("Another", "") == (page.input_value("[name=title]"), page.input_value("#roll"))
    page.click('[data-do="erase-kept"]')
    expect(page.locator("[data-kept-papers]")).to_be_hidden()


def test_names_are_there_after_a_reload(papers: Callable[..., Page]):
    """The address has the paper's link by then, and no link has names."""
    page = papers("")
    named(page)
    wait_until(page, "location.hash.includes('Hall')", 10)
    page.reload()
    wait_until(page, FRESH, 60)
    assert ("Hall lighting", ROLL) == (page.input_value("[name=title]"), page.input_value("#roll"))
    other = papers("#v=3&seed=5&title=A%20colleague")
    assert "A colleague" == other.input_value("[name=title]")


def test_one_paper_for_two_groups_is_kept_and_marked_twice(papers: Callable[..., Page], site: str):
    page = papers()
    for group, names in {"Tuesday": "Ada Lark", "Thursday": "Ben Stone"}.items():
        page.evaluate("document.querySelector('[data-group=roll]').open = true")
        page.fill("[name=group]", group)
        page.fill("#roll", names)
        wait_until(page, FRESH, 30)
        saved(page, "make")
        page.fill("#results", f"{names}; 1; 3; 3")
        page.click('[data-do="mark"]')
        page.click('[data-do="register"]')
        expect(page.locator("[data-marks-said]")).to_have_text(mark_words.ADDED)
    expect(page.locator("[data-kept-papers] li")).to_have_count(2)
    page.goto(f"{site}register/")
    expect(page.locator('[data-region="register"] > section')).to_have_count(2, timeout=60_000)


def test_a_number_of_questions_that_no_paper_has_is_put_right(papers: Callable[..., Page]):
    page = papers("#v=3&seed=5&questions=99")
    assert 10 == len(page.evaluate(TOPICS))


def test_a_paper_goes_through_a_file(papers: Callable[..., Page], tmp_path: Path):
    page = papers()
    named(page)
    with page.expect_download() as download:
        page.click('[data-do="save"]')
    text = Path(download.value.path()).read_text("utf-8")
    file = json.loads(text)
    assert ("phasor-folio question paper", 1, ROLL) == (file["format"], file["version"], file["roll"])
    other = papers("#v=3&seed=1")
    path = tmp_path / "paper.json"
    path.write_text("{}", encoding="utf-8")
    other.set_input_files("#paper-file", path)
    expect(other.locator("[data-said]")).to_have_text(words.BAD_FILE)
    path.write_text(text, encoding="utf-8")
    other.set_input_files("#paper-file", path)
    expect(other.locator("[data-said]")).to_have_text(words.OPENED)
    assert ("Hall lighting", "77") == (other.input_value("[name=title]"), other.input_value("[name=seed]"))


@pytest.mark.parametrize("screen", [DESK, PHONE])
def test_marks_go_into_the_register_and_a_paper_can_be_taken_out(papers: Callable[..., Page], site: str, screen: dict):
    page = papers(screen=screen)
    named(page)
    page.fill("#results", "Ada Lark; 1; 3; 3\nNobody; 1; 3; 3")
    page.click('[data-do="mark"]')
    expect(page.locator('[data-region="marks"]')).to_contain_text("1 answer marked. 1 line could not be used.")
    page.click('[data-do="register"]')
    expect(page.locator("[data-marks-said]")).to_have_text(mark_words.ADDED)
    page.fill("#results", "Ada Lark; 1; 3; 4")
    expect(page.locator("[data-marks-said]")).to_have_text(mark_words.OLD)
    page.goto(f"{site}register/")
    expect(page.locator("table.register").first).to_contain_text("Ada Lark", timeout=60_000)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    assert b"Ada Lark" in saved(page, "save-table")
    page.click('[data-do="erase"]')
    expect(page.locator('[data-region="register"]')).to_contain_text("There are no marks yet")
    page.click('[data-do="undo"]')
    expect(page.locator("table.register").first).to_contain_text("Ada Lark")


def test_a_register_goes_through_a_file(open_page: Callable[..., Page], site: str, ready, tmp_path: Path):
    page = open_page(viewport=DESK)
    page.goto(f"{site}register/")
    ready(page)
    marks = [{"place": 1, "name": "Ada Lark", "low": 3, "high": 3, "mistakes": []}]
    kept = {"paper": "7AB-CDE-FGH", "title": "Hall lighting", "group": "", "of": 10, "day": 20_000, "marks": marks}
    file = tmp_path / "register.json"
    file.write_text(json.dumps({"format": "phasor-folio register", "version": 1, "papers": [kept]}), encoding="utf-8")
    page.set_input_files("#f-register", file)
    expect(page.locator("table.register").first).to_contain_text("3 of 10")
    with page.expect_download() as download:
        page.click('[data-do="save-file"]')
    assert [kept] == json.loads(Path(download.value.path()).read_text("utf-8"))["papers"]
    file.write_text("nothing", encoding="utf-8")
    page.set_input_files("#f-register", file)
    expect(page.locator("[data-said]")).to_contain_text("Nothing has changed")
