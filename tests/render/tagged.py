"""The structure of a tagged PDF as an independent reader finds it, by qpdf: no code of the project is used.

Source: ISO 32000-1 (PDF 1.7), sections 14.6 to 14.8.
"""

import io
import re
from collections.abc import Iterator
from dataclasses import dataclass, field

import pikepdf

Font = dict[str, str]
"""Characters by glyph, as four hexadecimal digits."""
PAINTING = frozenset(["S", "s", "f", "F", "f*", "B", "B*", "b", "b*", "TJ", "Tj", "'", '"', "Do", "sh"])
ARTIFACT = -1


@dataclass
class Element:
    """One element of the structure: its type, what it holds, its own text in reading order."""

    kind: str
    alternative: str = ""
    scope: str = ""
    text: str = ""
    marks: list[tuple[int, int]] = field(default_factory=list)
    """Page and number of each marked content that is its own."""
    at: tuple[float, float] | None = None
    """Where its first text begins, in mm from the page's lower left corner."""
    kids: list["Element"] = field(default_factory=list)

    def walk(self) -> Iterator["Element"]:
        """This element and all below it, in reading order."""
        yield self
        for kid in self.kids:
            yield from kid.walk()

    def of(self, kind: str) -> list["Element"]:
        """All elements of a type below this one."""
        return [element for element in self.walk() if element.kind == kind]

    @property
    def whole(self) -> str:
        """All text of it."""
        return " ".join(part.text for part in self.walk() if part.text)


@dataclass
class Content:
    """One marked content: what is written in it, and where."""

    text: list[str] = field(default_factory=list)
    at: tuple[float, float] | None = None


@dataclass
class Tagged:
    """A document's structure, what of each page is marked, and what is not."""

    root: Element
    marked: dict[tuple[int, int], Content]
    loose: list[str]
    """What is painted outside elements and artifacts."""
    owners: dict[tuple[int, int], object]
    """Which element the tree of parents names for a marked content."""
    language: str
    catalog: dict[str, str]

    @property
    def sheets(self) -> list[Element]:
        """The elements of the pages."""
        return self.root.kids


def _font(font: pikepdf.Object) -> Font:
    table = font.ToUnicode.read_bytes().decode("ascii")
    pairs = re.findall(r"<([0-9a-f]{4})> <([0-9a-f]+)>", table)
    of_glyphs = [pair for pair in pairs if pair != ("0000", "ffff")]  # that one is the range of codes
    return {glyph: bytes.fromhex(words).decode("utf-16-be") for glyph, words in of_glyphs}


def _page_contents(page: pikepdf.Page, number: int, marked: dict[tuple[int, int], Content], loose: list[str]) -> None:
    fonts = {name: _font(font) for name, font in page.resources.get("/Font", {}).items()}
    around: list[int | None] = []
    font: Font = {}
    place = 0.0, 0.0
    for operands, operator in pikepdf.parse_content_stream(page):
        name = str(operator)
        if name == "BMC":
            around.append(ARTIFACT if str(operands[0]) == "/Artifact" else None)
        elif name == "BDC":
            mark = operands[1].get("/MCID") if isinstance(operands[1], pikepdf.Dictionary) else None
            around.append(None if mark is None else int(mark))
            if mark is not None:
                assert (number, int(mark)) not in marked, "a number of marked content is used twice on a page"
                marked[number, int(mark)] = Content()
        elif name == "EMC":
            around.pop()
        elif name == "Tf":
            font = fonts[str(operands[0])]
        elif name == "Tm":
            place = float(operands[4]), float(operands[5])
        inside = next((mark for mark in reversed(around) if mark is not None), None)
        if name in PAINTING and inside is None:
            loose.append(f"page {number + 1}: {name} {operands}"[:120])
        if name == "TJ":
            glyphs = "".join(bytes(piece).hex() for piece in operands[0] if isinstance(piece, pikepdf.String))
            words = "".join(font[glyphs[start : start + 4]] for start in range(0, len(glyphs), 4))
            if inside is not None and inside != ARTIFACT:
                content = marked[number, inside]
                content.text.append(words)
                content.at = content.at or place
    assert not around, f"page {number + 1}: marked content does not end"


def _numbers(node: pikepdf.Object) -> dict[int, pikepdf.Object]:
    """The leaves of a number tree (ISO 32000-1, 7.9.7)."""
    found = {}
    for kid in node.get("/Kids", []):
        found |= _numbers(kid)
    flat = list(node.get("/Nums", []))
    return found | {int(key): value for key, value in zip(flat[::2], flat[1::2], strict=True)}


def _element(node: pikepdf.Object, pages: dict[tuple[int, int], int], marked: dict[tuple[int, int], Content],
             parent: tuple[int, int]) -> Element:  # fmt: skip
    assert node.P.objgen == parent, "an element does not name the one that holds it"
    attributes = node.get("/A", {})
    element = Element(str(node.S)[1:], str(node.get("/Alt", "")), str(attributes.get("/Scope", "")).strip("/"))
    kids = node.get("/K", [])
    for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
        if isinstance(kid, pikepdf.Dictionary):
            element.kids.append(_element(kid, pages, marked, node.objgen))
            continue
        key = pages[node.Pg.objgen], int(kid)
        element.marks.append(key)
        element.text += "".join(marked[key].text)
        element.at = element.at or marked[key].at
    return element


def read(data: bytes) -> Tagged:
    """Return the structure of a file. Fails if the file says nothing of its structure."""
    marked: dict[tuple[int, int], Content] = {}
    loose: list[str] = []
    with pikepdf.open(io.BytesIO(data)) as document:
        for number, page in enumerate(document.pages):
            _page_contents(page, number, marked, loose)
        pages = {page.objgen: number for number, page in enumerate(document.pages)}
        catalog = document.Root
        tree = catalog.StructTreeRoot
        (top,) = tree.K
        root = _element(top, pages, marked, tree.objgen)
        parents = _numbers(tree.ParentTree)
        owners = {
            (number, mark): owner.objgen
            for number, page in enumerate(document.pages)
            for mark, owner in enumerate(parents[int(page.StructParents)])
        }
        said = {
            "title": str(document.docinfo.get("/Title", "")),
            "shown": str(catalog.ViewerPreferences.get("/DisplayDocTitle")),
            "marked": str(catalog.MarkInfo.Marked), "roles": str(tree.get("/RoleMap", "")),
            "order": " ".join({str(page.get("/Tabs")) for page in document.pages}),
        }  # fmt: skip
        return Tagged(root, marked, loose, owners, str(catalog.Lang), said)
