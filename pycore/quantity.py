"""Reads quantities as people type them, and writes numbers in the one way used everywhere.

Reading follows a strict grammar for the complete text: an optional sign, digits that may be grouped in threes by
spaces, at most one separator (comma or point, always the decimal mark), an optional exponent, an SI prefix, the unit. A
text that cannot be read raises ``QuantityError`` with a reason; ``pycore.words.inputs`` words it.
"""

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

PREFIXES = {"G": 9, "M": 6, "k": 3, "m": -3, "µ": -6, "μ": -6, "u": -6, "n": -9, "p": -12}
"""Powers of ten of the SI prefixes that can be read (SI Brochure, 9th edition, table 7); u where no µ can be typed."""

_WRITTEN_UNITS = {
    "A": "A", "amp": "A", "amps": "A", "ampere": "A", "amperes": "A",
    "°": "°", "deg": "°", "degree": "°", "degrees": "°",
    "V": "V", "volt": "V", "volts": "V", "Ω": "Ω", "ohm": "Ω", "ohms": "Ω", "W": "W", "VA": "VA",
    "var": "var", "VAr": "var", "Var": "var", "VAR": "var",
    "Hz": "Hz", "H": "H", "F": "F", "mm": "mm", "cm": "cm", "%": "%",
}  # fmt: skip

_NUMBER = re.compile(
    r"([+\-−]?)(\d{1,3}(?: \d{3})+(?:[.,]\d*)?|\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE]([+\-−]?\d{1,3}))?"
)
_SPACES = {ord(space): " " for space in "\u00a0\u2009\u202f\t"}
MAXIMUM_LENGTH = 40
LEAST = 5e-324
"""The smallest positive number that can be represented."""
NO_BREAK_SPACE = "\u00a0"
MINUS = "−"


class QuantityError(ValueError):
    """Raised for a text that is not a quantity of the expected unit.

    ``reason``: ``empty``, ``long``, ``number``, ``separators``, ``space``, ``unit`` or ``infinite``. ``fragment``: the
    wrong part of the text.
    """

    def __init__(self, reason: str, fragment: str = "") -> None:
        self.reason = reason
        self.fragment = fragment
        super().__init__(f"{reason}: {fragment!r}")


def _clean(text: str) -> str:
    cleaned = text.translate(_SPACES).strip()
    if not cleaned:
        raise QuantityError("empty")
    if len(cleaned) > MAXIMUM_LENGTH:
        raise QuantityError("long", cleaned[:MAXIMUM_LENGTH])
    return cleaned


def _broken_off(cleaned: str) -> str:
    """Why a number goes on behind its end: because of a space, a second decimal mark, or neither."""
    together = cleaned.replace(" ", "")
    whole = _NUMBER.match(together)
    after = together[whole.end() :][:1] if whole else ""
    if after and after in ".,":
        return "separators"
    return "space" if " " in cleaned and not after.isdigit() else "number"


@lru_cache(maxsize=256)
def _split(text: str) -> tuple[str, int, str]:
    """Return the signed digits, the exponent of ten and the stripped rest of a text."""
    cleaned = _clean(text)
    match = _NUMBER.match(cleaned)
    if not match:
        infinite = cleaned.lstrip("+-−").lower() in ("inf", "infinity", "∞")
        raise QuantityError("infinite" if infinite else "number", cleaned)
    rest = cleaned[match.end() :].strip()
    if rest[:1] in (".", ",") or rest[:1].isdigit():
        raise QuantityError(_broken_off(cleaned), cleaned)
    sign, digits, exponent = match.groups()
    written = digits.replace(" ", "").replace(",", ".")
    minus = "-" if sign in ("-", "−") else ""
    return minus + written, int((exponent or "0").replace("−", "-")), rest


def _value(digits: str, exponent: int, typed: str) -> float:
    # The prefix goes into the exponent, so that 850 mA is the very number 0.85.
    value = float(f"{digits}e{exponent}")
    if math.isinf(value):
        raise QuantityError("infinite", typed)
    if value == 0.0 and digits.strip("-0."):
        # Too small to hold is not zero: zero says that a line carries nothing.
        return -LEAST if digits.startswith("-") else LEAST
    return value


