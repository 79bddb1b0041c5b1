"""Tables as text: written for any spreadsheet (RFC 4180), read as spreadsheets and people write them.

Written: lines end in CR LF, and cells that need it stand in quotes. What a spreadsheet could take for a formula gets an
apostrophe before it: = + - @, full-width ones too, at the start of a cell or of any part of it that the spreadsheet
could make a cell of, because it splits at another sign than ours (common practice, carried on to every part).
Read: comma, semicolon or tab, with a byte-order mark or without; a quote left open is said with its line.
"""

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from pycore.quantity import MINUS

BYTE_ORDER_MARK = "\ufeff"
SEPARATORS = "\t;,"
_SIGN = "[=+\\-@＝＋－＠﹦﹢﹣﹫]"
"""What begins a formula: signs of the keyboard, full-width and small ones."""
_BLANK = "[\\s\u200b\u2060\ufeff]"
_BEFORE = f'(?:(?:^|[\\t\\r\\n;,|:"]){_BLANK}*(?=\'*{_SIGN})|{_BLANK}(?=\'*{_SIGN}[^\\s]))'
"""What stands before a sign that could begin a formula: the start of the cell, or what a spreadsheet may split at. A
sign between two spaces, as a dash, begins none."""
_PLAIN = re.compile(r"[+-]?\d+(?:[.,]\d+)?")
_SIGNS = {separator: re.compile(f'["{separator}]') for separator in SEPARATORS}
_ANY_SIGN = re.compile(f'["{SEPARATORS}]')
"""What counts when a table is read: quotes and separators."""
_BARE, _DEFUSED = re.compile(_BEFORE), re.compile(f"({_BEFORE})'")


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
    return text if isinstance(text, Number) else _BARE.sub(lambda found: f"{found[0]}'", text)


def alive_again(text: str) -> str:
    """The text of a cell as it was before it was defused."""
    return _DEFUSED.sub(lambda found: found[1], text)


def ascii_number(text: str) -> Number:
    """A number as every spreadsheet reads it: with the minus of a keyboard."""
    return Number(text.replace(MINUS, "-"))


def answer(text: str) -> str:
    """A typed answer as a cell: a number by itself is one; in all else a minus is that of print, which begins no
    formula and needs no apostrophe."""
    bare = text.replace(MINUS, "-")
    return Number(bare) if _PLAIN.fullmatch(bare) else re.sub(r"-(?=\d)", MINUS, text)


def cell(text: str, separator: str) -> str:
    """A cell as a table has it, in quotes where it needs them."""
    plain = defused(text)
    # A semicolon or tab left bare would be taken for what separates cells when the table is read again.
    if any(sign in plain for sign in (separator, ";", "\t", '"', "\r", "\n")) or plain != plain.strip():
        return '"' + plain.replace('"', '""') + '"'
    return plain


def separator(mark: str) -> str:
    """What separates the cells of a table that we write: ``;`` where the decimal ``mark`` is a comma."""
    return ";" if mark == "," else ","


def write(rows: Iterable[Sequence[str]], mark: str) -> str:
    """A table with its byte-order mark, its numbers with this decimal ``mark``."""
    between = separator(mark)
    lines = (between.join(cell(one, between) for one in row) for row in rows)
    return BYTE_ORDER_MARK + "".join(f"{line}\r\n" for line in lines)


def separator_of(text: str) -> str:
    """What separates cells: a tab or a semicolon wherever there is one outside quotes, else the comma.

    With a semicolon or tab about, a comma is a decimal mark (common practice of spreadsheets)."""
    quoted, counts = False, dict.fromkeys(SEPARATORS, 0)
    for found in _ANY_SIGN.finditer(text):
        sign = found[0]
        if sign == '"':
            quoted = not quoted
        elif not quoted:
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
    cells: list[str] = []
    pieces: list[str] = []
    start, quoted, blank, passed = 0, False, True, -1
    for found in _SIGNS[separator].finditer(line):
        at = found.start()
        if at == passed or (quoted and line[at] != '"'):
            continue
        piece = line[start:at]
        pieces.append(piece)
        blank, start = blank and not piece.strip(), at + 1
        if line[at] == separator:
            cells.append("".join(pieces))
            pieces, blank = [], True
        elif quoted and line[at + 1 : at + 2] == '"':
            pieces.append('"')
            passed, start, blank = at + 1, at + 2, False
        elif quoted or blank:
            quoted = not quoted
        else:
            pieces.append('"')
    cells.append("".join([*pieces, line[start:]]))
    return tuple(alive_again(one.strip()) for one in cells), quoted
