"""The library holds what every page's first answer needs, a page's archive what its own needs, `later` all else."""

import json
import subprocess
import zipfile
from pathlib import Path

import pytest
from host import first_answers
from making.paths import ROOT
from making.runtime import OURS, PARTS

from pycore.calculators.registry import CALCULATORS, module_of
from pycore.practice.codes import Code

HERE = Path(__file__).parent
LATE = list(dict.fromkeys((*PARTS, *OURS)))


def told(script: str, *arguments: str) -> dict:
    """What a script under Node prints."""
    done = subprocess.run(["node", str(HERE / script), *arguments], capture_output=True, text=True, timeout=240)
    assert 0 == done.returncode, done.stderr[-2000:]
    return json.loads(done.stdout.splitlines()[-1])


def modules_in(runtime: Path, name: str) -> set[str]:
    """The files of pycore in an archive, fronts of packages apart."""
    names = zipfile.ZipFile(runtime / f"{name}.zip").namelist()
    return {one for one in names if one.startswith("pycore/") and not one.endswith("/__init__.pyc")}


@pytest.mark.parametrize("way", ["plain", "restored"])
def test_every_module_of_pycore_is_imported_once_all_archives_are_there(runtime: Path, way: str):
    """From the trimmed standard library: a module that is missing would fail late, at a visitor's."""
    found = told("every_module.mjs", str(runtime), way, json.dumps(["later", *CALCULATORS, *LATE]))
    ours = {
        ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")
        for path in (ROOT / "pycore").rglob("*.py")
    }
    assert {} == {name: archive["failed"] for name, archive in found.items() if archive["failed"]}
    there = {one for archive in found.values() for one in archive["modules"]}
    assert set() == (ours | {"pydyf", "segno.encoder"}) - there


def test_each_page_answers_from_the_library_and_its_own_archive(runtime: Path):
    """And as CPython does; what is not there yet is reported as missing, and works once it is."""
    codes = {slug: str(Code(page.topic, "core")) for slug, page in CALCULATORS.items()}
    found = told("first_answers.mjs", str(runtime), first_answers.__file__, json.dumps(codes))
    assert all(answer["ok"] and answer["regions"]["sheet"] for answer in found["answers"].values())
    assert {slug: json.loads(first_answers.first(slug)) for slug in CALCULATORS} == found["answers"]
    assert all(opened["ok"] and answer["ok"] for opened, answer in found["coded"].values())
    assert {slug: json.loads(first_answers.coded(slug, code)) for slug, code in codes.items()} == found["coded"]
    assert (False, True, 0) == tuple(found["without"].get(name) for name in ("ok", "missing", "size"))
    assert "could not be loaded" in found["without"]["announce"]
    assert found["with"]["ok"] and found["with"]["size"] > 10_000


def test_the_library_grows_with_no_page(runtime: Path):
    """It holds nothing of any one page, and no archive holds what another that comes before it has brought."""
    library, later, coded = (modules_in(runtime, name) for name in ("library", "later", "coded"))
    assert not library & later
    assert coded and not coded & library and coded <= later
    assert (runtime / "coded.zip").stat().st_size < 0.35 * (runtime / "later.zip").stat().st_size
    for slug in CALCULATORS:
        own = modules_in(runtime, slug)
        assert f"{module_of(slug, 'page').__name__.replace('.', '/')}.pyc" in own
        assert not own & library
        assert own <= later
    for kind in ("pages/", "writers/pdf", "practice/marking", "sums/lesson", "render/practice"):
        assert not [name for name in library if name.startswith(f"pycore/{kind}")]
        assert [name for name in later if name.startswith(f"pycore/{kind}")]


def test_each_module_is_read_from_its_archive_once(runtime: Path):
    """Python's own importer reads it twice; a module knows its place all the same, and a package where it stands."""
    found = told("read_once.mjs", str(runtime))
    assert len(found["files"]) > 50
    assert found["files"] == found["reads"]
    assert [] == found["wrong"]
    assert "pydyf" in found["packages"]
