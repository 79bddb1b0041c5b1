"""Possible causes of a neutral reading that does not agree, each with the size that it would need.

The size is solved for: with it, the calculated neutral current equals the reading. How plausible a cause is depends on
that size compared with what is usual (common practice, no source).
"""

import math
from dataclasses import dataclass

from pycore import phasor
from pycore.accuracy.roots import roots

ANGLE, HARMONIC, LINE, FACTOR, NEUTRAL = "angle", "harmonic", "line", "factor", "neutral"
USUAL = {ANGLE: 20.0, HARMONIC: 25.0, LINE: 10.0, FACTOR: 1.0, NEUTRAL: 10.0}
"""Sizes met in practice: degrees of a line's power factor, per cent of third harmonic, per cent of a
reading; a wrong range counts as 1."""
MOST_STRAIN = 3.0
"""An explanation further fetched than this is not worth a measurement."""
WIDEST_ANGLE = 90.0


@dataclass(frozen=True, slots=True)
class Explanation:
    """One cause: its kind, the number of the line (0: all), the size that it would need (degrees; per cent of the
    fundamental; SI unit; a power of ten), and ``strain``: 1 if as large as is usual, larger if less plausible."""

    kind: str
    line: int
    size: float
    strain: float


def _by_angle(lines: tuple[complex, ...], number: int, read: float) -> tuple[float, ...]:
    """Return by how many degrees one line would have to be turned (positive: more lag)."""

    def gap(lag: float) -> float:
        turned = [line * phasor.polar(1.0, -lag) if index == number else line for index, line in enumerate(lines)]
        return phasor.magnitude(phasor.total(turned)) - read

    return roots(gap, WIDEST_ANGLE)


def _by_reading(lines: tuple[complex, ...], number: int, read: float) -> tuple[float, ...]:
    """Return how much more current one line would have to carry (SI unit)."""
    size = phasor.magnitude(lines[number])

    def gap(more: float) -> float:
        factor = (size + more) / size
        changed = [line * factor if index == number else line for index, line in enumerate(lines)]
        return phasor.magnitude(phasor.total(changed)) - read

    return roots(gap, size)


def third_harmonic(lines: tuple[complex, ...], read: float) -> float | None:
    """Return the third harmonic in per cent, equal in share and phase in all lines, that gives the reading; None if the
    reading is not above the sum of the fundamentals."""
    fundamental = phasor.magnitude(phasor.total(lines))
    added = read * read - fundamental * fundamental
    carried = math.fsum(phasor.magnitude(line) for line in lines)
    if added <= 0.0 or carried == 0.0:
        return None
    return 100.0 * math.sqrt(added) / carried


def _wrong_range(lines: tuple[complex, ...], read: float) -> float | None:
    """Return the power of ten by which the reading is wrong, if that alone explains it (within 5 %)."""
    size = phasor.magnitude(phasor.total(lines))
    for power, factor in ((1.0, 10.0), (-1.0, 0.1), (3.0, 1000.0), (-3.0, 0.001)):
        if size > 0.0 and math.fabs(read / (size * factor) - 1.0) < 0.05:
            return power
    return None


def _of_line(lines: tuple[complex, ...], number: int, read: float) -> list[Explanation]:
    """Return the causes that concern one line."""
    causes = [
        Explanation(ANGLE, number + 1, angle, math.fabs(angle) / USUAL[ANGLE])
        for angle in _by_angle(lines, number, read)
    ]
    for more in _by_reading(lines, number, read):
        share = 100.0 * math.fabs(more) / phasor.magnitude(lines[number])
        causes.append(Explanation(LINE, number + 1, more, share / USUAL[LINE]))
    return causes


def explanations(lines: tuple[complex, ...], read: float) -> tuple[Explanation, ...]:
    """Return all causes that can explain the reading, the most plausible first.

    A cause that works in both directions appears twice. An error of the neutral reading itself is always included.
    """
    causes: list[Explanation] = []
    for number, line in enumerate(lines):
        if line != 0:
            causes += _of_line(lines, number, read)
    harmonic = third_harmonic(lines, read)
    if harmonic is not None:
        causes.append(Explanation(HARMONIC, 0, harmonic, harmonic / USUAL[HARMONIC]))
    power = _wrong_range(lines, read)
    if power is not None:
        causes.append(Explanation(FACTOR, 0, power, 0.05))
    size = phasor.magnitude(phasor.total(lines))
    off = read - size
    most = max(size, read)
    share = 100.0 * math.fabs(off) / most if most > 0.0 else 0.0
    causes.append(Explanation(NEUTRAL, 0, off, share / USUAL[NEUTRAL]))
    return tuple(sorted(causes, key=lambda one: one.strain))
