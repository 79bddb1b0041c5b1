"""A text as the modules of a QR code.

Source: ISO/IEC 18004:2015; the tables and the layout of a symbol come from segno. What all symbols of one size share is
calculated once: a class set has a hundred links of one length, and then each needs only a division with remainder and
an interleaving. Level L is used, because a code has a fixed place on a sheet, a higher level means smaller modules, and
on clean paper small modules are the greater risk. If the same size allows a higher level, that is used.
"""

from collections.abc import Callable
from functools import lru_cache
from operator import itemgetter
from typing import Any, NamedTuple

MASK = 2
"""Any mask may be used (ISO/IEC 18004, 7.8); trying all eight costs ten times as much. For links such as these this one
has the lowest penalty in 63 of 75 that were tried."""

LONGEST = 2953
"""Bytes that the largest code holds at level L (ISO/IEC 18004, table 7)."""

VERSIONS = 40
LONG_COUNT = 10
"""The version from which the number of bytes is written in 16 bits, not in 8 (ISO/IEC 18004, table 3)."""
BYTES = 4
"""Mode indicator of bytes (ISO/IEC 18004, table 2)."""
PADS = bytes((0b11101100, 0b00010001))
"""What fills the codewords that are left (ISO/IEC 18004, 7.4.10)."""
FREE = 2
"""What the encoder writes where a module of the message belongs."""


def matrix(text: str) -> tuple[str, ...]:
    """Return the rows of the code for ``text`` in UTF-8, from the top: "1" dark, "0" light, no quiet zone.

    Equal texts give equal rows on every machine. Raises ValueError for a text that is empty or too long, and
    ImportError if the encoder is not loaded.
    """
    data = text.encode()
    if not data:
        raise ValueError("there is no text to make a QR code of")
    if len(data) > LONGEST:
        raise ValueError(f"a QR code holds {LONGEST} bytes; this text has {len(data)}")
    form = _form(*_size(len(data)))
    bits = _bits(_interleaved(_codewords(data, form), form)) + form.idle
    size = form.side
    modules = f"{int(''.join(form.shuffled(bits)), 2) ^ form.mask:0{size * size}b}"
    return tuple([modules[start : start + size] for start in range(0, size * size, size)])


def _bits(data: bytes) -> str:
    return f"{int.from_bytes(data, 'big'):0{8 * len(data)}b}"


def _count_bits(version: int) -> int:
    """Return the number of bits of the byte count."""
    return 16 if version >= LONG_COUNT else 8


def _tables() -> Any:
    """Return the tables of the standard. Raises ImportError if the encoder is not loaded."""
    from segno import consts

    return consts


@lru_cache(maxsize=64)
def _size(length: int) -> tuple[int, int]:
    """Return the smallest version for this number of bytes, and its highest possible level."""
    consts = _tables()
    levels = (consts.ERROR_LEVEL_L, consts.ERROR_LEVEL_M, consts.ERROR_LEVEL_Q, consts.ERROR_LEVEL_H)
    for version in range(1, VERSIONS + 1):
        room = consts.SYMBOL_CAPACITY[version]
        holds = [level for level in levels if room[level] >= 4 + _count_bits(version) + 8 * length]
        if holds:
            return version, holds[-1]
    raise ValueError(f"a QR code holds {LONGEST} bytes; this text has {length}")


class _SymbolFormat(NamedTuple):
    """What all symbols of one version and level share."""

    version: int
    side: int
    blocks: tuple[int, ...]
    """Data codewords of each block; all have the same number of correcting ones."""
    remainders: tuple[int, ...]
    """For each leading codeword, what it leaves in the correcting ones, as one number."""
    correcting: int
    shuffled: Callable[[str], tuple[str, ...]]
    """Takes the message's bits and the idle ones to their places, row by row from the top."""
    idle: str
    mask: int


