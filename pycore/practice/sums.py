"""The catalogue of mistakes for a sum of phasors that is drawn: each is a replacement of moves.

Every mistake is carried out as the right construction is (``many.carry_out_many``, all at once), with one or more
of its moves replaced, or its last reading; the angles are common practice (what learners do).
"""

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from pycore import phasor, quantity
from pycore.constructions.components import components
from pycore.constructions.construction import Arm, Construction, DrawingConvention, arm_line
from pycore.constructions.many import DrawingBatch, carry_out_many
from pycore.constructions.methods import PARALLELOGRAM, TIP_TO_TAIL
from pycore.constructions.moves import Move, SetOff, TurnAngle
from pycore.constructions.names import RESULTANT
from pycore.constructions.tip_to_tail import chain_of, listed_order, tip_to_tail
from pycore.phasor import wrap
from pycore.practice.catalogue import mistake
from pycore.practice.task import CALCULATED, DRAWN, Mistake
from pycore.words.phrase import Phrase

Replaced = Callable[[Move], Move]
BOTH = (DRAWN, CALCULATED)
STEPS = (1.0, 2.0, 2.5, 4.0, 5.0)
"""Steps of the scales that a class draws at, times powers of ten (common practice)."""
LEAST_RATIO, MOST_RATIO = 0.3, 3.4
"""How far from the sheet's scale one is that is taken for it."""
EACH_SCALE, ONE_LINE = 0.5, 0.15
"""How often each other scale is used, beside a common mistake: for everything, for one line alone."""
ONE_EXCHANGE = 0.3
"""How often two figures of one value are exchanged, each pair of them, beside a common mistake."""


@dataclass(frozen=True, slots=True)
class DrawnSum:
    """A sum of phasors as it is drawn.

    ``reference`` is the direction drawn first (degrees), ``order`` the pair combined first or the
    sequence, ``voltages`` the angle of each arm's own voltage by its key (empty where there is none),
    ``names`` what each arm is called, ``scale`` units per cm, ``factor`` mm for each unit of the quantity,
    ``say_scale`` how a scale is said, in units per cm, ``say_size`` how the size of a phasor is said.
    """

    arms: tuple[Arm, ...]
    reference: float
    method: str
    order: str
    names: Mapping[str, Phrase]
    unit: str
    scale: float
    scale_words: str
    voltages: Mapping[str, float]
    factor: float
    say_scale: Callable[[float], str]
    say_size: Callable[[float], str]


def base(problem: DrawnSum) -> Construction:
    """The construction on which mistakes are made: tip to tail as it is; for the others all arms from
    one point, their parts along the two axes added, which can be carried out wherever they point."""
    if problem.method == TIP_TO_TAIL:
        return tip_to_tail(problem.arms, problem.order, problem.reference)
    return components(problem.arms, DrawingConvention("right", "anticlockwise", problem.reference))


def landed(problem: DrawnSum, construction: Construction, drawn: DrawingBatch, place: int) -> complex:
    """Where the sum ends in one of many drawings, counted from the direction that is drawn first."""
    if construction.method == TIP_TO_TAIL:
        across, up = drawn.points[RESULTANT]
        return complex(across[place], up[place]) * phasor.polar(1.0, -problem.reference)
    x, y = (
        _added(drawn.readings[f"{axis}{arm.number}"][place] for arm in problem.arms) for axis in ("x", "y")
    )
    return complex(x, y)


def _set(move: Move) -> float:
    """What a protractor or ruler sets off in a move: degrees, or a length, negative the other way along its line."""
    if isinstance(move, TurnAngle) and isinstance(move.turn, float):
        return move.turn
    if isinstance(move, SetOff) and isinstance(move.length, float):
        return -move.length if move.back else move.length
    raise TypeError(f"a mistake cannot replace {move}")


def _added(values: Iterator[float]) -> float:
    return phasor.total(complex(value, 0.0) for value in values).real


def _other_scale(turn: float) -> float:
    return 180.0 - turn if turn > 0 else -180.0 - turn


