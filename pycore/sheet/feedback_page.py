"""A learner's page of feedback in mm: their photograph with a line shown in it, what is said of each line, the mark."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from pycore.drawing import Group, Ink, Item, Line, Page, Picture, with_role
from pycore.geometry import Box, Point
from pycore.lettering.glyphs import Shaped
from pycore.sheet.lettered import fitting, text, wrapped
from pycore.sheet.media import PAPERS
from pycore.words import plain
from pycore.words.phrase import Phrase, with_symbols

LEFT, OTHER = 20.0, 15.0
"""Left margin (for filing) and all other margins."""
HEAD, MARK, BODY, CELL, NOTE = 5.0, 3.6, 2.9, 2.5, 2.2
"""Heights of capitals."""
STEP = 1.9
"""Line spacing, in capitals."""
HIGHEST, LOWEST = 112.0, 50.0
"""The most that a photograph is high, and the least to which it gives way to words."""
COLUMNS = (0.0, 0.34, 0.6, 0.86)
"""Where the table's columns begin, as shares of its width."""
DASH = (2.0, 1.2)


@dataclass(frozen=True, slots=True)
class ShownPhotograph:
    """A JPEG file, and the part of the photograph that it holds (left, top, width, height in pixels); the line to be
    looked at (empty: none) and those of the right drawing (each with whether it is dashed), in the photograph's pixels;
    what these are, and the picture in words."""

    jpeg: bytes
    part: tuple[float, float, float, float]
    line: tuple[Point, ...]
    right: tuple[tuple[tuple[Point, ...], bool], ...]
    caption: str
    alternative: str


@dataclass(frozen=True, slots=True)
class FeedbackPage:
    """What a page says: who, of which sheet, the mark, the photograph (None: it is not there), the sentence on the
    whole, what to look at, what is
    below the table of lines, its head and rows, what is said of the result, and the foot."""

    who: str | Shaped
    sheet: str
    mark: str
    photograph: ShownPhotograph | None
    headline: Phrase
    advice: tuple[Phrase, ...]
    note: str
    head: tuple[str, ...]
    lines: tuple[tuple[Phrase, str, str, str], ...]
    result: tuple[Phrase, ...]
    foot: str


def _lines(phrase: Phrase | str, at: Point, width: float, capitals: float, *, bold: bool = False) -> list[Item]:
    whole = phrase if isinstance(phrase, str) else plain(phrase)
    face = "bold" if bold else "regular"
    # A bold line is wider than the plain one by which it is broken.
    broken = wrapped(whole, capitals, 0.94 * width if bold else width)
    return [
        text(with_symbols(line), Point(at.x, at.y - STEP * capitals * number), capitals, face=face)  # type: ignore[arg-type]
        for number, line in enumerate(broken, start=1)
    ]


def _paragraph(
    phrase: Phrase | str, box: Box, top: float, capitals: float = BODY, *, bold: bool = False
) -> tuple[Item, float]:
    """A paragraph below a height, and the height where it ends."""
    written = _lines(phrase, Point(box.left, top), box.width, capitals, bold=bold)
    return with_role("paragraph", *written), top - STEP * capitals * len(written)


def _photograph(shown: ShownPhotograph, box: Box, top: float, highest: float) -> tuple[list[Item], float]:
    left, upper, wide, high = shown.part
    share = min(box.width / wide, highest / high)
    frame = Box(box.left, top - share * high, box.left + share * wide, top)

    def on_page(points: Iterable[Point]) -> list[Point]:
        return [Point(frame.left + share * (x - left), frame.top - share * (y - upper)) for x, y in points]

    drawn: list[Item] = [Picture(frame, shown.jpeg)]
    for way, dashed in shown.right:
        drawn += _along(on_page(way), 0.3, "accent", DASH if dashed else ())
    drawn += _along(on_page(shown.line), 0.9, "red")
    figure = Group(tuple(drawn), role="figure", alternative=shown.alternative)
    below, y = _paragraph(shown.caption, box, frame.bottom - 0.5, NOTE) if shown.caption else (None, frame.bottom)
    return [figure, *([below] if below else [])], y


