"""Walks through a function's instructions and finds what they refer to: functions, globals."""

from collections.abc import Iterator
from typing import NamedTuple

from making.wasm.encoding import read_unsigned

FUNCTION, GLOBAL = "function", "global"
OUTSIDE = "an instruction reaches beyond its function"

_PLAIN = frozenset({0x00, 0x01, 0x05, 0x0B, 0x0F, 0x19, 0x1A, 0x1B, 0xD1, *range(0x45, 0xC5)})
_ONE_NUMBER = frozenset({0x06, 0x07, 0x08, 0x09, 0x0C, 0x0D, 0x18, 0x20, 0x21, 0x22, 0x25, 0x26, 0x41, 0x42,
                         0x02, 0x03, 0x04, 0x3F, 0x40, 0xD0})  # fmt: skip
"""With one number behind them; the type of a block is written as one, too."""

_TWO_NUMBERS = frozenset({0x11, 0x13, *range(0x28, 0x3F)})
_KINDS = {0x10: FUNCTION, 0x12: FUNCTION, 0xD2: FUNCTION, 0x23: GLOBAL, 0x24: GLOBAL}
_FIXED = {0x43: 4, 0x44: 8}
_NUMBERS_OF_BULK = {8: 2, 9: 1, 10: 2, 11: 1, 12: 2, 13: 1, 14: 2, 15: 1, 16: 1, 17: 1}
_BRANCH_TABLE, _SELECT, _BULK, _VECTOR = 0x0E, 0x1C, 0xFC, 0xFD


class Reference(NamedTuple):
    """What an instruction refers to: the kind, where its number stands, and the number."""

    kind: str
    begins: int
    ends: int
    number: int


def past_locals(body: bytes) -> int:
    """Where the instructions of a function's body begin."""
    count, at = read_unsigned(body, 0)
    for _ in range(count):
        _, at = read_unsigned(body, at)
        at += 1
    return at


def walked(body: bytes) -> Iterator[tuple[int, int, int]]:
    """Every instruction of a body: where it begins, its code, where it ends. Raises ValueError at one not known."""
    at = past_locals(body)
    while at < len(body):
        begins, code = at, body[at]
        at = _past(body, code, at + 1)
        yield begins, code, at
    if at != len(body):
        raise ValueError(OUTSIDE)


def references(body: bytes) -> list[Reference]:
    """Every reference of a body to a function or a global."""
    found, at = [], past_locals(body)
    while at < len(body):
        code = body[at]
        at += 1
        if code in _PLAIN:
            continue
        begins, at = at, _past(body, code, at)
        if code in _KINDS:
            found.append(Reference(_KINDS[code], begins, at, read_unsigned(body, begins)[0]))
    if at != len(body):
        raise ValueError(OUTSIDE)
    return found


def _past(body: bytes, code: int, at: int) -> int:
    """Where what stands behind an instruction of this code ends."""
    if code in _PLAIN:
        return at
    if code in _ONE_NUMBER or code in _KINDS:
        return _numbers(body, at, 1)
    if code in _TWO_NUMBERS:
        return _numbers(body, at, 2)
    if code in _FIXED:
        return at + _FIXED[code]
    if code == _BRANCH_TABLE:
        count, at = read_unsigned(body, at)
        return _numbers(body, at, count + 1)
    if code == _SELECT:
        count, at = read_unsigned(body, at)
        return at + count
    if code == _BULK:
        number, at = read_unsigned(body, at)
        return _numbers(body, at, _NUMBERS_OF_BULK.get(number, 0))
    if code == _VECTOR:
        return _past_vector(body, at)
    raise ValueError(f"no instruction is known by the code {code:#x}")


def _past_vector(body: bytes, at: int) -> int:
    """Where an instruction on vectors ends; `at` is behind the first byte of its code."""
    number, at = read_unsigned(body, at)
    if number in (12, 13):
        return at + 16
    if number < 12 or number in (92, 93):
        return _numbers(body, at, 2)
    if 84 <= number <= 91:
        return _numbers(body, at, 2) + 1
    return at + 1 if 21 <= number <= 34 else at


def _numbers(body: bytes, at: int, count: int) -> int:
    """Behind so many numbers."""
    for _ in range(count):
        while body[at] > 0x7F:
            at += 1
        at += 1
    return at
