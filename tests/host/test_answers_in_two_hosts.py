"""Equal forms give equal answers, drawings, workings and PDFs in CPython here and in the site's own Pyodide."""

import json
import subprocess
from collections import Counter
from pathlib import Path

from host import problems

RUN = Path(__file__).parents[1] / "render" / "two_hosts.mjs"


def test_two_hundred_problems_are_written_alike_in_cpython_and_in_the_sites_pyodide(runtime: Path):
    """Every region of every reply and twenty PDFs; symmetric problems and decimal commas are among them."""
    command = ["node", str(RUN), str(runtime), problems.__file__]
    done = subprocess.run(command, capture_output=True, text=True, timeout=240)
    assert 0 == done.returncode, done.stderr[-2000:]
    expected, found = problems.digests(), json.loads(done.stdout.splitlines()[-1])
    kinds = Counter(key.split()[1] for key in expected)
    assert {"answer": 200, "sheet": 200, "view": 200, "workings": 200, "rest": 200, "pdf": 20} == kinds
    assert len({digest for key, digest in expected.items() if "sheet" in key}) > 190
    assert {"point", "comma"} == {form["decimal"] for form in problems.forms(problems.COUNT)}
    assert [] == [key for key in expected if expected[key] != found.get(key)]