def with_turns(lines: Sequence[str], how: Callable[[float], float]) -> Replaced:
    """Return a change of moves: the protractor's turns of some lines are replaced by ``how`` of them."""
    def change(move: Move) -> Move:
        if isinstance(move, TurnAngle) and move.line in lines and isinstance(move.turn, float):
            return replace(move, turn=how(move.turn))
        return move

    return change


def _opposite_turn(turn: float) -> float:
    return -turn


def _set_off(key: str, **changes: object) -> Replaced:
    def change(move: Move) -> Move:
        if isinstance(move, SetOff) and move.phasor == key:
            return replace(move, **changes)  # type: ignore[arg-type]
        return move

    return change


def _exchanged(first: Arm, second: Arm) -> Replaced:
    sizes = {first.key: second.size, second.key: first.size}

    def change(move: Move) -> Move:
        if isinstance(move, SetOff) and move.phasor in sizes:
            return replace(move, length=sizes[move.phasor])
        return move

    return change


def turning_moves(construction: Construction) -> tuple[TurnAngle, ...]:
    """The protractor's moves that have two scales to choose from."""
    return tuple(
        move
        for move in construction.moves
        if isinstance(move, TurnAngle) and isinstance(move.turn, float) and move.turn not in (0.0, 180.0, -180.0)
    )


def arm_of(problem: DrawnSum, line: str) -> Arm:
    """The phasor that lies on a line."""
    return next(arm for arm in problem.arms if arm_line(arm) == line)


def three_phase(problem: DrawnSum) -> bool:
    """Whether three phasors stand 120 degrees apart, so that the closed formula holds."""
    if len(problem.arms) != 3:
        return False
    one, two, three = (arm.angle for arm in problem.arms)
    turns = (wrap(two - one), wrap(three - two), wrap(one - three))
    return all(math.fabs(math.fabs(turn) - 120.0) < 1e-9 for turn in turns)


def other_scales(scale: float) -> Iterator[float]:
    """Scales of the ladder near a sheet's, that one apart."""
    decade = float(f"1e{quantity.order_of_magnitude(scale)}") if scale > 0.0 else 0.0
    for power in (0.1 * decade, decade, 10.0 * decade):
        for step in STEPS:
            ratio = step * power / scale if scale > 0.0 else 0.0
            if LEAST_RATIO <= ratio <= MOST_RATIO and math.fabs(ratio - 1.0) > 1e-9:
                yield step * power


def exchanged_figures(value: float) -> Iterator[float]:
    """The values that come of exchanging two neighbouring ones of the first three figures, where they differ."""
    digits, _, power = f"{value:.2e}".replace(".", "").partition("e")
    for figures in (digits[1] + digits[0] + digits[2], digits[0] + digits[2] + digits[1]):
        if figures != digits:
            yield float(f"{figures[0]}.{figures[1:]}e{power}")


@dataclass(frozen=True, slots=True)
class Change:
    """A mistake made in one move or more: its key, what it replaces, the keys of the lines that it names, and other
    values of its words. ``omitted``: by how much the last reading comes out too short. Changes with one ``family`` are
    the same mistake, which depends on something that is not known."""

    key: str
    replaced: Replaced
    named: Mapping[str, str] = field(default_factory=dict)
    how: tuple[str, ...] = (DRAWN,)
    values: Mapping[str, str] = field(default_factory=dict)
    omitted: float = 0.0
    family: str = ""
    weight: float = 1.0


def _of_lines(problem: DrawnSum) -> Iterator[Change]:
    """Mistakes of setting off lengths."""
    for arm in problem.arms:
        named = {"a": arm.key}
        if len(problem.arms) > 1:
            yield Change("left-out", _set_off(arm.key, length=0.0), named, BOTH)
            for other in other_scales(problem.scale):
                there = _set_off(arm.key, length=arm.size * problem.scale / other)
                texts = {"scale": problem.say_scale(other)}
                yield Change("line-at-other-scale", there, named, (DRAWN,), texts, weight=ONE_LINE)
        yield Change("reversed", _set_off(arm.key, back=True), named, BOTH)
        for wrong in exchanged_figures(arm.size):
            texts = {"wrong": problem.say_size(wrong), "size": problem.say_size(arm.size)}
            there = _set_off(arm.key, length=wrong)
            yield Change("figures-exchanged", there, named, BOTH, texts, weight=ONE_EXCHANGE)
    for index, first in enumerate(problem.arms):
        for second in problem.arms[index + 1 :]:
            if first.size != second.size:
                named = {"a": first.key, "b": second.key}
                yield Change("swapped", _exchanged(first, second), named)


