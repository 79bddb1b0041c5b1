"""Dataclasses that the browser's library has written out are what they are in CPython."""

import ast
import json
import subprocess
from pathlib import Path

import pytest
from host import records_seen
from making.lighter import lightened
from making.paths import ROOT

RUN = Path(__file__).with_name("records.mjs")


def test_every_dataclass_has_the_same_fields_defaults_equality_and_hash(runtime: Path):
    modules = sorted(
        ".".join(path.relative_to(ROOT).with_suffix("").parts) for path in (ROOT / "pycore").rglob("*.py")
        if path.name != "__init__.py"
    )  # fmt: skip
    command = ["node", str(RUN), str(runtime), records_seen.__file__, json.dumps(modules)]
    done = subprocess.run(command, capture_output=True, text=True, timeout=120)
    assert 0 == done.returncode, done.stderr[-2000:]
    expected, found = records_seen.digests(modules), json.loads(done.stdout.splitlines()[-1])
    assert len(expected) > 90
    assert json.loads(json.dumps(expected)) == found


def test_annotations_protocols_and_imports_for_types_are_left_out():
    source = b"""
from typing import NamedTuple, Protocol, TYPE_CHECKING
if TYPE_CHECKING:
    from elsewhere import Nothing
class Point(NamedTuple):
    x: float
    def doubled(self, by: int = 2) -> float:
        total: float = self.x * by
        return total
class Drawn(Protocol):
    at: Point
    def draw(self) -> None: ...
LIMIT: int = 3
later: int
"""
    left = ast.unparse(lightened(source, "made_up.py"))
    assert "class Point(collections.namedtuple('Point', ('x',), defaults=[])):" in left
    for gone in ("x: float", "TYPE_CHECKING:", "elsewhere", "-> ", ": int", "later", "draw("):
        assert gone not in left
    assert "LIMIT = 3" in left and "total = self.x * by" in left


def test_a_default_is_made_by_any_expression_that_gives_a_function():
    source = b"""
from dataclasses import dataclass, field
@dataclass
class A:
    x: list = field(default_factory=lambda: [1])
"""
    left = ast.unparse(lightened(source, "made_up.py"))
    assert "self.x = (lambda: [1])() if x is ... else x" in left


@pytest.mark.parametrize("source", [
    b"@dataclass(order=True)\nclass A:\n x: int",
    b"@dataclass\nclass A(B):\n x: int",
    b"@dataclass\nclass A:\n x: int = field(compare=False)",
    b"@dataclass\nclass A:\n x: int\n def __post_init__(self): self.x += 1",
])  # fmt: skip
def test_what_cannot_be_written_out_stops_the_build(source: bytes):
    with pytest.raises(NotImplementedError):
        lightened(b"from dataclasses import dataclass, field\n" + source, "made_up.py")
