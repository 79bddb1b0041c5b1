"""Lays a compressed copy beside every file of the site that shrinks: .br and .gz, for hosts that send those.

Brotli at its strongest takes minutes over the WebAssembly, so what it made is kept by the contents' digest, and only
`build.py build` asks for it: serving on this machine has no need.
"""

import gzip
import hashlib
import shutil
from collections.abc import Callable
from pathlib import Path

import brotli

from making import stamps
from making.paths import WORKSHOP
from making.progress import step

SHRINKS = {".css", ".html", ".js", ".json", ".svg", ".txt", ".wasm", ".webmanifest", ".zip"}
WINDOW = 24
"""Brotli's largest window that every browser reads: the library's modules repeat each other over megabytes."""

KINDS: dict[str, Callable[[bytes], bytes]] = {
    ".br": lambda data: brotli.compress(data, quality=11, lgwin=WINDOW),
    ".gz": lambda data: gzip.compress(data, 9, mtime=0),
}


def compress_site(folder: Path) -> None:
    """Write the copies into `folder`; a copy that would not be smaller is left out."""
    with step("compressing the site (minutes, the first time)"):
        for path in stamps.files_under(folder):
            if path.suffix in SHRINKS and path.name != "_headers":
                for ending in KINDS:
                    _compress(path, ending)


def _compress(path: Path, ending: str) -> None:
    """Write one copy beside the file at `path`."""
    data = path.read_bytes()
    kept = WORKSHOP / "compressed" / f"{hashlib.sha256(data).hexdigest()}{ending}"
    if not kept.exists():
        kept.parent.mkdir(parents=True, exist_ok=True)
        fresh = kept.with_suffix(".fresh")
        fresh.write_bytes(KINDS[ending](data))
        fresh.replace(kept)
    if kept.stat().st_size < len(data):
        shutil.copyfile(kept, path.with_name(path.name + ending))
