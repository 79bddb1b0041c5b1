"""Practice problems of series and parallel circuits and of the power triangle, drawn from a code: the same for ever
(version 1).

They read nothing but the dice and plain arithmetic. A problem is set when neither resistance nor reactance is
everything, and when the usual slips (a part left out, reactances added, coil and capacitor exchanged, 2 pi
forgotten) give something clearly else.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from pycore import phasor
from pycore.practice.codes import Code
from pycore.practice.dice import Dice, dice_of_code
from pycore.practice.generator import TRIES, NoProblem

CLEAR = 0.12
"""Share of the right result by which a slip's keeps clear of it."""


@dataclass(frozen=True, slots=True)
class Circuit:
    """Ohms, millihenries and microfarads of a circuit (0: none), or reactances in whole ohms where ``in_ohms``; a
    coil's own resistance, hertz, and tenths of an ampere or whole volts of the supply."""

    ohms: int
    coil: int
    capacitor: int
    in_ohms: bool
    own: int
    hertz: int
    supply: int

    def reactances(self, share: float = math.tau) -> tuple[float, float]:
        """Of coil and capacitor, in ohms; ``share`` is what the frequency is multiplied by."""
        if self.in_ohms:
            return float(self.coil), float(self.capacitor)
        turning = share * self.hertz
        capacitor = 1e6 / (turning * self.capacitor) if self.capacitor else 0.0
        return turning * self.coil / 1000.0, capacitor


def _series(dice: Dice, tier: str) -> Circuit:
    if tier == "support":
        return Circuit(5 * dice.between(4, 16), 5 * dice.between(3, 24), 5 * dice.between(0, 12), True, 0, 50,
                       10 * dice.between(1, 5))  # fmt: skip
    own = dice.between(2, 12) if tier == "stretch" else 0
    hertz = (50, 60)[dice.below(2)] if tier == "stretch" else 50
    return Circuit(dice.between(15, 90), 10 * dice.between(5, 45), 5 * dice.between(6, 50), False, own, hertz,
                   5 * dice.between(2, 10))  # fmt: skip


def _slips(circuit: Circuit) -> Iterator[complex]:
    """What the usual slips give for the impedance."""
    ohms = float(circuit.ohms + circuit.own)
    coil, capacitor = circuit.reactances()
    yield complex(ohms, 0.0)
    yield complex(0.0, coil - capacitor)
    yield complex(ohms, capacitor - coil)
    if capacitor:
        yield complex(ohms, coil)
        yield complex(ohms, -capacitor)
        yield complex(ohms, coil + capacitor)
    if circuit.own:
        yield complex(float(circuit.ohms), coil - capacitor)
    if not circuit.in_ohms:
        slow_coil, slow_capacitor = circuit.reactances(1.0)
        yield complex(ohms, slow_coil - slow_capacitor)


def may_be_set(circuit: Circuit) -> bool:
    """Whether a series circuit may be set."""
    ohms = float(circuit.ohms + circuit.own)
    coil, capacitor = circuit.reactances()
    whole = complex(ohms, coil - capacitor)
    size = phasor.magnitude(whole)
    if not 0.3 * ohms <= math.fabs(whole.imag) <= 3.0 * ohms or max(coil, capacitor) > 4.0 * size:
        return False
    least = CLEAR * size
    return all(phasor.magnitude(slip - whole) >= least for slip in _slips(circuit))


def _drawn(code: Code) -> Dice:
    return dice_of_code(code)


def series_of(code: Code) -> Circuit:
    """The series circuit of a code, its supply in tenths of an ampere. Raises NoProblem."""
    dice = _drawn(code)
    for _ in range(TRIES):
        circuit = _series(dice, code.tier)
        if may_be_set(circuit):
            return circuit
    raise NoProblem(str(code))


VOLTS = (24, 48, 120, 230, 240)


def _parallel(dice: Dice, tier: str) -> Circuit:
    volts = VOLTS[dice.below(len(VOLTS))]
    if tier == "support":
        return Circuit(4 * dice.between(5, 25), 4 * dice.between(4, 25), 0, True, 0, 50, volts)
    own = dice.between(4, 30) if tier == "stretch" else 0
    return Circuit(dice.between(20, 99), 10 * dice.between(5, 40), 5 * dice.between(4, 40), False, own, 50, volts)


def currents_of(circuit: Circuit, share: float = math.tau) -> tuple[complex, ...]:
    """Currents of a resistor, a coil (with its own resistance in series) and a capacitor beside one another."""
    coil, capacitor = circuit.reactances(share)
    volts = complex(float(circuit.supply), 0.0)
    made = [volts / complex(float(circuit.ohms), 0.0), volts / complex(float(circuit.own), coil)]
    return (*made, volts / complex(0.0, -capacitor)) if capacitor else tuple(made)


def may_stand_beside(circuit: Circuit) -> bool:
    """Whether a parallel circuit may be set."""
    parts = currents_of(circuit)
    whole = phasor.total(parts)
    size = phasor.magnitude(whole)
    if min(phasor.magnitude(part) for part in parts) < 0.15 * max(phasor.magnitude(part) for part in parts):
        return False
    if not 0.25 * whole.real <= math.fabs(whole.imag) <= 2.0 * whole.real:
        return False
    slips = [whole - part for part in parts]
    slips += [whole - part - part for part in parts]
    slips.append(complex(whole.real, -whole.imag))
    if not circuit.in_ohms:
        slips.append(phasor.total(currents_of(circuit, 1.0)))
    return all(phasor.magnitude(slip - whole) >= CLEAR * size for slip in slips)


def parallel_of(code: Code) -> Circuit:
    """The parallel circuit of a code, its supply in volts. Raises NoProblem."""
    dice = _drawn(code)
    for _ in range(TRIES):
        circuit = _parallel(dice, code.tier)
        if may_stand_beside(circuit):
            return circuit
    raise NoProblem(str(code))


@dataclass(frozen=True, slots=True)
class Correction:
    """Tenths of a kilowatt, hundredths of the power factor, hundredths of the target (0: none), volts and phases."""

    tenths: int
    factor: int
    target: int
    volts: int
    phases: int


def correction_of(code: Code) -> Correction:
    """The load of a code: support without a capacitor, core with one, stretch on three phases with one."""
    dice = _drawn(code)
    if code.tier == "support":
        return Correction(5 * dice.between(2, 12), 5 * dice.between(12, 18), 0, 230, 1)
    one_phase = code.tier == "core"
    tenths, factor = dice.between(10, 70) if one_phase else dice.between(40, 250), dice.between(60, 82)
    target = (90, 92, 95, 98)[dice.below(4)]
    return Correction(tenths, factor, target, 230 if one_phase else 400, 1 if one_phase else 3)
