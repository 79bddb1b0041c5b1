"""Angles, lengths and scales as text, and the notation on which they depend."""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Any

from pycore import quantity
from pycore.constructions.construction import Arm, Step
from pycore.drawing import Ink
from pycore.quantity import NO_BREAK_SPACE, NumberFormat
from pycore.words.phrase import Phrase
from pycore.words.sums import SumWords


def degrees_text(degrees: float, mark: str) -> str:
    """Return the size of an angle to a tenth of a degree, without a needless zero: 120°, 87.5°."""
    size = -degrees if degrees < 0 else degrees
    return quantity.plain(round(size, 1), mark) + "°"


def whole_degrees(degrees: float) -> str:
    """Return an angle as it is read off a learner's own drawing: 157°."""
    return f"{round(degrees)}°"


def supplement_text(reading: float) -> str:
    """Return 180° minus an angle that is read in whole degrees."""
    return f"{180 - round(reading)}°"


def millimetres_text(millimetres: float, mark: str) -> str:
    """Return a length as every sentence, table and lesson writes it: 64.5 mm."""
    return f"{quantity.plain(quantity.on_ruler(math.fabs(millimetres)), mark)}{NO_BREAK_SPACE}mm"


def length_text(millimetres: float, mark: str) -> str:
    """Return a length in mm and cm: 92 mm (9.2 cm)."""
    in_cm = quantity.plain(quantity.on_ruler(math.fabs(millimetres)) / 10, mark)
    return f"{millimetres_text(millimetres, mark)} ({in_cm}{NO_BREAK_SPACE}cm)"


def wider_than_right(angle: float) -> int:
    """Return 1 for an angle of more than 90 degrees (as written), 0 for 90, -1 for less."""
    size = round(-angle if angle < 0 else angle, 1)
    return (size > 90.0) - (size < 90.0)


@dataclass(frozen=True, slots=True)
class CompanionPhasors:
    """Phasors of a second quantity on the same sheet.

    Their arms (numbered from 1, sizes in SI), number format, name of the quantity, and the reason for drawing them.
    Their keys (``c1`` ...) have tags like those of other phasors.
    """

    arms: tuple[Arm, ...]
    writing: NumberFormat
    words: SumWords
    why: Phrase = ()
    ink: Ink = "ink"


@dataclass(frozen=True, slots=True)
class OwnVoltage:
    """The voltage that a current lags: its tag, its angle, and the angle of lag (degrees, negative for a lead)."""

    tag: Phrase
    angle: float
    lag: float


@dataclass(frozen=True, slots=True)
class Notation:
    """What sentences need to know: tags by phasor key, names of lines, number format, protractor."""

    tags: Mapping[str, Phrase]
    lines: tuple[str, ...]
    reference: Phrase
    voltage: Phrase
    writing: NumberFormat
    words: SumWords
    protractor: str = "180"
    polar: bool = False
    companions: CompanionPhasors | None = None
    own_steps: Mapping[str, Callable[[Any, Step], tuple[Phrase, Phrase]]] = field(default_factory=dict)
    """Sentence and why of the kinds of step that one calculator alone has, from the construction on its paper."""
    origins: Mapping[str, Phrase] = field(default_factory=dict)
    """Where a drawn phasor comes from, by key, if it is not the one that was typed: the sentence stands at its step."""
    own_voltages: Mapping[str, OwnVoltage] = field(default_factory=dict)
    """Each current's own voltage by the current's key, where the lags differ: each angle follows from them."""
    units: Mapping[str, str] = field(default_factory=dict)
    """Units of arms that have another than the sum, by key: W and var beside VA."""
    asked_arm: str = ""
    """The key of the arm that a question paper marks, by its size; "": it marks the result of the drawing."""
    unmarked: str = ""
    """The end of the question that a question paper leaves out, as it marks one result."""

    def sealed(self) -> "Notation":
        """Return the same with mappings that cannot be changed."""
        return replace(
            self, tags=MappingProxyType(dict(self.tags)), own_steps=MappingProxyType(dict(self.own_steps)),
            origins=MappingProxyType(dict(self.origins)),
            own_voltages=MappingProxyType(dict(self.own_voltages)), units=MappingProxyType(dict(self.units)),
        )  # fmt: skip

    def unit_of(self, key: str) -> str:
        """The unit of a phasor, by its key, with the prefix of the problem's numbers."""
        unit = self.units.get(key, "")
        prefix = self.writing.unit[0] if self.writing.factor != 1.0 else ""
        return prefix + unit if unit else self.writing.unit

    def amount_of(self, key: str, amount: float) -> str:
        """A result with the unit of the phasor that it is."""
        return self.writing.number(amount) + NO_BREAK_SPACE + self.unit_of(key)

    def short_of(self, key: str, amount: float) -> str:
        """An arm's amount with its own unit."""
        return self.writing.as_typed(amount) + NO_BREAK_SPACE + self.unit_of(key)

    def measured(self, key: str, millimetres: float, scale: float) -> str:
        """The amount that a measured length represents, multiplied out from the length and the scale as printed:
        37 mm at 1 cm = 2 A is 7.4 A.

        ``millimetres`` is the length on paper before it is read, ``scale`` the amount (SI) of 1 cm.
        """
        read, per_centimetre = quantity.on_ruler(millimetres), float(quantity.plain(scale / self.writing.factor))
        return quantity.plain(read / 10.0 * per_centimetre, self.mark) + NO_BREAK_SPACE + self.unit_of(key)

    @property
    def mark(self) -> str:
        """The decimal mark."""
        return self.writing.mark

    def scale(self, scale: float) -> str:
        """Return the scale in words: 1 cm = 2 A."""
        return _scale_text(self.writing, scale)

    def second(self, scale: float) -> str:
        """Return the companions' scale in words; "" if there are none."""
        return _scale_text(self.companions.writing, scale) if self.companions else ""

    def scales(self, scale: float, second: float) -> str:
        """Return both scales in few words: 1 cm = 50 V, 5 A."""
        beside = f", {self.companions.writing.scale(second)}" if self.companions else ""
        return self.scale(scale) + beside


def _scale_text(writing: NumberFormat, scale: float) -> str:
    return f"1{NO_BREAK_SPACE}cm{NO_BREAK_SPACE}={NO_BREAK_SPACE}{writing.scale(scale)}"


@dataclass(frozen=True, slots=True)
class SheetWords:
    """The notes beside a drawing, and its description for people who cannot see it; "": the table, read aloud.
    Of a problem's notes: ``direction`` is the sentence that says how the drawing lies on the paper, and ``values`` are
    the values in sentences for who reads them without a drawing, "" where the notes have sentences already."""

    notes: tuple[str, ...]
    description: str = ""
    direction: str = ""
    values: str = ""
