"""Pages that are read and not filled in: headings, paragraphs, tables, pictures made by the build."""

from dataclasses import dataclass

from pycore.drawing import Page
from pycore.sums.answer import Grid, Paragraph
from pycore.words.phrase import Phrase


@dataclass(frozen=True, slots=True)
class AssetImage:
    """A picture made by the build: its file among the site's assets, and what it shows in words."""

    file: str
    alternative: str


@dataclass(frozen=True, slots=True)
class InlineDrawing:
    """A drawing of our own; ``name`` is unique on its page. An ``exact`` one is printed at its own size."""

    page: Page
    name: str
    exact: bool = False


@dataclass(frozen=True, slots=True)
class Steps:
    """Things to do or to know, one after another; ``ticked``: each with a box to tick."""

    items: tuple[Phrase, ...]
    ticked: bool = False


@dataclass(frozen=True, slots=True)
class LinkList:
    """Links to what is to be opened or printed: words, and the address from the page."""

    items: tuple[tuple[str, str], ...]


ReadBlock = Paragraph | Grid | AssetImage | InlineDrawing | Steps | LinkList


@dataclass(frozen=True, slots=True)
class Section:
    """A heading and what stands below it; ``sheet``: it begins a new sheet when it is printed, ``screen``: it is not
    printed."""

    heading: Phrase
    blocks: tuple[ReadBlock, ...]
    sheet: bool = False
    screen: bool = False


@dataclass(frozen=True, slots=True)
class ReadingPage:
    """A whole page: its folder, title, one sentence on it, and its sections.

    ``one_sheet``: it is set to be printed and handed out."""

    slug: str
    title: str
    description: str
    lead: Phrase
    sections: tuple[Section, ...]
    one_sheet: bool = False
