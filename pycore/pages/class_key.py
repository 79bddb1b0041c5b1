"""The key of a class set laid out: answers at a glance, values, what usual mistakes give, as tables and as text."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from pycore.drawing import Page
from pycore.forms.conventions import MARKS as DECIMAL_MARKS
from pycore.lettering.glyphs import NO_LETTERS, Letters, Shaped
from pycore.pages import key_mistakes
from pycore.pages.class_set import ClassSet, shortened
from pycore.practice import key, key_table
from pycore.practice.key import Amount, KeyRow
from pycore.practice.task import CALCULATED, DRAWN, NO_LIMITS
from pycore.sheet import ledger
from pycore.sheet.ledger import ColumnHeading, Ledger, Lines
from pycore.sheet.lettered import wrapped
from pycore.words import class_set as set_words
from pycore.words import key as words
from pycore.words.inputs import with_mark
from pycore.words.phrase import Phrase
from pycore.words.sheet import FOOT

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
    before = 0
    ranges = []
    for count in counts:
        ranges.append(words.span(before + 1, before + count) if count else "")
        before += count
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
    """A name; one that cannot be set is the learner's number."""
    short = shortened(row.name, NAME_ROOM, ledger.CELL, letters)
    return (letters.set(short) or set_words.by_number(row.place),) if row.name else ("",)


def symbol_of(rows: Sequence[KeyRow]) -> Phrase:
    """What is asked for, at the head of its column; a plain word where that differs."""
    return (words.RESULT,) if key.varied(rows) else rows[0].symbol


def _amount(amount: Amount, unit: str) -> Lines:
    return (f"{amount.size} {unit}", f"{amount.length} mm" if amount.length else "")


def _tolerance(row: KeyRow) -> str:
    parts = ((row.tolerance.size, row.unit), (row.tolerance.length, "mm"))
    return ", ".join(f"± {amount} {unit}" for amount, unit in parts if amount)


Column = tuple[ColumnHeading, list[Lines]]
"""A column of a table: its heading, and the cell of each learner."""


def _filled(*columns: Column) -> list[Column]:
    """Those of the columns that have something for some learner."""
    return [(heading, cells) for heading, cells in columns if any(any(lines) for lines in cells)]


def _ledger(title: str, head: KeyHead, notes: tuple[str, ...], columns: Sequence[Column], *, apart: bool) -> Ledger:
    """A table of columns, with a line for each learner: two where one is too wide."""
    headings = tuple(heading for heading, _ in columns)
    deep = list(zip(*(cells for _, cells in columns), strict=True))
    flat = [tuple(_on_one_line(cell) for cell in row) for row in deep]
    fits = ledger.least_width(ledger.natural_widths(headings, flat)) <= ledger.room_across(head.paper)
    return Ledger(title, head.code, notes, (), headings, flat if fits else deep, FOOT, 1 if fits else 2, apart)


def _on_one_line(cell: Lines) -> Lines:
    """The lines of a cell behind one another."""
    if len(cell) < 2:
        return cell
    joined: Phrase = ()
    for line in cell:
        if isinstance(line, Shaped):
            return cell
        part: Phrase = line if isinstance(line, tuple) else (line,)
        joined = (*joined, ", ", *part) if joined and line else (*joined, *part)
    return (joined,)


def head_of(group: ClassSet, rows: Sequence[KeyRow], counts: Counts) -> KeyHead:
    """What stands over a class set's key."""
    angled = any(row.tolerance.angle for row in rows)
    notes = _notes(group, counts, angled=angled)
    return KeyHead(_title(group), str(group.code), notes, group.code.paper, group.letters)


def _who(rows: Sequence[KeyRow]) -> tuple[Column, Column]:
    """Whose line it is, by number and code."""
    return ((ColumnHeading((words.PLACE,)), [(str(row.place),) for row in rows]),
            (ColumnHeading((words.CODE,), "start"), [(row.code,) for row in rows]))  # fmt: skip


