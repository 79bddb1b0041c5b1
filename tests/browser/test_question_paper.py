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
    page.fill("#roll", ROLL)
    page.fill("[name=title]", "Hall lighting")
    wait_until(page, FRESH, 30)


def marked(page: Page, answers: str) -> None:
    """These answers, marked."""
    page.fill("#results", answers)
    page.click('[data-do="mark"]')
    expect(page.locator('[data-do="register"]')).to_be_visible(timeout=30_000)


def add(page: Page) -> None:
    """The marks put into the register, though some are missing."""
    page.click('[data-do="register"]')
    page.click('[data-do="add-anyway"]')
    expect(page.locator("[data-marks-said]")).to_have_text(mark_words.ADDED)


def register(page: Page, site: str) -> list[str]:
    """The lines of the register's first table."""
    page.goto(f"{site}register/")
    expect(page.locator("table.register").first).to_contain_text("Ada Lark", timeout=60_000)
    rows = page.locator("table.register").first.locator("tbody tr")
    return [" ".join(text.split()) for text in rows.all_inner_texts()]


def kept(page: Page, thing: str) -> dict:
    """What this device keeps of a thing."""
    return json.loads(page.evaluate(f"localStorage.getItem('phasor-folio-{thing}')"))


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
    expect(page.locator("[data-one-said]")).not_to_be_empty()
    assert "Another" == page.input_value("[name=title]")
    page.click("[data-kept-papers] summary")
    page.click('[data-do="open-kept"]')
    assert ("Hall lighting", ROLL) == (page.input_value("[name=title]"), page.input_value("#roll"))
    page.click('[data-do="back"]')
    assert ("Another", "") == (page.input_value("[name=title]"), page.input_value("#roll"))
    page.click("[data-kept-papers] summary")
    page.click('[data-do="erase-kept"]')
    expect(page.locator("[data-kept-papers]")).to_be_hidden()


def test_a_paper_that_was_erased_comes_back_with_its_answers(papers: Callable[..., Page]):
    """One press erased names and answers for ever."""
    page = papers()
    named(page)
    saved(page, "make")
    page.fill("[data-results]", "1; 7.5 A")
    kept = page.evaluate("localStorage.getItem('phasor-folio-papers')")
    page.click("[data-kept-papers] summary")
    page.click('[data-do="erase-kept"]')
    # The form still has the paper, and says so.
    expect(page.locator("[data-begun]")).to_have_text(words.PAPER_ERASED_SHOWN)
    left = page.evaluate("localStorage.getItem('phasor-folio-papers')")
    assert "7.5 A" in kept and "7.5 A" not in left
    page.click('[data-do="undo-kept"]')
    expect(page.locator("[data-kept-papers]")).to_contain_text("Hall lighting")
    assert json.loads(kept) == json.loads(page.evaluate("localStorage.getItem('phasor-folio-papers')"))
    assert page.is_hidden('[data-do="undo-kept"]')


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
        page.fill("[name=group]", group)
        page.fill("#roll", names)
        # The answer in view is that of the group before until the address has this one.
        wait_until(page, f"location.hash.includes('{group}') && {FRESH}", 30)
        saved(page, "make")
        page.fill("#results", f"{names}; 1; 3; 3")
        page.click('[data-do="mark"]')
        add(page)
    expect(page.locator("[data-kept-papers] li")).to_have_count(2)
    page.goto(f"{site}register/")
    expect(page.locator('[data-region="register"] > section')).to_have_count(2, timeout=60_000)


AT_ONCE = """([group, names, answers]) => {
    const put = (selector, text) => {
        const field = document.querySelector(selector);
        field.value = text;
        field.dispatchEvent(new Event("input", { bubbles: true }));
    };
    put("[name=group]", group);
    put("#roll", names);
    put("#results", answers);
    document.querySelector('[data-do="mark"]').click();
}"""


