"""Whether a photograph can be of the sheet that it is measured by, however well four points fit one.

Four points fit every rectangle, and the marks stand at equal shares of the sides on every paper. So the size and shape
of the rings say which paper it is, and where there are none, whether any camera could see this paper so.
"""

import math
from collections.abc import Sequence

from pycore.geometry import Point
from pycore.practice.photograph import Photo, PhotoUnusableError
from pycore.projection import Projection

RING_SMALLEST, RING_LARGEST = 0.82, 1.22
"""By how much the rings of a photograph may differ from those of the sheet (median of all rings). Of two paper sizes
the next is 1.41 times as large; blur makes small rings thicker."""
EDGE = 0.002
"""A ring nearer than this share of the longer side to the edge of the photo is at the edge."""
FOCAL_LENGTHS = (0.45, 0.55, 0.65, 0.75, 0.85, 1.0, 1.2, 1.5, 2.0, 3.0, 6.0, 40.0)
"""Of cameras, in longer sides of the photo. The last is a copier, or a photo that a program has made flat."""
STRETCHED, SKEWED = 0.16, 0.16
"""By how much a paper's sides may seem stretched against each other, and the cosine of their angle differ from 0."""


def check_hands(photo: Photo, seen: Sequence[Point | None], untouched: Sequence[int]) -> None:
    """Refuse rings that nobody moved, and rings at the edge of the photo: what lies beyond it is not known.

    Raises PhotoUnusableError. A photo of which all corners are corners of the paper is one that was cut to the paper.
    """
    if untouched:
        raise PhotoUnusableError("untouched", tuple(untouched))
    near = EDGE * max(photo.width, photo.height)
    known = [(index, point) for index, point in enumerate(seen) if point is not None]
    at_edge = [
        index for index, (x, y) in known
        if math.fabs(min(x, y, photo.width - x, photo.height - y)) <= near
    ]  # fmt: skip
    if at_edge and len(at_edge) < len(known):
        raise PhotoUnusableError("edge", tuple(at_edge))


def check_rings(
    projection: Projection, places: Sequence[Point], rings: Sequence[tuple[float, float] | None], size: float
) -> None:
    """Refuse rings that are not ``size`` mm across on this sheet, in both directions of the photo.

    ``rings``: how wide and how high each mark's ring is in the photo. Raises PhotoUnusableError.
    """
    across: list[float] = []
    down: list[float] = []
    for place, ring in zip(places, rings, strict=True):
        if ring is None:
            continue
        here = projection.seen(place)
        right, up = (projection.seen(place.plus(step)).minus(here) for step in (Point(1.0, 0.0), Point(0.0, 1.0)))
        across.append(ring[0] / (size * math.hypot(right.x, up.x)))
        down.append(ring[1] / (size * math.hypot(right.y, up.y)))
    if not across:
        return
    if not all(RING_SMALLEST <= sorted(shares)[len(shares) // 2] <= RING_LARGEST for shares in (across, down)):
        raise PhotoUnusableError("other-paper")


def check_view(projection: Projection, photo: Photo) -> None:
    """Refuse a view of the paper that no camera has whose axis goes through the middle of the photo.

    The columns of the projection are the paper's directions as the camera sees them: they must be equally long and at
    right angles for some focal length. Source: Zhang, A flexible new technique for camera calibration (2000), from
    memory. Raises PhotoUnusableError.
    """
    a, b, _, d, e, _, g, h = projection.numbers[:8]
    middle = Point(photo.width / 2, photo.height / 2)
    one = (a - middle.x * g, d - middle.y * g, g)
    other = (b - middle.x * h, e - middle.y * h, h)
    longer = max(photo.width, photo.height)
    if not any(_seen_by(share * longer, one, other) for share in FOCAL_LENGTHS):
        raise PhotoUnusableError("shape")


def _seen_by(focal: float, one: tuple[float, float, float], other: tuple[float, float, float]) -> bool:
    """Whether two directions of the paper are equally long and at right angles for a focal length in pixels."""
    first, second = ((x / focal, y / focal, z) for x, y, z in (one, other))
    lengths = [math.sqrt(math.fsum(part * part for part in parts)) for parts in (first, second)]
    if min(lengths) == 0.0:
        return False
    cosine = math.fsum(p * q for p, q in zip(first, second, strict=True)) / (lengths[0] * lengths[1])
    return max(lengths) / min(lengths) <= 1.0 + STRETCHED and math.fabs(cosine) <= SKEWED
