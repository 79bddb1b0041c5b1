"""The rows of the page of checks, from the worked examples that the tests read."""

import json
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from making.paths import TESTS

if TYPE_CHECKING:
    from pycore.pages.checks import Check

CASES = TESTS / "calculators"
RAISED = str.maketrans("0123456789-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻")
TESTS_ONLY = "cases_tests_only.toml"
"""Figures that belong in tests only are not shown."""


def _outputs(form: dict[str, str], page: str) -> dict[str, float | None]:
    """Ours: the values that the api gives for a form, by output name."""
    from pycore.api import handle

    reply = json.loads(handle(json.dumps({"do": "answer", "page": page, "form": form, "parts": ["answer"]}))[0])
    pairs = re.findall(r'<output[^>]*name="([^"]+)"[^>]*data-value="([^"]*)"', "".join(reply["regions"].values()))
    return {name: float(value) if value else None for name, value in pairs}


def _allowed(tolerance: float | str, expected: float) -> float:
    """A tolerance as a number; per cent are of the expected value."""
    if isinstance(tolerance, str):
        return abs(expected) * float(tolerance.removesuffix("%")) / 100
    return float(tolerance)


def _figures(value: float) -> str:
    """A value to ten significant figures, no needless zeros."""
    return f"{value:.10g}"


def _small(gap: float) -> str:
    """A difference to two figures, with a power of ten where it is small."""
    if gap == 0.0:
        return "0"
    figure, _, power = f"{abs(gap):.1e}".partition("e")
    sign = "\u2212" if gap < 0 else ""
    if abs(gap) >= 0.01:
        return f"{sign}{abs(gap):.2g}"
    return f"{sign}{figure}\u00a0×\u00a010{str(int(power)).translate(RAISED)}"


def _checks_of(case: dict) -> Iterator["Check"]:
    """One row for each expected value of a case."""
    from pycore.calculators.registry import CALCULATORS
    from pycore.pages.checks import Check

    topic, ours = CALCULATORS[case["page"]].title, _outputs(case["form"], case["page"])
    for name, expectation in case["expected"].items():
        expected, unit, value = expectation.get("value"), expectation.get("unit", ""), ours[name]
        if expected is None or expected == "" or value is None:
            continue
        gap = value - expected
        holds = abs(gap) <= _allowed(expectation["tolerance"], expected)
        quantity = f"{case['id'].replace('-', ' ')}: {name.replace('-', ' ')}"
        yield Check(
            topic, quantity, case["source"], case["kind"], f"{_figures(expected)} {unit}", f"{_figures(value)} {unit}",
            f"{_small(gap)} {unit}".strip(), holds,
        )  # fmt: skip


def files_of_cases(folder: Path = CASES) -> list[Path]:
    """The files of worked examples, calculator by calculator in the order of the registry."""
    from pycore.calculators.registry import CALCULATORS

    return [path for slug in CALCULATORS for path in sorted((folder / slug.replace("-", "_")).glob("cases*.toml"))]


def checks(folder: Path = CASES) -> list["Check"]:
    """Every row, in the order of the files and their cases."""
    files = [path for path in files_of_cases(folder) if path.name != TESTS_ONLY]
    cases = [case for path in files for case in tomllib.loads(path.read_text("utf-8")).get("case", [])]
    return [check for case in cases for check in _checks_of(case)]
