"""The print set-up as a visitor meets it: readings kept and applied to every print, a card for true size, refusals."""

import io
import json
import math
import time
from collections.abc import Callable
from pathlib import Path

import pypdfium2
import pytest
from browser.asking import show_more
from browser.test_page_access import violations
from browser.test_print import TOLERANCE, arrows, off, straight_lines
from making.policy import PAGE_POLICY
from playwright.sync_api import Page, expect

SLUG = "print-setup"
SCREENS = {"phone": {"width": 390, "height": 844}, "desk": {"width": 1920, "height": 1080}}
KEY = "phasor-folio"
DENIED = """Object.defineProperty(window, "localStorage", {
  get() { throw new DOMException("refused", "SecurityError"); },
});"""
UPRIGHT, LEVEL = "248.25", "170.5"
ALONG, ACROSS = 250 / 248.25, 170 / 170.5


def wait_until(page: Page, expression: str, seconds: float = 10.0) -> None:
    """Poll from outside: waiting inside the page is refused by its policy."""
    end = time.monotonic() + seconds
    while not page.evaluate(expression):
        assert time.monotonic() < end, f"not within {seconds} s: {expression}"
        time.sleep(0.02)


def kept(page: Page) -> dict:
    """What the device keeps."""
    return json.loads(page.evaluate("key => localStorage.getItem(key)", KEY) or "{}")


def printed(page: Page, target: Path) -> list:
    """The straight lines of the page as the browser prints it, which is one sheet."""
    page.pdf(prefer_css_page_size=True, path=target)
    document = pypdfium2.PdfDocument(target)
    assert 1 == len(document)
    document.close()
    return straight_lines(target)


def stretched(line: tuple, across: float, up: float, size: tuple[float, float]) -> list[float]:
    """A line of the sheet, stretched about the page's centre."""
    middles, factors = (size[0] / 2, size[1] / 2) * 2, (across, up) * 2
    return [m + (x - m) * f for x, m, f in zip(line, middles, factors, strict=True)]


@pytest.fixture(params=list(SCREENS))
def opened(request, open_page: Callable[..., Page], site: str, ready, answered) -> Page:
    """The set-up on a phone and on a desk, its Python ready."""
    touch = request.param == "phone"
    page = open_page(viewport=SCREENS[request.param], has_touch=touch, accept_downloads=True)
    page.goto(f"{site}{SLUG}/")
    ready(page)
    answered(page)
    return page


def read(page: Page, upright: str, level: str, state: str = "fresh") -> None:
    """Type both readings, and wait until the page has answered them."""
    page.fill("[name=upright]", upright)
    page.fill("[name=level]", level)
    wait_until(page, f"document.documentElement.dataset.answer === '{state}'")


def keep(page: Page) -> None:
    """Type readings and keep what follows."""
    read(page, UPRIGHT, LEVEL)
    page.click("[data-do=keep-printer]")
    wait_until(page, "document.querySelector('[data-region=kept]').textContent.includes('along')")


def open_sheet(page: Page, site: str, ready, answered, more: str = "") -> None:
    page.goto(f"{site}neutral-current/#v=1&i1=18.4&i2=11.2&i3=24.6{more}")
    ready(page)
    answered(page)


def test_readings_become_a_correction_that_is_kept_and_can_be_forgotten(opened: Page) -> None:
    expect(opened.locator("[data-region=kept]")).to_contain_text("No correction is saved")
    read(opened, "24,825 cm", "170,5")
    expect(opened.locator("[data-region=result]")).to_contain_text("+0.7")
    assert {} == kept(opened), "nothing is kept before it is asked for"
    keep(opened)
    found = kept(opened)
    assert 1 == found["version"]
    assert (ALONG, ACROSS) == pytest.approx((found["printer"]["along"], found["printer"]["across"]), rel=1e-12)
    assert ("", "corrected") == (opened.input_value("[name=upright]"), opened.input_value("[name=printed]"))
    expect(opened.locator("[data-printer-said]")).to_contain_text("print the corrected sheet")
    opened.reload()
    wait_until(opened, "document.querySelector('[data-region=kept]').textContent.includes('+0.7')")
    opened.click("[data-do=forget-printer]")
    expect(opened.locator("[data-region=kept]")).to_contain_text("No correction is saved")
    assert opened.evaluate("key => localStorage.getItem(key)", KEY) is None
    assert "" == opened.evaluate("location.hash")


