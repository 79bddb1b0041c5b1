"""The key of a class set: for each learner the right answer, its tolerance, and what each usual mistake gives.

Mistakes stand in columns: those that land on the same point for every learner of the set share one.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import combinations

from pycore import phasor, quantity
from pycore.phasor import wrap
from pycore.practice.class_set import Learner
from pycore.practice.explaining import SAME, same_outcome
from pycore.practice.task import CALCULATED, DRAWN, Limits, Task
from pycore.quantity import NumberFormat
from pycore.words import key as words
from pycore.words.phrase import Phrase

ALIKE = 1e-9
"""Share within which a mistake multiplies the right answer of every learner by the same number."""
NOTHING, TIMES = 1e-4, 10.0
"""Up to this share of the right answer a mistake gives nothing; from so many times it, decimals say no more."""
ZERO = "0"
LEAST_PROBLEMS = 5
"""Problems with other values that a set needs: of fewer, many mistakes give the same multiple by chance."""


@dataclass(frozen=True, slots=True)
class Amount:
    """A size with its length on the sheet, and an angle with its side ("" where it has none), as written; ``value`` is
    the size in the quantity's SI unit, where it is one."""

    size: str
    length: str = ""
    angle: str = ""
    side: str = ""
    value: float | None = None


@dataclass(frozen=True, slots=True)
class MistakeResult:
    """What one mistake gives: its size as written, where the sum ends, whether the size alone tells it from
    the right answer."""

    size: float
    written: str
    point: complex | None
    told_apart: bool


@dataclass(frozen=True, slots=True)
class KeyRow:
    """One learner's line of the key. ``problem_values`` are the values by their labels; ``slips`` what each mistake
    gives by how it is made (``drawn``, ``calculated``) and by its name; ``further`` the answer to a question
    beyond the problem, if its sheet asks one; ``origin`` what angles are counted from; ``to_find`` what is calculated
    before it can be drawn, each with its unit."""

    place: int
    code: str
    name: str
    problem_values: tuple[tuple[str, Amount], ...]
    scale: str
    symbol: Phrase
    writing: NumberFormat
    result: Amount
    tolerance: Amount
    first: tuple[Phrase, Amount] | None
    slips: dict[str, dict[Phrase, MistakeResult]]
    further: tuple[Phrase, Amount] | None = None
    origin: Phrase = ()
    to_find: tuple[tuple[Phrase, Amount], ...] = ()

    @property
    def unit(self) -> str:
        """The unit that this learner's amounts are written in."""
        return self.writing.unit



def _alike(one: float, two: float) -> bool:
    return math.fabs(one - two) <= ALIKE * max(math.fabs(one), math.fabs(two))


WayAndName = tuple[str, Phrase]
"""How a mistake is made, and its name."""


@dataclass(frozen=True, slots=True)
class MistakeColumn:
    """Mistakes that land together for every learner, each by how it is made and its name."""

    mistakes: tuple[WayAndName, ...]

    @property
    def names(self) -> tuple[Phrase, ...]:
        """Every name once."""
        return tuple(dict.fromkeys(name for _, name in self.mistakes))

    def named(self, ways: Sequence[str]) -> tuple[Phrase, ...]:
        """The names of those that are made in each of these ways, and in no other."""
        made = {name: {how for how, one in self.mistakes if one == name} for name in self.names}
        return tuple(name for name in self.names
                     if len(made[name]) == len(ways) and all(how in made[name] for how in ways))  # fmt: skip

    def slip(self, row: KeyRow) -> MistakeResult | None:
        """What these mistakes give for one learner; None where none of them can be made. Its size tells it from the
        right answer if it does so in every way."""
        found = [row.slips[how][name] for how, name in self.mistakes if name in row.slips[how]]
        return replace(found[0], told_apart=all(one.told_apart for one in found)) if found else None

    def has_right_size(self, rows: Sequence[KeyRow]) -> bool:
        """Whether these mistakes give the right size to everybody who can make them."""
        pairs = [(slip.size, row.result.value or 0.0) for row in rows if (slip := self.slip(row))]
        return all(_alike(size, right) for size, right in pairs)

    def gives_nothing(self, rows: Sequence[KeyRow]) -> bool:
        """Whether these mistakes give 0 to everybody who can make them."""
        return all(slip.written == ZERO for row in rows if (slip := self.slip(row)))

    def factor(self, rows: Sequence[KeyRow]) -> float | None:
        """By what these mistakes multiply the right answer; None where it differs by learner, where that is 0, or
        where there are fewer than ``LEAST_PROBLEMS`` to say so."""
        slips = [self.slip(row) for row in rows]
        ratios = [slip.size / row.result.value for slip, row in zip(slips, rows, strict=True)
                  if slip is not None and row.result.value]  # fmt: skip
        if len(ratios) < len(rows) or len({row.problem_values for row in rows}) < LEAST_PROBLEMS or not ratios[0]:
            return None
        return ratios[0] if all(_alike(one, ratios[0]) for one in ratios) else None


