"""Branches in parallel: one voltage across all, currents that add as phasors.

Y = sum of 1 / Z, I = V Y; the circuit resonates where its susceptances cancel. For a coil L with resistance R
in parallel with a capacitor C that is at f = root(1 / (LC) - R^2 / L^2) / (2 pi), where it takes V R C / L (the dynamic
resistance is L / (C R)): any textbook of electrical principles.
"""

import math
from dataclasses import dataclass

from pycore import phasor
from pycore.circuits.elements import CAPACITOR, COIL, RESISTOR, Element, impedance
from pycore.circuits.resonance import resonances

Branch = tuple[Element, ...]
MOST_TIMES = 1000.0
"""A branch current above this many times the supply current counts as a circuit that takes no current."""


class ShortCircuitError(ValueError):
    """Raised if a branch has no impedance: ``branch`` is its index from 0."""

    def __init__(self, branch: int) -> None:
        self.branch = branch
        super().__init__(f"branch {branch} has no impedance")


class NoAdmittanceError(ValueError):
    """Raised if the supply current is known and the branches together take none, or almost none."""


@dataclass(frozen=True, slots=True)
class ParallelInput:
    """Branches (elements in series) at a frequency in Hz, and either the voltage (V, r.m.s.) or the supply current
    (A, r.m.s.): the other one is None."""

    branches: tuple[Branch, ...]
    hertz: float
    volts: float | None = None
    amperes: float | None = None


@dataclass(frozen=True, slots=True)
class Resonance:
    """A resonance: its frequency in Hz, and the impedance there in ohms (infinite without losses)."""

    hertz: float
    ohms: float


@dataclass(frozen=True, slots=True)
class ParallelSolution:
    """A solved circuit: impedances (ohms) and admittances (siemens) of the branches and their total, the voltage (V,
    r.m.s.), each branch current and the supply current (A, r.m.s.) as phasors with the voltage at 0°, and all
    resonances in ascending order of frequency."""

    circuit: ParallelInput
    impedances: tuple[complex, ...]
    admittances: tuple[complex, ...]
    total_admittance: complex
    volts: float
    currents: tuple[complex, ...]
    current: complex
    resonances: tuple[Resonance, ...]

    @property
    def resonance(self) -> Resonance | None:
        """The resonance nearest to the supply frequency, by their ratio; None if there is none."""
        own = self.circuit.hertz
        return min(self.resonances, key=lambda one: max(one.hertz / own, own / one.hertz), default=None)

    @property
    def angle(self) -> float | None:
        """Degrees by which the supply current lags the voltage: negative if it leads, None if none flows."""
        total = self.total_admittance
        if total == 0:
            return None
        return 0.0 - phasor.angle(total) if total.imag else phasor.angle(total)

    @property
    def factor(self) -> float | None:
        """The power factor G / Y, or None if no current flows."""
        total = self.total_admittance
        return None if total == 0 else total.real / phasor.magnitude(total)

    @property
    def power(self) -> complex:
        """Complex power P + jQ: W, and var (positive for a coil)."""
        square = self.volts * self.volts
        return complex(self.total_admittance.real * square, 0.0 - self.total_admittance.imag * square)


def branch_impedance(branch: Branch, hertz: float, own: float | None = None) -> complex:
    """Impedance of a branch in ohms; reactances that cancel are exactly 0."""
    impedances = tuple(impedance(one, hertz, own) for one in branch)
    total = phasor.total(impedances)
    least = phasor.ZERO_SHARE * math.fsum(phasor.magnitude(part) for part in impedances)
    return complex(total.real, 0.0 if math.fabs(total.imag) <= least else total.imag)


def _admittance(branches: tuple[Branch, ...], hertz: float, own: float) -> complex | None:
    """Of all branches; None if one is a short circuit."""
    impedances = [branch_impedance(branch, hertz, own) for branch in branches]
    return None if any(part == 0 for part in impedances) else phasor.total(1.0 / part for part in impedances)


def resonances_of(branches: tuple[Branch, ...], hertz: float) -> tuple[Resonance, ...]:
    """Return every resonance of branches in parallel, in ascending order of frequency (Hz).

    ``hertz`` is the frequency at which reactances typed in ohms apply. A series resonance within a branch without
    resistance is a short circuit and does not count. A circuit that acts like a resistor at every frequency resonates
    at ``hertz``.
    """
    frequencies = resonances(branches, hertz)
    if not frequencies and any(one.kind != RESISTOR for branch in branches for one in branch):
        own = _admittance(branches, hertz, hertz)
        frequencies = (hertz,) if own is not None and own.imag == 0 else ()
    found = ((frequency, _admittance(branches, frequency, hertz)) for frequency in frequencies)
    return tuple(
        Resonance(frequency, 1.0 / admittance.real if admittance.real > 0 else math.inf)
        for frequency, admittance in found
        if admittance is not None
    )


def resistance_prevents(branches: tuple[Branch, ...], hertz: float) -> bool:
    """Return whether a coil's resistance alone keeps it from resonance with capacitors beside it."""
    kinds = [{one.kind for one in branch} for branch in branches]
    coils = [one for one in kinds if COIL in one]
    others_pure = all(len(one) == 1 for one in kinds if COIL not in one)
    alone = coils == [{RESISTOR, COIL}] and others_pure and {CAPACITOR} in kinds
    return alone and not resonances(branches, hertz)


def solve(circuit: ParallelInput) -> ParallelSolution:
    """Solve a circuit. Raises ShortCircuitError for a branch without impedance, NoAdmittanceError if the supply
    current is known and the branches take none."""
    impedances = tuple(branch_impedance(branch, circuit.hertz) for branch in circuit.branches)
    for place, value in enumerate(impedances):
        if value == 0:
            raise ShortCircuitError(place)
    admittances = tuple(1.0 / value for value in impedances)
    least = phasor.ZERO_SHARE * math.fsum(phasor.magnitude(value) for value in admittances)
    total = phasor.total(admittances)
    total = complex(
        0.0 if math.fabs(total.real) <= least else total.real, 0.0 if math.fabs(total.imag) <= least else total.imag
    )
    if circuit.amperes is None:
        volts = circuit.volts or 0.0
    elif max(phasor.magnitude(value) for value in admittances) > MOST_TIMES * phasor.magnitude(total):
        raise NoAdmittanceError("the branches together take no current")
    else:
        volts = circuit.amperes / phasor.magnitude(total)
    currents = tuple(volts * value for value in admittances)
    return ParallelSolution(
        circuit, impedances, admittances, total, volts, currents, volts * total,
        resonances_of(circuit.branches, circuit.hertz),
    )  # fmt: skip
