"""Where things stand in the work tree."""

from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SITE = ROOT / "site"
PYCORE = ROOT / "pycore"
TESTS = ROOT / "tests"
DIST = ROOT / "dist"
"""The built site, git-ignored."""

WORKSHOP = ROOT / ".build"
"""What the build keeps between runs (stamps, fonts, compiled library), git-ignored; safe to delete."""

VENV = ROOT / ".venv"
NODE_MODULES = SITE / "node_modules"
PYODIDE = NODE_MODULES / "pyodide"
