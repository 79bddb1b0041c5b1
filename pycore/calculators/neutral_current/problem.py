"""The neutral-current form read into one frozen problem."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from pycore import quantity
from pycore.accuracy.hand import HANDS, PRACTISED, SQUARE_SHARE, Hand
from pycore.calculators.neutral_current.circuit import StarLoad
from pycore.calculators.neutral_current.fields import BY_NAME, FIELDS
from pycore.forms.common import labels_of
from pycore.forms.reading import DrawnValue, LagAngle, Reader, pieces
from pycore.sums.problem import SheetProblem, read_sheet
from pycore.words import inputs

USUAL_DIGIT = 0.01
"""What one digit is (A) where no reading shows it."""
LEAST_SHARE = 1e-6
"""Smallest share of the largest current that a line current may have."""


@dataclass(frozen=True, slots=True)
class NeutralProblem:
    """A neutral-current form, checked: what every sheet needs (``sheet``), the load, the readings, and the hand."""

    sheet: SheetProblem
    load: StarLoad
    lags: tuple[LagAngle, LagAngle, LagAngle]
    measured: float | None
    """The mean of the readings (A)."""
    readings: tuple[float, ...]
    """Every reading of the neutral (A)."""
    drawn: DrawnValue | None
    """What was read off a drawing."""
    meter: tuple[float, float, float]
    """A meter's limit: per cent of reading, digits, and what one digit is (A)."""
    digit_from_readings: bool
    """Whether one digit was taken from the readings as typed, because the form does not name it."""
    hand: Hand
    """The hand that draws."""


def _currents(reader: Reader) -> tuple[float, float, float]:
    currents = [reader.current(name) for name in ("i1", "i2", "i3")]
    known = [value for value in currents if value is not None]
    largest = max(known, default=0.0)
    if len(known) == 3 and largest == 0.0:
        for name in ("i1", "i2", "i3"):
            reader.fault(name, inputs.all_zero(reader.label(name), reader.text(name)))
    for name, value in zip(("i1", "i2", "i3"), currents, strict=True):
        if value and value < LEAST_SHARE * largest:
            message = inputs.apart(reader.label(name), reader.text(name), inputs.MILLIONTH)
            reader.fault(name, message)
    return (currents[0] or 0.0, currents[1] or 0.0, currents[2] or 0.0)


def _hand(reader: Reader) -> Hand:
    """The hand that draws; the fields of a hand of one's own are read only when it is chosen."""
    chosen = reader.text("hand")
    if chosen != "own":
        return HANDS.get(chosen, PRACTISED)
    length = reader.number("hand-mm", "mm", 0.05, 10.0)
    angle = reader.number("hand-degrees", "°", 0.05, 10.0)
    return Hand(length, angle, SQUARE_SHARE * angle)


def finest_digit(reader: Reader, currents: Sequence[float], readings: Sequence[float]) -> float:
    """Return the value (A) of the last digit of the most finely typed reading: zeros at the end are often left out.

    ``currents`` and ``readings`` are the values read (A), 0 or missing where a text could not be read.
    """
    texts = [reader.text(name) for name, value in zip(("i1", "i2", "i3"), currents, strict=True) if value]
    if readings:
        typed = reader.text("measured")
        texts += pieces(typed) if len(readings) > 1 else [typed]
    return min((quantity.last_digit(text, "A") for text in texts), default=USUAL_DIGIT)


def read_problem(form: Mapping[str, str]) -> NeutralProblem:
    """Read a form; raises InputError with every fault found."""
    reader = Reader(form, BY_NAME, labels_of(form))
    currents = _currents(reader)
    lags = (reader.lag("a1"), reader.lag("a2"), reader.lag("a3"))
    readings = reader.optional(lambda: reader.currents("measured"))
    measured = math.fsum(readings) / len(readings) if readings else None
    drawn = reader.optional(lambda: reader.drawn("drawn"))
    digit = reader.optional(lambda: reader.amount("digit", "A", 1e-9, 1000.0, optional=True))
    meter = (
        reader.optional(lambda: reader.number("percent", "%", 0.0, 50.0, inputs.LIMIT_BEYOND)),
        reader.optional(lambda: reader.number("digits", "", 0.0, 1000.0)),
        digit or finest_digit(reader, currents, readings),
    )
    hand = reader.optional(lambda: _hand(reader))
    sheet = read_sheet(reader, FIELDS, currents, "A")
    # The place of the example stays with its currents, whatever their angles.
    example = all(sheet.typed[name] == BY_NAME[name].default for name in ("i1", "i2", "i3"))
    load = StarLoad(currents, (lags[0].degrees, lags[1].degrees, lags[2].degrees), sheet["sequence"])
    return NeutralProblem(
        replace(sheet, is_example=example), load, lags, measured, readings, drawn, meter, digit is None, hand
    )
