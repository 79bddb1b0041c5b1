"""Ruler and protractor drawn to scale, with every graduation in its exact place.

Both are drawn at a factor (mm on the page for each mm of the instrument): 1 on paper, where the printed instrument
measures; other factors on a screen. The outer numbers of the half circle run clockwise from its left end, the inner
ones anticlockwise from its right end, as on school protractors (common practice, no source).
"""

from dataclasses import dataclass, replace
from functools import lru_cache

from pycore import lettering
from pycore.drawing import Arc, Circle, Face, Group, Ink, Item, Line, Run, Shape, Stamp, Text
from pycore.geometry import ORIGIN, Point

RADIUS = 75.0
WINDOW = 45.0
BASE = 9.0
OUTER_FIGURES = 63.4
INNER_FIGURES = 54.8
RULER_LENGTH = 150.0
RULER_WIDTH = 25.0
RULER_BEFORE_ZERO = 5.0
FIGURES_BELOW = 8.1
"""From the edge of a ruler to the tops of its numbers, mm."""


@dataclass(frozen=True, slots=True)
class Pose:
    """The position of an instrument: its zero point, the direction of its own +x on paper, mm per mm."""

    at: Point
    degrees: float
    factor: float = 1.0

    def place(self, distance: float, degrees: float) -> Point:
        """Return a place on the instrument by distance from its zero point and its own direction."""
        return self.at.moved(distance * self.factor, self.degrees + degrees)

    def xy(self, x: float, y: float) -> Point:
        """Return a place on the instrument by its own coordinates."""
        return self.at.moved(x * self.factor, self.degrees).moved(y * self.factor, self.degrees + 90.0)


def figure(
    words: str, centre: Point, capitals: float, turn: float, face: Face = "regular", ink: Ink = "ink"
) -> Text:
    """A number turned about its own middle; ``capitals`` is its height in mm on the page."""
    size = lettering.size_for_capitals(capitals, face)
    base = centre.moved(capitals / 2, turn - 90.0)
    return Text((Run(words, face, size),), base, "middle", ink, turn)


def _graduation(degree: int) -> float:
    """Return the length of a protractor's graduation: tens, fives, single degrees."""
    return 8.0 if degree % 10 == 0 else (6.0 if degree % 5 == 0 else 4.0)


@dataclass(frozen=True, slots=True)
class ProtractorNumbers:
    """How the numbers of both scales of a protractor are set: heights, faces and inks of inner and outer."""

    inner: tuple[float, Face, Ink] = (3.0, "regular", "ink")
    outer: tuple[float, Face, Ink] = (3.0, "regular", "ink")
    weight: float = 1.0
    """Line widths as multiples of the printed instrument's."""
    key: str = "plain"
    every: int = 10
    """Degrees from one number to the next."""


PLAIN = ProtractorNumbers()
ON_SCREEN = 1.9
"""Line weight of an instrument that must be visible from the back of a room."""
LEAST_CAPITALS = 1.85
"""Capitals of the numbers of an instrument on a screen, units: letters of 28 pixels of 1080."""


def screen_numbers(factor: float, counts: str) -> ProtractorNumbers:
    """Return how a protractor of this size is numbered: ``counts`` is the scale that does, ``inner`` or ``outer``.

    With ``neither``, a class is asked which of the two counts. A small one has a number at every second ten.
    """
    capitals = max(3.6, LEAST_CAPITALS / factor)
    full, plain, dim = (capitals, "bold", "ink"), (capitals, "regular", "ink"), (capitals, "regular", "ink-3")
    inner, outer = {"inner": (full, dim), "outer": (dim, full), "neither": (plain, plain)}[counts]
    every = 10 if capitals < 3.7 else 20
    return ProtractorNumbers(inner, outer, ON_SCREEN, f"{counts}-{round(100 * factor)}", every)  # type: ignore[arg-type]


def screen_figures(factor: float, counted: int) -> "RulerFigures":
    """Return how a ruler of this size is numbered."""
    capitals = max(3.8, LEAST_CAPITALS / factor)
    return RulerFigures(counted, capitals, 1 if capitals < 5.4 else 2, LEAST_CAPITALS / factor)


@dataclass(frozen=True, slots=True)
class RulerFigures:
    """How the numbers of a ruler are set: those up to ``counted`` cm in full ink, the others dimmed."""

    counted: int
    capitals: float = 3.8
    every: int = 1
    unit: float = 2.5
    """Capitals of "cm"."""




