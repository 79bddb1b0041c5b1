"""All words of a sheet as data, ready to set: of a problem, of a solved sheet, of an overlay."""

from dataclasses import dataclass

from pycore.drawing import Ink
from pycore.lettering.glyphs import Shaped
from pycore.words.phrase import Phrase


@dataclass(frozen=True, slots=True)
class LineSample:
    """How a phasor's own line looks: its ink and ticks; ``double``: a phasor of a second quantity."""

    ink: Ink
    ticks: int
    double: bool = False


@dataclass(frozen=True, slots=True)
class TableRow:
    """One phasor in the table: symbol, amount, length and angle as text."""

    symbol: Phrase
    amount: str
    length: str
    angle: str
    sense: str = ""
    ruled: bool = False
    """Whether a rule parts it from the row above."""
    sample: LineSample | None = None


@dataclass(frozen=True, slots=True)
class GivenRow:
    """A phasor of a problem: symbol, its line, amount and direction in words; ``ROOM`` where the learner finds them."""

    symbol: Phrase
    sample: LineSample
    amount: str
    direction: str


@dataclass(frozen=True, slots=True)
class ResultColumn:
    """A result that is estimated, drawn and calculated: its head, and the unit printed in its cells."""

    head: Phrase
    unit: str


@dataclass(frozen=True, slots=True)
class Worksheet:
    """What a problem gives and asks for. ``head``: heads of the given values. ``stages``: names of the rows of results.
    ``working``: head of the room for sums. ``by_hand``: how to draw so that a photograph of the sheet can be read: the
    first of these that has room."""

    question: str
    head: tuple[Phrase, Phrase, Phrase, Phrase]
    given: tuple[GivenRow, ...]
    result: Phrase
    stages: tuple[str, ...]
    results: tuple[ResultColumn, ...]
    working: str
    by_hand: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FieldText:
    """What is written in the field of the drawing besides its labels.

    ``turning``: name of the sense of rotation, which is ``anticlockwise``. ``zero``: the mark at the end of the first
    direction, which points ``up`` or to the right; "" for none. ``point``: name of the point from which a learner
    draws. ``print_check``: how to print true to scale. ``teaching``: what the sheet is not for.
    """

    turning: tuple[str, ...]
    anticlockwise: bool
    zero: str
    up: bool
    point: str
    print_check: str
    teaching: str


Cell = tuple[str, str | Shaped]
"""The label of a cell of the title block, and what was typed for it."""


@dataclass(frozen=True, slots=True)
class BlockText:
    """The title block: title, kind of sheet, place, method, and the cells: a label and a value each. ``by_hand``: those
    that a learner fills in, the name first; else those of a solved sheet. ``marked``: the kind is part of the title."""

    title: str
    kind: str
    place: str
    method: str
    name: Cell
    group: Cell
    date: Cell
    scale: tuple[str, str]
    paper: tuple[str, str]
    sheet: tuple[str, str]
    by_hand: bool
    marked: bool
    maker: str

    @property
    def whole_title(self) -> str:
        """Title and kind in one: Neutral current: problem; a solved sheet has its title alone."""
        return f"{self.title}: {self.kind}" if self.marked else self.title


@dataclass(frozen=True, slots=True)
class SheetText:
    """All words of a sheet. ``sentence``: the question, or the answer, above all else. ``steps``: the numbered steps of
    a solved sheet, each whole and in few words. ``description``: the drawing in full for people who cannot see it;
    ``alternative``: in one sentence."""

    sentence: str
    field: FieldText
    block: BlockText
    head: tuple[Phrase, Phrase, Phrase, Phrase]
    rows: tuple[TableRow, ...]
    scale_words: str
    notes: tuple[str, ...]
    code_words: tuple[str, ...]
    """What stands beside the QR code or in its place: the first of these that has room."""
    page_title: str
    description: str
    alternative: str
    steps: tuple[tuple[str, str], ...] = ()
    second_scale: tuple[str, ...] = ()
    """The scale of phasors of a second quantity, below the sum's: the first of these that has room."""
    code: tuple[str, ...] = ()
    """The QR code's rows of dark (1) and light (0) modules; empty: none."""
    short_code: str = ""
    """The problem's code as it is printed, beside the QR code or in its place."""
    minus: str = ""
    """Which way a negative angle of the table turns; "" where the table says so itself."""
    work: Worksheet | None = None
    """What a problem gives and asks for, in place of the table."""