def test_the_second_print_verifies_or_refines(opened: Page) -> None:
    keep(opened)
    read(opened, "250.1", "170")
    expect(opened.locator("[data-region=result]")).to_contain_text("Both bars are exact")
    assert 0 == opened.locator("[data-do=keep-printer]").count()
    read(opened, "249.5", "170")
    opened.click("[data-do=keep-printer]")
    wait_until(opened, f"JSON.parse(localStorage.getItem('{KEY}')).printer.along > {ALONG + 1e-4}")
    assert ALONG * 250 / 249.5 == pytest.approx(kept(opened)["printer"]["along"], rel=1e-12)


@pytest.mark.parametrize("orientation", ["landscape", "portrait"])
def test_every_print_and_pdf_of_a_sheet_is_corrected(
    opened: Page, site: str, ready, answered, tmp_path: Path, orientation: str
) -> None:
    keep(opened)
    open_sheet(opened, site, ready, answered, f"&paper=A4&orientation={orientation}")
    show_more(opened)
    expect(opened.locator("[data-corrected]")).to_contain_text("+0.7 % along, −0.3 % across")
    size, factors = ((297, 210), (ALONG, ACROSS)) if orientation == "landscape" else ((210, 297), (ACROSS, ALONG))
    drawn = arrows(opened)
    wait_until(opened, "document.documentElement.dataset.answer === 'fresh'")
    with opened.expect_download() as download:
        opened.click("[data-action=pdf]")
    download.value.save_as(tmp_path / "saved.pdf")
    for lines in (printed(opened, tmp_path / "print.pdf"), straight_lines(tmp_path / "saved.pdf")):
        for name, arrow in drawn.items():
            wanted = stretched(arrow, *factors, size)
            found = min(lines, key=lambda line, wanted=wanted: off(wanted, line))
            assert off(wanted, found) < TOLERANCE, name
            assert math.dist(wanted[:2], wanted[2:]) == pytest.approx(math.dist(found[:2], found[2:]), abs=TOLERANCE)


def test_without_a_set_up_every_print_is_true(page: Page, site: str, ready, answered, tmp_path: Path) -> None:
    open_sheet(page, site, ready, answered)
    expect(page.locator("[data-corrected]")).to_be_hidden()
    show_more(page)
    expect(page.locator("[data-set-up-link]")).to_be_visible()
    assert "none" == print_transform(page)
    lines = printed(page, tmp_path / "print.pdf")
    assert max(min(off(arrow, line) for line in lines) for arrow in arrows(page).values()) < TOLERANCE


def print_transform(page: Page) -> str:
    """How the sheet's drawing is stretched on paper."""
    page.emulate_media(media="print")
    found = page.evaluate("getComputedStyle(document.querySelector('svg[data-sheet]')).transform")
    page.emulate_media(media="null")  # not "screen", which would then be printed
    return found


def test_the_set_up_sheet_is_printed_true_until_its_corrected_one_is_chosen(opened: Page, tmp_path: Path) -> None:
    keep(opened)
    for choice, factor in (("plain", 1.0), ("corrected", ALONG)):
        opened.select_option("[name=printed]", choice)
        wait_until(opened, f"document.querySelectorAll('[data-uncorrected]').length === {int(choice == 'plain')}")
        wait_until(opened, "document.documentElement.dataset.answer === 'fresh'")
        lines = printed(opened, tmp_path / f"{choice}.pdf")
        strokes = [line for line in lines if abs(line[1] - line[3]) < 0.01 and 4 < abs(line[2] - line[0]) < 5]
        heights = sorted({round(line[1], 2) for line in strokes})
        assert 250 * factor == pytest.approx(heights[-1] - heights[0], abs=TOLERANCE)


UNUSABLE = (
    ("abc", "170", "not a number"), ("40 %", "170", "per cent"), ("0", "170", "is 0"), ("-3", "170", "is negative"),
    ("170", "250", "swapped"), ("231", "157", "scaling"),
)  # fmt: skip


