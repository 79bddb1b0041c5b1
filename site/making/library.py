"""Runs inside Pyodide: compiles what the first answer of any page needs of the standard library and of pycore into
one archive, the library; what only one page's first answer needs into an archive of that page; all the rest into
another, `later`; and each lazy part, with what of the standard library only it needs, into one of its own.

Needed is what a Pyodide that has the modules in stubs/ in the place of its own loads as it gives those answers, and
then as it imports every module, with the imports inside its functions too (needed.py).
Docstrings, assertions and line numbers are left out, and of pycore all that lighter.py says. No visitor reads line
numbers, and their tables shrink badly: they were more than a quarter of the archive that every first visit fetches. A
traceback still names files and functions; the same request in CPython has the lines.
"""

import ast
import io
import json
import marshal
import zipfile
from collections.abc import Container, Iterable, Iterator, Mapping
from importlib.util import MAGIC_NUMBER, source_hash
from pathlib import Path
from types import CodeType

from making.lighter import lightened

SOURCES = Path("/sources")
PARTS = Path("/parts")
"""A folder for each lazy part: what the page loads only when a request needs it."""

PACKAGES = "packages"
"""A text in each archive: the packages of pycore that it holds modules of, for whoever joins it to the others."""

STANDARD_LIBRARY = "/lib/python314.zip/"
CONSTANT_DATE = (2024, 1, 1, 0, 0, 0)
UNCHECKED_HASH = (1).to_bytes(4, "little")
NO_LOCATION_FOR_EIGHT = 0xFF
"""An entry of the line table: eight code units that belong to no line. (An empty table breaks `traceback`.)"""


def module_name(path: Path, root: Path) -> str:
    """The dotted name of the module at `path` under `root`."""
    return ".".join(path.relative_to(root).with_suffix("").parts).removesuffix(".__init__")


def imported_names(tree: ast.Module) -> Iterator[str]:
    """Every module that a module imports, wherever in it the import stands."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module and node.level == 0:
            yield node.module


def modules_wanted() -> str:
    """As JSON, every module of pycore and all that they import but no lazy part; and of each part its modules."""
    lazy = {package.name for folder in PARTS.iterdir() for package in folder.iterdir()} - {"pycore"}
    always = {"pydyf", "records"}
    for path in (SOURCES / "pycore").rglob("*.py"):
        names = imported_names(lightened(path.read_bytes(), path.name))
        always |= {module_name(path, SOURCES)} | {name for name in names if name.split(".")[0] not in lazy}
    parts = {
        folder.name: [module_name(path, folder) for path in sorted(folder.rglob("*.py"))] for folder in PARTS.iterdir()
    }
    return json.dumps({"whole": sorted(always - elsewhere()), "parts": dict(sorted(parts.items()))})


def with_packages(loaded: Iterable[str], standard: zipfile.ZipFile) -> list[str]:
    """Loaded files that the standard library's archive holds, with the packages that they stand in."""
    packages = {f"{parent.as_posix()}/__init__.py" for name in loaded for parent in Path(name).parents if parent.name}
    return sorted((set(loaded) | packages) & set(standard.namelist()))


def without_lines(code: CodeType) -> CodeType:
    """`code`, and all code inside it, belonging to no line."""
    units = len(code.co_code) // 2
    eights, rest = divmod(units, 8)
    table = bytes([NO_LOCATION_FOR_EIGHT] * eights + ([0xF8 | rest - 1] if rest else []))
    inner = tuple(
        without_lines(constant) if isinstance(constant, CodeType) else constant for constant in code.co_consts
    )
    return code.replace(co_linetable=table, co_consts=inner)


def compiled(source: bytes, name: str, *, ours: bool) -> bytes:
    """The .pyc file of one module, which Python uses without looking for a source."""
    tree = lightened(source, name) if ours else source
    code = compile(tree, name, "exec", dont_inherit=True, optimize=2)
    return MAGIC_NUMBER + UNCHECKED_HASH + source_hash(source) + marshal.dumps(without_lines(code))


def elsewhere() -> set[str]:
    """The modules of pycore that stand in a lazy part."""
    return {module_name(path, folder) for folder in PARTS.iterdir() for path in folder.rglob("pycore/**/*.py")}


def archive_of(standard: zipfile.ZipFile, names: Iterable[str], ours: Mapping[str, Path]) -> bytes:
    """An archive of compiled modules: of the standard library by `names`, and `ours` by name, with the packages of
    pycore that they stand in. Stored and not compressed: the host compresses all of it at once, and better."""
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_STORED) as archive:

        def add(name: str, source: bytes, ours: bool) -> None:
            archive.writestr(zipfile.ZipInfo(f"{name}c", CONSTANT_DATE), compiled(source, name, ours=ours))

        for name in names:
            add(name, standard.read(name), ours=False)
        for name, path in sorted(ours.items()):
            add(name, path.read_bytes(), ours=name.startswith("pycore/"))
        packages = {name.rpartition("/")[0].replace("/", ".") for name in ours if name.startswith("pycore/")}
        archive.writestr(zipfile.ZipInfo(PACKAGES, CONSTANT_DATE), "\n".join(sorted(packages)))
    return stream.getvalue()


def files_of(folder: Path, modules: Container[str] | None = None) -> dict[str, Path]:
    """The Python files of a folder by name; of these `modules` only, if they are given."""
    return {
        path.relative_to(folder).as_posix(): path
        for path in sorted(folder.rglob("*.py")) if modules is None or module_name(path, folder) in modules
    }  # fmt: skip


def our_archive() -> bytes:
    """pycore and what it brings, as the library will have them: to be imported where nothing else is."""
    with zipfile.ZipFile(STANDARD_LIBRARY.rstrip("/")) as standard:
        return archive_of(standard, (), files_of(SOURCES))


def make_archives(needed: str) -> dict[str, bytes]:
    """The library, `later`, an archive of each page and of each lazy part, by name; `needed` is what needed.py told."""
    contents, archives = json.loads(needed), {}
    with zipfile.ZipFile(STANDARD_LIBRARY.rstrip("/")) as standard:
        files = {name: with_packages(loaded, standard) for name, loaded in contents["loaded"].items()}
        first = files["library"]
        for name, modules in contents["modules"].items():
            only = [one for one in files.get(name, ()) if name == "library" or one not in first]
            archives[name] = archive_of(standard, only, files_of(SOURCES, set(modules)))
        for folder in sorted(PARTS.iterdir()):
            only = [one for one in files[folder.name] if one not in first]
            archives[folder.name] = archive_of(standard, only, files_of(folder))
    return archives
