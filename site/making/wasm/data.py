"""Static data in two or three modules: what a start and the flows touch, and what may come later.

Data that comes later is one passive part of a module that copies it as it is made, once: a flag in memory says that it
is there, so that a kept memory, which holds it, is not written over.
"""

from collections.abc import Collection, Iterable

from making.wasm import module
from making.wasm.encoding import joined, listed, signed, sized, text
from making.wasm.module import Module, constant
from making.wasm.tracing import PIECE

WARM_FLAG, COLD_FLAG = 1016, 1020
"""Words below all static data: 1 once the warm data, or the cold data, is in memory."""

HOT = "hot"
"""The module that the others import from."""

GAP = 32
"""Zeros between two parts that are written out: packed, they take less than where another part would begin."""

POISON = 0xDB
Part = tuple[int, bytes]
_LOAD, _STORE, _IF, _RETURN, _BULK, _INIT = 0x28, 0x36, 0x04, 0x0F, 0xFC, 8


def whole_of(read: Module) -> bytes:
    """Memory up to the end of the static data. Raises ValueError where something stands where the flags will."""
    ends = max(at + len(held) for at, held in read.data)
    memory = bytearray(ends)
    for at, held in read.data:
        memory[at : at + len(held)] = held
    if any(memory[: COLD_FLAG + 4]):
        raise ValueError("static data stands where nothing should")
    return bytes(memory)


def parts_in(memory: bytes, pieces: Collection[int]) -> list[Part]:
    """What these pieces hold, in parts as long as they can be without many zeros or any other piece."""
    found: list[tuple[int, int]] = []
    before = unbroken = -1
    for piece in sorted(pieces):
        if piece != before + 1:
            unbroken = piece * PIECE
        before = piece
        held = memory[piece * PIECE : (piece + 1) * PIECE]
        ends = piece * PIECE + len(held.rstrip(b"\0"))
        if ends == piece * PIECE:
            continue
        begins = piece * PIECE + len(held) - len(held.lstrip(b"\0"))
        if found and unbroken < found[-1][1] >= begins - GAP:
            begins = found.pop()[0]
        found.append((begins, ends))
    return [(begins, memory[begins:ends]) for begins, ends in found]


def section(parts: Iterable[Part]) -> bytes:
    """Parts as a module writes data that is there from the start."""
    return listed(
        bytes([0, module.I32_CONST]) + signed(at) + bytes([module.END]) + sized(held) for at, held in parts
    )  # fmt: skip


def poisoned(parts: Iterable[Part]) -> list[Part]:
    """The parts with what nobody could take for their own: a test sees who reads them."""
    return [(at, bytes([POISON]) * len(held)) for at, held in parts]


def held(parts: Iterable[Part]) -> bytes:
    """Parts as a module writes data that it copies itself."""
    return listed([b"\1" + sized(b"".join(one for _, one in parts))])


def copying(parts: Iterable[Part], flag: int) -> bytes:
    """The function that copies the parts, unless the flag says that they are there, and sets it."""
    code, at = bytearray(constant(flag) + bytes([_LOAD, 2, 0, _IF, 0x40, _RETURN, module.END])), 0
    for begins, one in parts:
        code += constant(begins) + constant(at) + constant(len(one)) + bytes([_BULK, _INIT, 0, 0])
        at += len(one)
    return b"\0" + bytes(code) + constant(flag) + constant(1) + bytes([_STORE, 2, 0, module.END])


def warm(parts: Collection[Part]) -> bytes:
    """The module that brings the warm data into the hot one's memory."""
    memory = text(HOT) + text("memory") + bytes([module.A_MEMORY, 0, 1])
    return joined([
        (module.TYPES, listed([b"\x60\0\0"])),
        (module.IMPORTS, listed([memory])),
        (module.FUNCTIONS, listed([b"\0"])),
        (module.START, b"\0"),
        (module.DATA_COUNT, b"\1"),
        (module.CODE, listed([sized(copying(parts, WARM_FLAG))])),
        (module.DATA, held(parts)),
    ])  # fmt: skip
