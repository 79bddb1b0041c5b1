"""Phasors as people type them."""

import pytest

from pycore import phasor
from pycore.calculators.registry import CALCULATORS
from pycore.forms.phasor_text import read_complex, read_phasor
from pycore.quantity import QuantityError


@pytest.mark.parametrize(
    ("text", "size", "angle"),
    [
        ("20 at 60", 20, 60),
        ("20∠60°", 20, 60),
        ("20 A ∠ -30 deg", 20, -30),
        ("20 @ -30", 20, -30),
        ("850 mA at 0", 0.85, 0),
        ("12,5 at 7,5", 12.5, 7.5),
        ("20 at 270", 20, -90),
        ("-20 at 0", 20, 180),
        ("20", 20, 0),
        ("3 + j4", 5, 53.13010235415598),
        ("3+4i", None, None),
        ("3 - j4", 5, -53.13010235415598),
        ("−3 − j4", 5, -126.86989764584402),
        ("j4", 4, 90),
        ("-j4", 4, -90),
        ("3 + j", 3.1622776601683795, 18.43494882292201),
    ],
)
def test_a_phasor_is_read_in_either_form(text: str, size: float | None, angle: float | None):
    if size is None:
        with pytest.raises(QuantityError):
            read_phasor(text, "A")
        return
    assert (size, angle) == pytest.approx(read_phasor(text, "A"))


@pytest.mark.parametrize("text", ["", "at 60", "20 at", "20 at 60 at 30", "north", "20 V at 60", "3 j4", "3 ++ j4",
                                  "1e400 at 0", "20 at 1e9", "nan", "j", "3 + j4 + j5"])  # fmt: skip
def test_what_is_no_phasor_is_refused(text: str):
    if text == "j":
        assert (1.0, 90.0) == read_phasor(text, "A")
        return
    with pytest.raises(QuantityError):
        read_phasor(text, "A")


@pytest.mark.parametrize("text", ["20.1234567890123 at 30.1234567890123", "12.3456789012345 ∠ -75.4321098765432"])
def test_a_load_in_polar_form_is_calculated_unrounded(text: str):
    load = CALCULATORS["star-and-delta"].case({"z1": text}).solution.circuit.loads[0]
    assert phasor.polar(*read_phasor(text, "Ω")) == load


def test_a_rectangular_phasor_keeps_both_parts_as_they_were_typed():
    text = "8.1234567890123 - j6.1234567890123"
    assert complex(8.1234567890123, -6.1234567890123) == read_complex(text, "Ω")
    load = CALCULATORS["star-and-delta"].case({"z1": text}).solution.circuit.loads[0]
    assert read_complex(text, "Ω") == load