def test_a_group_that_is_typed_and_marked_at_once_keeps_its_marks_in_view(papers: Callable[..., Page]):
    """The answer to the new group's form came after the marks, and cleared them; the text was kept for the other."""
    page = papers()
    page.fill("[name=group]", "Tuesday")
    page.fill("#roll", "Ada Lark")
    wait_until(page, f"location.hash.includes('Tuesday') && {FRESH}", 30)
    saved(page, "make")
    page.fill("#results", "Ada Lark; 1; 3; 3")
    page.wait_for_timeout(500)
    page.evaluate(AT_ONCE, ["Thursday", "Ben Stone", "Ben Stone; 1; 4; 4"])
    expect(page.locator("[data-region=marks]")).to_contain_text("Ben Stone", timeout=30_000)
    wait_until(page, f"location.hash.includes('Thursday') && {FRESH}", 30)
    page.wait_for_timeout(1000)
    expect(page.locator("[data-region=marks]")).to_contain_text("Ben Stone")
    assert "Ben Stone; 1; 4; 4" == page.input_value("#results")
    kept = json.loads(page.evaluate("localStorage.getItem('phasor-folio-papers')"))["answers"]
    assert ["Ada Lark; 1; 3; 3", "Ben Stone; 1; 4; 4"] == sorted(one["text"] for one in kept.values())


def test_own_values_have_no_tier_and_those_of_a_link_no_method_to_choose(papers: Callable[..., Page], site: str):
    page = papers()
    for name in ("tier", "method"):
        expect(page.locator(f"[name=q1-{name}]").first).to_be_visible()
    page.evaluate("for (const one of document.querySelectorAll('main details')) one.open = true")
    page.fill("[name=q1-link]", f"{site}neutral-current/#v=3&i1=9.2&i2=14.7&i3=6.5")
    for name in ("tier", "method"):
        expect(page.locator(f"[name=q1-{name}]").first).to_be_hidden()
        expect(page.locator(f"[name=q2-{name}]").first).to_be_visible()
    page.fill("[name=q1-link]", "9.2; 14.7; 6.5")
    expect(page.locator("[name=q1-method]").first).to_be_visible()
    expect(page.locator("[name=q1-tier]").first).to_be_hidden()
    page.fill("[name=q1-link]", "")
    expect(page.locator("[name=q1-tier]").first).to_be_visible()


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
    expect(other.locator("[data-begun]")).to_have_text(words.OPENED)
    assert ("Hall lighting", "77") == (other.input_value("[name=title]"), other.input_value("[name=seed]"))


@pytest.mark.parametrize("screen", [DESK, PHONE])
def test_marks_go_into_the_register_and_a_paper_can_be_taken_out(papers: Callable[..., Page], site: str, screen: dict):
    page = papers(screen=screen)
    named(page)
    page.fill("#results", "Ada Lark; 1; 3; 3\nNobody; 1; 3; 3")
    page.click('[data-do="mark"]')
    expect(page.locator('[data-region="marks"]')).to_contain_text("1 answer marked. 1 line could not be used.")
    page.click('[data-do="register"]')
    expect(page.locator("[data-ask]")).to_contain_text("Lines that could not be used: 1.")
    expect(page.locator("[data-ask]")).to_contain_text("not marked yet: 5.")
    page.click('[data-do="add-not"]')
    add(page)
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


def test_one_question_marked_again_leaves_the_others_and_is_asked_before(papers: Callable[..., Page], site: str):
    page = papers("#v=3&seed=77&questions=2")
    named(page)
    page.fill("[name=date]", "7 Dec 2026")
    head = "Name; Question; Marks decided"
    marked(page, f"{head}\nAda; 1; 9\nAda; 2; 8\nBen; 1; 4\nBen; 2; 3")
    page.click('[data-do="register"]')
    expect(page.locator("[data-marks-said]")).to_have_text(mark_words.ADDED)
    marked(page, f"{head}\nAda; 1; 7")
    page.click('[data-do="register"]')
    expect(page.locator("[data-ask]")).to_contain_text("Ada Lark, question 1: 9 becomes 7.")
    expect(page.locator("[data-ask]")).not_to_contain_text("not marked yet")
    page.click('[data-do="add-anyway"]')
    lines = register(page, site)
    assert any("Ada Lark" in line and "15 of 20" in line and "75 %" in line for line in lines)
    assert any("Ben Stone" in line and "7 of 20" in line for line in lines)
    expect(page.locator("table.register thead").first).to_contain_text("7 Dec 2026")
    assert 20_794 == kept(page, "register")["papers"][0]["day"]


def test_marks_that_an_earlier_version_kept_are_not_lost_unasked(papers: Callable[..., Page], site: str):
    page = papers("#v=3&seed=77&questions=2")
    named(page)
    code = page.locator(".which strong").inner_text()
    old = {"place": 1, "name": "Ada Lark", "low": 17, "high": 17, "mistakes": []}
    entry = {"paper": code, "title": "Hall lighting", "group": "", "of": 20, "day": 20_000, "marks": [old]}
    page.evaluate(
        "(text) => localStorage.setItem('phasor-folio-register', text)", json.dumps({"version": 1, "papers": [entry]})
    )
    marked(page, "Name; Question; Marks decided\nAda; 1; 7")
    page.click('[data-do="register"]')
    expect(page.locator("[data-ask]")).to_contain_text("Ada Lark: 17 of the whole paper")
    page.click('[data-do="add-not"]')
    assert any("17 of 20" in line for line in register(page, site))


