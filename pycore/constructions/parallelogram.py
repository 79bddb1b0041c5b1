"""The method of parallelograms: one after the other, all phasors from the common point.

The first diagonal is the sum of two phasors. With the third phasor it forms the second parallelogram, whose diagonal is
the sum of all three. Two phasors on one line form no parallelogram: one is drawn from the tip of the other.
"""

from functools import lru_cache
from typing import NamedTuple

from pycore import phasor
from pycore.constructions import roles, step_kinds
from pycore.constructions.construction import (
    COLLINEAR,
    Arm,
    Construction,
    Step,
    arm_line,
    closing_steps,
    draw_arm,
    nearly_zero,
    reference_step,
    sum_of,
    tip,
)
from pycore.constructions.methods import (
    BY_COMPASSES,
    BY_PROTRACTOR,
    BY_SET_SQUARES,
    PARALLELOGRAM,
    THE_SUM,
)
from pycore.constructions.moves import (
    CrossArcs,
    DrawParallel,
    Intersect,
    Join,
    Move,
    ReadAngle,
    ReadLength,
    SetOff,
    Supplement,
    TurnAngle,
)
from pycore.constructions.names import DIAGONAL, DIAGONAL_LENGTH, FIRST_DIRECTION, RESULTANT, START_POINT, arm_key
from pycore.phasor import wrap


class _Names(NamedTuple):
    """What a side of a parallelogram is called: its line, its tip, its key, and the numbers of its arms."""

    line: str
    tip: str
    key: str
    numbers: tuple[int, ...]


class _Side(NamedTuple):
    """One side of a parallelogram: an arm, or the first diagonal."""

    names: _Names
    value: complex
    angle: float


def _side(arm: Arm) -> _Side:
    names = _Names(arm_line(arm), tip(arm), arm.key, (arm.number,))
    return _Side(names, phasor.polar(arm.size, arm.angle), arm.angle)


def _parallels(a: _Names, b: _Names) -> tuple[str, str]:
    """The names of the lines through the tips of two sides, each parallel to the other side."""
    return f"{b.line}@{a.tip}", f"{a.line}@{b.tip}"


def _far_sides(a: _Names, b: _Names, corner: str) -> tuple[Move, ...]:
    """The moves that draw the sides which meet in the far corner."""
    from_a, from_b = _parallels(a, b)
    return (
        Join(from_a, a.tip, corner, roles.PARALLEL, like=b.key),
        Join(from_b, b.tip, corner, roles.PARALLEL, like=a.key),
    )


def _by_protractor(a: _Side, b: _Side, corner: str, measured: str) -> tuple[Step, ...]:
    """Draw the sides by marking 180° minus the enclosed angle at both tips."""
    between = wrap(b.angle - a.angle)
    if not measured:
        return _turned(a.names, b.names, corner, (wrap(between - 180.0), wrap(-between - 180.0)))
    sense = 1 if between > 0 else -1
    read = ReadAngle(measured, START_POINT, a.names.line, b.names.line)
    turned = _turned(a.names, b.names, corner, (Supplement(measured, -sense), Supplement(measured, sense)))
    return (Step(step_kinds.MEASURE, (read,), a.names.numbers + b.names.numbers), *turned)


# Cached, as is all that names and angles decide: most edits change sizes alone.
@lru_cache(maxsize=64)
def _turned(
    a: _Names, b: _Names, corner: str, turns: tuple[float | Supplement, float | Supplement]
) -> tuple[Step, ...]:
    numbers = a.numbers + b.numbers
    from_a, from_b = _parallels(a, b)
    close: tuple[Move, ...] = (
        TurnAngle(from_b, b.tip, b.line, turns[1], back=True),
        Intersect(corner, from_a, from_b),
        *_far_sides(a, b, corner),
    )
    first = Step(step_kinds.PARALLEL, (TurnAngle(from_a, a.tip, a.line, turns[0], back=True),), numbers)
    return first, Step(step_kinds.CLOSE, close, numbers)


@lru_cache(maxsize=64)
def _by_set_squares(a: _Names, b: _Names, corner: str) -> tuple[Step, ...]:
    numbers = a.numbers + b.numbers
    from_a, from_b = _parallels(a, b)
    close: tuple[Move, ...] = (
        DrawParallel(from_b, b.tip, a.line),
        Intersect(corner, from_a, from_b),
        *_far_sides(a, b, corner),
    )
    first = Step(step_kinds.PARALLEL, (DrawParallel(from_a, a.tip, b.line),), numbers)
    return first, Step(step_kinds.CLOSE, close, numbers)


