"""Problem sheets as learners draw on them, made up, each by its number; some four in ten have one usual mistake.

Numbers below ``REPORTED`` are for setting thresholds; a figure that is reported is of numbers from there on, which
nothing was set by.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from pycore import geometry
from pycore.calculators.registry import CALCULATORS
from pycore.constructions import deviations, roles
from pycore.constructions.moves import (
    ConstructionError,
    CrossArcs,
    Direction,
    DropPerpendicular,
    Figure,
    Intersect,
    Join,
    Move,
    SetOff,
    TurnAngle,
    carry_out,
    deviations_of,
)
from pycore.geometry import ORIGIN, Box, Point
from pycore.phasor import wrap
from pycore.practice.codes import TIERS, Code
from pycore.practice.drawn import points_to_find
from pycore.sums.photograph import PhotoTask, photo_task

REPORTED = 100_000
METHODS = ("parallelogram", "tip-to-tail", "components")
NEUTRAL = CALCULATORS["neutral-current"]
LENGTH_OFF, ANGLE_OFF = 0.4, 0.6
"""Standard errors of the hand: mm and degrees."""
MISTAKEN = 0.44


@dataclass(frozen=True)
class Pencilled:
    """What a learner drew: on which form, by which method, the points that are there and the feet of perpendiculars
    (mm), the mistake's name."""

    form: Mapping[str, str]
    method: str
    points: Mapping[str, tuple[float, float]]
    feet: Mapping[str, tuple[float, float]]
    mistake: str
    strokes: tuple["Drawn", ...]
    want: PhotoTask


@dataclass(frozen=True)
class Drawn:
    """One line: its ends in mm, whether an arrow, dashes, faint."""

    start: Point
    end: Point
    arrow: bool = False
    dashed: bool = False
    faint: bool = False


# The mistakes.


def _turned(line: str, how) -> object:
    def change(move: Move) -> Move:
        if isinstance(move, TurnAngle) and move.line == line and isinstance(move.turn, float):
            return replace(move, turn=how(move.turn))
        return move

    return change


def _lengths(how, keys: Sequence[str]) -> object:
    def change(move: Move) -> Move:
        if isinstance(move, SetOff) and move.phasor in keys and isinstance(move.length, float):
            return replace(move, length=how(move.phasor, move.length))
        return move

    return change


def _mistake(name: str, want: PhotoTask, random: np.random.Generator) -> object:
    """A change of moves for a mistake's name; None where it does not go with this sheet."""
    drawing = want.drawing
    arms = drawing.construction.arms
    keys = [arm.key for arm in arms]
    turning = [m.line for m in drawing.construction.moves if isinstance(m, TurnAngle) and isinstance(m.turn, float)
               and m.turn not in (0.0, 180.0, -180.0) and "@" not in m.line]  # fmt: skip
    one = str(random.choice(keys))
    line = str(random.choice(turning)) if turning else ""
    millimetre = 1.0 / drawing.factor
    sizes = {arm.key: arm.size for arm in arms}
    other = str(random.choice([key for key in keys if key != one])) if len(keys) > 1 else one
    of_turns = {
        "wrong-way": _turned(line, lambda turn: -turn),
        "other-scale": _turned(line, lambda turn: math.copysign(180.0 - math.fabs(turn), turn)),
        "tens": _turned(line, lambda turn: turn + 10.0),
        "tens-less": _turned(line, lambda turn: turn - 10.0),
    }
    of_lengths = {
        "reversed": _lengths(lambda _, size: -size, [one]),
        "swapped": _lengths(lambda key, _: sizes[other if key == one else one], [one, other]),
        "centimetre": _lengths(lambda _, size: size + 10.0 * millimetre, [one]),
        "centimetre-short": _lengths(lambda _, size: size - 10.0 * millimetre, [one]),
        "ruler-edge": _lengths(lambda _, size: size + 5.0 * millimetre, keys),
        "half-scale": _lengths(lambda _, size: 0.5 * size, keys),
        "one-half": _lengths(lambda _, size: 0.5 * size, [one]),
    }
    if name in of_turns:
        return of_turns[name] if line else None
    return of_lengths.get(name)


MISTAKES = ("wrong-way", "other-scale", "tens", "tens-less", "reversed", "swapped", "centimetre", "centimetre-short",
            "ruler-edge", "half-scale", "one-half", "stopped", "from-start", "random")  # fmt: skip


