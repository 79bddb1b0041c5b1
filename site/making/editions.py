"""What makes a site installable and whole without a network: its list of files, its service worker, its manifest."""

import hashlib
import json
import shutil
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from making import stamps
from making.bundles import minified
from making.contact import PLACE
from making.icons import ICONS
from making.materials import BILL
from making.paths import SITE
from making.policy import EMBEDDED, HASHED, HEADER_POLICY, NOT_FOUND, WHEN_USED
from making.progress import BuildError
from making.splitting import COLD

WORKER = "service-worker.js"
NOT_LISTED = ("_headers", NOT_FOUND, WORKER, BILL, PLACE)
PACKED = (".br", ".gz")
HEAD = "const EDITION = "
"""What the list of files begins with, in the script of the service worker."""
DIGEST_LENGTH = 16
LARGE = 50_000
"""Bytes from which a file counts, when it is asked how much there is to load."""


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
    edition = json.dumps({"name": name, "policy": HEADER_POLICY, "files": files, "bytes": _large(folder, files)})
    (folder / WORKER).write_text(f"{HEAD}{edition};\n{source}", encoding="utf-8", newline="\n")


def files_of(folder: Path) -> dict[str, str]:
    """Every file of the site as pages ask for it (a page by its folder), with the start of its SHA-256.

    The last one is the first that the service worker fetches; what hardly anybody needs comes after all else.
    """
    apart = (*(f"{kept}/" for kept in WHEN_USED), EMBEDDED)
    named = {path.relative_to(folder).as_posix(): path for path in stamps.files_under(folder)}
    return {
        name.removesuffix("index.html") if name.split("/")[-1] == "index.html" else name: _digest(path)
        for name, path in sorted(named.items(), key=lambda one: (one[1].name != COLD, one[0]))
        if name not in NOT_LISTED and path.suffix not in PACKED and not name.startswith(apart)
    }


def add_last(folder: Path, last: Path) -> int:
    """Add to the site in `folder` the files of the edition published before it, `last`, whose names change with their
    contents: pages of that edition, open somewhere or kept by something on the way, still ask for them. Gives how many.

    What `last` holds of editions before it stays behind. Raises BuildError if there is no edition in it.
    """
    try:
        listed = json.loads((last / WORKER).read_text("utf-8").partition(";\n")[0].removeprefix(HEAD))["files"]
    except (OSError, ValueError, KeyError) as error:
        raise BuildError(f"--last {last}: give the folder of the site as it was published last.") from error
    used = (path.relative_to(last).as_posix() for folder in WHEN_USED for path in _under(last / folder))
    names = [name for name in listed if name.partition("/")[0] in HASHED]
    names += [name for name in used if not name.endswith(PACKED)]
    names = [name for name in names if not (folder / name).exists()]
    for name in names:
        target = folder / name
        target.parent.mkdir(parents=True, exist_ok=True)
        for ending in ("", *PACKED):
            source = last / f"{name}{ending}"
            if source.exists():
                shutil.copyfile(source, target.with_name(target.name + ending))
    return len(names)


def _under(folder: Path) -> list[Path]:
    """The files in a folder; none where an older edition has no such folder."""
    return list(stamps.files_under(folder)) if folder.exists() else []


def _large(folder: Path, files: Iterable[str]) -> dict[str, int]:
    """The bytes of the files that make up nearly all of the site."""
    sizes = {name: (folder / name).stat().st_size for name in files if (folder / name).is_file()}
    return {name: size for name, size in sizes.items() if size >= LARGE}


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
