"""The pages of a question paper that hold no drawing: the front page, and a question with space for working. In mm."""

from collections.abc import Sequence
from dataclasses import dataclass

from pycore.drawing import Item, Line, Page, with_role
from pycore.geometry import Box, Point
from pycore.sheet.lettered import fitting, text, width_of, wrapped
from pycore.sheet.media import PAPERS
from pycore.sheet.sheet_text import Cell
from pycore.sheet.worksheet import working
from pycore.words.phrase import with_symbols

LEFT, OTHER = 20.0, 15.0
"""Left margin (for filing) and all other margins."""
HEAD, SUBHEAD, BODY, NOTE = 5.0, 3.6, 2.9, 2.5
"""Heights of capitals."""
STEP = 2.1
"""Line spacing, in capitals."""
RULED = 9.0
"""Distance of ruled lines."""
PAD = 2.4


@dataclass(frozen=True, slots=True)
class FrontPage:
    """What a front page says: college, title, pairs of label and text ("": to be written by hand), instructions, heads
    and rows of the table of marks, what the marker fills in, and the line at the foot."""

    college: str
    title: str
    entries: tuple[Cell, ...]
    instructions: str
    heads: tuple[str, str, str]
    rows: tuple[tuple[str, str], ...]
    total: tuple[str, str]
    marker: tuple[str, ...]
    foot: str


@dataclass(frozen=True, slots=True)
class QuestionPage:
    """What a question's page says: its name and marks, paragraphs, parts to be answered, the space for working
    (``lines`` or ``squares``) with its head, the label of the answer's line, and the foot."""

    title: str
    marks: str
    paragraphs: tuple[str, ...]
    parts: tuple[str, ...]
    space: str
    space_head: str
    answer: str
    foot: str


def _box(paper: str) -> tuple[tuple[float, float], Box]:
    """Width and height of a page, and the part of it that is written on; larger paper has pages of A4."""
    size = PAPERS[{"tabloid": "letter", "A2": "A4", "A3": "A4"}.get(paper, paper)]
    return size, Box(LEFT, OTHER, size[0] - OTHER, size[1] - OTHER)


def _paragraph(words: str, box: Box, top: float, capitals: float = BODY) -> tuple[Item, float]:
    """A paragraph below a height, and the height where it ends."""
    lines = wrapped(words, capitals, box.width)
    step = STEP * capitals
    written = [
        text(with_symbols(line), Point(box.left, top - index * step), capitals)
        for index, line in enumerate(lines, start=1)
    ]
    return with_role("paragraph", *written), top - step * len(lines)


def _foot(words: str, box: Box) -> Item:
    return with_role("furniture", text(words, Point(box.left, box.bottom - 1.0), NOTE, ink="ink-2"))


def _line(left: float, right: float, y: float, width: float = 0.18) -> Line:
    return Line(Point(left, y), Point(right, y), width, "rule" if width < 0.3 else "ink")


def front_page(paper: str, front: FrontPage, description: str) -> Page:
    """The first page of a learner's question paper."""
    (width, height), box = _box(paper)
    items: list[Item] = []
    y = box.top
    if front.college:
        y -= SUBHEAD
        size = fitting(front.college, SUBHEAD, box.width)
        items.append(with_role("paragraph", text(front.college, Point(box.left, y), size)))
        y -= 5.0
    size = fitting(front.title, HEAD, box.width, "bold")
    y -= size
    items.append(with_role("heading", text(front.title, Point(box.left, y), size, face="bold")))
    y -= 3.0
    entered, y = _entries(front.entries, box, y)
    items += entered
    if front.instructions:
        paragraph, y = _paragraph(front.instructions, box, y - 3.0)
        items.append(paragraph)
    items += [_marks_table(front, box, y - 7.0), *_marker(front.marker, box)]
    return Page(width, height, (*items, _foot(front.foot, box)), front.title, description)


def _entries(entries: Sequence[Cell], box: Box, top: float) -> tuple[list[Item], float]:
    """Labels with their texts, two in a row; what has no text has a line to write on."""
    items: list[Item] = []
    half = (box.width - 8.0) / 2
    y = top
    for index, (label, words) in enumerate(entries):
        wide = index == 0
        column = 0 if wide else (index - 1) % 2
        if column == 0:
            y -= 10.0
        left = box.left + column * (half + 8.0)
        right = box.right if wide else left + half
        size = fitting(words, BODY, right - left - 26.0)
        items.append(with_role("paragraph", text(label, Point(left, y), NOTE, ink="ink-2"),
                               text(words, Point(left + 26.0, y), size)))  # fmt: skip
        items.append(_line(left + 25.0, right, y - 1.4))
    return items, y - 5.0


