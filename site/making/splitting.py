"""Python's files for the site: Pyodide's, with its WebAssembly split into what flows of ours call and the rest.

That needs the list of functions that are called (called.py). Another Pyodide, for which nobody has made it, goes into
the site whole.
"""

import shutil
from collections.abc import Iterable
from pathlib import Path

from making import stamps
from making.bundles import minified
from making.called import FOLDER, called_in
from making.paths import PYODIDE, SITE, WORKSHOP
from making.progress import BuildError, say, step
from making.wasm import glue
from making.wasm.module import Module
from making.wasm.split import Split, parts_of

SCRIPT, GLUE, WASM = "pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm"
COLD = "pyodide.cold.wasm"
"""The name of the cold module: js/cold.js has it too."""

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
    called = called_in(wasm)
    if called is None:
        say(f"  not split: of this Pyodide it is not known which functions are called. {WAY_OUT}")
        for name in (SCRIPT, GLUE, WASM):
            shutil.copyfile(PYODIDE / name, folder / name)
        return
    with step("splitting Python's WebAssembly"):
        write_split(folder, wasm, called)


def write_split(folder: Path, wasm: bytes, called: Iterable[int]) -> None:
    """Write the files of a Pyodide of which these functions are called. Raises BuildError where it cannot be split."""
    script, own = ((PYODIDE / name).read_text("utf-8") for name in (SCRIPT, GLUE))
    try:
        kept = glue.exports_used(own, [script])
        whole = Module(wasm)
        split = Split(whole, parts_of(whole, frozenset(called), kept), kept)
        modules = {WASM: split.hot(), COLD: split.cold()}
        wanted = glue.with_imports(glue.with_exports(own, kept), split.names_asked())
        smaller = _compressed(folder / GLUE, wanted)
    except (ValueError, KeyError) as error:
        raise BuildError(f"Pyodide cannot be split: {error}.\n{WAY_OUT}") from error
    for name, data in modules.items():
        (folder / name).write_bytes(data)
    (folder / GLUE).write_text(smaller, encoding="utf-8", newline="\n")
    shutil.copyfile(PYODIDE / SCRIPT, folder / SCRIPT)


def _compressed(place: Path, script: str) -> str:
    """The script without the functions that nothing in it uses any more; `place` is where it may lie meanwhile."""
    place.write_text(glue.as_module(glue.without_marks(script)), encoding="utf-8", newline="\n")
    return glue.as_function(minified(place, *OPTIONS))
