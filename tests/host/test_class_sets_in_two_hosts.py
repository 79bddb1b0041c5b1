"""A class set has the same bytes in CPython and in the site's Pyodide: sheets, codes, overlays, key, tables."""

import json
import subprocess
from pathlib import Path

from host import class_sets

RUN = Path(__file__).with_name("class_sets.mjs")


def test_class_sets_keys_and_markings_have_the_same_bytes_in_both_hosts(runtime: Path):
    command = ["node", str(RUN), str(runtime), class_sets.__file__, "digests()"]
    done = subprocess.run(command, capture_output=True, text=True, timeout=240)
    assert 0 == done.returncode, done.stderr[-2000:]
    expected = class_sets.digests()
    assert 9 == len(expected)
    assert expected == json.loads(done.stdout.splitlines()[-1])
