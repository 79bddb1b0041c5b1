"""Pictures of the explanatory pages: instruments and triangles drawn to scale. Units are mm on paper, 120 wide."""

from pycore import trig
from pycore.drawing import Arc, Arrow, Circle, Group, Item, Line, Page
from pycore.geometry import Point
from pycore.sheet.instruments import BASE, RADIUS, Pose, ruler
from pycore.sheet.lettered import text
from pycore.sheet.tools import protractor_laid

WIDTH = 120.0
NOTE, VALUE = 3.6, 4.2
FACTOR = 0.68


def _words(*items: Item) -> Group:
    return Group(items, name="words")


def half_circle(zero_line: str, edge: str, centre: str, title: str, description: str) -> Page:
    """A half-circle protractor on an angle of 120 degrees, with names for its zero line, edge and centre."""
    height = 81.0
    pose = Pose(Point(WIDTH / 2, 22.0), 0.0, FACTOR)
    laid = protractor_laid(pose, True, 120.0, "")
    foot = pose.at.y - BASE * FACTOR
    end = pose.place(RADIUS + 6.0, 120.0)
    marks = _words(
        text("120°", end.plus(Point(-3.0, 0.5)), VALUE, "end", face="bold"),
        Line(Point(92.0, pose.at.y - 0.6), Point(92.0, 9.5), 0.3, "ink"),
        text(zero_line, Point(92.0, 4.2), NOTE, "middle"),
        Line(Point(28.0, foot - 0.3), Point(28.0, 9.5), 0.3, "ink"),
        text(edge, Point(28.0, 4.2), NOTE, "middle"),
        Line(Point(60.0, pose.at.y - 2.6), Point(60.0, 9.5), 0.3, "ink"),
        text(centre, Point(60.0, 4.2), NOTE, "middle"),
    )
    return Page(WIDTH, height, (*laid.under, *laid.over, *laid.reading, marks), title, description)


def full_circle(title: str, description: str) -> Page:
    """A full-circle protractor on an angle of 240 degrees."""
    pose = Pose(Point(WIDTH / 2, 59.0), 0.0, FACTOR)
    laid = protractor_laid(pose, True, 240.0, "", circle=True)
    end = pose.place(RADIUS + 6.0, 240.0)
    mark = _words(text("240°", end.plus(Point(-3.0, -2.0)), VALUE, "end", face="bold"))
    return Page(WIDTH, 114.0, (*laid.under, *laid.over, *laid.reading, mark), title, description)


def line_on_ruler(captions: tuple[str, str], title: str, description: str) -> Page:
    """A line of 92 mm along a ruler at exact size, and the same line on a scale of 1 cm = 2 A.

    ``captions``: the length beside the arrow, and the current beside the scale.
    """
    left, edge, scale, length = 9.0, 47.0, 13.0, 92.0
    tip = left + length
    amperes: list[Item] = [Line(Point(left, scale), Point(left + 100.0, scale), 0.35, "ink")]
    for centimetre in range(11):
        x = left + 10.0 * centimetre
        amperes.append(Line(Point(x, scale), Point(x, scale - 2.5), 0.35, "ink"))
        amperes.append(text(f"{2 * centimetre}", Point(x, scale - 7.0), 3.0, "middle"))
    amperes.append(text("A", Point(left + 108.0, scale - 7.0), 3.0, "middle"))
    return Page(
        WIDTH,
        64.0,
        (
            ruler(Pose(Point(left, edge), 0.0), 100.0, tint=True),
            Arrow(Point(left, edge + 3.5), Point(tip, edge + 3.5), 0.7, "blue", 5.0),
            Line(Point(tip, edge + 1.5), Point(tip, scale), 0.3, "accent", (2.0, 1.0)),
            Group(tuple(amperes), name="amperes"),
            _words(
                text(captions[0], Point(left + length / 2, edge + 7.0), VALUE, "middle", face="bold"),
                text(captions[1], Point(tip - 1.6, scale + 2.4), VALUE, "end", face="bold"),
            ),
        ),
        title,
        description,
    )


def two_components(
    axis: str, captions: tuple[str, str, tuple[str, str], tuple[str, str]], title: str, description: str
) -> Page:
    """An arrow 30 degrees from one axis (``right`` or ``up``) and its components along both, as a right triangle.

    ``captions``: the size, the angle, and the labels of the components along and across the axis, in two pieces each.
    """
    hypotenuse, angle = 66.0, 30.0
    size, turned, along, across = captions
    long, short = hypotenuse * trig.cosine(angle), hypotenuse * trig.sine(angle)
    start = Point(8.0 if axis == "right" else 22.0, 15.0)
    right, up = (long, short) if axis == "right" else (short, long)
    tip = start.plus(Point(right, up))
    foot, side = Point(tip.x, start.y), Point(start.x, tip.y)
    base = 0.0 if axis == "right" else 90.0 - angle
    middle = start.moved(23.0, base + angle / 2)
    drawn: tuple[Item, ...] = (
        Line(start, start.plus(Point(right + 12.0, 0.0)), 0.25, "ink-2"),
        Line(start, start.plus(Point(0.0, up + 10.0)), 0.25, "ink-2"),
        Line(tip, foot, 0.35, "ink", (2.0, 1.0)),
        Line(tip, side, 0.35, "ink", (2.0, 1.0)),
        Arrow(start, foot, 0.8, "blue", 0.0),
        Arrow(start, side, 0.8, "red", 0.0),
        Arc(start, 17.0, base, angle, 0.35, "accent"),
        Arrow(start, tip, 0.9, "black", 5.0),
        Circle(start, 0.9, 0.35, "ink", "sheet"),
    )
    words_right, words_up = (along, across) if axis == "right" else (across, along)
    half = start.plus(Point(right / 2, up / 2))
    off = (Point(-2.0, 3.4), "end") if axis == "right" else (Point(3.0, -3.4), "start")
    return Page(
        WIDTH,
        up + 27.0,
        (
            *drawn,
            _words(
                text(turned, middle.plus(Point(0.0, -1.8)), NOTE, "middle"),
                text(size, half.plus(off[0]), VALUE, off[1], face="bold"),
                text(" ".join(words_right), Point(start.x, start.y - 8.0), NOTE),
                text(words_up[0], Point(tip.x + 3.0, start.y + up / 2 + 1.5), NOTE),
                text(words_up[1], Point(tip.x + 3.0, start.y + up / 2 - 5.0), NOTE),
            ),
        ),
        title,
        description,
    )  # fmt: skip
