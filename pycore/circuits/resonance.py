"""Resonances of elements in series, and of branches in parallel: there their susceptances add to zero.

A branch of R, L and C in series has the susceptance -X / (R^2 + X^2), X = w L - 1 / (w C) (any textbook of electrical
principles). With x = w^2, u = L x - 1 / C and D = u^2 + R^2 x that is -w u / D; so the susceptances add to zero where
the numerator of the sum of all u / D, a polynomial in x, is zero. Its positive roots are all resonances.
"""

import math
from collections.abc import Sequence

from pycore.circuits.elements import CAPACITOR, COIL, RESISTOR, Element, elastance, inductance
from pycore.circuits.polynomial import CANCELLED, positive_roots, product

SHORTED = 1e-9
"""Share of its terms below which the reactance of a branch without resistance counts as zero: a short circuit."""
SAME = 1e-12
"""Share by which a resonance may differ from the circuit's own frequency and still be called that frequency."""


def _terms(branch: Sequence[Element], hertz: float) -> tuple[float, float, float]:
    """R, w L and 1 / (w C) of a branch in ohms at its own frequency: there x is 1."""
    omega = math.tau * hertz
    return (
        math.fsum(one.value for one in branch if one.kind == RESISTOR),
        math.fsum(inductance(one, hertz) for one in branch if one.kind == COIL) * omega,
        math.fsum(elastance(one, hertz) for one in branch if one.kind == CAPACITOR) / omega,
    )


def _numerator(branches: Sequence[tuple[float, float, float]]) -> list[float]:
    """The polynomial in x that is zero where the susceptances add to zero; cancelled terms are exactly zero."""
    pairs: list[tuple[list[float], list[float]]] = []
    for ohms, coil, capacitor in branches:
        reactance = [-capacitor, coil]
        if ohms == 0.0:
            pairs.append(([1.0], reactance))
        else:
            denominator = product(reactance, reactance)
            denominator[1] += ohms * ohms
            pairs.append((reactance, denominator))
    columns: list[list[float]] = []
    for place, (above, _) in enumerate(pairs):
        addend = above
        for other, (_, below) in enumerate(pairs):
            addend = addend if other == place else product(addend, below)
        columns += [[] for _ in range(len(addend) - len(columns))]
        for power, value in enumerate(addend):
            columns[power].append(value)
    sums = [(math.fsum(column), math.fsum(math.fabs(value) for value in column)) for column in columns]
    return [0.0 if math.fabs(total) <= CANCELLED * size else total for total, size in sums]


def resonances(branches: Sequence[Sequence[Element]], hertz: float) -> tuple[float, ...]:
    """Return every resonance of branches in parallel in Hz, in ascending order.

    ``hertz`` is the frequency at which reactances typed in ohms apply. A frequency at which a branch without
    resistance is a short circuit is no resonance of the whole. Empty too if the susceptance is zero at every frequency.
    """
    reactive = [terms for terms in (_terms(branch, hertz) for branch in branches) if terms[1] or terms[2]]
    lossless = [(coil, capacitor) for ohms, coil, capacitor in reactive if ohms == 0.0]
    found = []
    for x in positive_roots(_numerator(reactive)) if reactive else ():
        if any(math.fabs(coil * x - rest) <= SHORTED * (coil * x + rest) for coil, rest in lossless):
            continue
        share = math.sqrt(x)
        found.append(hertz if math.fabs(share - 1.0) <= SAME else hertz * share)
    return tuple(found)


def series_resonance(elements: Sequence[Element], hertz: float) -> float | None:
    """Return the frequency in Hz at which the reactances of elements in series cancel, 1 / (2π√(LC)); None without a
    coil or a capacitor.

    ``hertz`` is the frequency at which reactances typed in ohms apply."""
    henries = math.fsum(inductance(one, hertz) for one in elements if one.kind == COIL)
    per_farad = math.fsum(elastance(one, hertz) for one in elements if one.kind == CAPACITOR)
    if henries <= 0.0 or per_farad <= 0.0:
        return None
    return math.sqrt(per_farad / henries) / math.tau
