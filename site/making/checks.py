"""Lint and type checks, as `build.py check` and the tests run them."""

import subprocess
import sys

from making.environment import put_venv_on_path
from making.paths import NODE_MODULES, ROOT, SITE
from making.progress import say

TYPES = SITE / "types"


PYTHON = (sys.executable, "-m")
ESLINT = ("node", str(NODE_MODULES / "eslint" / "bin" / "eslint.js"))
TSC = ("node", str(NODE_MODULES / "typescript" / "bin" / "tsc"), "--pretty", "false", "--project")

COMMANDS = {
    "ruff": (*PYTHON, "ruff", "check", "--quiet", "--output-format", "concise", str(ROOT)),
    "mypy": (*PYTHON, "mypy", "--no-error-summary"),
    "eslint": (*ESLINT, "--max-warnings", "0", "."),
    **{f"tsc {project}": (*TSC, str(TYPES / f"{project}.json")) for project in ("pages", "workers", "node")},
}
"""Each check by name. Pages, workers and Node offer scripts different things, so TypeScript reads them apart."""


def findings(command: tuple[str, ...], text: str = "") -> str:
    """What one tool complains of, given `text` on its standard input; "" when nothing.

    The tools of JavaScript stand in site/node_modules: `environment.ensure_node_modules(developer=True)` comes first.
    """
    put_venv_on_path()
    place = SITE if command[0] == "node" else ROOT  # each finds its settings where it is started
    done = subprocess.run(command, cwd=place, input=text, capture_output=True, text=True)
    complaint = (done.stdout + done.stderr).strip()
    return "" if done.returncode == 0 else complaint or f"{command} failed with code {done.returncode}"


def lint_and_types() -> int:
    """Run every check and print its complaints. Return the exit code."""
    complaints = [complaint for command in COMMANDS.values() if (complaint := findings(command))]
    for complaint in complaints:
        say(complaint)
    say("check: " + ("complaints" if complaints else "no complaints"))
    return 1 if complaints else 0
