"""The frozen values of which a calculator's page consists; shared by pages and renderer."""

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

PROBLEM_SHEET = "problem-sheet"
"""The part that stands beside Check: the problem's sheet in place of the answer's, without further pages."""


@dataclass(frozen=True, slots=True)
class Output:
    """One result: name of its ``<output>``, SI value (None: undefined), and text for people."""

    name: str
    value: float | None
    text: str
    unit: str = ""
    label: Phrase = ()
    line: str = SUM_KEY
    """The phasor whose line is drawn beside it as a headline; "" where no line is drawn for it."""


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Text in a working; ``caution`` marks it as a warning."""

    phrase: Phrase
    caution: bool = False


@dataclass(frozen=True, slots=True)
class Move:
    """One numbered move of a construction: the instruction and its reason.

    ``step``: number of the group of the drawing that shows it. ``protractor``: whether it needs one.
    """

    step: int
    phrase: Phrase
    why: Phrase = ()
    protractor: bool = False


@dataclass(frozen=True, slots=True)
class Equation:
    """Lines of a calculation, each with the words before it."""

    lines: tuple[Formula, ...]
    before: Phrase = ()


@dataclass(frozen=True, slots=True)
class Grid:
    """A table: header cells, rows, and whether the last row is the total."""

    head: tuple[Phrase, ...]
    rows: tuple[tuple[Phrase, ...], ...]
    total: bool = False
    caption: Phrase = ()


@dataclass(frozen=True, slots=True)
class BulletList:
    """An unordered list."""

    items: tuple[Phrase, ...]


@dataclass(frozen=True, slots=True)
class WorkingPicture:
    """A small drawing for the screen inside a working; ``name`` is unique on the page."""

    page: Page
    name: str


Block = Paragraph | Move | Equation | Grid | BulletList | WorkingPicture


@dataclass(frozen=True, slots=True)
class Working:
    """One complete calculation or construction that leads to the answer.

    ``key``: unique on the page (``components``, ``formula``, ``parallelogram-12`` ...). ``on_sheet``: its drawing is
    that of the sheet now, which may be blank.
    """

    key: str
    title: Phrase
    blocks: tuple[Block, ...]
    on_sheet: bool = False


@dataclass(frozen=True, slots=True)
class Alternative:
    """Another drawing of the same problem: the form values that select it, and its properties in words."""

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
    """Everything a page shows for one problem.

    ``outputs``: the results, the headline first. ``values_text``: the values in words ("18.4 A, 11.2 A, 24.6 A"), shown
    when the answer is out of date. ``summary``: short lines beside the headline. ``remarks``: sentences below it
    (check, balanced, meter). ``notices``: what the page had to change or could not do; a change is never silent.
    ``caption``: paper, orientation and scale. ``sheet``: the page for paper. ``views``: layouts for the screen by name.
    ``echo``: by field, how an input was understood (``31.8° lag``, ``0.850 lagging``). ``faults``: inputs that could
    not be used although there is an answer (a scale that does not fit, an optional reading). ``scenario``: the story of
    the example while its values are shown. ``link``: the key-value pairs of the fragment with every choice resolved,
    ``v`` first. ``kind``: the kind of sheet (``construction``, ``problem``, ``overlay``; "" if the page has only one).
    ``code``: the code of the problem, if its values are those of a code. ``answer_request``: what a learner is asked
    for, if requested.
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
