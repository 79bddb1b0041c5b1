"""Splits a module into a hot one, which starts Python and gives answers, and a cold one with what no page calls.

A function that is cold, but called by a hot one, in the table or exported, has a stub in the hot module. A stub has the
cold module brought if it is not there, then calls the function itself through a table of its own, so that every number
in the first table stays what it was: memories hold such numbers. Of the static data the hot module has what the flows
touch; the rest is warm (data.py).
"""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass

from making.wasm import data, module
from making.wasm.data import HOT, Part
from making.wasm.encoding import joined, listed, read_unsigned, signed, sized, text, unsigned
from making.wasm.instructions import FUNCTION
from making.wasm.module import Module

LOADER = ("cold", "load")
"""The import of the hot module that brings the cold one: it hears which slot of the cold table is wanted."""

NEARBY = 300
"""Bytes up to which a function goes with a hot one that calls it: the other branches, such as what an error needs, are
mostly as small, and a wait would cost more than all of them."""

COLD_TABLE = "~table"
"""The hot module's export for the cold one: the table that the cold one fills. More of these names have a number."""

WARM = "~warm"
"""The hot module's export that says where memory tells whether the warm data is there. js/cold.js has it too."""

_LOCAL_GET, _GLOBAL_GET, _GLOBAL_SET, _CALL, _CALL_INDIRECT = 0x20, 0x23, 0x24, 0x10, 0x11
_UNSET = bytes([module.I32, 1, module.I32_CONST, 0, module.END])
_FLAG = bytes([module.I32, 0]) + module.constant(data.WARM_FLAG) + bytes([module.END])
_FUNCTION_OF_TYPE, _FUNCREF = 0x60, 0x70


@dataclass(frozen=True)
class Parts:
    """The functions of a module, by own number: hot ones, cold ones, and those cold ones that need a stub, in the order
    of their slots. The rest is called by nobody."""

    hot: tuple[int, ...]
    cold: tuple[int, ...]
    stubs: tuple[int, ...]


def parts_of(whole: Module, called: Collection[int], kept: Collection[str]) -> Parts:
    """Which functions are hot, cold or called by nobody, where these are called and these exports are kept."""
    asked = whole.asked
    roots = [*whole.table, *(one.number for one in whole.exports if one.kind == module.A_FUNCTION and one.name in kept)]
    alive = _reached(whole, roots)
    hot = {f for f in called if f in alive}
    hot |= {f for f in _own(whole, whole.refers(hot, FUNCTION)) if len(whole.bodies[f]) <= NEARBY}
    while small := _as_small_as_stubs(whole, hot, roots):
        hot |= small
    needed = [f - asked for f in [*whole.table, *sorted({*roots, *whole.refers(hot, FUNCTION)})] if f >= asked]
    stubs = tuple(f for f in dict.fromkeys(needed) if f not in hot)
    return Parts(tuple(sorted(hot)), tuple(sorted(alive - hot)), stubs)


def _reached(whole: Module, roots: Iterable[int]) -> set[int]:
    """The module's own functions that these lead to by calls."""
    found: set[int] = set()
    waiting = [number - whole.asked for number in roots]
    while waiting:
        function = waiting.pop()
        if function >= 0 and function not in found:
            found.add(function)
            waiting += [number - whole.asked for number in whole.refers([function], FUNCTION)]
    return found


def _own(whole: Module, numbers: Iterable[int]) -> set[int]:
    """Those of the functions that are the module's own, by own number."""
    return {number - whole.asked for number in numbers if number >= whole.asked}


def _as_small_as_stubs(whole: Module, hot: set[int], roots: list[int]) -> set[int]:
    """Functions that would need a stub no smaller than they are."""
    needed = _own(whole, {*roots, *whole.refers(hot, FUNCTION)})
    return {f for f in needed - hot if len(whole.bodies[f]) <= len(_stub(whole, f, 0, 0, 0))}


def _stub(whole: Module, function: int, slot: int, ensure: int, table: int) -> bytes:
    """All parameters, the slot, what brings the cold module and gives the slot back, the call."""
    kind = whole.type_of[whole.asked + function]
    parameters = b"".join(bytes([_LOCAL_GET]) + unsigned(i) for i in range(len(whole.types[kind].takes)))
    calls = bytes([_CALL]) + unsigned(ensure) + bytes([_CALL_INDIRECT]) + unsigned(kind) + unsigned(table)
    return b"\0" + parameters + bytes([module.I32_CONST]) + signed(slot) + calls + bytes([module.END])


def _moved(whole: Module, function: int, functions: dict[int, int], globals_: dict[int, int]) -> bytes:
    """A function with the numbers that functions and globals have in its new module."""
    body, made, at = whole.bodies[function], bytearray(), 0
    for one in whole.references[function]:
        made += body[at : one.begins] + unsigned((functions if one.kind == FUNCTION else globals_)[one.number])
        at = one.ends
    return bytes(made + body[at:])


