"""Names in any script, in a browser: on sheets and key, read back from the PDF by two programs, and compared with how
the browser sets them itself in the same fonts."""

import base64
import io
import unicodedata
from collections.abc import Callable
from pathlib import Path

import numpy
import pymupdf
import pypdfium2
import pytest
from browser.asking import DESK, wait_until
from making.letters import HARFBUZZ, slices
from PIL import Image
from playwright.sync_api import Browser, Page, Request

from pycore.words import class_set as words

NAMES = {
    "Latn": ("Zoë Ångström", "Łukasz Żółć", "Nguyễn Thị Ánh", "Ọláyínká Adéyẹmí", "Ștefan Țurcanu", "Əli Məmmədov",
             "Hālona Kaʻiulani"),
    "Cyrl": ("Ксения Щукина", "Ђорђе Његош", "Їжакевич Ґанна", "Өмірбек Қасымов"),
    "Grek": ("Αθηνά Παπαδοπούλου", "Ξενοφών Ρήγας", "Γιώργος Ζαΐμης"),
    "Arab": ("محمد الأمين", "فاطمة الزهراء", "لالا حسین", "پروین چگینی", "ٹیپو عباسی"),
    "Hebr": ("דנה כהן", "שלמה לוי", "רִבְקָה אברהם"),
    "Deva": ("शक्ति कुमारी", "क्षितिज शर्मा", "श्रीकृष्ण त्रिपाठी", "हिंदुजा ज्ञानेश्वर"),
    "Beng": ("শ্রেয়া চক্রবর্তী", "আরিফুল ইসলাম"),
    "Taml": ("கிருத்திகா முருகன்", "லட்சுமி சௌந்தர்"),
    "Telu": ("శ్రీనివాస్ రెడ్డి", "లక్ష్మి ప్రసన్న"),
    "Mlym": ("കൃഷ്ണൻ നായർ",),
    "Sinh": ("ශ්‍රියානි පෙරේරා",),
    "Thai": ("สมชาย ใจดี", "น้ำทิพย์ ศรีสุข"),
    "Khmr": ("សុខា ចាន់",),
    "Mymr": ("အောင်ကျော်",),
    "Ethi": ("ሰላም ተስፋዬ", "ዮሐንስ ገብሩ"),
    "Geor": ("ნინო ბერიძე", "გიორგი ლომიძე"),
    "Armn": ("Արամ Պետրոսյան",),
    "Hani": ("王小明", "歐陽詠詩", "张伟"),
    "Jpan": ("山田 はなこ", "佐藤 ケンジ"),
    "Kore": ("김민준", "이서연"),
}  # fmt: skip
ALL = [name for names in NAMES.values() for name in names]
LINK = "class-set/#v=3&topic=neutral-current&tier=core&learners=4&method=any&paper=A4&seed=77&overlays=no"
UNKNOWN = "\U00013000\U00013001"
"""Signs of a script that no font here has."""


@pytest.fixture
def class_page(open_page: Callable[..., Page], site: str, ready) -> Page:
    """The page of class sets with its list of names open."""
    page = open_page(viewport=DESK)
    page.goto(site + LINK)
    ready(page)
    page.click('[data-group="roll"] > summary')
    return page


def listed(page: Page, names: list[str]) -> None:
    """Give the page a list of names."""
    page.fill("#roll", "\n".join(names))
    wait_until(page, f"document.querySelector('[data-region=set]').textContent.includes('{len(names)} problem')", 30)
    wait_until(page, "document.documentElement.dataset.answer === 'fresh'", 30)


def made(page: Page) -> bytes:
    """The PDF of the set."""
    with page.expect_download(timeout=120_000) as download:
        page.click('[data-do="make"]')
    return Path(download.value.path()).read_bytes()


def same(text: str) -> str:
    """A text as it is compared: composed, with spaces alike, without marks that only part letters."""
    return " ".join(unicodedata.normalize("NFC", text).replace("\u200d", "").replace("\u200c", "").split())


