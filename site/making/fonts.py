"""Makes the lettering: a static TrueType font and metrics for the PDF, and the web fonts of the pages.

The open families come as variable fonts split by ranges of characters. For the PDF each face is interpolated at its
weight, the ranges are joined, and only outlines and advances are kept: no kerning and no ligatures, so that the width
of a text is the sum of its advances wherever it is written. Constant dates make equal input give equal bytes.
"""

import io
import pprint
import zlib
from dataclasses import dataclass
from pathlib import Path

from fontTools.fontBuilder import FontBuilder
from fontTools.misc.roundTools import otRound
from fontTools.pens.boundsPen import BoundsPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont

from making.paths import NODE_MODULES, PYCORE

FAMILIES = NODE_MODULES / "@fontsource-variable"
LETTERING = PYCORE / "lettering"
UNITS_PER_EM = 1000
CONSTANT_DATE = 3786912000
"""1 January 2024, in seconds since 1904 as TrueType counts: a clock would change the bytes with every build."""

ASCII = "".join(map(chr, range(0x20, 0x7F)))
LATIN_1 = "".join(map(chr, (*range(0xA0, 0xAD), *range(0xAE, 0x100))))
LATIN_EXTENDED_A = "".join(map(chr, range(0x100, 0x180)))
GREEK = "".join(map(chr, (*range(0x391, 0x3A2), *range(0x3A3, 0x3AA), *range(0x3B1, 0x3CA))))
SIGNS = "°√²³₀₁₂₃₄₅₆₇₈₉−×±≤≥≈≠←→↑↓\u00b5\u03bcΩφ·–—‘’“”…•½′″\u2009"
TEXT_CHARACTERS = ASCII + LATIN_1 + LATIN_EXTENDED_A + GREEK + SIGNS
SYMBOL_CHARACTERS = ASCII + GREEK + "−′"


@dataclass(frozen=True)
class Face:
    """One face of the lettering: where its outlines come from, its weight and the characters it must hold."""

    name: str
    postscript_name: str
    family: str
    files: tuple[str, ...]
    weight: float
    characters: str
    italic_angle: float = 0.0

    def paths(self) -> list[Path]:
        """The variable fonts of the face, the first that has a character winning."""
        return [FAMILIES / self.family / "files" / f"{name}.woff2" for name in self.files]


YSABEAU_FILES = tuple(f"ysabeau-office-{script}-wght-normal" for script in ("latin", "latin-ext", "greek", "math"))
STIX_FILES = tuple(f"stix-two-text-{script}-wght-italic" for script in ("latin", "greek"))
FACES = (
    Face("regular", "PhasorFolio-Regular", "ysabeau-office", YSABEAU_FILES, 450, TEXT_CHARACTERS),
    Face("bold", "PhasorFolio-Bold", "ysabeau-office", YSABEAU_FILES, 650, TEXT_CHARACTERS),
    Face("italic", "PhasorFolio-Symbol", "stix-two-text", STIX_FILES, 400, SYMBOL_CHARACTERS, -12.0),
)


