"""The numbers of one branch of a parallel circuit, as its lines print them."""

import math

from pycore import phasor, trig
from pycore.circuits.elements import CAPACITOR, RESISTOR
from pycore.forms.elements import TypedElement
from pycore.sums.circuit_formula import reactance
from pycore.sums.figures import Figure, Figures, ratio


class BranchLines:
    """One branch: its elements, resistance, reactance, impedance and admittance, and with a voltage its current."""

    def __init__(
        self, place: int, typed: tuple[TypedElement, ...], impedance: complex, admittance: complex, hertz: float,
        figures: Figures,
    ) -> None:
        self.index, self.typed, self.impedance, self.figures = str(place), typed, impedance, figures
        self.sizes = [reactance(one, _exact(one, hertz), hertz, figures) for one in typed]
        pairs = [(one.element.kind, size) for one, size in zip(typed, self.sizes, strict=True)]
        signed = [one.negative if kind == CAPACITOR else one for kind, one in pairs if kind != RESISTOR]
        self.r = figures.given(math.fsum(one.value for kind, one in pairs if kind == RESISTOR), "Ω")
        among = max((one.value for one in self.sizes), default=0.0)
        reactive = figures.total(math.fsum(one.value for one in signed), impedance.imag, "Ω", among)
        self.x = signed[0] if len(signed) == 1 else reactive
        size = phasor.magnitude(impedance)
        if self.r.value == 0 or self.x.value == 0:
            self.z = self.x.size if self.r.value == 0 else self.r
        else:
            self.z = figures.result(math.hypot(self.r.value, self.x.value), size, "Ω")
        square = self.z.value * self.z.value
        self.g = figures.result(ratio(self.r.value, square), admittance.real, "S", phasor.magnitude(admittance))
        self.b = figures.result(0.0 - ratio(self.x.value, square), admittance.imag, "S", phasor.magnitude(admittance))

    def take(self, volts: Figure, exact: complex) -> None:
        """The current of the branch, its angle of lag, and both components."""
        figures = self.figures
        self.current = figures.result(ratio(volts.value, self.z.value), phasor.magnitude(exact), "A")
        angle = phasor.angle(self.impedance)
        # An angle of a resistor alone, or of a coil or capacitor alone, is exact.
        decimals = figures.count - 2 if self.r.value and self.x.value else 1
        self.phi = figures.decimals(angle, decimals, "°")
        self.along = figures.result(self.current.value * trig.cosine(self.phi.value), exact.real, "A")
        self.across = figures.result(self.current.value * trig.sine(self.phi.value), 0.0 - exact.imag, "A")


def _exact(typed: TypedElement, hertz: float) -> float:
    """The size of an element in ohms, unrounded."""
    element = typed.element
    if element.kind == RESISTOR or element.in_ohms:
        return element.value
    omega = math.tau * hertz
    return 1.0 / (omega * element.value) if element.kind == CAPACITOR else omega * element.value
