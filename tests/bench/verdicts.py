"""How well a reading of points could agree with their true places at best: verdicts of drawings whose points are moved
at random by so many millimetres, against those of the points themselves. No photograph is read.

`python -m bench.verdicts [sheets]` with tests/ and the project on the path.
"""

import sys
from collections import Counter

import numpy as np
from pencilled import Pencilled, pencilled

from pycore.geometry import Point
from pycore.practice.photograph import Photo, PhotoUnusableError, measure_read, measured_by
from pycore.practice.stroke_reading import CROSSING
from pycore.projection import Projection

SHEETS, TRIES, PER_MM = 60, 5, 8.0
ERRORS = (0.05, 0.1, 0.2, 0.3)
"""Standard errors of a point across and along, mm."""


def _from_above(sheet: Pencilled) -> Projection:
    seen = [Point(PER_MM * mark.x, -PER_MM * mark.y) for mark in sheet.want.marks]
    low = min(place.y for place in seen)
    photo = Photo(2400.0, 1700.0, 1.2)
    return measured_by(photo, sheet.want.marks, [Point(one.x, one.y - low) for one in seen], by_hand=False)


def verdicts(sheets: int = SHEETS) -> dict[tuple[str, float], Counter[tuple[str, str]]]:
    """By method and error: how often each pair of a true verdict and one of moved points came."""
    random, found = np.random.default_rng(5), dict[tuple[str, float], Counter[tuple[str, str]]]()
    for seed in range(sheets):
        sheet = pencilled(seed)
        drawing, projection = sheet.want.drawing, _from_above(sheet)
        true, feet = ({name: Point(*place) for name, place in some.items()} for some in (sheet.points, sheet.feet))
        try:
            right = measure_read(drawing, projection, true, dict.fromkeys(true, 0.0), feet).band
        except PhotoUnusableError:
            continue
        for error in ERRORS:
            counted = found.setdefault((sheet.method, error), Counter())
            for _ in range(TRIES):
                moved = {name: place if name == "O" else place.plus(Point(*random.normal(0.0, error, 2)))
                         for name, place in true.items()}  # fmt: skip
                sigmas = dict.fromkeys(true, max(error, CROSSING))
                counted[right, measure_read(drawing, projection, moved, sigmas, feet).band] += 1
    return found


if __name__ == "__main__":
    for (method, error), counted in sorted(verdicts(int(sys.argv[1]) if len(sys.argv) > 1 else SHEETS).items()):
        whole, same = counted.total(), sum(count for (one, other), count in counted.items() if one == other)
        turned = counted["accept", "wrong"] + counted["wrong", "accept"]
        print(f"{method}: {error} mm: {100 * same / whole:.0f} % the same, {turned} of {whole} turned over")
