"""Two wattmeters on three wires: their readings, and back to power, reactive power and power factor.

Each meter has the current of its own line and the voltage from that line to the third line, which has no meter
(Aron's connection, common practice). P = P1 + P2 is true for any three-wire load. For a balanced load in the sequence
L1, L2, L3 the meter whose line is followed by the third line reads V I cos(30 degrees + lag), the other one
V I cos(30 degrees - lag). So with a lagging load meter 1 reads more on L1 and L2 or on L2 and L3, and meter 2 reads
more on L1 and L3. In the other sequence both readings are swapped. Checked in the tests against the mean of the
instantaneous power.
"""

from dataclasses import dataclass

from pycore import phasor, trig
from pycore.trig import ROOT_THREE


@dataclass(frozen=True, slots=True)
class MeterVoltage:
    """The line of a wattmeter's current, the line to which its voltage is measured (numbers from 1), and both
    phasors' angles in degrees for unity power factor, from the L1 phase voltage, in the sequence L1, L2, L3."""

    line: int
    to: int
    voltage_angle: float
    current_angle: float


METERS = {
    "13": (MeterVoltage(1, 2, 30.0, 0.0), MeterVoltage(3, 2, 90.0, 120.0)),
    "12": (MeterVoltage(1, 3, -30.0, 0.0), MeterVoltage(2, 3, -90.0, -120.0)),
    "23": (MeterVoltage(2, 1, -150.0, -120.0), MeterVoltage(3, 1, 150.0, 120.0)),
}
"""Both meters, by the lines in which they are connected."""


def larger_lagging(meters: str) -> int:
    """The number of the meter (1 or 2) that reads more if the load lags."""
    return 2 if meters == "13" else 1


@dataclass(frozen=True, slots=True)
class BalancedLoad:
    """Line voltage (V), line current (A), lag of each current behind its own phase voltage (degrees)."""

    voltage: float
    current: float
    lag: float


@dataclass(frozen=True, slots=True)
class WattmeterReadings:
    """What both meters read (W), and what follows: power (W), reactive power (var, lagging positive), apparent
    power (VA), the angle of lag (degrees) and the power factor."""

    first: float
    second: float
    power: float
    reactive: float
    apparent: float
    lag: float
    factor: float


def angles(lag: float, meters: str) -> tuple[float, float]:
    """Degrees between voltage and current of both meters, for a load's ``lag`` in degrees: 30 + lag and 30 - lag, in
    the order that follows from the ``meters``' lines."""
    wide, narrow = 30.0 + lag, 30.0 - lag
    return (wide, narrow) if larger_lagging(meters) == 2 else (narrow, wide)


def from_load(load: BalancedLoad, meters: str) -> WattmeterReadings:
    """The readings of two meters on a balanced load, sequence L1, L2, L3; ``meters`` is a key of ``METERS``."""
    product = load.voltage * load.current
    first, second = (product * trig.cosine(angle) for angle in angles(load.lag, meters))
    return _from(first, second, meters)


def from_meters(first: float, second: float, meters: str) -> WattmeterReadings:
    """From both readings (W) of a balanced load back to power and angle. Raises ValueError for two zeros."""
    if first == 0.0 and second == 0.0:
        raise ValueError("both readings are zero")
    return _from(first, second, meters)


def _from(first: float, second: float, meters: str) -> WattmeterReadings:
    difference = second - first if larger_lagging(meters) == 2 else first - second
    power, reactive = first + second, ROOT_THREE * difference
    apparent = phasor.magnitude(complex(power, reactive))
    lag = trig.angle_of(power, reactive)
    factor = power / apparent if apparent > 0 else 0.0
    return WattmeterReadings(first, second, power, reactive, apparent, lag, factor)
