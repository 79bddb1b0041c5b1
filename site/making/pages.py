"""Writes every page of the site: pycore fills the regions, a shell of site/templates puts them in place.

A shell `<template>.html` is given:

- `page`: `slug` ("" for home), `title`, `description`, `language`, `template`;
- `regions`: name -> HTML made by pycore, already safe to insert: `{{ regions.answer }}`;
- `root`: the way from this page to the site's root ("../" or "./"); every link is relative, so that the site works
  under any sub-path of a host;
- `root` + "licences.txt" is the text of every licence, to be linked from each page;
- `assets`: root of css/, js/, fonts/ and icon.svg: `{{ assets }}css/sheet.css`;
- `first`: the scripts that stand in the page itself, before all others;
- `scripts`: the elements that load the shell's script and what that imports;
- `worker`, `runtime`, `library`, `parts`, `memory`, `size`: for `<html data-worker="{{ worker }}" ...>`, each by its
  name;
- `policy`: for `<meta http-equiv="Content-Security-Policy" content="{{ policy }}">`, the first thing in `<head>`;
- `stored`: the megabytes of the whole site, at most what a device loads to store it;
- `base`: the address that the page will have, for links on paper, or "".
"""

import contextlib
import importlib
import re
import urllib.parse
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import jinja2
from markupsafe import Markup

from making import stamps
from making.paths import SITE
from making.policy import EMBEDDED, INLINE, NOT_FOUND, PAGE_POLICY, WHEN_USED
from making.progress import BuildError
from making.splitting import WARM

TEMPLATES = SITE / "templates"
FIRST = "early.js"
"""The script that sends for Python."""

STORED = "(megabytes)"
"""Stands for the size of the whole site until every page is there."""

CONTROL = re.compile(r'<template\b.*?</template>|<(button|input|select|textarea)\b((?:[^>"]|"[^"]*")*)>', re.DOTALL)
"""A control of a page, or what a script copies into it, controls and all."""


REST = "later"
"""The archive that a page starts with where it has none of its own."""

CODED = "coded"
"""The archive that a page starts with, too, where the code of a problem opens it."""


@dataclass(frozen=True)
class Places:
    """Where the build has put what pages load, relative to the site's root, each ending in a slash.

    `memory` names the started Python that a device may keep: it changes with whatever that Python is made from.
    `size` is that of the WebAssembly in bytes, because a host that compresses does not say it; pages say beside it what
    their archives have, that for the problem of a code and the warm module. `imports` has, by shell,
    the files of js/ that its script imports.
    """

    assets: str
    runtime: str
    library: str
    letters: str
    base: str = ""
    memory: str = ""
    size: int = 0
    imports: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    codes: str = ""


def site_address(base: str) -> str:
    """The address of the site's root, ending in a slash; "" stays "". Raises BuildError for what no browser opens, and
    for a name or password, which would stand on every sheet."""
    if not base:
        return ""
    with contextlib.suppress(ValueError):
        parts = urllib.parse.urlsplit(base)
        if parts.username is not None or parts.password is not None:
            raise BuildError("--base: leave the name and password out. The address is printed on every sheet.")
        if parts.scheme in ("http", "https") and parts.hostname and not (parts.query or parts.fragment):
            return base.rstrip("/") + "/"
    raise BuildError(f"--base {base}: give the site's address, such as https://www.example.org/folio/.")


CALCULATOR = "sheet"
"""The shell of calculators."""


def pages_of_pycore() -> Iterable[Any]:
    """Every page as pycore makes it; imported only here, because its lettering is made by the build."""
    pages: Iterable[Any] = importlib.import_module("pycore.render").site_pages()
    return pages


