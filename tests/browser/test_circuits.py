"""The pages of circuits and powers as a visitor meets them: values typed, answer, drawing, lesson, a fault."""

import math

import pytest
from browser.asking import result, wait_until
from playwright.sync_api import Page, expect

SERIES = {"r": "10", "l": "100 mH", "c": "100 uF", "supply": "230", "frequency": "50"}
PARALLEL = {"b1": "24", "b2": "j32", "b3": "", "supply": "240 V"}
POWER = {"power": "10 kW", "factor": "0.7", "target": "0,95", "voltage": "400"}
OMEGA = 2 * math.pi * 50
SERIES_CURRENT = 230 / math.hypot(10, OMEGA * 0.1 - 1 / (OMEGA * 100e-6))
PARALLEL_CURRENT = math.hypot(240 / 24, 240 / 32)
CORRECTION = 10_000 * (math.tan(math.acos(0.7)) - math.tan(math.acos(0.95)))
PAGES = [
    ("series-circuit", SERIES, "current", SERIES_CURRENT, "r", "ten"),
    ("parallel-circuit", PARALLEL, "current", PARALLEL_CURRENT, "b1", "0"),
    ("power-triangle", POWER, "correction", CORRECTION, "power", "10"),
]


@pytest.mark.parametrize(("slug", "typed", "name", "value", "field", "wrong"), PAGES, ids=[page[0] for page in PAGES])
def test_values_are_typed_answered_drawn_and_taught(page: Page, site: str, ready, answered, slug, typed, name, value,
                                                    field, wrong) -> None:  # fmt: skip
    page.goto(f"{site}{slug}/")
    ready(page)
    answered(page)
    for key, text in typed.items():
        page.fill(f"[name={key}]", text)
    answered(page)
    assert math.isclose(value, result(page, name), rel_tol=1e-8)
    companions = 0 if slug == "power-triangle" else 1
    assert companions == page.locator('svg[data-sheet] g[data-phasor="c1"] > line').first.count()
    page.fill(f"[name={field}]", wrong)
    wait_until(page, f"document.querySelector('[name={field}]').getAttribute('aria-invalid') === 'true'")
    expect(page.locator(f"#m-{field}")).to_be_visible()
    assert math.isclose(value, result(page, name), rel_tol=1e-8)
    page.fill(f"[name={field}]", typed[field])
    answered(page)
    page.click('[data-action="lesson"]')
    wait_until(page, "document.querySelector('.lesson-step') !== null", 60.0)
    expect(page.locator(".lesson-text")).to_contain_text("Choose the scale")


@pytest.mark.parametrize("slug", [page[0] for page in PAGES])
def test_without_scripts_the_example_stands_whole(open_page, site: str, slug: str) -> None:
    page = open_page(java_script_enabled=False, viewport={"width": 390, "height": 844})
    page.goto(f"{site}{slug}/")
    expect(page.locator('svg[data-view="phone"]')).to_be_visible()
    other = page.locator('details.working[data-working="formula"]')
    other.locator("summary").click()
    expect(other.locator(".formula").first).to_be_visible()
    assert 390 >= page.evaluate("document.documentElement.scrollWidth")
