"""Styles follow the size of letters: what is narrow for its letters is laid out as on a phone."""

import re
from pathlib import Path

STYLES = sorted((Path(__file__).parents[2] / "site" / "css").rglob("*.css"))
WIDTH = re.compile(r"@media[^{]*\b(?:min|max)-width:\s*[\d.]+px")


def test_no_layout_waits_for_a_width_in_pixels():
    """At twice the size of letters two columns stood where there was room for one."""
    assert STYLES
    assert [] == [f"{style.name}: {found[0]}" for style in STYLES for found in WIDTH.finditer(style.read_text("utf-8"))]
