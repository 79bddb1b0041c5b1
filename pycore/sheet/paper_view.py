"""The first picture of a lesson on the learner's own paper: where its common point, or its start, goes."""

from pycore.drawing import WHOLE, Group, Line, Page, Shape
from pycore.geometry import Box, Point
from pycore.sheet.laying import HEIGHT, WIDTH
from pycore.sheet.lesson_view import READING
from pycore.sheet.lettered import text
from pycore.sheet.own_paper import common_point, distances
from pycore.sheet.plan import Plan
from pycore.sheet.skeleton import start_cross

MARGIN, BESIDE = 4.0, 1.8
DASH = (2.6, 1.0)


def paper_page(plan: Plan, mark: str, title: str) -> Page:
    """Return the whole paper in the lesson's view, 120 by 98.4 units, with its point and how far that is from the left
    and from the lower edge. ``mark``: the decimal sign."""
    layout = plan.layout
    share = min((WIDTH - 2 * MARGIN) / layout.width, (HEIGHT - 2 * MARGIN) / layout.height)
    width, height = share * layout.width, share * layout.height
    corner = Point((WIDTH - width) / 2, (HEIGHT - height) / 2)
    paper = Box(corner.x, corner.y, corner.x + width, corner.y + height)
    at = corner.plus(common_point(plan).times(share))
    across, upward = distances(plan, mark)
    # Each distance stands at its own line, so that no one takes one for the other.
    ways = (
        Line(Point(paper.left, at.y), at, 0.4, "accent", DASH),
        Line(Point(at.x, paper.bottom), at, 0.4, "accent", DASH),
        text(across, Point((paper.left + at.x) / 2, at.y + BESIDE), READING, "middle", "accent"),
        text(upward, Point(at.x + BESIDE, (paper.bottom + at.y - READING) / 2), READING, ink="accent"),
    )  # fmt: skip
    whole = (
        Group((Shape(paper.corners, 0.5, "ink"),), name="frame"), Group(ways, name="edges"),
        Group(start_cross(at), name="zero"),
    )  # fmt: skip
    return Page(WIDTH, HEIGHT, (Group(whole, name=WHOLE),), title, title)
