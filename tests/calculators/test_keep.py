"""The links and codes that are written for a new calculator, tried on one that has them already."""

import re
import tomllib
from pathlib import Path

import pytest
from calculators.folders import CODES, FOLDERS, tables
from calculators.keep import add_missing, keep

from pycore.calculators.registry import CALCULATORS

SLUG = "add-phasors"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with both files as they are written now."""
    path = tmp_path_factory.mktemp("kept")
    keep(SLUG, path)
    return path


def test_every_option_of_every_choice_has_a_link(folder: Path):
    held = {pair for link in tables(folder / "links.toml", "link") for pair in link["address"].split("&")}
    wanted = {f"{field.name}={option.value}" for field in CALCULATORS[SLUG].fields if field.kind == "choice"
              and not field.private for option in field.options if option.value}  # fmt: skip
    assert set() == wanted - held


def test_a_written_link_holds_what_a_kept_link_holds(folder: Path):
    """The example's results and arrows are those that were kept when the calculator was new."""
    written, kept = (
        next(link for link in tables(path / "links.toml", "link") if link["id"] == f"{SLUG}-example")
        for path in (folder, FOLDERS[SLUG])
    )
    for name in ("size", "results", "arrows"):
        assert kept[name] == written[name]


def test_a_written_code_holds_the_values_that_a_kept_code_holds(folder: Path):
    kept = {code["code"]: code["form"] for code in CODES if code["page"] == SLUG}
    both = [code for code in tables(folder / "codes.toml", "code") if code["code"] in kept]
    assert both
    for code in both:
        shared = set(code["form"]) & set(kept[code["code"]])
        assert {"p1", "p2", "paper", "method"} <= shared
        assert all(code["form"][name] == kept[code["code"]][name] for name in shared)


def test_a_file_that_is_there_is_not_written_again(folder: Path):
    before = tomllib.loads((folder / "links.toml").read_text("utf-8"))
    with pytest.raises(FileExistsError):
        keep(SLUG, folder)
    assert before == tomllib.loads((folder / "links.toml").read_text("utf-8"))


def test_only_a_choice_without_a_link_gets_one(tmp_path: Path):
    """Links that are there stay as they are."""
    slug = "sequence-components"
    whole = (FOLDERS[slug] / "links.toml").read_text("utf-8")
    start = whole.index('\n[[link]]\nid = "sequence-components-own-paper-A5"')
    names = re.findall(r'id = "sequence-components-([^"]+)"', whole[start:])
    (tmp_path / "links.toml").write_text(whole[:start], "utf-8")
    assert "own-paper-A5" == names[0]
    assert names == add_missing(slug, tmp_path)
    assert whole == (tmp_path / "links.toml").read_text("utf-8")
    assert [] == add_missing(slug, tmp_path)