def answers(head: KeyHead, rows: Sequence[KeyRow]) -> Ledger:
    """The first table: what is right, at a glance."""
    place, code = _who(rows)
    varied = key.varied(rows)
    tolerances = [row.tolerance.angle for row in rows]
    columns = _filled(
        place,
        (ColumnHeading((words.NAME,), "start"), [_name(row, head.letters) for row in rows]),
        code,
        (ColumnHeading((words.ASKED,), "start"), [(row.symbol,) if varied else ("",) for row in rows]),
        (ColumnHeading((symbol_of(rows),)), [(f"{row.result.size} {row.unit}",) for row in rows]),
        (ColumnHeading((words.LENGTH,)), [(f"{row.result.length} mm" if row.result.length else "",) for row in rows]),
        (ColumnHeading(head.tolerance), [(_tolerance(row),) for row in rows]),
        (ColumnHeading((words.ANGLE_SHORT,)), [
            (f"{row.result.angle} ± {tolerance}" if tolerance else row.result.angle,)
            for row, tolerance in zip(rows, tolerances, strict=True)
        ]),
        (ColumnHeading((words.SIDE,), "start"), [(row.result.side,) for row in rows]),
        (ColumnHeading((words.ORIGIN,), "start"), [(row.origin,) if varied else ("",) for row in rows]),
        (ColumnHeading((words.SCALE,)), [(row.scale,) for row in rows]),
    )  # fmt: skip
    return _ledger(head.title, head, head.notes, columns, apart=head.apart)


def _to_find(rows: Sequence[KeyRow]) -> Iterator[Column]:
    """What is calculated before it can be drawn: a column for each symbol, with the symbols in the cells where learners
    have different ones."""
    symbols = [tuple(symbol for symbol, _ in row.to_find) for row in rows]
    count = max(map(len, symbols))
    alike = all(one == symbols[0] for one in symbols)
    for place in range(count):
        cells: list[Lines] = []
        for row in rows:
            symbol, amount = row.to_find[place] if place < len(row.to_find) else ((), Amount(""))
            size, length = amount.size, f"{amount.length} mm" if amount.length else ""
            cells.append(("",) if not symbol else (size, length) if alike else ((*symbol, f": {size}"), length))
        yield ColumnHeading((symbols[0][place] if alike else words.drawn_from(place + 1, count),)), cells


def values(head: KeyHead, rows: Sequence[KeyRow]) -> Ledger:
    """The second table: the values of each problem and intermediate results, with their lengths on the sheet. What
    everybody has stands once, above it, unless nothing else is to be told."""
    amounts = [dict(row.problem_values) for row in rows]
    columns: list[Column] = [*_who(rows)]
    same = key.same_for_all(rows)
    if len(same) == len(key.labels(rows)):
        same = {}
    for label in key.labels(rows):
        if label in same:
            continue
        found = [(row, own.get(label, Amount(""))) for row, own in zip(rows, amounts, strict=True)]
        columns.append((
            ColumnHeading(tuple(wrapped(label, ledger.CELL, HEAD_ROOM))),
            [_amount(amount, row.unit) if amount.length else (amount.size,) for row, amount in found],
        ))  # fmt: skip
    columns.append((ColumnHeading((words.LAGS,)), [
        (", ".join(amount.angle for _, amount in row.problem_values if not amount.size),) for row in rows
    ]))  # fmt: skip
    firsts = [(row, *(row.first or ((), Amount("")))) for row in rows]
    intermediate = _filled(
        *_to_find(rows),
        (ColumnHeading((words.FIRST,)), [
            ((*name, f": {one.size} {row.unit}"), f"{one.length} mm") if name else ("",) for row, name, one in firsts
        ]),
        (ColumnHeading((words.FIRST_ANGLE_SHORT,)), [
            (one.angle, one.side) if name else ("",) for _, name, one in firsts
        ]),
    )  # fmt: skip
    title = words.VALUES_AND_MORE if intermediate else words.VALUES
    notes = (words.for_everybody(same),) if same else ()
    return _ledger(title, head, notes, [*_filled(*columns), *intermediate], apart=False)


def beyond(head: KeyHead, rows: Sequence[KeyRow]) -> Iterator[Ledger]:
    """The table of answers to the question beyond the problem, where sheets ask one."""
    asked = [(row, *row.further) for row in rows if row.further is not None]
    if not asked:
        return
    headings = (
        ColumnHeading((words.PLACE,)), ColumnHeading((words.NAME,), "start"), ColumnHeading((words.CODE,), "start"),
        ColumnHeading((asked[0][1],)), ColumnHeading((words.ANGLE_SHORT,)),
    )  # fmt: skip
    lines = tuple(
        ((str(row.place),), _name(row, head.letters), (row.code,), (f"{found.size} {row.unit}",),
         (f"{found.angle} {found.side}".strip(),))
        for row, _, found in asked
    )  # fmt: skip
    yield Ledger(words.FOR_ZERO, head.code, (), (), headings, lines, FOOT)


def tables_of(head: KeyHead, rows: Sequence[KeyRow], ways: Sequence[str] = WAYS) -> Iterator[Ledger]:
    """Every table of a key: the answers, the values, what usual mistakes give by these ways, and the question beyond.
    """
    yield answers(head, rows)
    yield values(head, rows)
    yield from key_mistakes.tables(head.paper, head.code, symbol_of(rows), rows, ways)
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