def split_number(text: str) -> tuple[float, str]:
    """Return the number at the start of a text, and the stripped rest.

    Raises QuantityError for a text that does not begin with a number, has two separators, or contains a number that is
    too large.
    """
    digits, exponent, rest = _split(text)
    return _value(digits, exponent, text), rest


def unit_parts(written: str) -> tuple[int, str] | None:
    """Return a written unit as the power of ten of its prefix and the unit: ``mA`` as (-3, "A"); None for no unit."""
    if written in _WRITTEN_UNITS:
        return 0, _WRITTEN_UNITS[written]
    unit = _WRITTEN_UNITS.get(written[1:])
    return (PREFIXES[written[0]], unit) if unit is not None and written[0] in PREFIXES else None


def _power(rest: str, unit: str) -> int:
    """The power of ten that the rest of a text stands for: 0 for no unit. Raises QuantityError for another unit."""
    if not rest:
        return 0
    parts = unit_parts(rest)
    if parts is None or parts[1] != unit:
        raise QuantityError("unit", rest)
    return parts[0]


@lru_cache(maxsize=256)
def read(text: str, unit: str) -> float:
    """Return the value in SI units of a text such as ``18,4``, ``850 mA`` or ``0.85kA``.

    The unit may be left out; a prefix without its unit is not accepted. Raises QuantityError.
    """
    digits, exponent, rest = _split(text)
    return _value(digits, exponent + _power(rest, unit), text)


def last_digit(text: str, unit: str) -> float:
    """The value in SI units of the last digit of a typed text: 0.1 for ``12.6``, 0.001 for ``850 mA``.

    Raises QuantityError as ``read`` does.
    """
    read(text, unit)
    digits, exponent, rest = _split(text)
    return float(f"1e{exponent + _power(rest, unit) - decimals_of(digits)}")


@lru_cache(maxsize=4096)
def fixed(value: float, decimals: int, mark: str = ".") -> str:
    """Return a number with a fixed number of decimals, a true minus sign, and never minus zero.

    Raises ValueError for NaN and infinities, which are never shown.
    """
    if not math.isfinite(value):
        raise ValueError(f"{value} cannot be written")
    written = f"{value:.{max(0, decimals)}f}"
    if written.startswith("-"):
        written = written[1:] if not written.strip("-0.") else MINUS + written[1:]
    return written.replace(".", mark)


def half_millimetres(millimetres: float) -> float:
    """Return a length in mm to half a millimetre."""
    # A length that is worked out in two ways differs by rounding: at a quarter that would be another number.
    return round(round(2 * millimetres, 6)) / 2


def on_ruler(millimetres: float) -> float:
    """Return a length in mm as every sentence, table and lesson has it: to half a millimetre, as a ruler is read.

    What would be nothing at half a millimetre keeps its tenth.
    """
    return half_millimetres(millimetres) or round(millimetres, 1)


@lru_cache(maxsize=4096)
def plain(value: float, mark: str = ".") -> str:
    """Return a number with as few digits as show six significant figures: 2, 0.5, 92.25."""
    decimals = max(0, 5 - order_of_magnitude(value))
    written = fixed(value, decimals, ".")
    if "." in written:
        written = written.rstrip("0").rstrip(".")
    return written.replace(".", mark)


def exact(value: float | None) -> str:
    """Return a number for machines: 12 significant digits, "" for None."""
    if value is None:
        return ""
    if not math.isfinite(value):
        raise ValueError(f"{value} cannot be written")
    written = f"{value:.12g}"
    return "0" if written == "-0" else written


def engineering(value: float, unit: str, mark: str = ".") -> str:
    """Return a value with its unit and the SI prefix that leaves 1 to 999: 10 µF, 2.5 kV."""
    size = math.fabs(value)
    for factor, prefix in ((1e9, "G"), (1e6, "M"), (1e3, "k"), (1.0, ""), (1e-3, "m"), (1e-6, "µ"), (1e-9, "n")):
        if size >= factor or (prefix == "n" and size > 0):
            return plain(value / factor, mark) + NO_BREAK_SPACE + prefix + unit
    return "0" + NO_BREAK_SPACE + unit


