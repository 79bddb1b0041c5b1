"""The print set-up: from the readings of two printed bars to the correction of the printer.

A correction is a pair of factors, along and across the paper feed, by which a drawing is stretched so that the
printer's error brings it back to exact size: true length divided by reading. A printer is wrong by 3 % at most (common
practice, no source); beyond that a print dialog is scaling, and nothing may be stored.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from pycore import quantity
from pycore.drawing import Document, Page
from pycore.errors import Fault, InputError, Offer
from pycore.forms.fields import Field, Option
from pycore.forms.reading import Reader
from pycore.geometry import ORIGIN, Point
from pycore.quantity import NO_BREAK_SPACE, QuantityError
from pycore.sheet.media import ORIENTATIONS, PAPERS, page_key
from pycore.sheet.setup_sheet import SETUP_PAPERS, Bars, SetupWriting, bars, setup_page
from pycore.words import inputs
from pycore.words import print_setup as words

SLUG = "print-setup"
LIMIT = 0.03
READING_ERROR = 0.25
"""The error of a ruler reading on a bar, mm (common practice, no source)."""
COMMON_LINE = 160.0
"""The length of line, mm, for which the page states the remaining error."""
EDGES = ("short", "long")
SAME_PATH = 20.0
"""A paper may be wider than the measured one by this many mm and still go in by its long edge."""
UNCORRECTED = Point(1.0, 1.0)

FIELDS = (
    Field("paper", words.PAPER, "choice", "sheet", "A4",
          options=tuple(Option(paper, paper) for paper in SETUP_PAPERS)),
    Field("orientation", words.ORIENTATION, "choice", "sheet", "portrait",
          options=(Option("portrait", words.PORTRAIT), Option("landscape", words.LANDSCAPE))),
    Field("edge", words.EDGE, "choice", "sheet", "short", help=words.EDGE_HELP,
          options=(Option("short", words.SHORT_EDGE), Option("long", words.LONG_EDGE))),
    Field("printed", words.PRINTED, "choice", "sheet", "plain",
          options=(Option("plain", words.PLAIN_SHEET), Option("corrected", words.CORRECTED_SHEET))),
    Field("upright", words.UPRIGHT_BAR, "quantity", "values", unit="mm"),
    Field("level", words.LEVEL_BAR, "quantity", "values", unit="mm"),
)  # fmt: skip
"""None of these is ever part of a link."""
_BY_NAME = {field.name: field for field in FIELDS}


@dataclass(frozen=True, slots=True)
class PrinterCorrection:
    """Factors along and across the paper feed, and which edge goes in first.

    ``lead``: the length in mm of the edge that went in first when the bars were measured. A wide machine takes small
    papers by their long edge, and large ones by their short edge.
    """

    along: float
    across: float
    edge: str
    lead: float

    def upright_is_along(self, width: float, height: float) -> bool:
        """Return whether the vertical axis of a page of this size (mm) is along the paper feed."""
        return _upright_is_along(width, height, self.edge, self.lead)

    def on_page(self, width: float, height: float) -> Point:
        """Return the horizontal and vertical factors of a page of this size (mm): swapped for landscape."""
        if self.upright_is_along(width, height):
            return Point(self.across, self.along)
        return Point(self.along, self.across)

    def by_page(self) -> dict[str, tuple[float, float]]:
        """Return the horizontal and vertical factors of every paper in both orientations, by the page's key (``a4l``).
        """
        factors = {}
        for paper, (short, long) in PAPERS.items():
            for orientation in ORIENTATIONS:
                size = (long, short) if orientation == "landscape" else (short, long)
                point = self.on_page(*size)
                factors[page_key(paper, orientation)] = (point.x, point.y)
        return factors


@dataclass(frozen=True, slots=True)
class PrintSetupReply:
    """Everything the page says to one form.

    ``state``: ``empty``, ``waiting`` (one reading is missing), ``measured``, ``true`` (as far as a ruler can tell),
    ``refused``. ``remains``: the effect of a reading error, mm on a line of 160 mm, along and across. ``scaling``: the
    print dialog must be scaling.
    """

    page: Page
    page_key: str
    paper: str
    bars: Bars
    printed: str
    state: str
    correction: PrinterCorrection | None = None
    remains: Point = ORIGIN
    missing: str = ""
    faults: tuple[Fault, ...] = ()
    scaling: bool = False

    @property
    def applied(self) -> bool:
        """Whether the sheet is printed with the stored correction."""
        return self.printed == "corrected"


def _upright_is_along(width: float, height: float, edge: str, lead: float) -> bool:
    long = max(width, height)
    by_long_edge = edge == "long" and long <= lead + SAME_PATH
    # The feed runs across the edge that goes in first.
    return (height < width) if by_long_edge else (height > width)


def percent(factor: float) -> str:
    """A factor as a signed change: 1.008 gives "+0.8 %"."""
    change = (factor - 1.0) * 100.0
    written = quantity.fixed(change, 1)
    plus = "+" if change > 0 and written.strip("0.") else ""
    return f"{plus}{written}{NO_BREAK_SPACE}%"


def millimetres(length: float, decimals: int = 0) -> str:
    """A length with its unit."""
    return f"{quantity.fixed(length, decimals)}{NO_BREAK_SPACE}mm"


def _is_factor(value: object) -> bool:
    real = isinstance(value, (int, float)) and not isinstance(value, bool)
    return real and math.fabs(float(value) - 1.0) <= LIMIT + 1e-9  # type: ignore[arg-type]


def _refused_correction(sent: object) -> InputError:
    low, high = quantity.fixed(1.0 - LIMIT, 2), quantity.fixed(1.0 + LIMIT, 2)
    return InputError(Fault("correction", str(sent)[:40], words.bad_correction(str(sent), low, high)))


def correction_of(request: Mapping[str, Any]) -> Point:
    """Return the horizontal and vertical factors of a request for a PDF; 1 and 1 without any.

    Raises InputError for anything but two numbers from 0.97 to 1.03.
    """
    sent = request.get("correction")
    if sent is None:
        return UNCORRECTED
    if not isinstance(sent, list) or len(sent) != 2 or not all(_is_factor(value) for value in sent):
        raise _refused_correction(sent)
    return Point(float(sent[0]), float(sent[1]))


def saved_correction(request: Mapping[str, Any]) -> PrinterCorrection | None:
    """Return the stored correction of a request; None if there is none.

    Raises InputError for one that this page would not have stored.
    """
    sent = request.get("kept")
    if sent is None:
        return None
    if not isinstance(sent, dict):
        raise _refused_correction(sent)
    along, across, edge, lead = (sent.get(name) for name in ("along", "across", "edge", "lead"))
    known = edge in EDGES and isinstance(lead, (int, float)) and 0 < lead < 2000
    if not known or not _is_factor(along) or not _is_factor(across):
        raise _refused_correction(sent)
    return PrinterCorrection(float(along), float(across), edge, float(lead))  # type: ignore[arg-type]


def _example(true: float) -> str:
    return quantity.plain(true - 0.75)


def _reading(reader: Reader, name: str, true: float) -> float | None:
    """Return one reading in mm; None if it is missing or cannot be used, which is then a fault."""
    typed, label = reader.text(name), reader.label(name)
    if not typed:
        return None
    example = _example(true)
    try:
        value, unit = quantity.split_number(typed)
        if unit not in ("", "mm", "cm"):
            raise QuantityError("unit", unit)
    except QuantityError as problem:
        accepted = words.accepted(label, example)
        reader.fault(
            name, inputs.unreadable(label, typed, problem.reason, problem.fragment, accepted), problem.fragment
        )
        return None
    if value <= 0:
        message = words.is_zero if value == 0 else words.below_zero
        reader.fault(name, message(label, typed, example))
        return None
    if not unit and math.fabs(value * 10.0 / true - 1.0) <= LIMIT:
        offer = Offer(words.centimetre_offer(typed), ((name, f"{typed} cm"),))
        reader.faults.append(Fault(name, typed, words.in_centimetres(label, typed), "", (offer,)))
        return None
    return value * 10.0 if unit == "cm" else value


def _share(ratio: float) -> str:
    """Return a ratio in readable words."""
    if not 0.1 <= ratio <= 10.0:
        return "less than a tenth of" if ratio < 1 else "more than ten times"
    return f"{quantity.fixed(100.0 * ratio, 0)}{NO_BREAK_SPACE}% of"


def _fits(reading: float, true: float) -> bool:
    return math.fabs(true / reading - 1.0) <= LIMIT


def _swapped(reader: Reader, place: Bars, upright: float, level: float) -> bool:
    """Note readings that fit each other's bar."""
    if _fits(upright, place.upright) or not (_fits(upright, place.level) and _fits(level, place.upright)):
        return False
    typed = {name: reader.text(name) for name in ("upright", "level")}
    offer = Offer(words.SWAP_OFFER, (("upright", typed["level"]), ("level", typed["upright"])))
    for name, other in (("upright", "level"), ("level", "upright")):
        message = words.swapped(reader.label(name), typed[name], reader.label(other))
        # One correction mends both faults: it is offered once.
        reader.faults.append(Fault(name, typed[name], message, "", (offer,) if name == "upright" else ()))
    return True