def test_answers_belong_to_their_paper(papers: Callable[..., Page]):
    page = papers("")
    named(page)
    seed = page.input_value("[name=seed]")
    marked(page, "Ada; 1; 3; 3")
    page.click('[data-do="new"]')
    expect(page.locator("[data-begun]")).to_have_text(words.BEGUN, timeout=20_000)
    expect(page.locator("#results")).to_have_value("")
    expect(page.locator('[data-region="marks"]')).to_be_empty()
    expect(page.locator('[data-do="register"]')).to_be_hidden()
    assert seed != page.input_value("[name=seed]")
    assert (ROLL, words.DEFAULT_TITLE) == (page.input_value("#roll"), page.input_value("[name=title]"))
    page.fill("#results", "Ben; 2; 5; 5")
    page.click("[data-kept-papers] summary")
    page.click('[data-do="open-kept"]')
    expect(page.locator("#results")).to_have_value("Ada; 1; 3; 3", timeout=20_000)
    assert (seed, "Hall lighting") == (page.input_value("[name=seed]"), page.input_value("[name=title]"))
    page.click('[data-do="back"]')
    expect(page.locator("#results")).to_have_value("Ben; 2; 5; 5", timeout=20_000)
    page.reload()
    expect(page.locator("#results")).to_have_value("Ben; 2; 5; 5", timeout=60_000)
    page.click("[data-kept-papers] summary")
    page.click('[data-do="mark-kept"] >> nth=-1')
    expect(page.locator("#results")).to_have_value("Ada; 1; 3; 3", timeout=20_000)
    wait_until(page, "document.activeElement.id === 'mark-papers'", 20)


def test_the_same_questions_get_other_values(papers: Callable[..., Page]):
    page = papers("")
    named(page)
    saved(page, "make")
    before = page.locator(".which strong").inner_text()
    page.select_option("[name=q3-tier]", "stretch")
    expect(page.locator("[data-same-number]")).to_contain_text(before, timeout=20_000)
    page.click('[data-do="other-values"]')
    expect(page.locator("[data-begun]")).to_have_text(words.OTHER_VALUES_SAID, timeout=20_000)
    expect(page.locator("[data-same-number]")).to_be_hidden()
    assert ("Hall lighting", "stretch") == (page.input_value("[name=title]"), page.input_value("[name=q3-tier]"))
    assert 2 == len({one["form"]["seed"] for one in kept(page, "papers")["made"]} | {page.input_value("[name=seed]")})


def test_what_an_earlier_version_kept_opens_with_its_answers(papers: Callable[..., Page], site: str):
    """`answers` was one text for whatever paper stood there."""
    page = papers("#v=3&seed=77")
    form = page.evaluate("Object.fromEntries([...document.forms.problem.elements].map((one) => [one.name, one.value]))")
    paper = {"form": form, "roll": ROLL, "links": []}
    made = {**paper, "code": page.locator(".which strong").inner_text(), "learners": 2, "day": 20_000, "id": "1"}
    old = {"version": 1, "draft": paper, "made": [made], "answers": "Ada Lark; 1; 3; 3"}
    page.evaluate("(text) => localStorage.setItem('phasor-folio-papers', text)", json.dumps(old))
    page.goto("about:blank")
    page.goto(f"{site}{words.SLUG}/")
    expect(page.locator("#results")).to_have_value("Ada Lark; 1; 3; 3", timeout=60_000)
    expect(page.locator("[data-kept-count]")).to_have_text("1")
    page.goto(f"{site}this-device/")
    row = page.locator("li", has_text="Answers to question papers").first
    expect(row).to_contain_text("Lines: 1.")
    row.get_by_role("button", name="Erase").click()
    assert {} == kept(page, "papers").get("answers", {})
    assert ["1"] == [one["id"] for one in kept(page, "papers")["made"]]


