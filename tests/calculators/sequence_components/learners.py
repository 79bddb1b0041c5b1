"""What a learner of sequence-components does, worked out without pycore: the phasors of a form, and what goes wrong."""

from collections.abc import Iterator

import numpy as np
from independent.problems import TURN, Line, Problem, subscripts, typed_phasors
from independent.slips import Slip

TOPIC = 9


def lines(form: dict[str, str]) -> list[Line]:
    """The phasors of a form, in the order of the sheet."""
    values = typed_phasors(form)
    turns = {"zero": ("", ""), "positive": ("a", "a²"), "negative": ("a²", "a")}[form["part"]]
    factor = {"": 1.0, "a": TURN, "a²": TURN * TURN}
    return [Line("I₁", values[0]), *(Line(subscripts(f"{turn}I{k}"), factor[turn] * values[k - 1])
                                     for k, turn in enumerate(turns, 2))]  # fmt: skip


def slips(problem: Problem, rng: np.random.Generator) -> Iterator[Slip]:
    """What goes wrong with this topic alone."""
    own = {"zero": (1, 1), "positive": (TURN, TURN**2), "negative": (TURN**2, TURN)}[problem.form["part"]]
    one, *rest = (line.value for line in problem.lines)
    two, three = (value / turn for value, turn in zip(rest, own, strict=True))
    yield "divided-already", problem.right / 3.0, "already divided by three"
    if problem.form["part"] == "zero":
        yield "turned", one + TURN * two + TURN**2 * three, "phasors were turned"
    else:
        yield "a-exchanged", one + own[1] * two + own[0] * three, "were swapped, which gives"
        yield "not-turned", one + two + three, "added without turning them"
