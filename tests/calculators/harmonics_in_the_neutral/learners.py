"""What a learner of harmonics does, worked out without pycore: the phasors of a form, and what goes wrong."""

from collections.abc import Iterator

import numpy as np
from independent.problems import Line, Problem, number, polar
from independent.slips import Slip

TOPIC = 6


def lines(form: dict[str, str]) -> list[Line]:
    """The phasors of a form, in the order of the sheet."""
    order = int(form["drawn"])
    share = 1.0 if order == 1 else float(form[f"h{order}"]) / 100.0
    return [
        Line(f"I_{k},{order}", polar(share * number(form[f"i{k}"]), order * (angle - float(form.get(f"a{k}") or 0))))
        for k, angle in enumerate((0.0, -120.0, 120.0), 1)
    ]


def slips(problem: Problem, rng: np.random.Generator) -> Iterator[Slip]:
    """What goes wrong with this topic alone."""
    form, order = problem.form, int(problem.form["drawn"])
    if order > 1:
        angles = [angle - float(form.get(f"a{k}") or 0) for k, angle in enumerate((0.0, -120.0, 120.0), 1)]
        ends = [polar(abs(line.value), angle) for line, angle in zip(problem.lines, angles, strict=True)]
        yield "order-not-multiplied", sum(ends), "angles are those of the fundamental"
