"""Finds the tests that a change touches: `build.py test --changed`. A quick look before a commit; CI runs them all.

A test is touched by its own file, and by every Python module that it imports by however many steps, but for what is
imported by the doors of pycore alone, through which everything leads. A page's scripts and styles touch the browser's
tests of that page; a calculator's package its own tests and the page in the browser.
"""

import ast
import re
import subprocess
from collections.abc import Callable, Collection, Iterable, Iterator
from functools import cache
from pathlib import Path

from making.paths import PYCORE, ROOT, SITE, TESTS

DOORS = {PYCORE / "api.py", PYCORE / "calculators" / "registry.py", TESTS / "conftest.py"}
ROOTS = (TESTS, ROOT, SITE)
ON_CORE = ("browser/test_shelf.py", "codebase/test_dead_names.py", "codebase/test_layers.py")
"""Run after every change of pycore: every calculator's page in the browser, and the rules that modules keep."""

MENTIONS = {
    "sheet": r"\bSLUG\b|CALCULATORS", "home": r"goto\(site\)|\{site\}\"", "reading": r"accuracy|lesson-plan",
    "college-settings": "college", "question-papers": "question.papers", "class-set": "class.set",
    "print-setup": "print.set",
}  # fmt: skip
"""How a test names a page of a kind; of other kinds, by the folder of the page."""

SCRIPTED = re.compile(r"""(?:\bfrom|\bimport|@import)\s*\(?["'](\.[^"']+)["']""")


def changed(since: str = "HEAD") -> list[Path]:
    """The files that differ from a commit, new ones too."""
    asked = (
        ["git", "diff", "--name-only", "--no-renames", since],
        ["git", "ls-files", "--others", "--exclude-standard"],
    )
    told = [subprocess.run(one, cwd=ROOT, check=True, capture_output=True, text=True).stdout for one in asked]
    return sorted(ROOT / name for name in {*"".join(told).splitlines()})


def tests_of(paths: Iterable[Path]) -> list[Path]:
    """The test files that a change of these files touches."""
    paths = set(paths)
    calculators = {path.relative_to(PYCORE / "calculators").parts[0] for path in paths
                   if (PYCORE / "calculators") in path.parents and path not in DOORS}  # fmt: skip
    found = {test for test in sorted(TESTS.rglob("test_*.py")) if paths & {test, *_reached(test)}}
    for name in calculators:
        found |= set((TESTS / "calculators" / name).glob("test_*.py"))
    if any(PYCORE in path.parents for path in paths):
        found |= {TESTS / name for name in ON_CORE}
    found |= {test for kind in _kinds(paths) for test in (TESTS / "browser").glob("test_*.py") if _names(test, kind)}
    return sorted(test for test in found if test.exists())


def _reached(path: Path) -> set[Path]:
    """The modules of the project that one imports, by however many steps, not through a door."""
    return _closure(path, lambda one: frozenset() if one in DOORS else _imports(one))


def _closure(start: Path, used_by: Callable[[Path], Collection[Path]]) -> set[Path]:
    """The files that one uses, by however many steps."""
    found: set[Path] = set()
    waiting = [start]
    while waiting:
        new = set(used_by(waiting.pop())) - found
        found |= new
        waiting += new
    return found


@cache
def _imports(path: Path) -> frozenset[Path]:
    """The modules of the project that one imports itself."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    names = {name for node in ast.walk(tree) for name in _imported(node)}
    return frozenset(found for name in names for found in [_module(name)] if found)


def _imported(node: ast.AST) -> Iterator[str]:
    """The names that a statement imports; of `from a import b` both `a` and `a.b`, which may be a module."""
    if isinstance(node, ast.Import):
        yield from (alias.name for alias in node.names)
    if isinstance(node, ast.ImportFrom) and node.module:
        yield node.module
        yield from (f"{node.module}.{alias.name}" for alias in node.names)


@cache
def _module(name: str) -> Path | None:
    """Where a module of the project stands."""
    places = [root / name.replace(".", "/") for root in ROOTS]
    files = [file for place in places for file in (place.with_suffix(".py"), place / "__init__.py")]
    return next((file for file in files if file.is_file()), None)


def _kinds(paths: set[Path]) -> set[str]:
    """The kinds of pages that use any of these scripts, styles and templates."""
    used = {path for path in paths if path.suffix in (".js", ".css") and SITE in path.parents}
    entries = [*(SITE / "js" / "pages").glob("*.js"), *(SITE / "css" / "pages").glob("*.css")]
    named = {path.stem for path in paths if path.parent == SITE / "templates"}
    return named | {one.stem for one in entries if "base" in named or used & {one, *_closure(one, _scripts)}}


def _scripts(one: Path) -> set[Path]:
    """The scripts or styles that one uses itself."""
    named = SCRIPTED.findall(one.read_text(encoding="utf-8"))
    return {other for other in ((one.parent / name).resolve() for name in named) if other.is_file()}


def _names(test: Path, kind: str) -> bool:
    """Whether a test of the browser opens pages of a kind."""
    return bool(re.search(MENTIONS.get(kind, rf"\b{re.escape(kind)}/"), test.read_text(encoding="utf-8")))
