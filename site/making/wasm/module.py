"""Pyodide's module, read as far as it must be to mark its functions and to split it."""

from collections.abc import Iterable
from functools import cached_property
from typing import NamedTuple

from making.wasm.encoding import read_signed, read_unsigned, sections, signed
from making.wasm.instructions import Reference, references

TYPES, IMPORTS, FUNCTIONS, TABLES, MEMORY, GLOBALS, EXPORTS = range(1, 8)
START, ELEMENTS, CODE, DATA, DATA_COUNT, TAGS = range(8, 14)
A_FUNCTION, A_TABLE, A_MEMORY, A_GLOBAL, A_TAG = range(5)
I32, I32_CONST, END = 0x7F, 0x41, 0x0B
_CONSTANTS = (0x41, 0x42)
_NULL = 0xD0


class Type(NamedTuple):
    """A function's type: what it takes, and how the type is written."""

    takes: bytes
    written: bytes


class Import(NamedTuple):
    """A function (its type is `about`) or a global (`about` is how it is written) that the module asks for."""

    module: str
    name: str
    kind: int
    about: int | bytes


class Global(NamedTuple):
    """A global of the module's own: its type, whether it can be changed, and all of it as it is written."""

    type: int
    changes: bool
    written: bytes


class Export(NamedTuple):
    """What the module gives away."""

    name: str
    kind: int
    number: int


class Module:
    """One module. Functions have two numbers: among all (imports first), and among the module's own."""

    def __init__(self, data: bytes) -> None:
        self.sections = sections(data)
        self.section = {kind: body for kind, body in self.sections if kind}
        self.types = _types(self.section[TYPES])
        imports = _imports(self.section[IMPORTS])
        self.functions_asked = [one for one in imports if one.kind == A_FUNCTION]
        self.globals_asked = [one for one in imports if one.kind == A_GLOBAL]
        self.type_of = [int(one.about) for one in self.functions_asked] + _numbers(self.section[FUNCTIONS])
        self.globals = _globals(self.section[GLOBALS])
        self.exports = _exports(self.section[EXPORTS])
        self.table_from, self.table = _table(self.section[ELEMENTS])
        self.bodies = _bodies(self.section[CODE])

    @cached_property
    def data(self) -> list[tuple[int, bytes]]:
        """The static data: where each part stands in memory, and what it holds."""
        return _data(self.section[DATA])

    @property
    def asked(self) -> int:
        """How many functions are imported: the number of the module's own first one."""
        return len(self.functions_asked)

    @cached_property
    def references(self) -> list[list[Reference]]:
        """What each of the module's own functions refers to."""
        return [references(body) for body in self.bodies]

    def refers(self, functions: Iterable[int], kind: str) -> set[int]:
        """The numbers of that kind that any of these functions, by own number, refers to."""
        return {one.number for function in functions for one in self.references[function] if one.kind == kind}


def constant(value: int) -> bytes:
    """The instruction that gives a number of 32 bits."""
    return bytes([I32_CONST]) + signed(value)


def _name(body: bytes, at: int) -> tuple[str, int]:
    length, at = read_unsigned(body, at)
    return body[at : at + length].decode(), at + length


def _types(body: bytes) -> list[Type]:
    count, at = read_unsigned(body, 0)
    found = []
    for _ in range(count):
        begins = at
        if body[at] != 0x60:
            raise ValueError("a type that is no function's")
        length, at = read_unsigned(body, at + 1)
        takes, at = body[at : at + length], at + length
        length, at = read_unsigned(body, at)
        at += length
        found.append(Type(takes, body[begins:at]))
    return found


def _imports(body: bytes) -> list[Import]:
    count, at = read_unsigned(body, 0)
    found = []
    for _ in range(count):
        module, at = _name(body, at)
        name, at = _name(body, at)
        kind = body[at]
        about: int | bytes
        if kind == A_FUNCTION:
            about, at = read_unsigned(body, at + 1)
        elif kind == A_GLOBAL:
            about, at = body[at + 1 : at + 3], at + 3
        else:
            raise ValueError(f"the import {module}.{name} is neither a function nor a global")
        found.append(Import(module, name, kind, about))
    return found


def _numbers(body: bytes) -> list[int]:
    count, at = read_unsigned(body, 0)
    found = []
    for _ in range(count):
        number, at = read_unsigned(body, at)
        found.append(number)
    return found


def _globals(body: bytes) -> list[Global]:
    count, at = read_unsigned(body, 0)
    found = []
    for _ in range(count):
        begins, code = at, body[at + 2]
        if code not in (*_CONSTANTS, _NULL):
            raise ValueError("a global that begins as no constant")
        at = read_signed(body, at + 3)[1] + 1
        found.append(Global(body[begins], bool(body[begins + 1]), body[begins:at]))
    return found


def _exports(body: bytes) -> list[Export]:
    count, at = read_unsigned(body, 0)
    found = []
    for _ in range(count):
        name, at = _name(body, at)
        kind = body[at]
        number, at = read_unsigned(body, at + 1)
        found.append(Export(name, kind, number))
    return found


def _table(body: bytes) -> tuple[int, list[int]]:
    """Where the table of functions begins to be filled, and with which functions."""
    if body[:3] != bytes([1, 0, I32_CONST]):
        raise ValueError("the table is not filled by one plain list")
    begins, at = read_signed(body, 3)
    return begins, _numbers(body[at + 1 :])


def _bodies(body: bytes) -> list[bytes]:
    count, at = read_unsigned(body, 0)
    found = []
    for _ in range(count):
        length, at = read_unsigned(body, at)
        found.append(body[at : at + length])
        at += length
    return found


def _data(body: bytes) -> list[tuple[int, bytes]]:
    count, at = read_unsigned(body, 0)
    found = []
    for _ in range(count):
        if body[at : at + 2] != bytes([0, I32_CONST]):
            raise ValueError("static data that has no place of its own")
        begins, at = read_signed(body, at + 2)
        length, at = read_unsigned(body, at + 1)
        found.append((begins, body[at : at + length]))
        at += length
    return found
