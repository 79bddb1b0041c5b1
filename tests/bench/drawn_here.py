"""How lines drawn on the screen are judged: seeded problems of all calculators and methods, drawn with a hand's slips.

The lines are those of pycore's own constructions carried out with slips of 0.5 mm and 0.5 degrees (0.3 for a parallel),
ends 0.1 mm off, dashed lines too long or too short and drawn from either end. They go to the request ``draw`` in
CPython: no pointer moves here (tests/browser/test_draw_here.py has a hand that presses and drags). Every other problem
has one usual mistake in one line; an arrow that is asked for is given its name. Lines that meet far beyond the paper
cannot be drawn, and are no drawing. ``PARALLELS`` counts parallelograms by set squares and by compasses as well: arcs
are drawn about the corner, from 8 to 20 degrees to either side, with swapped lengths among the mistakes.
"""

import json
import math
import random
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from pycore import api, geometry
from pycore.calculators.registry import CALCULATORS
from pycore.constructions import deviations
from pycore.constructions.methods import BY_COMPASSES, BY_SET_SQUARES, PARALLELOGRAM
from pycore.constructions.moves import (
    ConstructionError,
    CrossArcs,
    Figure,
    SetOff,
    TurnAngle,
    carry_out,
    deviations_of,
)
from pycore.geometry import Point
from pycore.practice.arcs_here import WantedArc, wanted_arcs
from pycore.practice.codes import TIERS, Code
from pycore.practice.lines_here import WantedLine, wanted_lines
from pycore.sums.drawn_here import DrawingTask, drawing_task

COUNT = 400
SEED = 4
PENCIL = 0.1
SHORTEST = 20.0
"""Millimetres that an arrow must have for a mistake in it to show."""
BEYOND = 1000.0
"""Millimetres from the corner of the paper, farther than any table."""
CLEAR = 8.0
"""Degrees by which a mistaken direction must differ from the right one."""
Deviations = dict[str, float]
PARALLELS = BY_SET_SQUARES, BY_COMPASSES


@dataclass(frozen=True)
class Mistake:
    """A usual mistake: its line, what it is called, and the deviation that makes it."""

    line: WantedLine | WantedArc
    name: str
    key: str
    size: float


def problems(count: int, seed: int, parallels: str = "") -> Iterator[tuple[str, dict[str, str], random.Random]]:
    """Problems of practice codes, each calculator in turn, each by one of its methods; parallelograms alone, drawn by
    one instrument for parallels, if one is given."""
    rng, slugs = random.Random(seed), list(CALCULATORS)
    for number in range(count):
        page = CALCULATORS[slugs[number % len(slugs)]]
        methods = next(field.options for field in page.fields if field.name == "method")
        code = Code(page.topic, rng.choice(TIERS), "any", seed=rng.randrange(30_000), number=1)
        form = page.practice().form_of(code)
        if not parallels:
            yield page.slug, {**form, "method": rng.choice(methods).value}, rng
        elif PARALLELOGRAM in [option.value for option in methods]:
            yield page.slug, {**form, "method": PARALLELOGRAM, "parallels": parallels}, rng


def mistakes(task: DrawingTask) -> list[Mistake]:
    """Every mistake that a drawing allows: a centimetre more or less, the other scale, the wrong way, ten degrees."""
    drawing, moves = task.own.drawing, task.own.drawing.construction.moves
    turns = {move.line: (index, move.turn) for index, move in enumerate(moves) if isinstance(move, TurnAngle)}
    found = _mistaken_arcs(task)
    for line in wanted_lines(drawing.construction):
        move = moves[line.index]
        if not isinstance(move, SetOff) or move.role != "given" or not isinstance(move.length, float):
            continue
        if move.length * drawing.factor < SHORTEST:
            continue
        found += [Mistake(line, f"centimetre {sign:+}", f"{line.index}:length", 10.0 * sign / drawing.factor)
                  for sign in (1, -1)]  # fmt: skip
        index, turn = turns.get(move.line, (0, 0.0))
        if not isinstance(turn, float) or abs(turn) in (0.0, 180.0):
            continue
        other = math.copysign(180.0 - abs(turn), turn) - turn
        ways = {"wrong way": -2.0 * turn, "other scale": other, "tens": math.copysign(10.0, turn)}
        found += [Mistake(line, name, f"{index}:angle", size) for name, size in ways.items()
                  if abs((size + 180.0) % 360.0 - 180.0) > CLEAR]  # fmt: skip
    return found


def _arcs_of(task: DrawingTask) -> list[tuple[WantedArc, str]]:
    """The arcs that a construction draws, each with the deviation of its radius."""
    drawing = task.own.drawing
    arcs = wanted_arcs(drawing.construction)
    found = []
    for arc in arcs:
        move = drawing.construction.moves[arc.index]
        if isinstance(move, CrossArcs):
            kind = deviations.LENGTH if arc.centre == move.first else deviations.SECOND_LENGTH
            found.append((arc, f"{arc.index}:{kind}"))
    return found


