"""One problem as practice knows it: what is asked, what the right answer is, how near a hand comes.

A calculator makes a Task of its form; the generator, the marking and the class sets read nothing else.
Phasors are counted from the direction that is drawn first: complex, anticlockwise positive.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace

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
MOST_OF_LARGEST = 0.1
"""No drawing may be further off than this share of its largest phasor and be taken for right, however flatly its lines
cross (common practice: no examiner allows more)."""
CALCULATED_SCATTER = (0.002, 0.2)
"""Standard uncertainties of a calculated answer: share of its size, degrees. Three figures and one decimal of a degree
are rounded by at most 0.5 % and 0.05 degrees; figures rounded on the way add to that."""
UNDRAWN_SCATTER = (0.015, 1.0)
"""The same of an answer that is said to be drawn, where the sheet has no drawing of it."""
DEGREE = math.tau / 360.0


def most_of(largest: float) -> float:
    """Return how far a drawing may be off and be taken for right; ``largest``: size of its largest phasor, 0 for no
    drawing."""
    return MOST_OF_LARGEST * largest if largest > 0.0 else math.inf


def beyond_marking(half_width: float, largest: float) -> bool:
    """Return whether careful drawings scatter (``half_width`` at 95 %) more than any marking can allow."""
    return half_width > most_of(largest)


@dataclass(frozen=True, slots=True)
class StepReference:
    """Where in a page's own steps a mistake belongs: the lesson's frame ``step`` (from 1; 0: none) and the number
    ``listed`` that its step has on the page, or the ``working`` by its key. ``reveals``: what stands there gives the
    answer away."""

    step: int = 0
    listed: int = 0
    working: str = ""
    reveals: bool = False
    sentence: Phrase = ()
    """What that step says is to be done; () where it gives the answer away."""


@dataclass(frozen=True, slots=True)
class Mistake:
    """One catalogued mistake and what it gives.

    ``size`` is what is read at the end (quantity), ``point`` where the sum ends (None: only a number
    comes of it), ``how`` the ways of answering in which it is made, ``name`` what happened, ``look``
    where to look, ``about`` the keys of the phasors that it names. ``widening``: by how much it multiplies what was
    drawn, with the hand's own error. ``points``: the points that it may give, where it depends on something that is not
    known, such as the edge of a ruler; ``point`` is then one of them. ``weight``: how often it is made beside a
    common one; ``tabled``: the key has a column for it.
    """

    key: str
    how: tuple[str, ...]
    size: float
    point: complex | None
    name: Phrase
    look: Phrase
    about: tuple[str, ...] = ()
    widening: float = 1.0
    points: tuple[complex, ...] = ()
    weight: float = 1.0
    tabled: bool = True

    def turned_back(self, back: float) -> "Mistake":
        """The same where the arrow that is asked for points the other way (``back`` -1.0)."""
        if back > 0 or self.point is None:
            return self
        return replace(self, point=back * self.point, points=tuple(back * point for point in self.points))


@dataclass(frozen=True, slots=True)
class IntermediateValue:
    """A value found on the way, from which later steps are judged: ``key`` ``first`` (a diagonal: a
    phasor), ``across`` or ``up`` (a sum of parts: ``value`` along ``axis``). ``remainder`` is what must be
    added to the phasor to reach the result."""

    key: str
    label: Phrase
    value: complex
    remainder: complex = 0j
    axis: complex = 0j
    as_task: "Callable[[], Task] | None" = None
    """Makes the task that has this value as its result, with the mistakes that lead to another."""


@dataclass(frozen=True, slots=True)
class OtherOrigin:
    """A line that the page counts angles from too, in a table or a working: its name, and where it lies in degrees from
    the direction drawn first.

    ``acute``: the angle to it is from 0 to 90, whatever the side. ``opposite``: it is no line to count from; the
    arrow of this name points the other way. ``other_scale``: the angle was read where the protractor counts from its
    other end.
    """

    name: Phrase
    degrees: float
    acute: bool = False
    opposite: bool = False
    other_scale: bool = False


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
    key; ``question`` the task, with the result's name, the method and the scale; ``notes`` what must be known before
    drawing, beside the form's values; ``angled`` as in ``Task``.
    """

    symbol: Phrase
    units: tuple[str, ...]
    origin: Phrase
    signed: bool
    question: Phrase
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
class Slips:
    """What moves with one slip of a hand or one wrong figure: ``lengths`` are the phasors that come out longer or
    shorter, ``swings`` what turns with a line: the phasor itself, tip to tail all that follow it too."""

    lengths: tuple[complex, ...] = ()
    swings: tuple[complex, ...] = ()