def write_pages(folder: Path, places: Places, pages: Iterable[Any], *, embedded: bool = False) -> list[str]:
    """Write each page to `folder`/<slug>/index.html, and the one for addresses that have none; gives the slugs.

    `embedded`: every calculator has a page for embedding too.

    Raises BuildError when a shell is missing or uses something that it was not given.
    """
    shells = jinja2.Environment(
        loader=jinja2.FileSystemLoader(TEMPLATES),
        autoescape=True,
        undefined=jinja2.StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    written = {}
    for page in pages:
        try:
            answers = page.answers or page.slug
            own = (folder / places.library / f"{answers}.zip").exists()
            parts = answers if own else REST
            warm = _size(folder / places.runtime / WARM)
            sizes = f"{_sizes(folder / places.library, places.size, parts)} {warm}"
            variables = {**_variables(page, places), "parts": parts, "size": sizes}
            shell = shells.get_template(f"{page.template}.html")
            html = turned_off(shell.render(variables))
            if embedded and page.template == CALCULATOR:
                written[f"{EMBEDDED}{page.slug}"] = turned_off(shell.render(variables | {"embedded": EMBEDDED}))
        except jinja2.TemplateError as error:
            raise BuildError(f"the shell {page.template}.html of page {page.slug or 'home'}: {error!r}") from error
        written[page.slug] = html
    kept = (path for path in stamps.files_under(folder) if path.relative_to(folder).parts[0] not in WHEN_USED)
    stored = sum(path.stat().st_size for path in kept) + sum(map(len, written.values()))
    for slug, html in written.items():
        target = folder / slug if slug == NOT_FOUND else folder / slug / "index.html"
        target.parent.mkdir(parents=True, exist_ok=True)
        # A mark at the head (which the encoding standard puts before a host's word) where a host says another encoding.
        target.write_text(html.replace(STORED, str(round(stored / 1e6))), encoding="utf-8-sig", newline="\n")
    return [slug for slug in written if slug != NOT_FOUND]


def turned_off(page: str) -> str:
    """A page with its fields and buttons off, until its script turns them on (js/controls-on.js).

    Those that work without a module of the page stay as they are, and what only its script puts in place.
    """

    def off(control: re.Match[str]) -> str:
        stays = not control[1] or re.search(r" (?:disabled|data-theme-switch|popovertarget)\b", control[0])
        return control[0] if stays else f"<{control[1]} disabled data-off{control[2]}>"

    return CONTROL.sub(off, page)


def _sizes(archives: Path, wasm: int, parts: str) -> str:
    """The bytes of the WebAssembly, of the archives that a page starts with, and of the one for the problem of a
    code."""
    library, own, coded = (_size(archives / f"{name}.zip") for name in ("library", parts, CODED))
    return f"{wasm} {library + own} {coded}"


def _size(path: Path) -> int:
    return path.stat().st_size if path.exists() else 0


def _variables(page: Any, places: Places) -> dict[str, object]:
    """What the shell of one page is given."""
    root = "../" * (page.slug.count("/") + 1) if page.slug else "./"
    scripts = _scripts(f"{root}{places.assets}js/", page.template, places.imports.get(page.template, ()))
    if page.slug == NOT_FOUND:
        # It is given for addresses of any depth, and where another site begins at "/", it may start nothing of that.
        root, scripts = places.base or "/", Markup()
    return {
        "page": page,
        "regions": {name: Markup(html) for name, html in page.regions.items()},
        "root": root,
        "assets": root + places.assets,
        "first": Markup("\n".join(f"<script>{script}</script>" for script in INLINE)),
        "scripts": scripts,
        "worker": f"{root}{places.assets}js/worker.js",
        "runtime": root + places.runtime,
        "library": root + places.library,
        "letters": root + places.letters,
        "codes": root + places.codes,
        "reader": f"{root}{places.assets}js/photo-worker.js",
        "memory": places.memory,
        "policy": PAGE_POLICY,
        "embedded": "",
        "stored": STORED,
        "base": f"{places.base}{page.slug}/" if places.base and page.slug else places.base,
    }


def _scripts(folder: str, shell: str, imports: Iterable[str]) -> Markup:
    """The elements for a shell's script; what it imports is asked for at the same time, not once it has been read.

    What sends for Python runs as soon as it is there, for that takes longest; all else waits for the whole page.
    """
    first = f'<script type="module" src="{folder}{FIRST}" async fetchpriority="high"></script>'
    elements = [first if name == FIRST else f'<link rel="modulepreload" href="{folder}{name}">' for name in imports]
    own = f'<script type="module" src="{folder}{shell}.js"></script>'
    return Markup("\n".join([*sorted(elements, key=first.__ne__), own]))
