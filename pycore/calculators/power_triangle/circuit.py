"""Active, reactive and apparent power of a load, and the reactive power that corrects its power factor.

P = S cos phi, Q = S sin phi, S = V I (one phase) or root(3) V I (three, V from line to line). To reach an angle
phi2 takes Q = P (tan phi1 - tan phi2) of a capacitor: C = Q / (2 pi f V^2) on one phase, and on three phases each
Q / (3 x 2 pi f V^2) in delta or Q / (2 pi f V^2) in star (any textbook of electrical principles; IEC 60050-131).
"""

import math
from dataclasses import dataclass

from pycore import phasor, trig
from pycore.trig import ROOT_THREE

LEAST_SHARE = 0.999e-3
"""The least share of apparent power from which the load is calculated; a thousandth is just enough."""


class NoLoadError(ValueError):
    """Raised if the typed power fixes no load: ``reason`` is ``active`` (watts at a power factor of 0, or nearly) or
    ``reactive`` (vars at a power factor of 1, or nearly)."""

    def __init__(self, reason: str) -> None:
        self.reason = reason
        super().__init__(reason)


@dataclass(frozen=True, slots=True)
class Load:
    """Complex power (W, and var positive for lagging) at a supply of ``volts`` (V, r.m.s.; of three phases between
    lines), 1 or 3 phases, at ``hertz``."""

    power: complex
    volts: float
    phases: int
    hertz: float

    def current(self, power: complex) -> float:
        """The line current (A, r.m.s.) of a complex power in VA."""
        amperes = phasor.magnitude(power) / self.volts
        return amperes / ROOT_THREE if self.phases == 3 else amperes


@dataclass(frozen=True, slots=True)
class PowerFactorCorrection:
    """What a load needs to reach a target: ``state`` is ``needed``, ``reached`` (it is there already) or
    ``impossible`` (it takes no active power, or next to none); vars of the capacitor (negative: of a coil)."""

    state: str
    vars: float = 0.0
    after: complex = 0j


def complex_power(amount: float, unit: str, lag: float, volts: float, phases: int) -> complex:
    """P + jQ of an amount in W, var, VA or A (line current) at ``lag`` degrees. Raises NoLoadError."""
    cosine, sine = trig.cosine(lag), trig.sine(lag)
    if unit == "W":
        if cosine < LEAST_SHARE:
            raise NoLoadError("active")
        return complex(amount, amount * sine / cosine)
    if unit == "var":
        if math.fabs(sine) < LEAST_SHARE:
            raise NoLoadError("reactive")
        size = math.fabs(amount / sine)
        return complex(size * cosine, size * sine)
    size = amount
    if unit == "A":
        size = volts * amount * (ROOT_THREE if phases == 3 else 1.0)
    return complex(size * cosine, size * sine)


def tangent_of(factor: float) -> float:
    """tan phi of a power factor above 0."""
    return math.sqrt((1.0 - factor) * (1.0 + factor)) / factor


def correct(load: Load, factor: float, side: int) -> PowerFactorCorrection:
    """Return the correction to a power factor; ``side`` is 1 lagging, -1 leading, 0 the load's own side."""
    active, reactive = load.power.real, load.power.imag
    if active < LEAST_SHARE * phasor.magnitude(load.power):
        return PowerFactorCorrection("impossible")
    own_side = 1 if reactive >= 0 else -1
    target_vars = (side or own_side) * active * tangent_of(factor)
    needed = reactive - target_vars
    if own_side * needed <= 1e-9 * phasor.magnitude(load.power):
        return PowerFactorCorrection("reached")
    return PowerFactorCorrection("needed", needed, complex(active, target_vars))


def capacitance(load: Load, reactive: float, connection: str) -> float:
    """The capacitance in farads for ``reactive`` var: of the one capacitor on one phase, of each of three in ``star``
    or ``delta``."""
    farads = reactive / (math.tau * load.hertz * load.volts * load.volts)
    return farads / 3.0 if load.phases == 3 and connection == "delta" else farads
