"""Resistors, coils and capacitors as people type them: 10 Ω, 0.1 H, 100 µF, j32 Ω, several with + between."""

import re
from dataclasses import dataclass

from pycore import quantity
from pycore.circuits.elements import CAPACITOR, COIL, RESISTOR, Element
from pycore.forms.reading import Reader
from pycore.quantity import MINUS, NO_BREAK_SPACE, QuantityError
from pycore.words import circuits as words

KINDS = {"Ω": RESISTOR, "H": COIL, "F": CAPACITOR}
LIMITS = {"Ω": (1e-6, 1e9), "H": (1e-9, 1e6), "F": (1e-12, 10.0)}
"""The smallest and largest positive value, by unit."""
MOST_ELEMENTS = 6
TYPED_DIGITS = 12
_BETWEEN = re.compile(r"\s*(?:;|&|\band\b|(?<=[^eE])\+)\s*")
_REACTANCE = re.compile(r"([+\-−]?)\s*[jJ]\s*(.+)", re.DOTALL)


@dataclass(frozen=True, slots=True)
class TypedElement:
    """An element with its number and unit as typed: 0.1 and H."""

    element: Element
    number: str
    unit: str

    @property
    def text(self) -> str:
        """The element as text: 100 µF."""
        return f"{self.number}{NO_BREAK_SPACE}{self.unit}"

    @property
    def value_text(self) -> str:
        """The element as a check code knows it, however it was typed: its kind, its SI value, whether in ohms."""
        unit = " ohms" if self.element.in_ohms else ""
        return f"{self.element.kind} {quantity.plain(self.element.value)}{unit}"

    @property
    def prefix(self) -> str:
        """The SI prefix as typed."""
        return self.unit[:-1]


def _quantity(text: str, units: tuple[str, ...], bare: str) -> tuple[float, str]:
    """Return the SI value and unit of a text with one of several units, or none. Raises QuantityError."""
    _, rest = quantity.split_number(text)
    for unit in units if rest else (bare,):
        try:
            return quantity.read(text, unit), unit
        except QuantityError as problem:
            if problem.reason != "unit":
                raise
    raise QuantityError("unit", rest)


def _number(text: str, value: float, unit: str, mark: str) -> tuple[str, str]:
    """Return number and unit as typed, with the sheet's decimal mark."""
    _, rest = quantity.split_number(text)
    named = rest.replace("ohms", "Ω").replace("ohm", "Ω").replace("u", "µ").replace("μ", "µ")
    written = named if named.endswith(unit) else unit
    prefix = written.removesuffix(unit)
    exponent = quantity.PREFIXES.get(prefix, 0) if prefix else 0
    return _digits(value / float(f"1e{exponent}"), mark), written


def _digits(value: float, mark: str) -> str:
    """A number with every digit that was typed, up to twelve: what is beyond them is rounding of the prefix."""
    digits = quantity.fixed(value, max(0, TYPED_DIGITS - 1 - quantity.order_of_magnitude(value)), ".")
    return (digits.rstrip("0").rstrip(".") if "." in digits else digits).replace(".", mark)


def read_element(text: str, bare: str, mark: str, *, reactive: str = "") -> TypedElement:
    """Return one element.

    ``bare``: the unit of a number without one (Ω, H or F). ``reactive``: the kind that ohms mean in this field ("": a
    resistor). Raises QuantityError.
    """
    match = _REACTANCE.fullmatch(text.strip())
    if match:
        value = quantity.read(match.group(2), "Ω")
        if value < 0:
            raise QuantityError("number", text)
        number, unit = _number(match.group(2), value, "Ω", mark)
        capacitor = match.group(1) in ("-", "−")
        return TypedElement(Element(CAPACITOR if capacitor else COIL, value, in_ohms=True), number, unit)
    value, unit = _quantity(text, ("Ω", "H", "F"), bare)
    number, written = _number(text, value, unit, mark)
    kind = KINDS[unit]
    if unit == "Ω" and reactive:
        return TypedElement(Element(reactive, value, in_ohms=True), number, written)
    return TypedElement(Element(kind, value), number, written)


def read_elements(
    reader: Reader, name: str, bare: str, mark: str, *, reactive: str = "", only: str = ""
) -> tuple[TypedElement, ...]:
    """Return the elements of a field, none if it is empty; unusable ones are noted as faults.

    ``only``: the one kind that the field accepts ("": every kind).
    """
    text, label, elements = reader.text(name), reader.label(name), []
    if not text:
        return ()
    # A reactance's sign stands before its j: "20 - j30" is a resistor and a capacitor.
    spread = re.sub(r"(?<=[^\s;&+])\s*[-−]\s*(?=[jJ])", " + -", text)
    for piece in _BETWEEN.split(spread):
        try:
            one = read_element(piece, bare, mark, reactive=reactive)
        except QuantityError as problem:
            reader.fault(name, words.bad_element(label, text, bare if only else ""), problem.fragment)
            return ()
        if only and one.element.kind != only:
            reader.fault(name, words.other_kind(label, text, only), piece)
            return ()
        least, most = LIMITS["Ω" if one.element.in_ohms else {k: u for u, k in KINDS.items()}[one.element.kind]]
        if one.element.kind == CAPACITOR and not one.element.in_ohms and one.element.value == 0.0:
            reader.fault(name, words.no_capacitance(label, text), piece)
            return ()
        if one.element.value != 0.0 and not least <= one.element.value <= most:
            unit = one.unit[-1:]
            bounds = (scaled(least, unit, mark), scaled(most, unit, mark))
            reader.fault(name, words.element_range(label, text, *bounds, words.EXAMPLES[bare if only else ""]), piece)
            return ()
        elements.append(one)
    return tuple(elements)


def scaled(value: float, unit: str, mark: str, count: int = 4) -> str:
    """Return a result to ``count`` figures with the SI prefix that leaves 1 to 999: 31.42 Ω, 459.1 mA."""
    return NO_BREAK_SPACE.join(parts(value, unit, mark, count))


def parts(value: float, unit: str, mark: str, count: int = 4, exact: float | None = None) -> tuple[str, str]:
    """Return the number and the unit of ``scaled``; ``exact`` is the value without the rounding of what was carried."""
    size = -value if value < 0 else value
    if size == 0.0:
        return "0", unit
    rounded = float(f"{size:.{count - 1}e}")
    prefixes = [(1e9, "G"), (1e6, "M"), (1e3, "k"), (1.0, ""), (1e-3, "m"), (1e-6, "µ"), (1e-9, "n"), (1e-12, "p")]
    if unit in ("", "°"):
        prefixes = [(1.0, "")]
    factor, prefix = next(((f, p) for f, p in prefixes if rounded >= f), prefixes[-1])
    # Tenths of a volt or an ampere are read as such on most meters.
    if unit and prefix == "m" and rounded >= 0.1:
        factor, prefix = 1.0, ""
    number = quantity.fixed(size / factor, quantity.decimals_for(rounded / factor, count), ".")
    whole = size if exact is None else -exact if exact < 0 else exact
    if "." in number and float(number) == float(f"{whole / factor:.9g}"):
        # Exact in fewer figures: 230 V, not 230.0 V.
        number = number.rstrip("0").rstrip(".")
    return (MINUS if value < 0 else "") + number.replace(".", mark), prefix + unit
