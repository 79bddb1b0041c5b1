"""Runs inside Pyodide as the page starts it: tells which files of the standard library are loaded once everything has
been imported that pycore, and then each lazy part, needs. A Pyodide of its own, because what compiles them needs more.
"""

import importlib
import json
import sys

STANDARD_LIBRARY = "/lib/python314.zip/"
PARTS = "/parts/"
"""Holds a folder for each lazy part: what the page loads only when a request needs it."""


def read_a_traceback() -> None:
    """Format one traceback, because what that needs is imported only then."""
    import traceback

    try:
        raise ValueError
    except ValueError:
        traceback.format_exc()


def use_codes() -> None:
    """Make a code, because which codecs that needs is seen only then."""
    qr = importlib.import_module("pycore.writers.qr")
    qr.matrix("https://example.org/#a=1")
    qr.matrix("Ω")


USES = {"codes": use_codes}
"""What the page will do with a part, where importing it does not show all that it needs."""


def loaded() -> list[str]:
    """The files of the standard library's archive that are loaded now."""
    origins = (getattr(getattr(module, "__spec__", None), "origin", None) or "" for module in sys.modules.values())
    return sorted(origin.removeprefix(STANDARD_LIBRARY) for origin in origins if origin.startswith(STANDARD_LIBRARY))


def needed(modules: str) -> str:
    """By archive, the files loaded after its modules; `modules` is JSON: the library's, and each part's by name."""
    asked = json.loads(modules)
    for name in asked.pop("library"):
        importlib.import_module(name)
    read_a_traceback()
    found = {"library": loaded()}
    for part, names in asked.items():
        sys.path.append(PARTS + part)
        for name in names:
            importlib.import_module(name)
        USES.get(part, lambda: None)()
        found[part] = loaded()
    return json.dumps(found)
