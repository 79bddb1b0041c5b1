"""WebAssembly read, marked and split, on a module of a few functions; and a script such as Pyodide's, cut."""

import base64
import json
import subprocess

import pytest
from making import called
from making.paths import PYODIDE
from making.splitting import WASM
from making.wasm import data, encoding, glue, instructions, module, tracing
from making.wasm.collected import walks
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
    split = Split(whole, parts, kept, [])
    hot, cold = split.hot(), split.cold()
    assert [10, 7, [], 15, 9, [0], 18, 1] == by_node(RUN, hot, cold)
    assert len(whole.bodies) - 1 == len(Module(hot).bodies) - 1


LOW = 4096
HELD = {1024: b"here", 1040: b"some" + bytes(20) + b"more", 1100: b"last"}


def with_memory() -> bytes:
    """Functions that read a byte 32 behind a place, write eight bytes there, copy and fill; and some static data."""
    read = sized(b"\0" + bytes([0x20, 0, 0x2D, 0, 32, module.END]))
    write = sized(b"\0" + bytes([0x20, 0, 0x42, 7, 0x37, 3, 0, module.END]))
    three = bytes([0x20, 0, 0x20, 1, 0x20, 2, 0xFC])
    copy, fill = sized(b"\0" + three + b"\x0a\0\0\x0b"), sized(b"\0" + three + b"\x0b\0\x0b")
    kinds = [b"\x60" + sized(takes) + sized(gives) for takes, gives in ((I32, I32), (I32, b""), (3 * I32, b""))]
    exports = [("read", 0, 0), ("write", 0, 1), ("copy", 0, 2), ("fill", 0, 3), ("memory", 2, 0), (tracing.LOW, 3, 0)]
    return encoding.joined([
        (module.TYPES, listed(kinds)),
        (module.IMPORTS, listed([])),
        (module.FUNCTIONS, listed([b"\0", b"\1", b"\2", b"\2"])),
        (module.TABLES, listed([b"\x70\x00\x02"])),
        (module.MEMORY, listed([b"\x00\x01"])),
        (module.GLOBALS, listed([I32 + b"\0" + module.constant(LOW) + b"\x0b"])),
        (module.EXPORTS, listed(text(name) + bytes([kind]) + unsigned(number) for name, kind, number in exports)),
        (module.ELEMENTS, b"\1\0\x41\1\x0b" + listed([b"\1"])),
        (module.CODE, listed([read, write, copy, fill])),
        (module.DATA, data.section(HELD.items())),
    ])  # fmt: skip


def test_what_is_read_or_written_is_told_piece_by_piece():
    script = f"""
const made = new WebAssembly.Instance(new WebAssembly.Module(Buffer.from(process.argv[1], "base64"))).exports;
const marks = new Uint8Array(made.memory.buffer, {LOW}, {LOW // tracing.PIECE});
const told = () => {{
  const touched = [...marks.keys()].filter((piece) => marks[piece]);
  marks.fill(0);
  return touched;
}};
const found = [made.read(1008), told(), made.write(1049), told(), made.copy(2000, 1100, 4), told()];
found.push(made.fill(3000, 1, 40), told(), made.copy(5000, 1, 0), told(), made.read(9000), told());
console.log(JSON.stringify(found));"""
    found = by_node(script, tracing.traced(with_memory()))
    assert [[65], [65, 66], [68, 125], [187, 188, 189], [], []] == found[1::2]
    assert [ord("s"), None, None, None, None, 0] == found[::2]


WATCH = """
const view = watched(new Int32Array(new SharedArrayBuffer(2 * LOW)));
globalThis.marked = [{ memory: { buffer: view.buffer } }];
view[260] = view[256] + view.subarray(270, 271)[0];
view.set([1, 2, 3, 4, 5], 400);
view.slice();
console.log(JSON.stringify([touchedSoFar(), view.length, view[404], view[260]]));
"""


def test_what_a_script_reads_or_writes_is_told_too():
    views = "".join(f"a{number}=new Int32Array(b);" for number in range(tracing.VIEWS))
    told = tracing.telling(f"()=>{{{views}}};", with_memory())
    assert tracing.VIEWS == told.count("=watched(new Int32Array(b));")
    assert [[64, 65, 67, 100, 101], 2048, 5, 0] == by_node(told + WATCH.replace("LOW", str(LOW)))
    with pytest.raises(ValueError, match="makes 1 views"):
        tracing.telling("a=new Int32Array(b);", with_memory())


def test_data_is_parted_by_pieces_and_what_comes_later_comes_once():
    memory = data.whole_of(Module(with_memory()))
    first, later = data.parts_in(memory, {64, 65}), data.parts_in(memory, {66, 68})
    assert [(1024, b"here" + bytes(12) + b"some")] == first
    assert [(1064, b"more"), (1100, b"last")] == later
    script = f"""
const memory = new WebAssembly.Memory({{ initial: 1 }});
const bytes = new Uint8Array(memory.buffer);
const module = new WebAssembly.Module(Buffer.from(process.argv[1], "base64"));
const told = () => [1040, 1064, 1100, {data.WARM_FLAG}].map((at) => bytes[at]);
const found = [told()];
for (const before of [9, 8]) {{
  bytes.fill(before, 1040, 1100);
  new WebAssembly.Instance(module, {{ hot: {{ memory }} }});
  found.push(told());
}}
console.log(JSON.stringify(found));"""
    whole, once = [9, ord("m"), ord("l"), 1], [8, 8, ord("l"), 1]
    assert [[0, 0, 0, 0], whole, once] == by_node(script, data.warm(later))


def test_data_where_the_flags_stand_is_refused():
    body = data.section([(data.WARM_FLAG, b"x")])
    sections = [(kind, body if kind == module.DATA else held) for kind, held in Module(with_memory()).sections]
    with pytest.raises(ValueError, match="where nothing should"):
        data.whole_of(Module(encoding.joined(sections)))


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


def test_all_that_the_collector_walks_with_is_found() -> None:
    """More than the flows happened to see, and functions alone that take an object, a call and what to hand on."""
    wasm = (PYODIDE / WASM).read_bytes()
    whole, used = Module(wasm), called.used_in(wasm)
    found = walks(whole)
    assert used
    assert len(found & used.called) > 40 and len(found - used.called) > 40
    assert {bytes([module.I32] * 3)} == {whole.types[whole.type_of[whole.asked + one]].takes for one in found}
