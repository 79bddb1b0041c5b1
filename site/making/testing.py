"""Prepares a run of the tests (what the named tests need, and nothing else) and runs it."""

import json
import os
import subprocess
import sys
from collections.abc import Iterable
from pathlib import Path

from making import environment, programs, stamps
from making.paths import ROOT, TESTS
from making.progress import say
from making.whole import build_site, ensure_lettering

SITE, CHROMIUM, ENGINES, SIMULATOR, READERS = "site", "Chromium", "other engines", "simulator", "readers"
EVERYTHING = frozenset({SITE, CHROMIUM, ENGINES, SIMULATOR, READERS})

NEEDS: dict[str, frozenset[str]] = {
    "browser": EVERYTHING,
    "calculators": frozenset(),
    "cases": frozenset(),
    "circuits": frozenset({SIMULATOR}),
    "codebase": frozenset({SITE, CHROMIUM}),
    "host": frozenset({SITE}),
    "render": frozenset({SITE, CHROMIUM, READERS}),
    "unit": frozenset(),
}
"""By folder of tests/. The lettering is ready for all of them; anything else under tests/ needs everything."""


def needs(arguments: Iterable[str]) -> frozenset[str]:
    """What the tests need that pytest's `arguments` name by path; everything where they name none."""
    named = [path for one in arguments if not one.startswith("-") and (path := _path(one)).exists()]
    return frozenset().union(*map(_needs_of, named)) if named else EVERYTHING


def prepare(arguments: Iterable[str]) -> None:
    """Find, install or build what the tests need that pytest's `arguments` name.

    Raises BuildError where a browser, or in CI another program, is missing and cannot be installed.
    """
    needed = needs(arguments)
    if CHROMIUM in needed:
        os.environ["PHASOR_FOLIO_CHROMIUM"] = str(programs.ensure_chromium(environment.PYTHON))
    if ENGINES in needed:
        programs.ensure_firefox()
        programs.ensure_webkit()
    if SIMULATOR in needed:
        programs.ensure_ngspice()
    if READERS in needed:
        programs.ensure_readers()
    with stamps.one_at_a_time():
        environment.ensure_node_modules(developer=SITE in needed)
        if SITE in needed:
            build_site()
        else:
            ensure_lettering()


FEW = 8
"""So many failures are tried once more; a run with more has something wrong with it."""
FAILED = ROOT / ".pytest_cache" / "v" / "cache" / "lastfailed"


def run_tests(arguments: list[str]) -> int:
    """Run the tests that pytest's `arguments` name, or all; gives pytest's code.

    All of them keep two processors busy for half an hour. A few failures are tried once more, alone: what is wrong
    fails again, and so does the run. What passes then is listed, to be looked into: it may be a race.
    """
    if arguments:
        return _pytest(*arguments)
    FAILED.unlink(missing_ok=True)
    code = _pytest("-n", "auto", "--dist", "worksteal")
    failed = list(json.loads(FAILED.read_text("utf-8"))) if code == 1 and FAILED.exists() else []
    if not 0 < len(failed) <= FEW:
        return code
    say(f"{len(failed)} of all tests failed: once more, alone")
    code = _pytest("-n", "0", "-v", *failed)
    if code == 0:
        say("\n  ".join(("failed among all tests and passed alone; look into each:", *failed)))
    return code


def _pytest(*arguments: str) -> int:
    return subprocess.run([sys.executable, "-m", "pytest", *arguments], cwd=ROOT).returncode


def _path(argument: str) -> Path:
    """The file or folder of an argument such as `tests/unit/test_trig.py::test_name`; pytest runs in the root."""
    return (ROOT / argument.partition("::")[0]).resolve()


def _needs_of(path: Path) -> frozenset[str]:
    """What the tests in one file or folder need."""
    inside = path.relative_to(TESTS).parts if path.is_relative_to(TESTS) else ()
    return NEEDS.get(inside[0], EVERYTHING) if inside else EVERYTHING
