"""What a learner of add-phasors does, worked out without pycore: the phasors of a form, and what goes wrong."""

from collections.abc import Iterator

import numpy as np
from independent.problems import Line, Problem, subscripts, typed_phasors
from independent.slips import Slip, of_a_difference

TOPIC = 1


def lines(form: dict[str, str]) -> list[Line]:
    """The phasors of a form, in the order of the sheet."""
    values = typed_phasors(form)
    off = form["combine"] == "difference"
    return [Line(("−" if off and k else "") + subscripts(f"I{k + 1}"), -v if off and k else v)
            for k, v in enumerate(values)]  # fmt: skip


def slips(problem: Problem, rng: np.random.Generator) -> Iterator[Slip]:
    """What goes wrong with this topic alone."""
    return of_a_difference(problem)
