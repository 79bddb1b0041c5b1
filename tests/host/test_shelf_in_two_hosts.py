"""Every calculator: equal forms give equal bytes in CPython here and in the site's own Pyodide."""

import json
import subprocess
from collections import Counter
from pathlib import Path

import pytest
from host import shelf

from pycore.calculators.registry import CALCULATORS

RUN = Path(__file__).with_name("mounted.mjs")
TESTS = Path(__file__).parents[1]
MANY = 200
REGIONS = ("answer", "notes", "results", "figures", "sheet", "kinds", "view", "workings", "rest")


def in_pyodide(runtime: Path, call: str) -> dict[str, str]:
    """What a call of ``shelf`` gives in the site's Pyodide."""
    command = ["node", str(RUN), str(runtime), str(TESTS), f"__import__('host.shelf').shelf.{call}"]
    done = subprocess.run(command, capture_output=True, text=True, timeout=240)
    assert 0 == done.returncode, done.stderr[-2000:]
    return json.loads(done.stdout.splitlines()[-1])


def kinds_of(digests: dict[str, str]) -> Counter[str]:
    """How many digests there are of each region."""
    return Counter(key.split()[2] for key in digests)


def test_thirty_problems_of_every_calculator_are_written_alike_in_both(runtime: Path):
    expected, found = shelf.digests(), in_pyodide(runtime, "digests()")
    assert list(dict.fromkeys(key.split()[0] for key in expected)) == list(CALCULATORS)
    pages = len(CALCULATORS)
    assert dict.fromkeys(REGIONS, pages * shelf.COUNT) | {"pdf": pages * 3} == kinds_of(expected)
    assert expected == found


def test_two_hundred_problems_of_the_neutral_are_written_alike_in_both(runtime: Path):
    """Every region of every reply and twenty PDFs; symmetric problems and decimal commas are among them."""
    slug = "neutral-current"
    expected, found = shelf.digests([slug], MANY), in_pyodide(runtime, f"digests(['{slug}'], {MANY})")
    assert dict.fromkeys(REGIONS, MANY) | {"pdf": 20} == kinds_of(expected)
    assert len({digest for key, digest in expected.items() if "sheet" in key}) > 190
    assert {"point", "comma"} == {form["decimal"] for form in shelf.forms(slug, MANY)}
    assert expected == found


@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_calculator_has_seeded_forms_of_its_own(slug: str):
    """No two alike, of keys that the form has."""
    forms, keys = list(shelf.forms(slug, shelf.COUNT)), {field.name for field in CALCULATORS[slug].fields}
    assert shelf.COUNT == len({json.dumps(form) for form in forms})
    assert set() == {key for form in forms for key in form} - keys
