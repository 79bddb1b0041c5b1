"""The pages of evidence say what the tests and the study found, and cannot drift from them."""

import re
import tomllib
from pathlib import Path

from making.evidence import TESTS_ONLY, checks, files_of_cases


def words_of(page: Path) -> str:
    """A built page's words."""
    return re.sub(r"<[^>]+>", " ", page.read_text("utf-8"))


def test_every_outside_check_that_is_shown_holds_and_comes_from_the_cases():
    shown = checks()
    cases = [
        case
        for path in files_of_cases()
        if path.name != TESTS_ONLY
        for case in tomllib.loads(path.read_text("utf-8"))["case"]
    ]
    assert [] == [check.quantity for check in shown if not check.holds]
    assert {case["id"].replace("-", " ") for case in cases} >= {check.quantity.partition(":")[0] for check in shown}
    assert len(shown) >= len(cases)


def test_a_wrong_value_would_be_shown_as_not_holding(tmp_path: Path):
    folder = tmp_path / "neutral_current"
    folder.mkdir()
    (folder / "cases.toml").write_text(
        '[[case]]\nid = "wrong"\npage = "neutral-current"\nkind = "recomputed"\nsource = "none"\n'
        '[case.form]\ni1 = "10"\ni2 = "10"\ni3 = "5"\n'
        '[case.expected]\nneutral-current = { value = 6, unit = "A", tolerance = 0.1 }\n',
        "utf-8",
    )
    (check,) = checks(tmp_path)
    assert not check.holds


def test_the_page_of_checks_names_each_source(dist: Path):
    page = words_of(dist / "checks" / "index.html")
    assert [] == [check.quantity for check in checks() if check.quantity not in page]
    assert "ngspice" in page


def test_figures_for_tests_only_stand_on_no_page(dist: Path):
    """A row of the page of checks begins with its case: those of the other files stand there, these do not."""
    names = {path.name == TESTS_ONLY: [] for path in files_of_cases()}
    for path in files_of_cases():
        cases = tomllib.loads(path.read_text("utf-8"))["case"]
        names[path.name == TESTS_ONLY] += [
            f"{case['id']}: {next(iter(case['expected']))}".replace("-", " ") for case in cases
        ]
    pages = sorted(dist.rglob("*.html"))
    assert names[True] and len(pages) > 20
    texts = {text for page in pages for text in re.findall(r">([^<>]+)<", page.read_text("utf-8"))}
    assert [] == [name for name in names[False] if name not in texts]
    assert [] == [name for name in names[True] if name in texts]


def test_the_study_covers_what_it_says(dist: Path):
    """95 % ellipses hold 94 to 96 in 100 where lines cross well, in this build's own numbers."""
    page = words_of(dist / "accuracy" / "index.html")
    low, high = re.search(r"more,\s([\d.]+)\sto\s([\d.]+)\s%", page).groups()
    assert 94.0 <= float(low) <= float(high) <= 96.0
    drawn = (dist / "accuracy" / "index.html").read_text("utf-8")
    assert 4 == drawn.count("<figure") and 0 == drawn.count("<img")
    assert 3 * 300 < drawn.count("<circle") < 3 * 420
