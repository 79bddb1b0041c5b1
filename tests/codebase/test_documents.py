"""The documents say what the code does: names of fields, results, requests and actions, files, versions, pictures."""

import ast
import re
import tomllib
from dataclasses import replace
from pathlib import Path

import pytest
from calculators.folders import FOLDERS
from host import shelf
from making.paths import PYCORE, ROOT, SITE
from making.pictures import PICTURES, drawing_of, pictures

from pycore import api
from pycore.calculators.registry import CALCULATORS
from pycore.forms import links
from pycore.forms.fields import default_form
from pycore.pages.class_set import FIELDS as CLASS_SET_FIELDS
from pycore.pages.college import FIELDS as COLLEGE_FIELDS
from pycore.pages.paper import PAPER_PAGES
from pycore.pages.question_paper import PAPER_FIELDS as QUESTION_PAPER_FIELDS
from pycore.pages.question_paper import QUESTION_FIELDS

DOCUMENTS = ("README.md", "DEVELOPERS.md", "pycore/README.md", "site/CONTRACTS.md", "site/CHANGELOG.md",
             "site/GLOSSARY.md", "site/making/README.md", "tests/README.md")  # fmt: skip
CONTRACTS = (SITE / "CONTRACTS.md").read_text("utf-8")
LONGEST = {"README.md": 4500, "DEVELOPERS.md": 12000}
FILE = re.compile(r"(?<![\w/<>*.-])((?:[\w.-]+/)*[\w-]+\.(?:py|js|mjs|css|md|toml|txt|json))\b")
EXAMPLE = "two_sources"
"""The calculator that DEVELOPERS.md adds as an example, and which is not there."""


def rows(text: str, head: str) -> list[list[str]]:
    """The cells of each row of the table whose first head cell this is."""
    table = text.split(f"\n| {head} |", 1)[1].split("\n\n", 1)[0]
    return [[cell.strip() for cell in line.strip("|").split(" | ")] for line in table.splitlines()[2:]]


def codes(cell: str) -> list[str]:
    """What stands in backticks."""
    return re.findall(r"`([^`]+)`", cell)


def first_cells(text: str, head: str) -> set[str]:
    """What stands in backticks in the first column of a table."""
    return {name for row in rows(text, head) for name in codes(row[0])}


SHARED = first_cells(CONTRACTS, "field")


def test_the_fields_of_every_calculator_are_those_that_all_have():
    assert set.intersection(*({field.name for field in page.fields} for page in CALCULATORS.values())) == SHARED


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_contract_names_every_field_and_every_result_and_no_other(slug: str):
    """Results are those of the example and of sixty seeded forms."""
    text = (FOLDERS[slug] / "contract.md").read_text("utf-8")
    assert text.startswith(f"# /{slug}/\n")
    page = CALCULATORS[slug]
    assert {field.name for field in page.fields} - SHARED == first_cells(text, "field")
    forms = (default_form(page.fields), *shelf.forms(slug, 60))
    found = {output.name for form in forms for output in page.answer(form, ("answer",)).outputs}
    assert found == first_cells(text, "result")


def test_the_contract_of_each_other_page_begins_with_its_fields():
    """Values in brackets are no names of fields."""
    pages = {slug: page.fields for slug, page in PAPER_PAGES.items()} | {"class-set": CLASS_SET_FIELDS}
    question = tuple(replace(field, name=field.name.removeprefix("q1-")) for field in QUESTION_FIELDS[0])
    pages |= {"question-papers": QUESTION_PAPER_FIELDS, "q1-": question, "college-settings": COLLEGE_FIELDS}
    told = {codes(row[0])[0]: codes(re.sub(r"\([^)]*\)", "", row[1])) for row in rows(CONTRACTS, "page")}
    assert {slug: {field.name for field in fields} for slug, fields in pages.items()} == {
        slug: set(names) for slug, names in told.items()
    }


def test_the_reserved_keys_are_named():
    line = next(line for line in CONTRACTS.splitlines() if line.startswith("- Reserved on every page"))
    assert set(links.RESERVED) == set(codes(line))


