"""The neutral-current form read into one frozen problem."""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from pycore import lettering
from pycore.accuracy.hand import HANDS, PRACTISED, SQUARE_SHARE, Hand
from pycore.calculators.neutral_current.circuit import StarLoad
from pycore.calculators.neutral_current.fields import BY_NAME, labels_of
from pycore.errors import Fault, Offer
from pycore.forms.reading import Drawn, Lag, Reader
from pycore.quantity import Writing, writing_for
from pycore.sheet.furniture import lower_cells
from pycore.sheet.lettered import width_of
from pycore.sheet.media import TOO_SMALL_FOR_READING
from pycore.words import inputs, moves_list

LEAST_SHARE = 1e-6
"""How small a line may be beside the largest: beyond this no drawing or reckoning can tell it."""
PLACE_WIDTH = 85.0
LONGEST_PLACE = 60


@dataclass(frozen=True, slots=True)
class NeutralProblem:
    """Everything a neutral-current form says, checked: the load, the reading, the conventions.

    ``choices`` holds every choice field's value; ``scale`` is amperes per centimetre or None.
    """

    load: StarLoad
    lags: tuple[Lag, Lag, Lag]
    measured: float | None
    scale: float | None
    place: str
    given: Mapping[str, str]
    """Name, group and date as they are to be printed; "" where left to be written by hand."""
    unprintable: tuple[str, ...]
    """Labels of those of them that hold signs the lettering lacks: they print blank."""
    choices: Mapping[str, str]
    typed: Mapping[str, str]
    writing: Writing
    faults: tuple[Fault, ...] = ()
    """Faults of optional fields: the answer stands without them."""

    meter: tuple[float, float, float] = (2.0, 5.0, 0.01)
    """A meter's limit: per cent of reading, digits, and what one digit is (A)."""
    readings: tuple[float, ...] = ()
    """Every reading of the neutral (A); ``measured`` is their mean."""
    drawn: Drawn | None = None
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
    read = [reader.current(name) for name in ("i1", "i2", "i3")]
    known = [value for value in read if value is not None]
    largest = max(known, default=0.0)
    if len(known) == 3 and largest == 0.0:
        for name in ("i1", "i2", "i3"):
            reader.fault(name, inputs.all_zero(reader.label(name), reader.given(name)))
    for name, value in zip(("i1", "i2", "i3"), read, strict=True):
        if value and value < LEAST_SHARE * largest:
            message = inputs.apart(reader.label(name), reader.given(name), inputs.MILLIONTH)
            reader.fault(name, message)
    return (read[0] or 0.0, read[1] or 0.0, read[2] or 0.0)


def read_place(reader: Reader) -> str:
    """The place for the title block; "" when it cannot be printed, with a fault."""
    given = " ".join(reader.given("place").split())
    if len(given) > LONGEST_PLACE:
        reader.fault("place", inputs.too_long_text(reader.label("place"), LONGEST_PLACE))
        return ""
    missing = lettering.missing(given, "regular")
    if missing:
        reader.fault("place", inputs.no_such_letters(reader.label("place"), missing), missing)
        return ""
    if width_of(given, 2.5) > PLACE_WIDTH:
        reader.fault("place", inputs.too_wide_text(reader.label("place")))
        return ""
    return given


BY_HAND = ("who", "group", "date")
LONGEST_BY_HAND = 40


def read_by_hand(reader: Reader, paper: str) -> tuple[dict[str, str], tuple[str, ...]]:
    """Name, group and date: what the lettering cannot print is left to be written by hand."""
    printed: dict[str, str] = {}
    widths = dict(zip(BY_HAND, lower_cells(paper), strict=True))
    blank: list[str] = []
    for name in BY_HAND:
        given = " ".join(reader.given(name).split())
        if len(given) > LONGEST_BY_HAND:
            reader.fault(name, inputs.too_long_text(reader.label(name), LONGEST_BY_HAND))
        elif not lettering.missing(given, "regular") and width_of(given, 2.5) > widths[name]:
            reader.fault(name, inputs.too_wide_text(reader.label(name)))
        elif lettering.missing(given, "regular"):
            blank.append(reader.label(name))
            given = ""
        printed[name] = given
    return printed, tuple(blank)


def _hand(reader: Reader, chosen: str) -> Hand:
    """The hand that draws; the fields of a hand of one's own are read only when it is chosen."""
    if chosen != "own":
        return HANDS[chosen]
    length = reader.number("hand-mm", "mm", 0.05, 10.0)
    angle = reader.number("hand-degrees", "°", 0.05, 10.0)
    return Hand(length, angle, SQUARE_SHARE * angle)


def read_printed(reader: Reader, choices: Mapping[str, str]) -> None:
    """A sheet for easy reading needs its paper; on a smaller one the usual sheet stands, and that is said."""
    paper = choices["paper"]
    if choices["print"] == "usual" or paper not in TOO_SMALL_FOR_READING:
        return
    offers = tuple(Offer(moves_list.use_paper(larger), (("paper", larger),)) for larger in ("A4", "A3"))
    reader.passed.append(Fault("print", choices["print"], moves_list.needs_larger(paper), offers=offers))


def read_problem(form: Mapping[str, str]) -> NeutralProblem:
    """Read a form; raises InputError with every fault found."""
    reader = Reader(form, BY_NAME, labels_of(form))
    currents = _currents(reader)
    lags = (reader.lag("a1"), reader.lag("a2"), reader.lag("a3"))
    readings = reader.optional(lambda: reader.currents("measured"))
    measured = math.fsum(readings) / len(readings) if readings else None
    drawn = reader.optional(lambda: reader.drawn("drawn"))
    meter = (
        reader.optional(lambda: reader.number("percent", "%", 0.0, 50.0, inputs.LIMIT_BEYOND)),
        reader.optional(lambda: reader.number("digits", "", 0.0, 1000.0)),
        reader.optional(lambda: reader.number("digit", "A", 1e-9, 1000.0)),
    )
    choices = {name: reader.choice(name) for name in _CHOICES}
    hand = reader.optional(lambda: _hand(reader, choices["hand"]))
    read_printed(reader, choices)
    scale = reader.positive("scale")
    place = reader.optional(lambda: read_place(reader)) or ""
    given, unprintable = reader.optional(lambda: read_by_hand(reader, choices["paper"]))
    reader.finish()
    mark = "," if choices["decimal"] == "comma" else "."
    load = StarLoad(currents, (lags[0].degrees, lags[1].degrees, lags[2].degrees), choices["sequence"])
    typed = {name: reader.given(name) for name in BY_NAME}
    writing = writing_for(currents, "A", mark)
    return NeutralProblem(
        load, lags, measured, scale, place, given, unprintable, choices, typed, writing, tuple(reader.passed), meter,
        readings, drawn, hand,
    )  # fmt: skip
