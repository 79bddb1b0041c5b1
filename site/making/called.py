"""What of Pyodide's WebAssembly the flows of learners and lecturers use: functions called, pieces of data touched.

Both are found by `build.py profile` (profiling.py) and kept in called/, two files for each WebAssembly, named for its
hash: maps of bits as base64, one for each function that is no import, one for each piece of data (wasm/tracing.py).
"""

import base64
import hashlib
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from making.paths import SITE

FOLDER = SITE / "making" / "called"
HASH_LENGTH = 16
LINE = 100


@dataclass(frozen=True)
class Used:
    """What the flows use: functions by own number; pieces of static data, None where nobody has traced them."""

    called: frozenset[int]
    touched: frozenset[int] | None = None


def places_of(wasm: bytes) -> tuple[Path, Path]:
    """Where the two lists for this WebAssembly are, or would be: of what is called, of what is touched."""
    name = hashlib.sha256(wasm).hexdigest()[:HASH_LENGTH]
    return FOLDER / f"{name}.txt", FOLDER / f"{name}.touched.txt"


def used_in(wasm: bytes) -> Used | None:
    """What the flows use; None where nobody has made the list for this WebAssembly."""
    called, touched = (parsed(path.read_text("utf-8")) if path.exists() else None for path in places_of(wasm))
    return None if called is None else Used(called, touched)


def keep(wasm: bytes, used: Used) -> Path:
    """Write the lists for this WebAssembly in the place of any other; gives where the first is."""
    FOLDER.mkdir(exist_ok=True)
    for older in FOLDER.glob("*.txt"):
        older.unlink()
    paths = places_of(wasm)
    for path, numbers in zip(paths, (used.called, used.touched), strict=True):
        if numbers is not None:
            path.write_text(written(numbers), encoding="utf-8", newline="\n")
    return paths[0]


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
