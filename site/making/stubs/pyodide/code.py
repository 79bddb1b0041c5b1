"""In the place of Pyodide's module of the same name: what runs code, without what inspects signatures."""

from _pyodide._base import eval_code, eval_code_async, find_imports

__all__ = ["eval_code", "eval_code_async", "find_imports", "relaxed_call"]


def relaxed_call(function, *given, **named):
    """A plain call: nothing of ours is called with more than it takes."""
    return function(*given, **named)
