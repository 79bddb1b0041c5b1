"""The answers to a question paper with what a pile of photographs shows: a drawn answer, and marks for its parts.

What a person typed is never written over: a line that has a drawn answer, or marks for a drawing, stays as it is.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pycore.errors import InputError
from pycore.pages import paper_columns, paper_lines
from pycore.pages.pile import Pile, PileRow
from pycore.pages.question_paper import QuestionPaper, place_of
from pycore.pages.question_paper_marks import columns_of, question_of
from pycore.practice import tables
from pycore.practice.marking import ACCEPT, WRONG
from pycore.practice.tables import TableLine
from pycore.practice.task import CALCULATED, DRAWN
from pycore.words import pile as words
from pycore.words.question_paper import OF_DRAWING, PARTS


@dataclass(frozen=True, slots=True)
class _Line:
    """A line of the answers: its cells by column, and whether it can be changed."""

    number: int
    cells: Mapping[str, str]
    whole: bool


def into_papers(pile: Pile, texts: Sequence[object]) -> list[dict[str, object]]:
    """Return for each paper that got something its number, its answers, and how many were put in and left alone."""
    told: list[dict[str, object]] = []
    for number, kept in {row.paper.paper: row.paper for row in pile.accepted if row.paper}.items():
        rows = [row for row in pile.accepted if row.paper and row.paper.paper == number]
        paper = next(one.paper for one in pile.papers if kept in one.places.values())
        text = texts[number] if number < len(texts) else ""
        answers, put = filled(paper, text if isinstance(text, str) else "", rows)
        told.append({"number": number, "text": answers, "put": put, "left": len(rows) - put,
                     "told": words.put_into(paper.texts["title"], put, len(rows) - put)})  # fmt: skip
    return told


def filled(paper: QuestionPaper, text: str, rows: Sequence[PileRow]) -> tuple[str, int]:
    """Return the answers to a paper with those of these rows, and how many were put in."""
    text = _line_by_line(paper, text)
    listed = tables.read(text, paper_lines.is_row)
    columns = columns_of(listed)
    known = _known(paper, listed[1:] if columns else listed, columns)
    lines, put = text.rstrip("\n").split("\n") if text.strip() else [], 0
    for row in rows:
        cells = cells_of(row)
        if row.paper is None or not cells:
            continue
        key = (row.place, row.paper.question.number)
        before = known.get(key)
        if before is None:
            lines.append(_written(paper, key, cells, columns))
        elif before.whole and not any(before.cells.get(name, "").strip() for name in (DRAWN, *OF_DRAWING, "decided")):
            lines[before.number - 1] = _written(paper, key, {**before.cells, **cells}, columns)
        else:
            continue
        known[key] = _Line(len(lines), cells, whole=False)
        put += 1
    return "\n".join(lines), put


def _line_by_line(paper: QuestionPaper, text: str) -> str:
    """The answers with a line for each question, where a row holds several: a line can be added to those alone."""
    try:
        lines = paper_columns.unfolded(paper, tables.read(text, paper_lines.is_row))
    except InputError:
        return text
    return "\n".join("; ".join(tables.cell(one, ";") for one in line.cells) for line in lines) if lines else text


def cells_of(row: PileRow) -> dict[str, str]:
    """Return what a row says of a drawing: the answer that it shows, and the marks of the parts that are sure."""
    drawing = row.drawing
    if drawing is None or row.paper is None:
        return {}
    shown = words.drawn_answer(drawing.found, drawing.unit, drawing.angle) if drawing.found else ""
    cells = {DRAWN: shown} if shown else {}
    worth = dict(row.paper.question.parts(OF_DRAWING))
    for part, band in zip(OF_DRAWING, drawing.by_part, strict=False):
        if part in worth and band in (ACCEPT, WRONG):
            cells[part] = str(worth[part] if band == ACCEPT else 0)
    return cells


def _known(paper: QuestionPaper, lines: Sequence[TableLine], columns: Sequence[str]) -> dict[tuple[int, int], _Line]:
    """The lines that can be read, by learner and question."""
    found: dict[tuple[int, int], _Line] = {}
    for line in lines:
        cells = paper_lines.headed(columns or paper_lines.BEFORE, line.cells)
        try:
            place, question = place_of(paper, cells.get("learner", "")), question_of(paper, cells.get("question", ""))
        except (InputError, ValueError):
            continue
        if not columns:
            cells |= paper_lines.in_order(question, line.cells[len(paper_lines.BEFORE) :])
        # Of a line over several lines of text, or of a table with columns of its own, nothing is lost.
        whole = not line.open_quote and not any("\n" in cell for cell in line.cells) and "" not in columns
        found.setdefault((place, question.number), _Line(line.number, cells, whole))
    return found


def _written(paper: QuestionPaper, key: tuple[int, int], cells: Mapping[str, str], columns: Sequence[str]) -> str:
    """A line of the answers as its table has it."""
    place, number = key
    question = paper.questions[number - 1]
    if columns:
        order = list(columns)
    elif question.asks == "both":
        order = [*paper_lines.BEFORE, DRAWN, CALCULATED, *PARTS]
    else:
        order = [*paper_lines.BEFORE, DRAWN, *(part for part, _ in question.marks)]
    who = {"learner": _who(paper, place), "question": str(number)}
    row = [{**cells, **who}.get(name, "") if at == order.index(name) else "" for at, name in enumerate(order)]
    while row and not row[-1]:
        row.pop()
    return "; ".join(tables.cell(one, ";") for one in row)


def _who(paper: QuestionPaper, place: int) -> str:
    """A learner's name where it is theirs alone, else the number."""
    name = paper.name(place).whole
    try:
        return name if name and place_of(paper, name) == place else str(place)
    except InputError:
        return str(place)
