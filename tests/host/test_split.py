"""Python's WebAssembly, split: what it says is what it said whole, and no flow of ours waits for its cold module."""

import json
import shutil
import subprocess
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from host import flows
from making import called, splitting
from making.paths import PYODIDE
from making.splitting import COLD, GLUE, SCRIPT, WASM

from pycore.calculators.registry import CALCULATORS

HERE = Path(__file__).parent


def told(folder: Path) -> dict:
    """What all flows give, a part of each, and what nobody asks."""
    places = map(str, (HERE / "flows.mjs", folder, HERE.parent))
    command = ["node", *places, json.dumps(list(CALCULATORS)), "part", "odd"]
    done = subprocess.run(command, capture_output=True, text=True, timeout=400)
    assert 0 == done.returncode, done.stderr[-2000:]
    return json.loads(done.stdout.splitlines()[-1])


@pytest.fixture(scope="module")
def both(runtime: Path, tmp_path_factory: pytest.TempPathFactory) -> tuple[dict, dict]:
    """What the site's Python says, and what Pyodide's own says with the same library."""
    whole = tmp_path_factory.mktemp("whole") / "runtime"
    shutil.copytree(runtime, whole)
    (whole / COLD).unlink()
    for name in (SCRIPT, GLUE, WASM):
        shutil.copyfile(PYODIDE / name, whole / name)
    with ThreadPoolExecutor() as pool:
        split, plain = pool.map(told, (runtime, whole))
    return split, plain


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


def test_the_site_has_both_modules_of_the_pyodide_that_is_installed(runtime: Path) -> None:
    wasm = (PYODIDE / WASM).read_bytes()
    assert called.called_in(wasm), "run `python3 build.py profile`: this Pyodide has no list"
    assert (runtime / WASM).stat().st_size < 0.6 * len(wasm)
    assert (runtime / COLD).stat().st_size > 0.3 * len(wasm)


def test_another_pyodide_goes_into_the_site_whole_and_it_is_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(splitting, "WORKSHOP", tmp_path)
    monkeypatch.setattr(splitting, "called_in", lambda _wasm: None)
    files = splitting.ensure_python()
    assert {SCRIPT, GLUE, WASM} == {path.name for path in files}
    assert all(path.read_bytes() == (PYODIDE / path.name).read_bytes() for path in files)
    assert "not split" in capsys.readouterr().out
