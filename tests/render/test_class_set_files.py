"""A class set's PDF read back by other programs: true to scale, codes that open their problems, a key like numpy's."""

import cmath
import json
import math
import re
from collections.abc import Iterator

import numpy
import pypdfium2
import pytest
import zxingcpp
from host import class_sets
from render.readers import pdfium_lines

from pycore import api
from pycore.calculators.registry import CALCULATORS

FORM = {"tier": "stretch", "method": "parallelogram", "seed": "2024", "learners": "3"}
PHASES = (0.0, -120.0, 120.0)


@pytest.fixture(scope="module")
def data() -> bytes:
    """The file of a class of three."""
    return class_sets.made(FORM, "pdf")


@pytest.fixture(scope="module")
def opened(data: bytes) -> Iterator[pypdfium2.PdfDocument]:
    """The same, opened by pdfium."""
    document = pypdfium2.PdfDocument(data)
    yield document
    document.close()


def test_key_and_message_name_the_pages_of_large_print_which_has_several_to_a_sheet():
    """Where each part begins is read from the file: a learner's code stands on problem sheet and overlay alike."""
    reply, _ = class_sets.ask(do="begin", work="pdf", form={**FORM, "print": "easy"})
    while not reply["ended"]:
        reply, _ = class_sets.ask(do="next", job=reply["job"], pieces=50)
    reply, data = class_sets.ask(do="finish", job=reply["job"])
    document = pypdfium2.PdfDocument(data)
    texts = [text_of(document, number) for number in range(len(document))]
    document.close()
    overlay = next(number for number, text in enumerate(texts, start=1) if "overlay" in text)
    key = next(number for number, text in enumerate(texts, start=1) if "In this file" in text)
    assert overlay > 4
    assert f"problem sheets on pages 1–{overlay - 1}, overlays on pages {overlay}–{key - 1}" in texts[key - 1]
    assert f"pages 1–{overlay - 1}, overlays: pages {overlay}–{key - 1}," in reply["told"]


def text_of(document: pypdfium2.PdfDocument, number: int) -> str:
    """The words of a page."""
    return document[number].get_textpage().get_text_bounded()


def link_on(document: pypdfium2.PdfDocument, number: int) -> str:
    """What the QR code of a page says, read by another library at 200 dpi."""
    (found,) = zxingcpp.read_barcodes(document[number].render(scale=200 / 72).to_pil(), try_invert=False)
    return found.text


def problem_of(link: str) -> dict[str, str]:
    """The form that a learner's code opens."""
    request = {"do": "open", "page": "neutral-current", "fragment": link.partition("#")[2]}
    reply = json.loads(api.handle(json.dumps(request))[0])
    assert [] == reply["notices"]
    return reply["form"]


def order_of(form: dict[str, str]) -> str:
    """Which two lines are drawn first."""
    return CALCULATORS["neutral-current"].case(form).sheet_plan().construction.order


def code_in(link: str) -> str:
    """The code in a link."""
    return re.search(r"[&#]code=([^&]+)", link)[1]


def summed(form: dict[str, str], lines: tuple[int, ...] = (0, 1, 2)) -> complex:
    """The sum of some of a form's lines by numpy, from the first line's direction."""
    sizes = numpy.array([float(form[f"i{number}"]) for number in (1, 2, 3)])
    angles = numpy.radians(numpy.array(PHASES) - [float(form[f"a{number}"]) for number in (1, 2, 3)])
    parts = sizes * numpy.exp(1j * angles) * numpy.exp(-1j * angles[0])
    return complex(numpy.sum(parts[list(lines)]))


def test_the_file_holds_sheets_then_overlays_then_the_key(opened: pypdfium2.PdfDocument):
    texts = [text_of(opened, number) for number in range(len(opened))]
    assert ["problem"] * 3 + ["overlay"] * 3 == [re.search(r"Neutral current (\w+)", text)[1] for text in texts[:6]]
    assert "Key: Neutral current, stretch, parallelogram" in texts[6]
    assert "problem sheets on pages 1–3, overlays on pages 4–6" in texts[6]
    assert [f"{number} of 3" for number in (1, 2, 3)] * 2 == [
        re.search(r"\b\d of 3\b", text)[0] for text in texts[:6]
    ]


