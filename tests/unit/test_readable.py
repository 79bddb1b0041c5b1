"""No sentence of a page is harder to read than it must be: school grade 8 at most, or listed here with its reason."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
import readability

from pycore.render import site_pages

PYCORE = Path(__file__).parents[2] / "pycore"
WORDS = sorted(
    (*(PYCORE / "words").glob("*.py"), *(PYCORE / "calculators").glob("*/words.py"),
     *(PYCORE / "calculators").glob("*/teaching.py"))
)  # fmt: skip
HARD = {
    "Village theatre, dimmers and power supplies in star": "a heading of names of things",
    "a code that begins with 3, 5, 6 or 7 has nine letters and digits, such as 333-JDL-2GA; "
    "one that begins with 4 has twelve, such as 42C-332-3C2-9XZ": "codes count as words",
    "“Recomputed” values were found again by hand or with another program.": "it says what the quoted name means",
}
"""Sentence -> why it stays."""


def templates(module: Path) -> Iterator[str]:
    """Every text of a module of words but its docstrings, with 5 for a value that is filled in."""
    tree = ast.parse(module.read_text(encoding="utf-8"))
    apart: set[ast.AST] = set()
    for node in ast.walk(tree):
        body = getattr(node, "body", None)
        apart.update(one.value for one in body if isinstance(one, ast.Expr)) if isinstance(body, list) else None
        apart.update(node.values) if isinstance(node, ast.JoinedStr) else None
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr):
            yield "".join(str(one.value) if isinstance(one, ast.Constant) else "5" for one in node.values)
        elif isinstance(node, ast.Constant) and isinstance(node.value, str) and node not in apart:
            yield re.sub(r"\{[^}]*\}", "5", node.value.replace("**", ""))


@pytest.mark.parametrize("module", WORDS, ids=lambda path: "/".join(path.parts[-2:]))
def test_no_sentence_of_the_pages_or_of_a_verdict_is_over_grade_8_by_both_measures(module: Path):
    assert [] == [one for one in readability.too_hard(templates(module)) if one not in HARD]


def test_the_sentences_of_a_page_together_are_well_under_grade_8():
    pages = [page for page in site_pages() if page.regions]
    assert len(pages) > 20
    for page in pages:
        texts = [text for html in page.regions.values() for text in readability.paragraphs(str(html))]
        found = list(readability.sentences(texts))
        assert len(found) > 10 and max(readability.grades(" ".join(found))) < 7.0, page.slug


def test_every_exception_is_still_needed():
    assert {one for module in WORDS for one in readability.too_hard(templates(module))} == set(HARD)


def test_the_measures_tell_a_hard_sentence_from_an_easy_one():
    """A sentence of officials against one of the page; a taught term makes neither harder."""
    easy = "Lay the ruler along the first line and mark the length of the neutral current."
    hard = "Considerable administrative uncertainty notwithstanding, participants demonstrated extraordinary energy."
    assert [hard] == readability.too_hard([easy, hard])
    assert readability.grades(easy) == readability.grades(easy.replace("neutral current", "lamp lamp"))
