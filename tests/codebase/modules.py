"""The modules of a package as syntax trees: which imports which, and which name of which is used where."""

import ast
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

Use = tuple[str, str]
"""A module by its full name, and a name in it."""


@dataclass
class Module:
    """One file: its full ``name``, its ``tree``, and what it imports: ``bound`` gives by its own name for it a module
    (with the name "") or a name of a module; more than one where functions import different things by the same name."""

    name: str
    tree: ast.Module
    bound: dict[str, set[Use]] = field(default_factory=dict)

    def bind(self, names: set[str]) -> None:
        """Find what it imports of the modules of these names."""
        self.bound = {}
        for own, use in imported(self.tree, names):
            self.bound.setdefault(own, set()).add(use)

    @property
    def own(self) -> dict[str, ast.stmt]:
        """What it defines itself, each with the statement that does: functions, classes, values."""
        return dict(_definitions(self.tree))


def _definitions(tree: ast.Module) -> Iterator[tuple[str, ast.stmt]]:
    for node in tree.body:
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef):
            yield node.name, node
        elif isinstance(node, ast.Assign | ast.AnnAssign):
            targets = node.targets if isinstance(node, ast.Assign) else [node.target]
            for name in (name for target in targets for name in ast.walk(target) if isinstance(name, ast.Name)):
                yield name.id, node


def name_of(path: Path, root: Path) -> str:
    """A file's name as a module, seen from ``root``: ``pycore.sheet.plan``, a package by its folder."""
    return ".".join(path.relative_to(root).with_suffix("").parts).removesuffix(".__init__")


def read(paths: Iterable[Path], root: Path) -> dict[str, Module]:
    """The modules of these files by their names seen from ``root``."""
    return {name: Module(name, _parsed(path)) for path in paths for name in [name_of(path, root)]}


@cache
def _parsed(path: Path) -> ast.Module:
    return ast.parse(path.read_text("utf-8"))


