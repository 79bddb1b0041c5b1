"""Joins scripts and styles into the few files that a page loads: each that it waits for costs a round trip."""

import json
import shutil
from pathlib import Path

from making import assets
from making.environment import put_venv_on_path
from making.paths import NODE_MODULES, SITE, WORKSHOP
from making.programs import run
from making.progress import BuildError

APART = ("early", "trusted", "photo-marks")
"""Modules that stay files of their own: what runs before its page is there, and so must be one with what the page
imports; the page's only policy, for the same reason; what has no business with the page at all."""

ALONE = ("worker", "photo-worker")
"""What shares nothing with a page: threads of their own."""

AS_WRITTEN = (
    "js/handout-player.js", "css/tokens.css", "css/drawing.css", "css/print.css", "css/handout.css", "css/photo.css",
    "css/draw.css", "css/draw-bar.css", "css/draw-paper.css", "css/draw-small.css",
)  # fmt: skip
"""What goes into handouts, which are there to be read, and the styles that the photograph's panel and the drawing fetch
by themselves."""


COMMON = ("--minify", "--target=esnext", "--charset=utf8", "--legal-comments=none", "--log-level=warning")


def write_bundles(folder: Path) -> dict[str, tuple[str, ...]]:
    """Write js/ and css/ of the site into `folder`, which has its fonts/; gives, by shell, what its script imports."""
    staged = WORKSHOP / "staged"
    shutil.rmtree(staged, ignore_errors=True)
    for name, source in {"css": SITE / "css", "js": SITE / "js", "fonts": folder / "fonts"}.items():
        assets.copy_sources(source, staged / name)
    # The names of chunks depend on the way to every source: it is the same wherever the site is built.
    (staged / "node_modules").symlink_to(NODE_MODULES, target_is_directory=True)
    scripts = ["--format=esm", "--entry-names=js/[name]", "--chunk-names=js/[name]-[hash]"]
    _esbuild(staged, folder, [f"js/{name}.js" for name in APART], *scripts)
    _esbuild(staged, folder, [f"js/{name}.js" for name in ALONE], *scripts, "--bundle")
    shells = sorted(path.stem for path in (staged / "js" / "pages").glob("*.js"))
    styles = [f"css/pages/{shell}.css" for shell in shells]
    faces = ["--loader:.woff2=file", "--asset-names=fonts/[name]"]
    _esbuild(staged, folder, styles, "--bundle", "--entry-names=css/[name]", *faces)
    for name in AS_WRITTEN:
        shutil.copyfile(staged / name, folder / name)
    return {shell: _bundle(staged, folder, shell, *scripts) for shell in shells}


def _bundle(staged: Path, folder: Path, shell: str, *more: str) -> tuple[str, ...]:
    """Write the script of one shell; gives the files of js/ that it imports before it runs."""
    listed = WORKSHOP / "bundle.json"
    apart = [f"--external:*/{name}.js" for name in APART]
    _esbuild(staged, folder, [f"js/pages/{shell}.js"], *more, *apart, "--bundle", "--splitting", f"--metafile={listed}")
    outputs = json.loads(listed.read_text("utf-8"))["outputs"]
    imports = {Path(name).name: output["imports"] for name, output in outputs.items()}
    chunks: list[str] = []
    waiting = [f"{shell}.js"]
    while waiting:
        for imported in imports.get(waiting.pop(), ()):
            name = Path(imported["path"]).name
            if imported["kind"] == "import-statement" and name not in chunks:
                chunks.append(name)
                waiting.append(name)
    return tuple(sorted(chunks))


def minified(script: Path, *more: str) -> str:
    """The text of a script that stands by itself, made smaller; `more`: options of esbuild."""
    return _run_esbuild([str(script), *COMMON, *more], SITE)


def _esbuild(staged: Path, folder: Path, entries: list[str], *more: str) -> None:
    """Make `entries`, files of `staged`, smaller or into one; what comes of them stands in `folder`."""
    options = [*COMMON, "--preserve-symlinks", "--outbase=.", f"--outdir={folder}"]
    warnings = _run_esbuild([*entries, *options, *more], staged).strip()
    if warnings:
        raise BuildError(f"esbuild warns, and what it warns of might not be what was meant:\n{warnings}")


def _run_esbuild(arguments: list[str], folder: Path) -> str:
    """What esbuild prints when it is run in `folder`."""
    put_venv_on_path()
    program = NODE_MODULES / "esbuild" / "bin" / "esbuild"
    command = ["node", str(program), *arguments]
    return run(command, "What esbuild says names the file and the line.", cwd=folder)
