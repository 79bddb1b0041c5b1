"""A formula recomputed from the digits that it prints, in plain arithmetic of its own."""

import cmath
import math
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from itertools import pairwise

from pycore.words.formula import Bracketed, Formula, FormulaRow, Fraction, Function, Number, Root, Square

UNITS = {"", "A", "V", "Ω", "W", "VA", "var", "Hz", "H", "F", "S", "°", "%"}
PREFIXES = {"G": 1e9, "M": 1e6, "k": 1e3, "m": 1e-3, "µ": 1e-6, "n": 1e-9, "p": 1e-12}
NUMBER = re.compile(r"([−-]?)(\d+(?:[.,]\d+)?)(?: ([^\d\s]+)|(°))?$")
COMPLEX = re.compile(r"([−-]?\d+(?:[.,]\d+)?) ([+−]) j(\d+(?:[.,]\d+)?)(?: (\S+))?$")
OPERATORS = {"+", "−", "×", "÷", "·"}


class NotNumericError(Exception):
    """Raised for a side of an equation that holds a symbol."""


@dataclass(frozen=True)
class Printed:
    """A number as printed: its value in SI, and half a unit of its last digit."""

    value: complex
    half: float


def printed(text: str, unit: str = "") -> Printed:
    """A number on a page. Raises NotNumericError."""
    whole = f"{text} {unit}".replace("\u00a0", " ").strip()
    if match := COMPLEX.match(whole):
        real, sign, part, unit = match.groups()
        factor = factor_of(unit or "")
        imaginary = decimal(part) * (-1 if sign == "−" else 1)
        return Printed(complex(decimal(real), imaginary) * factor, half_of(part) * factor)
    match = NUMBER.match(whole)
    if not match:
        raise NotNumericError(whole)
    sign, digits, unit, degrees = match.groups()
    factor = factor_of(degrees or unit or "")
    value = decimal(digits) * (-1 if sign else 1)
    return Printed(value * factor, half_of(digits) * factor)


def decimal(text: str) -> float:
    return float(text.replace(",", ".").replace("−", "-"))


def half_of(text: str) -> float:
    return 0.5 * 10.0 ** -len(re.split("[.,]", text)[1]) if re.search("[.,]", text) else 0.5


def factor_of(unit: str) -> float:
    if unit == "%":
        return 0.01
    if unit in UNITS:
        return 1.0
    if unit[0] in PREFIXES and unit[1:] in UNITS:
        return PREFIXES[unit[0]]
    raise NotNumericError(unit)


@dataclass
class Reckoner:
    """The value of one side of an equation; ``shifts`` moves its numbers, by their place, by half a unit or less."""

    shifts: dict[int, float] = field(default_factory=dict)
    numbers: list[Printed] = field(default_factory=list)

    def number(self, text: str, unit: str = "") -> complex:
        one = printed(text, unit)
        self.numbers.append(one)
        return one.value + self.shifts.get(len(self.numbers) - 1, 0.0)

    def of(self, formula: Formula) -> complex:
        match formula:
            case Number():
                return self.number(formula.text, formula.unit)
            case Fraction():
                return self.of(formula.above) / self.of(formula.below)
            case Root():
                return cmath.sqrt(self.of(formula.inside))
            case Square():
                return self.of(formula.base) ** 2
            case Bracketed():
                value = self.of(formula.inside)
                return abs(value) if formula.bars else value
            case Function():
                return self.function(formula.name, self.of(formula.of))
            case FormulaRow():
                return self.side(tuple(pieces(formula)))
            case str():
                return self.side((formula,))
        raise NotNumericError(formula)

    @staticmethod
    def function(name: str, value: complex) -> float:
        angle = value.real
        made = {
            "cos": lambda: math.cos(math.radians(angle)), "sin": lambda: math.sin(math.radians(angle)),
            "tan": lambda: math.tan(math.radians(angle)), "arctan": lambda: math.degrees(math.atan(angle)),
            "arccos": lambda: math.degrees(math.acos(min(1.0, max(-1.0, angle)))),
        }  # fmt: skip
        return made[name]()

    def side(self, parts: tuple[Formula, ...]) -> complex:
        """Pieces one after another: products before sums; pieces side by side are a product."""
        total, product, sign, empty = 0j, 1 + 0j, 1.0, True
        for part in parts:
            if part in ("+", "−") and not empty:
                total, product, sign, empty = total + sign * product, 1 + 0j, (-1.0 if part == "−" else 1.0), True
            elif part in ("+", "−"):
                sign = -sign if part == "−" else sign
            elif part not in OPERATORS:
                value = math.pi if part == "π" else (self.number(part) if isinstance(part, str) else self.of(part))
                product, empty = product * value, False
        return total + sign * product


