"""The numbers alone: arrows end to end in one line, and below them the same arrows, each in its own direction.

A page of 120 by 98.4 units, like a frame of a lesson. Amounts are in the quantity's unit, angles in degrees.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from pycore import geometry, phasor
from pycore.constructions.construction import DrawingConvention
from pycore.constructions.names import SUM_KEY
from pycore.drawing import Arrow, Group, Ink, Item, Line, Page
from pycore.geometry import ORIGIN, Box, Point
from pycore.sheet import labels
from pycore.sheet.laying import HEIGHT, WIDTH
from pycore.sheet.lesson_view import CLASSROOM, beside
from pycore.sheet.strokes import PhasorStyles
from pycore.sheet.ticks import ticks
from pycore.sheet.tools import ToolNote
from pycore.words.phrase import Phrase

ROW = HEIGHT - 15.0
"""Height of the line of arrows."""
BELOW = 28.0
"""From the top of the view to the room of the turned arrows."""
MARGIN = 9.0
BACK_BY = 4.0
"""How far below the others an arrow lies that is subtracted."""
BAR, CAP = 6.0, 1.6
"""How far below the arrows the measure of the whole line lies, and half of the strokes at its ends."""
TAG_CAPITALS, HALF_TAG = 4.7, 7.0
LEAST = 0.05
"""A shorter sum, in units, is drawn as none."""


@dataclass(frozen=True, slots=True)
class LinedUp:
    """An arrow: its key, its value, and whether it is subtracted."""

    key: str
    value: complex
    subtracted: bool = False


def row_ends(arrows: Sequence[LinedUp]) -> list[float]:
    """Return where each arrow ends if all lie in one line, the start first, in the quantity's unit."""
    ends = [0.0]
    for arrow in arrows:
        size = phasor.magnitude(arrow.value)
        ends.append(ends[-1] - size if arrow.subtracted else ends[-1] + size)
    return ends


def _chain(arrows: Sequence[LinedUp], picture: DrawingConvention) -> list[Point]:
    """Return the points of the turned arrows about the first, in the quantity's unit, as on paper."""
    points = [ORIGIN]
    for arrow in arrows:
        degrees = picture.paper_angle(phasor.angle(arrow.value))
        points.append(points[-1].moved(phasor.magnitude(arrow.value), degrees))
    return points


class _Picture:
    """The items of the page, and what its names have to keep clear of."""

    def __init__(self, look: PhasorStyles) -> None:
        self.look = look
        self.ground = labels.LabelArea(Box(1.0, 1.0, WIDTH - 1.0, HEIGHT - 1.0))
        self.items: list[Item] = []
        self.notes: list[tuple[ToolNote, str]] = []

    def arrow(self, key: str, ends: tuple[Point, Point], name: str, *, side: float) -> None:
        """Draw one arrow with its ticks; its name is set at its middle, on a side (degrees from its direction)."""
        start, end = ends
        ink: Ink = self.look.inks.get(key, "ink")
        wide, head = (1.0, CLASSROOM.large_head) if key == SUM_KEY else (CLASSROOM.wide, CLASSROOM.head)
        drawn: list[Item] = [Arrow(start, end, wide, ink, head, cased=ink == "black")]
        if key != SUM_KEY:
            drawn += ticks(start, end, self.look.ticks.get(key, 0), CLASSROOM.wide, ink, CLASSROOM)
        self.items.append(Group(tuple(drawn), name=name))
        self.ground.add(labels.Segment(start, end, "", 1.0))
        towards = geometry.direction(start, end) + side
        self.notes.append((ToolNote(self.look.tags[key], geometry.middle(start, end), towards), name))

    def measure(self, start: Point, end: Point, words: Phrase) -> None:
        """Draw the measure of the whole line, with its amount in the middle."""
        caps = [Line(one.moved(CAP, 90.0), one.moved(CAP, -90.0), 0.4, "accent") for one in (start, end)]
        self.items += [Line(start, end, 0.4, "accent"), *caps]
        self.ground.add(labels.Segment(start, end, "", CAP))
        self.notes.append((ToolNote(words, geometry.middle(start, end), -90.0), "accent"))

    def named(self) -> list[Item]:
        """Return the names, clear of every line and of each other."""
        found: list[Item] = []
        for note, name in self.notes:
            face, ink = ("bold", "accent") if name == "accent" else ("regular", "ink")
            items = beside(self.ground, note, TAG_CAPITALS, face, ink)  # type: ignore[arg-type]
            found += [Group(items, name="answer")] if name == "answer" else items
        return found


def numbers_page(
    arrows: Sequence[LinedUp], picture: DrawingConvention, look: PhasorStyles, amount: Phrase, title: str, *,
    turned: bool,
) -> Page:  # fmt: skip
    """Return the arrows in one line with the ``amount`` that they reach; ``turned``: and each in its own direction.

    What shows where the sum ends is in groups named ``answer``.
    """
    ends, chain = row_ends(arrows), _chain(arrows, picture)
    box = geometry.bounds(chain)
    length = max(ends) - min(ends)
    wide, high = WIDTH - 2 * MARGIN, HEIGHT - BELOW - 2 * HALF_TAG
    factor = min(wide / max(length, box.width, 1e-9), high / max(box.height, 1e-9))
    left = (WIDTH - length * factor) / 2 - min(ends) * factor
    drawn = _Picture(look)
    for arrow, start, end in zip(arrows, ends, ends[1:], strict=False):
        at = ROW - BACK_BY if arrow.subtracted else ROW
        places = Point(left + start * factor, at), Point(left + end * factor, at)
        drawn.arrow(arrow.key, places, "", side=-90.0 if arrow.subtracted else 90.0)
    bar = ROW - BAR - (BACK_BY if any(arrow.subtracted for arrow in arrows) else 0.0)
    drawn.measure(Point(left, bar), Point(left + ends[-1] * factor, bar), amount)
    if turned:
        _turn(drawn, arrows, chain, factor)
    return Page(WIDTH, HEIGHT, (*drawn.items, *drawn.named()), title, title)


def _turn(drawn: _Picture, arrows: Sequence[LinedUp], chain: Sequence[Point], factor: float) -> None:
    """Draw the arrows tip to tail in their own directions, and the sum from the first tail to the last tip."""
    centre = geometry.bounds(chain).centre
    middle = Point(WIDTH / 2, (HEIGHT - BELOW) / 2)
    points = [middle.plus(point.minus(centre).times(factor)) for point in chain]
    for index, arrow in enumerate(arrows):
        name = "answer" if index == len(arrows) - 1 else ""
        drawn.arrow(arrow.key, (points[index], points[index + 1]), name, side=90.0)
    if geometry.distance(points[0], points[-1]) > LEAST:
        drawn.arrow(SUM_KEY, (points[0], points[-1]), "answer", side=-90.0)
