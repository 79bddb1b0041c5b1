"""What a learner of star-and-delta does, worked out without pycore: the phasors of a form, and what goes wrong."""

from collections.abc import Iterator

import numpy as np
from independent.problems import ROOT_THREE, Line, Problem, impedance, number, phase_angles, polar, subscripts
from independent.slips import Slip, of_a_difference

TOPIC = 2


def lines(form: dict[str, str]) -> list[Line]:
    """The two that make a difference, in the order of their numbers, as the sheet draws them."""
    one = int(form["line"]) - 1
    volts, after, before = number(form["volts"]), (one + 1) % 3, (one + 2) % 3
    if form["connection"] == "star":
        size = volts / ROOT_THREE if form["known"] == "line" else volts
        values = [polar(size, angle) for angle in phase_angles(form)]
        pair = {one: Line(subscripts(f"V{one + 1}"), values[one]),
                after: Line(subscripts(f"−V{after + 1}"), -values[after])}  # fmt: skip
        return [pair[k] for k in sorted(pair)]
    values = [polar(volts, angle) / impedance(form[f"z{k}"], 50.0) for k, angle in enumerate(phase_angles(form), 1)]
    names = [subscripts(f"I{k}{k % 3 + 1}") for k in (1, 2, 3)]
    pair = {one: Line(names[one], values[one]), before: Line("−" + names[before], -values[before])}
    return [pair[k] for k in sorted(pair)]


def slips(problem: Problem, rng: np.random.Generator) -> Iterator[Slip]:
    """What goes wrong with this topic alone."""
    return of_a_difference(problem)
