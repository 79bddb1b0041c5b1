"""The catalogue of mistakes for a sum of phasors that is drawn: each is a replacement of moves.

Every mistake is carried out as the right construction is (``many.carry_out_many``, all at once), with one or more
of its moves replaced, or its last reading; the angles are common practice (what learners do).
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from pycore import phasor
from pycore.constructions.components import components
from pycore.constructions.construction import Arm, Construction, DrawingConvention, arm_line
from pycore.constructions.many import DrawingBatch, carry_out_many
from pycore.constructions.moves import Move, SetOff, TurnAngle
from pycore.constructions.names import RESULTANT
from pycore.constructions.tip_to_tail import tip_to_tail
from pycore.phasor import wrap
from pycore.practice.catalogue import mistake
from pycore.practice.task import CALCULATED, DRAWN, Mistake
from pycore.words.phrase import Phrase

Replaced = Callable[[Move], Move]


@dataclass(frozen=True, slots=True)
class DrawnSum:
    """A sum of phasors as it is drawn.

    ``reference`` is the direction drawn first (degrees), ``order`` the pair combined first or the
    sequence, ``voltages`` the angle of each arm's own voltage by its key (empty where there is none),
    ``names`` what each arm is called, ``scale`` units per cm.
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


def base(problem: DrawnSum) -> Construction:
    """The construction on which mistakes are made: tip to tail as it is; for the others all arms from
    one point, their parts along the two axes added, which can be carried out wherever they point."""
    if problem.method == "tip-to-tail":
        return tip_to_tail(problem.arms, problem.order, problem.reference)
    return components(problem.arms, DrawingConvention("right", "anticlockwise", problem.reference))


def landed(problem: DrawnSum, construction: Construction, drawn: DrawingBatch, place: int) -> complex:
    """Where the sum ends in one of many drawings, counted from the direction that is drawn first."""
    if construction.method == "tip-to-tail":
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


def _turned(lines: Sequence[str], how: Callable[[float], float]) -> Replaced:
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


def _turning(construction: Construction) -> tuple[TurnAngle, ...]:
    """The protractor's moves that have two scales to choose from."""
    return tuple(
        move
        for move in construction.moves
        if isinstance(move, TurnAngle) and isinstance(move.turn, float) and move.turn not in (0.0, 180.0, -180.0)
    )


def _arm_of(problem: DrawnSum, line: str) -> Arm:
    return next(arm for arm in problem.arms if arm_line(arm) == line)


def _changes(problem: DrawnSum, construction: Construction) -> Iterator[tuple[str, Replaced, dict[str, str]]]:
    """Every mistake made in one move or more: its key, what it replaces, and the keys of the lines it names."""
    at_tip = "-at-tip" if construction.method == "tip-to-tail" else ""
    for arm in problem.arms:
        named = {"a": arm.key}
        if len(problem.arms) > 1:
            yield "left-out", _set_off(arm.key, length=0.0), named
        yield "reversed", _set_off(arm.key, back=True), named
    turning = _turning(construction)
    for move in turning:
        named = {"a": _arm_of(problem, move.line).key}
        if move.turn not in (90.0, -90.0):
            yield "other-scale" + at_tip, _turned((move.line,), _other_scale), named
        yield "wrong-way" + at_tip, _turned((move.line,), _opposite_turn), named
    lines = tuple(move.line for move in turning)
    if len(lines) > 1:
        if at_tip:
            yield "other-scale-throughout", _turned(lines, _other_scale), {}
        yield "mirrored", _turned(lines, _opposite_turn), {}
    for index, first in enumerate(problem.arms):
        for second in problem.arms[index + 1 :]:
            if first.size != second.size:
                named = {"a": first.key, "b": second.key}
                yield "swapped", _exchanged(first, second), named


def in_moves(problem: DrawnSum) -> Iterator[Mistake]:
    """Mistakes of setting off: the construction is carried out with the moves that were made."""
    construction = base(problem)
    changes = tuple(_changes(problem, construction))
    changed = [[change(move) for _, change, _ in changes] for move in construction.moves]
    instead = {place: [_set(move) for move in moves] for place, moves in enumerate(changed) if any(
        one is not construction.moves[place] for one in moves
    )}  # fmt: skip
    drawn = carry_out_many(construction.moves, {}, len(changes), instead)
    for place, (key, _, named) in enumerate(changes):
        point = landed(problem, construction, drawn, place)
        made = mistake(key, (DRAWN,), point, **_called(problem, named))
        yield replace(made, about=tuple(named.values()))


def _called(problem: DrawnSum, named: Mapping[str, str]) -> dict[str, Phrase]:
    return {letter: problem.names[key] for letter, key in named.items()}


def _relative(problem: DrawnSum) -> dict[int, complex]:
    return {arm.number: phasor.polar(arm.size, arm.angle - problem.reference) for arm in problem.arms}


def in_stages(problem: DrawnSum) -> Iterator[Mistake]:
    """Mistakes of the two stages of a parallelogram: the last reading is replaced."""
    if problem.method != "parallelogram" or len(problem.arms) < 3:
        return
    arms = _relative(problem)
    first, second = int(problem.order[0]), int(problem.order[1])
    third = next(number for number in arms if number not in (first, second))
    named = {arm.number: problem.names[arm.key] for arm in problem.arms}
    diagonal = phasor.total((arms[first], arms[second]))
    yield mistake("stopped", (DRAWN,), diagonal, a=named[first], b=named[second])
    across = phasor.magnitude(diagonal - arms[third])
    yield mistake("other-diagonal", (DRAWN,), None, across)
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


def of_scale(problem: DrawnSum) -> Iterator[Mistake]:
    """Mistakes between length and quantity: the last reading is replaced."""
    point = phasor.total(_relative(problem).values())
    size, scale = phasor.magnitude(point), problem.scale
    both = (DRAWN, CALCULATED)
    yield mistake("ten-too-many", both, 10.0 * point, 10.0 * size)
    yield mistake("ten-too-few", both, 0.1 * point, 0.1 * size)
    if scale not in (0.0, 1.0):
        named = {"unit": problem.unit, "scale": problem.scale_words}
        yield mistake("not-multiplied", (DRAWN,), point / scale, size / scale, **named)
        yield mistake("divided", (DRAWN,), point / (scale * scale), size / (scale * scale), **named)
        yield mistake("multiplied-lines", (DRAWN,), point * (scale * scale), size * scale * scale, **named)
