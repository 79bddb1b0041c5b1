"""In the place of Pyodide's loader of packages: the site has none to load, nor archives to unpack."""

# Unused, but held by Pyodide too: see webloop.
from pyodide_js import loadedPackages  # noqa: F401


class _Place:
    """A folder that Pyodide's script asks for by `__str__`."""

    def __init__(self, path: str) -> None:
        self.path = path

    def __str__(self) -> str:
        return self.path


SITE_PACKAGES = _Place("/lib/python3.14/site-packages")
DSO_DIR = _Place("/usr/lib")


def init_loaded_packages() -> None:
    """None are loaded."""