def _of_single_turns(problem: DrawnSum, construction: Construction) -> Iterator[Change]:
    """Mistakes of the protractor's two scales, and of its two ways round, at one line."""
    for move in turning_moves(construction):
        named, at_tip = {"a": arm_of(problem, move.line).key}, "-at-tip" if move.back else ""
        if move.turn not in (90.0, -90.0):
            yield Change("other-scale" + at_tip, with_turns((move.line,), _other_scale), named)
        yield Change("wrong-way" + at_tip, with_turns((move.line,), _opposite_turn), named)


def _of_turns(problem: DrawnSum, construction: Construction) -> Iterator[Change]:
    """The same at one line, and at all of them."""
    turning = turning_moves(construction)
    yield from _of_single_turns(problem, construction)
    lines = tuple(move.line for move in turning)
    if len(lines) > 1 and any(move.back for move in turning):
        tips = tuple(move.line for move in turning if move.back)
        yield Change("other-scale-throughout", with_turns(tips, _other_scale))
    if lines:
        # A single line that turns the wrong way is named as that where it is drawn.
        how = BOTH if len(lines) > 1 else (CALCULATED,)
        yield Change("mirrored", with_turns(lines, _opposite_turn), how=how)
    if three_phase(problem):
        yield Change("right-angles", with_turns(lines, lambda turn: math.copysign(90.0, turn)))


