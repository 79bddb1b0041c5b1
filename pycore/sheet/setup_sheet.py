"""The set-up sheet: two bars as long as the paper allows, to be measured with a ruler. All in mm.

The bars show how much a printer shrinks or stretches along and across its paper feed. They keep 17 mm from every edge,
which printers may lose (common practice, no source).
"""

from dataclasses import dataclass, replace

from pycore.drawing import Arrow, Group, Item, Line, Page, Shape, with_role
from pycore.geometry import Box, Point
from pycore.sheet.lettered import numbered, text, width_of
from pycore.sheet.media import PRINTABLE_EDGE, size_of
from pycore.words import print_setup as words
from pycore.words.furniture import NAME

LONGEST_BAR = 250.0
"""A ruler of 300 mm measures it in one go."""
SETUP_PAPERS = ("A4", "A3", "A2", "letter", "tabloid")
"""Without A5: its short bar would be 110 mm, too short for a precise reading."""
BREADTH = 2.0
STROKE = 0.25
CORNER = 5.4
"""Distance between the ends of both bars at their common corner."""
MARGIN = 10.0
NOTE, VALUE, TITLE = 2.5, 3.5, 5.0
BLOCK = (116.0, 38.0)


@dataclass(frozen=True, slots=True)
class Bars:
    """The two bars of a sheet: their lengths, and the end of each that is nearest to zero.

    The vertical bar is at the left, the horizontal one at the top.
    """

    width: float
    height: float
    upright: float
    level: float
    upright_foot: Point
    level_left: Point


@dataclass(frozen=True, slots=True)
class SetupWriting:
    """The texts of a set-up sheet: the bars' lengths, whether the vertical bar is along the paper feed, the name of the
    paper, and the correction of this print."""

    upright: str
    level: str
    upright_along: bool
    paper: str
    printed: str


def _bar_length(side: float) -> float:
    """Return the whole centimetres that leave 17 mm at both ends, at most 250 mm."""
    return min(LONGEST_BAR, 10.0 * int((side - 2 * PRINTABLE_EDGE) / 10.0 + 1e-9))


def _start(side: float, length: float) -> float:
    """Return the start of a bar, measured from the common corner: centred if that is clear of the corner."""
    centred = (side - length) / 2
    return centred if centred >= PRINTABLE_EDGE + CORNER + 0.6 else side - PRINTABLE_EDGE - length


def bars(paper: str, orientation: str) -> Bars:
    """Return the bars of a paper; raises KeyError for an unknown paper."""
    width, height = size_of(paper, orientation)
    upright, level = _bar_length(height), _bar_length(width)
    foot = height - _start(height, upright) - upright
    return Bars(
        width, height, upright, level,
        Point(PRINTABLE_EDGE, foot),
        Point(_start(width, level), height - PRINTABLE_EDGE - BREADTH),
    )  # fmt: skip


def _fields(at: Point, length: float, upright: bool) -> list[Item]:
    """Fields of 10 mm, every second one filled."""
    items: list[Item] = []
    for index in range(int(length / 10)):
        low = 10.0 * index
        box = (
            Box(at.x, at.y + low, at.x + BREADTH, at.y + low + 10)
            if upright
            else Box(at.x + low, at.y, at.x + low + 10, at.y + BREADTH)
        )
        items.append(Shape(box.corners, 0.18, "ink", "ink" if index % 2 == 0 else "sheet"))
    return items


def _upright(place: Bars, length_text: str) -> Group:
    at, length = place.upright_foot, place.upright
    strokes = [
        Line(Point(at.x - 1, y), Point(at.x + BREADTH + 1.6, y), STROKE) for y in (at.y, at.y + length)
    ]
    label = replace(text(length_text, Point(at.x + BREADTH + 6.5, at.y + length / 2), VALUE, "middle"), turn=90.0)
    return Group((*_fields(at, length, True), *strokes, label), name="bar-upright")


def _level(place: Bars, length_text: str) -> Group:
    at, length = place.level_left, place.level
    strokes = [
        Line(Point(x, at.y - 1.6), Point(x, at.y + BREADTH + 1), STROKE) for x in (at.x, at.x + length)
    ]
    label = text(length_text, Point(at.x + length / 2, at.y - 3.0 - VALUE), VALUE, "middle")
    return Group((*_fields(at, length, False), *strokes, label), name="bar-level")


