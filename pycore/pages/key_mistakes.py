"""What usual mistakes give for each learner of a set, as tables for paper: one column for those that land together.

A mistake that gives the right size, nothing, or one multiple of the right size to every learner needs no column: a
sentence says it.
"""

from collections.abc import Iterator, Sequence

from pycore import quantity
from pycore.practice import key
from pycore.practice.key import KeyRow, MistakeColumn, WayAndName
from pycore.quantity import NumberFormat
from pycore.sheet import ledger
from pycore.sheet.ledger import ColumnHeading, Ledger, Lines
from pycore.words import key as words
from pycore.words import plain
from pycore.words.phrase import Phrase
from pycore.words.sheet import FOOT

LETTERS = "abcdefghijklmnopqrstuvwxyz"


def sign(number: int) -> str:
    """The sign of a column: a, b, ... z, aa, ab ..."""
    more, last = divmod(number, len(LETTERS))
    return (sign(more - 1) if more else "") + LETTERS[last]


def legend_of(column: MistakeColumn, ways: Sequence[str]) -> str:
    """The mistakes of one column; those that are made in one of the ways only are said to be."""
    both = [plain(name) for name in column.named(ways)]
    apart = {how: [plain(name) for name in column.named((how,))] for how in ways} if len(ways) > 1 else {}
    return words.legend((*both, *(words.of_way(how, names) for how, names in apart.items() if names)))


def _slip_cell(column: MistakeColumn, row: KeyRow, writing: NumberFormat) -> Lines:
    """What mistakes give for one learner, in the unit of the whole table."""
    slip = column.slip(row)
    if slip is None:
        return ("",)
    written = key.slip_in_unit(slip, row, writing)
    return (written if slip.told_apart else f"({written})",)


def _filled(widths: Sequence[float], room: float, most: int) -> list[slice]:
    """Columns put on tables one after another, each as full as its room and ``most`` columns allow."""
    slices, start = [], 0
    for index in range(1, len(widths)):
        if ledger.least_width(widths[start : index + 1]) > room or index - start == most:
            slices.append(slice(start, index))
            start = index
    return [*slices, slice(start, len(widths))]


def _fitting(widths: Sequence[float], room: float) -> list[slice]:
    """Columns on as few tables as their widths allow, about as many on each."""
    parts, count = _filled(widths, room, len(widths)), 0
    while len(parts) != count:
        count = len(parts)
        parts = _filled(widths, room, -(-len(widths) // count))
    return parts


def _sentences(rows: Sequence[KeyRow], every: Sequence[MistakeColumn], ways: Sequence[str]) -> Iterator[str]:
    """What is said of the mistakes that have no column: of all with one factor together."""
    right: list[WayAndName] = []
    nothing: list[WayAndName] = []
    times: dict[str, list[WayAndName]] = {}
    for one in every:
        if one.has_right_size(rows):
            right += one.mistakes
        elif one.gives_nothing(rows):
            nothing += one.mistakes
        elif factor := one.factor(rows):
            times.setdefault(_number(factor, rows[0].writing.mark), []).extend(one.mistakes)
    if right:
        yield words.unseen(legend_of(MistakeColumn(tuple(right)), ways))
    if nothing:
        yield words.nothing(legend_of(MistakeColumn(tuple(nothing)), ways))
    if times:
        said = [words.multiple(number, legend_of(MistakeColumn(tuple(own)), ways)) for number, own in times.items()]
        yield " ".join(said)


def _number(factor: float, mark: str) -> str:
    """A factor with three figures: 10, 0.1, 1.73."""
    return quantity.plain(float(quantity.fixed(factor, quantity.decimals_for(factor))), mark)


def tables(paper: str, code: str, symbol: Phrase, rows: Sequence[KeyRow], ways: Sequence[str]) -> Iterator[Ledger]:
    """Tables of what usual mistakes give, made in these ways; several where there are many mistakes."""
    every = key.columns(rows, *ways)
    listed = [
        one for one in every
        if not (one.has_right_size(rows) or one.gives_nothing(rows) or one.factor(rows) is not None)
    ]  # fmt: skip
    if not every:
        return
    heads = [ColumnHeading((words.PLACE,)), ColumnHeading((words.CODE,), "start"), ColumnHeading((symbol,))]
    writing = rows[0].writing
    firsts: list[tuple[Lines, ...]] = [
        ((str(row.place),), (row.code,), (key.in_unit(row.result.size, row.result.value, row.writing, writing),))
        for row in rows
    ]
    signs = [sign(number) for number in range(len(listed))]
    cells = [tuple(_slip_cell(column, row, writing) for column in listed) for row in rows]
    columns = [ColumnHeading((one,)) for one in signs]
    widths = ledger.natural_widths(columns, cells)
    first = ledger.least_width(ledger.natural_widths(heads, firsts))
    title = words.SLIPS[ways[0]] if len(ways) == 1 else words.ALL_SLIPS
    unit = f"{words.other_unit(writing.unit)} {words.IN_BRACKETS}"
    notes = (unit, *_sentences(rows, every, ways))
    for part in _fitting(widths, ledger.room_across(paper) - first):
        legend = tuple(
            (one, legend_of(column, ways)) for one, column in zip(signs[part], listed[part], strict=True)
        )
        lines = [(*start, *own[part]) for start, own in zip(firsts, cells, strict=True)]
        yield Ledger(title, code, notes, legend, (*heads, *columns[part]), lines, FOOT)
        notes = (unit,)