def _form(random: np.random.Generator, method: str, seed: int) -> dict[str, str]:
    from pycore.calculators.neutral_current.practice import form_of

    code = Code(0, str(random.choice(TIERS[1:])), method, "A4", int(random.integers(0, 30_000)), seed % 30)
    code = replace(code, topic=NEUTRAL.topic)
    return form_of(code, {"sheet": "problem"})


def _of_method(want: PhotoTask, form: Mapping[str, str], method: str) -> PhotoTask:
    """What another method would draw on the sheet of this one."""
    if want.drawing.construction.method == method:
        return want
    other = photo_task(NEUTRAL, {**form, "method": method})
    drawing = replace(other.drawing, factor=want.drawing.factor, scale=want.drawing.scale, picture=want.drawing.picture)
    return replace(want, drawing=drawing)


def _hand(moves: Sequence[Move], factor: float, random: np.random.Generator) -> Figure:
    off = {key: float(random.normal(0, ANGLE_OFF if "angle" in key or "parallel" in key else LENGTH_OFF / factor))
           for key in deviations_of(tuple(moves))}  # fmt: skip
    return carry_out(tuple(moves), off | _along_axes(moves, carry_out(tuple(moves), off), factor))


def _along_axes(moves: Sequence[Move], figure: Figure, factor: float) -> dict[str, float]:
    """The slopes of perpendiculars over an arrow that lies along an axis: nobody draws those, so that they end in the
    start, and the arrow counts nothing along the other axis."""
    slopes = {}
    for index, move in enumerate(moves):
        if isinstance(move, DropPerpendicular) and over_an_arrow(figure, move, factor):
            arrow = geometry.direction(ORIGIN, figure.points[move.start])
            slopes[f"{index}:{deviations.PARALLEL}"] = wrap(arrow - figure.lines[move.line].degrees - 90.0)
    return slopes


def over_an_arrow(figure: Figure, move: DropPerpendicular, factor: float) -> bool:
    """Whether a perpendicular would be so near the start that it lies over its arrow."""
    foot = geometry.foot(figure.points[move.start], figure.lines[move.line])
    return factor * geometry.distance(foot, ORIGIN) < 3.0


def pencilled(seed: int, method: str = "", given: Mapping[str, str] | None = None) -> Pencilled:
    """The sheet with this number; ``method``: how it is drawn, else by its number; ``given``: its form, else by its
    number."""
    random = np.random.default_rng(seed)
    chosen = method or METHODS[seed % 3]
    form = given or _form(random, chosen if random.random() < 0.9 else str(random.choice(METHODS)), seed)
    printed = photo_task(NEUTRAL, form)
    try:
        want = _of_method(printed, form, chosen)
    except ValueError:
        want = printed
    field = NEUTRAL.case(form).sheet_plan().layout.field
    for attempt in range(40):
        mistake = str(random.choice(MISTAKES)) if random.random() < MISTAKEN else ""
        if attempt > 30:
            mistake, want = "", printed
        made = drawn_by(want, mistake, random, field)
        if made:
            points, feet, strokes = made
            return Pencilled(form, want.drawing.construction.method, points, feet, mistake, strokes, want)
    raise ValueError(f"nothing fits the sheet {seed}")


