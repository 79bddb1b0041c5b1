"""A font file as WOFF 1.0: the same tables, each compressed, for fonts inside a document.

Source: W3C Recommendation "WOFF File Format 1.0", sections 3 to 5; from memory, held by a test that opens the result
with another library.
"""

import struct
import zlib

_HEADER, _ENTRY = ">4sLLHHLHHLLLLL", ">4sLLLL"


def woff(font: bytes) -> bytes:
    """The WOFF file of a TrueType font file."""
    flavour, count = struct.unpack_from(">LH", font)
    directory, bodies = [], []
    offset, unpacked = 44 + 20 * count, 12 + 16 * count
    for number in range(count):
        tag, check_sum, start, length = struct.unpack_from(">4sLLL", font, 12 + 16 * number)
        table = font[start : start + length]
        packed = zlib.compress(table, 9)
        # A table that does not shrink is stored as it is, which its equal lengths say.
        body = packed if len(packed) < length else table
        directory.append(struct.pack(_ENTRY, tag, offset, len(body), length, check_sum))
        padded = body + b"\0" * (-len(body) % 4)
        bodies.append(padded)
        offset += len(padded)
        unpacked += length + (-length % 4)
    header = struct.pack(_HEADER, b"wOFF", flavour, offset, count, 0, unpacked, 1, 0, 0, 0, 0, 0, 0)
    return b"".join([header, *directory, *bodies])