def length_of(task: Task, size: float) -> str:
    """A size's length on the sheet in mm; "" where nothing is drawn."""
    return quantity.fixed(quantity.on_ruler(size * task.factor), 1, task.writing.mark) if task.factor > 0 else ""


def in_unit(written: str, value: float | None, own: NumberFormat, head: NumberFormat) -> str:
    """An amount in the unit at the head of its column, as finely as it was written."""
    if value is None or own.factor == head.factor:
        return written
    powers = quantity.order_of_magnitude(head.factor) - quantity.order_of_magnitude(own.factor)
    decimals = max(0, quantity.decimals_of(written) + powers)
    return quantity.fixed(value / head.factor, decimals, head.mark)


def beside(size: float, right: float, writing: NumberFormat) -> str:
    """What a mistake gives as a person would write it beside the right answer: next to nothing is 0, a small size keeps
    its first figure, and one that is ten times the answer or more has as many figures as that."""
    size, right = math.fabs(size), math.fabs(right)
    if size <= NOTHING * max(right, writing.factor):
        return ZERO
    usual, written = quantity.decimals_of(writing.number(size)), size / writing.factor
    if size < TIMES * right:
        decimals = max(usual, quantity.decimals_for(written, 1))
    else:
        figures = max(3, len(writing.number(right).replace(writing.mark, "").lstrip("0")))
        decimals = min(usual, quantity.decimals_for(written, figures))
    return quantity.fixed(written, decimals, writing.mark)


def slip_in_unit(slip: MistakeResult, row: KeyRow, head: NumberFormat) -> str:
    """What mistakes give for one learner, in the unit at the head of its column."""
    own = row.writing
    if own.factor == head.factor:
        return slip.written
    writing = replace(own, unit=head.unit, factor=head.factor, decimals=own.decimals_in(head.factor))
    return beside(slip.size, row.result.value or 0.0, writing)


def angle_words(task: Task, degrees: float | None) -> tuple[str, str]:
    """An angle as the class measures it, and its side; ("", "") for nothing."""
    if degrees is None:
        return "", ""
    shown = wrap(degrees - task.turn)
    if task.signed:
        return quantity.fixed(shown, 1, task.writing.mark) + "°", ""
    written = quantity.fixed(math.fabs(shown), 1, task.writing.mark) + "°"
    straight = round(math.fabs(shown), 1) in (0.0, 180.0)
    return written, "" if straight else words.SIDES[(shown > 0) == (task.sense > 0)]


def amount_of(task: Task, value: complex) -> Amount:
    """A phasor of the problem as the key writes it."""
    size = phasor.magnitude(value)
    angle, side = angle_words(task, phasor.angle(value) if task.angled and value != 0 else None)
    return Amount(task.writing.number(size), length_of(task, size), angle, side, size)


