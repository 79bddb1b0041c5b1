"""Photographs are measured alike in CPython and in the site's Pyodide, by a part that no first visit fetches."""

import json
import subprocess
import zipfile
from pathlib import Path

import pytest
from host import photographs_by_points
from making.runtime import OURS

RUN = Path(__file__).with_name("joined_part.mjs")


@pytest.fixture(scope="module")
def joined(runtime: Path) -> tuple[dict, dict]:
    """The reply without the part, and the digests with it."""
    command = ["node", str(RUN), str(runtime), photographs_by_points.__file__]
    done = subprocess.run(command, capture_output=True, text=True, timeout=240)
    assert 0 == done.returncode, done.stderr[-2000:]
    return tuple(json.loads(done.stdout.splitlines()[-1]))


def test_every_reply_is_alike_in_both_hosts(joined):
    expected = photographs_by_points.digests()
    assert len(set(expected.values())) > 50
    assert expected == joined[1]


def test_the_part_stands_apart_from_the_library(runtime: Path):
    part, library = (set(zipfile.ZipFile(runtime / name).namelist()) for name in ("photo.zip", "library.zip"))
    wanted = {f"pycore/{name}c" for name in OURS["photo"]}
    packages = {f"{Path(name).parent.as_posix()}/__init__.pyc" for name in wanted}
    assert wanted == {name for name in part if name.startswith("pycore/")} - packages
    assert not wanted & library
    assert "pycore/api.pyc" in library


def test_without_the_part_it_is_said_and_nothing_breaks(joined):
    assert not joined[0]["ok"]
    assert "could not be loaded" in joined[0]["announce"]
