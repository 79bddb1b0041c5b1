"""Lint and type checks, as `build.py check` and the tests run them."""

import subprocess
import sys

from making.paths import ROOT
from making.progress import say

COMMANDS = (
    ("ruff", "check", "--quiet", "--output-format", "concise", "."),
    ("mypy", "--no-error-summary"),
)


def findings(command: tuple[str, ...]) -> str:
    """What one tool complains of; "" when nothing."""
    done = subprocess.run([sys.executable, "-m", *command], cwd=ROOT, capture_output=True, text=True)
    return "" if done.returncode == 0 else (done.stdout + done.stderr).strip()


def lint_and_types() -> int:
    """Run every check, show what it finds; gives the exit code."""
    complaints = [found for command in COMMANDS if (found := findings(command))]
    for complaint in complaints:
        say(complaint)
    say("check: " + ("faults found" if complaints else "no faults"))
    return 1 if complaints else 0