@lru_cache(maxsize=2)
def _unit_protractor(circle: bool) -> Group:
    return protractor(Pose(ORIGIN, 0.0), replace(PLAIN, weight=ON_SCREEN), circle=circle, numbered=False)


@lru_cache(maxsize=8)
def _unit_numbers(numbers: ProtractorNumbers, circle: bool) -> Group:
    return protractor_numbers(Pose(ORIGIN, 0.0), numbers, circle=circle)


@lru_cache(maxsize=4)
def _unit_ruler(length: float) -> Group:
    return ruler(Pose(ORIGIN, 0.0), length, weight=ON_SCREEN, numbered=False)


@lru_cache(maxsize=64)
def _unit_figures(length: float, figures: RulerFigures) -> Group:
    return ruler_figures(Pose(ORIGIN, 0.0), length, figures)


def stamped_protractor(pose: Pose, *, circle: bool = False) -> Group:
    """A protractor for a lesson without its numbers, with the stamp by which a writer may write it once."""
    unit = _unit_protractor(circle)
    drawn = protractor(pose, replace(PLAIN, weight=ON_SCREEN), circle=circle, numbered=False)
    return replace(drawn, stamp=Stamp(f"protractor-{360 if circle else 180}", unit, pose.at, pose.degrees, pose.factor))


def stamped_numbers(pose: Pose, numbers: ProtractorNumbers, *, circle: bool = False) -> Group:
    """The numbers of both scales for a lesson, with their stamp."""
    key = f"numbers-{360 if circle else 180}-{numbers.key}"
    drawn = protractor_numbers(pose, numbers, circle=circle)
    return replace(drawn, stamp=Stamp(key, _unit_numbers(numbers, circle), pose.at, pose.degrees, pose.factor))


def stamped_ruler(pose: Pose, length: float) -> Group:
    """A ruler for a lesson without its numbers, with its stamp."""
    drawn = ruler(pose, length, weight=ON_SCREEN, numbered=False)
    return replace(drawn, stamp=Stamp(f"ruler-{int(length)}", _unit_ruler(length), pose.at, pose.degrees, pose.factor))


def stamped_figures(pose: Pose, length: float, figures: RulerFigures) -> Group:
    """The numbers of a ruler for a lesson, with their stamp."""
    key = f"figures-{int(length)}-{figures.counted}-{figures.every}-{round(10 * figures.capitals)}"
    drawn = ruler_figures(pose, length, figures)
    return replace(drawn, stamp=Stamp(key, _unit_figures(length, figures), pose.at, pose.degrees, pose.factor))


def protractor(
    pose: Pose, figures: ProtractorNumbers = PLAIN, *, circle: bool = False, tint: bool = False, numbered: bool = True
) -> Group:
    """A protractor centred on the pose, its right-hand zero in the pose's direction.

    The half circle extends from 0 to 180 degrees anticlockwise. A ray at angle a reads a on the inner scale, and 180 -
    a on the outer (360 - a on a full circle).
    """
    end = 360 if circle else 180
    f = pose.factor * figures.weight
    items: list[Item] = [*_protractor_body(pose, circle, tint, figures.weight)]
    for degree in range(end if circle else end + 1):
        length = _graduation(degree)
        width = 0.25 if degree % 10 == 0 else 0.15
        items.append(
            Line(pose.place(RADIUS - length, degree), pose.place(RADIUS, degree), width * f, "ink")
        )
    if numbered:
        items += protractor_numbers(pose, figures, circle=circle).items
    items += _cross(pose, circle, figures.weight)
    return Group(tuple(items), name="protractor", instrument="protractor")


def protractor_numbers(pose: Pose, figures: ProtractorNumbers, *, circle: bool) -> Group:
    """The numbers of both scales of a protractor."""
    end = 360 if circle else 180
    items: list[Item] = []
    for degree in range(0, end if circle else end + 1, figures.every):
        items += _figures_at(pose, figures, degree, end)
    return Group(tuple(items), name="numbers", instrument="protractor")


def _figures_at(pose: Pose, figures: ProtractorNumbers, degree: int, end: int) -> list[Item]:
    f = pose.factor
    turned = pose.degrees + degree - 90.0
    lift = 0.0
    if end == 180 and degree in (0, 180):
        # At the ends of the base line the figures stand upright on it, as they are printed there.
        turned, lift = pose.degrees, 2.6
    inner_height, inner_face, inner_ink = figures.inner
    outer_height, outer_face, outer_ink = figures.outer
    items: list[Item] = []
    for radius, value, height, face, ink in (
        (INNER_FIGURES, degree, inner_height, inner_face, inner_ink),
        (OUTER_FIGURES, (end - degree) % 360 if end == 360 else end - degree, outer_height, outer_face, outer_ink),
    ):
        at = pose.place(radius, degree).moved(lift * f, pose.degrees + 90.0)
        items.append(figure(str(value), at, height * f, turned, face, ink))
    return items


