"""The key of a class set laid out: answers, then what usual mistakes give, as tables for paper and as text."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from pycore.drawing import Page
from pycore.forms.conventions import MARKS as DECIMAL_MARKS
from pycore.lettering.glyphs import NO_LETTERS, Letters
from pycore.pages.class_set import ClassSet, shortened
from pycore.practice import key, key_table
from pycore.practice.key import Amount, KeyRow, MistakeColumn
from pycore.practice.task import CALCULATED, DRAWN, NO_LIMITS
from pycore.quantity import NumberFormat
from pycore.sheet import ledger
from pycore.sheet.ledger import ColumnHeading, Ledger, Lines
from pycore.sheet.lettered import wrapped
from pycore.words import class_set as set_words
from pycore.words import key as words
from pycore.words import plain
from pycore.words.inputs import with_mark
from pycore.words.phrase import Phrase
from pycore.words.sheet import FOOT

LETTERS = "abcdefghijklmnopqrstuvwxyz"
LEAST_GAP = 2.0
HEAD_ROOM = 22.0
NAME_ROOM = 40.0
"""mm for a name; it stands whole in the table of text."""
WAYS = (DRAWN, CALCULATED)


@dataclass(frozen=True, slots=True)
class KeyHead:
    """What stands over the tables of a key: the title and notes of the first one, the code, the paper, and letters that
    our faces lack."""

    title: str
    code: str
    notes: tuple[str, ...]
    paper: str
    letters: Letters = NO_LETTERS
    tolerance: tuple[str, ...] = (words.TOLERANCE,)
    apart: bool = False
    """Whether the first table begins a page."""


def _title(group: ClassSet) -> str:
    tiers, methods = dict(set_words.TIERS), dict(set_words.METHODS)
    method = words.OWN_METHOD if group.method == "any" else methods[group.method]
    return words.heading(group.topic.title, tiers[group.code.tier], method)


Counts = tuple[int, int]
"""How many pages of the file hold problem sheets, and how many overlays."""


def ranges_of(counts: Counts) -> tuple[str, str]:
    """Which pages of the file problem sheets and overlays are on, "" for none."""
    ranges, first = [], 1
    for count in counts:
        last = first + count - 1
        ranges.append("" if not count else f"{first}–{last}" if count > 1 else f"{first}")
        first = last + 1
    return ranges[0], ranges[1]


def _notes(group: ClassSet, counts: Counts, *, angled: bool) -> tuple[str, ...]:
    mark = DECIMAL_MARKS[group.chosen.get("decimal", "point")]
    limits = with_mark(words.hand_tolerance(angled=angled), mark) if group.limits == NO_LIMITS else words.OWN_TOLERANCE
    return (
        words.back(str(group.code)),
        f"{words.page_ranges(*ranges_of(counts))} {words.lengths_at(group.chosen['scale'] == 'open')} "
        + words.marks(*group.marks, angled=angled),
        limits,
    )


def _name(row: KeyRow, letters: Letters) -> Lines:
    """Name above code; a name that cannot be set is the learner's number."""
    if not row.name:
        return (row.code,)
    short = shortened(row.name, NAME_ROOM, ledger.CELL, letters)
    return letters.set(short) or set_words.by_number(row.place), row.code


def _symbol(rows: Sequence[KeyRow]) -> Phrase:
    """What is asked for, at the head of its column; a plain word where that differs."""
    return (words.RESULT,) if key.varied(rows) else rows[0].symbol


def _amount(amount: Amount, unit: str) -> Lines:
    return (f"{amount.size} {unit}", f"{amount.length} mm" if amount.length else "")


def _tolerance(row: KeyRow) -> Lines:
    return tuple(f"± {amount} {unit}" for amount, unit in ((row.tolerance.size, row.unit), (row.tolerance.length, "mm"))
                 if amount)  # fmt: skip


def _angle(amount: Amount, tolerance: str = "") -> Lines:
    return (f"{amount.angle} ± {tolerance}" if tolerance else amount.angle, amount.side)


