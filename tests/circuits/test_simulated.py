"""A circuit simulator's four-wire stars: its neutral current, the one that is stored, and the page's."""

import cmath
import math
from pathlib import Path

import pytest
from calculators.folders import FOLDERS, tables
from circuits.simulate import Branch, currents

from pycore.calculators.neutral_current.circuit import StarLoad, solve

STORED = tables(FOLDERS["neutral-current"] / "cases_simulated.toml", "case")
VOLTS, HERTZ = 230.0, 50.0


def branches_of(case: dict) -> list[Branch]:
    """The three loads of a stored case."""
    return [Branch(**branch) for branch in case["circuit"]["branches"]]


def impedance(branch: Branch) -> complex:
    """R + jωL − j/ωC."""
    omega = 2 * math.pi * HERTZ
    return branch.ohms + 1j * omega * branch.henries - (1j / (omega * branch.farads) if branch.farads else 0)


@pytest.mark.parametrize("case", STORED, ids=[case["id"] for case in STORED])
def test_what_is_stored_is_what_the_simulator_says(case: dict, ngspice_path: Path, tmp_path: Path):
    """Line currents as typed in the form, and the neutral's size and angle, to six figures or more."""
    sequence = case["circuit"]["sequence"]
    *lines, neutral = currents(ngspice_path, tmp_path, branches_of(case), sequence)
    assert case["form"]["sequence"] == sequence
    for number, (line, angle) in enumerate(zip(lines, (0, -120, 120) if sequence == "123" else (0, 120, -120),
                                               strict=True), start=1):  # fmt: skip
        assert abs(line) == pytest.approx(float(case["form"][f"i{number}"]), rel=1e-7)
        lag = angle - math.degrees(cmath.phase(line))
        assert 0 == pytest.approx((lag - float(case["form"][f"a{number}"]) + 180) % 360 - 180, abs=1e-5)
    assert abs(neutral) == pytest.approx(case["expected"]["neutral-current"]["value"], rel=1e-7)
    assert math.degrees(cmath.phase(neutral)) == pytest.approx(case["expected"]["neutral-angle"]["value"], abs=1e-4)


@pytest.mark.parametrize("case", STORED, ids=[case["id"] for case in STORED])
def test_currents_from_impedances_by_hand_give_the_simulators_neutral(case: dict, ngspice_path: Path, tmp_path: Path):
    """|I| = V / |Z|, lag = angle of Z: fed to the solver, within 0.1 % of the simulator's neutral."""
    branches, sequence = branches_of(case), case["circuit"]["sequence"]
    neutral = currents(ngspice_path, tmp_path, branches, sequence)[3]
    sizes = tuple(VOLTS / abs(impedance(branch)) for branch in branches)
    lags = tuple(math.degrees(cmath.phase(impedance(branch))) for branch in branches)
    solution = solve(StarLoad(sizes, lags, sequence))
    assert abs(neutral) == pytest.approx(solution.current, rel=1e-3)
    assert abs(solution.neutral - neutral) < 1e-6 * sum(sizes)


def test_the_stored_loads_cover_both_sequences_and_unequal_power_factors():
    """And the sequence matters: the same loads give another neutral the other way round."""
    sequences = [case["circuit"]["sequence"] for case in STORED]
    assert {"123", "132"} == set(sequences)
    by_loads: dict[str, list[float]] = {}
    for case in STORED:
        by_loads.setdefault(str(case["circuit"]["branches"]), []).append(case["expected"]["neutral-current"]["value"])
    pairs = [values for values in by_loads.values() if len(values) == 2]
    assert len(pairs) == 2
    assert all(abs(one - other) > 0.5 for one, other in pairs)
    assert sum(len({case["form"][f"a{n}"] for n in (1, 2, 3)}) == 3 for case in STORED) >= 3
