"""The lettering: widths, glyphs and the embedded files, held against an independent reader of fonts."""

import io
import zlib

import pytest
from fontTools.pens.recordingPen import DecomposingRecordingPen, RecordingPen
from fontTools.ttLib import TTFont

from pycore import lettering
from pycore.drawing import Run
from pycore.lettering import made, made_fonts
from pycore.lettering.subset import subset

FACES = ("regular", "bold", "italic")


def whole_font(face: str) -> TTFont:
    return TTFont(io.BytesIO(zlib.decompress(made_fonts.COMPRESSED[face])))


def outline(font: TTFont, glyph: int) -> list:
    """The commands that draw one glyph, its components resolved."""
    glyphs = font.getGlyphSet()
    pen = DecomposingRecordingPen(glyphs)
    glyphs[font.getGlyphName(glyph)].draw(pen)
    return pen.value


@pytest.mark.parametrize("face", FACES)
def test_every_advance_and_glyph_number_is_the_font_files_own(face):
    font = whole_font(face)
    names = font.getBestCmap()
    assert {chr(code): font["hmtx"][name][0] for code, name in names.items()} == made.ADVANCES[face]
    assert {chr(code): font.getGlyphID(name) for code, name in names.items()} == made.GLYPHS[face]
    assert font["head"].unitsPerEm == made.UNITS_PER_EM[face]


def test_a_width_is_the_sum_of_the_advances_in_mm():
    expected = (517 + 255 + 517) / 1000 * 5.0
    assert (517, 255) == (made.ADVANCES["regular"]["1"], made.ADVANCES["regular"]["."])
    assert expected == pytest.approx(lettering.width("1.2", "regular", 5.0), abs=1e-12)
    assert 0.0 == lettering.width("", "italic", 5.0)


def test_figures_are_of_one_width_so_that_numbers_do_not_move():
    for face in ("regular", "bold"):
        assert 1 == len({made.ADVANCES[face][figure] for figure in "0123456789"})


def test_runs_are_as_wide_as_their_parts_together():
    runs = (Run("I", "italic", 5.0), Run("N", "regular", 3.5, -0.8))
    expected = lettering.width("I", "italic", 5.0) + lettering.width("N", "regular", 3.5)
    assert expected == pytest.approx(lettering.runs_width(runs), abs=1e-12)


@pytest.mark.parametrize("face", FACES)
@pytest.mark.parametrize("height", [2.5, 3.5, 5.0, 7.0])
def test_the_size_for_a_capital_height_gives_that_height(face, height):
    size = lettering.size_for_capitals(height, face)
    assert height == pytest.approx(lettering.capital_height(face, size), abs=1e-12)
    assert size > height


def test_the_capital_height_is_that_of_the_letter_h():
    font = whole_font("regular")
    top = font["glyf"][font.getBestCmap()[ord("H")]].yMax
    assert top == pytest.approx(lettering.capital_height("regular", 1000.0), abs=0.5)


def test_ascent_is_above_the_capitals_and_descent_below_the_base_line():
    for face in FACES:
        assert lettering.ascent(face, 5.0) > lettering.capital_height(face, 5.0)
        assert lettering.descent(face, 5.0) < 0.0


def test_the_signs_of_the_trade_are_in_the_regular_and_bold_faces():
    for face in ("regular", "bold"):
        assert "" == lettering.missing("₁₂₃ Ω µ √ φ ° − × ± ≤ ≥ ≈ → ² ³ ½ – — ‘’ “” … ·\u00a0ÄéŁčß", face)


def test_missing_characters_are_named_once_each_in_their_order():
    assert "漢🎭" == lettering.missing("a漢b🎭漢", "regular")
    assert lettering.has("a") and not lettering.has("漢")


def test_a_missing_glyph_is_refused_by_name():
    for measure in (lettering.width, lettering.glyphs):
        with pytest.raises(ValueError, match=r"regular face has no glyph for '漢' \(U\+6F22\)"):
            measure("a漢", "regular")


@pytest.mark.parametrize("face", FACES)
@pytest.mark.parametrize("for_screen", [False, True])
def test_a_subset_draws_the_glyphs_kept_and_nothing_else(face, for_screen):
    """Another library opens the subset: kept outlines unchanged, composites whole, the rest empty."""
    kept = set(lettering.glyphs("AI1.g", face))
    if face != "italic":
        kept |= set(lettering.glyphs("éŁ₁½", face))
    data = subset(face, sorted(kept), for_screen=for_screen)
    whole, thin = whole_font(face), TTFont(io.BytesIO(data), checkChecksums=2)
    for glyph in kept:
        assert outline(whole, glyph) == outline(thin, glyph) != []
    other = made.GLYPHS[face]["Q"]
    assert [] == outline(thin, other) and [] != outline(whole, other)
    assert whole["maxp"].numGlyphs == thin["maxp"].numGlyphs
    assert list(whole["hmtx"].metrics.values()) == list(thin["hmtx"].metrics.values())
    assert for_screen == ("cmap" in thin)


def test_a_subset_keeps_the_parts_of_a_composed_glyph():
    font = whole_font("regular")
    composed = [
        (glyph, font["glyf"][name].getComponentNames(font["glyf"]))
        for glyph, name in enumerate(font.getGlyphOrder())
        if font["glyf"][name].isComposite()
    ]
    assert composed, "no composed glyph in the face: this test holds nothing"
    for glyph, parts in composed[:20]:
        thin = TTFont(io.BytesIO(subset("regular", [glyph])))
        pen = RecordingPen()
        thin.getGlyphSet()[thin.getGlyphName(glyph)].draw(pen)
        assert len(parts) == len(pen.value)
        assert outline(font, glyph) == outline(thin, glyph)


def test_a_subset_is_the_same_whenever_it_is_made_and_much_smaller():
    glyphs = lettering.glyphs("18.4 A", "regular")
    assert subset("regular", glyphs) == subset("regular", sorted(glyphs))
    assert len(zlib.compress(subset("regular", glyphs), 9)) < 4000 < len(made_fonts.COMPRESSED["regular"])
