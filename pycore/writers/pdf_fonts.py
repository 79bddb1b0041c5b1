"""What a PDF contains about an embedded font: names, measures, widths, and the map back to characters.

Source: ISO 32000-1 (PDF 1.7), sections 9.6 to 9.10.
"""

from hashlib import md5

from pycore.lettering import made
from pycore.writers.numbers import coordinate

_SYMBOLIC, _ITALIC = 4, 64
_CHARACTERS_PER_BLOCK = 100  # the most that one block of a ToUnicode map may hold

_MAP_HEAD = (
    "/CIDInit /ProcSet findresource begin",
    "12 dict begin",
    "begincmap",
    "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def",
    "/CMapName /Adobe-Identity-UCS def",
    "/CMapType 2 def",
    "1 begincodespacerange",
)
_MAP_FOOT = ("endcmap", "CMapName currentdict /CMap defineresource pop", "end", "end")


def name(face: str, data: bytes) -> str:
    """Return the embedded font's name; six capitals derived from its bytes mark it as a subset."""
    digest = md5(data, usedforsecurity=False).digest()
    tag = "".join([chr(65 + byte % 26) for byte in digest[:6]])
    return f"/{tag}+{made.POSTSCRIPT_NAME[face]}"


def description(face: str) -> dict[str, str]:
    """Return the measures of a font descriptor, in thousandths of the em, and its flags."""
    box = " ".join([_thousandths(face, side) for side in made.FONT_BBOX[face]])
    return {
        "Flags": str(_SYMBOLIC | (_ITALIC if made.ITALIC_ANGLE[face] else 0)),
        "FontBBox": f"[{box}]",
        "ItalicAngle": coordinate(made.ITALIC_ANGLE[face]),
        "Ascent": _thousandths(face, made.ASCENT[face]),
        "Descent": _thousandths(face, made.DESCENT[face]),
        "CapHeight": _thousandths(face, made.CAPITAL_HEIGHT[face]),
        "StemV": _thousandths(face, made.STEM_V[face]),
    }


def widths(face: str, used: dict[int, str]) -> str:
    """Return the advance of every glyph used, neighbours together: ``[4 [517 255] 9 [300]]``."""
    parts: list[str] = []
    before = -2
    for number in sorted(used):
        advance = _thousandths(face, made.ADVANCES[face][used[number]])
        parts.append(f" {advance}" if number == before + 1 else f"] {number} [{advance}")
        before = number
    return f"[{''.join(parts).removeprefix(']')}]]" if parts else "[]"


def to_unicode(used: dict[int, str], size: int = 2) -> str:
    """Return the map from glyphs to characters, for searching and copying text; ``size``: bytes of a glyph's number."""
    pairs = [f"<{number:0{2 * size}x}> <{_utf_16(used[number])}>" for number in sorted(used)]
    blocks = [f"<{'00' * size}> <{'ff' * size}>", "endcodespacerange"]
    for start in range(0, len(pairs), _CHARACTERS_PER_BLOCK):
        block = pairs[start : start + _CHARACTERS_PER_BLOCK]
        blocks += [f"{len(block)} beginbfchar", *block, "endbfchar"]
    return "\n".join([*_MAP_HEAD, *blocks, *_MAP_FOOT])


def text_string(text: str) -> str:
    """Return a text string in UTF-16, hexadecimal."""
    return f"<feff{_utf_16(text)}>"


def _utf_16(text: str) -> str:
    """Return hexadecimal UTF-16; made here because the browser's library has no codec for it."""
    # A no-break space becomes a space: "18.4 A" must be found as people type it.
    codes = [ord(character) for character in text.replace("\u00a0", " ")]
    return "".join([f"{code:04x}" if code < 0x10000 else _surrogates(code - 0x10000) for code in codes])


def _surrogates(rest: int) -> str:
    return f"{0xD800 + (rest >> 10):04x}{0xDC00 + (rest & 0x3FF):04x}"


def _thousandths(face: str, units: float) -> str:
    return coordinate(units * 1000 / made.UNITS_PER_EM[face])