def drawn_by(
    want: PhotoTask, mistake: str, random: np.random.Generator, field: Box
) -> tuple[dict[str, tuple[float, float]], dict[str, tuple[float, float]], tuple[Drawn, ...]] | None:
    """The points, feet and lines of one drawing; None where it leaves the field or cannot be drawn."""
    drawing = want.drawing
    moves: list[Move] = list(drawing.construction.moves)
    if mistake not in ("", "stopped", "from-start", "random"):
        change = _mistake(mistake, want, random)
        if change is None:
            return None
        moves = [change(move) for move in moves]  # type: ignore[operator]
    if mistake == "from-start":
        last = [move for move in moves if isinstance(move, SetOff) and move.role == roles.GIVEN][-1]
        if drawing.construction.method != "tip-to-tail" or last.start == "O":
            return None
        moves = [replace(move, start="O") if move is last else move for move in moves]
    if mistake == "random":
        index = int(random.choice([i for i, m in enumerate(moves) if isinstance(m, SetOff) and m.role == roles.GIVEN]))
        move = moves[index]
        moves[index] = replace(move, length=move.length * random.uniform(0.8, 1.25))  # type: ignore[union-attr,operator]
    try:
        figure = _hand(moves, drawing.factor, random)
    except ConstructionError:
        return None
    if mistake == "stopped":
        if drawing.construction.method != "parallelogram" or "R" not in figure.points:
            return None
        cut = next(i for i, m in enumerate(moves) if isinstance(m, Join) and m.role == roles.PARTIAL)
        moves = moves[: cut + 1]

    def place(name: str) -> Point:
        return want.origin.plus(drawing.picture.place(figure.points[name], drawing.factor))

    strokes = list(_lines(moves, want, figure, place, random, field))
    names = points_to_find(drawing.construction)
    done = {getattr(move, "point", "") for move in moves} | {getattr(move, "end", "") for move in moves}
    points = {name: place(name) for name in names if name in done and name in figure.points
              and not (drawing.construction.method == "components" and name in ("X", "Y"))}  # fmt: skip
    everywhere = [place(name) for name in figure.points if name in done or name in points]
    near = [geometry.distance(a, b) for i, a in enumerate(points.values()) for b in list(points.values())[:i]]
    inside = all(field.left + 4 < p.x < field.right - 4 and field.bottom + 4 < p.y < field.top - 4 for p in everywhere)
    if not inside or min(near) < 5.0:
        return None
    feet = {move.foot: place(move.foot) for move in moves if isinstance(move, DropPerpendicular)}
    in_mm = [{name: (p.x, p.y) for name, p in some.items()} for some in (points, feet)]
    return in_mm[0], in_mm[1], tuple(strokes)


def _lines(moves, want, figure, place, random, field: Box):
    """The lines of a drawing, with what a hand adds: faint guides, lines that run on, axes."""
    guides = random.random() < 0.6
    compasses = random.random() < 0.25
    over_arrows = {move.foot for move in moves if isinstance(move, DropPerpendicular)
                   and over_an_arrow(figure, move, want.drawing.factor)}  # fmt: skip
    for move in moves:
        if isinstance(move, Direction) and want.drawing.construction.method == "components":
            way = want.drawing.picture.place(Point(1.0, 0.0).moved(0.0, 0.0))
            way = want.drawing.picture.place(Point(0.0, 0.0).moved(1.0, move.degrees))
            lengths = [random.uniform(60, 85) for _ in range(2)]
            ends = [_clipped(want.origin, way.times(sign * length / geometry.distance(Point(0, 0), way)), field)
                    for sign, length in zip((1, -1), lengths, strict=True)]  # fmt: skip
            yield Drawn(ends[0], ends[1], faint=bool(random.random() < 0.5))
        elif isinstance(move, SetOff) and move.role in (roles.GIVEN, roles.COMPANION):
            start, end = place(move.start), place(move.point)
            yield Drawn(start, end, arrow=bool(random.random() < 0.92))
            if guides and random.random() < 0.5:
                on = random.uniform(3, 14)
                beyond = end.plus(end.minus(start).times(on / max(1.0, geometry.distance(start, end))))
                yield Drawn(start, beyond, faint=True)
        elif isinstance(move, Join) and move.role != roles.HIDDEN:
            start, end = place(move.start), place(move.end)
            if geometry.distance(start, end) < 1.0 or (move.role == roles.DROP and move.end in over_arrows):
                continue
            if move.role in (roles.PARALLEL, roles.DROP):
                on = random.uniform(-0.5, 4) if random.random() < 0.8 else random.uniform(3, 12)
                end = end.plus(end.minus(start).times(on / geometry.distance(start, end)))
                yield Drawn(start, end, dashed=bool(random.random() < 0.7), faint=bool(random.random() < 0.3))
            else:
                yield Drawn(start, end, arrow=bool(random.random() < 0.92))
        if compasses and isinstance(move, Intersect | CrossArcs):
            centre, far = place(move.point), random.uniform(0, 360)
            for turn in (0, random.uniform(50, 110)):
                yield Drawn(centre.moved(-5, far + turn), centre.moved(5, far + turn), faint=True)
        if isinstance(move, DropPerpendicular) and random.random() < 0.3:
            foot = place(move.foot)
            yield Drawn(foot.moved(-1.2, 45), foot.moved(1.2, 45), faint=True)


def _clipped(start: Point, step: Point, field: Box) -> Point:
    share = 1.0
    for at, way, low, high in ((start.x, step.x, field.left, field.right), (start.y, step.y, field.bottom, field.top)):
        if way:
            share = min(share, (((high if way > 0 else low) - at) / way) * 0.97)
    return start.plus(step.times(max(0.0, share)))
