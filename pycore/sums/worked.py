"""A worked solution for paper: the lines of the calculation that a page shows, and its tables."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from pycore.practice.task import Task
from pycore.sums.answer import Block, BulletList, Equation, Grid, Paragraph, Working
from pycore.words import plain
from pycore.words.answers import PREDICT_FIRST
from pycore.words.formula_line import segments
from pycore.words.phrase import Phrase

COMPONENTS = "components"
OWN = ("formula", "values", "back", "millman", "orders", "components-all")
"""Workings of the rooms that calculate what is asked for."""


@dataclass(frozen=True, slots=True)
class WorkedLine:
    """A line of a worked solution: the parts between which it may be broken; a sentence is one part."""

    parts: tuple[Phrase, ...]
    sentence: bool = False


@dataclass(frozen=True, slots=True)
class WorkedPart:
    """Lines, or a table: its heads and rows; ``title`` of the working that it begins, "" for what goes on."""

    title: str
    lines: tuple[WorkedLine, ...] = ()
    table: Grid | None = None


def worked_parts(workings: Iterable[Working], task: Task) -> Iterator[WorkedPart]:
    """Return the calculation that leads to the answer of a task. The components of a drawn sum are part of it only
    where that sum is asked for."""
    summed = task.in_steps and task.drawing is None
    for working in workings:
        if working.key in OWN or (working.key == COMPONENTS and summed):
            yield from _parts(working)


def _parts(working: Working) -> Iterator[WorkedPart]:
    title, lines = plain(working.title), list[WorkedLine]()
    for block in working.blocks:
        if isinstance(block, Grid):
            if lines or title:
                yield WorkedPart(title, tuple(lines))
            title, lines = "", []
            yield WorkedPart("", table=block)
        else:
            lines += _lines(block)
    if lines:
        yield WorkedPart(title, tuple(lines))


def _lines(block: Block) -> Iterator[WorkedLine]:
    """Return the lines of a block; moves of the drawing, pictures, and the advice to estimate are none of a
    calculation."""
    match block:
        case Paragraph(phrase=phrase) if phrase != PREDICT_FIRST:
            yield WorkedLine((phrase,), sentence=True)
        case Equation(lines=lines, before=before):
            if before:
                yield WorkedLine((before,), sentence=True)
            for line in lines:
                yield WorkedLine(segments(line))
        case BulletList(items=items):
            for item in items:
                yield WorkedLine((item,), sentence=True)
