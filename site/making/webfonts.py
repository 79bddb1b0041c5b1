"""The fonts that the pages load: the variable families, cut to what the site writes, with their CSS.

The families' own ranges are kept, so that a page loads the wide Latin range only for a name that needs it.
"""

import io
from dataclasses import dataclass
from pathlib import Path

from fontTools import subset
from fontTools.ttLib import TTFont

from making.fonts import ASCII, FAMILIES, GREEK, LATIN_1, LATIN_EXTENDED_A, SIGNS

TEXT_FAMILY = "Ysabeau Office"
SYMBOL_FAMILY = "STIX Two Text"
MATHS_FAMILY = "Phasor Math"
FALLBACK_FAMILY = "Ysabeau Office Fallback"

ARIAL_WIDTHS = {
    " ": 278, "a": 556, "b": 556, "c": 500, "d": 556, "e": 556, "f": 278, "g": 556, "h": 556, "i": 222, "j": 222,
    "k": 500, "l": 222, "m": 833, "n": 556, "o": 556, "p": 556, "q": 556, "r": 333, "s": 500, "t": 278, "u": 556,
    "v": 500, "w": 722, "x": 500, "y": 500, "z": 500,
}  # fmt: skip
"""Advances in thousandths of an em, from memory of the common sans; only the shift when ours arrives hangs on it."""

SAMPLE = "put the zero of the protractor on the tip of the first arrow and mark the angle then draw a line"


@dataclass(frozen=True)
class WebFont:
    """One file of the site's fonts: its source, its CSS family and what it holds."""

    source: str
    family: str
    style: str
    weights: str
    characters: str

    @property
    def path(self) -> Path:
        """The source file."""
        if self.family == MATHS_FAMILY:
            return FAMILIES.parent / "@fontsource" / "noto-sans-math" / "files" / f"{self.source}.woff2"
        package = "ysabeau-office" if self.source.startswith("ysabeau") else "stix-two-text"
        return FAMILIES / package / "files" / f"{self.source}.woff2"


def _text(script: str, characters: str) -> WebFont:
    """A file of the upright family."""
    return WebFont(f"ysabeau-office-{script}-wght-normal", TEXT_FAMILY, "normal", "1 1000", characters)


LATIN_SIGNS = "−×±·–—‘’“”…•′″\u2009↑↓"
WEB_FONTS = (
    _text("latin", ASCII + LATIN_1 + LATIN_SIGNS),
    _text("latin-ext", LATIN_EXTENDED_A),
    _text("greek", GREEK),
    _text("math", "".join(sign for sign in SIGNS if sign not in LATIN_1 + LATIN_SIGNS + GREEK)),
    WebFont("stix-two-text-latin-wght-italic", SYMBOL_FAMILY, "italic", "400 700", ASCII + "−′"),
    WebFont("stix-two-text-greek-wght-italic", SYMBOL_FAMILY, "italic", "400 700", GREEK),
    # Roots, brackets and fraction bars need a font with a table of mathematical measures; letters stay ours.
    WebFont("noto-sans-math-latin-400-normal", MATHS_FAMILY, "normal", "400", "√()|+−×÷=≈±0123456789. ,"),
)


def unicode_range(characters: str) -> str:
    """`characters` in the form of the CSS descriptor: runs of code points."""
    runs: list[list[int]] = []
    for code in sorted(set(map(ord, characters))):
        if runs and runs[-1][1] == code - 1:
            runs[-1][1] = code
        else:
            runs.append([code, code])
    return ", ".join(f"U+{first:X}" if first == last else f"U+{first:X}-{last:X}" for first, last in runs)


def _cut(font: WebFont) -> bytes:
    """The woff2 file of one web font, cut to its characters; equal input gives equal bytes."""
    options = subset.Options(flavor="woff2", layout_features=["*"], notdef_outline=True, recalc_timestamp=False)
    loaded = TTFont(font.path, recalcTimestamp=False)
    cutter = subset.Subsetter(options)
    cutter.populate(text=font.characters)
    cutter.subset(loaded)
    return _saved(loaded, options)


def _saved(font: TTFont, options: subset.Options) -> bytes:
    """The bytes of `font`."""
    stream = io.BytesIO()
    subset.save_font(font, stream, options)
    return stream.getvalue()


def fallback_css() -> str:
    """A face of a font that machines have, scaled to the metrics of ours, so that nothing moves when ours arrives."""
    font = TTFont(FAMILIES / "ysabeau-office" / "files" / "ysabeau-office-latin-wght-normal.woff2")
    ours, names = font.getGlyphSet(location={"wght": 500}), font.getBestCmap()
    ratio = sum(ours[names[ord(sign)]].width for sign in SAMPLE) / sum(ARIAL_WIDTHS[sign] for sign in SAMPLE)
    ascent, descent = font["hhea"].ascent / 10 / ratio, -font["hhea"].descent / 10 / ratio
    return (
        f'@font-face {{\n  font-family: "{FALLBACK_FAMILY}";\n  src: local("Arial"), local("Liberation Sans");\n'
        f"  size-adjust: {ratio * 100:.1f}%;\n  ascent-override: {ascent:.1f}%;\n"
        f"  descent-override: {descent:.1f}%;\n  line-gap-override: 0%;\n}}\n"
    )


def _face_css(font: WebFont) -> str:
    """The @font-face rule of one file."""
    return (
        f'@font-face {{\n  font-family: "{font.family}";\n  font-style: {font.style};\n  font-weight: {font.weights};\n'
        f'  font-display: swap;\n  src: url("{font.source}.woff2") format("woff2");\n'
        f"  unicode-range: {unicode_range(font.characters)};\n}}\n"
    )


def write_web_fonts(folder: Path) -> None:
    """Write the woff2 files and fonts.css, which refers to them, into `folder`."""
    folder.mkdir(parents=True, exist_ok=True)
    for font in WEB_FONTS:
        (folder / f"{font.source}.woff2").write_bytes(_cut(font))
    rules = "".join(map(_face_css, WEB_FONTS)) + fallback_css()
    (folder / "fonts.css").write_text(rules, encoding="utf-8")
