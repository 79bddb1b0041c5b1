"""Every PDF is tagged: what an independent reader (tests/render/tagged.py, over qpdf) and pdfium find of it."""

import ctypes
import json
import re
from collections.abc import Iterator
from functools import cache
from itertools import pairwise

import pypdfium2 as pdfium
import pypdfium2.raw as raw
import pytest
from host.piles import feedback, kept
from render.tagged import Element, Tagged, read
from unit.from_above import jpeg

from pycore.api import handle
from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Document, Group, Line, Page, Run, Text, with_role
from pycore.errors import DrawingError
from pycore.forms.fields import default_form
from pycore.geometry import ORIGIN, Point
from pycore.pages import class_set
from pycore.pages.paper import PAPER_PAGES
from pycore.sheet import ledger
from pycore.writers import pdf

BASE = "https://example.org/"
KINDS = ("problem", "construction", "overlay")
PRINTS = ("", "page", "large", "easy")
SHEETS = (
    *(("neutral-current", kind, style) for kind in KINDS for style in PRINTS),
    *((slug, KINDS[place % 3], PRINTS[place % 4]) for place, slug in enumerate(CALCULATORS)),
    *((slug, KINDS[(place + 1) % 3], PRINTS[(place + 3) % 4]) for place, slug in enumerate(CALCULATORS)),
    ("sequence-components", "construction", ""), ("open-neutral", "construction", "page"),
)  # fmt: skip
HELD_BY = {
    "Document": "", "Sect": "Document", "LI": "L", "Lbl": "LI", "LBody": "LI", "TR": "Table", "TH": "TR", "TD": "TR",
    **dict.fromkeys(("H1", "H2", "P", "L", "Table", "Figure"), "Sect"),
}  # fmt: skip


@cache
def sheet(slug: str, kind: str, style: str) -> bytes:
    form = default_form(CALCULATORS[slug].fields) | {"sheet": kind, "print": style}
    return asked(do="pdf", page=slug, form=form, base=BASE, code=True)


def asked(**request: object) -> bytes:
    reply, data = handle(json.dumps(request))
    assert data, reply
    return data


@cache
def set_of_two() -> bytes:
    form = default_form(class_set.FIELDS) | {"learners": "2", "overlays": "yes"}
    begun = json.loads(handle(json.dumps(
        {"page": "class-set", "do": "begin", "work": "pdf", "form": form, "roll": "", "base": BASE, "code": True}
    ))[0])  # fmt: skip
    reply = begun
    while not reply["ended"]:
        reply = json.loads(handle(json.dumps({"page": "class-set", "do": "next", "job": begun["job"], "pieces": 9}))[0])
    return asked(page="class-set", do="finish", job=begun["job"])


def files() -> Iterator[tuple[str, object]]:
    """Every kind of document that is printed, by name."""
    for slug, kind, style in dict.fromkeys(SHEETS):
        yield f"{slug}-{kind}-{style or 'usual'}", lambda s=slug, k=kind, p=style: sheet(s, k, p)
    yield "class-set", set_of_two
    for slug, page in PAPER_PAGES.items():
        yield slug, lambda s=slug, p=page: asked(do="pdf", page=s, form=default_form(p.fields), base=BASE)
    yield "feedback", lambda: feedback([kept(1, slip=12.0), kept(2)], {"r1": jpeg()})[1]
    yield "print-setup", lambda: asked(do="setup", form={}, kept=None, pdf=True)


FILES = dict(files())


@pytest.fixture(params=list(FILES), scope="module")
def tagged(request: pytest.FixtureRequest) -> Tagged:
    return read(FILES[request.param]())


def test_everything_painted_is_an_element_or_is_passed_over(tagged: Tagged):
    assert [] == tagged.loose
    owned = [mark for element in tagged.root.walk() for mark in element.marks]
    assert sorted(owned) == sorted(tagged.marked) and len(set(owned)) == len(owned)
    assert set(tagged.owners) == set(tagged.marked)


