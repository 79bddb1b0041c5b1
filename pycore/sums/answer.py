"""What a calculator page is made of: the frozen values that pages and renderer share."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from pycore.constructions.names import SUM_KEY
from pycore.drawing import Page
from pycore.errors import Fault
from pycore.words.formula import Formula
from pycore.words.phrase import Phrase

if TYPE_CHECKING:
    from pycore.practice.task import AnswerRequest

@dataclass(frozen=True, slots=True)
class Output:
    """One result: its ``<output>`` name, SI value (None: undefined) and text for people."""

    name: str
    value: float | None
    text: str
    unit: str = ""
    label: Phrase = ()
    line: str = SUM_KEY
    """The phasor whose line is drawn beside it as a headline; "" where no line is drawn for it."""


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Plain words in a working; ``caution`` sets it apart as a warning."""

    phrase: Phrase
    caution: bool = False


@dataclass(frozen=True, slots=True)
class Move:
    """One numbered move of a construction: what to do, and one line of why.

    ``step`` is the number of the drawing's group that shows it.
    """

    step: int
    phrase: Phrase
    why: Phrase = ()


@dataclass(frozen=True, slots=True)
class Equation:
    """Lines of a calculation below one another, each with the words that go before it."""

    lines: tuple[Formula, ...]
    before: Phrase = ()


@dataclass(frozen=True, slots=True)
class Grid:
    """A table: head cells, rows of cells, and whether the last row is the total."""

    head: tuple[Phrase, ...]
    rows: tuple[tuple[Phrase, ...], ...]
    total: bool = False
    caption: Phrase = ()


@dataclass(frozen=True, slots=True)
class BulletList:
    """Things of one kind, one after another, in no order that must be kept."""

    items: tuple[Phrase, ...]


@dataclass(frozen=True, slots=True)
class WorkingPicture:
    """A small drawing for the screen in a working; ``name`` is unique on the page."""

    page: Page
    name: str


Block = Paragraph | Move | Equation | Grid | BulletList | WorkingPicture


@dataclass(frozen=True, slots=True)
class Working:
    """One complete path to the answer.

    ``key`` is unique on the page (``components``, ``formula``, ``parallelogram-12`` ...);
    ``draws`` holds the form values that put its drawing on the sheet (empty: none to draw);
    ``shown`` is true for the one whose drawing is on the sheet now.
    """

    key: str
    title: Phrase
    blocks: tuple[Block, ...]
    draws: tuple[tuple[str, str], ...] = ()
    on_sheet: bool = False


@dataclass(frozen=True, slots=True)
class Alternative:
    """Another way to put the same problem on paper: form values that bring it, and its cost."""

    phrase: Phrase
    values: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class WorkingLink:
    """A sentence beside the headline with a button to a working: its key, and the words on the button."""

    sentence: Phrase
    working: str
    button: str


@dataclass(frozen=True, slots=True)
class Answer:
    """Everything a page says about one problem.

    ``outputs``: the first is the headline. ``given`` repeats the values in words ("18.4 A,
    11.2 A, 24.6 A") for the day they are old. ``summary`` are the short lines beside the
    headline, ``remarks`` sentences below it (sanity check, balanced, meter), ``notices``
    what the page had to change or could not do (a notice is never silent). ``caption`` says paper,
    orientation and scale; ``sheet`` is the paper page, ``views`` screen layouts by medium name.
    ``echo``: by field name, how an input was understood (``31.8° lag``, ``0.850 lagging``).
    ``faults`` are inputs that could not be used but left the answer standing (a scale that does
    not fit, an optional reading); ``scenario`` is the example's story while its values are shown.
    ``link`` are the fragment's key-value pairs with every choice resolved, ``v`` first. ``kind`` says
    which of the kinds of sheet this is (``construction``, ``problem``, ``overlay``; "" where a page has
    only one). ``code`` is that of the problem, where its values are a code's; ``asked`` what a
    learner is asked for, where that was wanted.
    """

    slug: str
    title: str
    outputs: tuple[Output, ...]
    values_text: Phrase
    summary: tuple[Phrase, ...]
    remarks: tuple[Phrase, ...]
    notices: tuple[Phrase, ...]
    caption: Phrase
    alternatives: tuple[Alternative, ...]
    sheet: Page
    views: Mapping[str, Page]
    workings: tuple[Working, ...]
    echo: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    link: tuple[tuple[str, str], ...] = ()
    page_key: str = "a4l"
    further_pages: tuple[Page, ...] = ()
    """Further pages of the sheet, on the same paper: the moves of one for easy reading."""
    faults: tuple[Fault, ...] = ()
    scenario: str = ""
    kind: str = ""
    code: str = ""
    answer_request: "AnswerRequest | None" = None
    inks: Mapping[str, str] = field(default_factory=dict)
    """Ink of the line samples beside the labels, by phasor key."""
    labels: Mapping[str, str] = field(default_factory=dict)
    """Labels of fields that follow the form's own choices."""
    options: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    """Options that follow the form's own choices, by field and value."""
    see: WorkingLink | None = None
    """A sentence that must not be missed, with a link to the working that says more."""
