"""What a calculator page is made of: the frozen values that pages and renderer share."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from pycore.drawing import Page
from pycore.errors import Fault
from pycore.words import Phrase
from pycore.words.formula import Formula

if TYPE_CHECKING:
    from pycore.practice.task import Asked


@dataclass(frozen=True, slots=True)
class Choice:
    """One option of a choice field."""

    value: str
    label: str


@dataclass(frozen=True, slots=True)
class Field:
    """One form control. ``name`` is its key in links for ever.

    ``kind``: ``quantity`` (decimal keypad), ``readings`` (a quantity read once or repeatedly), ``length``
    (a quantity, or its length on the sheet), ``angle`` (degrees, or a power factor such as ``0.85 lag``),
    ``phasor`` (``20 at 60`` or ``10 + j17.3``), ``choice``, ``text``. ``group``
    places it: ``values`` and ``method`` (always in view), ``loads``, ``picture``, ``sheet``,
    ``words``. ``default`` "" for a field that may stay empty. ``sample`` names the phasor whose
    line is drawn beside the label. What is ``private`` (a name, a date) never enters a link.
    ``only`` names the choices with which a field has a meaning: one of them must be made for it
    to be shown. ``folded``: a value that is seldom wanted, and waits behind a fold.
    """

    name: str
    label: str
    kind: str
    group: str
    default: str = ""
    unit: str = ""
    help: str = ""
    sample: str = ""
    choices: tuple[Choice, ...] = ()
    private: bool = False
    only: tuple[tuple[str, str], ...] = ()
    folded: bool = False

    def counts(self, form: Mapping[str, str]) -> bool:
        """Whether the field has a meaning with a form's choices."""
        return not self.only or any(form.get(name) == value for name, value in self.only)


def default_form(fields: Iterable[Field]) -> dict[str, str]:
    """The form of a page as it opens without a link: every field's default."""
    return {field.name: field.default for field in fields}


@dataclass(frozen=True, slots=True)
class Issue:
    """A sheet's place in a class set: its code as printed, which sheet of how many it is; whether any method
    will do, and whether the scale is the learner's to choose."""

    code: str
    number: int
    of: int
    any_method: bool = False
    own_scale: bool = False


@dataclass(frozen=True, slots=True)
class Opening:
    """How a printed sheet is opened again: the page's own address, and whether to draw a code.

    ``base`` is the address without fragment, "" when it is not known; a QR code is drawn only
    when ``code`` is true and the address is one that another device can reach. ``issue`` is the
    sheet's place in a class set, if it is of one.
    """

    base: str = ""
    code: bool = False
    issue: Issue | None = None

    @property
    def reachable(self) -> bool:
        """Whether another device can open the address: not a file, not this machine's own."""
        scheme, _, rest = self.base.partition("://")
        host = rest.partition("/")[0].rpartition("@")[2]
        name = host.partition("]")[0] + "]" if host.startswith("[") else host.partition(":")[0]
        return (
            scheme in ("http", "https")
            and bool(name)
            and name not in ("localhost", "[::1]", "0.0.0.0")
            and not name.startswith("127.")
            and not name.endswith(".localhost")
        )


@dataclass(frozen=True, slots=True)
class Output:
    """One result: its ``<output>`` name, SI value (None: undefined) and text for people."""

    name: str
    value: float | None
    text: str
    unit: str = ""
    label: Phrase = ()
    line: str = "sum"
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
class Points:
    """Things of one kind, one after another, in no order that must be kept."""

    items: tuple[Phrase, ...]


@dataclass(frozen=True, slots=True)
class Picture:
    """A small drawing for the screen in a working; ``name`` is unique on the page."""

    page: Page
    name: str


Block = Paragraph | Move | Equation | Grid | Points | Picture


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
    shown: bool = False


@dataclass(frozen=True, slots=True)
class Alternative:
    """Another way to put the same problem on paper: form values that bring it, and its cost."""

    phrase: Phrase
    values: tuple[tuple[str, str], ...]


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
    given: Phrase
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
    more: tuple[Page, ...] = ()
    """Further pages of the sheet, on the same paper: the moves of one for easy reading."""
    faults: tuple[Fault, ...] = ()
    scenario: str = ""
    kind: str = ""
    code: str = ""
    asked: "Asked | None" = None
    see: tuple[Phrase, str] | None = None
    """A sentence that must not be missed, with the key of the working that says more."""
