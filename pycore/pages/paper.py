"""Blank paper: graph paper at exact size, and a ruler and a protractor to cut out.

They solve no problem and have no answer: the choices of a form make one sheet.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from pycore.calculators.registry import MAIN, MAIN_FIRST, module_of
from pycore.drawing import Document, Page
from pycore.forms import links
from pycore.forms.conventions import choice_field
from pycore.forms.fields import Field
from pycore.forms.reading import Reader
from pycore.sheet.blank_sheet import INSTRUMENT_PAPERS, BlankWriting, graph_page, instruments_page, ruler_length
from pycore.sheet.media import PAPERS, page_key, size_of
from pycore.sheet.record import RecordWriting, record_page
from pycore.words import paper as words
from pycore.words import rig as rig_words
from pycore.words import sheet as sheet_words


@dataclass(frozen=True, slots=True)
class PaperSheet:
    """One sheet of blank paper: its page, the page's key (``a4p``), and the link that reproduces it."""

    page: Page
    page_key: str
    link: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class PaperPage:
    """A page that prints blank paper."""

    slug: str
    title: str
    lead: str
    description: str
    fields: tuple[Field, ...]
    draw: Callable[[Mapping[str, str]], Page]

    def make(self, form: Mapping[str, str]) -> PaperSheet:
        """Return the sheet that a form asks for; raises InputError for an unknown choice."""
        reader = Reader(form, {field.name: field for field in self.fields})
        chosen = {field.name: reader.choice(field.name) for field in self.fields}
        reader.finish()
        key = page_key(chosen["paper"], chosen.get("orientation", "portrait"))
        link = links.form_pairs(chosen, self.fields, tuple(chosen))
        return PaperSheet(self.draw(chosen), key, link)

    def document(self, form: Mapping[str, str]) -> Document:
        """Return that sheet as a document; raises InputError."""
        page = self.make(form).page
        return Document((page,), page.title, subject=self.title)


def _paper_fields(papers: tuple[str, ...], orientation: str) -> tuple[Field, ...]:
    offered = tuple((paper, paper) for paper in papers)
    return (
        choice_field("paper", words.PAPER, "sheet", "A4", offered),
        choice_field("orientation", words.ORIENTATION, "sheet", orientation, words.ORIENTATIONS),
    )


def _graph(chosen: Mapping[str, str]) -> Page:
    kind, paper, orientation = chosen["kind"], chosen["paper"], chosen["orientation"]
    title = words.graph_title(kind, paper, orientation)
    description = words.graph_description(kind, paper, orientation)
    writing = BlankWriting(
        f"{words.ruling(kind)}, {paper}", (words.PRINT_REMINDER,), words.UNIT, title, description
    )
    return graph_page(kind, paper, orientation, writing)


def _instruments(chosen: Mapping[str, str]) -> Page:
    circle, paper, orientation = chosen["protractor"] == "360", chosen["paper"], chosen["orientation"]
    length = f"{ruler_length(paper, orientation):.0f}{words.UNIT}"
    writing = BlankWriting(
        words.INSTRUMENTS_TITLE,
        words.instrument_steps(circle),
        words.UNIT,
        words.instruments_title(circle, paper, orientation),
        words.instruments_description(circle, length),
    )
    return instruments_page(circle, paper, orientation, writing)


READINGS: Mapping[str, rig_words.RecordingSheet] = {
    slug: readings for slug in MAIN_FIRST if (readings := module_of(slug, "teaching").READINGS) is not None
}
"""What is read at a training rig, by the calculator's slug."""
RECORD_PAPERS = ("A4", "A3", "letter")


def _record(chosen: Mapping[str, str]) -> Page:
    paper, repeats = chosen["paper"], int(chosen["readings"])
    width, height = size_of(paper, "portrait")
    topic = READINGS[chosen["topic"]]
    rows = (*(rig_words.reading(number) for number in range(1, repeats + 1)), rig_words.MEAN)
    checks = (*rig_words.CHECKS, *topic.checks)
    description = rig_words.description(len(checks), chosen["readings"], topic.columns, topic.answers)
    writing = RecordWriting(
        title=rig_words.title(topic.name), first=rig_words.FIRST, checks=checks, stop=rig_words.STOP,
        instrument=rig_words.INSTRUMENT, cells=(rig_words.CELLS, rig_words.LOWER_CELLS),
        readings=topic.heading, order=topic.order, head=("", *topic.columns, rig_words.INITIALS), rows=rows,
        answers=rig_words.three_answers_for(topic.answers),
        answer_head=topic.answer_head, answer_rows=topic.answer_rows,
        agree=rig_words.AGREE, agree_help=rig_words.AGREE_HELP, agree_rows=rig_words.AGREE_ROWS,
        agree_line=topic.agree_line, why=rig_words.WHY, checked=rig_words.CHECKED, foot=sheet_words.FOOT,
        page_title=rig_words.page_title(topic.name, paper), description=description,
    )  # fmt: skip
    return record_page(width, height, writing)


GRAPH_PAPER = PaperPage(
    "graph-paper",
    words.GRAPH_TITLE,
    words.GRAPH_LEAD,
    words.GRAPH_DESCRIPTION,
    (
        choice_field("kind", words.KIND, "method", "millimetre", words.KINDS, words.KIND_HELP),
        *_paper_fields(tuple(PAPERS), "portrait"),
    ),
    _graph,
)
INSTRUMENTS = PaperPage(
    "ruler-and-protractor",
    words.INSTRUMENTS_TITLE,
    words.INSTRUMENTS_LEAD,
    words.INSTRUMENTS_DESCRIPTION,
    (
        choice_field("protractor", words.PROTRACTOR, "method", "180", words.PROTRACTORS, words.PROTRACTOR_HELP),
        *_paper_fields(INSTRUMENT_PAPERS, "landscape"),
    ),
    _instruments,
)
RECORD = PaperPage(
    rig_words.SLUG,
    rig_words.TITLE,
    rig_words.LEAD,
    rig_words.DESCRIPTION,
    (
        choice_field(
            "readings", rig_words.REPEATS, "method", "3", rig_words.REPEAT_SETS, rig_words.REPEAT_HELP
        ),
        choice_field(
            "topic", rig_words.TOPIC, "sheet", MAIN,
            tuple((slug, readings.name) for slug, readings in READINGS.items()),
        ),
        choice_field("paper", words.PAPER, "sheet", "A4", tuple((paper, paper) for paper in RECORD_PAPERS)),
    ),
    _record,
)
PAPER_PAGES: dict[str, PaperPage] = {page.slug: page for page in (GRAPH_PAPER, INSTRUMENTS, RECORD)}
"""Every page of blank paper by its slug."""
