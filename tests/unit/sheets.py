"""What stands on a sheet, read from the finished page alone: strokes, texts, arrows, table rows."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from pycore import lettering
from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Arc, Arrow, Circle, Line, Page, Shape, Text
from pycore.geometry import ORIGIN, Box, Point
from pycore.sheet.lettered import box_of
from pycore.writers.collect import CollectedPrimitive, collect

NEUTRAL = CALCULATORS["neutral-current"]
DEFAULT = {"i1": "18.4", "i2": "11.2", "i3": "24.6"}


@dataclass(frozen=True)
class Stroke:
    """A straight piece of ink, half its width, and where it came from."""

    start: Point
    end: Point
    half: float
    source: str


@dataclass(frozen=True)
class Lettered:
    """A text on the page: its rectangle, its words, the group it stands in, its step."""

    box: Box
    words: str
    group: str
    step: int | None


def _ring(points: tuple[Point, ...], closed: bool) -> Iterator[tuple[Point, Point]]:
    yield from pairwise(points)
    if closed:
        yield points[-1], points[0]


def _arrow(arrow: Arrow) -> Iterator[tuple[Point, Point, float]]:
    yield arrow.tail, arrow.tip, arrow.width / 2
    length = math.dist(arrow.tail, arrow.tip)
    if arrow.head and length:
        size = min(arrow.head, length)
        back = Point(*(t + (s - t) * size / length for t, s in zip(arrow.tip, arrow.tail, strict=True)))
        across = Point(-(arrow.tip.y - arrow.tail.y) / length, (arrow.tip.x - arrow.tail.x) / length)
        corners = [back.plus(across.times(sign * 0.17 * size)) for sign in (1, -1)]
        for start, end in _ring((arrow.tip, corners[0], corners[1]), True):
            yield start, end, 0.0


def _arc(arc: Arc) -> Iterator[tuple[Point, Point]]:
    count = max(4, math.ceil(abs(arc.sweep) / 2))
    ways = [_unit(arc.start + arc.sweep * share / count) for share in range(count + 1)]
    yield from pairwise([arc.centre.plus(way.times(arc.radius)) for way in ways])


@lru_cache(maxsize=4096)
def _unit(degrees: float) -> Point:
    """The point at distance 1 in a direction: all circles are cut at the same ones."""
    return ORIGIN.moved(1.0, degrees)


def _pieces(item: object) -> Iterator[tuple[Point, Point, float]]:
    match item:
        case Line():
            yield item.start, item.end, item.width / 2
        case Arrow():
            yield from _arrow(item)
        case Arc():
            yield from ((start, end, item.width / 2) for start, end in _arc(item))
        case Circle():
            whole = Arc(item.centre, item.radius, 0.0, 360.0)
            yield from ((start, end, item.width / 2) for start, end in _arc(whole))
            yield item.centre, item.centre.plus(Point(1e-9, 0.0)), item.width / 2
        case Shape():
            yield from ((start, end, item.width / 2) for start, end in _ring(item.points, item.closed))


def strokes(page: Page, beside: Sequence[Lettered] | None = None) -> list[Stroke]:
    """Every straight piece of ink on a page; arcs and circles as short pieces, arrowheads by their outline.

    Given texts, arcs and circles are left out that none of them can touch: they have nearly all the pieces.
    """
    found = []
    for placed in collect(page):
        if beside is not None and isinstance(placed.item, Arc | Circle) and not _reaches(placed.item, beside):
            continue
        source = " ".join([*placed.names, type(placed.item).__name__, placed.phasor])
        found += [Stroke(start, end, half, source) for start, end, half in _pieces(placed.item)]
    return found


def _reaches(item: Arc | Circle, beside: Sequence[Lettered]) -> bool:
    """Whether the rectangle around a whole circle, ink included, meets that of any of these texts."""
    (x, y), reach = item.centre, item.radius + item.width / 2 + 1e-6
    around = Box(x - reach, y - reach, x + reach, y + reach)
    return any(around.meets(text.box) for text in beside)


def capitals_of(item: Text) -> float:
    """Height of a text's capitals in mm, from its first run."""
    return lettering.capital_height(item.runs[0].face, item.runs[0].size)


def rectangle_of(item: Text) -> Box:
    """The rectangle that a text fills, level or turned a quarter to the left."""
    level = box_of(item, capitals_of(item))
    if item.turn == 0.0:
        return level
    assert item.turn == 90.0
    x, y = item.at
    return Box(x - (level.top - y), y + (level.left - x), x - (level.bottom - y), y + (level.right - x))