def test_marks_are_chosen_from_a_range_by_a_press(papers: Callable[..., Page]):
    page = papers("#v=3&seed=77")
    named(page)
    marked(page, "Ada; 1; 3; 5.87")
    group = page.locator(".settle").first
    most = group.locator("button").last
    number = most.inner_text()
    most.click()
    chosen = page.locator('.settle [aria-pressed="true"]')
    expect(chosen).to_have_text(number, timeout=20_000)
    expect(page.locator(".paper-marks.totals")).to_contain_text(f"{number} of 10 marked")
    page.reload()
    wait_until(page, FRESH, 60)
    page.click('[data-do="mark"]')
    expect(chosen).to_have_text(number, timeout=20_000)
    chosen.click()
    expect(page.locator(".paper-marks.totals")).to_contain_text(" to ", timeout=20_000)


def test_marks_are_chosen_by_part(papers: Callable[..., Page]):
    """Of a range a part can be chosen alone; it is kept, and the same press gives it back."""
    page = papers("#v=3&seed=77")
    named(page)
    marked(page, "Ada; 1; 3; 5.87")
    page.click(".by-part summary")
    group = page.locator('.settle[data-part="method"]')
    group.locator("button").nth(1).click()
    chosen = page.locator('.settle[data-part] [aria-pressed="true"]')
    expect(page.locator(".paper-marks.lines")).to_contain_text("method 1 of 2", timeout=20_000)
    expect(chosen).to_have_text("1")
    page.reload()
    wait_until(page, FRESH, 60)
    page.click('[data-do="mark"]')
    expect(chosen).to_have_text("1", timeout=20_000)
    chosen.click()
    expect(page.locator(".paper-marks.lines")).to_contain_text("method 0 to 2 of 2", timeout=20_000)
    assert [] == next(iter(kept(page, "papers")["answers"].values()))["settled"]


def test_the_parts_of_a_line_stay_open_while_marks_are_chosen(papers: Callable[..., Page]):
    """Each press closed them, and the keyboard was back at the beginning."""
    page = papers("#v=3&seed=77")
    named(page)
    marked(page, "Ada; 1; 3; 5.87\nBen; 1; 3; 5.87")
    page.locator(".by-part summary").first.click()
    page.locator(".by-part summary").last.click()
    method = page.locator('.settle[data-place="1"][data-part="method"]')
    method.locator("button").nth(1).click()
    expect(page.locator(".paper-marks.lines")).to_contain_text("method 1 of 2", timeout=20_000)
    assert [True, True] == page.eval_on_selector_all(".by-part", "(all) => all.map((one) => one.open)")
    expect(method.locator("button").nth(1)).to_be_focused()
    method.locator("button").nth(2).click()
    expect(page.locator(".paper-marks.lines")).to_contain_text("method 2 of 2", timeout=20_000)


def test_marks_for_values_follow_the_calculator_of_a_link(papers: Callable[..., Page]):
    """They stood at every link, and those of the neutral current were dropped."""
    page = papers("#v=3&seed=77&questions=1&q1-topic=neutral-current")
    page.click("[data-parts-of='1']")
    values = page.locator("#f-q1-marks-values")
    page.fill("#f-q1-link", "https://example.org/series-circuit/?x=1#v=3&r=10&l=0.1&c=100+µF&supply=2+A&frequency=50")
    expect(values).to_be_visible()
    page.fill("#f-q1-link", "/neutral-current/#v=3&i1=9.2&i2=14.7&i3=6.5")
    expect(values).to_be_hidden()


def test_values_have_marks_only_where_they_are_calculated_before_they_are_drawn(papers: Callable[..., Page]):
    page = papers("#v=3&seed=77&questions=2&q1-topic=series-circuit&q2-topic=neutral-current")
    page.click("[data-parts-of='1']")
    page.click("[data-parts-of='2']")
    expect(page.locator("#f-q1-marks-values")).to_be_visible()
    expect(page.locator("#f-q2-marks-values")).to_be_hidden()
    page.fill("#f-q1-marks-values", "3")
    expect(page.locator("[data-parts-of='1']")).to_contain_text("values\u00a03", timeout=20_000)
    expect(page.locator("[data-total-of='1']")).to_have_text("13 marks")


def test_a_refused_line_is_shown_among_the_answers(papers: Callable[..., Page]):
    page = papers("#v=3&seed=77")
    named(page)
    marked(page, "Ada; 1; 3; 3\nBen; 9; 7; 3")
    page.click('[data-do="show-line"]')
    selected = page.evaluate("(({ value, selectionStart: a, selectionEnd: b }) => value.slice(a, b))(results)")
    assert "Ben; 9; 7; 3" == selected