def pointed(name: str) -> bool:
    """Whether a name has Hebrew letters with points."""
    return any("\u05b0" <= one <= "\u05c7" for one in name)


def test_fifty_names_in_twenty_scripts_are_read_back_by_two_readers(class_page: Page):
    assert len(ALL) >= 50
    assert len(NAMES) >= 12
    asked: list[Request] = []
    class_page.on("request", lambda request: asked.append(request) if "/letters/" in request.url else None)
    listed(class_page, ["Amber Okafor", "Zoë Ångström"])
    assert asked == []
    listed(class_page, ALL)
    assert words.unset([""], 0)[:25] not in class_page.text_content('[data-region="set"]')
    data = made(class_page)
    assert data == made(class_page)
    readers = [
        [page.get_text() for page in pymupdf.open(stream=data)],
        [page.get_textpage().get_text_bounded() for page in pypdfium2.PdfDocument(data)],
    ]
    lost = [
        (which, name) for which, pages in enumerate(readers) for page, name in enumerate(ALL)
        if same(name) not in same(pages[page])
    ]
    assert lost == []
    key = [same(" ".join(pages[len(ALL):])) for pages in readers]
    listed_by = {name: [which for which, text in enumerate(key) if same(name).split()[0] in text] for name in ALL}
    # The second reader turns pointed letters around where they stand in one row with numbers.
    assert [] == [name for name, by in listed_by.items() if by != [0, 1] and not (by == [0] and pointed(name))]


def test_a_name_that_was_typed_decomposed_is_that_name(class_page: Page):
    listed(class_page, [unicodedata.normalize("NFD", "Zoë Ångström")])
    assert "Zoë Ångström" in pymupdf.open(stream=made(class_page))[0].get_text()


def test_what_no_font_has_is_written_by_number_and_told(class_page: Page):
    listed(class_page, ["Amber Okafor", UNKNOWN])
    assert words.unset([UNKNOWN], 0) in class_page.text_content('[data-region="set"]')
    document = pymupdf.open(stream=made(class_page))
    assert "Learner 2" in document[1].get_text()
    assert "Learner 2" in document[2].get_text()


def test_fonts_that_do_not_come_are_told_and_come_later(browser: Browser, site: str, ready):
    with browser.new_context(viewport=DESK, service_workers="block") as context:
        page = context.new_page()
        page.goto(site + LINK)
        ready(page)
        page.click('[data-group="roll"] > summary')
        page.route("**/letters/**", lambda route: route.abort())
        listed(page, ["Amber Okafor", "דנה כהן"])
        assert words.unset(["דנה כהן"], 0) in page.text_content('[data-region="set"]')
        page.unroute("**/letters/**")
        listed(page, ["Amber Okafor", "דנה כהן", "Bilal Haddad"])
        assert words.unset(["דנה כהן"], 0) not in page.text_content('[data-region="set"]')


def test_a_network_that_stands_still_is_waited_for_once_for_all_scripts(browser: Browser, site: str, ready):
    names = ["דנה כהן", "علي حسن", "山田 はな", "Ναταλία Ω", "நிலா", "ஃகமல்"]
    with browser.new_context(viewport=DESK, service_workers="block") as context:
        page = context.new_page()
        page.goto(site + LINK)
        ready(page)
        page.click('[data-group="roll"] > summary')
        page.route("**/letters/**/*.woff2", lambda _route: None)
        listed(page, names)  # within 30 s, of which one font may take 15
        assert words.unset(names[:3], 3)[:20] in page.text_content('[data-region="set"]')


