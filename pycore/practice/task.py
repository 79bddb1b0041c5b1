"""One problem as practice knows it: what is asked, what the right answer is, how near a hand comes.

A calculator makes a Task of its form; the generator, the marking and the class sets read nothing else.
Phasors are counted from the direction that is drawn first: complex, anticlockwise as reckoned.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from pycore import phasor
from pycore.accuracy.hand import ONE_LENGTH, Spread
from pycore.quantity import NumberFormat
from pycore.words.phrase import Phrase

DRAWN, CALCULATED = "drawn", "calculated"
READ_TO = 0.5
"""How finely a ruler (mm) and a protractor (degrees) are read."""
ROUNDED = READ_TO * READ_TO / 12.0
"""Variance of what is lost by that: evenly spread over the step (JCGM 100:2008, 4.3.7)."""
JUDGED_BY = 2.5
"""Standard deviations within which a drawing is taken for right: the 95 % ellipse's 2.448 and a little more. Where
lines cross flatly drawings have longer tails than a bell, and of right ones under 5 in 100 are to look at again."""


@dataclass(frozen=True, slots=True)
class StepReference:
    """Where in a page's own steps a mistake belongs: the lesson's ``step`` (from 1; 0: none), or the
    ``working`` by its key. ``reveals``: what stands there gives the answer away."""

    step: int = 0
    working: str = ""
    reveals: bool = False


@dataclass(frozen=True, slots=True)
class Mistake:
    """One catalogued mistake and what it gives.

    ``size`` is what is read at the end (quantity), ``point`` where the sum ends (None: only a number
    comes of it), ``how`` the ways of answering in which it is made, ``name`` what happened, ``look``
    where to look, ``about`` the keys of the phasors that it names.
    """

    key: str
    how: tuple[str, ...]
    size: float
    point: complex | None
    name: Phrase
    look: Phrase
    about: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class IntermediateValue:
    """A value found on the way, from which later steps are judged: ``key`` ``first`` (a diagonal: a
    phasor), ``across`` or ``up`` (a sum of parts: ``value`` along ``axis``). ``rest`` is what must be
    added to the phasor to reach the result."""

    key: str
    label: Phrase
    value: complex
    rest: complex = 0j
    axis: complex = 0j


@dataclass(frozen=True, slots=True)
class FurtherQuestion:
    """A question beyond the problem: which phasor in ``line`` would leave no sum at all. ``value`` is
    the answer, counted as the result is; ``symbol`` its name."""

    line: str
    symbol: Phrase
    value: complex

    @property
    def angle(self) -> float | None:
        """The answer's angle in degrees, anticlockwise from the direction drawn first; None for nothing."""
        return None if self.value == 0 else phasor.angle(self.value)


@dataclass(frozen=True, slots=True)
class AnswerRequest:
    """What a page asks a learner for; nothing of the answer.

    ``units`` are those that a size may be given in; ``origin`` the line that angles are counted from,
    ``signed`` whether they are signed; ``earlier`` the values found on the way that may be given too, by
    key; ``notes`` what must be known before drawing, beside the form's values; ``angled`` as in ``Task``.
    """

    symbol: Phrase
    units: tuple[str, ...]
    origin: Phrase
    signed: bool
    notes: tuple[Phrase, ...]
    earlier: tuple[tuple[str, Phrase], ...] = ()
    angled: bool = True
    scale: str = ""
    """The scale by which a length is judged, as it is said; "" where no length can be given."""


@dataclass(frozen=True, slots=True)
class Limits:
    """What a lecturer allows: per cent of the size and degrees of the angle; None: what a careful
    drawing can do."""

    percent: float | None = None
    degrees: float | None = None


NO_LIMITS = Limits()


