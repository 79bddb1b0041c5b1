"""The neutral-current form read into one frozen problem."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pycore import quantity
from pycore.accuracy.hand import HANDS, PRACTISED, SQUARE_SHARE, Hand
from pycore.calculators.neutral_current.circuit import StarLoad
from pycore.calculators.neutral_current.fields import BY_NAME
from pycore.errors import Fault
from pycore.forms.common import labels_of
from pycore.forms.conventions import MARKS
from pycore.forms.printed import read_printed
from pycore.forms.reading import DrawnValue, LagAngle, Reader, pieces
from pycore.forms.title_block import read_by_hand, read_place
from pycore.quantity import NumberFormat, writing_for
from pycore.words import inputs

USUAL_DIGIT = 0.01
"""What one digit is (A) where no reading shows it."""
LEAST_SHARE = 1e-6
"""Smallest share of the largest current that a line current may have."""


@dataclass(frozen=True, slots=True)
class NeutralProblem:
    """A neutral-current form, checked: the load, the reading, the conventions.

    ``choices`` holds every choice field's value; ``scale`` is amperes per centimetre or None.
    """

    load: StarLoad
    lags: tuple[LagAngle, LagAngle, LagAngle]
    measured: float | None
    scale: float | None
    place: str
    form: Mapping[str, str]
    """Name, group and date as they are to be printed; "" where left to be written by hand."""
    unprintable: tuple[str, ...]
    """Labels of those that have characters the lettering lacks: they print blank."""
    choices: Mapping[str, str]
    typed: Mapping[str, str]
    writing: NumberFormat
    faults: tuple[Fault, ...] = ()
    """Faults of optional fields: the answer stands without them."""

    meter: tuple[float, float, float] = (2.0, 5.0, 0.01)
    """A meter's limit: per cent of reading, digits, and what one digit is (A)."""
    digit_from_readings: bool = False
    """Whether one digit was taken from the readings as typed, because the form does not name it."""
    readings: tuple[float, ...] = ()
    """Every reading of the neutral (A); ``measured`` is their mean."""
    drawn: DrawnValue | None = None
    """What was read off a drawing."""
    hand: Hand = PRACTISED
    """The hand that draws."""
    second: float | None = None
    """No phasors of a second quantity stand on this page's sheets."""

    @property
    def is_example(self) -> bool:
        """Whether the currents are still those of the example, whose place is then the sheet's."""
        return all(self.typed[name] == BY_NAME[name].default for name in ("i1", "i2", "i3"))

    def __getitem__(self, name: str) -> str:
        return self.choices[name]


_CHOICES = tuple(name for name, field in BY_NAME.items() if field.kind == "choice")


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


def _hand(reader: Reader, chosen: str) -> Hand:
    """The hand that draws; the fields of a hand of one's own are read only when it is chosen."""
    if chosen != "own":
        return HANDS[chosen]
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
    choices = {name: reader.choice(name) for name in _CHOICES}
    hand = reader.optional(lambda: _hand(reader, choices["hand"]))
    read_printed(reader, choices)
    scale = reader.positive("scale")
    place = reader.optional(lambda: read_place(reader)) or ""
    by_hand, unprintable = reader.optional(lambda: read_by_hand(reader, choices["paper"]))
    reader.finish()
    mark = MARKS[choices["decimal"]]
    load = StarLoad(currents, (lags[0].degrees, lags[1].degrees, lags[2].degrees), choices["sequence"])
    typed = {name: reader.text(name) for name in BY_NAME}
    writing = writing_for(currents, "A", mark)
    return NeutralProblem(
        load, lags, measured, scale, place, by_hand, unprintable, choices, typed, writing, tuple(reader.passed), meter,
        digit is None, readings, drawn, hand,
    )  # fmt: skip
