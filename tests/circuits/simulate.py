"""A four-wire star in the circuit simulator: line and neutral currents by its AC analysis."""

import re
import subprocess
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True)
class Branch:
    """One load: resistance in ohms, in series with henries or farads (0: none)."""

    ohms: float
    henries: float = 0.0
    farads: float = 0.0

    def netlist(self, number: int) -> list[str]:
        """From the line's node to the star point, by way of the ammeter of the line (a source of 0 V)."""
        lines = [f"VA{number} line{number} in{number} DC 0"]
        last = f"mid{number}" if self.henries or self.farads else "star"
        lines.append(f"R{number} in{number} {last} {self.ohms!r}")
        if self.henries:
            lines.append(f"L{number} mid{number} star {self.henries!r}")
        if self.farads:
            lines.append(f"C{number} mid{number} star {self.farads!r}")
        return lines


def netlist(branches: list[Branch], sequence: str, volts: float, hertz: float) -> str:
    """Three phase voltages, three branches, and a neutral whose current is measured."""
    angles = {"123": (0, -120, 120), "132": (0, 120, -120)}[sequence]
    lines = ["four-wire star"]
    for number, (branch, angle) in enumerate(zip(branches, angles, strict=True), start=1):
        lines += [f"V{number} line{number} 0 AC {volts!r} {angle}", *branch.netlist(number)]
    wanted = " ".join(f"real(i({meter})) imag(i({meter}))" for meter in ("va1", "va2", "va3", "vn"))
    control = [f"ac lin 1 {hertz!r} {hertz!r}", "set numdgt=12", *(f"print {name}" for name in wanted.split())]
    return "\n".join([*lines, "VN star 0 DC 0", ".control", *control, "quit", ".endc", ".end", ""])


def currents(ngspice: Path, folder: Path, branches: list[Branch], sequence: str, volts: float = 230.0,
             hertz: float = 50.0) -> tuple[complex, ...]:  # fmt: skip
    """The three line currents and the neutral's, r.m.s. phasors from L1's phase voltage."""
    place = folder / "star.cir"
    place.write_text(netlist(branches, sequence, volts, hertz))
    done = subprocess.run([str(ngspice), "-b", str(place)], capture_output=True, text=True, timeout=60, cwd=folder)
    values = [float(value) for value in re.findall(r"^(?:real|imag)\(\S+\) = (\S+)$", done.stdout, re.MULTILINE)]
    assert 8 == len(values), done.stdout + done.stderr
    return tuple(complex(real, imaginary) for real, imaginary in zip(values[::2], values[1::2], strict=True))
