"""What a learner of series-circuit does, worked out without pycore: the phasors of a form, and what goes wrong."""

import math
from collections.abc import Iterator

import numpy as np
from independent.problems import Line, Problem, impedance, number
from independent.slips import Slip

TOPIC = 3


def reactances(form: dict[str, str]) -> tuple[list[float], complex, complex]:
    """Ohms of a series circuit: its resistances, its coil, its capacitor."""
    frequency = number(form["frequency"])
    coil = form.get("l", "")
    capacitor = form.get("c", "")
    l_ohms = complex(0, abs(impedance(coil, frequency))) if coil else 0j
    c_ohms = complex(0, -abs(impedance(capacitor, frequency))) if capacitor else 0j
    return [float(part) for part in form.get("r", "").split("+") if part.strip()], l_ohms, c_ohms


def lines(form: dict[str, str]) -> list[Line]:
    """The phasors of a form, in the order of the sheet."""
    current = number(form["supply"])
    resistances, coil, capacitor = reactances(form)
    many = len(resistances) > 1
    found = [Line(f"V_R{k}" if many else "V_R", current * r) for k, r in enumerate(resistances, 1)]
    found += [Line(name, current * ohms) for name, ohms in (("V_L", coil), ("V_C", capacitor)) if ohms]
    return found


def slips(problem: Problem, rng: np.random.Generator) -> Iterator[Slip]:
    """What goes wrong with this topic alone."""
    form = problem.form
    current, frequency = number(form["supply"]), number(form["frequency"])
    resistances, coil, capacitor = reactances(form)
    ohms = sum(resistances)
    yield "impedances-as-numbers", current * (ohms + abs(coil + capacitor)), "added as plain numbers"
    yield "kinds-exchanged", current * (ohms - coil - capacitor), "coil and capacitor are swapped"
    if coil and capacitor:
        yield "reactances-added", current * (ohms + coil - capacitor), "the reactances were added"
    if any(unit in form.get(key, "") for key, unit in (("l", "H"), ("c", "F"))):
        turns = 2.0 * math.pi
        yield "two-pi-forgotten", current * (ohms + coil / turns + capacitor * turns), "2π was left out"
    if "F" in form.get("c", ""):
        wrong = complex(0, -2.0 * math.pi * frequency * number(form["c"]))
        yield "reactance-inverted", current * (ohms + coil + wrong), "calculated as 2πfC"
        yield "micro-as-milli", current * (ohms + coil + capacitor / 1e3), "used as millifarads"
    if "mH" in form.get("l", ""):
        yield "milli-forgotten", current * (ohms + 1e3 * coil + capacitor), "used as henries"
