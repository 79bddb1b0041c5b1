"""From the texts of a form to values; all faults are collected."""

import math
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import TypeVar

from pycore import quantity, trig
from pycore.errors import Fault, InputError, Offer
from pycore.forms.conventions import MARKS
from pycore.forms.fields import Field
from pycore.quantity import NO_BREAK_SPACE, QuantityError
from pycore.words import inputs

LARGEST_CURRENT = 1e5
SMALLEST_CURRENT = 1e-6
MOST_READINGS = 50
FAR_APART = 2.0
"""Repeated readings may differ at most by this factor; beyond it a decimal mark or a digit is wrong."""
LONGEST_LINE = 2000.0
Value = TypeVar("Value")
_LAG_WORDS = {"lag": 1, "lagging": 1, "ind": 1, "lead": -1, "leading": -1, "cap": -1}


_DEGREE_WORDS = ("deg", "degree", "degrees")


@dataclass(frozen=True, slots=True)
class LagAngle:
    """An angle of lag in degrees (negative: lead).

    ``factor``: the text, if it was typed as a power factor. ``bare``: the number as typed, if it has no unit and was
    read as degrees.
    """

    degrees: float
    factor: str = ""
    bare: str = ""

    @property
    def doubtful(self) -> bool:
        """Whether it is a number up to 1 without a unit or a side, which may be meant as a power factor."""
        return self.bare != "" and 0.0 < self.degrees <= 1.0

    def echo(self, mark: str) -> dict[str, str]:
        """Return the angle in both forms, and the texts that set it to either side.

        ``said`` is shown beside the field; empty for a plain zero.
        """
        leads = self.degrees < 0
        size = -self.degrees if leads else self.degrees
        size_text = quantity.plain(round(size, 2), mark)
        side = "" if size == 0 else (" lead" if leads else " lag")
        turned = {"as_lag": size_text, "as_lead": quantity.MINUS + size_text}
        if self.factor:
            number = " ".join(word for word in self.factor.lower().split() if word not in _LAG_WORDS)
            turned = {"as_lag": f"{number} lag", "as_lead": f"{number} lead"}
        factor = quantity.fixed(trig.cosine(size), 3, mark) if size <= 90.0 else ""
        degrees = size_text + "°" + side
        shown_angle = degrees if side or self.factor else ""
        return {
            "degrees": degrees,
            "said": shown_angle,
            "factor": factor,
            "sense": "lead" if leads else "lag",
            **turned,
        }


@dataclass(frozen=True, slots=True)
class DrawnValue:
    """A value read off a drawing: a quantity (SI unit), or the length of its line (mm)."""

    quantity: float | None = None
    millimetres: float | None = None

    def value(self, factor: float) -> float:
        """Return the quantity, at ``factor`` mm for each unit."""
        if self.quantity is not None:
            return self.quantity
        return (self.millimetres or 0.0) / factor


def pieces(text: str) -> list[str]:
    """Return the single readings of a text: numbers separated by spaces, semicolons or new lines.

    Each may have a unit; a unit only after the last one belongs to all.
    """
    words = text.replace(";", " ").split()
    numbers: list[str] = []
    for word in words:
        if numbers and not (word[0].isdigit() or word[0] in ".,+-−"):
            numbers[-1] += word
        else:
            numbers.append(word)
    units = [piece.lstrip("0123456789.,+-−eE") for piece in numbers]
    if len(numbers) > 1 and units[-1] and not any(units[:-1]):
        numbers = [piece + units[-1] for piece in numbers[:-1]] + numbers[-1:]
    return numbers


PER_CENTIMETRE = re.compile(r"\s*1\s*cm\s*=\s*(.+)|(.+?)\s*(?:/|per)\s*cm\s*")


def _per_centimetre(typed: str) -> str:
    """Return the amount of a scale as the sheets write it ("1 cm = 2 A"), or by the centimetre ("2 A/cm")."""
    found = PER_CENTIMETRE.fullmatch(typed)
    return (found[1] or found[2]) if found else typed