def _tolerance(task: Task, limits: Limits, how: str) -> Amount:
    size, degrees = task.tolerance(how, limits)
    written = task.writing.fixed(size, 1)
    angle = quantity.fixed(degrees, 1, task.writing.mark) + "°" if task.angled else ""
    return Amount(written, length_of(task, size), angle, value=size)


def _first(task: Task) -> tuple[Phrase, Amount] | None:
    """The first value found on the way that is a phasor."""
    for earlier in task.earlier:
        if earlier.axis == 0:
            return earlier.label, amount_of(task, earlier.value)
    return None


def _further(task: Task) -> tuple[Phrase, Amount] | None:
    """The answer to the question beyond the problem."""
    return None if task.further is None else (task.further.symbol, amount_of(task, task.further.value))


def _slips(task: Task, how: str, limits: Limits) -> dict[Phrase, MistakeResult]:
    size, _ = task.tolerance(how, limits)
    return {
        mistake.name: MistakeResult(
            mistake.size, beside(mistake.size, task.size, task.writing), mistake.point,
            math.fabs(mistake.size - task.size) > size,
        )
        for mistake in task.mistakes
        if how in mistake.how and mistake.tabled
    }


def row_of(
    learner: Learner, task: Task, values: tuple[tuple[str, Amount], ...], limits: Limits, how: str = DRAWN
) -> KeyRow:
    """One learner's line of the key; ``values`` as written, ``how``: by which way of answering the tolerance is. Where
    nothing is drawn there is no scale, and nothing is read off on the way."""
    drawn = how == DRAWN
    here = task if drawn else replace(task, factor=0.0)
    return KeyRow(
        learner.place, str(learner.code), learner.name, values, task.scale_words if drawn else "", task.symbol,
        task.writing, amount_of(here, task.result), _tolerance(here, limits, how), _first(task) if drawn else None,
        {how: _slips(task, how, limits) for how in (DRAWN, CALCULATED)}, _further(task), task.origin,
    )  # fmt: skip


def _together(rows: Sequence[KeyRow], one: WayAndName, two: WayAndName) -> bool:
    """Whether two mistakes land on the same point for every learner who can make both, and someone can."""
    both = 0
    for row in rows:
        first, second = row.slips[one[0]].get(one[1]), row.slips[two[0]].get(two[1])
        if first is None or second is None:
            continue
        both += 1
        if not same_outcome(first, second, SAME * max(first.size, second.size, 1e-12)):
            return False
    return both > 0


def columns(rows: Sequence[KeyRow], *ways: str) -> tuple[MistakeColumn, ...]:
    """Every mistake of the set made in these ways, those that always land together in one column."""
    made = list(dict.fromkeys((how, name) for how in ways for row in rows for name in row.slips[how]))
    group = {one: one for one in made}
    for one, two in combinations(made, 2):
        if group[two] == two and group[one] != two and _together(rows, one, two):
            group[two] = group[one]
    return tuple(
        MistakeColumn(tuple(one for one in made if group[one] == head)) for head in made if group[head] == head
    )


def varied(rows: Sequence[KeyRow]) -> bool:
    """Whether learners of the set are asked for different phasors, or for angles from different lines."""
    return any((row.symbol, row.origin) != (rows[0].symbol, rows[0].origin) for row in rows)


def labels(rows: Sequence[KeyRow]) -> tuple[str, ...]:
    """Labels of the values that some learner's problem gives, angles apart."""
    return tuple(dict.fromkeys(label for row in rows for label, amount in row.problem_values if amount.size))


def same_for_all(rows: Sequence[KeyRow]) -> dict[str, str]:
    """The values that nobody draws and that all learners of a class have, by their labels. A few learners may share one
    by chance."""
    if len(rows) < LEAST_PROBLEMS:
        return {}
    first, *others = (dict(row.problem_values) for row in rows)
    return {
        label: amount.size
        for label, amount in first.items()
        if amount.size and not amount.length and all(other.get(label) == amount for other in others)
    }