@dataclass(frozen=True, slots=True)
class Task:
    """A problem to be set and marked.

    ``result`` is the right phasor, ``symbol`` its name; ``factor`` mm for each unit (0 where nothing is
    drawn), ``scale_words`` the scale as it is said; ``spread`` how a hand's drawings scatter and
    ``hand_angle`` its protractor (degrees). ``sense`` is +1 when angles grow anticlockwise on the
    paper; ``origin`` the direction from which they are counted, and ``turn`` (degrees) where it lies
    from the one that is drawn first; ``signed``: angles are signed, without a side. ``angled``: an
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
    largest: float = 0.0
    """Size of the largest phasor that is drawn; 0 where nothing is."""
    slips: Slips = field(default_factory=Slips)
    """What a single slip of ruler or protractor moves."""
    turn_back: float = 1.0
    """-1.0 where the arrow that returns is asked for, not the sum."""
    in_steps: bool = True
    """Whether its mistakes are those of the drawn sum, so that each belongs to a step of the lesson or to a working."""
    origins: tuple[OtherOrigin, ...] = ()
    """From what else the page counts angles."""
    drawing: "Task | None" = None
    """What the drawing shows, where that is something else than what is asked for; None where it is the same."""

    def by(self, how: str) -> "Task":
        """The task that an answer belongs to which was found in one way: read off the drawing, or calculated."""
        return self.drawing if how == DRAWN and self.drawing is not None else self

    @property
    def size(self) -> float:
        """The right size, in the quantity's unit."""
        return phasor.magnitude(self.result)

    @property
    def angle(self) -> float | None:
        """The right angle in degrees, anticlockwise from the direction drawn first; None for nothing."""
        return None if self.result == 0 else phasor.angle(self.result)

    @property
    def most(self) -> float:
        """The most that a drawing may be off and be taken for right."""
        return most_of(self.largest)

    @property
    def too_flat(self) -> bool:
        """Whether careful drawings of this problem scatter more than any marking can allow."""
        return self.spread is not None and beyond_marking(self.spread.half_width, self.largest)

    def tolerance(self, how: str, limits: Limits) -> tuple[float, float]:
        """Half-widths at 95 % of the size (quantity) and of the angle (degrees) for one way of answering."""
        if how == CALCULATED:
            # What the key prints is rounded too: its last digit may be coarser than one per cent.
            size, angle = max(0.01 * self.size, 0.6 * self.writing.last_digit(self.size)), 0.5
        elif self.spread is None:
            size, angle = 0.03 * self.size, 2.0
        else:
            size, angle = self._by_hand(self.spread)
        if limits.percent is not None:
            size = limits.percent / 100.0 * self.size
        if limits.degrees is not None:
            angle = limits.degrees
        return size, angle

    def _by_hand(self, spread: Spread) -> tuple[float, float]:
        """What 95 in 100 careful drawings keep to, and never more than ``most``."""
        size = min(spread.half_width, self.most)
        angle = 180.0 if spread.angle is None else ONE_LENGTH * spread.angle
        return size, min(angle, self.most / self.size / DEGREE) if self.size > 0.0 else 180.0

    def reach(self, how: str, limits: Limits) -> float:
        """How far, in the quantity's unit, an answer may lie from a point and still be taken for it."""
        size, angle = self.tolerance(how, limits)
        across = self.size * math.tau / 360.0 * min(angle, 90.0)
        return max(size, across, 1e-9)


