"""Resistors, coils and capacitors in series: one current through all, voltages that add as phasors.

Z = R + j(X_L - X_C), I = V / Z, cos phi = R / Z; resonance where X_L = X_C, at f = 1 / (2 pi root(LC))
(any textbook of electrical principles; IEC 60050-131 for the terms).
"""

import math
from dataclasses import dataclass

from pycore import phasor
from pycore.circuits.elements import CAPACITOR, COIL, Element, elastance, impedance, inductance

MOST_TIMES = 1000.0
"""How many times the supply's voltage an element's may be before reactances count as cancelling without resistance."""


class NoImpedanceError(ValueError):
    """Raised where a voltage is given and nothing, or next to nothing, limits the current."""


@dataclass(frozen=True, slots=True)
class SeriesInput:
    """Elements in series at a frequency in Hz, on a supply of so many volts or with so many amperes."""

    elements: tuple[Element, ...]
    hertz: float
    volts: float | None = None
    amperes: float | None = None


@dataclass(frozen=True, slots=True)
class SeriesSolution:
    """Impedances (ohms), the current (A, r.m.s.), each voltage and the supply's as phasors on the current, and
    the frequency of resonance in Hz (None where there are not both kinds of reactance)."""

    circuit: SeriesInput
    impedances: tuple[complex, ...]
    whole: complex
    current: float
    voltages: tuple[complex, ...]
    supply: complex
    resonance: float | None

    @property
    def angle(self) -> float | None:
        """Degrees by which the current lags the supply; negative where it leads, None where there is no impedance."""
        return None if self.whole == 0 else phasor.angle(self.whole) + 0.0

    @property
    def factor(self) -> float | None:
        """The power factor, R / Z; None where there is no impedance at all."""
        return None if self.whole == 0 else self.whole.real / phasor.magnitude(self.whole)

    @property
    def power(self) -> complex:
        """Active power (W) and, as imaginary part, reactive power (var, positive for a coil)."""
        return self.whole * self.current * self.current


def resonance_of(elements: tuple[Element, ...], hertz: float) -> float | None:
    """The frequency at which the reactances cancel, in Hz."""
    henries = math.fsum(inductance(one, hertz) for one in elements if one.kind == COIL)
    per_farad = math.fsum(elastance(one, hertz) for one in elements if one.kind == CAPACITOR)
    if henries <= 0.0 or per_farad <= 0.0:
        return None
    return math.sqrt(per_farad / henries) / math.tau


def solve(circuit: SeriesInput) -> SeriesSolution:
    """Raises NoImpedance where a voltage is given and the impedance is nothing beside its parts."""
    parts = tuple(impedance(one, circuit.hertz) for one in circuit.elements)
    whole = phasor.total(parts)
    # What is left of reactances that cancel is rounding, and gives no angle.
    reach = phasor.ZERO_SHARE * math.fsum(phasor.magnitude(part) for part in parts)
    whole = complex(whole.real, 0.0 if math.fabs(whole.imag) <= reach else whole.imag)
    if circuit.amperes is not None:
        current = circuit.amperes
    else:
        largest = max((phasor.magnitude(part) for part in parts), default=0.0)
        if whole == 0 or largest > MOST_TIMES * phasor.magnitude(whole):
            raise NoImpedanceError("nothing limits the current")
        current = (circuit.volts or 0.0) / phasor.magnitude(whole)
    voltages = tuple(part * current for part in parts)
    return SeriesSolution(
        circuit, parts, whole, current, voltages, whole * current, resonance_of(circuit.elements, circuit.hertz)
    )
