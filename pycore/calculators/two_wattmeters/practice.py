"""Practice: problems from codes, and what mistakes give."""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from pycore import phasor, trig
from pycore.calculators.two_wattmeters import words
from pycore.calculators.two_wattmeters.case import WattmeterCase
from pycore.calculators.two_wattmeters.circuit import larger_lagging
from pycore.calculators.two_wattmeters.fields import BY_NAME, FIELDS
from pycore.forms.coded import form_before
from pycore.practice.catalogue import mistake
from pycore.practice.codes import Code
from pycore.practice.generator import TRIES, NoProblemError
from pycore.practice.seeded_integers import integers_of_code
from pycore.practice.task import CALCULATED, DRAWN, Mistake, Task
from pycore.sums.task import task_of as sum_task
from pycore.trig import ROOT_THREE

LEAST_READING = 250.0
"""Watts below which a reading could not be told from nothing on paper."""


@dataclass(frozen=True, slots=True)
class WattmeterValues:
    """What both wattmeters read, in whole tens of watts."""

    first: int
    second: int


def watts_of(code: Code) -> WattmeterValues:
    """Both readings of a code: support at 0.5 or better, core anywhere, stretch with one reading below zero."""
    draw = integers_of_code(code)
    least, most = {"support": (15, 50), "core": (15, 58), "stretch": (63, 80)}[code.tier]
    for _ in range(TRIES):
        apparent, lag = 100.0 * draw.between(10, 80), float(draw.between(least, most))
        first = round(apparent * trig.cosine(30.0 + lag) / 10.0) * 10
        second = round(apparent * trig.cosine(30.0 - lag) / 10.0) * 10
        # A reading near nothing could not be told from nothing on paper, nor an angle near a quarter turn.
        if -LEAST_READING < first < LEAST_READING or first == second:
            continue
        return WattmeterValues(first, second)
    raise NoProblemError(str(code))


def mistakes(case: WattmeterCase) -> tuple[Mistake, ...]:
    """The root of three forgotten, a reading's minus forgotten, both readings exchanged."""
    if not case.balanced:
        return ()
    first, second, reactive = case.readings
    sign = 1.0 if larger_lagging(case.meters) == 2 else -1.0
    turned, both = phasor.polar(1.0, -case.picture.reference), (DRAWN, CALCULATED)
    without_root = complex(first + second, sign * (second - first))
    mistakes = [mistake("root-three-forgotten", both, without_root * turned, None, words.MISTAKES)]
    if reactive != 0.0:
        exchanged = complex(first + second, -reactive)
        mistakes.append(mistake("readings-exchanged", both, exchanged * turned, None, words.MISTAKES))
    if min(first, second) < 0.0:
        sizes = math.fabs(first), math.fabs(second)
        without_minus = complex(sizes[0] + sizes[1], sign * ROOT_THREE * (sizes[1] - sizes[0]))
        mistakes.append(mistake("minus-forgotten", both, without_minus * turned, None, words.MISTAKES))
    return tuple(mistakes)


METERS_OF_CODES = "13"
"""Lines of the meters in every problem of a code, for ever: its readings are for these."""


def form_of(code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
    """The form that holds a code's readings, with a class's own choices. Raises NoProblemError."""
    readings = watts_of(code)
    form = form_before(code, FIELDS) | dict(choices or {}) | {"known": "readings", "meters": METERS_OF_CODES}
    form |= {"w1": str(readings.first), "w2": str(readings.second), "paper": code.paper}
    known = [choice.value for choice in BY_NAME["method"].options]
    return form | ({"method": code.method} if code.method in known else {})


def task_of(case: WattmeterCase) -> Task:
    """A solved case as a task: the sum that is drawn, and what mistakes give."""
    return sum_task(case, mistakes(case))
