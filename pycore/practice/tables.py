"""Tables as text: written for any spreadsheet (RFC 4180), read as spreadsheets and people write them.

Written: lines end in CR LF, cells that need it stand in quotes, and a cell that a spreadsheet could take for
a formula gets an apostrophe before it (what begins with = + - @, tab or carriage return; common practice).
Read: comma, semicolon or tab, with a byte-order mark or without; a quote left open is said with its line.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from pycore.quantity import MINUS

BYTE_ORDER_MARK = "\ufeff"
SEPARATORS = "\t;,"
LIVE = ("=", "+", "-", "@", "\t", "\r")
"""How a cell begins that a spreadsheet may run."""


@dataclass(frozen=True, slots=True)
class TableLine:
    """One line of a table: its number in the text (from 1) and its cells, stripped.

    ``open_quote``: a quote was never closed, so that the cells cannot be trusted."""

    number: int
    cells: tuple[str, ...]
    open_quote: bool = False


class Number(str):
    """A cell that is a number of ours, which no spreadsheet runs: its minus stays bare."""

    __slots__ = ()


def defused(text: str) -> str:
    """A cell that nothing runs: an apostrophe before what a spreadsheet could take for a formula."""
    return f"'{text}" if text.startswith(LIVE) and not isinstance(text, Number) else text


def alive_again(text: str) -> str:
    """The text of a cell as it was before it was defused."""
    return text[1:] if text.startswith("'") and text[1:].startswith(LIVE) else text


def ascii_number(text: str) -> Number:
    """A number as every spreadsheet reads it: with the minus of a keyboard."""
    return Number(text.replace(MINUS, "-"))


def _cell(text: str, separator: str) -> str:
    plain = defused(text)
    # A semicolon or tab left bare would be taken for what separates cells when the table is read again.
    if any(sign in plain for sign in (separator, ";", "\t", '"', "\r", "\n")) or plain != plain.strip():
        return '"' + plain.replace('"', '""') + '"'
    return plain


def write(rows: Iterable[Sequence[str]], mark: str) -> str:
    """A table with its byte-order mark; ``;`` separates where the decimal ``mark`` is a comma."""
    separator = ";" if mark == "," else ","
    lines = (separator.join(_cell(cell, separator) for cell in row) for row in rows)
    return BYTE_ORDER_MARK + "".join(f"{line}\r\n" for line in lines)


def separator_of(text: str) -> str:
    """What separates cells: a tab or a semicolon wherever there is one outside quotes, else the comma.

    With a semicolon or tab about, a comma is a decimal mark (common practice of spreadsheets)."""
    quoted, counts = False, dict.fromkeys(SEPARATORS, 0)
    for sign in text:
        if sign == '"':
            quoted = not quoted
        elif sign in counts and not quoted:
            counts[sign] += 1
    return next((sign for sign in SEPARATORS if counts[sign]), ",")


def _anything(_cells: Sequence[str]) -> bool:
    return False


def read(text: str, is_row: Callable[[Sequence[str]], bool] = _anything) -> tuple[TableLine, ...]:
    """Every line of a table that is not empty. Each line has its own separator; where a line without tab or semicolon
    stands among others, a comma separates only if ``is_row`` finds that its cells make sense so."""
    whole = text.removeprefix(BYTE_ORDER_MARK).replace("\r\n", "\n").replace("\r", "\n")
    usual = separator_of(whole)
    read_lines: list[TableLine] = []
    for number, line in _logical(whole):
        separator = separator_of(line)
        cells, left_open = _cells(line, separator)
        if separator != usual and separator == "," and not is_row(cells):
            cells, left_open = _cells(line, usual)
        if any(cells):
            read_lines.append(TableLine(number, cells, left_open))
    return tuple(read_lines)


def _logical(text: str) -> list[tuple[int, str]]:
    """Lines with their numbers; a quoted line break joins two, unless the quote is never closed."""
    logical: list[tuple[int, str]] = []
    rest = text.split("\n")
    index = 0
    while index < len(rest):
        line, last = rest[index], index
        while line.count('"') % 2 and last + 1 < len(rest) and last < index + 3:
            last += 1
            line = f"{line}\n{rest[last]}"
        if line.count('"') % 2:
            line, last = rest[index], index
        logical.append((index + 1, line))
        index = last + 1
    return logical


def _cells(line: str, separator: str) -> tuple[tuple[str, ...], bool]:
    """A line's cells; and whether a quote was left open."""
    cells, cell, quoted, index = [], "", False, 0
    while index < len(line):
        sign = line[index]
        if quoted and sign == '"' and line[index + 1 : index + 2] == '"':
            cell += sign
            index += 1
        elif sign == '"' and (quoted or not cell.strip()):
            quoted = not quoted
        elif sign == separator and not quoted:
            cells.append(cell)
            cell = ""
        else:
            cell += sign
        index += 1
    return tuple(alive_again(one.strip()) for one in (*cells, cell)), quoted