def test_only_the_marks_of_what_is_asked_are_shown(papers: Callable[..., Page]):
    page = papers("#v=3&seed=77")
    page.click('[data-question="1"] details:nth-of-type(1) summary')
    expect(page.locator('[data-total-of="1"]')).to_have_text("10 marks")
    page.select_option("[name=q1-asks]", "calculation")
    expect(page.locator("[name=q1-marks-scale]")).to_be_hidden()
    expect(page.locator("[name=q1-marks-method]")).to_be_visible()
    expect(page.locator('[data-total-of="1"]')).to_have_text("3 marks", timeout=20_000)


def pasted(page: Page, text: str) -> None:
    """A table pasted among the answers, as a person does it."""
    page.evaluate(
        """(text) => {
            const area = document.querySelector("#results");
            const data = new DataTransfer();
            data.setData("text", text);
            area.dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, bubbles: true }));
            area.value = text;
            area.dispatchEvent(new InputEvent("input", { bubbles: true, inputType: "insertFromPaste" }));
        }""",
        text,
    )
    expect(page.locator('[data-do="register"]')).to_be_visible(timeout=60_000)


def test_a_lecturers_evening_takes_fewer_than_20_decisions(papers: Callable[..., Page], site: str):
    """Four questions for 12 learners, one of them with values of the lecturer's own, made, marked from the table of a
    form, in the register, one paper made again, the mistakes of the class seen: each press and each field is one."""
    page = papers("")
    first = ("Ada", "Ben", "Cleo", "Dev", "Erin", "Faruk", "Gia", "Hanna", "Ivan", "Jack", "Kofi", "Lara")
    names = [f"{name} Reed" for name in first]
    heads = ("Time", "Your name", "Q1 drawn", "Q2 drawn", "Q2 calculated", "Q3 drawn", "Q3 calculated", "Q4 drawn",
             "Q4 calculated")  # fmt: skip
    own = ("10.4 A at 90 anticlockwise", "10.39 A at 90 anticlockwise")
    rows = [("18:00", name, "5 A at 30", "9 V", "9 V", "1.2 kvar", "1.2 kvar", *own) for name in names]
    rows[3] = (*rows[3][:7], "14.0 A at 38 clockwise", own[1])  # it stops at the first diagonal
    table = "\n".join("\t".join(row) for row in (heads, *rows))
    steps: list[Callable[[], object]] = [
        lambda: page.fill("[name=group]", "EL2-B"),
        lambda: page.select_option("[name=q1-asks]", "drawing"),
        lambda: page.select_option("[name=q2-topic]", "series-circuit"),
        lambda: page.click('[data-do="add"]'),
        lambda: page.fill("[name=q4-link]", "16; 10; 22"),
        lambda: page.fill("#roll", "\n".join(names)),
        lambda: saved(page, "make"),
        lambda: saved(page, "scheme"),
        lambda: page.click('[data-do="to-marks"]'),
        lambda: pasted(page, table),
        lambda: page.click('[data-do="settle-all"][data-end="least"]'),
        lambda: page.click('[data-do="register"]'),
        lambda: page.fill("#which", "Dev"),
        lambda: saved(page, "one"),
    ]
    for step in steps:
        step()
        wait_until(page, f"{FRESH} && {IDLE}", 60)
    expect(page.locator("[data-marks-said]")).to_have_text(mark_words.ADDED)
    expect(page.locator(".tally")).to_contain_text("a phasor left out")
    assert len(steps) + 2 <= 16  # to open the page and the register are two more
    page.goto(f"{site}register/")
    expect(page.locator("table.register").first).to_contain_text("Lara Reed", timeout=60_000)
    expect(page.locator("table.register").first).not_to_contain_text("not marked yet")
    expect(page.locator("table.register").first).not_to_contain_text(" to ")


def test_marks_that_are_ranges_go_into_the_register_without_asking_and_are_chosen_there_later(
    papers: Callable[..., Page], site: str
):
    """A question had to be answered before every register, and again when a range was chosen from."""
    page = papers("#v=3&seed=77&questions=1")
    page.fill("#roll", ROLL)
    marked(page, "Ada; 1; 3; 5.87\nBen; 1; 3; 5.87")
    page.click('[data-do="register"]')
    expect(page.locator("[data-marks-said]")).to_have_text(mark_words.ADDED_OPEN)
    page.click('[data-do="settle-all"][data-end="most"]')
    expect(page.locator('.settle [aria-pressed="true"]')).to_have_count(2, timeout=20_000)
    page.click('[data-do="register"]')
    expect(page.locator("[data-marks-said]")).to_have_text(mark_words.ADDED)
    assert not [row for row in register(page, site) if " to " in row]