def _beyond(
    reader: Reader, readings: Mapping[str, float], true: Mapping[str, float], factors: Mapping[str, float]
) -> bool:
    """Note every reading that no printer explains; return whether there is one."""
    is_beyond = False
    for name, factor in factors.items():
        if math.fabs(factor - 1.0) > LIMIT + 1e-9:
            typed, share = reader.text(name), _share(readings[name] / true[name])
            limit = f"{quantity.plain(100.0 * LIMIT)}{NO_BREAK_SPACE}%"
            reader.fault(name, words.scaled(reader.label(name), typed, share, limit))
            is_beyond = True
    return is_beyond


def _choices(form: Mapping[str, str], kept: PrinterCorrection | None) -> dict[str, str]:
    """Return the sheet's four choices; raises InputError for an unknown one."""
    reader = Reader(form, _BY_NAME)
    chosen = {field.name: reader.choice(field.name) for field in FIELDS if field.kind == "choice"}
    if chosen["printed"] == "corrected" and kept is None:
        reader.fault("printed", words.NO_CORRECTION_TO_PRINT)
    reader.finish()
    return chosen


def _sheet(
    chosen: Mapping[str, str], kept: PrinterCorrection | None, place: Bars, along_upright: bool
) -> tuple[Page, str, str]:
    """The page, its key and its paper's name."""
    paper = words.paper_name(chosen["paper"], chosen["orientation"])
    printed = words.PLAIN_SHEET
    if chosen["printed"] == "corrected" and kept is not None:
        printed = words.on_sheet(percent(kept.along), percent(kept.across))
    writing = SetupWriting(millimetres(place.upright), millimetres(place.level), along_upright, paper, printed)
    page = setup_page(chosen["paper"], chosen["orientation"], writing)
    return page, page_key(chosen["paper"], chosen["orientation"]), paper