def pieces(formula: Formula) -> Iterator[Formula]:
    """The pieces of a row, rows within it and strings of several words taken apart."""
    if isinstance(formula, FormulaRow):
        for part in formula.parts:
            yield from pieces(part)
    elif isinstance(formula, str):
        yield from formula.split()
    else:
        yield formula


def sides(formula: Formula) -> list[tuple[Formula, ...]]:
    """What stands between the equals signs of a line."""
    made: list[list[Formula]] = [[]]
    for piece in pieces(formula):
        if piece in ("=", "≈"):
            made.append([])
        else:
            made[-1].append(piece)
    return [tuple(one) for one in made]


@dataclass(frozen=True)
class Line:
    """One equals sign between numbers: whether the right follows from the left, and whether it does if the left's
    numbers were carried with more digits than are printed."""

    follows: bool
    if_carried: bool


def value_of(parts: tuple[Formula, ...], shifts: dict[int, float] | None = None) -> tuple[complex, list[Printed]]:
    """The value of a side, and the numbers in it. Raises NotNumericError."""
    reckoner = Reckoner(shifts or {})
    return reckoner.side(parts), reckoner.numbers


def chains(lines: Iterable[Formula]) -> Iterator[tuple[tuple[Formula, ...], tuple[Formula, ...]]]:
    """Both sides of every equals sign of an equation; a line that begins with the symbol of the line before goes on
    from it: I = √(3² + 4²), I = 5 A."""
    name, last = None, None
    for formula in lines:
        first, *others = sides(formula)
        if first == name and last is not None and others:
            yield last, others[0]
        yield from pairwise(others)
        name, last = first, others[-1] if others else None


def recompute(lines: Iterable[Formula]) -> Iterator[Line]:
    """Every equals sign of an equation that has numbers on both sides and one number on its right."""
    for left, right in chains(lines):
        try:
            exact, numbers = value_of(left)
            result, results = value_of(right)
        except (NotNumericError, ZeroDivisionError):
            continue
        if len(results) == 1 and numbers and len(right) == 1:
            # V_S = 3 + j4 V, then V_S = 5 V: the size of the phasor.
            alone = left[0] if len(left) == 1 else None
            as_size = isinstance(alone, Number) and "j" in alone.text and not result.imag
            exact = complex(abs(exact)) if as_size else exact
            # Numbers without a unit are in the unit of the result: 0.7 + 47.3 = 48 kW.
            unit = next((one for one in PREFIXES if isinstance(right[0], Number) and right[0].unit[:1] == one), "")
            alike = abs(exact - result) <= abs(exact * PREFIXES.get(unit, 1.0) - result)
            factor = 1.0 if alike else PREFIXES[unit]
            yield _line(left, exact * factor, numbers, results[0], factor, as_size=as_size)


def _line(
    left: tuple[Formula, ...], exact: complex, numbers: list[Printed], result: Printed, factor: float, *, as_size: bool
) -> Line:
    difference = exact - result.value
    away, reach = max(abs(difference.real), abs(difference.imag)), result.half
    for place, number in enumerate(numbers):
        try:
            # Both parts of a complex number may be rounded.
            moved, _ = value_of(left, {place: number.half * (math.sqrt(2.0) if number.value.imag else 1.0)})
        except ZeroDivisionError:
            continue
        reach += abs((complex(abs(moved)) if as_size else moved) * factor - exact)
    return Line(away <= result.half * (1 + 1e-6) + 1e-12 * abs(exact), away <= 1.2 * reach)
