"""The folder of tests of each calculator of the registry, and the data in it.

Every folder holds `cases.toml` (worked examples; `cases_*.toml` are more of them), `links.toml` (links of version 1
with what they gave), `codes.toml` (codes with their problems), `contract.md` (its fields and results), `forms.py`
(seeded forms), `claims.py` (what its teaching is held to), `learners.py` (its phasors and mistakes, worked out without
pycore) and the calculator's own tests. `keep.py` writes the links and codes of a new calculator. Links and codes that
were kept before each calculator had files of its own stand together in `tests/cases`.
"""

import tomllib
from pathlib import Path

from making.evidence import files_of_cases
from making.paths import TESTS

from pycore.calculators.registry import CALCULATORS

HERE = Path(__file__).parent
FOLDERS = {slug: HERE / slug.replace("-", "_") for slug in CALCULATORS}
SHARED_LINKS = TESTS / "cases" / "links" / "v1.toml"
"""Of the neutral's page and of the pages of paper."""
SHARED_CODES = TESTS / "cases" / "codes" / "version1.toml"
"""Of seven calculators."""


def tables(path: Path, key: str) -> list[dict]:
    """The tables of one file that stand under ``key``. Raises FileNotFoundError where there is no such file."""
    return tomllib.loads(path.read_text("utf-8"))[key]


def cases_of(slug: str) -> list[dict]:
    """The worked examples in a calculator's folder."""
    return [case for path in files_of_cases() if path.parent == FOLDERS[slug] for case in tables(path, "case")]


def kept(name: str, shared: Path, key: str) -> list[dict]:
    """What is kept for ever: the shared file's, then that of each calculator's own file of this name."""
    own = [folder / name for folder in FOLDERS.values() if (folder / name).exists()]
    return [table for path in (shared, *own) for table in tables(path, key)]


CASES = [case for slug in CALCULATORS for case in cases_of(slug)]
LINKS = kept("links.toml", SHARED_LINKS, "link") + tables(SHARED_LINKS.with_name("v2.toml"), "link")
CODES = kept("codes.toml", SHARED_CODES, "code") + tables(SHARED_CODES.with_name("generator2.toml"), "code")