@dataclass(frozen=True, slots=True)
class KeyColumns:
    """Which columns the first table of a key has: the values by their labels, angles given, each row's own symbol,
    the angle found, the first diagonal, the scale."""

    labels: Sequence[str]
    turned: bool
    varied: bool
    angled: bool
    first: bool
    scaled: bool


def columns_of(rows: Sequence[KeyRow]) -> KeyColumns:
    """The columns that some learner of a set needs."""
    return KeyColumns(
        labels=key.labels(rows),
        turned=any(not amount.size for row in rows for _, amount in row.problem_values),
        varied=key.varied(rows),
        angled=any(row.tolerance.angle for row in rows),
        first=any(row.first is not None for row in rows),
        scaled=any(row.scale for row in rows),
    )


def _answer_row(row: KeyRow, columns: KeyColumns, letters: Letters) -> tuple[Lines, ...]:
    """One learner's line."""
    cells: list[Lines] = [(str(row.place),), _name(row, letters)]
    values = dict(row.problem_values)
    for label in columns.labels:
        amount = values.get(label, Amount(""))
        cells.append(_amount(amount, row.unit) if amount.length else (amount.size,))
    if columns.turned:
        cells.append((", ".join(amount.angle for _, amount in row.problem_values if not amount.size),))
    if columns.scaled:
        cells.append((row.scale,))
    if columns.varied:
        cells.append((row.symbol, words.from_line(row.origin)))
    cells += [_amount(row.result, row.unit), _tolerance(row)]
    if columns.angled:
        cells.append(_angle(row.result, row.tolerance.angle))
    if columns.first and row.first is not None:
        name, found = row.first
        cells += [((*name, f": {found.size} {row.unit}"), f"{found.length} mm"), _angle(found)]
    elif columns.first:
        cells += [("",), ("",)]
    return tuple(cells)


def head_of(group: ClassSet, rows: Sequence[KeyRow], counts: Counts) -> KeyHead:
    """What stands over a class set's key."""
    angled = columns_of(rows).angled
    notes = _notes(group, counts, angled=angled)
    return KeyHead(_title(group), str(group.code), notes, group.code.paper, group.letters)


def answers(head: KeyHead, rows: Sequence[KeyRow]) -> Ledger:
    """The first table: what is given and what is right."""
    columns = columns_of(rows)
    headings = [ColumnHeading((words.PLACE,)), ColumnHeading((words.NAME, words.CODE), "start")]
    headings += [ColumnHeading(tuple(wrapped(label, ledger.CELL, HEAD_ROOM))) for label in columns.labels]
    if columns.turned:
        headings.append(ColumnHeading((words.LAGS,)))
    if columns.scaled:
        headings.append(ColumnHeading((words.SCALE,)))
    if columns.varied:
        headings.append(ColumnHeading((words.ASKED, words.ORIGIN)))
    headings += [ColumnHeading((_symbol(rows),)), ColumnHeading(head.tolerance)]
    if columns.angled:
        headings.append(ColumnHeading((words.ANGLE_SHORT,)))
    if columns.first:
        headings += [ColumnHeading((words.FIRST,)), ColumnHeading((words.FIRST_ANGLE_SHORT,))]
    lines = tuple(_answer_row(row, columns, head.letters) for row in rows)
    return Ledger(head.title, head.code, head.notes, (), tuple(headings), lines, FOOT, 2, head.apart)


def beyond(head: KeyHead, rows: Sequence[KeyRow]) -> Iterator[Ledger]:
    """The table of answers to the question beyond the problem, where sheets ask one."""
    asked = [(row, *row.further) for row in rows if row.further is not None]
    if not asked:
        return
    headings = (
        ColumnHeading((words.PLACE,)), ColumnHeading((words.NAME, words.CODE), "start"), ColumnHeading((asked[0][1],)),
        ColumnHeading((words.ANGLE_SHORT,)),
    )  # fmt: skip
    lines = tuple(
        ((str(row.place),), _name(row, head.letters), (f"{found.size} {row.unit}",), _angle(found))
        for row, _, found in asked
    )
    yield Ledger(words.FOR_ZERO, head.code, (), (), headings, lines, FOOT, 2)