class Split:
    """Both modules of one split."""

    def __init__(self, whole: Module, parts: Parts, kept: Collection[str], at_first: Sequence[Part]) -> None:
        self.whole, self.parts, self.at_first = whole, parts, at_first
        self.exports = [one for one in whole.exports if one.name in kept]
        self.types = [one.written for one in whole.types]
        own = range(len(whole.globals_asked), len(whole.globals_asked) + len(whole.globals))
        self.changing = [number for number in own if self._global(number).changes]
        exported = [one.number for one in self.exports if one.kind == module.A_GLOBAL]
        self.globals = {number: at for at, number in enumerate(dict.fromkeys([*self.changing, *exported]))}
        self.tables, self.first_table = read_unsigned(whole.section[module.TABLES], 0)
        self.shared = sorted(
            number for number in whole.refers(parts.cold, FUNCTION) if number - whole.asked in set(parts.hot)
        )
        """Hot functions that cold ones call."""

    def _global(self, number: int) -> module.Global:
        return self.whole.globals[number - len(self.whole.globals_asked)]

    def _type(self, takes: bytes, gives: bytes) -> int:
        """The number of a type, which is added where there is none."""
        written = bytes([_FUNCTION_OF_TYPE]) + sized(takes) + sized(gives)
        if written not in self.types:
            self.types.append(written)
        return self.types.index(written)

    def _imported(self, functions: Iterable[int], more: Iterable[int] = ()) -> list[int]:
        """Which imports of the whole these functions call."""
        return sorted(n for n in {*self.whole.refers(functions, FUNCTION), *more} if n < self.whole.asked)

    def names_asked(self) -> set[str]:
        """The names of all functions that either module imports from Pyodide's script."""
        exported = [one.number for one in self.exports if one.kind == module.A_FUNCTION]
        functions = self._imported([*self.parts.hot, *self.parts.cold], [*exported, *self.whole.table])
        return {self.whole.functions_asked[number].name for number in functions}

    def _import(self, number: int) -> bytes:
        one = self.whole.functions_asked[number]
        kind = bytes([module.A_FUNCTION]) + unsigned(self.whole.type_of[number])
        return text(one.module) + text(one.name) + kind

    def hot(self) -> bytes:
        """The hot module: what the whole was, for all who do not look inside."""
        whole, parts = self.whole, self.parts
        exported = [one.number for one in self.exports if one.kind == module.A_FUNCTION]
        imports = self._imported(parts.hot, [*exported, *whole.table])
        order = [*imports, None, *(whole.asked + f for f in parts.hot), None, *(whole.asked + f for f in parts.stubs)]
        functions = {number: at for at, number in enumerate(order) if number is not None}
        load, ensure = len(imports), len(imports) + 1 + len(parts.hot)
        loads, ensures = self._type(bytes([module.I32]), b""), self._type(*[bytes([module.I32])] * 2)
        loader = b"".join(map(text, LOADER)) + bytes([module.A_FUNCTION]) + unsigned(loads)
        kinds = [whole.type_of[whole.asked + f] for f in (*parts.hot, *parts.stubs)]
        kinds.insert(len(parts.hot), ensures)
        bodies = [
            *(_moved(whole, f, functions, self.globals) for f in parts.hot),
            self._ensure(load),
            *(_stub(whole, f, slot, ensure, self.tables) for slot, f in enumerate(parts.stubs)),
        ]
        anew = {
            module.TYPES: listed(self.types),
            module.IMPORTS: listed([*map(self._import, imports), loader]),
            module.FUNCTIONS: listed(map(unsigned, kinds)),
            module.TABLES: self._tables(),
            module.GLOBALS: listed([*(self._global(number).written for number in self.globals), _UNSET, _FLAG]),
            module.EXPORTS: listed([*self._exports(functions), *self._for_cold(functions)]),
            module.ELEMENTS: self._elements(functions),
            module.DATA_COUNT: unsigned(len(self.at_first)),
            module.CODE: listed(map(sized, bodies)),
            module.DATA: data.section(self.at_first),
        }
        return joined((kind, anew.get(kind, body)) for kind, body in whole.sections)

    def _ensure(self, load: int) -> bytes:
        """The function that takes a slot and gives it back, once the cold module is there."""
        there = unsigned(len(self.globals))
        ask = bytes([_LOCAL_GET, 0, _CALL]) + unsigned(load) + bytes([module.I32_CONST, 1, _GLOBAL_SET]) + there
        unless = bytes([_GLOBAL_GET]) + there + bytes([0x45, 0x04, 0x40]) + ask + bytes([module.END])
        return b"\0" + unless + bytes([_LOCAL_GET, 0, module.END])

    def _tables(self) -> bytes:
        rest = self.whole.section[module.TABLES][self.first_table :]
        return unsigned(self.tables + 1) + rest + bytes([_FUNCREF, 0]) + unsigned(len(self.parts.stubs))

    def _elements(self, functions: dict[int, int]) -> bytes:
        begins = bytes([module.I32_CONST]) + signed(self.whole.table_from) + bytes([module.END])
        return b"\1\0" + begins + listed(unsigned(functions[number]) for number in self.whole.table)

    def _exports(self, functions: dict[int, int]) -> list[bytes]:
        """The whole's exports that are kept."""
        numbers = {module.A_FUNCTION: functions, module.A_GLOBAL: self.globals}
        return [
            text(one.name) + bytes([one.kind]) + unsigned(numbers.get(one.kind, {}).get(one.number, one.number))
            for one in self.exports
        ]

    def _for_cold(self, functions: dict[int, int]) -> list[bytes]:
        """What the cold module imports beside that, and what tells of the warm data."""
        made = [(f"~{i:x}", module.A_FUNCTION, functions[number]) for i, number in enumerate(self.shared)]
        made += [(COLD_TABLE, module.A_TABLE, self.tables)]
        made += [(f"{COLD_TABLE}{i}", module.A_TABLE, i) for i in range(1, self.tables)]
        made += [(f"~global{i}", module.A_GLOBAL, self.globals[number]) for i, number in enumerate(self.changing)]
        made += [(f"~tag{i}", module.A_TAG, i) for i in range(len(self._tags()))]
        made += [(WARM, module.A_GLOBAL, len(self.globals) + 1)]
        return [text(name) + bytes([kind]) + unsigned(number) for name, kind, number in made]

    def _tags(self) -> list[bytes]:
        body = self.whole.section[module.TAGS]
        count, at = read_unsigned(body, 0)
        if len(body) != at + 2 * count:
            raise ValueError("the tags are not written in two bytes each")
        return [body[i : i + 2] for i in range(at, len(body), 2)]

    def cold(self) -> bytes:
        """The cold module: it fills the cold table with all that has a stub."""
        whole, parts = self.whole, self.parts
        imports = self._imported(parts.cold)
        order = [*imports, *self.shared, *(whole.asked + f for f in parts.cold)]
        functions = {number: at for at, number in enumerate(order)}
        globals_ = {number: at for at, number in enumerate(self.changing)}
        bodies = [_moved(whole, f, functions, globals_) for f in parts.cold]
        slots = listed(unsigned(functions[whole.asked + f]) for f in parts.stubs)
        fill = b"\1\2" + unsigned(self.tables) + bytes([module.I32_CONST, 0, module.END, 0]) + slots
        return joined([
            (module.TYPES, listed(self.types)),
            (module.IMPORTS, listed([*map(self._import, imports), *self._from_hot()])),
            (module.FUNCTIONS, listed(unsigned(whole.type_of[whole.asked + f]) for f in parts.cold)),
            (module.ELEMENTS, fill),
            (module.CODE, listed(map(sized, bodies))),
        ])  # fmt: skip

    def _from_hot(self) -> list[bytes]:
        """What the cold module imports from the hot one: the tables in their order, then whatever it may touch."""
        table = bytes([_FUNCREF, 0])
        made = [(f"~{i:x}", module.A_FUNCTION, unsigned(self.whole.type_of[n])) for i, n in enumerate(self.shared)]
        made += [("__indirect_function_table", module.A_TABLE, table + unsigned(len(self.whole.table)))]
        made += [(f"{COLD_TABLE}{i}", module.A_TABLE, self._kind_of_table(i)) for i in range(1, self.tables)]
        made += [(COLD_TABLE, module.A_TABLE, table + unsigned(len(self.parts.stubs)))]
        made += [("memory", module.A_MEMORY, b"\0\1")]
        made += [
            (f"~global{i}", module.A_GLOBAL, bytes([self._global(n).type, 1])) for i, n in enumerate(self.changing)
        ]
        made += [(f"~tag{i}", module.A_TAG, tag) for i, tag in enumerate(self._tags())]
        return [text(HOT) + text(name) + bytes([kind]) + about for name, kind, about in made]

    def _kind_of_table(self, number: int) -> bytes:
        """What a table holds, and that it may have any size."""
        body, at = self.whole.section[module.TABLES], self.first_table
        for _ in range(number):
            bounded = body[at + 1] & 1
            at += 2
            for _ in range(1 + bounded):
                at = read_unsigned(body, at)[1]
        return bytes([body[at], 0, 0])
