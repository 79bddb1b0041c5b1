"""How well drawings are read from photographs: made up, by numbers that no threshold was set by, counted by method.

`python -m bench.pencil [count] [first number] [folder]` with tests/ and the project on the path; `build.py bench
pencil` runs it alone. What the page's script finds is kept in the folder (bench/pencil_replies.py), so that another
count with other thresholds reads no photograph again.
"""

import json
import statistics
import sys
import tempfile
import time
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from bench.pencil_replies import Reply, as_kept, collect, ground_of, kept, projection_of
from pencilled import METHODS, NEUTRAL, REPORTED, Pencilled, pencilled

from pycore import geometry
from pycore.geometry import Point
from pycore.practice.photograph import measure_read
from pycore.practice.stroke_reading import StrokeReading, guides_of, needed_points, read_strokes
from pycore.practice.stroke_sums import drawn_feet
from pycore.practice.strokes import PencilStroke, StrokeSheet, stroke_of
from pycore.projection import Projection
from pycore.sums.strokes import StrokesTask, strokes_task

COUNT = 400
WRONG, NEAR, FEW = 1.5, 1.0, 2
"""Millimetres from which a point is wrong, and within which it is near; presses that are few."""
ALL_SURE = {"tip-to-tail": 80.0, "parallelogram": 65.0, "components": 65.0}
CODES, MARKS, FEW_PRESSES, SILENT, WITHIN, SAME_VERDICT = 98.0, 98.0, 80.0, 0.3, 95.0, 97.0
"""Goals, per cent."""


@dataclass
class Tally:
    """What is counted of the sheets of one method."""

    sheets: int = 0
    codes: int = 0
    marks: int = 0
    found_method: int = 0
    nothing_asked: int = 0
    asked: int = 0
    few_presses: int = 0
    sure_points: int = 0
    silent: int = 0
    near: int = 0
    verdicts: int = 0
    same: int = 0
    misled: int = 0
    right_called_wrong: int = 0
    milliseconds: list[float] = field(default_factory=list)
    worst: list[str] = field(default_factory=list)


def strokes_in(found: Sequence[Mapping[str, Any]]) -> list[PencilStroke]:
    """The strokes that the page's script found."""
    made = (
        stroke_of(Point(q["x1"], q["y1"]), Point(q["x2"], q["y2"]), q["dark"], q["runs"], q["blind"], q["heads"],
                  q.get("beside", ()))
        for q in found
    )  # fmt: skip
    return [stroke for stroke in made if stroke]


@dataclass(frozen=True)
class Read:
    """The reading of a photograph's strokes, where its perpendiculars end, its projection, the processor's
    milliseconds."""

    reading: StrokeReading
    feet: Mapping[str, Point]
    projection: Projection
    milliseconds: float


def reading_of(reply: Reply, task: StrokesTask) -> Read | None:
    """What is read of a photograph's strokes; None where no marks were
    found. Raises ValueError where the script was told of another paper than today's."""
    projection = projection_of(task, reply.size, reply.marks)
    if projection is None:
        return None
    if as_kept(ground_of(task, projection)) != reply.ground:
        raise ValueError("the sheet or its projection has changed: read the photographs again, into an empty folder")
    start = time.process_time()
    sheet = StrokeSheet(strokes_in(reply.strokes), task.photo.origin, guides_of(task.drawings), task.box)
    reading = read_strokes(sheet, task.drawings)
    feet = drawn_feet(sheet, reading.drawing.construction, {point.name: point.place for point in reading.points})
    return Read(reading, feet, projection, reply.milliseconds + 1000.0 * (time.process_time() - start))


def _presses(points: Mapping[str, Point], unsure: set[str], true: Mapping[str, Point], needed: list[str]) -> int:
    """How many presses put a reading right: one for each point that is unsure or wrong, one for what is not drawn."""
    count = 0
    for name in needed:
        if name in true:
            count += name not in points or name in unsure or geometry.distance(points[name], true[name]) > WRONG
        else:
            count += name in points
    return count + any(name not in true and name not in points for name in needed)


def presses(reading: StrokeReading, sheet: Pencilled, true: Mapping[str, Point]) -> int:
    """How many presses an asked reading needs; of whole readings the best is chosen with one."""
    needed = needed_points(sheet.want.drawing)
    if reading.why:
        choices = [1 + _presses(one.points, set(), true, needed) for one in reading.readings
                   if one.method == sheet.method]  # fmt: skip
        return min(choices, default=99)
    if reading.method != sheet.method:
        return 99
    unsure = {point.name for point in reading.points if not point.sure}
    return _presses({point.name: point.place for point in reading.points}, unsure, true, needed)


