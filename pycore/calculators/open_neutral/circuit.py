"""A star-connected load of constant impedances on a symmetrical supply, with its neutral and without.

With the neutral each load has its own phase voltage. Without it the load's star point is displaced
(Millman's theorem): V = sum of V_k Y_k over sum of Y_k, and each load has the difference. Source: Millman,
A useful network theorem, Proceedings of the IRE 28 (1940), 413 (from memory); checked by a circuit simulator.
"""

from dataclasses import dataclass

from pycore import phasor
from pycore.circuits.supply import VOLTAGE_ANGLES
from pycore.trig import ROOT_THREE

Three = tuple[complex, complex, complex]


MOST_TIMES = 1000.0
"""How many times the phase voltage the star point may move before mixed reactances count as cancelling."""


NEAR_SIDE = 1e-6
"""Share of the line voltage up to which the star point counts as on a side of the triangle."""


class FloatingStarPointError(ValueError):
    """Raised if the admittances add to zero, or nearly: the displacement is then unlimited."""


@dataclass(frozen=True, slots=True)
class UnbalancedStar:
    """Line voltage (V, r.m.s.), the phase sequence (``123`` or ``132``) and three admittances (S; 0: nothing
    connected)."""

    line_voltage: float
    admittances: Three
    sequence: str = "123"


@dataclass(frozen=True, slots=True)
class OpenNeutral:
    """Both cases side by side (V, A, r.m.s.): phase voltages, line currents and neutral current with the neutral
    connected; displacement of the star point, load voltages and line currents with the neutral open. Angles are
    measured anticlockwise from the L1 phase voltage."""

    star: UnbalancedStar
    phases: Three
    currents: Three
    neutral: complex
    displacement: complex
    voltages: Three
    open_currents: Three


def solve(star: UnbalancedStar) -> OpenNeutral:
    """Return both cases of one load (V, A, r.m.s.; angles in degrees from the L1 phase voltage).

    Raises FloatingStarPointError if the admittances add to zero or nearly, ValueError if no load is connected.
    """
    size = star.line_voltage / ROOT_THREE
    one, two, three = (phasor.polar(size, angle) for angle in VOLTAGE_ANGLES[star.sequence])
    phases = (one, two, three)
    if all(value == 0 for value in star.admittances):
        raise ValueError("no load is connected")
    currents = tuple(v * y for v, y in zip(phases, star.admittances, strict=True))
    admittance_sum = phasor.total(star.admittances)
    if admittance_sum == 0:
        raise FloatingStarPointError("the admittances add to nothing")
    neutral = phasor.total(currents)
    displacement = neutral / admittance_sum
    if phasor.magnitude(displacement) > MOST_TIMES * size:
        raise FloatingStarPointError("the admittances nearly cancel")
    voltages = tuple(v - displacement for v in phases)
    open_currents = tuple(v * y for v, y in zip(voltages, star.admittances, strict=True))
    return OpenNeutral(
        star, phases, (currents[0], currents[1], currents[2]), neutral, displacement,
        (voltages[0], voltages[1], voltages[2]), (open_currents[0], open_currents[1], open_currents[2]),
    )  # fmt: skip


def is_outside(solution: OpenNeutral) -> bool:
    """Whether the star point is outside the triangle of the line voltages, and not on one of its sides."""
    corners, point = solution.phases, solution.displacement
    sense = 1.0 if solution.star.sequence == "132" else -1.0
    for start, end in zip(corners, (*corners[1:], corners[0]), strict=True):
        side, to_point = end - start, point - start
        height = sense * (side.real * to_point.imag - side.imag * to_point.real)
        if height < -NEAR_SIDE * solution.star.line_voltage * solution.star.line_voltage:
            return True
    return False
