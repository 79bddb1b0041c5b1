"""Three loads on a symmetrical supply, in star with a neutral or in delta: every voltage, current and power.

Line and phase voltage differ by the root of three and 30 degrees (IEC 60038: 230/400 V, 400/√3 = 230.94). In
delta each line current is the difference of the two branch currents that meet at its corner.
"""

from dataclasses import dataclass

from pycore import phasor
from pycore.circuits.supply import VOLTAGE_ANGLES
from pycore.trig import ROOT_THREE

Three = tuple[complex, complex, complex]


@dataclass(frozen=True, slots=True)
class ThreeLoads:
    """Loads as impedances (ohms; None: nothing connected), their connection (``star``, ``delta``), the line
    voltage (V) and the sequence (``123``, ``132``). In delta they lie between L1 and L2, L2 and L3, L3 and L1."""

    connection: str
    line_voltage: float
    loads: tuple[complex | None, complex | None, complex | None]
    sequence: str = "123"


@dataclass(frozen=True, slots=True)
class StarDeltaSolution:
    """Phase voltages (star voltages of the supply), voltages between lines (12, 23, 31), branch currents (of each
    load), line currents, and the three loads' power together (W, var). Angles count from the L1 phase voltage."""

    circuit: ThreeLoads
    phases: Three
    between: Three
    branches: Three
    lines: Three
    power: complex

    @property
    def balanced(self) -> bool:
        """Whether the three loads are equal."""
        return self.circuit.loads[0] == self.circuit.loads[1] == self.circuit.loads[2]


def solve(circuit: ThreeLoads) -> StarDeltaSolution:
    """Every voltage and current. Raises ValueError for a load of no ohms."""
    if any(load == 0 for load in circuit.loads):
        raise ValueError("a load of 0 ohms is a short circuit")
    size, second = circuit.line_voltage / ROOT_THREE, VOLTAGE_ANGLES[circuit.sequence][1]
    one, two, three = (phasor.polar(size, angle) for angle in (0.0, second, -second))
    ahead = 30.0 if second < 0 else -30.0
    line = circuit.line_voltage
    between = (
        phasor.polar(line, ahead), phasor.polar(line, second + ahead), phasor.polar(line, ahead - second)
    )  # fmt: skip
    across = between if circuit.connection == "delta" else (one, two, three)
    a, b, c = (0j if load is None else volts / load for volts, load in zip(across, circuit.loads, strict=True))
    lines = (a - c, b - a, c - b) if circuit.connection == "delta" else (a, b, c)
    power = phasor.total(volts * current.conjugate() for volts, current in zip(across, (a, b, c), strict=True))
    return StarDeltaSolution(circuit, (one, two, three), between, (a, b, c), lines, power)
