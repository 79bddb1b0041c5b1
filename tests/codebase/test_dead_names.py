"""Nothing is kept that nobody uses: by module, so that a name in use elsewhere keeps no other of the same name."""

import ast

import pytest
from codebase.modules import Module, Uses, read, unread_members
from making.paths import PYCORE, ROOT, SITE, TESTS

from pycore.calculators.registry import SLUGS, module_of

MADE = {PYCORE / "lettering" / "made.py", PYCORE / "lettering" / "made_fonts.py"}
BY_REGISTRY = {
    "page": {"PAGE"},
    "practice": {"form_of", "task_of"},
    "teaching": {"LEVELS", "PLAN", "READINGS"},
    "words": {"SHORT"},
}
"""Names that the registry and the engine look up in every room, by the room's module."""
BY_REQUEST = {f"pycore.render.{name}": {"reply"} for name in ("draw_here", "photograph", "strokes")}
"""Names that the API looks up in the module that a request is for."""
FOR_TESTS = {
    "pycore.lettering": {"ascent", "descent", "has"},
    "pycore.writers.collect": {"arrows"},
}
"""Names that only tests use, as oracles or to look at a drawing."""


def pairs(listed: dict[str, set[str]]) -> set[tuple[str, str]]:
    """A list by module as pairs of module and name."""
    return {(module, name) for module, names in listed.items() for name in names}


def by_registry() -> set[tuple[str, str]]:
    """What is looked up in every room, as pairs of module and name."""
    return {
        (module_of(slug, module).__name__, name)
        for slug in SLUGS for module, names in BY_REGISTRY.items() for name in names
    }  # fmt: skip


@pytest.fixture(scope="module")
def kept() -> dict[str, Module]:
    """The modules of pycore but what the build makes."""
    return read([path for path in sorted(PYCORE.rglob("*.py")) if path not in MADE], ROOT)


def test_nothing_is_kept_that_nobody_uses(kept: dict[str, Module]):
    makers = read([*sorted((SITE / "making").rglob("*.py")), ROOT / "build.py"], ROOT)
    unused = Uses(kept, [*kept.values(), *makers.values()]).unused()
    assert [] == sorted(unused - pairs(FOR_TESTS) - pairs(BY_REQUEST) - by_registry()), "nobody uses these"
    assert [] == sorted(pairs(FOR_TESTS) - unused), "gone or in use: take these off the list"


def test_every_member_of_a_class_is_read_somewhere(kept: dict[str, Module]):
    makers = read([*sorted((SITE / "making").rglob("*.py")), ROOT / "build.py"], ROOT)
    assert set() == unread_members(kept, [*kept.values(), *makers.values()])


@pytest.mark.parametrize(("user", "unread"), [
    ("print(a.size, a.turn())", set()), ("print(a.size)", {"A.turn"}), ("a.size = a.turn()", {"A.size"}),
    ("print(getattr(a, 'size'), a.turn)", set()), ("match a:\n    case A(size=s): print(s, a.turn)", set()),
    ("print(size, 'turn', A(size=1))", {"A.size", "A.turn"}), ("match a:\n    case A(s): print(s)", set()),
])  # fmt: skip
def test_a_member_counts_where_it_is_read_not_where_it_is_given(user: str, unread: set[str]):
    text = "class A:\n    size: int\n    def turn(self):\n        return 1\n"
    house = {"house.a": Module("house.a", ast.parse(text)), "house.b": Module("house.b", ast.parse(user))}
    assert {("house.a", name) for name in unread} == unread_members(house, house.values())


def test_what_is_kept_for_tests_is_used_by_them(kept: dict[str, Module]):
    tests = read(sorted(TESTS.rglob("*.py")), ROOT)
    unused = Uses(kept, tests.values()).unused()
    assert set() == pairs(FOR_TESTS) & unused


def unused_of(**sources: str) -> set[tuple[str, str]]:
    """What nobody uses of a house of these modules, by their names below ``house``."""
    house = {f"house.{name}": Module(f"house.{name}", ast.parse(text)) for name, text in sources.items()}
    return Uses(house, house.values()).unused()


@pytest.mark.parametrize("user", [
    "from house.a import ZERO\nprint(ZERO)", "from house import a\nprint(a.ZERO)", "import house.a as a\nprint(a.ZERO)",
    "import house.a\nprint(house.a.ZERO)", "from house import a as words\nprint(words.ZERO)",
    "def f():\n    from house.a import ZERO as zero\n    print(zero)",
    "import importlib\nimportlib.import_module('house.a').ZERO", "from house import a\nprint(getattr(a, 'ZERO'))",
])  # fmt: skip
def test_a_use_by_the_very_module_counts(user: str):
    assert ("house.a", "ZERO") not in unused_of(a="ZERO = 0", b=user)


@pytest.mark.parametrize("user", [
    "from house.c import ZERO\nprint(ZERO)", "from house import c\nprint(c.ZERO)", "print('ZERO')",
    "from house.a import ZERO", "ZERO = 1\nprint(ZERO)", "from house import a\nprint(a.ONE)",
])  # fmt: skip
def test_a_use_of_another_modules_name_does_not(user: str):
    assert ("house.a", "ZERO") in unused_of(a="ZERO = 0\nONE = 1", b=user, c="ZERO = 0")


def test_a_name_counts_inside_its_module_but_not_inside_itself():
    assert {("house.a", "g")} == unused_of(a="def f() -> int:\n    return 1\ndef g() -> int:\n    return g() + f()")


def test_a_name_that_a_module_passes_on_counts_where_it_is_used_at_last():
    front = "from house.a import ZERO\n__all__ = ['ZERO']"
    assert set() == unused_of(a="ZERO = 0", b=front, c="from house.b import ZERO\nprint(ZERO)")
    assert {("house.a", "ZERO")} == unused_of(a="ZERO = 0", b=front)
