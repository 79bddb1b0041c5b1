"""What a learner of two-wattmeters does, worked out without pycore: the phasors of a form, and what goes wrong."""

from collections.abc import Iterator

import numpy as np
from independent.problems import ROOT_THREE, Line, Problem, number
from independent.slips import Slip

TOPIC = 8


def lines(form: dict[str, str]) -> list[Line]:
    """The phasors of a form, in the order of the sheet."""
    one, two = number(form["w1"]), number(form["w2"])
    return [Line("P₁", complex(one)), Line("P₂", complex(two)), Line("Q", 1j * ROOT_THREE * (two - one))]


def slips(problem: Problem, rng: np.random.Generator) -> Iterator[Slip]:
    """What goes wrong with this topic alone."""
    one, two = number(problem.form["w1"]), number(problem.form["w2"])
    yield "root-three-forgotten", complex(one + two, two - one), "√3 was left out of"
    yield "readings-exchanged", complex(one + two, ROOT_THREE * (one - two)), "two readings are swapped"
    if one < 0:
        yield "minus-forgotten", complex(two - one, ROOT_THREE * (two + one)), "minus sign of a reading"
