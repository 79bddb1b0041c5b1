"""The words on a sheet."""

from collections.abc import Mapping, Sequence
from typing import Protocol

from pycore.words.cautions import EXAMINING_BODY
from pycore.words.phrase import Phrase, listed, say

FOOT = "For teaching. Not for sizing an installation."
KINDS = {"construction": "solved", "problem": "problem", "overlay": "overlay"}
"""Kinds of sheet, as the title block names them."""
ORIENTATIONS = {"landscape": "landscape", "portrait": "portrait"}
ZERO = "0°"
"""Where the first direction meets the frame."""
POINT, START = "common point", "start"
"""The point from which a learner draws."""
SCALE, PAPER, SHEET, NAME, GROUP, DATE = "scale", "paper", "sheet", "name", "group", "date"
NO_ANGLE = "no arrow"
ROOM = "____"
"""Room for a handwritten number; on paper a ruled cell or line."""
GIVEN, TO_FIND, SIDE_TO_FIND = "given", "phasor", "side"
LENGTH_UNIT = "mm"
DRAWN_STAGES = ("estimated", "drawn")
EXAM_STAGES = ("drawn", "calculated")
"""The rows of a question paper's sheet: an exam asks for no estimate."""
"""Where a question paper has other room for what is calculated."""
PAGE, LEARNER, EVERY_LEARNER = "page", "learner", "all"
"""Of a question paper: which page a sheet is, or whose."""
RESULT, STAGES, WORKING = "result", ("estimated", "drawn", "calculated", "difference"), "working"
"""Where a problem sheet has room: for each result, in the order in which a learner finds them, and for sums."""
TURNING = ("sense of", "rotation")
POSITIVE = ("positive", "angles")
"""Beside the same sign where nothing rotates: the sides of a triangle of powers or impedances."""


def stands_aside(names: Sequence[str], millimetres: str) -> str:
    """Why a phasor is drawn beside another on which it lies."""
    if len(names) == 1:
        return f"{names[0]} lies on another line. It is drawn {millimetres} mm aside; thin lines carry its ends over."
    return f"{listed(names, 'and')} lie on other lines. They are drawn aside; thin lines carry their ends over."


def phasors_drawn(unit: str, angles: str, phasors: Sequence[tuple[str, str, str, str]]) -> str:
    """A drawing for people who cannot see it. ``unit``: of amounts that name none; ``angles``: from where they are
    measured. Of each phasor its symbol, amount, length in mm and angle, "" for what it has not."""
    read = (
        f"{symbol}: {', '.join(filter(None, (amount, length and f'{length} {LENGTH_UNIT}', angle)))}."
        for symbol, amount, length, angle in phasors
    )
    opening = f"Amounts in {unit}; {angles}." if unit else f"{angles[0].upper()}{angles[1:]}."
    return " ".join((opening, *read))


def drawing_shows(symbols: Sequence[str], scale: str) -> str:
    """A drawing in one sentence, beside its table, for people who cannot see it."""
    return f"Drawing at {scale} of {listed(symbols, 'and')}, with the lengths and angles of the table."


def directions_from(origin: Phrase) -> Phrase:
    """Head of the directions on a problem sheet."""
    return say("direction from {origin}", origin=origin)


def found_from(found: Phrase, origin: Phrase) -> Phrase:
    """Head of the cells for an angle that is to be found."""
    return say("{found} from {origin}", found=found, origin=origin)


QR_CODE = "QR code that opens this sheet."
OPENS_BY_CODE = ("Open this sheet, with these values, on a phone.",)
OPENS_ISSUED = ("The code of this problem. Type it on the page under “Check”.", "The code of this problem.")
OF_PAPER = ("The code of this question paper.",)
OPENS_OR_CHECKED = ("Open this sheet on a phone. Or type its values, then this code under “Check”.", *OPENS_BY_CODE)
OPENS_CHECKED = (
    "The check code of these values. Type the values on the page, then this code under “Check”.",
    "The check code of these values.",
)
ANY_METHOD = "any method"


def equal_load(
    sequence: str, echo: Mapping[str, str], *, short: bool = False, apart: bool = False, from_voltage: bool = False
) -> str:
    """Three lines of equal power factor, with their angle of lag or lead if it is not zero; ``apart``: as drawn, the
    currents are 120° apart. ``from_voltage``: angles are counted from a voltage, so no lag is a power factor of 1."""
    angle, _, side = echo["degrees"].partition(" ")
    if short:
        return f"Equal power factor, {angle} {side}: {sequence}." if side else f"Equal power factor: {sequence}."
    factor = "power factor 1" if from_voltage and not side else "equal power factor"
    alike = f"Star-connected load, {factor}: currents 120° apart" if apart else f"{factor[:1].upper()}{factor[1:]}"
    alike = f"{alike}, sequence {sequence}."
    return f"{alike} Each current {side}s its phase voltage by {angle}." if side else alike


def line_lag(line: str, echo: Mapping[str, str]) -> str:
    """One line's angle of lag or lead."""
    return f"{line} {echo['degrees']}"


def unequal_load(lags: str, sequence: str, *, short: bool = False) -> str:
    """Lines of different power factor."""
    if short:
        return f"{lags}. Sequence {sequence}."
    return f"Lag behind their own phase voltages: {lags}. Sequence {sequence}."


def by_hand(*, dashes: bool) -> tuple[str, ...]:
    """How to draw so that a photograph of the sheet can be read, the shortest last; ``dashes``: the drawing may have
    dashed lines."""
    firm = "Firm dashes. " if dashes else ""
    return f"Arrowhead on every tip. {firm}Write outside the drawing.", f"Arrowheads. {firm}Write outside."


class SetSheet(Protocol):
    """What the words of a class set's sheet need to know of it."""

    @property
    def any_method(self) -> bool:
        """Whether any method will do."""

    @property
    def own_scale(self) -> bool:
        """Whether the scale is the learner's to choose."""

    @property
    def question(self) -> str:
        """The question of a paper, "" on a sheet for practice."""


def own_scale(unit: str) -> str:
    """The scale is the learner's to choose, and to write down."""
    return f"1 cm = {ROOM} {unit}"


def issued_notes(issue: SetSheet) -> tuple[str, ...]:
    """What a sheet of a class set or a question paper says besides."""
    scale = ("First choose a scale and write it down.",) if issue.own_scale else ()
    method = "Use any method." if issue.any_method else "Use the method named below."
    return (*scale, method if issue.question else f"{method} {EXAMINING_BODY}")


def sheet_of(number: int, of: int) -> str:
    """Which sheet of a set this is."""
    return f"{number} of {of}"


def further_sheet(learner: str, number: int) -> str:
    """A further sheet of a learner in a class set: 3 of 30, page 2."""
    return f"{learner}, page {number}"


def print_check(bar: str) -> str:
    """How to print true to scale, in the foot line; without the bars where there is little room."""
    return f"Print at 100 %: both bars {bar}." if bar else "Print at 100 %."


def print_note(bar: str) -> str:
    """The same in a sentence that says why."""
    return f"Print at 100 %. If both bars measure {bar}, every line on this sheet has its exact length."


def page_title(title: str, method: str, scale: str) -> str:
    """What a sheet is called where it has a name: in a viewer, to a screen reader."""
    return f"{title}: {method}, {scale}" if ":" not in title else f"{title}, {method}, {scale}"