def texts(page: Page) -> list[Lettered]:
    """Every text on a page that has ink."""
    return [
        Lettered(rectangle_of(placed.item), placed.item.plain, " ".join(placed.names), placed.step)
        for placed in collect(page)
        if isinstance(placed.item, Text) and placed.item.plain.strip()
    ]


def said_on(pages: Iterable[Page]) -> str:
    """All text of several pages in one line, wherever it was broken."""
    return " ".join(one.words for page in pages for one in texts(page)).replace("\u00a0", " ")


def frame_of(page: Page) -> Box:
    """The rectangle of the frame's line; the learner's own paper has none but its edges."""
    drawn = (p.item for p in collect(page) if "frame" in p.names and isinstance(p.item, Shape))
    shape = next(drawn, None)
    if shape is None:
        return Box(0.0, 0.0, page.width, page.height)
    xs, ys = [point.x for point in shape.points], [point.y for point in shape.points]
    return Box(min(xs), min(ys), max(xs), max(ys))


def on_page(page: Page, kind: type) -> list[CollectedPrimitive]:
    """Everything of one kind with its step, phasor and groups."""
    return [placed for placed in collect(page) if isinstance(placed.item, kind)]


def arrow_of(page: Page, key: str) -> Arrow:
    """The one arrow of a phasor, copies apart."""
    (found,) = [p.item for p in on_page(page, Arrow) if p.phasor == key and not p.copy]
    return found


def vector(arrow: Arrow) -> complex:
    """An arrow as a complex number in mm."""
    return complex(arrow.tip.x - arrow.tail.x, arrow.tip.y - arrow.tail.y)


def table_of(page: Page) -> list[list[str]]:
    """The cells of a sheet's table, row by row from the top, the head first."""
    placed = [p.item for p in collect(page) if "table" in p.names and isinstance(p.item, Text)]
    rows: dict[float, list[Text]] = {}
    for item in placed:
        rows.setdefault(round(item.at.y, 3), []).append(item)
    downwards = [sorted(rows[y], key=lambda item: box_of(item, 1.0).left) for y in sorted(rows, reverse=True)]
    return [[item.plain for item in row] for row in downwards]


def given_of(page: Page) -> list[list[str]]:
    """What a problem sheet gives of each phasor: symbol, then amount and direction where they are given."""
    rows = table_of(page)[1:]
    end = next(index for index, row in enumerate(rows) if row[0] == "result")
    return [[cell for cell in row if cell != "°"] for row in rows[:end]]


def results(form: dict[str, str]) -> dict[str, float | None]:
    """The values of a form's outputs by name."""
    return {output.name: output.value for output in NEUTRAL.answer(form, ("answer",)).outputs}


def lines_of(given: dict[str, str]) -> dict[str, complex]:
    """The line currents as complex numbers from L1's voltage, by plain trigonometry of this test's own."""
    step = -120.0 if given.get("sequence", "123") == "123" else 120.0
    made = {}
    for index in range(3):
        lag = given.get(f"a{index + 1}", "0")
        if "lag" in lag or "lead" in lag:
            factor, side = lag.split()
            degrees = math.degrees(math.acos(float(factor))) * (1 if side == "lag" else -1)
        else:
            degrees = float(lag)
        size = float(given[f"i{index + 1}"].replace(",", "."))
        angle = math.radians(index * step - degrees)
        made[f"i{index + 1}"] = size * complex(math.cos(angle), math.sin(angle))
    return made


def phasors_of(given: dict[str, str]) -> dict[str, complex]:
    """Every phasor that a sheet may show, by key."""
    made = lines_of(given)
    for first, second in ("12", "13", "23"):
        made[f"i{first}{second}"] = made[f"i{first}"] + made[f"i{second}"]
    made["sum"] = sum(lines_of(given).values())
    made["return"] = -made["sum"]
    return made


def turn_to_paper(given: dict[str, str], value: complex) -> complex:
    """A phasor as it must lie on the paper: the reference in the first direction, mirrored when clockwise."""
    lines = lines_of(given)
    start = next(lines[f"i{n}"] for n in "123" if lines[f"i{n}"])
    reference = 1.0 if given.get("reference", "current") == "voltage" else start / abs(start)
    seen = value / reference
    if given.get("rotation") == "clockwise":
        seen = seen.conjugate()
    return seen * (1j if given.get("first", "up") == "up" else 1)