@dataclass(slots=True)
class Reader:
    """Reads the fields of one form and collects faults; ``finish`` raises them all at once."""

    form: Mapping[str, str]
    fields: Mapping[str, Field]
    labels: Mapping[str, str] = field(default_factory=dict)
    faults: list[Fault] = field(default_factory=list)
    passed: list[Fault] = field(default_factory=list)
    """Faults of optional fields, without which the answer stands."""

    def text(self, name: str) -> str:
        """Return the typed text, or the field's default if the form does not contain it."""
        return str(self.form.get(name, self.fields[name].default)).strip()

    def label(self, name: str) -> str:
        """Return the label of a field, with the name of the line as chosen in the form."""
        return self.labels.get(name, self.fields[name].label)

    def _written(self, message: str) -> str:
        """A message with the decimal mark of the form."""
        return inputs.with_mark(message, MARKS.get(self.form.get("decimal", ""), "."))

    def fault(self, name: str, message: str, fragment: str = "") -> None:
        """Note that a field cannot be used."""
        self.faults.append(Fault(name, self.text(name), self._written(message), fragment))

    def awaited(self, name: str, message: str) -> None:
        """Note that an empty field must be filled before there is an answer."""
        self.faults.append(Fault(name, "", self._written(message), awaited=True))

    def question(self, name: str, message: str, meant: Sequence[str]) -> None:
        """Ask which of several texts is meant by what was typed; the answer meanwhile takes it as it is read."""
        offers = tuple(Offer(text, ((name, text),)) for text in meant)
        self.passed.append(Fault(name, self.text(name), message, offers=offers, question=True))

    def optional(self, read: Callable[[], Value]) -> Value:
        """Read an optional field; a fault is noted but does not reject the form."""
        before = len(self.faults)
        value = read()
        self.passed += self.faults[before:]
        del self.faults[before:]
        return value

    def finish(self) -> None:
        """Raise InputError with all faults, if there are any."""
        if self.faults:
            raise InputError(*self.faults)

    def choice(self, name: str) -> str:
        """Return one of a field's options; the default if the field is empty and "" is not an option."""
        typed = self.text(name)
        offered = [choice.value for choice in self.fields[name].options]
        if typed in offered:
            return typed
        if typed == "":
            return self.fields[name].default
        accepted = ", ".join(value for value in offered if value)
        self.fault(name, inputs.bad_choice(self.label(name), typed, accepted))
        return self.fields[name].default

    def current(self, name: str, *, optional: bool = False) -> float | None:
        """Return a current in amperes, 0 or more; None if empty and optional, or unusable."""
        typed, label = self.text(name), self.label(name)
        if optional and not typed:
            return None
        try:
            value = quantity.read(typed, "A")
        except QuantityError as problem:
            example = self.fields[name].default or "11.2"
            accepted = inputs.accepted_current(example)
            message = inputs.unreadable(label, typed, problem.reason, problem.fragment, accepted)
            self.fault(name, message, problem.fragment)
            return None
        return self._in_range(name, label, typed, value)

    def currents(self, name: str) -> tuple[float, ...]:
        """Return a current read once or repeatedly, such as ``10.2 10.4 10.3``; empty if nothing was typed.

        Digits grouped in threes (``12 500``) are one number, unless both parts look like readings (``99 101``).
        """
        typed = self.text(name)
        several = pieces(typed)
        if len(several) < 2 or (_is_number(typed) and not _alike(several)):
            one = self.current(name, optional=True)
            return () if one is None else (one,)
        if len(several) > MOST_READINGS:
            self.fault(name, inputs.too_many(self.label(name), len(several), MOST_READINGS))
            return ()
        read = [self._one_of_several(name, piece) for piece in several]
        known = [value for value in read if value is not None]
        if len(known) < len(read):
            return ()
        if max(known) > FAR_APART * min(known):
            self.fault(name, inputs.far_apart(self.label(name), typed))
            return ()
        return tuple(known)

    def _one_of_several(self, name: str, piece: str) -> float | None:
        if any(fault.field == name for fault in self.faults):
            return None
        try:
            value = quantity.read(piece, "A")
        except QuantityError as problem:
            label = self.label(name)
            typed = self.text(name)
            fragment = problem.fragment if problem.fragment in typed else ""
            self.fault(
                name, inputs.unreadable(label, typed, problem.reason, fragment, inputs.ACCEPTED_READINGS), fragment
            )
            return None
        return self._in_range(name, self.label(name), piece, value)

    def drawn(self, name: str) -> DrawnValue | None:
        """Return a value read off a drawing: amperes, or a length in mm or cm; None if empty or unusable."""
        typed = self.text(name)
        if not typed:
            return None
        for unit, factor in (("mm", 1.0), ("cm", 10.0)):
            try:
                length = factor * quantity.read(typed, unit)
            except QuantityError:
                continue
            if quantity.split_number(typed)[1] == "":
                break
            if not 0.0 <= length <= LONGEST_LINE:
                self.fault(name, inputs.bad_drawn_length(self.label(name), typed), typed[:1] if length < 0 else "")
                return None
            return DrawnValue(millimetres=length)
        try:
            value = quantity.read(typed, "A")
        except QuantityError as problem:
            label = self.label(name)
            message = inputs.unreadable(label, typed, problem.reason, problem.fragment, inputs.ACCEPTED_DRAWN)
            self.fault(name, message, problem.fragment)
            return None
        amperes = self._in_range(name, self.label(name), typed, value)
        return None if amperes is None else DrawnValue(quantity=amperes)

    def _in_range(self, name: str, label: str, typed: str, value: float) -> float | None:
        if value < 0:
            self.fault(name, inputs.negative(label, typed), typed[:1])
        elif value > LARGEST_CURRENT:
            self.fault(name, inputs.too_large(label, typed, f"100{NO_BREAK_SPACE}kA"))
        elif 0 < value < SMALLEST_CURRENT:
            self.fault(name, inputs.too_small(label, typed, f"1{NO_BREAK_SPACE}µA"))
        else:
            return value + 0.0
        return None

    def lag(self, name: str) -> LagAngle:
        """Return degrees of lag, or a power factor with its side; 0 if empty.

        ``0.85 lag`` and ``lead 0.9`` are power factors; ``30 lag``, ``30°`` and ``-10`` are degrees.
        """
        typed = self.text(name)
        if not typed:
            return LagAngle(0.0)
        words = typed.replace("°", " deg ").lower().split()
        sides = [_LAG_WORDS[word] for word in words if word in _LAG_WORDS]
        named = any(word in _DEGREE_WORDS for word in words)
        factor = "pf" in words
        number = " ".join(word for word in words if word not in _LAG_WORDS and word not in (*_DEGREE_WORDS, "pf"))
        try:
            value, rest = quantity.split_number(number)
        except QuantityError:
            rest, value = "unread", 0.0
        if rest or len(sides) > 1 or (named and factor):
            self.fault(name, inputs.bad_angle(self.label(name), typed), typed)
            return LagAngle(0.0)
        if factor or (sides and not named and value < 2.0):
            return self._from_factor(name, typed, value, sides)
        if not -180.0 <= value <= 180.0 or (sides and value < 0):
            self.fault(name, inputs.angle_range(self.label(name), typed))
            return LagAngle(0.0)
        angle = LagAngle(value * (sides[0] if sides else 1) + 0.0, bare="" if named else number)
        if angle.doubtful:
            self.question(name, inputs.factor_or_degrees(self.label(name), typed), (f"{typed} lag", f"{typed}°"))
        return angle

    def _from_factor(self, name: str, typed: str, value: float, sides: list[int]) -> LagAngle:
        if not 0.0 <= value <= 1.0:
            self.fault(name, inputs.factor_range(self.label(name), typed))
            return LagAngle(0.0)
        if not sides and value < 1.0:
            self.fault(name, inputs.factor_side(self.label(name), typed))
            return LagAngle(0.0)
        # The angle whose cosine is the power factor, by its right triangle.
        reactive = math.sqrt((1.0 - value) * (1.0 + value))
        side = sides[0] if sides else 1
        return LagAngle(side * trig.angle_of(value, reactive) + 0.0, factor=typed)

    def positive(self, name: str, unit: str = "A") -> float | None:
        """Return a positive number of units per centimetre, or None if empty (chosen to fit)."""
        typed = self.text(name)
        if not typed:
            return None
        try:
            value = quantity.read(_per_centimetre(typed), unit)
        except QuantityError as problem:
            self.fault(name, inputs.bad_scale(self.label(name), typed, unit), problem.fragment)
            return None
        if not 1e-9 <= value <= 1e9:
            self.fault(name, inputs.bad_scale(self.label(name), typed, unit))
            return None
        return value

    def amount(
        self, name: str, unit: str, least: float, most: float, *, zero: bool = False, optional: bool = False
    ) -> float | None:
        """Return a quantity within bounds (SI), zero too if allowed; None if empty and optional, or unusable."""
        typed, label = self.text(name), self.label(name)
        if optional and not typed:
            return None
        accepted = inputs.accepted_amount(self.fields[name].default or quantity.plain(least), unit)
        try:
            value = quantity.read(typed, unit)
        except QuantityError as problem:
            self.fault(
                name, inputs.unreadable(label, typed, problem.reason, problem.fragment, accepted), problem.fragment
            )
            return None
        if (zero and value == 0.0) or least <= value <= most:
            return value + 0.0
        bounds = tuple(quantity.engineering(bound, unit) for bound in (least, most))
        self.fault(name, inputs.out_of_range(label, typed, *bounds, zero=zero))
        return None

    def number(self, name: str, unit: str, least: float, most: float, why: str = "") -> float:
        """Return a number within bounds; the default if it cannot be used, with a fault that may give a reason."""
        typed, label = self.text(name), self.label(name)
        default = quantity.read(self.fields[name].default, unit)
        try:
            value = quantity.read(typed or self.fields[name].default, unit)
        except QuantityError as problem:
            self.fault(
                name, inputs.bad_number(label, typed, quantity.plain(least), quantity.plain(most)), problem.fragment
            )
            return default
        if not least <= value <= most:
            message = inputs.bad_number(label, typed, quantity.plain(least), quantity.plain(most))
            self.fault(name, f"{message} {why}".rstrip())
            return default
        return value


def _is_number(typed: str) -> bool:
    """Return whether a text is one quantity of current."""
    try:
        quantity.read(typed, "A")
    except QuantityError:
        return False
    return True


def _alike(several: list[str]) -> bool:
    """Return whether the parts of a text could be readings of one current; grouped digits never look like that."""
    values = []
    for piece in several:
        try:
            values.append(quantity.read(piece, "A"))
        except QuantityError:
            return False
    return min(values) > 0.0 and max(values) <= FAR_APART * min(values)
