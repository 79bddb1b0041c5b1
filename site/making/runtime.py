"""Puts Pyodide and the library (standard library, pycore, pydyf) that it starts from into the site."""

import importlib.util
import shutil
import zipfile
from pathlib import Path

from making import stamps
from making.paths import PYCORE, PYODIDE, ROOT

RUNTIME_FILES = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm")
LIBRARY = "library.zip"
CONSTANT_DATE = (2024, 1, 1, 0, 0, 0)


def write_runtime(folder: Path) -> None:
    """Write Pyodide's own files and library.zip into `folder`."""
    folder.mkdir(parents=True)
    for name in RUNTIME_FILES:
        shutil.copyfile(PYODIDE / name, folder / name)
    shutil.copyfile(PYODIDE / "python_stdlib.zip", folder / LIBRARY)
    with zipfile.ZipFile(folder / LIBRARY, "a", zipfile.ZIP_DEFLATED) as archive:
        for base, path in _own_sources():
            entry = zipfile.ZipInfo(path.relative_to(base).as_posix(), CONSTANT_DATE)
            archive.writestr(entry, path.read_bytes())


def _own_sources() -> list[tuple[Path, Path]]:
    """Every source of pycore and pydyf, each with the folder that its module path starts from."""
    pydyf = Path(importlib.util.find_spec("pydyf").origin).parent
    sources = [(ROOT, path) for path in stamps.files_under(PYCORE) if path.suffix == ".py"]
    return sources + [(pydyf.parent, path) for path in stamps.files_under(pydyf) if path.suffix == ".py"]