def _lead(place: Bars, edge: str) -> float:
    size = (place.width, place.height)
    return max(size) if edge == "long" else min(size)


def set_up(form: Mapping[str, str], kept: PrinterCorrection | None) -> PrintSetupReply:
    """Return the sheet that a form asks for, and the correction from its readings.

    Readings that cannot be used are faults of the result; there is a sheet all the same. Raises InputError if a choice
    of the sheet itself cannot be used.
    """
    chosen = _choices(form, kept)
    place = bars(chosen["paper"], chosen["orientation"])
    lead = _lead(place, chosen["edge"])
    along_upright = _upright_is_along(place.width, place.height, chosen["edge"], lead)
    page, key, paper = _sheet(chosen, kept, place, along_upright)
    sheet = PrintSetupReply(page, key, paper, place, chosen["printed"], "empty")
    reader = Reader(form, _BY_NAME)
    true = {"upright": place.upright, "level": place.level}
    read = {name: _reading(reader, name, length) for name, length in true.items()}
    if reader.faults:
        return _with(sheet, "refused", faults=tuple(reader.faults))
    readings = {name: value for name, value in read.items() if value is not None}
    if len(readings) < len(true):
        missing = next(name for name in true if name not in readings)
        return _with(sheet, "waiting", missing=missing) if readings else sheet
    if _swapped(reader, place, readings["upright"], readings["level"]):
        return _with(sheet, "refused", faults=tuple(reader.faults))
    return _measured(sheet, reader, readings, kept, PrinterCorrection(1.0, 1.0, chosen["edge"], lead))


def _with(sheet: PrintSetupReply, state: str, **more: Any) -> PrintSetupReply:
    return PrintSetupReply(sheet.page, sheet.page_key, sheet.paper, sheet.bars, sheet.printed, state, **more)


def _measured(
    sheet: PrintSetupReply,
    reader: Reader,
    readings: Mapping[str, float],
    kept: PrinterCorrection | None,
    feed: PrinterCorrection,
) -> PrintSetupReply:
    """Return the correction from two readable readings; ``feed``: how the paper runs."""
    place = sheet.bars
    true = {"upright": place.upright, "level": place.level}
    base = kept.on_page(place.width, place.height) if sheet.applied and kept else UNCORRECTED
    factors = {
        "upright": base.y * true["upright"] / readings["upright"],
        "level": base.x * true["level"] / readings["level"],
    }
    if _beyond(reader, readings, true, factors):
        return _with(sheet, "refused", faults=tuple(reader.faults), scaling=True)
    left = {name: READING_ERROR / true[name] * COMMON_LINE for name in true}
    names = ("upright", "level") if feed.upright_is_along(place.width, place.height) else ("level", "upright")
    correction = PrinterCorrection(factors[names[0]], factors[names[1]], feed.edge, feed.lead)
    is_true = all(math.fabs(readings[name] - true[name]) <= READING_ERROR + 1e-9 for name in true)
    remains = Point(left[names[0]], left[names[1]])
    return _with(sheet, "true" if is_true else "measured", correction=correction, remains=remains)


def document(setup: PrintSetupReply) -> Document:
    """The set-up sheet as a document to be written."""
    return Document((setup.page,), f"{words.TITLE}, {setup.paper}", subject=words.TITLE)