def _mistaken_arcs(task: DrawingTask) -> list[Mistake]:
    """A centimetre more or less between the compasses, and both lengths swapped."""
    drawing = task.own.drawing
    points = drawing.construction.figure.points
    found: list[Mistake] = []
    for arc, key in _arcs_of(task):
        own, right = (geometry.distance(points[arc.opposite], points[name]) for name in (arc.centre, arc.other))
        sizes = {"arc centimetre +1": 10.0, "arc centimetre -1": -10.0, "own length": (own - right) * drawing.factor}
        found += [Mistake(arc, name, key, size / drawing.factor) for name, size in sizes.items()
                  if abs(size) >= 10.0 and right * drawing.factor > SHORTEST]  # fmt: skip
    return found


def _arc_row(task: DrawingTask, figure: Figure, arc: WantedArc, rng: random.Random) -> list[Any]:
    """An arc about its corner, with the slips that its figure has."""
    drawing = task.own.drawing
    centre, corner = (task.origin.plus(drawing.picture.place(figure.points[name], drawing.factor))
                      for name in (arc.centre, arc.corner))  # fmt: skip
    before, after = rng.uniform(8.0, 20.0), rng.uniform(8.0, 20.0)
    off = Point(rng.gauss(0.0, PENCIL), rng.gauss(0.0, PENCIL))
    start = centre.moved(geometry.distance(centre, corner), geometry.direction(centre, corner) - before).plus(off)
    middle, high = centre.plus(off), task.page.height
    return ["arc", middle.x, high - middle.y, start.x, high - start.y, before + after]


def lines_of(
    task: DrawingTask, rng: random.Random, more: Deviations
) -> tuple[list[list[Any]], list[WantedLine | WantedArc]]:
    """The lines of one drawing, with a hand's slips; raises ConstructionError where lines do not meet."""
    drawing = task.own.drawing
    moves = drawing.construction.moves
    slips = {key: rng.gauss(0.0, 1.0) * drawing.hand.deviation(key.split(":")[1], drawing.factor)
             for key in deviations_of(moves)}  # fmt: skip
    figure = carry_out(moves, {key: size + more.get(key, 0.0) for key, size in slips.items()})
    lines: list[list[Any]] = []
    wanted: list[WantedLine | WantedArc] = []
    arcs = {arc.index: [one for one, _ in _arcs_of(task) if one.index == arc.index] for arc, _ in _arcs_of(task)}
    for line in wanted_lines(drawing.construction):
        for index in [index for index in arcs if index < line.index]:
            for arc in arcs.pop(index):
                lines.append(_arc_row(task, figure, arc, rng))
                wanted.append(arc)
        ends = [task.origin.plus(drawing.picture.place(figure.points[name], drawing.factor)) for name in line.ends]
        length = geometry.distance(*ends)
        if length < 1.0:
            continue
        if not line.arrow:
            ends[1] = ends[0].plus(ends[1].minus(ends[0]).times((length + rng.uniform(-2.0, 8.0)) / length))
            ends = ends[::-1] if rng.random() < 0.3 else ends
        if max(abs(part) for end in ends for part in end) > BEYOND:
            raise ConstructionError(f"{line.ends} leaves the paper")
        places = [(end.x + rng.gauss(0.0, PENCIL), task.page.height - end.y + rng.gauss(0.0, PENCIL)) for end in ends]
        lines.append(["arrow" if line.arrow else "dashed", *places[0], *places[1], ""])
        wanted.append(line)
    return lines, wanted


def judged(
    slug: str, form: dict[str, str], lines: list[list[Any]], wanted: list[WantedLine | WantedArc]
) -> dict[str, Any]:
    """The verdict, each arrow that is asked for given its name."""
    for _ in lines:
        text, _data = api.handle(json.dumps({"do": "draw", "page": slug, "form": form, "lines": lines}))
        reply: dict[str, Any] = json.loads(text)
        assert reply["ok"], reply
        if not reply["ask"]:
            return reply
        lines[reply["ask"][0]][5] = wanted[reply["ask"][0]].key
    return reply


def count(problems_of: int = COUNT, seed: int = SEED, parallels: str = "") -> Counter[str]:
    """How many right drawings have every line accepted, one to look at, one called wrong; how many lines of them are
    accepted; how many mistakes are found at their line."""
    counts: Counter[str] = Counter()
    for number, (slug, form, rng) in enumerate(problems(problems_of, seed, parallels)):
        task = drawing_task(CALCULATORS[slug], form)
        # The other half in the next round, so that no calculator has only right drawings, or only mistaken ones.
        mistake = rng.choice(mistakes(task) or [None]) if (number + number // len(CALCULATORS)) % 2 else None
        try:
            lines, wanted = lines_of(task, rng, {mistake.key: mistake.size} if mistake else {})
        except ConstructionError:
            counts["no drawing"] += 1
            continue
        reply = judged(slug, form, lines, wanted)
        bands = [band for _, band in reply["bands"]]
        if mistake:
            first = next((stroke for stroke, band in reply["bands"] if band == "wrong"), None)
            counts["mistakes"] += 1
            counts["found at their line"] += first == wanted.index(mistake.line)
            continue
        worst = "wrong" if "wrong" in bands else "look" if "look" in bands else "accept"
        counts[f"right: {worst}"] += 1
        counts["lines"] += len(bands)
        counts["lines accepted"] += bands.count("accept")
        counts["lines called wrong"] += bands.count("wrong")
    return counts


if __name__ == "__main__":
    for instrument in ("", *PARALLELS):
        print(instrument or "by each problem's own method", dict(count(parallels=instrument)))
