"""A run of named tests prepares what these tests need, and nothing else."""

import ast
from pathlib import Path

import pytest
from making.paths import TESTS
from making.testing import CHROMIUM, ENGINES, EVERYTHING, NEEDS, SIMULATOR, SITE, needs
from making.testing import READERS as FILE_READERS

BY_NAME = {
    **dict.fromkeys(("dist", "site", "runtime"), SITE),
    **dict.fromkeys(("browser", "chromium_path", "fresh_page", "open_page", "playwright", "rooms"), CHROMIUM),
    "ngspice_path": SIMULATOR,
    "find_minibrowser": ENGINES,
    "READERS": FILE_READERS,
}
"""Names that only a test has that needs the thing: fixtures, and what it imports for the readers of files."""


def names_used(path: Path) -> set[str]:
    """The parameters of a file's functions, and all that it imports by name from elsewhere."""
    nodes = list(ast.walk(ast.parse(path.read_text("utf-8"))))
    taken = [node for node in nodes if isinstance(node, ast.ImportFrom) and node.module != "making.testing"]
    imported = {alias.name for node in taken for alias in node.names}
    return {node.arg for node in nodes if isinstance(node, ast.arg)} | imported


@pytest.mark.parametrize(
    ("arguments", "needed"),
    [
        (["tests/unit/test_trig.py"], set()),
        (["tests/unit/test_trig.py::test_minus_nothing_is_nothing_whichever_is_asked_for_first"], set()),
        (["-q", "tests/unit", "tests/cases", "-k", "star"], set()),
        (["tests/unit/test_trig.py", "tests/circuits"], {SIMULATOR}),
        (["tests/host"], {SITE}),
        (["tests/render/test_svg.py"], {SITE, CHROMIUM, FILE_READERS}),
        (["tests/unit", "tests/browser/test_page.py"], EVERYTHING),
        (["tests/unit", "tests"], EVERYTHING),
        (["tests/conftest.py"], EVERYTHING),
        (["tests/bench"], EVERYTHING),
        (["tests/unit/../browser"], EVERYTHING),
        ([], EVERYTHING),
        (["-k", "star", "-x"], EVERYTHING),
        (["tests/unit/no_such_file.py"], EVERYTHING),
    ],
)
def test_named_tests_need_what_their_folders_need(arguments: list[str], needed: set[str]):
    assert needed == needs(arguments)


@pytest.mark.parametrize("folder", sorted(NEEDS))
def test_no_test_uses_what_its_folder_is_not_said_to_need(folder: str):
    files = sorted((TESTS / folder).glob("*.py"))
    assert any(path.name.startswith("test_") for path in files)
    used = {path.name: {BY_NAME[name] for name in names_used(path) if name in BY_NAME} for path in files}
    assert {} == {name: found - NEEDS[folder] for name, found in used.items() if found - NEEDS[folder]}


def test_every_folder_of_tests_is_listed():
    assert {path.parent.name for path in TESTS.glob("*/test_*.py")} == set(NEEDS)
