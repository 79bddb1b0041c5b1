"""A run of named tests prepares what these tests need, and nothing else."""

import ast
import json
from pathlib import Path

import pytest
from making import testing
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


class Runs:
    """Stands in for pytest: gives the codes in turn, and leaves the failures of the first run behind."""

    def __init__(self, place: Path, failed: list[str], *codes: int) -> None:
        self.place, self.failed, self.codes, self.asked = place, failed, list(codes), list[tuple[str, ...]]()

    def __call__(self, *arguments: str) -> int:
        if not self.asked and self.failed:
            self.place.write_text(json.dumps(dict.fromkeys(self.failed, True)), encoding="utf-8")
        self.asked.append(arguments)
        return self.codes.pop(0)


@pytest.mark.parametrize(("failed", "codes", "given", "runs"), [
    ([], [0], 0, 1),
    (["tests/a.py::test_b[c d]"], [1, 0], 0, 2),
    (["tests/a.py::test_b[c d]"], [1, 1], 1, 2),
    ([f"tests/a.py::test_{number}" for number in range(testing.FEW + 1)], [1], 1, 1),
    (["tests/a.py::test_b"], [3], 3, 1),
    ([], [1], 1, 1),
], ids=["all pass", "passes alone", "fails again", "too many", "pytest itself fails", "failures unknown"])  # fmt: skip
def test_a_few_failures_are_tried_once_more_alone(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path,
    failed: list[str], codes: list[int], given: int, runs: int,
):  # fmt: skip
    pytest_runs = Runs(tmp_path / "lastfailed", failed, *codes)
    monkeypatch.setattr(testing, "FAILED", tmp_path / "lastfailed")
    monkeypatch.setattr(testing, "_pytest", pytest_runs)
    (tmp_path / "lastfailed").write_text('{"tests/old.py::test_of_an_earlier_run": true}', encoding="utf-8")
    assert given == testing.run_tests([])
    assert runs == len(pytest_runs.asked) and pytest_runs.asked[0] == ("-n", "auto", "--dist", "worksteal")
    if runs == 2:
        assert ("-n", "0", "-v", *failed) == pytest_runs.asked[1]
        assert (given == 0) == (f"look into each:\n  {failed[0]}" in "".join(capsys.readouterr()))


def test_named_tests_are_tried_once(monkeypatch: pytest.MonkeyPatch, tmp_path: Path):
    pytest_runs = Runs(tmp_path / "lastfailed", ["tests/a.py::test_b"], 1)
    monkeypatch.setattr(testing, "_pytest", pytest_runs)
    assert 1 == testing.run_tests(["tests/a.py"]) and [("tests/a.py",)] == pytest_runs.asked
