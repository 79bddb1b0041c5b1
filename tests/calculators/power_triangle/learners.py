"""What a learner of power-triangle does, worked out without pycore: the phasors of a form, and what goes wrong."""

import math
from collections.abc import Iterator

import numpy as np
from independent.problems import Line, Problem, number
from independent.slips import Slip

TOPIC = 5


def lines(form: dict[str, str]) -> list[Line]:
    """The phasors of a form, in the order of the sheet."""
    active, lag = number(form["power"]), math.acos(float(form["factor"].split()[0]))
    sense = -1.0 if "lead" in form["factor"] else 1.0
    return [Line("P", complex(active)), Line("Q", 1j * sense * active * math.tan(lag))]


def slips(problem: Problem, rng: np.random.Generator) -> Iterator[Slip]:
    """What goes wrong with this topic alone."""
    form, active = problem.form, number(problem.form["power"])
    factor = float(form["factor"].split()[0])
    lag = math.acos(factor)
    if not problem.single:
        along = problem.right / abs(problem.right)
        yield "apparent-for-active", active * along, "active power was used as the apparent"
        yield "factor-multiplied", active * factor * along, "multiplied by the power factor"
        yield "powers-as-numbers", active * (1.0 + math.tan(lag)), "P and Q were added as plain|added as plain"
        return
    after = math.acos(float(form["target"]))
    yield "remaining-taken", active * math.tan(after), "power that remains"
    yield "whole-corrected", active * math.tan(lag), "all the reactive power"
    yield "cosines-subtracted", active * (math.cos(after) - math.cos(lag)), "factors were subtracted"
    yield "apparent-subtracted", active * (1 / math.cos(lag) - 1 / math.cos(after)), "apparent powers were subtracted"


def single(form: dict[str, str]) -> float | None:
    """The reactive power (var) that a capacitor must take for the target power factor; None without a target."""
    if not form.get("target"):
        return None
    active = number(form["power"])
    before, after = float(form["factor"].split()[0]), float(form["target"])
    return active * (math.tan(math.acos(before)) - math.tan(math.acos(after)))