class Outlines:
    """Collects glyphs, interpolated at one weight, from several variable fonts into one glyph table."""

    def __init__(self, weight: float) -> None:
        self.weight = weight
        self.glyphs = {".notdef": TTGlyphPen(None).glyph()}
        self.advances = {".notdef": UNITS_PER_EM // 2}
        self.characters: dict[int, str] = {}

    def take(self, font: TTFont, prefix: str, characters: str) -> None:
        """Add those of the characters in `wanted` that `font` has and no earlier font had."""
        outlines = font.getGlyphSet(location={"wght": self.weight})
        names = font.getBestCmap()
        for code in map(ord, characters):
            if code in names and code not in self.characters:
                self.characters[code] = self._add(font, outlines, prefix, names[code])

    def _add(self, font: TTFont, outlines: dict, prefix: str, name: str) -> str:
        """Add one glyph, and first the glyphs that it is composed of; gives its name in the new font."""
        new_name = f"{prefix}.{name}"
        if new_name in self.glyphs:
            return new_name
        pen = _PrefixingPen(prefix, self.glyphs)
        outlines[name].draw(pen)
        for component in pen.used:
            self._add(font, outlines, prefix, component)
        self.glyphs[new_name] = pen.glyph()
        self.advances[new_name] = otRound(outlines[name].width)
        return new_name


class _PrefixingPen(TTGlyphPen):
    """A glyph pen that renames components, because two source fonts use the same names for different glyphs."""

    def __init__(self, prefix: str, glyphs: dict) -> None:
        super().__init__(glyphs)
        self.prefix = prefix
        self.used: list[str] = []

    def addComponent(self, glyphName: str, transformation: tuple) -> None:
        """Refer to the component by its name in the new font."""
        self.used.append(glyphName)
        super().addComponent(f"{self.prefix}.{glyphName}", transformation)


def make_face(face: Face) -> TTFont:
    """The static font of one face.

    Raises ValueError when the sources lack a character that the face must hold.
    """
    outlines = Outlines(face.weight)
    sources = [TTFont(path) for path in face.paths()]
    for number, source in enumerate(sources):
        outlines.take(source, f"s{number}", face.characters)
    missing = sorted(set(map(ord, face.characters)) - set(outlines.characters))
    if missing:
        raise ValueError(f"the fonts of {face.name} lack {', '.join(f'U+{code:04X}' for code in missing)}")
    return _assemble(face, outlines, sources[0]["hhea"].ascent, sources[0]["hhea"].descent)


def _assemble(face: Face, outlines: Outlines, ascent: int, descent: int) -> TTFont:
    """Build the tables around the glyphs, with constant dates and no glyph names."""
    builder = FontBuilder(UNITS_PER_EM, isTTF=True)
    builder.setupGlyphOrder(list(outlines.glyphs))
    builder.setupCharacterMap(outlines.characters)
    builder.setupGlyf(outlines.glyphs)
    table = builder.font["glyf"]
    builder.setupHorizontalMetrics({name: (width, table[name].xMin) for name, width in outlines.advances.items()})
    builder.setupHorizontalHeader(ascent=ascent, descent=descent)
    builder.setupNameTable({"familyName": "Phasor Folio", "styleName": face.name, "psName": face.postscript_name})
    builder.setupOS2(sTypoAscender=ascent, sTypoDescender=descent, usWinAscent=ascent, usWinDescent=-descent)
    builder.setupPost(italicAngle=face.italic_angle, keepGlyphNames=False)
    builder.font["head"].created = builder.font["head"].modified = CONSTANT_DATE
    builder.font.recalcTimestamp = False
    return builder.font


def _bounds(font: TTFont, character: str) -> tuple[float, float, float, float]:
    """The box around the outline of one character: left, bottom, right, top, in font units."""
    pen = BoundsPen(font.getGlyphSet())
    font.getGlyphSet()[font.getBestCmap()[ord(character)]].draw(pen)
    left, bottom, right, top = pen.bounds
    return left, bottom, right, top


def metrics(face: Face, font: TTFont) -> dict[str, object]:
    """What layout and the PDF's font descriptor need of a face, by the names of made.py; font units, degrees."""
    names = font.getBestCmap()
    head, header = font["head"], font["hhea"]
    stem = _bounds(font, "I")
    return {
        "POSTSCRIPT_NAME": face.postscript_name,
        "UNITS_PER_EM": UNITS_PER_EM,
        "CAPITAL_HEIGHT": otRound(_bounds(font, "H")[3]),
        "X_HEIGHT": otRound(_bounds(font, "x")[3]),
        "ASCENT": header.ascent,
        "DESCENT": header.descent,
        "FONT_BBOX": (head.xMin, head.yMin, head.xMax, head.yMax),
        "ITALIC_ANGLE": face.italic_angle,
        "STEM_V": otRound(stem[2] - stem[0]) if not face.italic_angle else 80,
        "ADVANCES": {chr(code): font["hmtx"][name][0] for code, name in sorted(names.items())},
        "GLYPHS": {chr(code): font.getGlyphID(name) for code, name in sorted(names.items())},
    }


def write_lettering(folder: Path = LETTERING) -> None:
    """Write made.py (metrics) and made_fonts.py (the fonts) into the package pycore.lettering."""
    folder.mkdir(parents=True, exist_ok=True)
    measured: dict[str, dict[str, object]] = {}
    compressed, lengths = {}, {}
    for face in FACES:
        font = make_face(face)
        data = _bytes_of(font)
        compressed[face.name], lengths[face.name] = zlib.compress(data, 9), len(data)
        for name, value in metrics(face, TTFont(_stream(data))).items():
            measured.setdefault(name, {})[face.name] = value
    source = "".join(f"{name} = {pprint.pformat(value, width=118, compact=True)}\n" for name, value in measured.items())
    source = f'"""Metrics of the lettering by face, in font units; made by the build."""\n\n{source}'
    _replace(folder / "made.py", source)
    fonts = f"RAW_LENGTH = {lengths!r}\nCOMPRESSED = {compressed!r}\n"
    fonts = f'"""TrueType fonts by face, compressed by zlib; made by the build."""\n\n{fonts}'
    _replace(folder / "made_fonts.py", fonts)


def _replace(path: Path, text: str) -> None:
    """Put `text` in place of the file at once: nothing that imports it meanwhile sees half of it."""
    fresh = path.with_suffix(".fresh")
    fresh.write_text(text, encoding="utf-8", newline="\n")
    fresh.replace(path)


def _bytes_of(font: TTFont) -> bytes:
    """The font file."""
    stream = _stream(b"")
    font.save(stream, reorderTables=True)
    return stream.getvalue()


def _stream(data: bytes) -> io.BytesIO:
    """A stream over `data`."""
    return io.BytesIO(data)
