"""No module imports one that imports it again, be it by an inner import or for types alone."""

import ast

from codebase.modules import Module, components, edges, read
from making.paths import PYCORE, ROOT, SITE, TESTS

CYCLES: list[tuple[str, ...]] = [
    (
        "pycore.calculators.branch_practice",
        "pycore.calculators.parallel_circuit",
        "pycore.calculators.parallel_working",
    ),
    ("pycore.calculators.circuit_practice", "pycore.calculators.series_circuit", "pycore.calculators.series_working"),
    ("pycore.calculators.companion", "pycore.calculators.telling"),
    ("pycore.calculators.open_neutral", "pycore.calculators.open_neutral_practice"),
    ("pycore.calculators.power_practice", "pycore.calculators.power_triangle", "pycore.calculators.power_working"),
    ("pycore.calculators.sequence_components", "pycore.calculators.sequence_practice"),
    (
        "pycore.calculators.star_and_delta",
        "pycore.calculators.star_delta_practice",
        "pycore.calculators.star_delta_working",
    ),
    ("pycore.calculators.sum_case", "pycore.calculators.sum_notes"),
]
"""Modules that import each other in a circle, to be untied: the list only ever gets shorter."""


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
    found = circles(house)
    assert [] == [circle for circle in found if circle not in CYCLES], "a new circle"
    assert [] == [circle for circle in CYCLES if circle not in found], "untied or changed: take it off the list"


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