def test_each_sheet_is_true_to_scale_and_bears_its_name(data: bytes, opened: pypdfium2.PdfDocument):
    for number in range(6):
        lines = list(pdfium_lines(data, number))
        bars = [line for line in lines if math.isclose(math.dist(line[:2], line[2:]), 10.0, abs_tol=0.01)]
        assert len(bars) >= 20
        assert ("Amber Okafor", "Smith, T.", "=1+1")[number % 3] in text_of(opened, number)


def test_each_code_opens_its_own_problem_and_gives_the_code_back(opened: pypdfium2.PdfDocument):
    links = [link_on(opened, number) for number in range(3)]
    assert all(link.startswith("https://www.folio.example/term/neutral-current/#v=3&") for link in links)
    assert all("sheet=problem" in link for link in links)
    forms = [problem_of(link) for link in links]
    assert 3 == len({tuple(form[f"i{line}"] for line in (1, 2, 3)) for form in forms})
    for number, (link, form) in enumerate(zip(links, forms, strict=True)):
        page, over = text_of(opened, number), text_of(opened, number + 3)
        assert code_in(link) in page
        assert code_in(link) in over
        assert all(form[f"i{line}"] in page for line in (1, 2, 3))
        again, _ = class_sets.ask(do="set-again", code=code_in(link))
        assert FORM["seed"] == again["form"]["seed"]


def test_an_overlay_bears_no_code_to_open_and_an_ellipse(data: bytes, opened: pypdfium2.PdfDocument):
    for number in (3, 4, 5):
        assert [] == zxingcpp.read_barcodes(opened[number].render(scale=200 / 72).to_pil())
        assert "95 of 100 careful drawings end inside the ellipse" in " ".join(text_of(opened, number).split())


def test_the_keys_figures_are_those_of_numpy(opened: pypdfium2.PdfDocument):
    rows = re.split(r"(?m)^(?=\d\s)", text_of(opened, 6).replace("\r", ""))
    for number in range(3):
        form = problem_of(link_on(opened, number))
        whole, row = summed(form), "".join(row for row in rows if row.startswith(f"{number + 1} "))
        shown = [float(found) for found in re.findall(r"(\d+\.?\d*) A", row)]
        assert any(math.isclose(value, abs(whole), rel_tol=0.006) for value in shown)
        angle = abs(math.degrees(cmath.phase(whole)))
        assert f"{angle:.1f}°" in row
        pair = order_of(form)
        first = summed(form, tuple(int(line) - 1 for line in pair))
        assert any(math.isclose(value, abs(first), rel_tol=0.006) for value in shown)
        lengths = [float(found) for found in re.findall(r"(\d+\.\d) mm", row)]
        scale = float(re.search(r"1 cm = (\S+) A", row)[1])
        assert any(math.isclose(length, 10 * abs(whole) / scale, abs_tol=0.251) for length in lengths)


def test_what_mistakes_give_stands_in_the_key_as_numpy_has_it(opened: pypdfium2.PdfDocument):
    key = "\n".join(text_of(opened, number) for number in range(6, len(opened)))
    page = key.replace("\r", "").partition("Answers from typical mistakes")[2]
    assert "I₃ was left out" in page or "I3 was left out" in page
    for number in range(3):
        link = link_on(opened, number)
        row = next(line for line in page.split("\n") if code_in(link) in line)
        shown = [float(value.strip("()")) for value in row.split(code_in(link))[1].split()]
        form = problem_of(link)
        for left in ((1, 2), (0, 2), (0, 1)):
            assert any(math.isclose(value, abs(summed(form, left)), rel_tol=0.006, abs_tol=0.06) for value in shown)
