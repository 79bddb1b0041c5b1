"""What a learner of neutral-current does, worked out without pycore: the phasors of a form, and what goes wrong."""

from collections.abc import Iterator

import numpy as np
from independent.problems import Line, Problem, number, phase_angles, polar, subscripts
from independent.slips import Slip

TOPIC = 0


def lines(form: dict[str, str]) -> list[Line]:
    """The phasors of a form, in the order of the sheet."""
    return [Line(subscripts(f"I{k}"), polar(number(form[f"i{k}"]), angle - float(form.get(f"a{k}") or 0)))
            for k, angle in enumerate(phase_angles(form), 1)]  # fmt: skip


def slips(problem: Problem, rng: np.random.Generator) -> Iterator[Slip]:
    """Nothing goes wrong with this topic alone."""
    return iter(())


def voltages(form: dict[str, str]) -> tuple[float, ...]:
    """The direction of each line's own voltage, in degrees."""
    return phase_angles(form)
