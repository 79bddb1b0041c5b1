"""Styles follow the size of letters: what is narrow for its letters is laid out as on a phone."""

import re
from pathlib import Path

STYLES = sorted((Path(__file__).parents[2] / "site" / "css").rglob("*.css"))
WIDTH = re.compile(r"@media[^{]*\b(?:min|max)-width:\s*[\d.]+px")


def test_no_layout_waits_for_a_width_in_pixels():
    """At twice the size of letters two columns stood where there was room for one."""
    assert STYLES
    assert [] == [f"{style.name}: {found[0]}" for style in STYLES for found in WIDTH.finditer(style.read_text("utf-8"))]


LETTERS = re.compile(r"(?:font-size:|\bfont:[^;]*?|line-height:)\s*\d+(?:\.\d+)?px")
DRAWN = re.compile(r"\btext\b")
"""Letters within a drawing are in its units, and grow with it."""


def test_no_letters_are_set_in_pixels():
    """Those of the dialogs over a photograph and a drawing stayed as they were when a reader asked for larger ones."""
    found = []
    for style in STYLES:
        for rule in re.finditer(r"([^{}]+)\{([^{}]*)\}", style.read_text("utf-8")):
            if LETTERS.search(rule[2]) and not DRAWN.search(rule[1]):
                found.append(f"{style.name}: {rule[1].strip()}")
    assert [] == found
