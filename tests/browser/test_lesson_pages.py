"""Lesson plans and short pages as a visitor meets them: reached from every page, read on a phone, printed alone."""

import pypdfium2
import pytest
from playwright.sync_api import Page, expect

from pycore.words import lesson_plans, readings

PAGES = (*lesson_plans.PAGES, *readings.PAGES)


@pytest.mark.parametrize(("slug", "title"), PAGES)
def test_a_page_is_reached_from_the_front_page_and_fits_a_phone(page: Page, site: str, slug: str, title: str) -> None:
    page.set_viewport_size({"width": 390, "height": 844})
    page.goto(site)
    page.locator(f'.foot a[href="./{slug}/"]').click()
    expect(page.locator("h1")).to_have_text(title)
    assert 390 == page.evaluate("document.documentElement.scrollWidth")
    assert page.locator(f'.foot a[href="../{slug}/"]').count() == 1


@pytest.mark.parametrize(("slug", "title"), PAGES)
def test_what_is_printed_is_the_sheet_alone_and_the_short_pages_take_one_side(
    page: Page, site: str, slug: str, title: str
) -> None:
    page.goto(f"{site}{slug}/")
    document = pypdfium2.PdfDocument(page.pdf(format="A4"))
    assert len(document) == (1 if (slug, title) in readings.PAGES else 2)
    text = "".join(document[index].get_textpage().get_text_range() for index in range(len(document)))
    assert title in text
    for other in ("Class sets", "Licences", readings.HOW_TO_PRINT):
        assert other not in text


FURTHER = ["lesson-plan-open-neutral", "cover-lesson-series-circuit", "lesson-plan-two-wattmeters"]


@pytest.mark.parametrize("slug", FURTHER)
def test_a_topics_lesson_takes_two_sides_and_other_topics_stay_on_the_screen(page: Page, site: str, slug: str) -> None:
    page.set_viewport_size({"width": 390, "height": 844})
    page.goto(f"{site}{slug}/")
    assert 390 == page.evaluate("document.documentElement.scrollWidth")
    expect(page.get_by_role("link", name=lesson_plans.TO_TOPIC)).to_be_visible()
    document = pypdfium2.PdfDocument(page.pdf(format="A4"))
    assert 2 >= len(document)
    text = "".join(document[index].get_textpage().get_text_range() for index in range(len(document)))
    assert lesson_plans.OTHERS not in text and "60 minutes" in text


def test_the_line_on_the_ruler_is_92_mm_on_paper(page: Page, site: str) -> None:
    page.goto(f"{site}{readings.UNITS_SLUG}/")
    page.emulate_media(media="print")
    page.set_viewport_size({"width": 680, "height": 1000})
    drawn = page.evaluate("document.querySelector('.exact svg').getBoundingClientRect().width")
    # The drawing is 120 mm wide, its arrow 92 (tests/unit/test_lesson_pages.py).
    assert 120.0 == pytest.approx(drawn * 25.4 / 96, abs=0.05)


def test_a_lessons_link_opens_the_problem_sheet_with_two_phasors_drawn(page: Page, site: str) -> None:
    page.goto(f"{site}lesson-plan/")
    page.get_by_role("link", name="Problem sheet, two phasors drawn").click()
    expect(page.locator("html[data-python=ready][data-answer=fresh]")).to_have_count(1, timeout=60_000)
    expect(page.locator("[name=start]")).to_have_value("two")
    assert ["i1", "i2"] == page.eval_on_selector_all(
        "svg[data-sheet] [data-phasor]", "(all) => all.map((one) => one.dataset.phasor)"
    )
