"""A class set has the same bytes in CPython and in the site's Pyodide: sheets, codes, overlays, key, tables."""

import json
import subprocess
from pathlib import Path

from host import class_sets

RUN = Path(__file__).with_name("class_sets.mjs")


def in_pyodide(runtime: Path, wanted: str) -> list[str]:
    """What a function of class_sets.py gives in the site's Pyodide."""
    command = ["node", str(RUN), str(runtime), class_sets.__file__, wanted]
    done = subprocess.run(command, capture_output=True, text=True, timeout=240)
    assert 0 == done.returncode, done.stderr[-2000:]
    found: list[str] = json.loads(done.stdout.splitlines()[-1])
    return found


def test_class_sets_keys_and_markings_have_the_same_bytes_in_both_hosts(runtime: Path):
    expected = class_sets.digests()
    assert 9 == len(expected)
    assert expected == in_pyodide(runtime, "digests()")


def test_question_papers_and_the_register_have_the_same_bytes_in_both_hosts(runtime: Path):
    expected = class_sets.paper_digests()
    assert 6 == len(expected)
    assert expected == in_pyodide(runtime, "paper_digests()")
