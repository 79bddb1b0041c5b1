"""What stands in the place of modules of Python and Pyodide says what they say, as far as the site asks."""

import ast
import importlib.util
import traceback
import types
from pathlib import Path

import pytest
from making.lighter import lightened
from making.paths import PYCORE, SITE

STUBS = SITE / "making" / "stubs"


def stub(name: str) -> types.ModuleType:
    """A stub, under a name that is nobody's."""
    spec = importlib.util.spec_from_file_location(f"stub_of_{name.rpartition('/')[2]}", STUBS / f"{name}.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def without_source(text: str) -> str:
    """A traceback without lines of source and the marks below them."""
    return "".join(line for line in text.splitlines(keepends=True) if not line.startswith("    "))


def deeper(left: int) -> int:
    return 1 + deeper(left - 1) if left else 1 // 0


def chained() -> None:
    try:
        deeper(0)
    except ZeroDivisionError as error:
        raise ValueError("a wrong\nvalue") from error


def beside() -> None:
    try:
        deeper(1)
    except ZeroDivisionError:
        {}["absent"]


def hidden() -> None:
    try:
        deeper(0)
    except ZeroDivisionError:
        raise KeyError from None


def noted() -> None:
    error = ast.parse
    try:
        error("x = (", "a name")
    except SyntaxError as found:
        refused = RuntimeError("")
        refused.add_note(f"a note of line {found.lineno}")
        raise refused from None


class Own(Exception):
    """An exception whose name has its module."""

    def __str__(self) -> str:
        raise RuntimeError


def own() -> None:
    raise Own


@pytest.mark.parametrize(
    "fails", [lambda: deeper(0), lambda: deeper(9), lambda: deeper(4), chained, beside, hidden, noted, own]
)
def test_a_traceback_is_that_of_the_standard_library_without_source(fails, capsys: pytest.CaptureFixture[str]) -> None:
    ours = stub("traceback")
    try:
        fails()
    except Exception as error:
        wanted = without_source(traceback.format_exc())
        assert wanted == ours.format_exc()
        assert wanted == "".join(ours.format_exception(type(error), error, error.__traceback__))
        assert wanted == "".join(ours.format_exception(error))
        ours.print_exc()
        assert wanted == capsys.readouterr().err
        alone = traceback.format_exc(chain=False)
        assert without_source(alone) == ours.format_exc(chain=False)
    else:
        pytest.fail("nothing was raised")


@pytest.mark.parametrize(("code", "value"), [
    ("1 + 1", 2), ("x = 3", None), ("x = 3\nx * 2", 6), ("x = 3;", None), ("7 ;  ", None), ("", None),
    ("def f():\n  return 4\nf()", 4), ("import math; math.floor(2.5)", 2), ("[k for k in range(3)]", [0, 1, 2]),
])  # fmt: skip
def test_code_gives_its_last_expression(code: str, value: object) -> None:
    assert value == stub("_pyodide/_base").eval_code(code, {})


def test_code_keeps_its_names_and_fails_as_it_fails() -> None:
    base = stub("_pyodide/_base")
    names: dict[str, object] = {"__name__": "__main__"}
    base.eval_code("x = 5", names)
    assert 6 == base.eval_code("x + 1", names)
    with pytest.raises(SyntaxError, match="<exec>"):
        base.eval_code("x = (", names)
    with pytest.raises(NotImplementedError, match="waits"):
        base.eval_code_async("1").send(None)  # no loop: one may be running in this thread


def test_a_module_and_a_name_in_one_are_imported() -> None:
    base = stub("_pyodide/_base")
    assert importlib.util is base.pyimport_impl("importlib.util")
    assert importlib.util.find_spec is base.pyimport_impl("importlib.util.find_spec")
    assert importlib is base.pyimport_impl("importlib")


def test_typing_has_every_name_that_the_lightened_modules_ask_for() -> None:
    typing = stub("typing")
    asked: set[str] = set()
    for path in sorted(PYCORE.rglob("*.py")):
        tree = lightened(path.read_bytes(), path.name)
        taken = [node for node in ast.walk(tree) if isinstance(node, ast.ImportFrom) and node.module == "typing"]
        asked |= {name.name for node in taken for name in node.names}
    assert {"Any", "TypeVar"} <= asked
    assert [] == sorted(name for name in asked if not hasattr(typing, name))


def test_what_would_be_missed_where_a_program_runs_is_no_name_of_typing() -> None:
    typing = stub("typing")
    assert [] == [name for name in ("NamedTuple", "TypedDict", "get_type_hints", "NewType") if hasattr(typing, name)]


def test_names_of_types_may_stand_wherever_types_do() -> None:
    typing = stub("typing")
    kind = typing.TypeVar("kind", bound=int)

    class Held(typing.Generic[kind]):
        """A class of something."""

    class Shaped(Held[int], typing.Protocol):
        """A class that others only look like."""

    assert (Shaped, Held, typing.Generic, object) == Shaped.__mro__
    assert typing.Literal["a", "b"] | None
    assert None | typing.Any
    assert 4 == typing.cast(int, 4)
    assert not typing.TYPE_CHECKING
    assert deeper is typing.overload(deeper)


def test_every_stub_says_in_whose_place_it_stands() -> None:
    texts = {path: ast.get_docstring(ast.parse(path.read_text("utf-8"))) or "" for path in STUBS.rglob("*.py")}
    assert [] == [path.name for path, text in texts.items() if "place of" not in text]
    assert {Path("typing.py"), Path("traceback.py")} <= {path.relative_to(STUBS) for path in texts}