def carried_out(problem: DrawnSum, construction: Construction, changes: Sequence[Change]) -> Iterator[Mistake]:
    """What changes give: the construction carried out with the moves that were made, all of them at once."""
    changed = [[change.replaced(move) for change in changes] for move in construction.moves]
    instead = {place: [_set(move) for move in moves] for place, moves in enumerate(changed) if any(
        one is not construction.moves[place] for one in moves
    )}  # fmt: skip
    drawn = carry_out_many(construction.moves, {}, len(changes), instead)
    families: dict[str, list[complex]] = {}
    for place, change in enumerate(changes):
        point = _read(landed(problem, construction, drawn, place), change.omitted)
        points = families.setdefault(change.family or str(place), [])
        points.append(point)
        following = changes[place + 1].family if place + 1 < len(changes) else ""
        if change.family and change.family == following:
            continue
        middle = points[len(points) // 2]
        made = mistake(change.key, change.how, middle, **_called(problem, change.named), **change.values)
        yield replace(
            made, about=tuple(change.named.values()), points=tuple(points) if change.family else (),
            weight=change.weight, tabled=not change.family and not change.values,
        )  # fmt: skip


def _read(point: complex, omitted: float) -> complex:
    """A drawn end as it is read by a ruler that shows too little."""
    size = phasor.magnitude(point)
    return point * (max(0.0, size - omitted) / size) if size > 0.0 else point


def in_moves(problem: DrawnSum) -> Iterator[Mistake]:
    """Mistakes of setting off: the construction is carried out with the moves that were made."""
    construction = base(problem)
    changes = (*_of_lines(problem), *_of_turns(problem, construction))
    yield from carried_out(problem, construction, changes)
    listed = listed_order(problem.arms, problem.order) if problem.method == TIP_TO_TAIL else ""
    if listed:
        # Nothing but the table says which of two comes first.
        other = tip_to_tail(problem.arms, listed, problem.reference)
        yield from carried_out(problem, other, tuple(_of_single_turns(problem, other)))


def _called(problem: DrawnSum, named: Mapping[str, str]) -> dict[str, Phrase]:
    return {letter: problem.names[key] for letter, key in named.items()}


def _relative(problem: DrawnSum) -> dict[int, complex]:
    return {arm.number: phasor.polar(arm.size, arm.angle - problem.reference) for arm in problem.arms}


def in_stages(problem: DrawnSum) -> Iterator[Mistake]:
    """Mistakes of the two stages of a parallelogram: the last reading is replaced."""
    if problem.method != PARALLELOGRAM or len(problem.arms) < 3:
        return
    arms = _relative(problem)
    first, second = int(problem.order[0]), int(problem.order[1])
    third = next(number for number in arms if number not in (first, second))
    named = {arm.number: problem.names[arm.key] for arm in problem.arms}
    diagonal = phasor.total((arms[first], arms[second]))
    yield mistake("stopped", (DRAWN,), diagonal, a=named[first], b=named[second])
    across = diagonal - arms[third]
    yield replace(mistake("other-diagonal", (DRAWN,), across), points=(-across, across))
    whole = phasor.total(arms.values())
    for number in arms:
        twice = whole + arms[number]
        yield mistake("two-diagonals", (DRAWN,), twice, a=named[number])


def of_lags(problem: DrawnSum) -> Iterator[Mistake]:
    """Power factors left out, or lead taken for lag; only where a line is out of phase with its voltage."""
    lags = {arm.key: wrap(problem.voltages.get(arm.key, arm.angle) - arm.angle) for arm in problem.arms}
    if all(lag == 0.0 for lag in lags.values()):
        return
    head = problem.arms[0]
    on_current = head.angle == problem.reference
    for key, share in (("factor-ignored", 0.0), ("lead-for-lag", -1.0)):
        turned = {arm.key: problem.voltages.get(arm.key, arm.angle) - share * lags[arm.key] for arm in problem.arms}
        start = turned[head.key] if on_current else problem.reference
        point = phasor.total(phasor.polar(arm.size, turned[arm.key] - start) for arm in problem.arms)
        yield mistake(key, (DRAWN, CALCULATED), point)


def _widened(key: str, how: tuple[str, ...], point: complex, widening: float, **named: str) -> Mistake:
    """A mistake that multiplies what was drawn, the hand's error with it."""
    return replace(mistake(key, how, widening * point, **named), widening=widening)


def of_scale(problem: DrawnSum) -> Iterator[Mistake]:
    """Mistakes between length and quantity: the last reading is replaced."""
    point, scale = phasor.total(_relative(problem).values()), problem.scale
    yield _widened("ten-too-many", BOTH, point, 10.0)
    yield _widened("ten-too-few", BOTH, point, 0.1)
    if scale not in (0.0, 1.0):
        named = {"unit": problem.unit, "scale": problem.scale_words}
        yield _widened("not-multiplied", (DRAWN,), point, 1.0 / scale, **named)
        yield _widened("divided", (DRAWN,), point, 1.0 / (scale * scale), **named)
        yield _widened("multiplied-lines", (DRAWN,), point, scale * scale, **named)
    for other in other_scales(scale):
        texts = {"scale": problem.say_scale(other), "sheet": problem.scale_words}
        for key, ratio in (("read-at-other-scale", other / scale), ("drawn-at-other-scale", scale / other)):
            one = _widened(key, (DRAWN,), point, ratio, **texts)
            # A drawing made smaller is off by as many millimetres.
            yield replace(one, widening=max(1.0, ratio), tabled=False, weight=EACH_SCALE)


def of_the_arrow(problem: DrawnSum) -> Iterator[Mistake]:
    """Right size, the angle read in the wrong place."""
    whole = phasor.total(_relative(problem).values())
    if whole == 0:
        return
    yield mistake("arrow-reversed", (DRAWN,), -whole)
    if problem.method == TIP_TO_TAIL and len(problem.arms) > 1:
        last = chain_of(problem.arms, problem.order)[-1]
        inside = math.fabs(wrap(phasor.angle(whole) - (last.angle - problem.reference)))
        side = math.copysign(inside, phasor.angle(whole))
        yield mistake("angle-at-tip", (DRAWN,), phasor.polar(phasor.magnitude(whole), side))
