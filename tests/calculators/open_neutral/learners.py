"""What a learner of open-neutral does, worked out without pycore: the phasors of a form, and what goes wrong."""

from collections.abc import Iterator

import numpy as np
from independent.problems import ROOT_THREE, Line, Problem, impedance, number, phase_angles, polar
from independent.slips import Slip

TOPIC = 7


def loads(form: dict[str, str]) -> tuple[list[complex], list[complex]]:
    """Phase voltages and admittances of a star with its neutral open."""
    volts = [polar(number(form["volts"]) / ROOT_THREE, angle) for angle in phase_angles(form)]
    return volts, [1.0 / impedance(form[f"z{k}"], 50.0) for k in (1, 2, 3)]


def star_point(volts: list[complex], admittances: list[complex]) -> complex:
    """Where the star point lies (Millman)."""
    return sum(v * y for v, y in zip(volts, admittances, strict=True)) / sum(admittances)


def lines(form: dict[str, str]) -> list[Line]:
    """The phasors of a form, in the order of the sheet."""
    return [Line("V_S", star_point(*loads(form)))]


def slips(problem: Problem, rng: np.random.Generator) -> Iterator[Slip]:
    """What goes wrong with this topic alone."""
    volts, admittances = loads(problem.form)
    k = int(rng.integers(3))
    left = [0j if j == k else y for j, y in enumerate(admittances)]
    yield "load-left-out", star_point(volts, left), f"load on L{k + 1} was left out"
    yield "impedance-for-admittance", star_point(volts, [1.0 / y for y in admittances]), "instead of admittances"
    sizes = [abs(y) for y in admittances]
    if any(y.imag for y in admittances):
        yield "angles-ignored", star_point(volts, [complex(y) for y in sizes]), "angles of the loads|as plain"