def test_the_file_says_its_language_shows_its_title_and_has_standard_types_only(tagged: Tagged):
    assert "en-GB" == tagged.language
    assert {"True"} == {tagged.catalog["shown"], tagged.catalog["marked"]} and len(tagged.catalog["title"]) > 8
    assert "" == tagged.catalog["roles"] and "/S" == tagged.catalog["order"]
    for element in tagged.root.walk():
        assert element.kind in HELD_BY
        for kid in element.kids:
            assert element.kind == HELD_BY[kid.kind], (element.kind, kid.kind, kid.text)


def test_tables_are_regular_and_have_heads_for_columns_and_rows(tagged: Tagged):
    for table in tagged.root.of("Table"):
        heads, *rows = table.kids
        assert {("TH", "Column")} == {(cell.kind, cell.scope) for cell in heads.kids}
        assert rows and {len(heads.kids)} == {len(row.kids) for row in rows}
        # Symbols speak for themselves in large print, and so do amounts that each have a unit of their own.
        assert len([cell for cell in heads.kids if not cell.text]) <= 2
        for row in rows:
            first, *others = row.kids
            assert ("TH", "Row") == (first.kind, first.scope) and first.text
            assert {"TD"} == {cell.kind for cell in others}


def test_each_figure_is_said_in_one_sentence(tagged: Tagged):
    for figure in tagged.root.of("Figure"):
        assert re.fullmatch(r"[A-Z].{20,}[^.]\.", figure.alternative), figure.alternative
        assert not re.search(r"[a-z]\. [A-Z]", figure.alternative), figure.alternative


def test_what_is_read_has_words_and_no_two_lines_run_into_one_word(tagged: Tagged):
    for element in tagged.root.walk():
        if element.kind in ("H1", "H2", "P", "LBody", "Lbl"):
            assert element.text.strip(), element
        assert not re.search(r"[a-z]{2}[.,:;][A-Za-z]", element.text), element.text


@pytest.mark.parametrize(("slug", "kind", "style"), dict.fromkeys(SHEETS))
def test_a_sheet_begins_with_its_title_and_has_its_figure_and_its_table(slug: str, kind: str, style: str):
    root = read(sheet(slug, kind, style)).root
    first = root.kids[0]
    assert "H1" == first.kids[0].kind and CALCULATORS[slug].title.split()[0] in first.kids[0].text
    assert root.of("Table") and any("raw" in figure.alternative for figure in first.of("Figure"))
    headings = [element.kind for element in root.walk() if element.kind in ("H1", "H2")]
    assert "H1" == headings[0]


@pytest.mark.parametrize("kind", KINDS)
def test_the_column_of_words_is_read_from_the_top_down(kind: str):
    """On a usual sheet across, right of the field: after the title block what stands higher is read first."""
    (page,) = read(sheet("neutral-current", kind, "")).sheets
    said = [element for element in page.walk() if element.at and element.kind != "Figure"]
    titled = next(index for index, element in enumerate(said) if element.text.startswith("sheet"))
    column = [element for element in said[titled + 1 :] if element.at[0] > 200.0]
    heights = [element.at[1] for element in column]
    assert len(heights) > 15
    assert all(lower <= higher + 0.5 for higher, lower in pairwise(heights)), heights


def test_steps_are_a_list_with_numbers_and_moves_to_tick_are_one():
    solved = read(sheet("neutral-current", "construction", "")).root
    (steps,) = solved.of("L")
    assert [str(number) for number in range(1, len(steps.kids) + 1)] == [item.kids[0].text for item in steps.kids]
    easy = read(sheet("neutral-current", "construction", "easy")).root
    (moves,) = easy.of("L")
    assert len(moves.kids) >= len(steps.kids) and {"LBody"} == {kid.kind for item in moves.kids for kid in item.kids}
    assert ["Given values", "Moves", "To check"] == [heading.text for heading in easy.of("H2")]


