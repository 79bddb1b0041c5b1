"""Lets a module and its script tell which pieces of its static data they ever read or wrote: a byte for each, deep in
the module's stack.

The stack's lowest bytes are free: no chain of calls comes so far down, or else what stands there is no mark any more.
"""

import re
from collections.abc import Iterator

from making.wasm import module
from making.wasm.encoding import joined, listed, read_signed, read_unsigned, sized, unsigned
from making.wasm.instructions import walked
from making.wasm.module import Module, constant

PIECE = 16
"""Bytes of static data that are touched together."""

LOW = "__stack_low"
"""The export that says where the stack ends, behind all static data."""

_TELL = """
/** A view of memory whose uses by a script are marked like the module's own; what takes all of it is no use. */
globalThis.watched = (view) => {
  const marks = new Uint8Array(view.buffer, LOW, COUNT);
  const mark = (begins, ends) => {
    const [first, last] = [begins, ends].map((at) => at * view.BYTES_PER_ELEMENT);
    if (first < LOW && last > first && last - first < LOW / 8) marks.fill(1, first >> SHIFT, ((last - 1) >> SHIFT) + 1);
  };
  const ranges = {
    subarray: mark, slice: mark, set: (source, at = 0) => mark(at, at + source.length),
    fill: (_value, begins, ends) => mark(begins, ends),
    copyWithin: (to, begins, ends) => (mark(begins, ends), mark(to, to + ends - begins)),
  };
  const isPlace = (key) => typeof key === "string" && key >= "0" && key < ":";
  return new Proxy(view, {
    get(_view, key) {
      if (isPlace(key)) mark(Number(key), Number(key) + 1);
      const value = view[key];
      if (typeof value !== "function") return value;
      return (...given) => (ranges[key]?.(...given), value.apply(view, given));
    },
    set(_view, key, value) {
      if (isPlace(key)) mark(Number(key), Number(key) + 1);
      view[key] = value;
      return true;
    },
  });
};
globalThis.touchedSoFar = () => {
  const touched = new Set();
  for (const { memory } of globalThis.marked ?? []) {
    new Uint8Array(memory.buffer, LOW, COUNT).forEach((mark, piece) => mark && touched.add(mark === 1 ? piece : -1));
  }
  if (touched.has(-1)) throw new Error("the stack came down to the marks");
  return [...touched].sort((a, b) => a - b);
};
"""
VIEWS = 10
_VIEW = re.compile(r"(?<==)new \w+Array\(b\)(?=[;}])")
_SHIFT = 4
_F64, _F32, _I64 = 0x7C, 0x7D, 0x7E
_GET, _TEE, _CALL, _ADD, _SUB, _AND, _RIGHT = 0x20, 0x22, 0x10, 0x6A, 0x6B, 0x71, 0x76
_LESS, _ZERO, _IF, _STORE_BYTE = 0x49, 0x45, 0x04, 0x3A
_WIDTHS = dict(zip(range(0x28, 0x36), (4, 8, 4, 8, 1, 1, 2, 2, 1, 1, 2, 2, 4, 4), strict=True))
_STORES = {0x36: (module.I32, 4), 0x37: (_I64, 8), 0x38: (_F32, 4), 0x39: (_F64, 8), 0x3A: (module.I32, 1),
           0x3B: (module.I32, 2), 0x3C: (_I64, 1), 0x3D: (_I64, 2), 0x3E: (_I64, 4)}  # fmt: skip
_BULK, _COPY, _FILL, _VECTOR = 0xFC, 10, 11, 0xFD


def lowest(read: Module) -> int:
    """Where the stack of a module ends, which is behind all its static data."""
    number = next(one.number for one in read.exports if one.name == LOW) - len(read.globals_asked)
    return read_signed(read.globals[number].written, 3)[0]


