"""Runs inside Pyodide: compiles the needed part of the standard library, pycore and pydyf into one archive,
and each lazy part, with what of the standard library only it needs, into another.

Needed is what is loaded once every module of pycore has been imported, with the imports inside its functions too.
Docstrings and assertions are left out, and of pycore all that lighter.py says.
Modules that are not ours also lose their line numbers, which no visitor reads:
line tables shrink badly, and the archive is fetched by every first visit.
"""

import ast
import importlib
import io
import marshal
import sys
import traceback
import zipfile
from collections.abc import Iterable, Iterator
from importlib.util import MAGIC_NUMBER, source_hash
from pathlib import Path
from types import CodeType

from making.lighter import lightened

SOURCES = Path("/sources")
PARTS = Path("/parts")
"""A folder for each lazy part: what the page loads only when a request needs it."""

STANDARD_LIBRARY = "/lib/python314.zip/"
CONSTANT_DATE = (2024, 1, 1, 0, 0, 0)
UNCHECKED_HASH = (1).to_bytes(4, "little")
NO_LOCATION_FOR_EIGHT = 0xFF
"""An entry of the line table: eight code units that belong to no line. (An empty table breaks `traceback`.)"""


def module_name(path: Path, root: Path) -> str:
    """The dotted name of the module at `path` under `root`."""
    return ".".join(path.relative_to(root).with_suffix("").parts).removesuffix(".__init__")


def imported_names(source: bytes) -> Iterator[str]:
    """Every module that a module imports, wherever in it the import stands."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.level == 0:
            yield node.module


def import_everything() -> None:
    """Import every module of pycore and all that they import, but no lazy part."""
    lazy = {package.name for part in PARTS.iterdir() for package in part.iterdir()}
    for path in sorted((SOURCES / "pycore").rglob("*.py")):
        importlib.import_module(module_name(path, SOURCES))
        for name in imported_names(path.read_bytes()):
            if name.split(".")[0] not in lazy:
                importlib.import_module(name)


def use_codes() -> None:
    """Make a code, because which codecs that needs is seen only then."""
    qr = importlib.import_module("pycore.writers.qr")
    qr.matrix("https://example.org/#a=1")
    qr.matrix("Ω")


USES = {"codes": use_codes}
"""What the page will do with each part."""


def read_a_traceback() -> None:
    """Format one traceback, because what that needs is imported only then."""
    try:
        raise ValueError
    except ValueError:
        traceback.format_exc()


def library_files(standard: zipfile.ZipFile) -> list[str]:
    """The files of the standard library's archive that are loaded now, with the packages that they stand in."""
    origins = (getattr(getattr(module, "__spec__", None), "origin", None) or "" for module in sys.modules.values())
    loaded = {origin.removeprefix(STANDARD_LIBRARY) for origin in origins if origin.startswith(STANDARD_LIBRARY)}
    packages = {f"{parent.as_posix()}/__init__.py" for name in loaded for parent in Path(name).parents if parent.name}
    return sorted((loaded | packages) & set(standard.namelist()))


def without_lines(code: CodeType) -> CodeType:
    """`code`, and all code inside it, belonging to no line."""
    units = len(code.co_code) // 2
    whole, rest = divmod(units, 8)
    table = bytes([NO_LOCATION_FOR_EIGHT] * whole + ([0xF8 | rest - 1] if rest else []))
    inner = tuple(without_lines(part) if isinstance(part, CodeType) else part for part in code.co_consts)
    return code.replace(co_linetable=table, co_consts=inner)


def compiled(source: bytes, name: str, *, ours: bool) -> bytes:
    """The .pyc file of one module, which Python uses without looking for a source."""
    tree = lightened(source, name) if ours else source
    code = compile(tree, name, "exec", dont_inherit=True, optimize=2)
    data = marshal.dumps(code if ours else without_lines(code))
    return MAGIC_NUMBER + UNCHECKED_HASH + source_hash(source) + data


def archive_of(standard: zipfile.ZipFile, names: Iterable[str], sources: Path) -> bytes:
    """An archive of compiled modules, stored and not compressed: the host compresses all of it at once, and better."""
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_STORED) as archive:

        def add(name: str, source: bytes, ours: bool) -> None:
            archive.writestr(zipfile.ZipInfo(f"{name}c", CONSTANT_DATE), compiled(source, name, ours=ours))

        for name in names:
            add(name, standard.read(name), ours=False)
        for path in sorted(sources.rglob("*.py")):
            name = path.relative_to(sources).as_posix()
            add(name, path.read_bytes(), ours=name.startswith("pycore/"))
    return stream.getvalue()


def make_archives() -> dict[str, bytes]:
    """The library, and each lazy part, by name."""
    import_everything()
    read_a_traceback()
    with zipfile.ZipFile(STANDARD_LIBRARY.rstrip("/")) as standard:
        always = library_files(standard)
        made = {"library": archive_of(standard, always, SOURCES)}
        for part in sorted(PARTS.iterdir()):
            sys.path.append(str(part))
            for path in sorted(part.rglob("*.py")):
                importlib.import_module(module_name(path, part))
            USES[part.name]()
            only = [name for name in library_files(standard) if name not in always]
            made[part.name] = archive_of(standard, only, part)
    return made
