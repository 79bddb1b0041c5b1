"""How WebAssembly writes numbers, names, lists and sections; https://webassembly.github.io/spec/core/binary/."""

from collections.abc import Iterable

HEAD = b"\0asm\1\0\0\0"


def read_unsigned(data: bytes, at: int) -> tuple[int, int]:
    """A number of seven bits a byte, the low ones first, and where the next thing begins."""
    value = shift = 0
    while True:
        byte = data[at]
        at += 1
        value |= (byte & 0x7F) << shift
        shift += 7
        if byte < 0x80:
            return value, at


def read_signed(data: bytes, at: int) -> tuple[int, int]:
    """The same of a number that may be negative: its highest bit is the sign."""
    value, end = read_unsigned(data, at)
    bits = 7 * (end - at)
    return (value - (1 << bits) if value >> bits - 1 else value), end


def unsigned(value: int) -> bytes:
    """A number as it is written, as short as it can be."""
    return _written(value, 0, 0x80)


def signed(value: int) -> bytes:
    """The same of a number that may be negative."""
    return _written(value, -0x40, 0x40)


def _written(value: int, least: int, limit: int) -> bytes:
    """A number whose last byte holds what is from `least` to below `limit`."""
    written = bytearray()
    while not least <= value < limit:
        written.append(value & 0x7F | 0x80)
        value >>= 7
    written.append(value & 0x7F)
    return bytes(written)


def sized(data: bytes) -> bytes:
    """Bytes with their length before them."""
    return unsigned(len(data)) + data


def text(name: str) -> bytes:
    """A name as it is written."""
    return sized(name.encode())


def listed(items: Iterable[bytes]) -> bytes:
    """A list: how many, then each."""
    items = list(items)
    return unsigned(len(items)) + b"".join(items)


def sections(data: bytes) -> list[tuple[int, bytes]]:
    """The sections of a module in their order: the number of the kind, the contents. Raises ValueError on no module."""
    if data[: len(HEAD)] != HEAD:
        raise ValueError("this is no WebAssembly module of version 1")
    found, at = [], len(HEAD)
    while at < len(data):
        kind = data[at]
        length, at = read_unsigned(data, at + 1)
        found.append((kind, data[at : at + length]))
        at += length
    return found


def joined(parts: Iterable[tuple[int, bytes]]) -> bytes:
    """The module of these sections."""
    return HEAD + b"".join(bytes([kind]) + sized(body) for kind, body in parts)