class _Marks:
    """The functions that mark what is touched, by what the instruction takes."""

    def __init__(self, read: Module) -> None:
        self.first = read.asked + len(read.bodies)
        self.types = [one.written for one in read.types]
        self.kinds: list[int] = []
        self.bodies: list[bytes] = []
        self.low = lowest(read)
        self.span = self._add([module.I32] * 2, b"", self._span())
        self.of = {kind: self._touch(kind) for kind in (None, module.I32, _I64, _F32, _F64)}
        self.copies = self._bulk(copies=True)
        self.fills = self._bulk(copies=False)

    def _add(self, takes: list[int], gives: bytes, code: bytes) -> int:
        written = b"\x60" + sized(bytes(takes)) + sized(gives)
        if written not in self.types:
            self.types.append(written)
        self.kinds.append(self.types.index(written))
        self.bodies.append(b"\0" + code + bytes([module.END]))
        return self.first + len(self.bodies) - 1

    def _span(self) -> bytes:
        """Of an address and a count of bytes: marks all pieces from the first to the last byte."""
        begins = bytes([_GET, 0]) + constant(_SHIFT) + bytes([_RIGHT])
        ends = bytes([_GET, 0, _GET, 1, _ADD]) + constant(1) + bytes([_SUB]) + constant(_SHIFT) + bytes([_RIGHT])
        length = ends + begins + bytes([_SUB]) + constant(1) + bytes([_ADD])
        fill = begins + constant(self.low) + bytes([_ADD]) + constant(1) + length + bytes([_BULK, _FILL, 0])
        inside = bytes([_GET, 0]) + constant(self.low) + bytes([_LESS, _GET, 1, _ZERO, _ZERO, _AND])
        return inside + bytes([_IF, 0x40]) + fill + bytes([module.END])

    def _touch(self, kind: int | None) -> int:
        """Of an address, perhaps a value, an offset and a width: marks, and gives address and value back."""
        given = [module.I32, *([kind] if kind else [])]
        offset, width = len(given), len(given) + 1
        place = bytes([_GET, 0, _GET, offset, _ADD, _TEE, offset])
        store = constant(_SHIFT) + bytes([_RIGHT]) + constant(1) + bytes([_STORE_BYTE, 0]) + unsigned(self.low)
        mark = bytes([_GET, offset]) + store
        last = bytes([_GET, offset, _GET, width, _ADD]) + store
        inside = place + constant(self.low) + bytes([_LESS, _IF, 0x40]) + mark + last + bytes([module.END])
        back = b"".join(bytes([_GET, at]) for at in range(len(given)))
        return self._add([*given, module.I32, module.I32], bytes(given), inside + back)

    def _bulk(self, *, copies: bool) -> int:
        """What copies or fills: marks where to and, of a copy, where from; gives all three numbers back."""
        spans = bytes([_GET, 0, _GET, 2, _CALL]) + unsigned(self.span)
        if copies:
            spans += bytes([_GET, 1, _GET, 2, _CALL]) + unsigned(self.span)
        return self._add([module.I32] * 3, bytes([module.I32] * 3), spans + bytes([_GET, 0, _GET, 1, _GET, 2]))


def traced(data: bytes) -> bytes:
    """The same module with what marks."""
    read = Module(data)
    marks = _Marks(read)
    bodies = [_traced(body, marks) for body in read.bodies] + marks.bodies
    count, at = read_unsigned(read.section[module.FUNCTIONS], 0)
    kinds = read.section[module.FUNCTIONS][at:] + b"".join(map(unsigned, marks.kinds))
    anew = {
        module.TYPES: listed(marks.types),
        module.FUNCTIONS: unsigned(count + len(marks.kinds)) + kinds,
        module.CODE: listed(map(sized, bodies)),
    }
    return joined((kind, anew.get(kind, body)) for kind, body in read.sections)


def telling(glue: str, data: bytes) -> str:
    """Pyodide's script, which keeps its instances (marking.py), so that `touchedSoFar()` gives the pieces touched."""
    low = lowest(Module(data))
    numbers = {"LOW": low, "COUNT": low // PIECE, "SHIFT": _SHIFT}
    told = re.sub("|".join(numbers), lambda match: str(numbers[match[0]]), _TELL)
    watched, count = _VIEW.subn(r"watched(\g<0>)", glue)
    if count != VIEWS:
        raise ValueError(f"Pyodide's script makes {count} views of memory, not {VIEWS}")
    return told + watched


def _traced(body: bytes, marks: _Marks) -> bytes:
    """A function that marks what it is about to touch."""
    made, at = bytearray(), 0
    for begins, mark in _touches(body, marks):
        made += body[at:begins] + mark
        at = begins
    return bytes(made + body[at:])


def _touches(body: bytes, marks: _Marks) -> Iterator[tuple[int, bytes]]:
    """Where memory is touched, and what goes before. Raises ValueError where vectors may touch it."""
    for begins, code, _ in walked(body):
        kind, width = (None, _WIDTHS[code]) if code in _WIDTHS else _STORES.get(code, (None, 0))
        if width:
            offset = read_unsigned(body, read_unsigned(body, begins + 1)[1])[0]
            where = constant(offset - (offset >> 31 << 32))
            yield begins, where + bytes([module.I32_CONST, width - 1, _CALL]) + unsigned(marks.of[kind])
        elif code == _BULK and body[begins + 1] in (_COPY, _FILL):
            yield begins, bytes([_CALL]) + unsigned(marks.copies if body[begins + 1] == _COPY else marks.fills)
        elif code == _VECTOR:
            raise ValueError("vectors are not traced")

