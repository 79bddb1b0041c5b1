"""The look is written once: short style sheets, and every colour of it in one place only."""

import re
from collections import Counter

import pytest
from making.paths import SITE

SHEETS = sorted((SITE / "css").glob("*.css"))
COLOUR = re.compile(r"#[0-9a-fA-F]{3,8}\b|\b(?:rgb|hsl|oklch)a?\(")
TOKEN = re.compile(r"^\s*--([\w-]+):", re.MULTILINE)
PAPER_ONLY = {"#14191a", "#ffffff"}
"""What is dark on white by night too: printed paper and QR codes."""


def rules(name: str) -> str:
    """A style sheet without its comments."""
    return re.sub(r"/\*.*?\*/", "", (SITE / "css" / name).read_text("utf-8"), flags=re.DOTALL)


def of_page(name: str) -> str:
    """All rules of a page's style sheet, in order."""
    if "fonts" in name:
        return ""
    return re.sub(r'@import "(?:\.\./)?([\w/.-]+)";', lambda found: of_page(found[1]), rules(name))


def test_no_calculator_asks_by_has_for_what_any_new_line_of_a_sheet_could_be() -> None:
    """An argument with ``:not()``, ``:is()`` or of a state alone has the page styled anew whenever an element comes or
    goes, and so has ``:not()`` around it, unless it begins at the figure."""
    rules = of_page("pages/sheet.css")
    asked = re.findall(r":has\(((?:[^()]|\([^()]*\))*)\)", rules)
    assert len(asked) > 30
    assert [] == [one for one in asked if ":not(" in one or ":is(" in one or one.startswith(":") or "data-page" in one]
    assert [] == re.findall(r"(?::root|\.calculator):has\((?!> )[^)]*\)", rules)


@pytest.mark.parametrize("name", [path.name for path in SHEETS])
def test_a_style_sheet_is_short(name: str) -> None:
    assert len((SITE / "css" / name).read_text("utf-8").splitlines()) < 400


def test_every_colour_token_is_written_once_by_day_and_by_night() -> None:
    """A second list of colours for the night would sooner or later differ from the first."""
    text = rules("tokens.css")
    coloured = [line for line in text.splitlines() if COLOUR.search(line)]
    assert len(coloured) >= 18
    assert [] == [line for line in coloured if not re.search(r"var\(--by-day, \S+\) var\(--by-night, \S+\);", line)]
    counted = Counter(TOKEN.findall(text))
    assert {"by-day": 3, "by-night": 3, "margin": 2} == {name: count for name, count in counted.items() if count > 1}


@pytest.mark.parametrize("name", [path.name for path in SHEETS if path.name != "tokens.css"])
def test_no_other_style_sheet_has_colours_of_its_own(name: str) -> None:
    assert set(COLOUR.findall(rules(name))) <= PAPER_ONLY
