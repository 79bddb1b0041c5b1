"""In the place of Pyodide's module of the same name: runs code and gives the value of its last expression, without what
reads code for other ends.
"""

from _ast import Expr, Expression, PyCF_ONLY_AST


def eval_code(source, globals=None, locals=None, *, filename="<exec>", **_more):
    """Run code, in these names or in none; gives the value of a last expression, unless a semicolon follows it."""
    globals = {} if globals is None else globals
    locals = globals if locals is None else locals
    tree = compile(source, filename, "exec", PyCF_ONLY_AST)
    last = tree.body.pop() if tree.body and isinstance(tree.body[-1], Expr) else None
    exec(compile(tree, filename, "exec"), globals, locals)
    if last is None:
        return None
    value = eval(compile(Expression(last.value), filename, "eval"), globals, locals)
    return None if source.rstrip().endswith(";") else value


async def eval_code_async(*_given, **_named):
    """Nothing of ours waits inside Python."""
    raise NotImplementedError("code that waits")


def find_imports(_source) -> list[str]:
    """None: nothing is loaded by what code imports."""
    return []


def pyimport_impl(path):
    """A module, or a name in one, by its path with dots."""
    stem, _, name = path.rpartition(".")
    found = __import__(stem or name, fromlist=[name] if stem else [])
    if not stem:
        return found
    try:
        return getattr(found, name)
    except AttributeError:
        from importlib import import_module

        return import_module(path)
