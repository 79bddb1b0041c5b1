"""QR codes are alike in CPython and in the site's Pyodide, where their part comes late or not at all."""

import json
import subprocess
from pathlib import Path

import pytest
from host import codes

RUN = Path(__file__).with_name("late_part.mjs")


@pytest.fixture(scope="module")
def late(runtime: Path) -> tuple[dict, str]:
    """What the site's Pyodide gives with the part, and the sheet it gave before it had it."""
    command = ["node", str(RUN), str(runtime), codes.__file__]
    done = subprocess.run(command, capture_output=True, text=True, timeout=120)
    assert 0 == done.returncode, done.stderr[-2000:]
    given, without = done.stdout.splitlines()[-2:]
    return json.loads(given), json.loads(without)


def test_every_size_of_code_has_the_same_modules_in_both_hosts(late: tuple[dict, str]):
    expected = codes.digests()
    assert codes.COUNT + 3 == len(set(expected))
    assert expected == late[0]["digests"]


def test_the_part_holds_the_encoder_and_little_else(late: tuple[dict, str]):
    """Modules for networks and mail would come with the package's own front: 62 of them."""
    names = late[0]["names"]
    assert {"segno/__init__.pyc", "segno/encoder.pyc"} <= set(names)
    assert len(names) < 10


def test_a_sheet_without_the_part_lacks_its_code_and_nothing_else(late: tuple[dict, str]):
    """And with the part it is the sheet that CPython makes."""
    given, without = late
    assert given["sheet"] == codes.sheet()
    assert 'data-name="code"' in given["sheet"]
    assert 'data-name="code"' not in without
    assert given["sheet"].count("data-phasor") == without.count("data-phasor") > 0
