"""What makes a site installable and whole without a network: its list of files, its service worker, its manifest."""

import hashlib
import json
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from making import stamps
from making.bundles import minified
from making.icons import ICONS
from making.paths import SITE
from making.policy import HEADER_POLICY
from making.splitting import COLD

NOT_LISTED = ("_headers", "service-worker.js")
DIGEST_LENGTH = 16


def memory_name(runtime: Path, library: Path, scripts: Iterable[Path]) -> str:
    """The name of the started Python that a device may keep: of all that it is made from and by."""
    return stamps.hash_of_texts(runtime.name, library.name, *(path.read_text("utf-8") for path in scripts))[:16]


def write_edition(folder: Path, assets: str, home: Any) -> None:
    """Write the manifest, in the words of the front page `home`, then the service worker with its list of files."""
    text = json.dumps(manifest(assets, home), ensure_ascii=False, indent=1, sort_keys=True)
    (folder / "manifest.webmanifest").write_text(text + "\n", encoding="utf-8", newline="\n")
    files = files_of(folder)
    source = minified(SITE / "service-worker.js")
    name = stamps.hash_of_texts(json.dumps(files, sort_keys=True), source)[:DIGEST_LENGTH]
    edition = json.dumps({"name": name, "policy": HEADER_POLICY, "files": files})
    script = f"const EDITION = {edition};\n{source}"
    (folder / "service-worker.js").write_text(script, encoding="utf-8", newline="\n")


def files_of(folder: Path) -> dict[str, str]:
    """Every file of the site as pages ask for it (a page by its folder), with the start of its SHA-256.

    The last one is the first that the service worker fetches; what hardly anybody needs comes after all else.
    """
    named = {path.relative_to(folder).as_posix(): path for path in stamps.files_under(folder)}
    return {
        name.removesuffix("index.html") if name.split("/")[-1] == "index.html" else name: _digest(path)
        for name, path in sorted(named.items(), key=lambda one: (one[1].name != COLD, one[0]))
        if name not in NOT_LISTED and path.suffix not in (".br", ".gz")
    }


def _digest(path: Path) -> str:
    """The start of the SHA-256 of a file, in hexadecimal."""
    return hashlib.sha256(path.read_bytes()).hexdigest()[:DIGEST_LENGTH]


def manifest(assets: str, home: Any) -> dict[str, Any]:
    """What a device asks before it puts the site beside its programs; addresses are relative to the site's root."""
    name = home.title.partition(" · ")[0]
    icons = [
        {"src": f"{assets}icons/{name}", "sizes": f"{pixels}x{pixels}", "type": "image/png",
         "purpose": "maskable" if "mask" in name else "any"}
        for name, (pixels, _share) in ICONS.items()
    ]  # fmt: skip
    return {
        "name": name,
        "short_name": name,
        "description": home.description,
        "lang": home.language,
        "id": "./",
        "start_url": "./",
        "scope": "./",
        "display": "standalone",
        "background_color": "#d2d8d0",
        "theme_color": "#d2d8d0",
        "icons": icons,
    }
