"""Python's files for the site: Pyodide's, with its WebAssembly split into what flows of ours use and the rest.

That needs the lists of functions called and of static data touched (called.py). Another Pyodide, for which nobody has
made them, goes into the site whole; with the first list alone, all data is there from the start.
"""

import shutil
from pathlib import Path

from making import stamps
from making.bundles import minified
from making.called import FOLDER, Used, used_in
from making.paths import PYODIDE, SITE, WORKSHOP
from making.progress import BuildError, say, step
from making.wasm import data, glue
from making.wasm.collected import walks
from making.wasm.module import Module
from making.wasm.split import Split, parts_of
from making.wasm.tracing import PIECE

SCRIPT, GLUE, WASM = "pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm"
PLACED = {SCRIPT: "pyodide.js", GLUE: "pyodide.asm.js", WASM: WASM}
"""By Pyodide's names those of the site: many a host does not know what kind of file .mjs is, and browsers then refuse
it."""
COLD, WARM = "pyodide.cold.wasm", "pyodide.warm.wasm"
"""The names of the cold module and of that with the warm data: js/cold.js has them too."""

OPTIONS = ("--format=esm", "--tree-shaking=true", "--log-override:commonjs-variable-in-esm=silent")
WAY_OUT = "Run `python3 build.py profile`, and read site/making/README.md; without a list in site/making/called/ the \
build does not split."


def ensure_python() -> list[Path]:
    """The files of Python, made from Pyodide's unless up to date."""
    folder, mark = WORKSHOP / "python", WORKSHOP / "python-made-from"
    making = SITE / "making"
    scripts = [making / name for name in ("splitting.py", "called.py", "bundles.py")]
    sources = [SITE / "package-lock.json", *scripts, *stamps.files_under(FOLDER),
               *stamps.files_under(making / "wasm")]  # fmt: skip
    stamp = stamps.hash_of_files(sources, SITE)
    if stamps.read(mark) != stamp or not folder.exists():
        shutil.rmtree(folder, ignore_errors=True)
        folder.mkdir(parents=True)
        _write(folder)
        stamps.write(mark, stamp)
    return stamps.files_under(folder)


def _write(folder: Path) -> None:
    """Write the files into the new folder `folder`: split, if there is a list for this Pyodide."""
    wasm = (PYODIDE / WASM).read_bytes()
    used = used_in(wasm)
    if used is None:
        say(f"  not split: of this Pyodide it is not known which functions are called. {WAY_OUT}")
        for name in (SCRIPT, GLUE, WASM):
            shutil.copyfile(PYODIDE / name, folder / PLACED[name])
        return
    with step("splitting Python's WebAssembly"):
        write_split(folder, wasm, used)
    if used.touched is None:
        say(f"  all static data is loaded first: of this Pyodide it is not known which is touched. {WAY_OUT}")


def write_split(folder: Path, wasm: bytes, used: Used, *, poison: bool = False) -> None:
    """Write the files of a Pyodide that is used so. `poison`: what is not there at first is not zero in memory, so that
    a test sees who reads it. Raises BuildError where it cannot be split."""
    script, own = ((PYODIDE / name).read_text("utf-8") for name in (SCRIPT, GLUE))
    try:
        kept = glue.exports_used(own, [script])
        whole = Module(wasm)
        at_first, later = data_of(whole, used)
        parts = parts_of(whole, used.called | walks(whole), kept)
        split = Split(whole, parts, kept, at_first + data.poisoned(later) * poison)
        modules = {WASM: split.hot(), COLD: split.cold(), WARM: data.warm(later)}
        wanted = glue.with_imports(glue.with_exports(own, kept), split.names_asked())
        smaller = _compressed(folder / PLACED[GLUE], wanted)
    except (ValueError, KeyError) as error:
        raise BuildError(f"Pyodide cannot be split: {error}.\n{WAY_OUT}") from error
    for name, written in modules.items():
        (folder / name).write_bytes(written)
    (folder / PLACED[GLUE]).write_text(smaller, encoding="utf-8", newline="\n")
    shutil.copyfile(PYODIDE / SCRIPT, folder / PLACED[SCRIPT])


def data_of(whole: Module, used: Used) -> tuple[list[data.Part], list[data.Part]]:
    """The static data that is there from the start, and the warm."""
    memory = data.whole_of(whole)
    pieces = frozenset(range(len(memory) // PIECE + 1))
    first = pieces if used.touched is None else pieces & used.touched
    return data.parts_in(memory, first), data.parts_in(memory, pieces - first)


def _compressed(place: Path, script: str) -> str:
    """The script without the functions that nothing in it uses any more; `place` is where it may lie meanwhile."""
    place.write_text(glue.as_module(glue.without_marks(script)), encoding="utf-8", newline="\n")
    return glue.as_function(minified(place, *OPTIONS))