def order_of_magnitude(value: float) -> int:
    """Return the exponent of ten of the first digit (0 for 0): 24.6 gives 1, 0.05 gives -2."""
    return 0 if value == 0 else int(f"{math.fabs(value):e}".partition("e")[2])


def decimals_for(value: float, figures: int = 3) -> int:
    """Return the number of decimals that shows a value to ``figures`` significant figures."""
    return max(0, figures - 1 - order_of_magnitude(value))


def decimals_of(written: str) -> int:
    """Return the number of decimals of a written number: 24.65 and 24,65 have two."""
    return max(len(written.partition(mark)[2]) for mark in ".,")


@dataclass(frozen=True, slots=True)
class NumberFormat:
    """How the amounts of one problem are written: prefix, unit, decimals, decimal mark.

    ``factor``: the SI value of one written unit (0.001 for mA). ``decimals``: of a result as large as the given values.
    Given values are written as they were typed (``as_typed``), results by one rule (``amount``). ``computed``: the
    values drawn were calculated, not typed.
    """

    unit: str
    factor: float = 1.0
    decimals: int = 1
    mark: str = "."
    computed: bool = False

    def fixed(self, value: float, extra: int = 0) -> str:
        """Return a number with the problem's decimals and ``extra`` further ones, for workings."""
        return fixed(value / self.factor, self.decimals + extra, self.mark)

    def number(self, value: float) -> str:
        """Return a result with three figures, but at most one decimal more than the given values."""
        written = value / self.factor
        return fixed(written, self._decimals_of(written), self.mark) if written else "0"

    def _decimals_of(self, written: float) -> int:
        return min(max(self.decimals, decimals_for(written)), self.decimals + 1)

    def decimals_in(self, factor: float) -> int:
        """The decimals of a result that is written in another unit, of this factor, as finely."""
        return max(0, self.decimals + order_of_magnitude(factor) - order_of_magnitude(self.factor))

    def last_digit(self, value: float) -> float:
        """The value of one in the last digit that a result is written with, in the quantity's SI unit."""
        return float(f"1e-{self._decimals_of(value / self.factor)}") * self.factor

    def apart(self, difference: float, value: float) -> str:
        """Return a difference from a result with as many decimals as the result has."""
        return fixed(difference / self.factor, self._decimals_of(value / self.factor), self.mark)

    def amount(self, value: float) -> str:
        """Return a result with its unit, joined by a no-break space."""
        return self.number(value) + NO_BREAK_SPACE + self.unit

    def as_typed(self, value: float) -> str:
        """Return the number of a given value with as many decimals as were typed (at most six figures); a calculated
        value is written like a result."""
        if self.computed:
            return self.number(value)
        return plain(value / self.factor, self.mark)

    def short(self, value: float) -> str:
        """Return a given value with its unit."""
        return self.as_typed(value) + NO_BREAK_SPACE + self.unit

    def scale(self, value: float) -> str:
        """Return the amount of a scale with as few digits as possible, with its unit."""
        return plain(value / self.factor, self.mark) + NO_BREAK_SPACE + self.unit


def writing_for(values: Sequence[float], unit: str, mark: str = ".") -> NumberFormat:
    """Return the number format for a problem with these given values (SI).

    The prefix suits the values; there are as many decimals as the most precise value has, or as give the largest value
    three figures.
    """
    largest = max(values, default=0.0)
    factor, prefix = 1.0, ""
    if 0 < largest < 1e-3:
        factor, prefix = 1e-6, "µ"
    elif 0 < largest < 1:
        factor, prefix = 1e-3, "m"
    elif largest >= 1e4:
        factor, prefix = 1e3, "k"
    finest = max((decimals_of(plain(value / factor)) for value in values), default=0)
    decimals = min(4, max(finest, decimals_for(largest / factor)))
    return NumberFormat(prefix + unit, factor, decimals, mark)
