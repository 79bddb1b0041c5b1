"""The column of words beside the field, or the two columns of the band below it. In mm.

A problem: question, given values, room for results and for working. A solved sheet: the answer, its table, numbered
steps. An overlay: how it is laid on, and the table. Where there is little room, rows and lines move closer together;
the room for working goes first, then the steps. The figure never moves for them.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import ClassVar

from pycore.drawing import Group, Item, with_role
from pycore.geometry import Box, Point
from pycore.sheet.media import Layout
from pycore.sheet.parts import Lines, Part, lines_of
from pycore.sheet.sheet_text import SheetText
from pycore.sheet.table import Table
from pycore.sheet.worksheet import Given, Results, working

EACH, RUNNING, NO_STEPS = "each", "running", ""
"""Numbered steps each on a line of its own, one after another, or none."""


@dataclass(frozen=True, slots=True)
class _Fit:
    """Sizes with which a column is tried: table rows, capitals of the sentence and of notes, line spacing, gaps
    between parts, the least room for working (0: none), and how the numbered steps are set."""

    row: float
    question: float
    note: float
    spacing: float
    gap: float
    working: float
    steps: str = EACH


FITS = (
    _Fit(7.5, 3.5, 2.5, 1.75, 3.2, 16.0), _Fit(7.0, 3.5, 2.5, 1.7, 2.8, 14.0), _Fit(6.5, 3.5, 2.5, 1.65, 2.4, 12.0),
    _Fit(6.0, 3.2, 2.5, 1.6, 2.0, 10.0), _Fit(5.6, 3.0, 2.4, 1.5, 1.6, 10.0),
    _Fit(6.5, 3.2, 2.5, 1.65, 2.2, 0.0, RUNNING), _Fit(6.0, 3.0, 2.5, 1.6, 2.0, 0.0, RUNNING),
    _Fit(5.5, 2.8, 2.4, 1.55, 1.8, 0.0, RUNNING), _Fit(5.2, 2.5, 2.3, 1.5, 1.5, 0.0, RUNNING),
    _Fit(5.2, 2.5, 2.3, 1.5, 1.5, 0.0, NO_STEPS),
    _Fit(5.0, 2.4, 2.1, 1.45, 1.2, 0.0, NO_STEPS), _Fit(4.6, 2.2, 1.95, 1.45, 1.0, 0.0, NO_STEPS),
    _Fit(4.2, 2.0, 1.8, 1.42, 0.8, 0.0, NO_STEPS), _Fit(4.0, 1.9, 1.7, 1.42, 0.5, 0.0, NO_STEPS),
)  # fmt: skip
"""The first that fits is used."""
LEAST_BESIDE = 2.3
"""The least capitals of notes beside words on drawing by hand: these words give way to smaller ones."""
CLOSEST = _Fit(5.2, 2.8, LEAST_BESIDE, 1.48, 1.2, 10.0)
"""Tried for the sake of these words only."""
STEP_GAP = 1.0
"""Between numbered steps."""
LETTER = 0.66
"""About the mean width of a letter, in capitals: how much room long sentences take is estimated, not set."""


def column(layout: Layout, writing: SheetText) -> tuple[Group, ...]:
    """Return words and tables of a usual sheet, in the order in which they are read."""
    boxes = _columns(layout, writing)
    for fit, hand, place in _tries(writing, len(boxes)):
        sets = _parts(layout, writing, fit, boxes)
        sets[place].extend([lines_of(hand, fit.note, fit.spacing, boxes[place].width)] if hand else [])
        heights = [_height(parts, fit.gap) for parts in sets]
        left = [box.height - high for box, high in zip(boxes, heights, strict=True)]
        least = fit.gap + fit.working + 1.0 if writing.work and fit.working else 0.0
        if min(left) >= 0.0 and max(left) >= least:
            break
    groups: list[Group] = []
    # The question or the answer first: so the sheet is read aloud.
    for box, parts, spare in reversed(list(zip(boxes, sets, left, strict=True))):
        y = box.top
        for part in parts:
            drawn = part.drawn(Point(box.left, y), box.width)
            groups.append(Group(tuple(drawn), name="table" if part.is_table else "words"))
            y -= part.height + fit.gap
        squares = Box(box.left, box.bottom, box.right, y)
        if writing.work and squares.height >= max(10.0, fit.working) and spare == max(left):
            groups.append(Group(tuple(working(squares, writing.work.working, layout.style.note)), name="table"))
    return tuple(groups)


def _tries(writing: SheetText, columns: int) -> Iterator[tuple[_Fit, str, int]]:
    """Return with what the columns are tried: sizes, the words on drawing by hand ("" for none), their column. Room for
    working is worth more than these words, these are worth more than large letters, letters that are read with ease
    more than these."""
    for works in (True, False):
        fits = [fit for fit in FITS if (fit.working > 0.0) == works]
        beside = [fit for fit in (*fits, *((CLOSEST,) if works else ())) if fit.note >= LEAST_BESIDE]
        for hand in writing.work.by_hand if writing.work else ():
            yield from ((fit, hand, place) for place in reversed(range(columns)) for fit in beside)
        yield from ((fit, "", 0) for fit in fits)


def _height(parts: Sequence[Part], gap: float) -> float:
    return math.fsum(part.height for part in parts) + gap * max(0, len(parts) - 1)


def _columns(layout: Layout, writing: SheetText) -> tuple[Box, ...]:
    """Return the columns, reaching down to the title block where there is no code."""
    opens = bool(writing.code or writing.short_code or any(writing.code_words))
    box = layout.table
    table = box if opens else Box(box.left, layout.code.bottom, box.right, box.top)
    return (table,) if layout.landscape else (table, layout.words)


@dataclass(frozen=True, slots=True)
class _Steps:
    """Numbered steps, one below the other."""

    steps: tuple[Lines, ...]
    is_table: ClassVar[bool] = False

    @property
    def height(self) -> float:
        """Their height with the gaps between them, mm."""
        return _height(self.steps, STEP_GAP)

    def drawn(self, at: Point, width: float) -> tuple[Item, ...]:
        """Return the steps one below the other."""
        items, y = list[Item](), at.y
        for step in self.steps:
            items += step.drawn(Point(at.x, y), width)
            y -= step.height + STEP_GAP
        return (with_role("list", *items),)


def _parts(
    layout: Layout, writing: SheetText, fit: _Fit, boxes: Sequence[Box]
) -> tuple[list[Part], ...]:
    """Return the parts of each column: all in one, or tables in the first and words in the second."""
    style, work = layout.style, writing.work
    words = boxes[-1]
    sentence: list[Part] = [lines_of(writing.sentence, fit.question, 1.5, words.width)] if writing.sentence else []
    second: list[Part] = [lines_of(line, fit.question, 1.5, words.width) for line in writing.second_scale[:1]]
    notes: list[Part] = [lines_of(note, fit.note, fit.spacing, words.width) for note in writing.notes if note]
    set_tables: list[Part] = (
        [Given(style, work, fit.row), Results(style, work, fit.row)] if work
        else [Table(style, writing.head, writing.rows, fit.row)] if writing.rows else []
    )  # fmt: skip
    if len(boxes) == 2:
        parts: tuple[list[Part], ...] = (set_tables, [*sentence, *notes, *second])
    elif work:
        parts = ([*sentence, *notes, set_tables[0], *second, *set_tables[1:]],)
    else:
        parts = ([*sentence, *set_tables, *second, *notes],)
    if writing.steps and fit.steps:
        # In the band they stand where there is more room.
        spare = [box.height - _height(some, fit.gap) for box, some in zip(boxes, parts, strict=True)]
        roomiest = spare.index(max(spare))
        parts[roomiest].append(_steps(writing.steps, fit, boxes[roomiest].width, spare[roomiest] - fit.gap))
    return parts


def _steps(steps: Sequence[tuple[str, str]], fit: _Fit, width: float, room: float) -> Part:
    """Return the numbered steps each on its own line, or one after another."""
    if fit.steps == EACH:
        spacing, chosen = max(fit.spacing - 0.15, 1.42), _chosen(steps, fit, width, room)
        return _Steps(tuple(
            lines_of(step, fit.note, spacing, width, str(number)) for number, step in enumerate(chosen, start=1)
        ))  # fmt: skip
    run = " ".join(f"({number}) {short}" for number, (_, short) in enumerate(steps, start=1))
    return lines_of(run, fit.note, fit.spacing, width)


def _chosen(steps: Sequence[tuple[str, str]], fit: _Fit, width: float, room: float) -> list[str]:
    """Return the steps whole if they will fit, else each in few words."""
    letters = (width - 2.2 * fit.note) / (LETTER * fit.note)
    lines = math.fsum(int(len(whole) / letters) + 1.0 for whole, _ in steps)
    high = lines * fit.spacing * fit.note + len(steps) * (STEP_GAP + 0.5 * fit.note)
    return [whole if high <= room else short for whole, short in steps]