@lru_cache(maxsize=8)
def _form(version: int, level: int) -> _SymbolFormat:
    """Return the format of a version and level, as segno lays out symbols. Raises ImportError if it is not loaded."""
    # The encoder alone, without the package's front: that also draws, and would bring half of the standard library.
    from segno import encoder

    consts = _tables()
    side = encoder.calc_matrix_size(version)
    # Numbers in place of bits: what stands in a module then says which bit of the message belongs there.
    rows: list[list[int]] = [list(row) for row in encoder.make_matrix(side, side)]
    encoder.add_finder_patterns(rows, side, side)
    encoder.add_alignment_patterns(rows, side, side)
    free = len([0 for row in rows for module in row if module == FREE])
    encoder.add_codewords(rows, range(FREE + 1, FREE + 1 + free), version)
    masked = encoder.get_data_mask_functions(False)[MASK]
    mask = "".join(
        "1" if module > FREE and masked(down, across) else "0"
        for down, row in enumerate(rows) for across, module in enumerate(row)
    )  # fmt: skip
    encoder.add_format_info(rows, version, level, MASK)
    encoder.add_version_info(rows, version)
    # After the message's bits stand those left over (7.6, never more than 7), then a light module and a dark one.
    places = [module - FREE - 1 if module > FREE else free + module for row in rows for module in row]
    kinds = consts.ECC[version][level]
    correcting = kinds[0].num_total - kinds[0].num_data
    blocks = tuple(kind.num_data for kind in kinds for _ in range(kind.num_blocks))
    idle = "0" * (free - 8 * (len(blocks) * correcting + _total(blocks))) + "01"
    return _SymbolFormat(
        version, side, blocks, _remainders(consts, correcting), correcting, itemgetter(*places), idle, int(mask, 2)
    )


def _total(numbers: tuple[int, ...]) -> int:
    """The sum of whole numbers."""
    total = 0
    for number in numbers:
        total += number
    return total


def _remainders(consts: Any, correcting: int) -> tuple[int, ...]:
    """Return, by leading codeword, its correction codewords; those of a sum are the sum of theirs."""
    generator = consts.GEN_POLY[correcting]
    remainders = [0]
    for power in range(8):
        words = bytes(consts.GALIOS_EXP[consts.GALIOS_LOG[1 << power] + term] for term in generator)
        remainders += [int.from_bytes(words, "big") ^ smaller for smaller in remainders]
    return tuple(remainders)


def _codewords(data: bytes, form: _SymbolFormat) -> bytes:
    """Return the data codewords: mode, byte count, bytes, terminator, and padding."""
    count, length = _count_bits(form.version), len(data)
    bits = (((BYTES << count | length) << 8 * length) | int.from_bytes(data, "big")) << 4
    # One more codeword of nothing before the pads, as the encoder writes it; whoever reads stops at the end before it.
    message = bits.to_bytes((8 + count + 8 * length) // 8, "big") + b"\0"
    room = _total(form.blocks)
    return (message + PADS * (room // 2))[:room]


def _interleaved(codewords: bytes, form: _SymbolFormat) -> bytes:
    """Return the codewords of all blocks in turn, then their correction codewords (ISO/IEC 18004, 7.5 and 7.6)."""
    blocks, start = [], 0
    for length in form.blocks:
        blocks.append(codewords[start : start + length])
        start += length
    corrections = [_correction(block, form) for block in blocks]
    words_in_order = [block[place] for place in range(form.blocks[-1]) for block in blocks if place < len(block)]
    words_in_order += [words[place] for place in range(form.correcting) for words in corrections]
    return bytes(words_in_order)


def _correction(block: bytes, form: _SymbolFormat) -> bytes:
    """Return the correction codewords (ISO/IEC 18004, 7.5.2), by division codeword by codeword."""
    remainders, top = form.remainders, 8 * (form.correcting - 1)
    below = (1 << top) - 1
    rest = 0
    for word in block:
        rest = ((rest & below) << 8) ^ remainders[rest >> top ^ word]
    return rest.to_bytes(form.correcting, "big")
