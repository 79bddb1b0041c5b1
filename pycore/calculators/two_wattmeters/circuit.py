"""Two wattmeters on three wires: their readings, and back to power, reactive power and power factor.

Meter 1 has the current of L1 and the voltage from L1 to L2, meter 2 the current of L3 and the voltage from L3
to L2 (Aron's connection, common practice). P = P1 + P2 holds for any three-wire load; Q = root 3 (P2 - P1)
with its sign (lagging positive), and the angle by the tangent, only for a balanced one in the sequence L1, L2, L3:
in the other sequence both readings change places, and Q its sign.
"""

from dataclasses import dataclass

from pycore import phasor, trig
from pycore.trig import ROOT_THREE


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


def read(load: BalancedLoad) -> WattmeterReadings:
    """What two meters read on a balanced load, sequence L1, L2, L3.

    The line voltage V12 leads V1 by 30 degrees and V32 lags V3 by 30, so that the meters see
    30 degrees + lag and 30 degrees - lag.
    """
    product = load.voltage * load.current
    first = product * trig.cosine(30.0 + load.lag)
    second = product * trig.cosine(30.0 - load.lag)
    return _from(first, second)


def back(first: float, second: float) -> WattmeterReadings:
    """From both readings of a balanced load back to power and angle. Raises ValueError for two zeros."""
    if first == 0.0 and second == 0.0:
        raise ValueError("both readings are zero")
    return _from(first, second)


def _from(first: float, second: float) -> WattmeterReadings:
    power, reactive = first + second, ROOT_THREE * (second - first)
    apparent = phasor.magnitude(complex(power, reactive))
    lag = trig.angle_of(power, reactive)
    factor = power / apparent if apparent > 0 else 0.0
    return WattmeterReadings(first, second, power, reactive, apparent, lag, factor)