def test_a_page_that_is_only_looked_at_keeps_no_paper(papers: Callable[..., Page], site: str, ready):
    """An empty paper was kept as soon as the page was opened, and listed "With names"."""
    page = papers("")
    page.wait_for_timeout(600)
    assert page.evaluate("localStorage.getItem('phasor-folio-papers')") is None
    page.fill("[name=title]", "Hall lighting")
    wait_until(page, f"{FRESH} && localStorage.getItem('phasor-folio-papers') !== null", 20)
    page.goto(f"{site}this-device/")
    expect(page.locator("[data-kept-rows]")).to_contain_text("Without names.", timeout=20_000)
    expect(page.locator("[data-kept-rows]")).not_to_contain_text("With names.")


def test_a_paper_that_was_made_as_it_came_stands_there_again(papers: Callable[..., Page], site: str, ready):
    page = papers("")
    saved(page, "make")
    code = page.locator('[data-region="paper"] .which').inner_text()
    page.goto(f"{site}register/")
    page.goto(f"{site}{words.SLUG}/")
    ready(page)
    wait_until(page, FRESH, 30)
    assert code == page.locator('[data-region="paper"] .which').inner_text()


def test_a_drawing_alone_has_no_page_of_lines(papers: Callable[..., Page]):
    page = papers("")
    page.select_option("[name=q1-asks]", "drawing")
    expect(page.locator("[name=q1-working]")).to_have_value("none")
    page.select_option("[name=q1-asks]", "both")
    expect(page.locator("[name=q1-working]")).to_have_value("lines")


def test_space_for_working_that_was_chosen_by_hand_stays(papers: Callable[..., Page]):
    """It came back with any change of what is asked, and after another paper was opened."""
    page = papers("")
    space, asks = page.locator("[name=q1-working]"), page.locator("[name=q1-asks]")
    space.select_option("none")
    for asked in ("calculation", "both", "drawing", "both"):
        asks.select_option(asked)
        expect(space).to_have_value("none")
    space.select_option("lines")
    asks.select_option("drawing")
    page.click('[data-do="down"][data-of="1"]')
    page.select_option("[name=q2-asks]", "both")
    expect(page.locator("[name=q2-working]"), "it goes with its question").to_have_value("lines")
    asks.select_option("drawing")
    space.select_option("squares")
    space.select_option("none")
    asks.select_option("calculation")
    expect(space, "taken over by hand").to_have_value("none")
    space.select_option("lines")
    asks.select_option("drawing")
    page.evaluate("location.hash = '#v=3&seed=78&q1-working=none'")
    expect(asks).to_have_value("both")
    asks.select_option("calculation")
    expect(space, "of another paper").to_have_value("none")


def test_space_for_working_that_the_page_took_away_comes_back_after_a_reload(papers: Callable[..., Page], ready):
    """The page no longer knew that nobody had chosen it; what was chosen by hand still stays."""
    page = papers("")
    page.click('[data-do="add"]')
    page.select_option("[name=q1-asks]", "drawing")
    page.select_option("[name=q2-asks]", "drawing")
    page.select_option("[name=q2-working]", "squares")
    page.select_option("[name=q2-working]", "none")
    wait_until(page, "location.hash.includes('q2-working=none')", 30)
    wait_until(page, FRESH, 30)
    page.reload()
    ready(page)
    wait_until(page, FRESH, 30)
    for number, space in ((1, "lines"), (2, "none")):
        expect(page.locator(f"[name=q{number}-working]")).to_have_value("none")
        page.select_option(f"[name=q{number}-asks]", "both")
        expect(page.locator(f"[name=q{number}-working]")).to_have_value(space)


def test_which_values_are_typed_follows_the_topic(papers: Callable[..., Page]):
    page = papers("")
    example = page.locator('[data-question="1"] [data-own-example]')
    expect(example).to_contain_text("L1; L2; L3")
    page.select_option("[name=q1-topic]", "series-circuit")
    expect(example).to_contain_text("30 Ω; 0.2 H; 100 µF; 230 V; 50\u00a0Hz")
    page.fill("[name=q1-link]", "40; 100 mH")
    expect(page.locator("#m-q1-link")).to_contain_text("2 typed")
