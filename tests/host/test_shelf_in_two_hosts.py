"""The shelf's pages: equal forms give equal bytes in CPython here and in the site's own Pyodide."""

import json
import subprocess
from collections import Counter
from pathlib import Path

from host import shelf

RUN = Path(__file__).parents[1] / "render" / "two_hosts.mjs"


def test_thirty_problems_of_each_page_are_written_alike_in_both(runtime: Path):
    command = ["node", str(RUN), str(runtime), shelf.__file__]
    done = subprocess.run(command, capture_output=True, text=True, timeout=240)
    assert 0 == done.returncode, done.stderr[-2000:]
    expected, found = shelf.digests(), json.loads(done.stdout.splitlines()[-1])
    kinds = Counter(key.split()[2] for key in expected)
    pages = len(shelf.PAGES)
    regions = ("answer", "sheet", "view", "workings", "rest")
    assert dict.fromkeys(regions, pages * shelf.COUNT) | {"pdf": pages * 3} == kinds
    assert [] == [key for key in expected if expected[key] != found.get(key)]
