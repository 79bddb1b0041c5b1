"""Puts Pyodide, and the library (standard library, pycore, pydyf) that it starts from, into the site."""

import importlib.util
import json
import shutil
from pathlib import Path

from making import stamps
from making.environment import ensure_npm
from making.paths import PYCORE, PYODIDE, SITE, WORKSHOP
from making.programs import run
from making.progress import step

RUNTIME_FILES = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm")
LIBRARY = "library.zip"
LOCK = "pyodide-lock.json"


def write_runtime(folder: Path) -> None:
    """Write Pyodide's own files and library.zip into `folder`."""
    folder.mkdir(parents=True)
    for name in RUNTIME_FILES:
        shutil.copyfile(PYODIDE / name, folder / name)
    lock = json.loads((PYODIDE / LOCK).read_text("utf-8"))
    # Pyodide reads this file as it starts; the site carries none of the packages that it lists.
    (folder / LOCK).write_text(json.dumps({"info": lock["info"], "packages": {}}, sort_keys=True), encoding="utf-8")
    shutil.copyfile(ensure_library(), folder / LIBRARY)


def ensure_library() -> Path:
    """The archive of the library, made by that same Pyodide under Node unless it is up to date."""
    scripts = [SITE / "making" / name for name in ("library.mjs", "library.py")]
    pydyf = Path(importlib.util.find_spec("pydyf").origin).parent
    wanted = stamps.hash_of_texts(
        stamps.hash_of_files([*scripts, SITE / "package-lock.json"], SITE),
        stamps.hash_of_files(stamps.files_under(PYCORE), PYCORE),
        stamps.hash_of_files(stamps.files_under(pydyf), pydyf),
    )
    archive, mark = WORKSHOP / LIBRARY, WORKSHOP / "library-made-from"
    if stamps.read(mark) != wanted or not archive.exists():
        ensure_npm()
        arguments = [PYODIDE, PYCORE, pydyf, scripts[1], archive]
        with step("compiling the library with Pyodide"):
            run(["node", str(scripts[0]), *map(str, arguments)], "Does every module of pycore import?")
        stamps.write(mark, wanted)
    return archive
