"""A college's settings in a browser: pages opened without a link start with them, a link shows what it always did."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from browser.asking import DESK, wait_until
from playwright.sync_api import Page, expect

from pycore.words import college as words

FRESH = "document.documentElement.dataset.answer === 'fresh'"
LINK = "neutral-current/#v=3&i1=9.2&i2=14.7&i3=6.5"


@pytest.fixture
def settings(open_page: Callable[..., Page], site: str, ready) -> Page:
    """The page of settings, with a comma and other names chosen and used."""
    page = open_page(viewport=DESK)
    page.goto(f"{site}{words.SLUG}/")
    ready(page)
    wait_until(page, FRESH, 30)
    expect(page.locator("[data-state]")).to_have_text(words.NONE)
    page.select_option("[name=decimal]", "comma")
    page.select_option("[name=names]", "ABC")
    page.fill("[name=marks-scale]", "4")
    page.fill("[name=college]", "Northgate College")
    expect(page.locator("[data-state]")).to_have_text(words.NOT_IN_USE, timeout=20_000)
    wait_until(page, FRESH, 30)
    page.click('[data-do="use"]')
    expect(page.locator("[data-state]")).to_have_text(words.IN_USE)
    return page


def opened(page: Page, address: str) -> Page:
    page.goto("about:blank")
    page.goto(address)
    wait_until(page, "document.documentElement.dataset.python === 'ready'", 60)
    wait_until(page, FRESH, 30)
    return page


def test_pages_start_with_the_settings_and_links_do_not(settings: Page, site: str):
    page = opened(settings, f"{site}neutral-current/")
    assert ("comma", "ABC") == (page.input_value("[name=decimal]"), page.input_value("[name=names]"))
    expect(page.locator('[data-region="answer"]').first).to_contain_text(",")
    linked = opened(page, f"{site}{LINK}")
    assert ("point", "L123") == (linked.input_value("[name=decimal]"), linked.input_value("[name=names]"))
    expect(linked.locator('[data-region="answer"]').first).to_contain_text("7.24")
    sets = opened(page, f"{site}class-set/")
    assert ("comma", "ABC") == (sets.input_value("[name=decimal]"), sets.input_value("[name=names]"))
    papers = opened(page, f"{site}question-papers/")
    assert ("Northgate College", "4", "4") == tuple(
        papers.input_value(f"[name={name}]") for name in ("college", "q1-marks-scale", "q3-marks-scale")
    )
    expect(papers.locator("[data-college-note]")).to_be_hidden()


def test_an_open_paper_says_in_what_it_differs_from_the_settings(settings: Page, site: str):
    page = opened(settings, f"{site}question-papers/#v=3&seed=77&college=Elsewhere&title=Hall")
    page.fill("[name=title]", "Hall lighting")
    wait_until(page, FRESH, 30)
    note = page.locator("[data-college-note]")
    expect(note).to_contain_text("differs from your college settings in: College, ")
    expect(note).to_contain_text("Scale")
    page.click('[data-do="use-college"]')
    expect(note).to_be_hidden(timeout=20_000)
    assert ("Northgate College", "comma", "4", "Hall lighting") == tuple(
        page.input_value(f"[name={name}]") for name in ("college", "decimal", "q2-marks-scale", "title")
    )
    page.fill("[name=college]", "Elsewhere")
    page.click('[data-do="new"]')
    expect(note).to_be_hidden(timeout=20_000)
    assert "Northgate College" == page.input_value("[name=college]")


def test_a_part_that_no_question_has_is_no_difference(settings: Page, site: str):
    """Where a college gives marks for values, a paper without such a question was called different in them."""
    opened(settings, f"{site}{words.SLUG}/")
    settings.fill("[name=marks-values]", "3")
    settings.click('[data-do="use"]')
    expect(settings.locator("[data-state]")).to_have_text(words.IN_USE)
    paper = "question-papers/#v=3&seed=77&questions=2&q1-topic={}&q2-topic=add-phasors"
    note = opened(settings, f"{site}{paper.format('neutral-current')}").locator("[data-college-note]")
    expect(note).to_contain_text("College")
    expect(note).not_to_contain_text("Values")
    expect(opened(settings, f"{site}{paper.format('series-circuit')}").locator("[data-college-note]")
           ).to_contain_text("Values")  # fmt: skip


def test_settings_go_to_a_colleague_by_link_and_file_and_can_be_given_up(settings: Page, site: str, tmp_path: Path):
    page = settings
    with page.expect_download() as download:
        page.click('[data-do="save"]')
    kept = json.loads(Path(download.value.path()).read_text("utf-8"))
    assert ("phasor-folio college settings", 1, "ABC") == (kept["format"], kept["version"], kept["chosen"]["names"])
    page.click('[data-do="stop-using"]')
    expect(page.locator("[data-state]")).to_have_text(words.NOT_IN_USE)
    other = opened(page, f"{site}neutral-current/")
    assert "point" == other.input_value("[name=decimal]")
    page = opened(page, f"{site}{words.SLUG}/#v=3&names=RYB")
    assert "RYB" == page.input_value("[name=names]")
    expect(page.locator("[data-state]")).to_have_text(words.NOT_IN_USE)
    file = tmp_path / "settings.json"
    file.write_text(json.dumps(kept), encoding="utf-8")
    page.set_input_files("#settings-file", file)
    expect(page.locator("[data-said]")).to_have_text(words.OPENED)
    assert ("ABC", "comma") == (page.input_value("[name=names]"), page.input_value("[name=decimal]"))
    file.write_text("[]", encoding="utf-8")
    page.set_input_files("#settings-file", file)
    expect(page.locator("[data-said]")).to_have_text(words.BAD_FILE)
    page.fill("[name=percent]", "much")
    expect(page.locator("#m-percent")).to_contain_text("much")
    assert page.locator('[data-do="use"]').is_disabled()