def _protractor_body(pose: Pose, circle: bool, tint: bool, weight: float = 1.0) -> list[Item]:
    f = pose.factor
    if circle:
        edge: list[Item] = [
            Circle(pose.at, RADIUS * f, 0.25 * weight * f, "accent", None),
            Circle(pose.at, WINDOW * f, 0.2 * weight * f, "accent", None),
        ]
        return edge
    rim = [pose.place(RADIUS, degree) for degree in range(0, 181, 3)]
    foot = [pose.xy(-RADIUS, -BASE), pose.xy(RADIUS, -BASE)]
    outline: list[Item] = []
    if tint:
        outline.append(Shape((*rim, *foot), 0.0, "accent", "tint"))
    outline += [
        Arc(pose.at, RADIUS * f, pose.degrees, 180.0, 0.25 * weight * f, "accent"),
        Shape((rim[0], foot[1], foot[0], rim[-1]), 0.25 * weight * f, "accent", None, closed=False),
        Arc(pose.at, WINDOW * f, pose.degrees, 180.0, 0.2 * weight * f, "accent"),
        Line(pose.xy(-RADIUS, 0.0), pose.xy(RADIUS, 0.0), 0.15 * weight * f, "ink"),
    ]
    return outline


def _cross(pose: Pose, circle: bool, weight: float = 1.0) -> list[Item]:
    f = pose.factor * weight
    reach = 4.0
    arms: list[Item] = [Line(pose.xy(0.0, -reach), pose.xy(0.0, reach), 0.2 * f, "ink")]
    if circle:
        arms.append(Line(pose.xy(-reach, 0.0), pose.xy(reach, 0.0), 0.2 * f, "ink"))
    return arms


def ruler(
    pose: Pose, length: float = RULER_LENGTH, *, tint: bool = False, weight: float = 1.0, numbered: bool = True
) -> Group:
    """A ruler with its zero mark at the pose and its edge in the pose's direction.

    The body is on the clockwise side of the edge and begins 5 mm before zero, so that its end is not its zero.
    ``weight`` multiplies line widths. It is turned as a whole: its numbers run from its left end, whichever way it
    lies.
    """
    f = pose.factor
    corners = (
        pose.xy(-RULER_BEFORE_ZERO, 0.0),
        pose.xy(length + RULER_BEFORE_ZERO, 0.0),
        pose.xy(length + RULER_BEFORE_ZERO, -RULER_WIDTH),
        pose.xy(-RULER_BEFORE_ZERO, -RULER_WIDTH),
    )
    items: list[Item] = [Shape(corners, 0.25 * f * weight, "accent", "tint" if tint else None)]
    figures = ruler_figures(pose, length, RulerFigures(int(length), 3.0)).items if numbered else ()
    for millimetre in range(int(length) + 1):
        mark = 7.0 if millimetre % 10 == 0 else (5.2 if millimetre % 5 == 0 else 3.6)
        width = 0.25 if millimetre % 10 == 0 else 0.15
        items.append(
            Line(pose.xy(millimetre, 0.0), pose.xy(millimetre, -mark), width * f * weight, "ink")
        )
        if millimetre % 10 == 0:
            items += figures[millimetre // 10 : millimetre // 10 + 1]
    items += figures[int(length) // 10 + 1 :]
    return Group(tuple(items), name="ruler", instrument="ruler")


def figure_middle(pose: Pose, centimetre: int, capitals: float) -> Point:
    """Return the middle of a number of a ruler."""
    return pose.xy(10.0 * centimetre, -FIGURES_BELOW - capitals / 2)


def ruler_figures(pose: Pose, length: float, figures: RulerFigures) -> Group:
    """The numbers of a ruler, and its unit."""
    f = pose.factor
    items: list[Item] = [
        figure(str(number), figure_middle(pose, number, figures.capitals), figures.capitals * f, pose.degrees,
               ink="ink" if number <= figures.counted else "ink-3")
        for number in range(0, int(length) // 10 + 1, figures.every)
    ]  # fmt: skip
    middle = pose.xy(3.6 + figures.unit - 2.5, -15.0 - 2.0 * (figures.capitals - 3.0))
    items.append(figure("cm", middle, figures.unit * f, pose.degrees, ink="ink-2"))
    return Group(tuple(items), name="figures", instrument="ruler")
