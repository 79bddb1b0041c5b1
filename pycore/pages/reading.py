"""Pages that are read and not filled in: headings, paragraphs, tables, pictures made by the build."""

from dataclasses import dataclass

from pycore.calculators.interface import Grid, Paragraph
from pycore.words import Phrase


@dataclass(frozen=True, slots=True)
class Figure:
    """A picture made by the build: its file among the site's assets, and what it shows in words."""

    file: str
    alternative: str


@dataclass(frozen=True, slots=True)
class Section:
    """A heading and what stands below it."""

    heading: Phrase
    blocks: tuple[Paragraph | Grid | Figure, ...]


@dataclass(frozen=True, slots=True)
class ReadingPage:
    """A whole page: its folder, title, one sentence on it, and its sections."""

    slug: str
    title: str
    description: str
    lead: Phrase
    sections: tuple[Section, ...]
