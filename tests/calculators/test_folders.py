"""Each calculator of the registry has its folder, with the same files in it; and nothing in it is another's."""

import pytest
from calculators.folders import CODES, FOLDERS, HERE, LINKS, SHARED_CODES, SHARED_LINKS, cases_of, tables

from pycore.calculators.registry import CALCULATORS

FILES = ("cases.toml", "claims.py", "codes.toml", "contract.md", "forms.py", "learners.py", "links.toml")
KEPT_TOGETHER = {
    "codes.toml": {"neutral-current", "series-circuit", "parallel-circuit", "power-triangle",
                   "harmonics-in-the-neutral", "open-neutral", "two-wattmeters"},
    "links.toml": {"neutral-current"},
}  # fmt: skip
"""Calculators without this file: theirs were printed before each had its own, and stand in the shared file for ever."""
MORE = {"neutral-current": {"cases_simulated.toml", "cases_tests_only.toml", "links.toml"}}
"""Further examples, from a circuit simulator, and those that are shown on no page; links that came after those in the
shared file."""


def test_the_folders_are_those_of_the_registry():
    assert {path.name for path in HERE.iterdir() if path.is_dir() and path.name != "__pycache__"} == {
        folder.name for folder in FOLDERS.values()
    }


@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_folder_holds_the_same_files_and_tests_of_its_own(slug: str):
    there = {path.name for path in FOLDERS[slug].iterdir()}
    wanted = {name for name in FILES if slug not in KEPT_TOGETHER.get(name, ())} | MORE.get(slug, set())
    assert wanted == {name for name in there if name.endswith(".toml") or name in FILES}
    assert [name for name in there if name.startswith("test_") and name.endswith(".py")]


@pytest.mark.parametrize("slug", CALCULATORS)
def test_what_stands_in_a_folder_is_its_calculators(slug: str):
    folder = FOLDERS[slug]
    pages = {case["page"] for case in cases_of(slug)}
    if (folder / "links.toml").exists():
        pages |= {link["address"].partition("/")[0] for link in tables(folder / "links.toml", "link")}
    if (folder / "codes.toml").exists():
        pages |= {code["page"] for code in tables(folder / "codes.toml", "code")}
    assert {slug} == pages


def test_what_is_kept_together_is_of_those_that_have_no_file_of_their_own():
    assert KEPT_TOGETHER["codes.toml"] == {code["page"] for code in tables(SHARED_CODES, "code")}
    shared = {link["address"].partition("/")[0] for link in tables(SHARED_LINKS, "link")}
    assert KEPT_TOGETHER["links.toml"] == shared & set(CALCULATORS)
    assert {code["page"] for code in CODES} == set(CALCULATORS)
    assert {link["address"].partition("/")[0] for link in LINKS} >= set(CALCULATORS)
