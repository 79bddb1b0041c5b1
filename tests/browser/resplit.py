"""The site with its Python split in another way, under a sub-path of a host."""

import json
import re
import shutil
from pathlib import Path

from making.called import Used
from making.editions import HEAD, files_of
from making.paths import PYODIDE
from making.splitting import WARM, WASM, write_split

SIZES = r'data-size="\d+ (\d+ \d+) \d+"'
"""What a page says of its files: WebAssembly, archives, what codes need, warm data."""


def resplit(dist: Path, host: Path, used: Used, *, poison: bool = False) -> Path:
    """Lay the site into a folder of `host`, its Python split as if this were used; gives the folder."""
    site = host / "folio"
    shutil.copytree(dist, site)
    runtime = next((site / "py").iterdir())
    write_split(runtime, (PYODIDE / WASM).read_bytes(), used, poison=poison)
    for page in site.rglob("index.html"):
        sizes = [(runtime / name).stat().st_size for name in (WASM, WARM)]
        text = re.sub(SIZES, rf'data-size="{sizes[0]} \1 {sizes[1]}"', page.read_text("utf-8"))
        page.write_text(text, encoding="utf-8")
    worker = site / "service-worker.js"
    head, source = worker.read_text("utf-8").split(";\n", 1)
    edition = json.loads(head.removeprefix(HEAD)) | {"files": files_of(site)}
    worker.write_text(f"{HEAD}{json.dumps(edition)};\n{source}", encoding="utf-8")
    return site
