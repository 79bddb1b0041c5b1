"""The QR code of a sheet, from the page to the phone that reads it: on the screen, on paper and in the PDF."""

import json
import shutil
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pypdfium2
import pytest
import zxingcpp
from making.serve import serving
from PIL import Image
from playwright.sync_api import Browser, Page, Route
from witness import Witness

from pycore import api

BASE = "https://www.folio.example/term/neutral-current/"
FORM = {"i1": "31.5", "i2": "7.25", "i3": "12.5", "paper": "A4", "scale": "5", "place": "Village theatre"}
FRAGMENT = "#v=3&i1=31.5&i2=7.25&i3=12.5&paper=A4&scale=5&place=Village%20theatre"
CODE = 'svg[data-sheet] [data-name="code"]'
DESK = {"width": 1440, "height": 900}


@pytest.fixture(scope="module")
def based(dist: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The site as `build --base` gives it: its pages carry the address that they will have."""
    folder = tmp_path_factory.mktemp("based") / "dist"
    shutil.copytree(dist, folder)
    page = folder / "neutral-current" / "index.html"
    html = page.read_text("utf-8")
    assert 1 == html.count("<html lang")
    page.write_text(html.replace("<html lang", f'<html data-base="{BASE}" lang'), "utf-8")
    with serving(folder) as address:
        yield address


@pytest.fixture
def open_page(browser: Browser, based: str) -> Iterator[Callable[..., Page]]:
    """As everywhere, but of the site with a base, and some tests keep the part away on purpose."""
    contexts, witness = [], Witness(based)

    def open_one(**options: object) -> Page:
        context = browser.new_context(**options)
        contexts.append(context)
        context.on("page", witness.watch)
        return context.new_page()

    yield open_one
    for context in contexts:
        context.close()
    assert [] == [fault for fault in witness.faults if "codes.zip" not in fault]


def link(form: dict[str, str]) -> str:
    """The link that must stand in the code, as pycore in CPython shares it."""
    request = {"do": "share", "page": "neutral-current", "form": form, "base": BASE}
    return json.loads(api.handle(json.dumps(request))[0])["link"]


def read(picture: Image.Image) -> list[str]:
    """The texts of all QR codes in a picture, by another library; light on dark counts for nothing."""
    found = zxingcpp.read_barcodes(picture, formats=zxingcpp.BarcodeFormat.QRCode, try_invert=False)
    return [code.text for code in found]


def read_pdf(path: Path) -> list[str]:
    """The texts of all QR codes on the first page of a PDF, seen at 200 dpi."""
    document = pypdfium2.PdfDocument(path)
    picture = document[0].render(scale=200 / 72).to_pil()
    document.close()
    return read(picture)


def until(page: Page, expression: str, seconds: float = 10.0) -> None:
    """Poll from outside: waiting inside the page is refused by its policy."""
    end = time.monotonic() + seconds
    while not page.evaluate(expression):
        assert time.monotonic() < end, f"not within {seconds} s: {expression}"
        time.sleep(0.02)


def has_code(page: Page) -> bool:
    return page.evaluate(f"document.querySelector('{CODE}') !== null")


def until_coded(page: Page) -> None:
    until(page, f"document.querySelector('{CODE}') !== null")


@pytest.fixture
def noted() -> Callable[[Page], list[str]]:
    """`noted(page)` gives the growing list of the files that the page asks for."""

    def note(page: Page) -> list[str]:
        files: list[str] = []
        page.on("request", lambda request: files.append(request.url.rsplit("/", 1)[-1]))
        return files

    return note


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_phone_reads_the_code_from_another_phones_screen(open_page, based: str, ready, scheme: str, tmp_path: Path):
    """The sheet is as wide as the screen; two fingers spread it until its code can be read."""
    page = open_page(viewport={"width": 390, "height": 844}, device_scale_factor=3, color_scheme=scheme, is_mobile=True)
    page.goto(f"{based}neutral-current/{FRAGMENT}")
    ready(page)
    until_coded(page)
    page.click("details.request > summary")
    page.context.new_cdp_session(page).send("Emulation.setPageScaleFactor", {"pageScaleFactor": 3})
    page.locator(CODE).scroll_into_view_if_needed()
    page.screenshot(path=tmp_path / "phone.png")
    assert [link(FORM)] == read(Image.open(tmp_path / "phone.png"))


def test_a_phone_reads_the_code_from_the_printed_page(open_page, based: str, ready, tmp_path: Path):
    page = open_page(viewport=DESK)
    page.goto(f"{based}neutral-current/{FRAGMENT}")
    ready(page)
    until_coded(page)
    page.pdf(prefer_css_page_size=True, path=tmp_path / "printed.pdf")
    assert [link(FORM)] == read_pdf(tmp_path / "printed.pdf")


def test_a_phone_reads_the_code_from_the_pdf(open_page, based: str, ready, answered, tmp_path: Path):
    """The button waits for nothing but the file."""
    page = open_page(viewport=DESK)
    page.goto(f"{based}neutral-current/{FRAGMENT}")
    ready(page)
    answered(page)
    with page.expect_download() as download:
        page.click("[data-action=pdf]")
    download.value.save_as(tmp_path / "saved.pdf")
    assert [link(FORM)] == read_pdf(tmp_path / "saved.pdf")


def test_the_first_answer_comes_without_the_part(open_page, based: str, answered, noted):
    page = open_page(viewport=DESK)
    files = noted(page)
    page.goto(f"{based}neutral-current/{FRAGMENT}")
    answered(page)
    assert "library.zip" in files
    assert "codes.zip" not in files
    assert not has_code(page)
    until_coded(page)
    assert 1 == files.count("codes.zip")


def test_an_edit_takes_the_code_away_until_all_is_quiet_again(open_page, based: str, ready, answered, tmp_path: Path):
    """A code of other values would open another sheet; and the part is not fetched twice."""
    page = open_page(viewport=DESK)
    page.goto(f"{based}neutral-current/{FRAGMENT}")
    ready(page)
    until_coded(page)
    page.fill("[name=i1]", "30")
    answered(page)
    assert not has_code(page)
    until_coded(page)
    page.pdf(prefer_css_page_size=True, path=tmp_path / "printed.pdf")
    assert [link({**FORM, "i1": "30"})] == read_pdf(tmp_path / "printed.pdf")


def note_print(page: Page) -> None:
    """Let `window.print` note what it would have printed: the first current, and whether there was a code."""
    page.evaluate(f"""() => {{ window.printed = []; window.print = () => window.printed.push(
        [document.querySelector("[name=i1]").value, document.querySelector('{CODE}') !== null]); }}""")


def test_print_waits_for_the_answer_and_its_code(open_page, based: str, ready, answered):
    page = open_page(viewport=DESK)
    page.goto(f"{based}neutral-current/{FRAGMENT}")
    ready(page)
    answered(page)
    note_print(page)
    page.fill("[name=i1]", "30")
    page.click("[data-action=print]")
    until(page, "window.printed.length === 1")
    assert [["30", True]] == page.evaluate("window.printed")
    assert "fresh" == page.evaluate("document.documentElement.dataset.answer")


def test_without_the_part_everything_else_works_and_the_next_print_tries_again(
    open_page, based: str, ready, answered, noted
):
    page = open_page(viewport=DESK)
    page.route("**/codes.zip", lambda route: route.abort())
    files = noted(page)
    page.goto(f"{based}neutral-current/{FRAGMENT}")
    ready(page)
    answered(page)
    note_print(page)
    page.click("[data-action=print]")
    until(page, "window.printed.length === 1")
    assert [["31.5", False]] == page.evaluate("window.printed")
    assert files.count("codes.zip") >= 1
    page.fill("[name=i1]", "30")
    answered(page)
    page.unroute("**/codes.zip")
    page.click("[data-action=print]")
    until(page, "window.printed.length === 2")
    assert ["30", True] == page.evaluate("window.printed[1]")


def test_a_part_that_is_slow_to_come_holds_nothing_up(open_page, based: str, ready, answered, tmp_path: Path):
    """Typing goes on while the part is on its way; the code of the older values is never shown."""
    held: list[Route] = []
    page = open_page(viewport=DESK)
    page.route("**/codes.zip", lambda route, _request: held.append(route))
    page.goto(f"{based}neutral-current/{FRAGMENT}")
    ready(page)
    answered(page)
    for _ in range(200):
        page.wait_for_timeout(20)
        if held:
            break
    page.fill("[name=i1]", "30")
    answered(page, seconds=3.0)
    assert not has_code(page)
    [route] = held
    route.continue_()
    until_coded(page)
    page.pdf(prefer_css_page_size=True, path=tmp_path / "printed.pdf")
    assert [link({**FORM, "i1": "30"})] == read_pdf(tmp_path / "printed.pdf")


def test_a_loopback_address_gets_no_code(browser: Browser, site: str, ready, answered):
    """Nobody else's phone could open it, and nobody types a whole link: the sheet has no words on it."""
    context = browser.new_context(viewport=DESK)
    page = context.new_page()
    page.goto(f"{site}neutral-current/{FRAGMENT}")
    ready(page)
    answered(page)
    note_print(page)
    page.click("[data-action=print]")
    until(page, "window.printed.length === 1")
    assert [["31.5", False]] == page.evaluate("window.printed")
    words = page.locator("svg[data-sheet]").text_content()
    assert "Print at 100 %" in words and "#" not in words and "Share" not in words
    context.close()
