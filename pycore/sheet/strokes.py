"""What a construction's pen needs and leaves: how phasors look, where the construction stands, its strokes."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from pycore import geometry
from pycore.constructions.companions import leads
from pycore.constructions.construction import Construction, DrawingConvention
from pycore.constructions.names import FIRST_DIRECTION
from pycore.drawing import Group, Ink, Item, Line
from pycore.geometry import ORIGIN, Box, Point, Ray
from pycore.sheet.labels import Along, LabelRequest, Segment
from pycore.words.phrase import Phrase, plain


@dataclass(frozen=True, slots=True)
class PhasorStyles:
    """How phasors are told apart: tag, ink and number of ticks by phasor key. ``mark``: the decimal mark.
    ``share``: how long a millimetre of the sheet is in a picture that is smaller than the sheet, mm."""

    tags: Mapping[str, Phrase]
    inks: Mapping[str, Ink]
    ticks: Mapping[str, int]
    mark: str = "."
    share: float = 1.0


@dataclass(frozen=True, slots=True)
class Placement:
    """The placement of a construction: its convention, mm for each unit, and the starting point in mm."""

    picture: DrawingConvention
    factor: float
    origin: Point = ORIGIN

    def place(self, point: Point) -> Point:
        """Return a point of the construction on the page, mm."""
        return self.origin.plus(self.picture.place(point, self.factor))

    def places(self, points: Mapping[str, Point]) -> dict[str, Point]:
        """Return all points of a construction on the page, by name, each as ``place`` gives it."""
        x, y = self.origin
        placed = self.picture.places(points.values(), self.factor)
        return {name: Point(x + right, y + up) for name, (right, up) in zip(points, placed, strict=True)}


@dataclass(slots=True)
class FigureStrokes:
    """Strokes by step, segments that labels must avoid, and label requests.

    ``aside``: segments of phasors that stand beside their true place; they never move the figure.
    """

    by_step: dict[int, list[Item]] = field(default_factory=dict)
    segments: list[Segment] = field(default_factory=list)
    label_requests: list[LabelRequest] = field(default_factory=list)
    aside: list[Segment] = field(default_factory=list)
    moved: list[str] = field(default_factory=list)
    """Keys of the phasors that stand aside."""

    def add(self, step: int, *items: Item) -> None:
        """Add strokes to the group of a step."""
        self.by_step.setdefault(step, []).extend(items)

    def keep_clear(self, start: Point, end: Point, owner: str = "", half: float = 0.25) -> None:
        """Keep labels clear of a straight segment."""
        self.segments.append(tuple.__new__(Segment, (start, end, owner, half)))

    def voltage(
        self, step: int, ray: Ray, longest: float, room: Box | None, tag: Phrase, capitals: float
    ) -> list[LabelRequest]:
        """Draw the thin line of a phase voltage beside a ``longest`` arm, no longer than there is ``room``, and return
        the request for its name. It moves neither the figure nor what else is written."""
        length = VOLTAGE_SHARE * longest
        length = length if room is None else min(length, room.reach(ray.start, ray.degrees) - 1.0)
        if length < SHORTEST_VOLTAGE:
            return []
        end = ray.start.moved(length, ray.degrees)
        owner = f"voltage-{plain(tag)}"
        self.add(step, Group((Line(ray.start, end, 0.18, "ink-2"),), name="voltage"))
        self.aside.append(Segment(ray.start, end, owner))
        near_end = Along(ray.start.moved(0.6 * length, ray.degrees), end)
        return [LabelRequest(owner, tag, capitals, near_end, step, optional=True)]

    @property
    def obstacles(self) -> list[Segment]:
        """All segments that labels and ticks must avoid."""
        return [*self.segments, *self.aside]


REFERENCE_SHARE = 0.6
"""Length of the faint first direction as a share of the longest arm."""
VOLTAGE_SHARE = 0.4
"""Length of the thin line of a voltage as a share of the longest arm."""
SHORTEST_VOLTAGE = 6.0
"""A shorter line would be hidden by the marks round the common point, mm."""


def figure_box(construction: Construction, picture: DrawingConvention) -> Box:
    """Return the rectangle of the figure on paper, in the quantity's unit."""
    points = construction.figure.points
    used = [points[name] for name in dict.fromkeys([name for ends in construction.drawn_ends for name in ends])]
    if FIRST_DIRECTION in construction.figure.lines and leads(construction) is None:
        longest = max(arm.size for arm in construction.arms)
        degrees = construction.figure.lines[FIRST_DIRECTION].degrees
        used.append(ORIGIN.moved(longest * REFERENCE_SHARE, degrees))
    return geometry.bounds(picture.places(used))