def _along(points: Sequence[Point], width: float, ink: Ink, dash: tuple[float, ...] = ()) -> Iterator[Line]:
    """A line with white below it, so that it is seen on any photograph."""
    for one, other in pairwise(points):
        yield Line(one, other, width + 0.4, "white")
    for one, other in pairwise(points):
        yield Line(one, other, width, ink, dash)


def _table(page: FeedbackPage, box: Box, top: float) -> tuple[Item, float]:
    step = 2.1 * CELL
    lefts = [box.left + share * box.width for share in COLUMNS]
    y = top - step
    cells = [with_role("column-head", text(word, Point(x, y), CELL, face="bold"))
             for word, x in zip(page.head, lefts, strict=True)]  # fmt: skip
    rows: list[Item] = [with_role("row", *cells)]
    rules = [Line(Point(box.left, top), Point(box.right, top), 0.35), _rule(box, y)]
    for name, *texts in page.lines:
        y -= step
        named = with_role("row-head", _cell(name, Point(lefts[0], y), lefts[1]))
        written = [
            with_role("cell", _cell(word, Point(x, y), end))
            for word, x, end in zip(texts, lefts[1:], (*lefts[2:], box.right), strict=True)
        ]
        rows.append(with_role("row", named, *written))
        rules.append(_rule(box, y))
    return with_role("table", *rows, *rules), y - 1.5


def _cell(phrase: Phrase | str, at: Point, end: float) -> Item:
    return text(phrase, at, fitting(phrase, CELL, end - at.x - 2.0))


def _rule(box: Box, y: float) -> Line:
    return Line(Point(box.left, y - 1.5), Point(box.right, y - 1.5), 0.18, "rule")


def feedback_page(paper: str, page: FeedbackPage, description: str) -> Page:
    """One learner's page."""
    width, height = PAPERS["letter" if paper in ("letter", "tabloid") else "A4"]
    box = Box(LEFT, OTHER, width - OTHER, height - OTHER)
    items, end = _laid_out(page, box, HIGHEST)
    short = box.bottom + 5.0 - end
    if short > 0.0:
        items, _ = _laid_out(page, box, max(LOWEST, HIGHEST - short))
    foot = text(page.foot, Point(box.left, box.bottom - 1.0), NOTE, ink="ink-2")
    return Page(width, height, (*items, with_role("furniture", foot)), description, description)


def _laid_out(page: FeedbackPage, box: Box, highest: float) -> tuple[list[Item], float]:
    """All of a page but its foot, with a photograph no higher than this; and the height where it ends."""
    y = box.top - HEAD
    size = fitting(page.who, HEAD, 0.72 * box.width, "bold")
    mark = text(page.mark, Point(box.right, y), MARK, "end", face="bold")
    items: list[Item] = [with_role("heading", text(page.who, Point(box.left, y), size, face="bold")),
                         with_role("paragraph", mark)]  # fmt: skip
    paragraph, y = _paragraph(page.sheet, box, y - 1.0, CELL)
    items.append(paragraph)
    if page.photograph is not None:
        shown, y = _photograph(page.photograph, box, y - 3.0, highest)
        items += shown
    paragraph, y = _paragraph(page.headline, box, y - 2.0, BODY, bold=True)
    items.append(paragraph)
    for advice in page.advice:
        paragraph, y = _paragraph(advice, box, y - 1.0)
        items.append(paragraph)
    if page.lines:
        table, y = _table(page, box, y - 4.0)
        items.append(table)
        paragraph, y = _paragraph(page.note, box, y - 0.5, NOTE)
        items.append(paragraph)
    for said in page.result:
        paragraph, y = _paragraph(said, box, y - 1.0)
        items.append(paragraph)
    return items, y
