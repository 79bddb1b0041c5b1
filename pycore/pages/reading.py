"""Explanatory pages: headings, paragraphs, tables, drawings."""

from dataclasses import dataclass

from pycore.drawing import Page
from pycore.sums.answer import Grid, Paragraph
from pycore.words.phrase import Phrase


@dataclass(frozen=True, slots=True)
class InlineDrawing:
    """A drawing; ``name`` is unique on its page. An ``exact`` one is printed at its own size."""

    page: Page
    name: str
    exact: bool = False


@dataclass(frozen=True, slots=True)
class DrawingRow:
    """Drawings of one kind side by side; on a phone one below the other."""

    drawings: tuple[InlineDrawing, ...]


@dataclass(frozen=True, slots=True)
class Steps:
    """An ordered list; ``ticked``: each item has a box to tick."""

    items: tuple[Phrase, ...]
    ticked: bool = False


@dataclass(frozen=True, slots=True)
class LinkList:
    """Links: words, and the address from the page."""

    items: tuple[tuple[str, str], ...]


ReadBlock = Paragraph | Grid | InlineDrawing | DrawingRow | Steps | LinkList


@dataclass(frozen=True, slots=True)
class Section:
    """A heading and its content; ``sheet``: begins a new sheet in print; ``screen``: not printed."""

    heading: Phrase
    blocks: tuple[ReadBlock, ...]
    sheet: bool = False
    screen: bool = False


@dataclass(frozen=True, slots=True)
class ReadingPage:
    """A complete page: folder, title, description, and sections.

    ``one_sheet``: laid out to be printed and handed out.
    """

    slug: str
    title: str
    description: str
    lead: Phrase
    sections: tuple[Section, ...]
    one_sheet: bool = False
