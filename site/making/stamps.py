"""Stamps: the hash of what a step was made from, kept so that the step is skipped while nothing changed."""

import contextlib
import hashlib
from collections.abc import Iterable, Iterator
from pathlib import Path

from making.paths import WORKSHOP

try:
    import fcntl
except ImportError:  # Windows has no fcntl: two builds at once are then the user's own care
    fcntl = None  # type: ignore[assignment]

SKIPPED = {"__pycache__", "node_modules", ".ruff_cache", ".mypy_cache", ".pytest_cache"}


def files_under(folder: Path) -> list[Path]:
    """Every source file under `folder`, in one order on every machine; documents are no source of the site."""
    paths = (path for path in folder.rglob("*") if path.is_file() and not SKIPPED & set(path.parts))
    return sorted((path for path in paths if path.suffix not in (".pyc", ".md")), key=lambda path: path.as_posix())


def hash_of_files(paths: Iterable[Path], base: Path) -> str:
    """The SHA-256 over names (relative to `base`) and contents of `paths`, in hexadecimal."""
    total = hashlib.sha256()
    for path in paths:
        total.update(path.relative_to(base).as_posix().encode() + b"\0")
        total.update(hashlib.sha256(path.read_bytes()).digest())
    return total.hexdigest()


def hash_of_texts(*texts: str) -> str:
    """The SHA-256 over `texts`, in hexadecimal."""
    return hashlib.sha256("\0".join(texts).encode()).hexdigest()


def read(path: Path) -> str:
    """The stamp kept at `path`, or "" when there is none."""
    with contextlib.suppress(FileNotFoundError):
        return path.read_text(encoding="utf-8")
    return ""


def write(path: Path, stamp: str) -> None:
    """Keep `stamp` at `path`; called after the step has succeeded."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(stamp, encoding="utf-8")


@contextlib.contextmanager
def one_at_a_time() -> Iterator[None]:
    """Hold the workshop's lock, so that two builds of one work tree wait for each other."""
    WORKSHOP.mkdir(exist_ok=True)
    with (WORKSHOP / "lock").open("w") as handle:
        if fcntl is not None:
            fcntl.flock(handle, fcntl.LOCK_EX)
        yield
