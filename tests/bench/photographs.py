"""How often the marks are found in made-up photographs, and how near lengths and angles come: counted under Node.

`python -m bench.photographs [count]` with tests/ and the project on the path prints two lines, of today's marks and of
those before; `build.py bench` runs it.
"""

import json
import math
import subprocess
import sys
import tempfile
from pathlib import Path

import numpy as np
from photographs import Taken, taken
from PIL import Image

from pycore.calculators.registry import CALCULATORS
from pycore.geometry import Point
from pycore.practice.photograph import Photo, measure, measured_by
from pycore.sums.photograph import photo_task

COUNT = 200
MOST = 2000
SCRIPT = Path(__file__).parents[2] / "site" / "js" / "photo-marks.js"
RUN = """
const { findMarks } = await import(process.argv[1]);
const { readFileSync } = await import("node:fs");
const { width, height, editions } = JSON.parse(process.argv[2]);
const data = new Uint8ClampedArray(readFileSync(process.argv[3]));
console.log(JSON.stringify(findMarks({ width, height, data }, editions)));
"""
PAPERS = ("A4", "A4", "A4", "letter", "A5", "A3")


def found_in(shot: Taken, folder: Path) -> list[list[float] | None] | None:
    """The marks that the page's own script finds, in the photograph's pixels; None where it finds none, or takes the
    sheet for one of the other edition."""
    share = min(1.0, MOST / max(shot.picture.size))
    size = tuple(round(side * share) for side in shot.picture.size)
    small = shot.picture.resize(size, Image.Resampling.BOX)
    pixels = folder / "pixels"
    pixels.write_bytes(small.convert("RGBA").tobytes())
    asked = json.dumps({"width": size[0], "height": size[1], "editions": shot.editions})
    command = ["node", "--input-type=module", "-e", RUN, SCRIPT.as_uri(), asked, str(pixels)]
    done = subprocess.run(command, capture_output=True, text=True, timeout=120, check=True)
    found = json.loads(done.stdout)
    if not found["marks"] or found["edition"] != int(shot.before):
        return None
    return [mark and [mark["x"] / share, mark["y"] / share] for mark in found["marks"]]


def far_off(shot: Taken, marks: list[list[float] | None]) -> float:
    """How far in mm the worst mark is from where it is."""
    offs = []
    for place, seen in zip(shot.marks, marks, strict=True):
        u, v = shot.camera.seen(*place)
        beside = shot.camera.seen(place[0] + 1.0, place[1])
        offs.append(math.dist(seen, (u, v)) / math.dist(beside, (u, v)) if seen else 0.0)
    return max(offs)


def off_lines(shot: Taken, marks: list[list[float] | None]) -> list[tuple[float, float]]:
    """By how much each line's length (mm) and direction (degrees) is mismeasured from these marks and true taps."""
    want = photo_task(CALCULATORS["neutral-current"], shot.form)
    photo = Photo(*map(float, shot.picture.size), 1.0)
    seen = [Point(*mark) if mark else None for mark in marks]
    found = measured_by(photo, shot.marks, seen, by_hand=False)
    taps = {name: Point(*shot.camera.seen(*place)) for name, place in shot.points.items()}
    lines = measure(want.drawing, found, photo, taps, sheet=True).lines
    return [(math.fabs(line.length - line.expected), math.fabs(line.off)) for line in lines]


def count(number: int = COUNT, *, before: bool = False) -> dict[str, float]:
    """Found, not found and wrong (over 0.6 mm) among so many fair photographs; the 95 % points of lines on A4.
    ``before``: of sheets with the marks that sheets had before."""
    told = {"photographs": number, "found": 0, "none": 0, "wrong": 0}
    lines: list[tuple[float, float]] = []
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(number):
            shot = taken(seed, {"paper": PAPERS[seed % len(PAPERS)]}, before=before)
            marks = found_in(shot, Path(folder))
            if marks is None:
                told["none"] += 1
                continue
            told["wrong" if far_off(shot, marks) > 0.6 else "found"] += 1
            if shot.form["paper"] == "A4":
                lines += off_lines(shot, marks)
    lengths, angles = (float(np.quantile([line[k] for line in lines], 0.95)) for k in (0, 1))
    return {**told, "length off, 95 %": round(lengths, 3), "angle off, 95 %": round(angles, 3)}


if __name__ == "__main__":
    for old in (False, True):
        print(json.dumps(count(int(sys.argv[1]) if len(sys.argv) > 1 else COUNT, before=old)))