def _marker(labels: Sequence[str], box: Box) -> list[Item]:
    """Lines for who marks the paper, above the foot."""
    items: list[Item] = []
    share, base = box.width / len(labels), box.bottom + 10.0
    for index, label in enumerate(labels):
        left = box.left + index * share
        word = text(label, Point(left, base), NOTE, ink="ink-2")
        ruled = _line(left + width_of(label, NOTE) + 2.0, left + share - 4.0 * (index < len(labels) - 1), base - 1.4)
        items += [with_role("paragraph", word), ruled]
    return items


def _marks_table(front: FrontPage, box: Box, top: float) -> Item:
    """Each question with its marks and an empty cell, then the total."""
    step = BODY + 2 * PAD
    columns = (box.left, box.right - 58.0, box.right - 30.0, box.right)
    rows = [front.heads, *((*row, "") for row in front.rows), (*front.total, "")]
    items: list[Item] = []
    for index, row in enumerate(rows):
        base = top - index * step - BODY - PAD
        face = "bold" if index in (0, len(rows) - 1) else "regular"
        ends = (columns[0] + 1.5, columns[2] - 3.0, columns[3] - 1.5)
        cells = []
        for place, (words, x) in enumerate(zip(row, ends, strict=True)):
            role = "column-head" if index == 0 else "row-head" if place == 0 else "cell"
            anchor = "start" if place == 0 else "end"
            capitals = fitting(words, BODY, columns[1] - columns[0] - 3.0, face) if place == 0 else BODY  # type: ignore[arg-type]
            written = text(words, Point(x, base), capitals, anchor, face=face)  # type: ignore[arg-type]
            cells.append(with_role(role, *((written,) if words else ())))  # type: ignore[arg-type]
        items.append(with_role("row", *cells))
    low = top - len(rows) * step
    rules = [_line(box.left, box.right, top - index * step, 0.35 if index in (0, 1, len(rows) - 1, len(rows)) else 0.18)
             for index in range(len(rows) + 1)]  # fmt: skip
    upright = [Line(Point(x, top), Point(x, low), 0.18, "rule") for x in columns[1:3]]
    return with_role("table", *items, *rules, *upright)


def question_page(paper: str, question: QuestionPage, description: str) -> Page:
    """One question with its parts and its space for working."""
    (width, height), box = _box(paper)
    y = box.top - SUBHEAD
    items: list[Item] = [
        with_role("heading", text(question.title, Point(box.left, y), SUBHEAD, face="bold")),
        with_role("paragraph", text(question.marks, Point(box.right, y), BODY, "end")),
    ]
    y -= 2.5
    for words in question.paragraphs:
        paragraph, y = _paragraph(words, box, y)
        items.append(paragraph)
        y -= 2.0
    for index, words in enumerate(question.parts):
        letter = f"({'abcdefgh'[index]})  " if len(question.parts) > 1 else ""
        paragraph, y = _paragraph(letter + words, box, y)
        items.append(paragraph)
        y -= 2.0
    items += _space(question, box._replace(top=y - 3.0))
    return Page(width, height, (*items, _foot(question.foot, box)), question.title, description)


def _space(question: QuestionPage, box: Box) -> list[Item]:
    """The space for working, and the line for the answer where there is one."""
    low = box.bottom + (RULED + 6.0 if question.answer else 6.0)
    items: list[Item] = []
    if question.answer:
        base = box.bottom + 6.0
        label = text(question.answer, Point(box.left, base), BODY, face="bold")
        items += [with_role("paragraph", label), _line(box.left + 24.0, box.right, base - 1.4, 0.35)]
    if box.top - low < 2 * RULED:
        return items
    if question.space == "squares":
        return [*items, *working(box._replace(bottom=low), question.space_head, NOTE)]
    if question.space == "lines":
        count = int((box.top - low) / RULED)
        items += [_line(box.left, box.right, box.top - index * RULED) for index in range(1, count + 1)]
    return items