@lru_cache(maxsize=64)
def _by_compasses(a: _Names, b: _Names, corner: str) -> tuple[Step, ...]:
    numbers = a.numbers + b.numbers
    arcs = CrossArcs(corner, a.tip, (START_POINT, b.tip), b.tip, (START_POINT, a.tip), START_POINT)
    return Step(step_kinds.ARCS, (arcs,), numbers), Step(step_kinds.CLOSE, _far_sides(a, b, corner), numbers)


def _carried_on(a: _Names, b: _Names, size: float, corner: str) -> tuple[Step, ...]:
    """Sides on one line: draw the second, of this size, from the tip of the first."""
    line = f"{b.line}@{a.tip}"
    moves: tuple[Move, ...] = (
        DrawParallel(line, a.tip, b.line),
        SetOff(corner, a.tip, line, size, b.key, copy=True),
    )
    return (Step(step_kinds.CARRY_ON, moves, a.numbers + b.numbers),)


def is_flat(first: float, second: float) -> bool:
    """Return whether two directions are so close to one line that no parallelogram can be drawn."""
    apart = wrap(second - first)
    apart = -apart if apart < 0 else apart
    return apart < COLLINEAR or apart > 180.0 - COLLINEAR


def _stage(a: _Side, b: _Side, corner: str, parallels: str, measured: str) -> tuple[Step, ...]:
    if is_flat(a.angle, b.angle):
        return _carried_on(a.names, b.names, phasor.magnitude(b.value), corner)
    if parallels == BY_SET_SQUARES:
        return _by_set_squares(a.names, b.names, corner)
    if parallels == BY_COMPASSES:
        return _by_compasses(a.names, b.names, corner)
    return _by_protractor(a, b, corner, measured)


def _first_diagonal(pair: tuple[Arm, Arm], corner: str, parallels: str) -> tuple[Step, ...]:
    """The first parallelogram, with its diagonal if the corner is only a partial sum."""
    steps = _stage(_side(pair[0]), _side(pair[1]), corner, parallels, "")
    return (*steps, _diagonal(pair[0].number, pair[1].number)) if corner == DIAGONAL else steps


@lru_cache(maxsize=32)
def _diagonal(first: int, second: int) -> Step:
    diagonal: tuple[Move, ...] = (
        Join(DIAGONAL, START_POINT, DIAGONAL, roles.PARTIAL, arm_key(f"{first}{second}")),
        ReadLength(DIAGONAL_LENGTH, START_POINT, DIAGONAL),
    )
    return Step(step_kinds.DIAGONAL, diagonal, (first, second))


def _arrange(arms: tuple[Arm, ...], order: str) -> tuple[tuple[Arm, Arm], Arm | None]:
    """Return the pair that is combined first, and the arm that remains."""
    if len(arms) == 2:
        return (arms[0], arms[1]), None
    first, second = (next(arm for arm in arms if arm.number == int(n)) for n in order)
    third = next(arm for arm in arms if arm.number not in (first.number, second.number))
    return (first, second), third


def parallelogram(
    arms: tuple[Arm, ...],
    order: str,
    reference: float,
    parallels: str = BY_PROTRACTOR,
    resultant: str = THE_SUM,
) -> Construction:
    """Return the construction for two or three arms of non-zero size.

    ``order``: the pair combined first. ``reference``: the first direction, in degrees. Raises ValueError for fewer than
    two arms.
    """
    if len(arms) < 2:
        raise ValueError("a parallelogram needs two phasors")
    pair, third = _arrange(arms, order)
    head = arms[0]
    early = [arm for arm in arms if arm is not third or arm is head]
    pair_sum = sum_of(pair)
    cancelled = third is not None and pair_sum == 0
    corner = RESULTANT if third is None else ("Z" if cancelled else DIAGONAL)
    steps = [Step(step_kinds.SCALE), *reference_step(head, reference)]
    steps += [draw_arm(arm, head, reference, arm is head) for arm in early]
    steps += _first_diagonal(pair, corner, parallels)
    if third is not None and third not in early:
        steps.append(draw_arm(third, head, reference, False))
    if third is not None and not cancelled:
        numbers = (pair[0].number, pair[1].number)
        names = _Names(DIAGONAL, DIAGONAL, arm_key(f"{numbers[0]}{numbers[1]}"), numbers)
        diagonal = _Side(names, pair_sum, phasor.angle(pair_sum))
        steps += _stage(diagonal, _side(third), RESULTANT, parallels, "between")
    end = tip(third) if third is not None and cancelled else RESULTANT
    closed = nearly_zero(sum_of(arms), arms)
    line = arm_line(head) if head.angle == reference else FIRST_DIRECTION
    steps += closing_steps(end, line, resultant, closed=closed, tip_to_tail=False)
    return Construction(PARALLELOGRAM, order, arms, tuple(steps), end, closed, resultant)
