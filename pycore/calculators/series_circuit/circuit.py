"""Resistors, coils and capacitors in series: one current through all, voltages that add as phasors.

Z = R + j(X_L - X_C), I = V / Z, cos phi = R / Z; resonance where X_L = X_C, at f = 1 / (2 pi root(LC))
(any textbook of electrical principles; IEC 60050-131 for the terms).
"""

import math
from dataclasses import dataclass

from pycore import phasor
from pycore.circuits.elements import Element, impedance
from pycore.circuits.resonance import series_resonance

MOST_TIMES = 1000.0
"""An element's voltage above this many times the supply voltage counts as cancelled reactance without resistance."""


class NoImpedanceError(ValueError):
    """Raised if the supply is a voltage and the impedance is zero, or almost zero."""


@dataclass(frozen=True, slots=True)
class SeriesInput:
    """Elements in series at a frequency in Hz, and either the supply voltage (V, r.m.s.) or the
    current (A, r.m.s.): the other one is None."""

    elements: tuple[Element, ...]
    hertz: float
    volts: float | None = None
    amperes: float | None = None


@dataclass(frozen=True, slots=True)
class SeriesSolution:
    """A solved circuit: impedances in ohms, ``current`` in A (r.m.s.), ``voltages`` and ``supply`` in V (r.m.s.) as
    phasors with the current at 0° (anticlockwise: the voltage leads), ``resonance`` in Hz or None."""

    circuit: SeriesInput
    impedances: tuple[complex, ...]
    total_impedance: complex
    current: float
    voltages: tuple[complex, ...]
    supply: complex
    resonance: float | None

    @property
    def angle(self) -> float | None:
        """The angle in degrees by which the current lags the supply voltage: negative if it leads, None if Z = 0."""
        return None if self.total_impedance == 0 else phasor.angle(self.total_impedance) + 0.0

    @property
    def factor(self) -> float | None:
        """The power factor R / Z, or None if Z = 0."""
        return None if self.total_impedance == 0 else self.total_impedance.real / phasor.magnitude(self.total_impedance)

    @property
    def power(self) -> complex:
        """Complex power P + jQ: W, and var (positive for a coil)."""
        return self.total_impedance * self.current * self.current


def solve(circuit: SeriesInput) -> SeriesSolution:
    """Solve a circuit. Raises NoImpedanceError if the supply is a voltage that nothing limits."""
    impedances = tuple(impedance(one, circuit.hertz) for one in circuit.elements)
    total = phasor.total(impedances)
    # What is left of reactances that cancel is rounding, and gives no angle.
    rounding = phasor.ZERO_SHARE * math.fsum(phasor.magnitude(part) for part in impedances)
    total = complex(total.real, 0.0 if math.fabs(total.imag) <= rounding else total.imag)
    if circuit.amperes is not None:
        current = circuit.amperes
    else:
        largest = max((phasor.magnitude(part) for part in impedances), default=0.0)
        if total == 0 or largest > MOST_TIMES * phasor.magnitude(total):
            raise NoImpedanceError("nothing limits the current")
        current = (circuit.volts or 0.0) / phasor.magnitude(total)
    voltages = tuple(part * current for part in impedances)
    resonance = series_resonance(circuit.elements, circuit.hertz)
    return SeriesSolution(circuit, impedances, total, current, voltages, total * current, resonance)
