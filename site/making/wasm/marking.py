"""Lets every function of a module tell whether it was ever called: each sets a global of its own, which is exported."""

from making.wasm import module
from making.wasm.encoding import joined, listed, sized, text, unsigned
from making.wasm.instructions import past_locals
from making.wasm.module import Module

PREFIX = "called "
"""Before the own number of a function, in the name of its global."""

_NOT_YET = bytes([module.I32, 1, module.I32_CONST, 0, module.END])
_SET = bytes([module.I32_CONST, 1, 0x24])
_KEEP = """
const instantiate = WebAssembly.instantiate;
WebAssembly.instantiate = async (...given) => {
  const made = await instantiate(...given);
  (globalThis.marked ??= []).push((made.instance ?? made).exports);
  return made;
};
globalThis.calledSoFar = () => {
  const called = new Set();
  for (const exports of globalThis.marked ?? []) {
    for (let i = 0; exports[`PREFIX${i}`]; i++) if (exports[`PREFIX${i}`].value) called.add(i);
  }
  return [...called].sort((a, b) => a - b);
};
"""


def marked(data: bytes) -> bytes:
    """The same module with the marks in it."""
    read = Module(data)
    first, count = len(read.globals_asked) + len(read.globals), len(read.bodies)
    exports = [text(one.name) + bytes([one.kind]) + unsigned(one.number) for one in read.exports]
    exports += [text(f"{PREFIX}{i}") + bytes([module.A_GLOBAL]) + unsigned(first + i) for i in range(count)]
    anew = {
        module.GLOBALS: listed([*(one.written for one in read.globals), *[_NOT_YET] * count]),
        module.EXPORTS: listed(exports),
        module.CODE: listed(sized(_with_mark(body, first + i)) for i, body in enumerate(read.bodies)),
    }
    return joined((kind, anew.get(kind, body)) for kind, body in read.sections)


def _with_mark(body: bytes, number: int) -> bytes:
    """A function that first sets the global of this number."""
    begins = past_locals(body)
    return body[:begins] + _SET + unsigned(number) + body[begins:]


def keeping(glue: str) -> str:
    """Pyodide's script, so that `calledSoFar()` gives what all instances made in its thread have called."""
    return _KEEP.replace("PREFIX", PREFIX) + glue
