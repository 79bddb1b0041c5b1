"""The architecture of pycore: layers, what it may import and call, how large its parts are, that each says its use."""

import ast
import re
import subprocess
import sys
from collections.abc import Callable, Iterable, Iterator
from functools import cache
from pathlib import Path

import pytest
from making.paths import ROOT

CORE = ROOT / "pycore"
LAYERS = (
    "errors", "quantity", "words", "trig", "phasor", "geometry", "linear", "projection", "lettering", "drawing",
    "writers", "circuits", "constructions", "accuracy", "sheet", "practice", "forms", "sums",
    "calculators", "pages", "render", "api",
)  # fmt: skip
MADE = {CORE / "lettering" / "made.py", CORE / "lettering" / "made_fonts.py"}
MODULES = sorted(path for path in CORE.rglob("*.py") if path not in MADE)
MARKUP_MAKERS = {"render/elements.py", "writers/svg.py", "writers/pdf_content.py", "writers/pdf_fonts.py"}
"""In a PDF the same sign opens a hexadecimal string."""
FORBIDDEN_MATH = {
    "sin", "cos", "tan", "asin", "acos", "atan", "atan2", "exp", "exp2", "expm1", "log", "log2", "log10", "log1p",
    "pow", "cbrt", "sinh", "cosh", "tanh", "radians", "degrees", "gamma", "erf", "rect", "phase", "polar",
}  # fmt: skip
FORBIDDEN_MODULES = {
    "cmath", "random", "time", "datetime", "secrets", "uuid", "js", "pyodide", "os", "sys", "subprocess", "socket",
    "threading", "locale", "platform",
}  # fmt: skip
LIBRARIES = {
    "pydyf": (
        "writers/pdf.py", "writers/pdf_content.py", "writers/pdf_file.py", "writers/pdf_letters.py",
        "writers/pdf_structure.py",
    ),
    "segno": ("writers/qr.py",),
}
"""Packages that are not of the standard library, each with the modules of the one writer that may import it."""
WORDS_BY_THEMSELVES = {"none", " and ", " or ", "the "}
SEVERAL_WORDS = re.compile(r"[A-Za-z]{2,}[,;:.]? [A-Za-z]{2,}")
"""A text of two words or more is for people; keys, units and what a field takes ("0.7 lag") are not such texts."""
LONGEST_FILE = 400
LONGEST_FUNCTION = 60
USUAL_FUNCTION = 25


@cache
def tree(path: Path) -> ast.Module:
    """The syntax tree of a module, which nine rules look at."""
    return ast.parse(path.read_text(encoding="utf-8"))


def faulty(faults_of: Callable[[Path], list[str]], modules: Iterable[Path] = MODULES) -> dict[str, list[str]]:
    """The modules that break a rule, each with its faults. One test for a rule: three thousand took longer than all
    that they looked at."""
    modules = list(modules)
    assert len(modules) > 20
    return {name_of(path): faults for path in modules if (faults := faults_of(path))}


def name_of(path: Path) -> str:
    """A module by its place below pycore: ``sheet/labels.py``."""
    return path.relative_to(CORE).as_posix()


def layer_of(path: Path) -> str:
    """The layer in which a module lies."""
    return path.relative_to(CORE).parts[0].removesuffix(".py")


