"""Series and parallel circuits in the circuit simulator: its currents and voltages are the pages'."""

import math
import random
import re
import subprocess
from pathlib import Path

import pytest

from pycore import phasor
from pycore.calculators.parallel_circuit import circuit as parallel
from pycore.calculators.series_circuit import circuit as series
from pycore.circuits.elements import CAPACITOR, COIL, RESISTOR, Element

LETTER = {RESISTOR: "R", COIL: "L", CAPACITOR: "C"}


def element(rng: random.Random) -> Element:
    """A resistor of 1 Ω to 1 kΩ, a coil of 1 mH to 1 H or a capacitor of 1 µF to 1 mF."""
    kind = rng.choice((RESISTOR, COIL, CAPACITOR))
    low = {RESISTOR: 0, COIL: -3, CAPACITOR: -6}[kind]
    return Element(kind, float(f"{10 ** rng.uniform(low, low + 3):.4g}"))


def chain(elements: tuple[Element, ...], first: str, name: str) -> list[str]:
    """Elements one after another from a node to earth."""
    nodes = [first, *(f"{name}n{place}" for place in range(1, len(elements))), "0"]
    return [
        f"{LETTER[one.kind]}{name}{place} {nodes[place]} {nodes[place + 1]} {one.value!r}"
        for place, one in enumerate(elements)
    ]


def simulated(ngspice: Path, folder: Path, lines: list[str], hertz: float, wanted: list[str]) -> list[complex]:
    """What the simulator's AC analysis says of some vectors."""
    prints = [f"print {part}({name})" for name in wanted for part in ("real", "imag")]
    control = [".control", f"ac lin 1 {hertz!r} {hertz!r}", "set numdgt=12", *prints, "quit", ".endc", ".end", ""]
    place = folder / "ladder.cir"
    place.write_text("\n".join(["ladder", *lines, *control]))
    done = subprocess.run([str(ngspice), "-b", str(place)], capture_output=True, text=True, timeout=60, cwd=folder)
    values = [float(value) for value in re.findall(r"^(?:real|imag)\(.+\) = (\S+)$", done.stdout, re.MULTILINE)]
    assert 2 * len(wanted) == len(values), done.stdout + done.stderr
    return [complex(real, imag) for real, imag in zip(values[::2], values[1::2], strict=True)]


@pytest.mark.parametrize("seed", range(8))
def test_a_series_circuit_has_the_simulators_current_and_voltages(seed: int, ngspice_path: Path, tmp_path: Path):
    rng = random.Random(seed)
    # A resistor, so that no two reactances leave nothing but rounding.
    elements = (Element(RESISTOR, 10.0), *(element(rng) for _ in range(rng.randint(1, 3))))
    hertz = rng.choice((50.0, 60.0, 400.0))
    found = series.solve(series.SeriesInput(elements, hertz, 230.0))
    nodes = [f"an{place}" for place in range(1, len(elements))]
    lines = ["V1 top 0 AC 230 0", *chain(elements, "top", "a")]
    current, *levels = simulated(ngspice_path, tmp_path, lines, hertz, ["i(v1)", *(f"v({node})" for node in nodes)])
    assert found.current == pytest.approx(abs(current), rel=1e-6)
    # The simulator counts a source's current into its plus pole.
    assert 0 == pytest.approx(math.remainder(math.degrees(phase(-current)) + found.angle, 360.0), abs=1e-5)
    ends = [230 + 0j, *levels, 0j]
    for place, voltage in enumerate(found.voltages):
        assert phasor.magnitude(voltage) == pytest.approx(abs(ends[place] - ends[place + 1]), rel=1e-6)


@pytest.mark.parametrize("seed", range(8))
def test_a_parallel_circuit_has_the_simulators_currents(seed: int, ngspice_path: Path, tmp_path: Path):
    rng = random.Random(100 + seed)
    branches = tuple(
        (Element(RESISTOR, float(rng.randint(5, 80))), *(element(rng) for _ in range(rng.randint(0, 2))))
        for _ in range(rng.randint(1, 4))
    )
    hertz = rng.choice((50.0, 60.0, 400.0))
    found = parallel.solve(parallel.ParallelInput(branches, hertz, 230.0))
    lines = ["V1 top 0 AC 230 0"]
    for number, branch in enumerate(branches, start=1):
        lines += [f"VA{number} top b{number} DC 0", *chain(branch, f"b{number}", f"b{number}")]
    wanted = [f"i(va{number})" for number in range(1, len(branches) + 1)]
    for expected, current in zip(simulated(ngspice_path, tmp_path, lines, hertz, wanted), found.currents, strict=True):
        assert abs(expected - current) < 1e-6 * abs(expected)


def phase(value: complex) -> float:
    """The angle of a complex number in radians."""
    return math.atan2(value.imag, value.real)
