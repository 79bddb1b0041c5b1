"""Which arrow of the problem each arrow of a drawing is: the one that needs the fewest of the usual slips."""

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations, permutations

from pycore import geometry
from pycore.constructions.methods import PARALLELOGRAM, TIP_TO_TAIL
from pycore.constructions.moves import SetOff
from pycore.constructions.names import DIAGONAL, tip_of
from pycore.constructions.roles import GIVEN
from pycore.geometry import ORIGIN, Point
from pycore.phasor import polar, wrap
from pycore.practice.drawn import ReferenceDrawing, first_direction
from pycore.practice.stroke_axes import Tip
from pycore.practice.stroke_shapes import BEGUN_AT_START, Shape

RIGHT, ONE_SLIP, UNLIKE = 0.0, 1.0, 2.2
"""What a length or a direction costs: right, as one of the usual slips gives it, or any other."""
SIZE_OFF, SIZE_SHARE = 2.2, 0.015
"""How near a length must come (mm, and share of it) to be that of an arrow or of a slip."""
TURN_OFF, FIRST_OFF = 3.5, 5.0
"""The same of directions, degrees; of the arrow that is drawn first."""
OTHER_PAIR, ONE_LEFT_OUT = 1.3, 1.0
ONE_PLACE = 2.0
"""So near one another two strokes from the start end that are one arrow, mm."""
ZERO = -1
"""Instead of an arrow's number: its angle is measured from the zero of the axes."""
SLIP_ON_AXES, MOST_CHOSEN = 20.0, 12


@dataclass(frozen=True)
class NamedShape:
    """A shape whose points have the names of a construction, and what its slips cost."""

    shape: Shape
    points: Mapping[str, Point]
    keys: Mapping[str, str]
    cost: float


