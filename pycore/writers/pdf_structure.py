"""The structure of a tagged PDF: what a page's parts are, in the order in which they are read.

Source: ISO 32000-1 (PDF 1.7), sections 14.6 (marked content), 14.7 (logical structure) and 14.8 (tagged PDF). All types
are standard ones, so that no map of roles is needed.
"""

from typing import NamedTuple

import pydyf

from pycore.drawing import Role
from pycore.errors import DrawingError
from pycore.writers.pdf_fonts import text_string

TYPES: dict[Role, str] = {
    "heading": "H1", "subheading": "H2", "paragraph": "P", "list": "L", "item": "LI", "label": "Lbl", "body": "LBody",
    "table": "Table", "row": "TR", "column-head": "TH", "row-head": "TH", "cell": "TD", "figure": "Figure",
}  # fmt: skip
HOLDERS: frozenset[Role] = frozenset(("list", "item", "table", "row"))
"""Roles that hold other roles; all others hold content."""
_ATTRIBUTES: dict[Role, str] = {
    "column-head": "/A<< /O/Table/Scope/Column>>",
    "row-head": "/A<< /O/Table/Scope/Row>>",
    "list": "/A<< /O/List/ListNumbering/None>>",
}
_PAGE = "Sect"


class _Element(NamedTuple):
    """One element of a page: its role, the index of the one that holds it, its marked content (-1: none), and a
    figure in words."""

    role: Role
    parent: int
    mark: int
    alternative: str


class WrittenObject(pydyf.Object):
    """An object whose text is ready."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self._data = text.encode("ascii")

    @property
    def data(self) -> bytes:
        """The object as it stands in the file."""
        return self._data


class PageStructure:
    """The elements of one page, in the order in which they are begun; the page itself holds them all."""

    def __init__(self) -> None:
        self._elements: list[_Element] = []
        self._holders = [-1]
        self._marks = 0

    def hold(self, role: Role) -> None:
        """Begin an element that holds others, until ``release``."""
        self._elements.append(_Element(role, self._holders[-1], -1, ""))
        self._holders.append(len(self._elements) - 1)

    def release(self) -> None:
        """End the element begun last by ``hold``."""
        self._holders.pop()

    def empty(self, role: Role) -> None:
        """Note an element without content: a cell to be filled in."""
        self._elements.append(_Element(role, self._holders[-1], -1, ""))

    def content(self, role: Role, alternative: str = "") -> str:
        """Return what begins the content of an element, which ends with EMC. Raises DrawingError for a figure that
        nothing is said of."""
        if role == "figure" and not alternative:
            raise DrawingError("a figure has no words for people who cannot see it")
        self._elements.append(_Element(role, self._holders[-1], self._marks, alternative))
        self._marks += 1
        return f"/{TYPES[role]}<< /MCID {self._marks - 1}>>BDC"

    def objects(self, first: int, page: int, document: int) -> tuple[list[WrittenObject], WrittenObject]:
        """Return the page's element and all that it holds, which get the numbers from ``first`` on, and the list of
        the elements that hold its marked contents, in their order.

        ``page``, ``document``: the numbers of the page and of the element that holds all pages.
        """
        kids: dict[int, list[int]] = {}
        for index, element in enumerate(self._elements):
            kids.setdefault(element.parent, []).append(first + 1 + index)
        written = [WrittenObject(f"<< /S/{_PAGE}/P {document} 0 R/K{_references(kids.get(-1, []))}>>")]
        owners = []
        for index, (role, parent, mark, alternative) in enumerate(self._elements):
            held = _references(kids[index]) if index in kids else "[]"
            if mark >= 0:
                held = f" {mark}/Pg {page} 0 R"
                owners.append(first + 1 + index)
            words = f"/Alt{text_string(alternative)}" if alternative else ""
            written.append(WrittenObject(
                f"<< /S/{TYPES[role]}/P {first + 1 + parent} 0 R/K{held}{_ATTRIBUTES.get(role, '')}{words}>>"
            ))  # fmt: skip
        return written, WrittenObject(_references(owners))


class Structure:
    """The structure of a whole file, page by page."""

    def __init__(self, pdf: pydyf.PDF) -> None:
        self._pdf = pdf
        self._root = pydyf.Dictionary({"Type": "/StructTreeRoot"})
        self._document = pydyf.Dictionary({"Type": "/StructElem", "S": "/Document"})
        for one in (self._root, self._document):
            pdf.add_object(one)
        self._owners: list[bytes] = []

    def add(self, page: pydyf.Dictionary, parts: PageStructure) -> int:
        """Write a page's elements; the page has its number already. Returns the number of the page's own element."""
        first = len(self._pdf.objects)
        written, owners = parts.objects(first, page.number, self._document.number)
        for one in (*written, owners):
            self._pdf.add_object(one)
        page["StructParents"] = len(self._owners)
        page["Tabs"] = "/S"
        self._owners.append(owners.reference)
        return first

    def finish(self, pages: list[int]) -> None:
        """Tie the pages' elements together, in the order in which they are read."""
        tree = pydyf.Dictionary(
            {"Nums": pydyf.Array([piece for pair in enumerate(self._owners) for piece in pair])}
        )
        self._pdf.add_object(tree)
        self._document.update({"P": self._root.reference, "K": WrittenObject(_references(pages)).data})
        self._root.update({
            "K": pydyf.Array([self._document.reference]), "ParentTree": tree.reference,
            "ParentTreeNextKey": len(self._owners),
        })  # fmt: skip
        self._pdf.catalog.update({
            "MarkInfo": pydyf.Dictionary({"Marked": "true"}), "StructTreeRoot": self._root.reference,
        })  # fmt: skip


def _references(numbers: list[int]) -> str:
    return f"[{' '.join([f'{number} 0 R' for number in numbers])}]"
