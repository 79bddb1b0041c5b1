"""The handout's lettering as WOFF, opened by another library."""

import io

import pytest
from fontTools.ttLib import TTFont

from pycore.lettering import made
from pycore.lettering.subset import subset
from pycore.lettering.woff import woff


@pytest.mark.parametrize("face", ["regular", "bold", "italic"])
def test_every_table_comes_back_as_it_was(face: str) -> None:
    """And the file is smaller, which is what it is for."""
    whole = subset(face, [made.GLYPHS[face][sign] for sign in "I1 20"], for_screen=True)
    packed = woff(whole)
    before, after = TTFont(io.BytesIO(whole)), TTFont(io.BytesIO(packed))
    tags = [tag for tag in before.keys() if tag != "GlyphOrder"]  # noqa: SIM118 (the font has no iterator of its own)
    assert "woff" == after.flavor
    assert tags == [tag for tag in after.keys() if tag != "GlyphOrder"]  # noqa: SIM118
    assert [before.getTableData(tag) for tag in tags] == [after.getTableData(tag) for tag in tags]
    assert len(packed) < 0.8 * len(whole)