def test_a_name_on_a_sheet_of_its_own(open_page: Callable[..., Page], site: str, ready, answered):
    page = open_page(viewport=DESK)
    page.goto(site + "add-phasors/#v=3&sheet=problem")
    ready(page)
    answered(page)
    page.evaluate("for (const one of document.querySelectorAll('details')) one.open = true")
    page.evaluate(TYPE, "محمد الأمين")
    wait_until(page, "!!document.querySelector('svg[data-sheet] [aria-label=\"محمد الأمين\"] path')", 30)
    page.evaluate(TYPE, UNKNOWN)
    wait_until(page, "document.querySelector('#m-who').textContent.includes('It is left blank')", 30)


TYPE = """(text) => {
  const field = document.querySelector('[name="who"]');
  field.value = text;
  field.dispatchEvent(new Event("input", { bubbles: true }));
}"""
MM = 72 / 25.4
DRAWN = """async ([family, name, size, bytes]) => {
  const face = new FontFace(family, Uint8Array.from(atob(bytes), (one) => one.charCodeAt(0)), {weight: "100 900"});
  document.fonts.add(await face.load());
  const canvas = Object.assign(document.createElement("canvas"), {width: 1200, height: 200});
  const context = canvas.getContext("2d");
  context.fillStyle = "white"; context.fillRect(0, 0, 1200, 200); context.fillStyle = "black";
  context.font = `450 ${size}px "${family}"`; context.textAlign = "left";
  context.fillText(name, 40, 130);
  return canvas.toDataURL().split(",")[1];
}"""


def ink(image: Image.Image) -> numpy.ndarray:
    """The dark part of a picture, cut to what is dark, at one height."""
    dark = numpy.asarray(image.convert("L")) < 128
    rows, columns = numpy.where(dark.any(axis=1))[0], numpy.where(dark.any(axis=0))[0]
    cut = image.convert("L").crop((columns[0], rows[0], columns[-1] + 1, rows[-1] + 1))
    return numpy.asarray(cut.resize((400, 80), Image.Resampling.LANCZOS)).astype(float) / 255.0


@pytest.mark.parametrize(("script", "name"), [
    ("Arab", "فاطمةالزهراء"), ("Deva", "श्रीकृष्ण"), ("Taml", "கிருத்திகா"), ("Hebr", "רִבְקָה"),
    ("Thai", "น้ำทิพย์"), ("Mymr", "အောင်ကျော်"),
])  # fmt: skip
def test_letters_look_as_the_browser_sets_them(class_page: Page, dist: Path, script: str, name: str):
    """The reference is the browser's own setting of the same font; marks and joins out of place would show."""
    listed(class_page, [name, "Amber Okafor"])
    page = pymupdf.open(stream=made(class_page))[0]
    letters = [
        (pymupdf.Rect(char["bbox"]), pymupdf.Point(char["origin"]))
        for block in page.get_text("rawdict")["blocks"] for line in block.get("lines", ()) for span in line["spans"]
        for char in span["chars"] if 0x590 <= ord(char["c"]) < 0x2000
    ]  # fmt: skip
    base = letters[0][1].y
    left = min(box.x0 for box, _ in letters) - 3
    # Between the cell's label and the rule below it; to the right of the name the cell is empty.
    clip = pymupdf.Rect(left, base - 4.45 * MM, left + 62 * MM, base + 1.6 * MM)
    pixels = page.get_pixmap(dpi=900, clip=clip)
    ours = Image.open(io.BytesIO(pixels.tobytes("png")))
    file = next((dist / "letters").glob(f"*/{slices()[script][0][0]}"))
    bytes_of = base64.b64encode(file.read_bytes()).decode()
    canvas = class_page.evaluate(DRAWN, [script, name, 100, bytes_of])
    reference = Image.open(io.BytesIO(base64.b64decode(canvas)))
    assert float(numpy.abs(ink(ours) - ink(reference)).mean()) < 0.09


def test_the_shaper_and_its_fonts_are_of_no_edition(dist: Path):
    script = (dist / "service-worker.js").read_text("utf-8")
    assert '"letters/' not in script.partition(";\n")[0]
    assert [HARFBUZZ.name] == [path.name for path in (dist / "letters").glob("*/*.wasm")]
