"""Makes syntax trees of pycore lighter for the browser's library: no annotations, dataclasses written out.

Runs inside Pyodide beside library.py, and in the tests. What it does not know how to write out is an error.
"""

import ast

FACTORY_ASKED = "..."
WRITTEN_OUT = {"NamedTuple", "TYPE_CHECKING"}
"""Of `typing`, what nothing asks for once classes are written out."""


def _is_dataclass(decorator: ast.expr) -> bool:
    named = decorator.func if isinstance(decorator, ast.Call) else decorator
    return isinstance(named, ast.Name) and named.id == "dataclass"


def _options(decorator: ast.expr) -> dict[str, bool]:
    words = decorator.keywords if isinstance(decorator, ast.Call) else []
    unknown = [ast.unparse(word) for word in words if word.arg not in ("frozen", "slots")]
    if unknown:
        raise NotImplementedError(f"a dataclass with {unknown}")
    return {str(word.arg): isinstance(word.value, ast.Constant) and word.value.value is True for word in words}


def _name(field: ast.AnnAssign) -> str:
    """The name of a field of a class."""
    if not isinstance(field.target, ast.Name):
        raise NotImplementedError(f"a field named {ast.unparse(field.target)}")
    return field.target.id


def _is_of_class(item: ast.AnnAssign) -> bool:
    """Whether it is a value of the class itself (`ClassVar`), and no field."""
    return isinstance(item.annotation, ast.Subscript) and ast.unparse(item.annotation.value) == "ClassVar"


def _factory(value: ast.expr | None) -> str | None:
    """The name of the function that makes a field's default, for `field(default_factory=...)`."""
    if not (isinstance(value, ast.Call) and isinstance(value.func, ast.Name) and value.func.id == "field"):
        return None
    if [word.arg for word in value.keywords] != ["default_factory"] or value.args:
        raise NotImplementedError(f"a field with {ast.unparse(value)}")
    return f"({ast.unparse(value.keywords[0].value)})"


def _initialiser(fields: list[ast.AnnAssign]) -> str:
    """The source of `__init__` for these fields."""
    parameters, body = ["self"], []
    for field in fields:
        name, factory = _name(field), _factory(field.value)
        default = FACTORY_ASKED if factory else field.value and f"({ast.unparse(field.value)})"
        parameters.append(f"{name}={default}" if default else name)
        value = f"{factory}() if {name} is {FACTORY_ASKED} else {name}" if factory else name
        body.append(f"self.{name} = {value}")
    return f"def __init__({', '.join(parameters)}):\n " + "\n ".join(body)


def _is_text(item: ast.stmt) -> bool:
    """Whether a statement is a text that only people read."""
    return isinstance(item, ast.Expr) and isinstance(item.value, ast.Constant)


def _as_named_tuple(node: ast.ClassDef) -> ast.ClassDef:
    """A class with fields of `typing.NamedTuple` as one that derives from `namedtuple`: quicker, and needs less."""
    fields = [item for item in node.body if isinstance(item, ast.AnnAssign)]
    names = tuple(map(_name, fields))
    defaults = ", ".join(ast.unparse(field.value) for field in fields if field.value)
    base = f"collections.namedtuple({node.name!r}, {names!r}, defaults=[{defaults}])"
    node.bases = [ast.parse(base, mode="eval").body]
    node.body = ast.parse("__slots__ = ()").body + [item for item in node.body if item not in fields]
    return node


def _written_out(node: ast.ClassDef, decorator: ast.expr) -> ast.ClassDef:
    """A dataclass as a plain class."""
    if node.bases or len(node.decorator_list) > 1:
        raise NotImplementedError(f"{node.name} has a base or another decorator")
    if any(isinstance(item, ast.FunctionDef) and item.name == "__post_init__" for item in node.body):
        raise NotImplementedError(f"{node.name} has __post_init__")
    options = _options(decorator)
    fields = [item for item in node.body if isinstance(item, ast.AnnAssign) and not _is_of_class(item)]
    names = tuple(map(_name, fields))
    marks = "__match_args__ = __slots__" if options.get("slots") else "__match_args__"
    own = ast.parse(f"{marks} = {names!r}\n{_initialiser(fields)}").body
    rest = [item for item in node.body if item not in fields and not _is_text(item)]
    node.body = own + rest
    kind = "frozen" if options.get("frozen") else "changing"
    node.decorator_list = [ast.parse(f"records.{kind}", mode="eval").body]
    return node


class Lighter(ast.NodeTransformer):
    """Writes dataclasses out and drops what only people and type checkers read."""

    def visit_Module(self, node: ast.Module) -> ast.Module:
        """Every class and function; the module's own names come from elsewhere then."""
        self.generic_visit(node)
        taken = [item for item in node.body if isinstance(item, ast.ImportFrom)]
        imported = {name.name for item in taken if item.module in ("dataclasses", "typing") for name in item.names}
        for item in taken:
            if item.module == "typing":
                item.names = [name for name in item.names if name.name not in WRITTEN_OUT]
        kept = [item for item in node.body if not (item in taken and (item.module == "dataclasses" or not item.names))]
        added = ["import collections"] if "NamedTuple" in imported else []
        if "dataclass" in imported:
            added.append("import records")
        if "replace" in imported:
            added.append("from copy import replace")
        node.body = ast.parse("\n".join(added)).body + kept
        return node

    def visit_ClassDef(self, node: ast.ClassDef) -> ast.ClassDef:
        """A dataclass or a named tuple written out, a protocol emptied."""
        bases = [base.id for base in node.bases if isinstance(base, ast.Name)]
        if "Protocol" in bases:
            node.bases, node.body = [], [ast.Pass()]
            return node
        if "NamedTuple" in bases:
            node = _as_named_tuple(node)
        for decorator in node.decorator_list:
            if _is_dataclass(decorator):
                node = _written_out(node, decorator)
        self.generic_visit(node)
        node.body = node.body or [ast.Pass()]
        return node

    def visit_FunctionDef(self, node: ast.FunctionDef) -> ast.FunctionDef:
        """A function without annotations."""
        node.returns = None
        for argument in ast.walk(node.args):
            if isinstance(argument, ast.arg):
                argument.annotation = None
        self.generic_visit(node)
        node.body = node.body or [ast.Pass()]
        return node

    def visit_If(self, node: ast.If) -> ast.If | None:
        """What is imported for type checkers alone is left out."""
        self.generic_visit(node)
        return None if isinstance(node.test, ast.Name) and node.test.id == "TYPE_CHECKING" else node

    def visit_AnnAssign(self, node: ast.AnnAssign) -> ast.AST | None:
        """A plain assignment, or nothing."""
        self.generic_visit(node)
        return node.value and ast.Assign([node.target], node.value)


def lightened(source: bytes, name: str) -> ast.Module:
    """The syntax tree of one of our modules, ready to be compiled."""
    return ast.fix_missing_locations(Lighter().visit_Module(ast.parse(source, name)))