def imports_of(module: ast.AST, package: str = "") -> Iterator[tuple[str, int]]:
    """Every imported name in full, functions' inner imports included: ``pycore.sheet.plan`` and its line."""
    for node in ast.walk(module):
        if isinstance(node, ast.Import):
            yield from ((alias.name, node.lineno) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            base = "." * node.level + (node.module or "")
            assert node.level == 0, f"{package}:{node.lineno} imports by dots, which hides the layer"
            for alias in node.names:
                yield f"{base}.{alias.name}" if base == "pycore" else base, node.lineno


def faults_in_imports(path: Path, module: ast.Module) -> list[str]:
    """Imports of a module that its layer does not allow."""
    layer, faults = layer_of(path), []
    for name, line in imports_of(module, name_of(path)):
        if not name.startswith("pycore."):
            continue
        other = name.split(".")[1]
        if other not in LAYERS or (other != layer and LAYERS.index(other) > LAYERS.index(layer)):
            faults.append(f"{name_of(path)}:{line} imports {name}")
    return faults


def words_said(module: ast.Module) -> Iterator[str]:
    """Sentences that a module writes itself: what it hands to ``say`` beyond named values, texts of several words,
    pieces of texts that are put together too, and some words by themselves; docstrings and what is raised apart."""
    apart = {id(node.value) for node in ast.walk(module) if isinstance(node, ast.Expr)}
    raised = [node for node in ast.walk(module) if isinstance(node, ast.Raise)
              or (isinstance(node, ast.ClassDef) and node.name.endswith("Error"))]  # fmt: skip
    apart |= {id(inner) for node in raised for inner in ast.walk(node)}
    for node in ast.walk(module):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in apart and (
            node.value in WORDS_BY_THEMSELVES or SEVERAL_WORDS.search(node.value)
        ):
            yield f"{node.lineno}: {node.value!r}"
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "say" and node.args:
            told = node.args[0]
            if isinstance(told, ast.Constant) and re.search(r"[A-Za-z]", re.sub(r"\{\w+\}", "", str(told.value))):
                yield f"{node.lineno}: {told.value!r}"


ROOM = ("words", "circuit", "construction", "figure", "sentences", "fields", "problem", "case")
"""The modules of a room that others of it build on, in the order of their imports; `page` comes last."""
SENTENCES = ("words", "teaching")
"""The modules of a room that hold its sentences."""


def room_of(path: Path) -> str:
    """The room of a module, "" for one that stands in none."""
    parts = path.relative_to(CORE).parts
    return parts[1] if parts[0] == "calculators" and len(parts) == 3 else ""


def faults_in_room(path: Path, module: ast.Module) -> list[str]:
    """Imports of a room's module that go up in the room, or into another room."""
    room, faults = room_of(path), []
    own = ROOM.index(path.stem) if path.stem in ROOM else len(ROOM)
    for name, line in imports_of(module, name_of(path)):
        parts = name.split(".")
        if parts[:2] != ["pycore", "calculators"] or len(parts) < 3:
            continue
        other = parts[3] if len(parts) > 3 else ""
        above = ROOM.index(other) if other in ROOM else len(ROOM) if other else 0
        up = above > own or (other == "page" and path.stem != "page")
        if parts[2] != room or up:
            faults.append(f"{name_of(path)}:{line} imports {name}")
    return faults


def test_a_module_of_a_room_imports_only_what_stands_before_it_there():
    """Words, circuit, fields, case, then workings and practice, and page last; never another room."""
    assert {} == faulty(lambda path: faults_in_room(path, tree(path)), filter(room_of, MODULES))


def test_nothing_outside_the_rooms_names_one_but_the_registry():
    rooms = {room_of(module) for module in MODULES} - {""}

    def named(path: Path) -> list[str]:
        names = [name for name, _ in imports_of(tree(path)) if name.startswith("pycore.calculators.")]
        return [name for name in names if name.split(".")[2] in rooms]

    assert {} == faulty(named, (path for path in MODULES if not room_of(path)))


def test_texts_of_several_words_stand_in_modules_of_words_alone():
    others = (one for one in MODULES if layer_of(one) in ("sums", "calculators") and one.stem not in SENTENCES)
    assert {} == faulty(lambda path: list(words_said(tree(path))), others)


@pytest.mark.parametrize("source", [
    "say('Turn {a}.', a=1)", "x = 'supply current'", "x = f'At {place}, the neutral carries {amount}.'", "x = 'none'",
    "def f():\n    'Docstring here.'\n    return f'the {name}'", "CLASS_WORDS = {'a': ('sum of squares',)}",
])  # fmt: skip
def test_the_check_of_words_sees_each_text(source: str):
    assert 1 == len(list(words_said(ast.parse(source))))


def test_the_check_of_words_passes_what_is_no_sentence():
    allowed = "'Docstring of two.'\nx = 'tip-to-tail'\ny = f'{a} lag'\nraise ValueError('no such thing')\n"
    assert [] == list(words_said(ast.parse(allowed + "z = say('{a} {b}', a=1, b=2)")))


def test_a_module_imports_only_from_layers_before_its_own():
    """Or from its own package; a new package must be given its place in the list first."""
    own = [path for path in MODULES if path != CORE / "__init__.py"]
    assert {layer_of(path) for path in own} <= set(LAYERS)
    assert {} == faulty(lambda path: faults_in_imports(path, tree(path)), own)


def test_the_check_of_layers_sees_inner_imports_and_upward_ones():
    """The check can fail: a function in geometry that imports the api, and one that imports a sheet's part."""
    source = "def f():\n    from pycore import api\n    import pycore.sheet.plan\n    from pycore.errors import Fault\n"
    faults = faults_in_imports(CORE / "geometry.py", ast.parse(source))
    assert ["geometry.py:2 imports pycore.api", "geometry.py:3 imports pycore.sheet.plan"] == faults


def test_the_package_itself_imports_nothing():
    """`import pycore` must not pull in anything before it is wanted."""
    assert [] == list(imports_of(tree(CORE / "__init__.py")))


def test_a_module_uses_nothing_but_the_standard_library_and_what_its_writer_is_made_with():
    """No clock, no chance, no host: equal input gives equal bytes, in a browser too."""

    def faults_of(path: Path) -> list[str]:
        faults = []
        for name, line in imports_of(tree(path)):
            top = name.split(".")[0]
            ours = top == "pycore" or name_of(path) in LIBRARIES.get(top, ())
            if not (ours or top in sys.stdlib_module_names) or top in FORBIDDEN_MODULES:
                faults.append(f"{name_of(path)}:{line} imports {name}")
        return faults

    assert {} == faulty(faults_of)


def _called(node: ast.Call) -> str:
    function = node.func
    if isinstance(function, ast.Name):
        return function.id
    if isinstance(function, ast.Attribute) and isinstance(function.value, ast.Name):
        return f"{function.value.id}.{function.attr}"
    return ""


def _is_set(node: ast.AST) -> bool:
    made = isinstance(node, ast.Call) and _called(node) in ("set", "frozenset")
    return made or isinstance(node, (ast.Set, ast.SetComp))


def _iterated(node: ast.AST) -> list[ast.AST]:
    if isinstance(node, ast.For):
        return [node.iter]
    if isinstance(node, (ast.ListComp, ast.GeneratorExp, ast.DictComp, ast.SetComp)):
        return [generator.iter for generator in node.generators]
    if isinstance(node, ast.Call) and _called(node) in ("list", "tuple", "enumerate", "zip", "map", "iter", "next"):
        return list(node.args)
    return []


def _fault_of(node: ast.AST) -> str:
    """What is forbidden in one node of a syntax tree, or nothing."""
    if isinstance(node, ast.Call) and _called(node) in ("sum", "abs", "pow", "hash", "id", "eval", "exec", "open"):
        return f"calls {_called(node)}()"
    if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name) and node.value.id == "math":
        return f"uses math.{node.attr}" if node.attr in FORBIDDEN_MATH else ""
    if isinstance(node, ast.ImportFrom) and node.module == "math":
        return "imports names out of math, which hides them from this check"
    if isinstance(node, ast.BinOp | ast.AugAssign) and isinstance(node.op, ast.Pow):
        return "raises to a power by **"
    if any(_is_set(iterated) for iterated in _iterated(node)):
        return "iterates a set"
    return ""


