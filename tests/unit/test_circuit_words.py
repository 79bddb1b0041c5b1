"""What all circuits say of current and voltage: angle and power factor agree as they are written."""

import math
import re

import pytest

from pycore.sums.circuit import angle_outputs, factor_number, factor_phrase
from pycore.words import plain

ANGLES = [0.0001, 0.04, 0.049, 0.06, 0.1, 0.3, 0.9, 1.8, 2.6, 40.0, 89.99, 90.0]


@pytest.mark.parametrize("sign", [1, -1])
@pytest.mark.parametrize("angle", ANGLES)
def test_a_written_angle_and_a_written_power_factor_agree(angle: float, sign: int):
    factor = math.cos(math.radians(angle))
    said = plain(factor_phrase(sign * angle, factor, "."))
    shown_angle, shown_factor = (output.text for output in angle_outputs(sign * angle, factor, "."))
    if angle < 0.05:
        assert "I and V are almost in phase: power factor almost 1." == said
        assert ("0.0°", "1.000") == (shown_angle, shown_factor)
    else:
        side, verb = ("lagging", "lags") if sign > 0 else ("leading", "leads")
        assert f"I {verb} V by" in said and "by 0°" not in said
        assert said.endswith(f"power factor {shown_factor}.") and shown_factor.endswith(side)
        assert float(re.match(r"[\d.]+", shown_factor)[0]) < 1.0


def test_in_phase_is_exact():
    assert "I and V are in phase: power factor 1." == plain(factor_phrase(0.0, 1.0, "."))


def test_a_usual_power_factor_keeps_three_decimals():
    assert ("0.766", "0,766", "−0.500") == (
        factor_number(0.766044, 40.0, "."), factor_number(0.766044, 40.0, ","), factor_number(-0.5, 120.0, ".")
    )  # fmt: skip