def test_readings_that_cannot_be_used_leave_the_last_correction(opened: Page) -> None:
    keep(opened)
    before = kept(opened)
    opened.select_option("[name=printed]", "plain")
    assert not opened.locator("#scaling").evaluate("(part) => part.open")
    for upright, level, said in UNUSABLE:
        read(opened, upright, level, "old")
        expect(opened.locator('[data-message-for="upright"]')).to_contain_text(said)
        assert "true" == opened.get_attribute("[name=upright]", "aria-invalid")
        expect(opened.locator("[data-region=result]")).to_contain_text("The saved correction is unchanged")
        assert 0 == opened.locator("[data-do=keep-printer]").count()
        assert before == kept(opened)
    assert "scaling" == said
    assert opened.locator("#scaling").evaluate("(part) => part.open"), "how to switch it off stands there"


def test_half_a_number_is_not_judged_and_a_hasty_keep_waits_for_the_answer(opened: Page) -> None:
    read(opened, UPRIGHT, LEVEL)
    opened.fill("[name=upright]", "2")
    opened.fill("[name=upright]", "249")
    opened.locator("[data-do=keep-printer]").dispatch_event("click")
    wait_until(opened, f"localStorage.getItem('{KEY}') !== null")
    assert 250 / 249 == pytest.approx(kept(opened)["printer"]["along"], rel=1e-12)
    assert not opened.locator("#scaling").evaluate("(part) => part.open")


def test_an_offer_puts_the_readings_right(opened: Page) -> None:
    read(opened, "170.5", "248.25", "old")
    opened.click("[data-message-for=upright] [data-set]")
    wait_until(opened, "document.documentElement.dataset.answer === 'fresh'")
    assert ("248.25", "170.5") == (opened.input_value("[name=upright]"), opened.input_value("[name=level]"))


def test_another_paper_brings_its_own_bars_and_its_pdf(opened: Page, tmp_path: Path) -> None:
    opened.select_option("[name=paper]", "letter")
    opened.select_option("[name=orientation]", "landscape")
    bars = opened.locator("[data-region=bars]")
    expect(bars).to_contain_text("vertical bar of 180 mm and a horizontal bar of 240 mm")
    assert "letterl" == opened.get_attribute(".paper", "data-page")
    with opened.expect_download() as download:
        opened.click("[data-do=pdf]")
    document = pypdfium2.PdfDocument(io.BytesIO(Path(download.value.path()).read_bytes()))
    assert (279.4, 215.9) == pytest.approx([side * 25.4 / 72 for side in document[0].get_size()], abs=0.001)
    document.close()


def test_where_storage_is_refused_it_works_until_the_page_is_closed_and_says_so(
    open_page: Callable[..., Page], site: str, ready, answered
) -> None:
    page = open_page(viewport=SCREENS["phone"])
    page.add_init_script(DENIED)
    page.goto(f"{site}{SLUG}/")
    ready(page)
    answered(page)
    expect(page.locator("[data-device-said]")).to_contain_text("does not store data for this site")
    keep(page)
    answered(page)
    assert "none" != print_transform(page)
    page.click("[data-do=keep-screen]")
    open_sheet(page, site, ready, answered)
    expect(page.locator("[data-corrected]")).to_be_hidden()
    assert "none" == print_transform(page)


PRINTER = {"along": 1, "across": 1, "edge": "short", "lead": 210}
UNREADABLE = (
    "{", "[]", "null", '"x"', '{"version":2}', '{"version":1,"printer":{"along":1.4}}',
    json.dumps({"version": 1, "printer": {**PRINTER, "pages": {"a4l": [9, 1]}}}),
    json.dumps({"version": 1, "printer": {**PRINTER, "pages": {"a4l);x:url(": [1, 1]}}}),
    json.dumps({"version": 1, "printer": {**PRINTER, "pages": {}}}),
    '{"version":1,"screen":{"pxPerMm":"4","pixelRatio":1}}', '{"version":1,"screen":{"pxPerMm":1e9,"pixelRatio":1}}',
)  # fmt: skip


