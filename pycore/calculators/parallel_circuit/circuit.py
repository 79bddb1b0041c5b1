"""Branches beside one another: one voltage across all, currents that add as phasors.

Y = sum of 1 / Z, I = V Y; the circuit resonates where its susceptances cancel. For a coil L with resistance R
beside a capacitor C that is at f = root(1 / (LC) - R^2 / L^2) / (2 pi), where it takes V R C / L (the dynamic
resistance is L / (C R)): any textbook of electrical principles.
"""

import math
from dataclasses import dataclass

from pycore import phasor
from pycore.circuits.elements import Element, impedance

Branch = tuple[Element, ...]
STEP = 1.0905077326652577
"""The eighth root of two: from one frequency that is tried to the next."""
REACH = 108
"""How many such steps up and down resonance is looked for: by a factor of some ten thousand."""
HALVINGS = 60
MOST_TIMES = 1000.0
"""How many times the whole current a branch's may be before the branches count as taking none together."""


class ShortCircuitError(ValueError):
    """Raised where a branch has no impedance: ``branch`` is its place from 0."""

    def __init__(self, branch: int) -> None:
        self.branch = branch
        super().__init__(f"branch {branch} has no impedance")


class NoAdmittanceError(ValueError):
    """Raised where a current is given and the branches together take none, or next to none."""


@dataclass(frozen=True, slots=True)
class ParallelInput:
    """Branches (each elements in series) at a frequency in Hz, on so many volts or with so many amperes in all."""

    branches: tuple[Branch, ...]
    hertz: float
    volts: float | None = None
    amperes: float | None = None


@dataclass(frozen=True, slots=True)
class Resonance:
    """Where the susceptances cancel: hertz, and what is left there, in ohms."""

    hertz: float
    ohms: float


@dataclass(frozen=True, slots=True)
class ParallelSolution:
    """Impedances (ohms) and admittances (siemens) by branch, their sum, the voltage (V, r.m.s.), each branch's current
    and their sum as phasors on the voltage, and resonance if there is any."""

    circuit: ParallelInput
    impedances: tuple[complex, ...]
    admittances: tuple[complex, ...]
    whole: complex
    volts: float
    currents: tuple[complex, ...]
    current: complex
    resonance: Resonance | None

    @property
    def angle(self) -> float | None:
        """Degrees by which the whole current lags the voltage; negative where it leads, None where none flows."""
        if self.whole == 0:
            return None
        return 0.0 - phasor.angle(self.whole) if self.whole.imag else phasor.angle(self.whole)

    @property
    def factor(self) -> float | None:
        """The power factor, G / Y; None where no current flows at all."""
        return None if self.whole == 0 else self.whole.real / phasor.magnitude(self.whole)

    @property
    def power(self) -> complex:
        """Active power (W) and, as imaginary part, reactive power (var, positive for a coil)."""
        square = self.volts * self.volts
        return complex(self.whole.real * square, 0.0 - self.whole.imag * square)


def branch_impedance(branch: Branch, hertz: float, own: float | None = None) -> complex:
    """Impedance of a branch in ohms; reactances that cancel are exactly 0."""
    parts = tuple(impedance(one, hertz, own) for one in branch)
    whole = phasor.total(parts)
    least = phasor.ZERO_SHARE * math.fsum(phasor.magnitude(part) for part in parts)
    return complex(whole.real, 0.0 if math.fabs(whole.imag) <= least else whole.imag)


def _admittance(branches: tuple[Branch, ...], hertz: float, own: float) -> complex | None:
    """Of all branches; None where one is a short circuit."""
    parts = [branch_impedance(branch, hertz, own) for branch in branches]
    return None if any(part == 0 for part in parts) else phasor.total(1.0 / part for part in parts)


def resonance_of(branches: tuple[Branch, ...], hertz: float) -> Resonance | None:
    """The resonance nearest to a frequency, found by halving where the susceptance changes its sign.

    A series resonance within a branch, where the susceptance leaps, does not count.
    """
    here = _admittance(branches, hertz, hertz)
    if here is not None and here.imag == 0 and any(one.kind != "R" for branch in branches for one in branch):
        return _resonance(branches, hertz, hertz)
    low = high = hertz
    for _ in range(REACH):
        for start, end in ((high, high * STEP), (low / STEP, low)):
            found = _between(branches, start, end, hertz)
            if found is not None:
                return _resonance(branches, found, hertz)
        low, high = low / STEP, high * STEP
    return None


def _resonance(branches: tuple[Branch, ...], found: float, own: float) -> Resonance | None:
    there = _admittance(branches, found, own)
    if there is None:
        return None
    return Resonance(found, 1.0 / there.real if there.real > 0 else math.inf)


def _between(branches: tuple[Branch, ...], start: float, end: float, own: float) -> float | None:
    """Where the susceptance passes through nothing between two frequencies."""
    first, last = _admittance(branches, start, own), _admittance(branches, end, own)
    if first is None or last is None or first.imag * last.imag >= 0.0:
        return None
    reach = max(math.fabs(first.imag), math.fabs(last.imag))
    for _ in range(HALVINGS):
        middle = (start + end) / 2
        there = _admittance(branches, middle, own)
        if there is None or math.fabs(there.imag) > 1.5 * reach:
            return None
        if (there.imag > 0) == (first.imag > 0):
            start = middle
        else:
            end = middle
    return (start + end) / 2


def solve(circuit: ParallelInput) -> ParallelSolution:
    """Raises ShortCircuit for a branch without impedance, NoAdmittance where a given current has no way."""
    impedances = tuple(branch_impedance(branch, circuit.hertz) for branch in circuit.branches)
    for place, value in enumerate(impedances):
        if value == 0:
            raise ShortCircuitError(place)
    admittances = tuple(1.0 / value for value in impedances)
    least = phasor.ZERO_SHARE * math.fsum(phasor.magnitude(value) for value in admittances)
    whole = phasor.total(admittances)
    whole = complex(
        0.0 if math.fabs(whole.real) <= least else whole.real, 0.0 if math.fabs(whole.imag) <= least else whole.imag
    )
    if circuit.amperes is None:
        volts = circuit.volts or 0.0
    elif max(phasor.magnitude(value) for value in admittances) > MOST_TIMES * phasor.magnitude(whole):
        raise NoAdmittanceError("the branches together take no current")
    else:
        volts = circuit.amperes / phasor.magnitude(whole)
    currents = tuple(volts * value for value in admittances)
    return ParallelSolution(
        circuit, impedances, admittances, whole, volts, currents, volts * whole,
        resonance_of(circuit.branches, circuit.hertz),
    )  # fmt: skip
