"""The list of functions of Pyodide's WebAssembly that the flows of learners and lecturers call.

It is made by `build.py profile` (profiling.py) and kept in called/, a file for each WebAssembly, named for its hash: a
map of bits, one for each function that is no import, as base64.
"""

import base64
import hashlib
from collections.abc import Iterable
from pathlib import Path

from making.paths import SITE

FOLDER = SITE / "making" / "called"
HASH_LENGTH = 16
LINE = 100


def place_of(wasm: bytes) -> Path:
    """Where the list for this WebAssembly is, or would be."""
    return FOLDER / f"{hashlib.sha256(wasm).hexdigest()[:HASH_LENGTH]}.txt"


def called_in(wasm: bytes) -> frozenset[int] | None:
    """The functions by own number; None where nobody has made the list for this WebAssembly."""
    path = place_of(wasm)
    return parsed(path.read_text("utf-8")) if path.exists() else None


def keep(wasm: bytes, called: Iterable[int]) -> Path:
    """Write the list for this WebAssembly in the place of any other; gives where it is."""
    FOLDER.mkdir(exist_ok=True)
    for older in FOLDER.glob("*.txt"):
        older.unlink()
    path = place_of(wasm)
    path.write_text(written(called), encoding="utf-8", newline="\n")
    return path


def parsed(text: str) -> frozenset[int]:
    """The numbers in a list as it is kept."""
    bits = base64.b64decode("".join(text.split()))
    return frozenset(8 * at + bit for at, byte in enumerate(bits) for bit in range(8) if byte >> bit & 1)


def written(called: Iterable[int]) -> str:
    """Numbers as they are kept."""
    numbers = set(called)
    bits = bytearray(max(numbers, default=-1) // 8 + 1)
    for number in numbers:
        bits[number // 8] |= 1 << number % 8
    packed = base64.b64encode(bytes(bits)).decode()
    return "".join(f"{packed[at : at + LINE]}\n" for at in range(0, len(packed), LINE))
