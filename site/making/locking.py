"""Writes what pip installs, with everything that it brings, version by version and file by file (`build.py lock`)."""

import tomllib

from making.environment import BIN, LOCKED
from making.paths import ROOT
from making.programs import run
from making.progress import say

OPTIONS = (
    "--quiet", "--universal", "--generate-hashes", "--no-header", "--no-annotate", "--no-emit-index-url",
    "--python-version", "3.11",
)  # fmt: skip


def lock() -> int:
    """Write site/making/locked/ anew from pyproject.toml; a version that is locked already stays as long as it may."""
    extras = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]["optional-dependencies"]
    for extra in extras:
        place = LOCKED / f"{extra}.txt"
        command = [str(BIN / "uv"), "pip", "compile", *OPTIONS, "--extra", extra, "--output-file", str(place)]
        run([*command, str(ROOT / "pyproject.toml")], "Is the package index reachable? uv says more.", cwd=ROOT)
        say(f"locked: {place}")
    return 0
