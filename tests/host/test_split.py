"""Python's WebAssembly, split: what it says is what it said whole, and no flow of ours waits for its cold module.

Under test the data that comes later is not even zero before it comes: so what reads it too early says something else.
"""

import json
import shutil
import subprocess
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from host import flows
from making import called, splitting
from making.paths import PYODIDE
from making.splitting import COLD, GLUE, PLACED, SCRIPT, WARM, WASM
from making.wasm.data import POISON
from making.wasm.module import Module

from pycore.calculators.registry import CALCULATORS

HERE = Path(__file__).parent


def told(folder: Path) -> dict:
    """What all flows give, a part of each, and what nobody asks."""
    places = map(str, (HERE / "flows.mjs", folder, HERE.parent))
    command = ["node", *places, json.dumps(list(CALCULATORS)), "part", "odd"]
    done = subprocess.run(command, capture_output=True, text=True, timeout=1500)
    assert 0 == done.returncode, done.stderr[-2000:]
    return json.loads(done.stdout.splitlines()[-1])


@pytest.fixture(scope="module")
def both(runtime: Path, tmp_path_factory: pytest.TempPathFactory) -> tuple[dict, dict]:
    """What the site's Python says, and what Pyodide's own says with the same library."""
    folders = split, whole = [tmp_path_factory.mktemp(name) / "runtime" for name in ("split", "whole")]
    for folder in folders:
        shutil.copytree(runtime, folder)
    wasm = (PYODIDE / WASM).read_bytes()
    used = called.used_in(wasm)
    assert used
    splitting.write_split(split, wasm, used, poison=True)
    _, later = splitting.data_of(Module(wasm), used)
    text = json.dumps({"poison": POISON, "parts": [(at, len(held)) for at, held in later]})
    (split / "later.json").write_text(text, encoding="utf-8")
    for name in (COLD, WARM):
        (whole / name).unlink()
    for name in (SCRIPT, GLUE, WASM):
        shutil.copyfile(PYODIDE / name, whole / PLACED[name])
    with ThreadPoolExecutor() as pool:
        told_split, plain = pool.map(told, folders)
    return told_split, plain


def test_every_flow_says_what_it_says_unsplit(both: tuple[dict, dict]) -> None:
    split, plain = both
    assert {*flows.FLOWS, "odd", *(f"first {slug}" for slug in CALCULATORS)} <= set(plain["digests"])
    assert plain["digests"] == split["digests"]
    assert len({*plain["digests"].values()}) == len(plain["digests"])


def test_no_flow_needs_the_cold_module_and_what_nobody_asks_does(both: tuple[dict, dict]) -> None:
    """A slot here has a function that `build.py profile --add` would put into the list."""
    split, plain = both
    assert [] == split["cold"]
    assert 1 == len(split["coldAtLast"])
    assert [] == plain["coldAtLast"]


def test_nothing_is_written_where_data_has_still_to_come(both: tuple[dict, dict]) -> None:
    """It would be lost."""
    split, _ = both
    assert [] == split["spoilt"]


def test_the_site_has_the_modules_of_the_pyodide_that_is_installed(runtime: Path) -> None:
    wasm = (PYODIDE / WASM).read_bytes()
    used = called.used_in(wasm)
    assert used and used.touched, "run `python3 build.py profile`: this Pyodide has no lists"
    assert (runtime / WASM).stat().st_size < 0.3 * len(wasm)
    for name in (COLD, WARM):
        assert (runtime / name).stat().st_size > 0.2 * len(wasm)


def test_another_pyodide_goes_into_the_site_whole_and_it_is_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(splitting, "WORKSHOP", tmp_path)
    monkeypatch.setattr(splitting, "used_in", lambda _wasm: None)
    files = splitting.ensure_python()
    assert set(PLACED.values()) == {path.name for path in files}
    by_name = {path.name: path.read_bytes() for path in files}
    assert {PLACED[name]: (PYODIDE / name).read_bytes() for name in PLACED} == by_name
    assert "not split" in capsys.readouterr().out


def test_without_knowing_what_is_touched_all_data_is_there_from_the_start(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    wasm = (PYODIDE / WASM).read_bytes()
    monkeypatch.setattr(splitting, "WORKSHOP", tmp_path)
    monkeypatch.setattr(splitting, "used_in", lambda _wasm: called.Used(frozenset({1, 2, 3})))
    sizes = {path.name: path.stat().st_size for path in splitting.ensure_python()}
    assert sizes[WASM] > sum(len(held) for _, held in Module(wasm).data) > 3e6
    assert sizes[WARM] < 200
    assert "all static data is loaded first" in capsys.readouterr().out