def imported(tree: ast.AST, names: set[str]) -> Iterator[tuple[str, Use]]:
    """Each import of one of ``names`` or out of one, wherever it stands: the name it is bound to, and what it is."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            for alias in node.names:
                if alias.name in names:
                    first = alias.name.partition(".")[0]
                    yield (alias.asname, (alias.name, "")) if alias.asname else (first, (first, ""))
        elif isinstance(node, ast.ImportFrom) and node.module:
            for alias in node.names:
                whole = f"{node.module}.{alias.name}"
                if whole in names or node.module in names:
                    yield alias.asname or alias.name, (whole, "") if whole in names else (node.module, alias.name)


def edges(module: Module, names: set[str]) -> set[str]:
    """The modules among ``names`` that a module imports, by inner imports and those for types alone too.

    ``import pycore.sheet.plan`` and ``from pycore.sheet import plan`` both are imports of that module.
    """
    plain = {alias.name for node in ast.walk(module.tree) if isinstance(node, ast.Import) for alias in node.names}
    found = {origin for _, (origin, _) in imported(module.tree, names)} | (plain & names)
    return (found & names) - {module.name}


def components(graph: dict[str, set[str]]) -> list[tuple[str, ...]]:
    """The strongly connected components of more than one node, each sorted, in order (Tarjan's algorithm)."""
    number: dict[str, int] = {}
    low: dict[str, int] = {}
    stack: list[str] = []
    found: list[tuple[str, ...]] = []

    def visit(node: str) -> None:
        number[node] = low[node] = len(number)
        stack.append(node)
        for other in sorted(graph[node]):
            if other not in number:
                visit(other)
                low[node] = min(low[node], low[other])
            elif other in stack:
                low[node] = min(low[node], number[other])
        if low[node] == number[node]:
            start = stack.index(node)
            found.append(tuple(sorted(stack[start:])))
            del stack[start:]

    for node in sorted(graph):
        if node not in number:
            visit(node)
    return sorted(component for component in found if len(component) > 1)


class Uses:
    """Which names of ``kept`` modules are used by a house's ``users``: by a name imported from the very module that has
    it, by a dot after that module, or inside the module itself.

    A module that is handed on as a value may be asked for any name by a dot anywhere: of it every name counts that
    stands after a dot, or in a text, somewhere. Of one that is imported by its name as a text, only those of that file
    count.
    """

    def __init__(self, kept: dict[str, Module], users: Iterable[Module]) -> None:
        self.kept, self.users = kept, list(users)
        self.found: set[Use] = set()
        self.handed_on: set[str] = set()
        names = set(kept)
        for module in {id(one): one for one in (*kept.values(), *self.users)}.values():
            module.bind(names)
        for module in self.users:
            self._read(module)
            self._loosely(self._named_in(module), said_in(module))
        self._loosely(self.handed_on, {text for module in self.users for text in said_in(module)})

    def _mark(self, module: str, name: str) -> None:
        """Count a use, through modules that pass the name on."""
        place = self.kept.get(module)
        if place is None or (module, name) in self.found:
            return
        self.found.add((module, name))
        if name not in place.own:
            for use in place.bound.get(name, ()):
                self._mark(*use)

    def _read(self, module: Module) -> None:
        dotted = {id(node.value) for node in ast.walk(module.tree) if isinstance(node, ast.Attribute)}
        own = module.own
        for node in ast.walk(module.tree):
            if isinstance(node, ast.Attribute):
                self._attribute(module, node)
            elif isinstance(node, ast.Name) and isinstance(node.ctx, ast.Load):
                self._name(module, node.id, id(node) in dotted)
        if module.name in self.kept:
            for name, count in _loads_elsewhere(module.tree, own).items():
                if count:
                    self.found.add((module.name, name))

    def _name(self, module: Module, name: str, dotted: bool) -> None:
        for origin, wanted in module.bound.get(name, ()):
            if wanted:
                self._mark(origin, wanted)
            elif not dotted:
                self.handed_on.add(origin)

    def _attribute(self, module: Module, node: ast.Attribute) -> None:
        """``a.b.NAME`` where ``a.b`` is a module."""
        parts = [node.attr]
        inner = node.value
        while isinstance(inner, ast.Attribute):
            parts.append(inner.attr)
            inner = inner.value
        if isinstance(inner, ast.Name):
            for origin, wanted in module.bound.get(inner.id, ()):
                if not wanted:
                    self._mark(".".join((origin, *reversed(parts[1:]))), node.attr)

    def _named_in(self, module: Module) -> set[str]:
        """Modules that a module imports by a text: of a text that is put together, all that begin as it does."""
        whole, begun = set(), tuple[str, ...]()
        for call in ast.walk(module.tree):
            if isinstance(call, ast.Call) and ast.unparse(call.func).endswith("import_module"):
                wanted = call.args[0]
                if isinstance(wanted, ast.Constant):
                    whole.add(wanted.value)
                elif isinstance(wanted, ast.JoinedStr) and isinstance(wanted.values[0], ast.Constant):
                    begun = (*begun, wanted.values[0].value)
        return {name for name in self.kept if name in whole or name.startswith(begun)}

    def _loosely(self, modules: set[str], said: set[str]) -> None:
        """Count every name of these modules that is said."""
        for name in modules:
            for used in said & {*self.kept[name].own, *self.kept[name].bound}:
                self._mark(name, used)

    def unused(self) -> set[Use]:
        """Names that a module defines and nobody uses."""
        return {
            (name, own) for name, module in self.kept.items() for own in module.own
            if (name, own) not in self.found and own not in ("__all__", "_")
        }  # fmt: skip


def unread_members(kept: dict[str, Module], users: Iterable[Module]) -> set[Use]:
    """Fields and methods of classes that no module reads after a dot, by a pattern or by name: ``Class.member``."""
    users = list(users)
    read_somewhere = {name for module in users for name in _members_read(module.tree)}
    in_patterns = {
        node.cls.id for module in users for node in ast.walk(module.tree)
        if isinstance(node, ast.MatchClass) and node.patterns and isinstance(node.cls, ast.Name)
    }  # fmt: skip
    return {
        (name, f"{owner.name}.{member}") for name, module in kept.items() for owner in ast.walk(module.tree)
        if isinstance(owner, ast.ClassDef) and owner.name not in in_patterns
        for member in _members_of(owner) if member not in read_somewhere
    }  # fmt: skip


def _members_of(owner: ast.ClassDef) -> Iterator[str]:
    for node in owner.body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("__"):
            yield node.name
        elif isinstance(node, ast.Assign | ast.AnnAssign):
            targets = node.targets if isinstance(node, ast.Assign) else [node.target]
            names = [target.id for target in targets if isinstance(target, ast.Name)]
            yield from (name for name in names if not name.startswith("__"))


def _members_read(tree: ast.AST) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Attribute) and isinstance(node.ctx, ast.Load):
            yield node.attr
        elif isinstance(node, ast.MatchClass):
            yield from node.kwd_attrs
        elif isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "getattr":
            yield from (part.value for part in node.args if isinstance(part, ast.Constant))


def said_in(module: Module) -> set[str]:
    """What stands after a dot in a module, and its texts."""
    nodes = list(ast.walk(module.tree))
    texts = {node.value for node in nodes if isinstance(node, ast.Constant) and isinstance(node.value, str)}
    return texts | {node.attr for node in nodes if isinstance(node, ast.Attribute)}


def _loads_elsewhere(tree: ast.Module, own: dict[str, ast.stmt]) -> dict[str, int]:
    """How often each of a module's own names is read in the module, outside the statement that defines it."""
    counts = dict.fromkeys(own, 0)
    for statement in tree.body:
        for name in _loads(statement):
            if name in counts and own[name] is not statement:
                counts[name] += 1
    return counts


def _loads(statement: ast.AST) -> Iterator[str]:
    """Names read in a statement, those in the texts of annotations too."""
    for node in ast.walk(statement):
        if isinstance(node, ast.Name) and not isinstance(node.ctx, ast.Store):
            yield node.id
        texts = [node.slice] if isinstance(node, ast.Subscript) else []
        texts += [getattr(node, name, None) for name in ("annotation", "returns")]
        for text in (inner for one in texts if one is not None for inner in ast.walk(one)):
            if isinstance(text, ast.Constant) and isinstance(text.value, str) and text.value.strip():
                try:
                    yield from (name.id for name in ast.walk(ast.parse(text.value, mode="eval"))
                                if isinstance(name, ast.Name))  # fmt: skip
                except SyntaxError:
                    continue
