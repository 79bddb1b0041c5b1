"""The key of a class set as rows of text, for any spreadsheet: numbers as numbers, one unit for each column."""

import re
from collections.abc import Mapping, Sequence

from pycore import quantity
from pycore.practice import tables
from pycore.practice.key import Amount, KeyRow, MistakeColumn, in_unit, slip_in_unit, varied
from pycore.practice.task import CALCULATED, DRAWN
from pycore.words import key as words
from pycore.words import plain

Columns = Mapping[str, Sequence[MistakeColumn]]
WITH_UNIT = re.compile(r"([-−]?[\d.,]+)[\s\u00a0]?([A-Za-zµΩ%]*)")
"""A given value that is one number: its figures, and its unit with a prefix, if any."""


def given_labels(rows: Sequence[KeyRow]) -> dict[str, bool]:
    """Labels of all given values, each with whether some learner's has a length on the sheet."""
    labels: dict[str, bool] = {}
    for row in rows:
        for label, amount in row.problem_values:
            labels[label] = labels.get(label, False) or bool(amount.length)
    return labels


def _degrees(angle: str) -> str:
    return tables.ascii_number(angle.removesuffix("°"))


def _given(rows: Sequence[KeyRow], label: str) -> tuple[str, list[str]]:
    """The unit of a column of given values, "" for none, and its cells; what is no single number stays as it is."""
    texts = [dict(row.problem_values).get(label, Amount("")) for row in rows]
    cells = [amount.size or _degrees(amount.angle) for amount in texts]
    found = [WITH_UNIT.fullmatch(cell) for cell in cells if cell]
    mark = rows[0].writing.mark
    units = [match[2] if match else "" for match in found]
    factors = [_factor(unit, units[0]) for unit in units] if units else []
    if not units or not all(found) or not units[0] or None in factors:
        return "", [tables.ascii_number(cell) for cell in cells]
    made, place = [], 0
    for cell in cells:
        match, factor = (found[place], factors[place]) if cell else (None, None)
        place += 1 if cell else 0
        if match is None or factor is None:
            made.append("")
        elif factor == 1.0:
            made.append(tables.ascii_number(match[1]))
        else:
            value = quantity.split_number(match[1])[0] * factor
            made.append(tables.ascii_number(quantity.plain(value, mark)))
    return units[0], made


def _factor(unit: str, head: str) -> float | None:
    """By what a number in one unit is multiplied to be one in another; None for units of different kinds."""
    if unit == head:
        return 1.0
    parts, head_parts = quantity.unit_parts(unit), quantity.unit_parts(head)
    if parts is None or head_parts is None or parts[1] != head_parts[1]:
        return None
    return float(f"1e{parts[0] - head_parts[0]}")


def _asked_heads(rows: Sequence[KeyRow]) -> list[str]:
    first, differ = rows[0], varied(rows)
    symbol = words.RESULT if differ else plain(first.symbol)
    heads = [words.SCALE, *((words.ASKED, words.ORIGIN) if differ else ())]
    heads += [f"{symbol} ({first.unit})", words.in_mm(symbol), words.ANGLE, words.SIDE]
    heads += [words.tolerance_in(first.unit), words.tolerance_in("mm"), words.tolerance_in("°")]
    heads += [words.FIRST, words.FIRST_SIZE, words.FIRST_LENGTH, words.FIRST_ANGLE, words.FIRST_SIDE]
    if any(row.further for row in rows):
        heads += [words.FURTHER, words.FURTHER_ANGLE, words.SIDE]
    return heads


def _asked_cells(row: KeyRow, rows: Sequence[KeyRow]) -> list[str]:
    """What is asked for and found, in the first learner's unit."""
    head = rows[0].writing

    def size(amount: Amount) -> str:
        return tables.ascii_number(in_unit(amount.size, amount.value, row.writing, head))

    result, tolerance = row.result, row.tolerance
    cells = [row.scale, *((plain(row.symbol), plain(row.origin)) if varied(rows) else ())]
    cells += [size(result), result.length, _degrees(result.angle), result.side]
    cells += [size(tolerance), tolerance.length, _degrees(tolerance.angle)]
    name, first = row.first or ((), Amount(""))
    cells += [plain(name), size(first), first.length, _degrees(first.angle), first.side]
    if any(one.further for one in rows):
        _, beyond = row.further or ((), Amount(""))
        cells += [size(beyond), _degrees(beyond.angle), beyond.side]
    return cells


def table(rows: Sequence[KeyRow], listed: Columns) -> list[list[str]]:
    """The head line, then a line for each learner; ``listed`` are the columns of mistakes by how they are made."""
    heads = [words.PLACE, words.NAME, words.CODE]
    lines = [[str(row.place), row.name, row.code] for row in rows]
    for label, drawn in given_labels(rows).items():
        unit, cells = _given(rows, label)
        heads += [f"{label} ({unit})" if unit else label, *([words.in_mm(label)] if drawn else [])]
        for line, cell, row in zip(lines, cells, rows, strict=True):
            line += [cell, *([dict(row.problem_values).get(label, Amount("")).length] if drawn else [])]
    heads += _asked_heads(rows)
    for how in (DRAWN, CALCULATED):
        heads += [words.slip_head(how, [plain(name) for name in column.names]) for column in listed[how]]
    for line, row in zip(lines, rows, strict=True):
        line += _asked_cells(row, rows)
        for how in (DRAWN, CALCULATED):
            slips = [column.slip(row) for column in listed[how]]
            line += ["" if slip is None
                     else tables.ascii_number(slip_in_unit(slip, row, rows[0].writing))
                     for slip in slips]  # fmt: skip
    return [heads, *lines]