def keys_read() -> set[str]:
    """Every key that pycore reads from a request: `request.get("key")` and `request["key"]`."""
    found = set()
    for path in PYCORE.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            value = node.func if isinstance(node, ast.Call) else node
            own = getattr(value, "value", None)
            if not (isinstance(own, ast.Name) and own.id == "request"):
                continue
            key = node.args[0] if isinstance(node, ast.Call) and value.attr == "get" else getattr(node, "slice", None)
            if isinstance(key, ast.Constant):
                found.add(str(key.value))
    return found


def test_every_request_is_named_and_every_key_of_one():
    table = rows(CONTRACTS, "`do`")
    assert list(api._ANSWERS) == [codes(row[0])[0] for row in table]
    named = {key for row in table for key in codes(row[1])}
    assert keys_read() - {"do"} == named


def test_every_action_is_named():
    """Those that pycore writes, as `data-action` or by the functions that make the row of buttons."""
    written = set()
    for path in (PYCORE / "render").rglob("*.py"):
        written |= set(re.findall(r'"data-action": "([a-z-]+)"', path.read_text("utf-8")))
    reply, _ = shelf.ask("neutral-current", {}, "answer")
    from pycore.render import site_pages

    for page in site_pages():
        for html in page.regions.values():
            written |= set(re.findall(r'data-action="([a-z-]+)"', str(html)))
    written |= set(re.findall(r'data-action="([a-z-]+)"', "".join(reply["regions"].values())))
    assert written == first_cells(CONTRACTS, "action")


@pytest.mark.parametrize("name", DOCUMENTS)
def test_every_file_that_a_document_names_is_there(name: str):
    """By its path from the root, from `pycore/` or `site/`, or beside the document."""
    text = (ROOT / name).read_text("utf-8")
    rooms = [PYCORE / "calculators" / folder.name for folder in FOLDERS.values()]
    roots = (ROOT, PYCORE, PYCORE / "calculators", SITE, SITE / "making", (ROOT / name).parent, *FOLDERS.values(),
             *rooms)  # fmt: skip
    missing = {
        found for found in FILE.findall(text)
        if EXAMPLE not in found and not any((root / found).exists() for root in roots)
    }  # fmt: skip
    assert set() == missing


@pytest.mark.parametrize("name", LONGEST)
def test_the_first_documents_stay_short(name: str):
    assert len((ROOT / name).read_text("utf-8")) < LONGEST[name]


def test_the_newest_version_of_the_history_is_the_projects():
    """Newest first."""
    found = re.findall(r"^## (\d+)\.(\d+)\.(\d+), \d{4}-\d\d-\d\d$", (SITE / "CHANGELOG.md").read_text("utf-8"), re.M)
    assert ("1", "0", "0") == found[-1]
    assert sorted((tuple(map(int, one)) for one in found), reverse=True) == [tuple(map(int, one)) for one in found]
    version = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]["version"]
    assert version == ".".join(found[0])


@pytest.mark.parametrize("name", ["sheet.svg", "lesson.svg"])
def test_the_pictures_are_what_is_drawn_now(name: str):
    """`python3 build.py build` writes them anew. The embedded letters apart: their compression differs by machine."""
    kept = (PICTURES / name).read_text("utf-8")
    assert drawing_of(pictures()[name]) == drawing_of(kept)
    assert kept.count("@font-face") == 3
    assert f"site/pictures/{name}" in (ROOT / "README.md").read_text("utf-8")


def test_every_package_is_in_the_table_of_dependencies():
    """Python's extras and npm's packages, by the last part of the name; a family of them by its name and a star."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    python = [line.partition("==")[0] for extra in project["optional-dependencies"].values() for line in extra]
    npm = re.findall(r'^    "([^"]+)": "\d', (SITE / "package.json").read_text("utf-8"), re.M)
    table = (ROOT / "DEVELOPERS.md").read_text("utf-8").split("## Dependencies")[1].split("\n## ")[0]
    assert len(python) > 10 and len(npm) > 10
    families = tuple(f"{head}-" for head in re.findall(r"([\w-]+)-\*", table))
    names = [Path(name).name for name in (*python, *npm)]
    assert [] == [name for name in names if name not in table and not name.startswith(families)]
