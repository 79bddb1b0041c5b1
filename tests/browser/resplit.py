"""The site with its Python split in another way, under a sub-path of a host."""

import json
import shutil
from pathlib import Path

from making.called import Used
from making.editions import HEAD, files_of
from making.paths import PYODIDE
from making.splitting import WASM, write_split


def resplit(dist: Path, host: Path, used: Used, *, poison: bool = False) -> Path:
    """Lay the site into a folder of `host`, its Python split as if this were used; gives the folder."""
    site = host / "folio"
    shutil.copytree(dist, site)
    write_split(next((site / "py").iterdir()), (PYODIDE / WASM).read_bytes(), used, poison=poison)
    worker = site / "service-worker.js"
    head, source = worker.read_text("utf-8").split(";\n", 1)
    edition = json.loads(head.removeprefix(HEAD)) | {"files": files_of(site)}
    worker.write_text(f"{HEAD}{json.dumps(edition)};\n{source}", encoding="utf-8")
    return site