def test_a_class_set_has_each_learners_sheet_and_a_key_whose_title_is_heard_once():
    root = read(set_of_two()).root
    titles = [element.text for element in root.of("H1")]
    assert 2 == len([title for title in titles if title.endswith("problem")])
    assert 2 == len([title for title in titles if title.endswith("overlay")])
    assert 1 == len([title for title in titles if title.startswith("Key: ")])
    assert len(pdfium.PdfDocument(set_of_two())) == len(root.kids)


def test_what_stands_on_each_page_of_a_long_table_is_heard_on_the_first_only():
    rows = [((f"{number}",), ("18.4 A",)) for number in range(80)]
    headings = (ledger.ColumnHeading(("number",), "start"), ledger.ColumnHeading(("current",)))
    listed = ledger.Ledger("Key", "", ("A note.",), (("a", "a mistake"),), headings, rows, "For teaching.")
    numbers = [f"page {number}" for number in range(1, ledger.page_count((listed,), "A4") + 1)]
    root = read(pdf.write(Document(tuple(ledger.pages((listed,), "A4", numbers, "A key.")), "Key"))).root
    assert len(root.kids) > 2 == len(root.of("H1")) + len(root.of("L"))
    assert ["A note.", "For teaching."] == [one.text for one in root.of("P") if not one.text.startswith(" ")]
    assert [str(number) for number in range(80)] == [row.kids[0].text for row in root.of("TR") if row.of("TD")]
    assert len(root.kids) == len(root.of("Table"))


def _pdfium_types(data: bytes) -> list[str]:
    """Types of all elements of the first page, by pdfium."""
    page = pdfium.PdfDocument(data)[0]
    tree = raw.FPDF_StructTree_GetForPage(page)
    found: list[str] = []

    def visit(element: object) -> None:
        size = raw.FPDF_StructElement_GetType(element, None, 0)
        buffer = ctypes.create_string_buffer(size)
        raw.FPDF_StructElement_GetType(element, buffer, size)
        found.append(buffer.raw.decode("utf-16-le").rstrip("\0"))
        for index in range(raw.FPDF_StructElement_CountChildren(element)):
            child = raw.FPDF_StructElement_GetChildAtIndex(element, index)
            if child:
                visit(child)

    for index in range(raw.FPDF_StructTree_CountChildren(tree)):
        visit(raw.FPDF_StructTree_GetChildAtIndex(tree, index))
    raw.FPDF_StructTree_Close(tree)
    return found


def test_pdfium_finds_the_same_elements():
    data = sheet("neutral-current", "construction", "")
    ours = [element.kind for element in read(data).root.walk()]
    assert sorted(ours) == sorted(_pdfium_types(data))


def test_texts_beside_roles_are_paragraphs_and_strokes_are_passed_over():
    def said(words: str) -> Text:
        return Text((Run(words),), Point(20.0, 20.0))

    items = (
        Line(ORIGIN, Point(9.0, 9.0)), said("alone"), with_role("paragraph", said("two"), said("lines")),
        with_role("table", with_role("row", with_role("cell"), with_role("cell", said("full")))),
        with_role("furniture", said("again")), Line(ORIGIN, Point(9.0, 9.0)),
        Group((said("I"), Line(ORIGIN, Point(9.0, 9.0))), role="figure", alternative="A line from here to there."),
    )  # fmt: skip
    (page,) = read(pdf.write(Document((Page(100.0, 100.0, items),), "t"))).sheets
    kinds: list[Element] = list(page.walk())
    assert ["Sect", "P", "P", "Table", "TR", "TD", "TD", "Figure"] == [element.kind for element in kinds]
    assert ["alone", "two lines", "full", "I"] == [element.text for element in kinds if element.text]


def test_a_figure_that_nothing_is_said_of_is_refused():
    figure = with_role("figure", Line(ORIGIN, Point(9.0, 9.0)))
    with pytest.raises(DrawingError, match="no words"):
        pdf.write(Document((Page(100.0, 100.0, (figure,)),), "t"))
