"""WebAssembly read, marked and split, on a module of a few functions; and a script such as Pyodide's, cut."""

import base64
import json
import subprocess

import pytest
from making import called
from making.wasm import encoding, glue, instructions, module
from making.wasm.encoding import listed, sized, text, unsigned
from making.wasm.marking import PREFIX, marked
from making.wasm.module import Module
from making.wasm.split import Parts, Split, parts_of

I32 = bytes([module.I32])
PAD = bytes([0x41, 0, 0x1A]) * 120
"""Pushes a number and drops it: a function with it is no small one."""


def function(*codes: int) -> bytes:
    """A body without locals of its own, larger than what goes along with whoever calls it."""
    return sized(b"\0" + PAD + bytes(codes) + bytes([module.END]))


def example() -> bytes:
    """Of a number: `twice` gives the double, `rare` three times as much by calling it, `table` what `rare` gives by the
    table; nobody calls the last, and each sets the global."""
    twice = function(0x20, 0, 0x20, 0, 0x6A, 0x41, 7, 0x24, 0)
    rare = function(0x20, 0, 0x10, 0, 0x20, 0, 0x6A, 0x41, 9, 0x24, 0)
    by_table = function(0x20, 0, 0x41, 1, 0x11, 0, 0)
    exports = [("twice", 0, 0), ("table", 0, 2), ("memory", 2, 0), ("__indirect_function_table", 1, 0), ("seen", 3, 0)]
    return encoding.joined([
        (module.TYPES, listed([b"\x60" + sized(I32) + sized(I32)])),
        (module.IMPORTS, listed([])),
        (module.FUNCTIONS, listed([b"\0"] * 4)),
        (module.TABLES, listed([b"\x70\x00\x02"])),
        (module.MEMORY, listed([b"\x00\x01"])),
        (module.TAGS, listed([])),
        (module.GLOBALS, listed([I32 + b"\x01\x41\x00\x0b"])),
        (module.EXPORTS, listed(text(name) + bytes([kind]) + unsigned(number) for name, kind, number in exports)),
        (module.ELEMENTS, b"\1\0\x41\1\x0b" + listed([b"\1"])),
        (module.CODE, listed([twice, rare, by_table, function(0x20, 0)])),
    ])  # fmt: skip


RUN = """
const [hot, cold] = process.argv.slice(1).map((text) => new WebAssembly.Module(Buffer.from(text, "base64")));
const slots = [];
const load = (slot) => { slots.push(slot); new WebAssembly.Instance(cold, { hot: made.exports }); };
const made = new WebAssembly.Instance(hot, { cold: { load } });
const { twice, table, seen } = made.exports;
const told = [twice(5), seen.value, [...slots], table(5), seen.value, [...slots], table(6), slots.length];
console.log(JSON.stringify(told));
"""


def by_node(script: str, *modules: bytes) -> list:
    """What a script prints that is given modules."""
    given = [base64.b64encode(one).decode() for one in modules]
    done = subprocess.run(["node", "-e", script, *given], capture_output=True, text=True)
    assert 0 == done.returncode, done.stderr
    return json.loads(done.stdout)


def test_a_cold_function_is_brought_once_and_gives_what_it_gave():
    whole = Module(example())
    kept = {one.name for one in whole.exports}
    parts = parts_of(whole, {0, 2}, kept)
    assert Parts(hot=(0, 2), cold=(1,), stubs=(1,)) == parts
    split = Split(whole, parts, kept)
    hot, cold = split.hot(), split.cold()
    assert [10, 7, [], 15, 9, [0], 18, 1] == by_node(RUN, hot, cold)
    assert len(whole.bodies) - 1 == len(Module(hot).bodies) - 1


def test_functions_tell_whether_they_were_called():
    script = f"""
const made = new WebAssembly.Instance(new WebAssembly.Module(Buffer.from(process.argv[1], "base64")));
const told = () => [0, 1, 2, 3].map((i) => made.exports["{PREFIX}" + i].value);
const before = told();
made.exports.twice(1);
console.log(JSON.stringify([before, told(), made.exports.table(2), told()]));"""
    assert [[0, 0, 0, 0], [1, 0, 0, 0], 6, [1, 1, 1, 0]] == by_node(script, marked(example()))


@pytest.mark.parametrize("number", [0, 1, 63, 64, 127, 128, 300, 2**31 - 1])
def test_numbers_are_read_as_they_are_written(number: int):
    assert (number, len(unsigned(number))) == encoding.read_unsigned(unsigned(number), 0)
    for one in (number, -number, -number - 1):
        assert (one, len(encoding.signed(one))) == encoding.read_signed(encoding.signed(one), 0)


def test_what_is_not_known_is_not_guessed():
    with pytest.raises(ValueError, match="no instruction is known"):
        instructions.references(bytes([0, 0xFF, module.END]))
    with pytest.raises(ValueError, match="no WebAssembly"):
        Module(b"\0asm\2\0\0\0")


def test_a_list_of_functions_is_kept_as_it_is():
    numbers = frozenset({0, 7, 8, 4929, 16957})
    assert numbers == called.parsed(called.written(numbers))
    assert frozenset() == called.parsed(called.written([]))
    assert max(map(len, called.written(numbers).splitlines())) == called.LINE


SCRIPT = (
    'async function _createPyodideModule(moduleArg={}){var moduleRtn;var _a,_b,wasmMemory;function assignWasmExports('
    'wasmExports){_a=Module["_a"]=wasmExports["a"];_b=Module["_b"]=wasmExports["b"];wasmMemory=wasmExports["memory"]}'
    "var wasmImports={used:_used,spare};function _used(){_a();eval(1)}_used.sig=\"v\";"
    "function spare(){}spare.sig=\"v\";"
    "wasmExports.c();return moduleRtn}export default _createPyodideModule;\n"
)


def test_the_script_is_cut_to_what_it_uses():
    used = glue.exports_used(SCRIPT, ["API.other"])
    assert glue.ALWAYS | {"a", "c"} == used
    cut = glue.with_imports(glue.with_exports(SCRIPT, used), {"used"})
    assert "_b" not in cut and "spare:" not in cut and "{used:_used}" in cut
    assert 'var _a,wasmMemory;function assignWasmExports(wasmExports){_a=Module["_a"]=wasmExports["a"];' in cut
    laid_out = glue.as_module(glue.without_marks(cut))
    assert ".sig" not in laid_out and "(0,eval)(1)" in laid_out
    assert laid_out.startswith("var moduleRtn;") and laid_out.endswith("export{moduleRtn as moduleRtn};")
    assert glue.as_function(laid_out).endswith("return moduleRtn}export default _createPyodideModule;\n")


@pytest.mark.parametrize("old", ["function assignWasmExports(wasmExports){", "}var wasmImports={", "var _a,_b"])
def test_a_script_that_is_written_otherwise_is_refused(old: str):
    other = SCRIPT.replace(old, old.upper())
    with pytest.raises(glue.Unfamiliar):
        glue.with_imports(glue.with_exports(other, glue.exports_used(other, [])), set())
    with pytest.raises(glue.Unfamiliar, match="2 times"):
        glue.once(SCRIPT + SCRIPT, "}var wasmImports={")


def test_what_is_no_function_is_refused():
    for script in ("export default 1;", "", SCRIPT.replace(glue.GIVEN, "}")):
        with pytest.raises(glue.Unfamiliar):
            glue.as_module(script)
    with pytest.raises(glue.Unfamiliar):
        glue.as_function("var a=1;")