def _tallied(tally: Tally, seed: int, sheet: Pencilled, read: Read) -> None:
    reading, projection = read.reading, read.projection
    true = {name: Point(*place) for name, place in sheet.points.items()}
    needed = needed_points(sheet.want.drawing)
    tally.found_method += reading.method == sheet.method
    sure = [p for p in reading.points if p.sure and p.name in needed] if not reading.why else []
    for point in sure:
        right = reading.method == sheet.method and point.name in true
        off = geometry.distance(point.place, true[point.name]) if right else 99.0
        tally.sure_points += 1
        tally.near += off <= NEAR
        if off > WRONG:
            tally.silent += 1
            tally.worst.append(f"{seed} {point.name} {off:.1f}")
    if not reading.sure:
        tally.asked += 1
        tally.few_presses += presses(reading, sheet, true) <= FEW
        return
    tally.nothing_asked += 1
    if reading.method != sheet.method:
        return
    places = {point.name: point.place for point in reading.points}
    sigmas = {p.name: p.sigma for p in reading.points}
    by_reading = measure_read(reading.drawing, projection, places, sigmas, read.feet)
    guide = {name: place for name, place in places.items() if name not in needed and name not in true}
    exact, feet = dict.fromkeys((*guide, *true), 0.0), {name: Point(*place) for name, place in sheet.feet.items()}
    by_truth = measure_read(sheet.want.drawing, projection, {**guide, **true}, exact, feet)
    tally.verdicts += 1
    tally.same += by_reading.band == by_truth.band
    tally.misled += by_reading.band not in (by_truth.band, "look")
    tally.right_called_wrong += not sheet.mistake and by_reading.band == "wrong"


def judged(folder: Path, first: int, number: int) -> dict[str, Tally]:
    """What the kept replies to so many photographs give; counted by the method by which they were drawn."""
    tallies = {method: Tally() for method in METHODS}
    for seed in range(first, first + number):
        reply, sheet = kept(folder, seed), pencilled(seed)
        if reply is None:
            raise ValueError(f"{folder} has no reply to photograph {seed}")
        tally = tallies[sheet.method]
        tally.sheets += 1
        tally.codes += len(reply.codes) == 1
        read = reading_of(reply, strokes_task(NEUTRAL, sheet.form))
        if read is not None:
            tally.marks += 1
            tally.milliseconds.append(read.milliseconds)
            _tallied(tally, seed, sheet, read)
    return tallies


def count(number: int = COUNT, first: int = REPORTED, folder: str = "") -> dict[str, Tally]:
    """Read so many photographs, and judge what was read; ``folder``: where the script's replies are kept."""
    with tempfile.TemporaryDirectory() as temporary:
        place = Path(folder or temporary)
        collect(place, first, number)
        return judged(place, first, number)


def _share(part: int, whole: int) -> float:
    return round(100.0 * part / whole, 1) if whole else float("nan")


def figures(tally: Tally, method: str) -> tuple[dict[str, object], tuple[str, ...]]:
    """What is shown of one method, each with its goal, and the names of what misses it."""
    share = {
        "codes read %": (_share(tally.codes, tally.sheets), CODES, 1),
        "marks found %": (_share(tally.marks, tally.sheets), MARKS, 1),
        "nothing asked %": (_share(tally.nothing_asked, tally.sheets), ALL_SURE[method], 1),
        "asked with two presses or fewer %": (_share(tally.few_presses, tally.asked), FEW_PRESSES, 1),
        "silently wrong points %": (_share(tally.silent, tally.sure_points), SILENT, -1),
        "points within 1 mm %": (_share(tally.near, tally.sure_points), WITHIN, 1),
        "same verdict %": (_share(tally.same, tally.verdicts), SAME_VERDICT, 1),
        "right called wrong": (float(tally.right_called_wrong), 0.0, -1),
    }
    shown: dict[str, object] = {"sheets": tally.sheets, "method found": tally.found_method}
    shown |= {name: f"{value:g} (goal {goal:g})" for name, (value, goal, _) in share.items()}
    shown |= {"verdicts": tally.verdicts, "other verdict and not look": tally.misled, "sure points": tally.sure_points,
              "wrong": "; ".join(tally.worst) or "none",
              "median ms": round(statistics.median(tally.milliseconds or [0.0]))}  # fmt: skip
    missed = tuple(name for name, (value, goal, sense) in share.items() if (value - goal) * sense < 0.0)
    return shown, missed


if __name__ == "__main__":
    arguments = [*sys.argv[1:], *[""] * 3]
    found = count(int(arguments[0] or COUNT), int(arguments[1] or REPORTED), arguments[2])
    for name, counted in found.items():
        print(json.dumps([name, *figures(counted, name)]))
    print("median ms", round(statistics.median(ms for one in found.values() for ms in one.milliseconds)))
