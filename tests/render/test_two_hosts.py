"""Equal drawings give equal bytes in CPython here and in the Pyodide that the site serves."""

import json
import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).parent


def test_svg_and_pdf_have_the_same_bytes_in_cpython_and_in_the_sites_pyodide(runtime: Path, monkeypatch):
    monkeypatch.syspath_prepend(str(HERE))
    import scatter

    command = ["node", str(HERE / "two_hosts.mjs"), str(runtime), str(HERE / "scatter.py")]
    done = subprocess.run(command, capture_output=True, text=True, timeout=120)
    assert 0 == done.returncode, done.stderr[-2000:]
    expected, found = scatter.digests(), json.loads(done.stdout.splitlines()[-1])
    monkeypatch.delitem(sys.modules, "scatter")
    assert 2 * scatter.PAGES + 1 == len(expected) == len(set(expected))
    assert [] == [place for place, pair in enumerate(zip(expected, found, strict=True)) if len(set(pair)) > 1]
