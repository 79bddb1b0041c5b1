"""No module imports one that imports it again, be it by an inner import or for types alone."""

import ast

from codebase.modules import Module, components, edges, read
from making.paths import PYCORE, ROOT, SITE, TESTS


def circles(house: dict[str, Module]) -> list[tuple[str, ...]]:
    """The groups of modules in which each leads to each by imports."""
    return components({name: edges(module, set(house)) for name, module in house.items()})


def test_no_modules_import_each_other_in_a_circle():
    house = {
        name: module
        for folder, root in ((PYCORE, ROOT), (SITE / "making", SITE), (TESTS, TESTS))
        for name, module in read(sorted(folder.rglob("*.py")), root).items()
    }
    assert {"pycore.api", "making.whole", "codebase.test_cycles"} <= set(house)
    assert [] == circles(house)


def circles_of(**sources: str) -> list[tuple[str, ...]]:
    """The circles of a house of these modules, by their names below ``house``."""
    house = {f"house.{name}": Module(f"house.{name}", ast.parse(text)) for name, text in sources.items()}
    return circles(house)


def test_inner_imports_and_imports_for_types_are_seen():
    types = "from typing import TYPE_CHECKING\nif TYPE_CHECKING:\n    from house.b import B"
    inner = "def f():\n    import house.a"
    assert [("house.a", "house.b")] == circles_of(a=types, b=inner)
    assert [("house.a", "house.b", "house.c")] == circles_of(a="from house import b", b="import house.c as c",
                                                             c="from house.a import x")  # fmt: skip
    assert [] == circles_of(a="from house import b, c", b="from house import c", c="import math")