class Names:
    """Gives names to the arrows of one drawing; ``origin`` is where it starts on the paper."""

    def __init__(self, drawing: ReferenceDrawing, origin: Point) -> None:
        construction = drawing.construction
        self.drawing, self.origin = drawing, origin
        self.wanted: dict[int, Point] = {}
        for arm in construction.arms:
            step = polar(arm.size, arm.angle)
            self.wanted[arm.number] = drawing.picture.place(Point(step.real, step.imag), drawing.factor)
        numbers = {arm.key: arm.number for arm in construction.arms}
        arrows = [m for m in construction.moves if isinstance(m, SetOff) and m.role == GIVEN and m.phasor in numbers]
        self.order = tuple(dict.fromkeys(numbers[move.phasor] for move in arrows))
        """The arrows' numbers in the order in which they are drawn."""
        self.chain = tuple(move.point for move in arrows)
        """The points in which they end."""
        self.scale = drawing.scale
        guide = first_direction(construction)
        along = ORIGIN.moved(1.0, construction.figure.lines[guide].degrees) if guide else ORIGIN
        zero = drawing.picture.place(along) if guide else self.wanted[self.order[0]]
        self.zero = geometry.direction(ORIGIN, zero)
        """The direction on the paper from which angles on axes are measured, degrees."""

    def _size_cost(self, number: int, size: float) -> float:
        want = geometry.distance(ORIGIN, self.wanted[number])
        off = SIZE_OFF + SIZE_SHARE * want
        if math.fabs(size - want) < off:
            return RIGHT
        slips = [want + 10.0, want - 10.0, want + 5.0, 2.0 * want, 0.5 * want, want * self.scale]
        slips += [want / self.scale] if self.scale > 0.0 else []
        slips += [geometry.distance(ORIGIN, step) for other, step in self.wanted.items() if other != number]
        return ONE_SLIP if any(math.fabs(size - one) < off for one in slips if one > 5.0) else UNLIKE

    def cost(self, drawn: Mapping[int, Point], before: Callable[[int], int | None]) -> float:
        """What the slips of arrows cost: ``drawn`` by number; ``before``: the arrow from which an angle is measured."""
        sizes, turns, shares, pieces, mirrored = [], [], [], [], []
        for number, step in drawn.items():
            size = geometry.distance(ORIGIN, step)
            sizes.append(self._size_cost(number, size))
            want = geometry.distance(ORIGIN, self.wanted[number])
            shares.append(size / max(1.0, want))
            pieces.append(size - want)
            last = before(number)
            way, right_way = geometry.direction(ORIGIN, step), geometry.direction(ORIGIN, self.wanted[number])
            if last is None:
                turns.append(RIGHT if math.fabs(wrap(way - right_way)) < FIRST_OFF else 1.5)
                continue
            if last != ZERO and last not in drawn:
                turns.append(0.6)
                continue
            right = wrap(right_way - (self.zero if last == ZERO else geometry.direction(ORIGIN, self.wanted[last])))
            turn = wrap(way - (self.zero if last == ZERO else geometry.direction(ORIGIN, drawn[last])))
            slips = (math.copysign(180.0 - math.fabs(right), right), -right, right + 180.0, right + 10.0, right - 10.0)
            if math.fabs(wrap(turn - right)) < TURN_OFF:
                turns.append(RIGHT)
            else:
                turns.append(ONE_SLIP if any(math.fabs(wrap(turn - one)) < TURN_OFF for one in slips) else UNLIKE)
            mirrored.append(math.fabs(wrap(turn + right)) < TURN_OFF)
        whole, turned = math.fsum(sizes), math.fsum(turns)
        if len(shares) > 1 and max(shares) / min(shares) < 1.06 and any(
            math.fabs(shares[0] / one - 1.0) < 0.05 for one in (0.5, 2.0, self.scale or 1.0)
        ):
            whole = min(1.0, whole)
        if len(pieces) > 1 and max(pieces) - min(pieces) < 2.0 and 2.0 < pieces[0] < 12.0:
            whole = min(1.0, whole)
        if len(mirrored) > 1 and all(mirrored):
            turned = min(1.0, turned)
        if self._swapped(drawn, sizes):
            whole = min(1.0, whole)
        return whole + turned

    def _swapped(self, drawn: Mapping[int, Point], costs: Sequence[float]) -> bool:
        """Whether two arrows have one another's lengths, and the others their own."""
        off = [number for number, cost in zip(drawn, costs, strict=True) if cost != RIGHT]
        if len(off) != 2:
            return False
        return all(
            math.fabs(geometry.distance(ORIGIN, drawn[one]) - geometry.distance(ORIGIN, self.wanted[other])) < SIZE_OFF
            for one, other in (off, reversed(off))
        )

    def names(self, shape: Shape) -> list[NamedShape]:
        """A shape's possible names, the cheapest first."""
        method = self.drawing.construction.method
        if method == TIP_TO_TAIL:
            found = list(self._of_chain(shape))
        elif method == PARALLELOGRAM:
            found = list(self._of_parallelograms(shape))
        else:
            found = [NamedShape(shape, shape.points, {name: name for name in shape.points}, 0.0)]
        return sorted(found, key=lambda one: one.cost)

    def _of_parallelograms(self, shape: Shape) -> Iterator[NamedShape]:
        first, end = self.order[0], self.drawing.construction.end
        pair = set(self.order[:2])
        ends = ("A", "B", "C") if shape.kind == "two" else ("A", "B")
        whole = len(self.order) == 2
        for chosen in permutations(self.order, len(ends)):
            drawn = {number: shape.points[key].minus(self.origin) for number, key in zip(chosen, ends, strict=True)}
            in_order = set(chosen[:2]) == pair
            cost = self.cost(drawn, lambda number: None if number == first else first)
            cost += 0.0 if in_order else OTHER_PAIR
            keys = {key: tip_of(number) for number, key in zip(chosen, ends, strict=True)}
            if shape.kind == "two":
                keys |= {"R": DIAGONAL, "N": end}
            elif whole:
                keys |= {"R": end}
            else:
                cost += ONE_LEFT_OUT if in_order else 0.0
                keys |= {"R": DIAGONAL if in_order else end}
            yield NamedShape(shape, {keys[key]: shape.points[key] for key in keys}, keys, cost)

    def _of_chain(self, shape: Shape) -> Iterator[NamedShape]:
        count = len(shape.points)
        ways: Sequence[Sequence[str]] = ([str(k + 1) for k in range(count)],
                                         [str(k + 1) for k in reversed(range(count))])  # fmt: skip
        chosen = [self.order] if count == len(self.order) else [
            tuple(n for n in self.order if n != out) for out in self.order
        ] if count == len(self.order) - 1 else []
        names = (*self.chain[: count - 1], self.drawing.construction.end)
        for way in ways[:1] if shape.kind == BEGUN_AT_START else ways:
            chain = [self.origin, *(shape.points[key] for key in way)]
            costs = []
            for numbers in chosen:
                drawn = {n: chain[k + 1].minus(chain[k]) for k, n in enumerate(numbers)}
                if shape.kind == BEGUN_AT_START:
                    drawn[numbers[-1]] = chain[-1].minus(self.origin)
                last = {n: numbers[k - 1] if k else None for k, n in enumerate(numbers)}
                more = (0.0 if numbers == self.order else ONE_LEFT_OUT) + (shape.kind == BEGUN_AT_START) * ONE_SLIP
                costs.append(self.cost(drawn, last.__getitem__) + more)
            if costs:
                keys = dict(zip(way, names, strict=True))
                yield NamedShape(shape, {keys[key]: shape.points[key] for key in keys}, keys, min(costs))

    def on_axes(self, tips: Sequence[Tip], shape_of: Callable[[Sequence[Tip]], Shape]) -> list[NamedShape]:
        """Arrows and result among tips on the axes: the choices that count most, less their slips."""
        by_ray: dict[int, list[Tip]] = {}
        for tip in sorted(tips, key=lambda one: -one.score):
            if tip.score > 4.0 and len(by_ray.setdefault(tip.index, [])) < 3:
                by_ray[tip.index].append(tip)
        offered = sorted((tip for some in by_ray.values() for tip in some), key=lambda one: -one.score)[:10]
        found = sorted(self._chosen(offered), key=lambda one: -one[0])[:MOST_CHOSEN]
        shapes: dict[frozenset[tuple[int, Point]], Shape] = {}
        named = []
        for _, cost, chosen in found:
            key = frozenset((tip.index, tip.place) for tip in chosen)
            shape = shapes[key] if key in shapes else shapes.setdefault(key, shape_of(chosen))
            names = [*(tip_of(number) for number in self.order), self.drawing.construction.end][: len(chosen)]
            points = {name: tip.place for name, tip in zip(names, chosen, strict=True)}
            keys: dict[str, str] = {}
            for name, place in points.items():
                keys[next(k for k, at in shape.points.items() if at == place and k not in keys)] = name
            named.append(NamedShape(shape, points, keys, cost))
        return named

    def _chosen(self, offered: Sequence[Tip]) -> Iterator[tuple[float, float, tuple[Tip, ...]]]:
        """Choices of tips for all arrows and the result: what they count, what their slips cost, the tips."""
        for chosen in permutations(offered, len(self.order)):
            rays = {tip.index for tip in chosen}
            if len(rays) < len(chosen) or any(_same_place(*pair) for pair in combinations(chosen, 2)):
                continue
            drawn = {n: tip.place.minus(self.origin) for tip, n in zip(chosen, self.order, strict=True)}
            cost = self.cost(drawn, lambda _: ZERO)
            if cost > 6.0:
                continue
            total = self.origin
            for step in drawn.values():
                total = total.plus(step)
            base = math.fsum(tip.score for tip in chosen)
            yield base - SLIP_ON_AXES * (cost + 2.0), cost + 2.0, chosen
            for result in offered:
                if result.index not in rays and not any(_same_place(result, tip) for tip in chosen):
                    miss = min(3.0, max(0.0, geometry.distance(result.place, total) - 2.0) / 4.0)
                    yield base + result.score - SLIP_ON_AXES * (cost + miss), cost + miss, (*chosen, result)


def _same_place(one: Tip, other: Tip) -> bool:
    """Whether two tips are of one arrow, which was found as two strokes."""
    return geometry.distance(one.place, other.place) < ONE_PLACE
