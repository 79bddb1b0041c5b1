"""The font file of a face with only the glyphs that a document uses, for embedding.

Glyph numbers stay the same and unused outlines become empty, so that text written with the numbers of ``made.GLYPHS``
stays valid. Tables that a PDF does not need are left out. Source: the OpenType specification's chapters on the font
file, glyf, loca, head, maxp and hmtx; from memory, held by tests that open the result with another library.
"""

import struct
import zlib
from collections.abc import Iterable

from pycore.lettering import made_fonts

_FOR_PAPER = ("glyf", "head", "hhea", "hmtx", "loca", "maxp")
_FOR_SCREEN = (*_FOR_PAPER, "OS/2", "cmap", "name", "post")
_WORDS_ARE_ARGUMENTS, _SCALE, _MORE, _TWO_SCALES, _MATRIX = 0x0001, 0x0008, 0x0020, 0x0040, 0x0080
_WHOLE_FONT_SUM = 0xB1B0AFBA


def subset(face: str, glyphs: Iterable[int], *, for_screen: bool = False) -> bytes:
    """Return a TrueType file of ``face`` with glyph 0, the named glyphs and their components.

    ``for_screen`` keeps the tables that browsers need, for a saved drawing or a handout.
    """
    needed = _FOR_SCREEN if for_screen else _FOR_PAPER
    font = zlib.decompress(made_fonts.COMPRESSED[face])
    tables = {tag: table for tag, table in _tables(font).items() if tag in needed}
    outlines = _outlines(tables)
    kept = _with_components(outlines, glyphs)
    thinned = [outline if number in kept else b"" for number, outline in enumerate(outlines)]
    tables["glyf"], tables["loca"] = _joined(thinned)
    # The result's glyph offsets are always written long: 1 in head's indexToLocFormat.
    tables["head"] = tables["head"][:50] + struct.pack(">h", 1) + tables["head"][52:]
    return _file(tables)


def _tables(font: bytes) -> dict[str, bytes]:
    """Return the tables of a font file by tag."""
    (count,) = struct.unpack_from(">H", font, 4)
    tables = {}
    for number in range(count):
        tag, _, offset, length = struct.unpack_from(">4sLLL", font, 12 + 16 * number)
        tables[tag.decode("ascii")] = font[offset : offset + length]
    return tables


def _outlines(tables: dict[str, bytes]) -> list[bytes]:
    """Return the outline of every glyph by number."""
    (count,) = struct.unpack_from(">H", tables["maxp"], 4)
    (long_offsets,) = struct.unpack_from(">h", tables["head"], 50)
    if long_offsets:
        offsets = struct.unpack_from(f">{count + 1}L", tables["loca"])
    else:
        offsets = tuple([2 * half for half in struct.unpack_from(f">{count + 1}H", tables["loca"])])
    return [tables["glyf"][offsets[glyph] : offsets[glyph + 1]] for glyph in range(count)]


def _with_components(outlines: list[bytes], glyphs: Iterable[int]) -> frozenset[int]:
    """Return glyph 0, the named glyphs, and all their components."""
    kept, waiting = {0}, list(glyphs)
    while waiting:
        glyph = waiting.pop()
        if glyph not in kept:
            kept.add(glyph)
            waiting.extend(_components(outlines[glyph]))
    return frozenset(kept)


def _components(outline: bytes) -> list[int]:
    """Return the glyph numbers to which a composite outline refers; none for a simple one."""
    if not outline or struct.unpack_from(">h", outline)[0] >= 0:
        return []
    components, place, flags = [], 10, _MORE
    while flags & _MORE:
        flags, component = struct.unpack_from(">HH", outline, place)
        components.append(component)
        place += 8 if flags & _WORDS_ARE_ARGUMENTS else 6
        place += 2 if flags & _SCALE else 4 if flags & _TWO_SCALES else 8 if flags & _MATRIX else 0
    return components


def _joined(outlines: list[bytes]) -> tuple[bytes, bytes]:
    """Return the glyf table and its loca table of long offsets."""
    padded = [outline + b"\0" * (-len(outline) % 4) for outline in outlines]
    offsets = [0]
    for outline in padded:
        offsets.append(offsets[-1] + len(outline))
    return b"".join(padded), struct.pack(f">{len(offsets)}L", *offsets)


def _file(tables: dict[str, bytes]) -> bytes:
    """Return a font file with these tables and correct check sums."""
    count = len(tables)
    power = count.bit_length() - 1
    search = 16 << power
    directory = [struct.pack(">LHHHH", 0x00010000, count, search, power, 16 * count - search)]
    bodies, offset = [], 12 + 16 * count
    adjustment = offset
    tables["head"] = tables["head"][:8] + b"\0\0\0\0" + tables["head"][12:]
    for tag, table in sorted(tables.items()):
        padded = table + b"\0" * (-len(table) % 4)
        directory.append(struct.pack(">4sLLL", tag.encode("ascii"), _check_sum(padded), offset, len(table)))
        adjustment = offset + 8 if tag == "head" else adjustment
        bodies.append(padded)
        offset += len(padded)
    font = b"".join(directory + bodies)
    fitting = struct.pack(">L", (_WHOLE_FONT_SUM - _check_sum(font)) % 0x100000000)
    return font[:adjustment] + fitting + font[adjustment + 4 :]


def _check_sum(padded: bytes) -> int:
    """Return the sum of the 32-bit numbers, modulo 2 to the power of 32."""
    total = 0
    for number in struct.unpack(f">{len(padded) // 4}L", padded):
        total += number
    return total % 0x100000000
