"""Prepares a run of the tests: what the named tests need, and nothing else."""

import os
from collections.abc import Iterable
from pathlib import Path

from making import environment, programs, stamps
from making.paths import ROOT, TESTS
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


def _path(argument: str) -> Path:
    """The file or folder of an argument such as `tests/unit/test_trig.py::test_name`; pytest runs in the root."""
    return (ROOT / argument.partition("::")[0]).resolve()


def _needs_of(path: Path) -> frozenset[str]:
    """What the tests in one file or folder need."""
    inside = path.relative_to(TESTS).parts if path.is_relative_to(TESTS) else ()
    return NEEDS.get(inside[0], EVERYTHING) if inside else EVERYTHING
