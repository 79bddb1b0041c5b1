"""Further tools of a lesson: a protractor's body, set square, guiding ruler."""

from collections.abc import Iterable

from pycore import geometry
from pycore.drawing import Group, Item, Line, Shape
from pycore.sheet.instruments import BASE, RADIUS, WINDOW, Pose

SQUARE_SIDE = 80.0


def body(pose: Pose) -> Shape:
    """The body of a half-circle protractor, its window left open so that the drawing shows."""
    outer = [pose.place(RADIUS, degrees) for degrees in range(0, 181, 3)]
    inner = [pose.place(WINDOW, degrees) for degrees in range(180, -1, -3)]
    foot = [pose.xy(-RADIUS, 0.0), pose.xy(-RADIUS, -BASE), pose.xy(RADIUS, -BASE), pose.xy(RADIUS, 0.0)]
    corners = (*outer, *foot, pose.xy(WINDOW, 0.0), *inner)
    return Shape(corners, 0.0, "accent", "tint")


def square(pose: Pose, fill: str | None, dash: tuple[float, ...]) -> Group:
    """A set square with its long edge along the pose's direction; dashed where it lay before."""
    corners = (pose.xy(-10.0, 0.0), pose.xy(SQUARE_SIDE, 0.0), pose.xy(-10.0, -0.6 * SQUARE_SIDE))
    if fill is None:
        sides = zip(corners, (*corners[1:], corners[0]), strict=True)
        lines = tuple(Line(a, b, 0.25, "accent", dash) for a, b in sides)
        return Group(lines, name="set-square-before")
    shape = Shape(corners, 0.3, "accent", "tint")
    return Group((shape,), name="set-square", instrument="set-square")


def guide(first: Pose, last: Pose) -> Group:
    """The ruler that the square slides along: beside its short edge, from where it was to where it is."""
    a, b = first.xy(-10.0, 8.0), last.xy(-10.0, 8.0)
    c, d = first.xy(-10.0, -0.6 * SQUARE_SIDE), last.xy(-10.0, -0.6 * SQUARE_SIDE)
    ends = max(((p, q) for p in (a, b, c, d) for q in (a, b, c, d)), key=lambda pair: geometry.distance(*pair))
    across = geometry.ORIGIN.moved(6.0 * first.factor / 0.5, first.degrees + 180.0)
    shape = (ends[0], ends[1], ends[1].plus(across), ends[0].plus(across))
    return Group((Shape(shape, 0.25, "accent", None),), name="guide", instrument="ruler")


def flat(items: Iterable[Item]) -> Iterable[Item]:
    """Every item, and those inside groups in place of the groups."""
    for item in items:
        if isinstance(item, Group):
            yield from flat(item.items)
        else:
            yield item