def _feed(centre: Point, upright: bool) -> Group:
    """Arrows in both directions along the paper feed: which end goes in first does not matter."""
    turn = 90.0 if upright else 0.0
    inner = 4.5 if upright else width_of(words.FEED, VALUE) / 2 + 2.5
    outer = inner + 19.0
    arrows = [
        Arrow(centre.moved(inner, turn + half), centre.moved(outer, turn + half), 0.5, "ink") for half in (0.0, 180.0)
    ]
    label = text(words.FEED, centre.plus(Point(0.0, -VALUE / 2)), VALUE, "middle")
    return Group((*arrows, label), name="feed")


def _steps(left: float, top: float, width: float) -> tuple[Group, float]:
    """The numbered instructions, and the height where they end."""
    head = text(words.SHEET_HEAD, Point(left, top - TITLE), TITLE)
    lines, low = numbered(words.SHEET_STEPS, Point(left, top - TITLE - 5.0), VALUE, width)
    return Group((with_role("heading", head), lines), name="words"), low


def _blanks(left: float, top: float) -> Group:
    """Two lines for the readings."""
    items: list[Item] = []
    for index, label in enumerate((words.WRITE_UPRIGHT, words.WRITE_LEVEL)):
        y = top - 10.0 * (index + 1)
        items.append(with_role(
            "paragraph", text(label, Point(left, y), VALUE),
            Line(Point(left + 42.0, y - 1.2), Point(left + 76.0, y - 1.2), 0.25),
            text("mm", Point(left + 78.0, y), VALUE),
        ))  # fmt: skip
    return Group(tuple(items), name="blanks")


def _cell(at: Point, label: str, value: str) -> list[Item]:
    items: list[Item] = [text(label, Point(at.x, at.y - NOTE - 1.0), NOTE, ink="ink-2")]
    if value:
        items.append(text(value, Point(at.x, at.y - NOTE - VALUE - 3.4), VALUE))
    return [with_role("paragraph", *items)]


def _block(frame: Box, writing: SetupWriting) -> Group:
    """The title block (after ISO 7200, adapted); printer and date are filled in by hand."""
    box = Box(frame.right - BLOCK[0], frame.bottom, frame.right, frame.bottom + BLOCK[1])
    x, middle = box.left + 2.4, box.left + 46.0
    first, second = box.top - 11.0, box.top - 24.5
    items: list[Item] = [
        Shape(box.corners, 0.5),
        Line(Point(box.left, first), Point(box.right, first), 0.25),
        Line(Point(box.left, second), Point(box.right, second), 0.25),
        Line(Point(middle, first), Point(middle, second), 0.25),
        Line(Point(middle, second), Point(middle, box.bottom), 0.25),
        text(words.TITLE, Point(x, box.top - TITLE - 2.6), TITLE),
        text(NAME, Point(box.right - 2.4, box.top - TITLE - 2.6), VALUE, "end", "ink-2"),
    ]
    items += _cell(Point(x, first), words.BLOCK_PAPER, writing.paper)
    items += _cell(Point(middle + 2.4, first), words.BLOCK_PRINTED, writing.printed)
    items += _cell(Point(x, second), words.BLOCK_DATE, "")
    items += _cell(Point(middle + 2.4, second), words.BLOCK_PRINTER, "")
    return Group(tuple(items), name="title-block")


def setup_page(paper: str, orientation: str, writing: SetupWriting) -> Page:
    """Return the set-up sheet of a paper; raises KeyError for an unknown paper."""
    place = bars(paper, orientation)
    frame = Box(MARGIN, MARGIN, place.width - MARGIN, place.height - MARGIN)
    left = PRINTABLE_EDGE + BREADTH + 18.0
    top = place.level_left.y - 20.0
    width = min(150.0, place.width - left - PRINTABLE_EDGE)
    steps, low = _steps(left, top, width)
    middle = Point(left + 33.0, frame.bottom + 30.0) if orientation == "landscape" else Point(
        left + width / 2, (low - 24.0 + frame.bottom + BLOCK[1]) / 2
    )
    items: tuple[Item, ...] = (
        Group((Shape(frame.corners, 0.7),), name="frame"),
        _upright(place, words.bar(writing.upright, writing.upright_along)),
        _level(place, words.bar(writing.level, not writing.upright_along)),
        steps,
        _blanks(left, low - 2.0),
        _feed(middle, writing.upright_along),
        _block(frame, writing),
    )
    description = words.sheet_description(writing.upright, writing.level)
    return Page(place.width, place.height, items, words.TITLE, description)