def test_what_was_kept_and_cannot_be_read_is_left_out(page: Page, site: str, ready, answered) -> None:
    for text in UNREADABLE:
        page.goto(site)
        page.evaluate("([key, text]) => localStorage.setItem(key, text)", [KEY, text])
        page.goto(f"{site}{SLUG}/")
        expect(page.locator("[data-device-said]")).to_contain_text("could not be read")
        expect(page.locator("[data-screen-said]")).to_contain_text("No size is saved")
        assert "" == (page.get_attribute("html", "style") or ""), text
    ready(page)
    answered(page)
    expect(page.locator("[data-region=kept]")).to_contain_text("No correction is saved")
    keep(page)
    expect(page.locator("[data-device-said]")).to_be_hidden()
    assert "printer" in kept(page)


def calibrate(page: Page, presses: int) -> float:
    """Press the larger button some times and keep; gives CSS pixels per millimetre."""
    for _ in range(presses):
        page.click('[data-step="1"]')
    page.click("[data-do=keep-screen]")
    return kept(page)["screen"]["pxPerMm"]


def test_a_card_on_the_glass_sets_the_true_size_of_every_sheet(opened: Page, site: str, ready, answered) -> None:
    scale = calibrate(opened, 5)
    card = opened.evaluate("(({width, height}) => [width, height])("
                           "document.querySelector('[data-card]').getBoundingClientRect())")  # fmt: skip
    assert sorted((53.98 * scale, 85.6 * scale)) == pytest.approx(sorted(card), abs=0.05)
    open_sheet(opened, site, ready, answered, "&orientation=landscape")
    before = arrows(opened)
    show_more(opened)
    opened.click("[data-true-size-switch]")
    box = opened.locator("svg[data-sheet]").bounding_box()
    assert (297 * scale, 210 * scale) == pytest.approx((box["width"], box["height"]), abs=0.1)
    scroller = opened.locator(".paper-scroll").bounding_box()
    width = opened.viewport_size["width"]
    assert scroller["x"] >= 0 and scroller["x"] + scroller["width"] <= width
    assert scroller["height"] <= opened.viewport_size["height"]
    assert opened.evaluate("document.documentElement.scrollWidth") <= width
    length = opened.evaluate("""(() => {
      const line = document.querySelector('svg[data-sheet] [data-phasor="i1"] > line').getBoundingClientRect();
      return Math.hypot(line.width, line.height);
    })()""")
    true = next(end for name, end in before.items() if name.startswith("i1"))
    assert math.dist(true[:2], true[2:]) * scale == pytest.approx(length, abs=0.2)
    expect(opened.locator("[data-true-size-bar]")).to_contain_text("Lay your paper on the screen")
    opened.locator("[data-true-size-bar] button").click()
    expect(opened.locator("[data-true-size-bar]")).to_be_hidden()
    assert "false" == opened.get_attribute("[data-true-size-switch]", "aria-pressed")


def test_an_edit_keeps_the_true_size_and_a_print_ignores_it(
    open_page: Callable[..., Page], site: str, ready, answered, tmp_path: Path
) -> None:
    page = open_page(viewport=SCREENS["desk"])
    page.goto(f"{site}{SLUG}/")
    scale = calibrate(page, 1)
    open_sheet(page, site, ready, answered, "&orientation=landscape")
    show_more(page)
    page.click("[data-true-size-switch]")
    page.fill("[name=i1]", "20")
    answered(page)
    assert 297 * scale == pytest.approx(page.locator("svg[data-sheet]").bounding_box()["width"], abs=0.1)
    lines = printed(page, tmp_path / "print.pdf")
    assert max(min(off(arrow, line) for line in lines) for arrow in arrows(page).values()) < TOLERANCE


def test_without_a_size_the_button_leads_to_the_card(page: Page, site: str, ready, answered) -> None:
    open_sheet(page, site, ready, answered)
    show_more(page)
    page.click("[data-true-size-switch]")
    page.wait_for_url(f"{site}{SLUG}/#screen")
    expect(page.locator("[data-screen-said]")).to_contain_text("No size is saved")