def sign(number: int) -> str:
    """The sign of a column: a, b, ... z, aa, ab ..."""
    more, last = divmod(number, len(LETTERS))
    return (sign(more - 1) if more else "") + LETTERS[last]


def _slip_cell(column: MistakeColumn, row: KeyRow, how: str, writing: NumberFormat) -> Lines:
    """What mistakes give for one learner, in the unit of the whole table."""
    slip = column.slip(row, how)
    if slip is None:
        return ("",)
    written = key.in_unit(slip.written, slip.size, row.writing, writing)
    return (written if slip.told_apart else f"({written})",)


def _filled(widths: Sequence[float], room: float, most: int) -> list[slice]:
    """Columns put on tables one after another, each as full as its room and ``most`` columns allow."""
    slices, start, used = [], 0, 0.0
    for index, width in enumerate(widths):
        if index > start and (used + width + LEAST_GAP > room or index - start == most):
            slices.append(slice(start, index))
            start, used = index, 0.0
        used += width + LEAST_GAP
    return [*slices, slice(start, len(widths))]


def _fitting(widths: Sequence[float], room: float) -> list[slice]:
    """Columns on as few tables as their widths allow, about as many on each."""
    fewest = len(_filled(widths, room, len(widths)))
    return _filled(widths, room, -(-len(widths) // fewest))


def slips(head: KeyHead, rows: Sequence[KeyRow], how: str, listed: Sequence[MistakeColumn]) -> Iterator[Ledger]:
    """Tables of what usual mistakes give, made in one way; several where there are many mistakes."""
    heads = [ColumnHeading((words.PLACE,)), ColumnHeading((words.CODE,), "start"), ColumnHeading((_symbol(rows),))]
    writing = rows[0].writing
    firsts: list[tuple[Lines, ...]] = [
        ((str(row.place),), (row.code,), (key.in_unit(row.result.size, row.result.value, row.writing, writing),))
        for row in rows
    ]
    signs = [sign(number) for number in range(len(listed))]
    cells = [tuple(_slip_cell(column, row, how, writing) for column in listed) for row in rows]
    columns = [ColumnHeading((one,)) for one in signs]
    widths = ledger.natural_widths(columns, cells)
    first = 0.0
    for width in ledger.natural_widths(heads, firsts):
        first += width + LEAST_GAP
    notes = (f"{words.other_unit(writing.unit)} {words.IN_BRACKETS}",)
    for part in _fitting(widths, ledger.room_across(head.paper) - first):
        legend = tuple(
            (one, words.legend([plain(name) for name in column.names]))
            for one, column in zip(signs[part], listed[part], strict=True)
        )
        lines = tuple((*start, *own[part]) for start, own in zip(firsts, cells, strict=True))
        yield Ledger(
            words.SLIPS[how], head.code, notes, legend, (*heads, *columns[part]), lines, FOOT
        )


def tables_of(head: KeyHead, rows: Sequence[KeyRow], ways: Sequence[str] = WAYS) -> Iterator[Ledger]:
    """Every table of a key: the answers, what usual mistakes give by these ways, and the question beyond."""
    yield answers(head, rows)
    for how in ways:
        listed = key.columns(rows, how)
        if listed:
            yield from slips(head, rows, how, listed)
    yield from beyond(head, rows)


def pages(group: ClassSet, rows: Sequence[KeyRow], before: Counts) -> Iterator[Page]:
    """Every page of the key, numbered through; ``before``: the pages of the file that stand before it."""
    ledgers = list(tables_of(head_of(group, rows, before), rows))
    paper = group.code.paper
    count = ledger.page_count(ledgers, paper)
    numbers = [words.page_of(index + 1, count) for index in range(count)]
    yield from ledger.pages(ledgers, paper, numbers, words.heading_description(str(group.code)))


def table(rows: Sequence[KeyRow]) -> list[list[str]]:
    """The whole key as rows of text, its head line first."""
    return key_table.table(rows, {how: key.columns(rows, how) for how in WAYS})