def forbidden_in(module: ast.Module) -> list[str]:
    """Everything in a module whose result differs between hosts or runs."""
    return [f"line {node.lineno} {fault}" for node in ast.walk(module) if (fault := _fault_of(node))]


def test_a_module_calls_nothing_that_differs_between_hosts():
    """Library sines, powers, absolute values of complex numbers, sums of floats, hashes, sets in their own order."""
    assert {} == faulty(lambda path: forbidden_in(tree(path)))


@pytest.mark.parametrize("source", [
    "math.sin(1)", "import cmath\nmath.atan2(1, 2)", "x = 2.0 ** 0.5", "x **= 2", "sum(values)", "abs(z)", "pow(2, 3)",
    "hash('a')", "for x in {1, 2}: pass", "[x for x in set(y)]", "list({1})", "tuple(frozenset(y))",
    "from math import sin", "f = math.exp", "open('file')", "eval('1')",
])  # fmt: skip
def test_the_check_of_calls_sees_each_forbidden_thing(source: str):
    assert 1 == len(forbidden_in(ast.parse(source)))


def test_the_check_of_calls_passes_what_is_allowed():
    allowed = "math.sqrt(2)\nmath.fsum(x)\nmath.hypot(a, b)\nmath.fabs(x)\nx in {1, 2}\nsorted({1})\nprint(*a)\n"
    assert [] == forbidden_in(ast.parse(allowed))


