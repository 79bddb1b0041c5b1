"""A class's marked answers as rows of text: numbers as numbers, each with its unit in a column of its own or at the
head of its column, one decimal mark throughout."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pycore.practice import tables
from pycore.practice.answers import AnswerJudgement, Entry
from pycore.practice.task import Task
from pycore.practice.typed import LENGTHS, TypedSize, size_in
from pycore.quantity import NumberFormat, fixed, plain, unit_parts
from pycore.words import marks as words


@dataclass(frozen=True, slots=True)
class MarkedLine:
    """One line of a class's answers, marked: its number, its learner, the answer as typed and as this module writes
    it, the band, the deviations of size (quantity) and angle (degrees), the number format, the classes of mistakes that
    would give it (keys and names), the marks from and to, remarks, the learner's place in the set (0: none, or
    an earlier line has it), and the marks of each step: first step, length, angle (if one is asked for)."""

    line: int
    name: str
    code: str
    cells: Mapping[str, str]
    answer_cells: tuple[str, ...]
    band: str
    size_off: float | None
    angle_off: float | None
    writing: NumberFormat
    keys: tuple[tuple[str, ...], ...]
    causes: tuple[tuple[str, ...], ...]
    verdict: str
    marks: tuple[int, int]
    remarks: tuple[str, ...] = ()
    place: int = 0
    by_step: tuple[tuple[int, int], ...] = ()


@dataclass(frozen=True, slots=True)
class RefusedLine:
    """A line that could not be used: its number, why, and the code as it was typed with the one of the set that is
    likely meant ("" for none)."""

    line: int
    why: str
    typed: str = ""
    meant: str = ""


def is_near(typed: str, code: str) -> bool:
    """Whether a typed code differs from another in one character, or in two that are swapped."""
    signs = [sign for sign in typed.upper() if sign.isalnum()]
    others = [sign for sign in code if sign.isalnum()]
    if len(signs) != len(others):
        return False
    apart = [place for place, sign in enumerate(signs) if sign != others[place]]
    if len(apart) != 2:
        return len(apart) == 1
    one, two = apart
    return signs[one] == others[two] and signs[two] == others[one]


def _number(task: Task, typed: TypedSize, unit: str, mark: str) -> str:
    """A typed size as a number in a unit, as finely as it was typed."""
    size = size_in(task, typed)
    written = size * task.factor / LENGTHS[unit] if unit in LENGTHS else size / task.writing.factor
    return tables.ascii_number(plain(written, mark))


def _direction(entry: Entry | None, mark: str) -> tuple[str, str]:
    """An angle as a number, and its side."""
    if entry is None or entry.direction is None:
        return "", ""
    direction = entry.direction
    side = " ".join(word for word in (direction.side, words.RETURNING[0] if direction.returning else "") if word)
    return tables.ascii_number(plain(direction.degrees, mark)), side


def given_cells(task: Task, reply: AnswerJudgement, cells: Mapping[str, str], mark: str) -> tuple[str, ...]:
    """What a learner gave: answer, unit, angle, side, how; first diagonal, its angle, its side."""
    answer, first = reply.entries[""], reply.entries.get("first")
    unit = answer.size.unit
    found = _number(task, first.size, unit, mark) if first is not None else ""
    how = words.HOWS[cells.get("answer-how", "").lower()]
    number = _number(task, answer.size, unit, mark)
    parts = unit_parts(answer.size.named) if answer.size.other else None
    if parts is not None:
        # With a wrong unit in a column of its own, the number pasted again would be read in the right one.
        number, unit = f"{tables.ascii_number(plain(answer.size.number, mark))} {parts[1]}", ""
    return (
        number, unit, *_direction(answer, mark), how, found, *_direction(first, mark),
    )  # fmt: skip


def table_of(results: Sequence[MarkedLine], mark: str, of: int) -> list[list[str]]:
    """The head line, then a line for each result; what answers are off by stands in the first one's unit."""
    writing = results[0].writing if results else None
    rows = [list(words.table_head(writing.unit if writing else ""))]
    for one in results:
        factor = writing.factor if writing else 1.0
        decimals = one.writing.decimals_in(factor) + 1
        off = "" if one.size_off is None else tables.ascii_number(fixed(one.size_off / factor, decimals, mark))
        turned = "" if one.angle_off is None else tables.ascii_number(fixed(one.angle_off, 1, mark))
        remarks = "; ".join((one.verdict, *one.remarks)).strip("; ")
        low, high = one.marks
        rows.append([
            str(one.line), one.name, one.code, *one.answer_cells,
            words.BANDS[one.band], off, turned,
            remarks, str(low), str(high), str(of),
        ])  # fmt: skip
    return rows