@dataclass(frozen=True, slots=True)
class Scatter:
    """How answers scatter about a point: variances along its direction and across it, and their covariance, in the
    quantity's unit squared."""

    at: complex
    along: float
    across: float
    both: float = 0.0

    def away(self, answer: complex) -> float:
        """How many standard deviations an answer is away."""
        gap, unit = answer - self.at, _unit(self.at)
        u = gap.real * unit.real + gap.imag * unit.imag
        v = gap.imag * unit.real - gap.real * unit.imag
        if self.area <= 0.0:
            return 0.0 if gap == 0 else math.inf
        square = (self.across * u * u - 2 * self.both * u * v + self.along * v * v) / (self.area * self.area)
        return math.sqrt(max(0.0, square))

    @property
    def area(self) -> float:
        """The area of one standard deviation both ways (over pi)."""
        return math.sqrt(max(0.0, self.along * self.across - self.both * self.both))


def _unit(point: complex) -> complex:
    size = phasor.magnitude(point)
    return point / size if size > 0.0 else complex(1.0, 0.0)


def scatter(task: Task, point: complex, how: str = DRAWN, limits: Limits = NO_LIMITS, widening: float = 1.0) -> Scatter:
    """How answers scatter that should give a point, their final reading added; ``widening``: what the drawing was
    multiplied by after it was made. A lecturer's own ``limits`` say how much this class scatters at least."""
    size = phasor.magnitude(point)
    if how == DRAWN and task.spread is not None and task.factor > 0:
        around = _of_drawings(task, task.spread, point, widening)
    else:
        share, degrees = CALCULATED_SCATTER if how == CALCULATED else UNDRAWN_SCATTER
        around = Scatter(point, share * share * size * size, degrees * DEGREE * degrees * DEGREE * size * size)
    least = (limits.percent or 0.0) / 100.0 * size / ONE_LENGTH, (limits.degrees or 0.0) * DEGREE * size / ONE_LENGTH
    return replace(
        around, along=max(around.along, least[0] * least[0]), across=max(around.across, least[1] * least[1]),
    )  # fmt: skip


def _of_drawings(task: Task, spread: Spread, point: complex, widening: float) -> Scatter:
    (xx, xy), (_, yy) = spread.covariance
    unit, square = _unit(point), widening * widening
    along = unit.real * unit.real * xx + 2 * unit.real * unit.imag * xy + unit.imag * unit.imag * yy
    across = unit.imag * unit.imag * xx - 2 * unit.real * unit.imag * xy + unit.real * unit.real * yy
    both = (unit.real * unit.real - unit.imag * unit.imag) * xy + unit.real * unit.imag * (yy - xx)
    # The final reading adds its own errors, along the line and across it.
    last, size = task.hand_angle, phasor.magnitude(point)
    along += spread.shares[-1].variance + ROUNDED / (task.factor * task.factor) if spread.shares else 0.0
    turned = (last * last + ROUNDED) * size * size * DEGREE * DEGREE
    return Scatter(point, square * along, square * across + turned, square * both)


def off(task: Task, answer: complex) -> float:
    """How many times the 95 % ellipse of a hand's drawings (with their reading) must grow to reach an answer; where it
    is wider than any marking allows, how many times ``most``.

    1 is on the ellipse, or beyond it by a hair (``JUDGED_BY``). Raises ValueError where nothing is drawn.
    """
    if task.spread is None:
        raise ValueError("nothing is drawn")
    times = scatter(task, task.result).away(answer) / JUDGED_BY
    return max(times, phasor.magnitude(answer - task.result) / task.most)
