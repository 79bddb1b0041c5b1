"""Drawn answers of a pile go into the answers of a question paper that the device keeps."""

import json
from collections.abc import Callable

from browser.asking import DESK, wait_until
from playwright.sync_api import Page, expect
from unit.test_pile_papers import PAPERS, paper, row

TYPED = "Bo Finch; 1; 9.9 A at 10"


def test_drawn_answers_are_added_to_the_paper_and_what_was_typed_stays(
    open_page: Callable[..., Page], site: str, ready
):
    page = open_page(viewport=DESK)
    page.goto(f"{site}licences.txt")
    code = str(paper().code())
    made = {**PAPERS[0], "id": "1", "code": code, "learners": 3, "day": 20000}
    kept = {
        "phasor-folio-pile": {"version": 1, "rows": [row(1, 1), row(1, 2), row(2, 2)]},
        "phasor-folio-papers": {"version": 1, "draft": None, "made": [made],
                                "answers": {f"{code} ": {"text": TYPED, "settled": []}}},
    }  # fmt: skip
    for key, value in kept.items():
        page.evaluate("([key, text]) => localStorage.setItem(key, text)", [key, json.dumps(value)])
    page.goto(f"{site}photographs/")
    ready(page)
    wait_until(page, "document.querySelectorAll('tr[data-kind=accepted]').length === 3", 20)
    expect(page.locator("table.pile")).to_contain_text("Ada Lark, question 1")
    expect(page.locator('.pile-actions [data-do="register"]')).to_be_hidden()
    page.click('[data-do="to-papers"]')
    expect(page.locator("[data-said]")).to_contain_text("2 drawn answers added. Left as they were typed: 1.")
    answers = json.loads(page.evaluate("localStorage.getItem('phasor-folio-papers')"))["answers"]
    lines = answers[f"{code} "]["text"].split("\n")
    assert lines[0] == TYPED and [line.split("; ")[:2] for line in lines[1:]] == [["Ada Lark", "1"], ["Bo Finch", "2"]]