def functions_of(module: ast.Module) -> Iterator[ast.FunctionDef | ast.AsyncFunctionDef]:
    """Every function and method."""
    return (node for node in ast.walk(module) if isinstance(node, (ast.FunctionDef, ast.AsyncFunctionDef)))


def length_of(function: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    """Lines from `def` to the last."""
    return (function.end_lineno or function.lineno) - function.lineno + 1


def test_a_file_stays_under_400_lines_and_a_function_under_60():
    def long_in(path: Path) -> list[str]:
        lines = len(path.read_text(encoding="utf-8").splitlines())
        long = [f"{f.name}: {length_of(f)}" for f in functions_of(tree(path)) if length_of(f) >= LONGEST_FUNCTION]
        return [*long, *([f"the file: {lines}"] if lines >= LONGEST_FILE else [])]

    assert {} == faulty(long_in)


def test_most_functions_are_under_25_lines():
    """Nineteen of twenty: the rest may be plain lists."""
    lengths = [length_of(function) for path in MODULES for function in functions_of(tree(path))]
    assert len(lengths) > 300
    assert 0.05 * len(lengths) > len([length for length in lengths if length > USUAL_FUNCTION])


def undocumented(module: ast.Module) -> list[str]:
    """The module itself, and its public classes and functions, where they have no docstring."""
    missing = [] if ast.get_docstring(module) else ["module"]
    for node in module.body:
        if isinstance(node, (ast.FunctionDef, ast.ClassDef)) and not node.name.startswith("_"):
            missing += [] if ast.get_docstring(node) else [node.name]
    return missing


def test_everything_public_says_what_it_is_for():
    assert {} == faulty(lambda path: undocumented(tree(path)))


def markup_in(module: ast.Module) -> list[str]:
    """String literals, docstrings apart, in which `<` stands at the end or before a letter, a slash or the like."""
    docstrings = {id(node.value) for node in ast.walk(module) if isinstance(node, ast.Expr)}
    return [
        f"line {node.lineno}: {node.value[:40]!r}"
        for node in ast.walk(module)
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in docstrings
        and re.search(r"<([A-Za-z/!?]|$)", node.value)
    ]  # fmt: skip


def test_only_the_makers_of_markup_hold_markup():
    """HTML and SVG are made by builders that escape; nowhere else does a tag stand in a text."""
    assert MARKUP_MAKERS == set(found := faulty(lambda path: markup_in(tree(path)))), found


def test_the_check_of_markup_sees_tags_and_passes_comparisons_and_docstrings():
    assert 3 == len(markup_in(ast.parse("a = '<b>'\nb = f'<{tag}>'\nc = 'x</p>'\n")))
    assert [] == markup_in(ast.parse("def f():\n    'A <b> here.'\n    return '1 < 2'\n"))


def test_importing_all_of_pycore_has_no_effect_outside_it():
    """No output, no file, no change of the recursion limit or the locale; and no module of a browser is asked for."""
    names = [name_of(p).removesuffix(".py").replace("/", ".").removesuffix(".__init__") for p in MODULES]
    wanted = [f"pycore.{name}" if name != "__init__" else "pycore" for name in names]
    script = (
        f"import sys; sys.path.insert(0, {str(ROOT)!r}); limit = sys.getrecursionlimit()\n"
        + "\n".join(f"import {name}" for name in wanted)
        + "\nassert limit == sys.getrecursionlimit()\n"
        "assert not {'random', 'js', 'numpy', 'urllib.request', 'socket'} & set(sys.modules)\n"
    )
    done = subprocess.run([sys.executable, "-W", "error", "-c", script], capture_output=True, text=True)
    assert (0, "", "") == (done.returncode, done.stdout, done.stderr)
