"""Amounts of quantities other than the drawn one, as text for sentences and tables."""

import math

from pycore import phasor, quantity
from pycore.quantity import NO_BREAK_SPACE
from pycore.words import sums as words

FIGURES = 4
"""Significant figures of a result of another quantity than the drawing's."""


def amount(value: float, unit: str, mark: str, figures: int = FIGURES) -> str:
    """A result to four figures with the prefix that suits it: 23.09 A, 12.80 kW."""
    if math.fabs(value) < 1e-9:
        return f"0{NO_BREAK_SPACE}{unit}"
    shares = ((1e6, "M"), (1e3, "k"), (1.0, ""))
    factor, prefix = next((one for one in shares if math.fabs(value) >= one[0]), shares[-1])
    scaled = value / factor
    return quantity.fixed(scaled, quantity.decimals_for(scaled, figures), mark) + NO_BREAK_SPACE + prefix + unit


def rectangular(value: complex, unit: str, mark: str) -> str:
    """Return a phasor in rectangular form; both parts with as many decimals as give its size four figures."""
    decimals = quantity.decimals_for(phasor.magnitude(value), 4)
    sign = "−" if value.imag < 0 and round(value.imag, decimals) else "+"
    real, imaginary = quantity.fixed(value.real, decimals, mark), quantity.fixed(math.fabs(value.imag), decimals, mark)
    return f"{real} {sign} j{imaginary}{NO_BREAK_SPACE}{unit}"


def polar(value: complex, unit: str, mark: str) -> str:
    """Return a phasor in polar form: 23.09 A at −36.9°."""
    size = phasor.magnitude(value)
    if size == 0:
        return f"0{NO_BREAK_SPACE}{unit}"
    return words.at_angle(amount(size, unit, mark), f"{quantity.plain(round(phasor.angle(value), 1), mark)}°")


def impedance(value: complex, mark: str) -> str:
    """Return a load as text: 20 Ω, 8 + j6 Ω, −j100 Ω."""
    real, imaginary = quantity.plain(value.real, mark), quantity.plain(math.fabs(value.imag), mark)
    if value.imag == 0:
        return quantity.engineering(value.real, "Ω", mark)
    sign = "−" if value.imag < 0 else "+"
    if value.real == 0:
        return f"{'−' if sign == '−' else ''}j{imaginary}{NO_BREAK_SPACE}Ω"
    return f"{real} {sign} j{imaginary}{NO_BREAK_SPACE}Ω"