def test_the_outline_follows_keys_and_buttons_and_is_forgotten_on_request(page: Page, site: str) -> None:
    page.goto(f"{site}{SLUG}/")
    before = page.locator("[data-card]").bounding_box()["width"]
    page.focus("[data-outline]")
    for _ in range(40):
        page.keyboard.press("ArrowRight")
    assert 85.6 * 0.2 == pytest.approx(page.locator("[data-card]").bounding_box()["width"] - before, abs=0.1)
    page.click('[data-step="-1"]')
    page.click("[data-do=keep-screen]")
    expect(page.locator("[data-screen-said]")).to_contain_text("Saved on this device")
    page.click("[data-do=forget-screen]")
    assert page.evaluate("key => localStorage.getItem(key)", KEY) is None
    expect(page.locator("[data-do=forget-screen]")).to_be_hidden()


def test_zooming_keeps_the_true_size_and_says_that_something_changed(
    open_page: Callable[..., Page], site: str, ready, answered
) -> None:
    """A zoom of 125 % makes the CSS pixel larger and the ratio of pixels with it."""
    page = open_page(viewport=SCREENS["desk"], device_scale_factor=1.25)
    page.goto(site)
    screen = {"version": 1, "printer": None, "screen": {"pxPerMm": 4.0, "pixelRatio": 1.0}}
    page.evaluate("([key, text]) => localStorage.setItem(key, text)", [KEY, json.dumps(screen)])
    open_sheet(page, site, ready, answered, "&orientation=landscape")
    show_more(page)
    page.click("[data-true-size-switch]")
    assert 297 * 3.2 == pytest.approx(page.locator("svg[data-sheet]").bounding_box()["width"], abs=0.1)
    expect(page.locator("[data-changed]")).to_be_visible()


def test_the_link_of_a_sheet_holds_nothing_of_the_printer(
    open_page: Callable[..., Page], site: str, ready, answered
) -> None:
    page = open_page(viewport=SCREENS["desk"], permissions=["clipboard-read", "clipboard-write"])
    page.goto(f"{site}{SLUG}/")
    ready(page)
    answered(page)
    keep(page)
    open_sheet(page, site, ready, answered)
    page.click("[data-action=share]")
    wait_until(page, "document.querySelector('[data-said]').textContent !== ''")
    link = page.evaluate("navigator.clipboard.readText()")
    assert "i1=18.4" in link
    assert not [key for key in ("along", "across", "correction", "printed", "px") if key in link + page.url]


def test_without_scripts_the_sheet_is_there_to_be_printed(open_page: Callable[..., Page], site: str) -> None:
    page = open_page(java_script_enabled=False, viewport=SCREENS["desk"])
    page.goto(f"{site}{SLUG}/")
    expect(page.locator("svg[data-sheet]")).to_be_visible()
    expect(page.locator("noscript .notice")).to_contain_text("JavaScript is off")
    assert 0 == page.locator("button:visible").count()


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("screen", list(SCREENS))
def test_no_rule_of_accessibility_is_broken(open_page, site: str, ready, answered, scheme: str, screen: str) -> None:
    page = open_page(color_scheme=scheme, viewport=SCREENS[screen], reduced_motion="reduce")
    page.goto(f"{site}{SLUG}/")
    ready(page)
    answered(page)
    assert page.evaluate("document.querySelector('meta[http-equiv]').content") == PAGE_POLICY
    keep(page)
    read(page, "40 %", "170", "old")
    for part in page.locator("details").all():
        part.evaluate("(part) => { part.open = true; }")
    assert [] == violations(page)
    assert page.evaluate("document.documentElement.scrollWidth") <= SCREENS[screen]["width"]
    page.click("[data-do=keep-screen]")
    open_sheet(page, site, ready, answered)
    show_more(page)
    page.click("[data-true-size-switch]")
    assert [] == violations(page)


def test_every_page_leads_to_the_set_up(page: Page, site: str) -> None:
    for slug, address in (("", f"./{SLUG}/"), ("neutral-current/", f"../{SLUG}/"), (f"{SLUG}/", f"../{SLUG}/")):
        page.goto(site + slug)
        assert address == page.locator("footer a", has_text="Print set-up").get_attribute("href")
