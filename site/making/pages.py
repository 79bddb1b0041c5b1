"""Writes every page of the site: pycore fills the regions, a shell of site/templates puts them in place.

A shell `<template>.html` is given:

- `page`: `slug` ("" for home), `title`, `description`, `language`, `template`;
- `regions`: name -> HTML made by pycore, already safe to insert: `{{ regions.answer }}`;
- `root`: the way from this page to the site's root ("../" or "./"); every link is relative, so that the site works
  under any sub-path of a host;
- `root` + "licences.txt" is the text of every licence, to be linked from each page;
- `assets`: root of css/, js/, fonts/ and icon.svg: `{{ assets }}css/sheet.css`;
- `scripts`: the elements that load the shell's script and what that imports;
- `worker`, `runtime`, `library`, `parts`, `memory`, `size`: for `<html data-worker="{{ worker }}" ...>`, each by its
  name;
- `policy`: for `<meta http-equiv="Content-Security-Policy" content="{{ policy }}">`, the first thing in `<head>`;
- `base`: the address that the page will have, for links on paper, or "".
"""

import contextlib
import importlib
import urllib.parse
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import jinja2
from markupsafe import Markup

from making.paths import SITE
from making.policy import PAGE_POLICY
from making.progress import BuildError

TEMPLATES = SITE / "templates"
FIRST = "early.js"
"""The script that sends for Python."""

REST = "later"
"""The archive that a page starts with where it has none of its own."""


@dataclass(frozen=True)
class Places:
    """Where the build has put what pages load, relative to the site's root, each ending in a slash.

    `memory` names the started Python that a device may keep: it changes with whatever that Python is made from.
    `size` is that of the WebAssembly in bytes, because a host that compresses does not say it. `imports` has, by shell,
    the files of js/ that its script imports.
    """

    assets: str
    runtime: str
    library: str
    base: str = ""
    memory: str = ""
    size: int = 0
    imports: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


def site_address(base: str) -> str:
    """The address of the site's root, ending in a slash; "" stays "". Raises BuildError for what no browser opens."""
    if not base:
        return ""
    with contextlib.suppress(ValueError):
        parts = urllib.parse.urlsplit(base)
        if parts.scheme in ("http", "https") and parts.hostname and not (parts.query or parts.fragment):
            return base.rstrip("/") + "/"
    raise BuildError(f"--base {base}: give the site's address, such as https://www.example.org/folio/.")


def pages_of_pycore() -> Iterable[Any]:
    """Every page as pycore makes it; imported only here, because its lettering is made by the build."""
    pages: Iterable[Any] = importlib.import_module("pycore.render").site_pages()
    return pages


def write_pages(folder: Path, places: Places, pages: Iterable[Any]) -> list[str]:
    """Write each page to `folder`/<slug>/index.html; gives the slugs.

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
    slugs = []
    for page in pages:
        try:
            answers = page.answers or page.slug
            own = (folder / places.library / f"{answers}.zip").exists()
            variables = {**_variables(page, places), "parts": answers if own else REST}
            html = shells.get_template(f"{page.template}.html").render(variables)
        except jinja2.TemplateError as error:
            raise BuildError(f"the shell {page.template}.html of page {page.slug or 'home'}: {error!r}") from error
        target = folder / page.slug / "index.html"
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(html, encoding="utf-8", newline="\n")
        slugs.append(page.slug)
    return slugs


def _variables(page: Any, places: Places) -> dict[str, object]:
    """What the shell of one page is given."""
    root = "../" * (page.slug.count("/") + 1) if page.slug else "./"
    return {
        "page": page,
        "regions": {name: Markup(html) for name, html in page.regions.items()},
        "root": root,
        "assets": root + places.assets,
        "scripts": _scripts(f"{root}{places.assets}js/", page.template, places.imports.get(page.template, ())),
        "worker": f"{root}{places.assets}js/worker.js",
        "runtime": root + places.runtime,
        "library": root + places.library,
        "memory": places.memory,
        "size": places.size,
        "policy": PAGE_POLICY,
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