@dataclass(frozen=True, slots=True)
class Task:
    """A problem to be set and marked.

    ``result`` is the right phasor, ``symbol`` its name; ``factor`` mm for each unit (0 where nothing is
    drawn), ``scale_words`` the scale as it is said; ``spread`` how a hand's drawings scatter and
    ``hand_angle`` its protractor (degrees). ``sense`` is +1 when angles grow anticlockwise on the
    paper; ``origin`` the direction from which they are counted, and ``turn`` (degrees) where it lies
    from the one that is drawn first; ``signed``: angles are signed, not told by their side. ``angled``: an
    angle is asked for; where it is not, one that is given all the same is not judged.
    """

    slug: str
    form: Mapping[str, str]
    result: complex
    symbol: Phrase
    writing: NumberFormat
    factor: float
    scale_words: str
    spread: Spread | None
    hand_angle: float
    mistakes: tuple[Mistake, ...]
    earlier: tuple[IntermediateValue, ...] = ()
    sense: int = 1
    origin: Phrase = ()
    turn: float = 0.0
    signed: bool = False
    link: tuple[tuple[str, str], ...] = ()
    further: FurtherQuestion | None = None
    angled: bool = True
    in_steps: bool = True
    """Whether its mistakes are those of the drawn sum, so that each belongs to a step of the lesson or to a working."""

    @property
    def size(self) -> float:
        """The right size, in the quantity's unit."""
        return phasor.magnitude(self.result)

    @property
    def angle(self) -> float | None:
        """The right angle in degrees, anticlockwise from the direction drawn first; None for nothing."""
        return None if self.result == 0 else phasor.angle(self.result)

    def tolerance(self, how: str, limits: Limits) -> tuple[float, float]:
        """Half-widths at 95 % of the size (quantity) and of the angle (degrees) for one way of answering."""
        if how == CALCULATED:
            size, angle = 0.01 * self.size, 0.5
        elif self.spread is None:
            size, angle = 0.03 * self.size, 2.0
        else:
            size = ONE_LENGTH * self.spread.length
            angle = 180.0 if self.spread.angle is None else ONE_LENGTH * self.spread.angle
        if limits.percent is not None:
            size = limits.percent / 100.0 * self.size
        if limits.degrees is not None:
            angle = limits.degrees
        return size, angle

    def reach(self, how: str, limits: Limits) -> float:
        """How far, in the quantity's unit, an answer may lie from a point and still be taken for it."""
        size, angle = self.tolerance(how, limits)
        across = self.size * math.tau / 360.0 * min(angle, 90.0)
        return max(size, across, 1e-9)


def off(task: Task, answer: complex) -> float:
    """How many times the 95 % ellipse of a hand's drawings (with their reading) must grow to reach an answer.

    1 is on the ellipse, or beyond it by a hair (``JUDGED_BY``). Raises ValueError where nothing is drawn.
    """
    if task.spread is None:
        raise ValueError("nothing is drawn")
    (xx, xy), (_, yy) = task.spread.covariance
    gap = answer - task.result
    unit = task.result / task.size if task.size > 0 else complex(1.0, 0.0)
    along = unit.real * unit.real * xx + 2 * unit.real * unit.imag * xy + unit.imag * unit.imag * yy
    across = unit.imag * unit.imag * xx - 2 * unit.real * unit.imag * xy + unit.real * unit.real * yy
    both = (unit.real * unit.real - unit.imag * unit.imag) * xy + unit.real * unit.imag * (yy - xx)
    # The final reading adds its own errors, along the line and across it.
    last = task.hand_angle
    along += task.spread.shares[-1].variance + ROUNDED / (task.factor * task.factor)
    across += (last * last + ROUNDED) * task.size * task.size * (math.tau / 360.0) * (math.tau / 360.0)
    u = gap.real * unit.real + gap.imag * unit.imag
    v = gap.imag * unit.real - gap.real * unit.imag
    whole = along * across - both * both
    if whole <= 0.0:
        return 0.0 if gap == 0 else math.inf
    square = (across * u * u - 2 * both * u * v + along * v * v) / whole
    return math.sqrt(max(0.0, square)) / JUDGED_BY
