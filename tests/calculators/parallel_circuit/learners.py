"""What a learner of parallel-circuit does, worked out without pycore: the phasors of a form, and what goes wrong."""

import math
from collections.abc import Iterator

import numpy as np
from independent.problems import Line, Problem, impedance, number, subscripts
from independent.slips import Slip

TOPIC = 4


def branches(form: dict[str, str]) -> list[complex]:
    """Ohms of each branch of a parallel circuit."""
    frequency = number(form["frequency"])
    return [impedance(form[f"b{k}"], frequency) for k in range(1, 7) if form.get(f"b{k}")]


def lines(form: dict[str, str]) -> list[Line]:
    """The phasors of a form, in the order of the sheet."""
    volts = number(form["supply"])
    return [Line(subscripts(f"I{k}"), volts / ohms) for k, ohms in enumerate(branches(form), 1)]


def slips(problem: Problem, rng: np.random.Generator) -> Iterator[Slip]:
    """What goes wrong with this topic alone."""
    form, volts = problem.form, number(problem.form["supply"])
    ohms, frequency = branches(form), number(form["frequency"])
    yield "impedances-in-series", volts / sum(ohms), "as a series circuit"
    yield "kinds-exchanged", sum(volts / z.conjugate() for z in ohms), "coil and capacitor are swapped"
    texts = [form[f"b{k}"] for k in range(1, 7) if form.get(f"b{k}")]
    if any("H" in text or "F" in text for text in texts):
        wrong = [complex(z.real, z.imag / (2 * math.pi) if z.imag > 0 else z.imag * 2 * math.pi) for z in ohms]
        yield "two-pi-forgotten", sum(volts / z for z in wrong), "2π was left out"
    if any("mH" in text for text in texts):
        wrong = [impedance(text.replace("mH", "H"), frequency) for text in texts]
        yield "milli-forgotten", sum(volts / z for z in wrong), "used as henries"
