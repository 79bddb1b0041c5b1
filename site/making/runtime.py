"""Puts Pyodide, the library that it starts from, what each page needs beside it, and all later parts into the site."""

import importlib.util
import json
import shutil
import zipfile
from pathlib import Path

from making import stamps
from making.environment import ensure_npm
from making.paths import PYCORE, PYODIDE, SITE, WORKSHOP
from making.programs import run
from making.progress import BuildError, step
from making.splitting import ensure_python

PARTS = {"codes": {"segno": ("consts.py", "encoder.py")}}
"""By lazy part, the modules of each package in it. Of segno the encoder alone: the rest draws codes in its own ways,
and would bring modules for networks and mail, ten times as large."""

OURS = {
    "photo": (
        "linear.py", "projection.py", "constructions/retrace.py", "practice/slips.py", "practice/allowed.py",
        "practice/drawn.py", "practice/photograph.py", "practice/photo_checks.py", "sums/photograph.py",
        "words/photograph.py", "render/photo_panel.py", "render/photograph.py", "pages/pile_marks.py",
        "words/strokes.py", "render/pile_judged.py", "render/pile_read.py", "sheet/feedback_page.py",
        "render/pile_feedback.py", "writers/jpeg.py",
    ),
    "draw": (
        "practice/drawn_here.py", "sums/drawn_here.py", "words/draw_here.py", "render/draw_panel.py",
        "render/draw_here.py", "practice/arcs_here.py", "practice/lines_here.py", "render/draw_tools.py",
        "sheet/set_squares.py", "words/arcs_here.py",
    ),
    "strokes": (
        "sheet/printed.py", "practice/strokes.py", "practice/stroke_shapes.py", "practice/stroke_axes.py",
        "practice/stroke_sums.py", "practice/stroke_meeting.py", "practice/stroke_names.py",
        "practice/stroke_reading.py", "sums/strokes.py", "render/strokes.py",
    ),
}  # fmt: skip
"""By lazy part, the modules of pycore that stand in it and not in the library: no first visit needs them. A part may
need those before it."""

STUBS = SITE / "making" / "stubs"
PRELUDE = SITE / "making" / "prelude.py"
FIRST_READ = "encodings/__init__.py"
LOCK = "pyodide-lock.json"


def write_runtime(folder: Path) -> None:
    """Write Pyodide's own files into `folder`: they change only with Pyodide, and are most of a first visit."""
    folder.mkdir(parents=True)
    for file in ensure_python():
        shutil.copyfile(file, folder / file.name)
    lock = json.loads((PYODIDE / LOCK).read_text("utf-8"))
    # Pyodide reads this file as it starts; the site carries none of the packages that it lists.
    (folder / LOCK).write_text(json.dumps({"info": lock["info"], "packages": {}}, sort_keys=True), encoding="utf-8")


def write_library(folder: Path) -> None:
    """Write library.zip, later.zip, and an archive for each calculator and each lazy part into `folder`: they change
    with every edit of pycore."""
    folder.mkdir(parents=True)
    for archive in ensure_archives():
        shutil.copyfile(archive, folder / archive.name)


def package_folder(package: str) -> Path:
    """Where an installed package stands."""
    spec = importlib.util.find_spec(package)
    if spec is None or spec.origin is None:
        raise BuildError(f"the Python package {package} is not installed.")
    return Path(spec.origin).parent


def ensure_archives() -> list[Path]:
    """The archives (see library.py), made by that same Pyodide under Node unless up to date."""
    making = SITE / "making"
    scripts = [*(making / name for name in ("library.mjs", "library.py", "needed.py", "lighter.py", "runtime.py")),
               PRELUDE, *sorted(STUBS.rglob("*.py"))]  # fmt: skip
    sources = {"pycore": PYCORE, "pydyf": package_folder("pydyf"), "records": making / "records"}
    parts = {name: _lay_out(name) for name in sorted((*PARTS, *OURS))}
    stamp = stamps.hash_of_texts(
        stamps.hash_of_files([*scripts, SITE / "package-lock.json"], SITE),
        *(stamps.hash_of_files(stamps.files_under(folder), folder) for folder in (*sources.values(), *parts.values())),
    )
    archives, mark = WORKSHOP / "archives", WORKSHOP / "library-made-from"
    if stamps.read(mark) != stamp or not archives.exists():
        ensure_npm()
        shutil.rmtree(archives, ignore_errors=True)
        archives.mkdir()
        folders = {
            place: {name: str(folder) for name, folder in named.items()}
            for place, named in {"sources": sources, "parts": parts, "tools": {"making": making}}.items()
        }
        with step("compiling the library with Pyodide"):
            places = map(str, (scripts[0], PYODIDE, _standard_library(), making, archives))
            run(["node", *places, json.dumps(folders)], "Does every module of pycore import?")
        stamps.write(mark, stamp)
    return sorted(archives.glob("*.zip"))


def _standard_library() -> Path:
    """The archive of Pyodide's standard library, with our own modules in the place of what the page never uses, and the
    prelude before the first that Python reads."""
    ours = {path.relative_to(STUBS).as_posix(): path.read_bytes() for path in STUBS.rglob("*.py")}
    smaller = WORKSHOP / "standard.zip"
    with zipfile.ZipFile(PYODIDE / "python_stdlib.zip") as original, zipfile.ZipFile(smaller, "w") as archive:
        for name in original.namelist():
            before = PRELUDE.read_bytes() if name == FIRST_READ else b""
            archive.writestr(name, before + (ours.get(name) or original.read(name)))
    return smaller


def _lay_out(archive: str) -> Path:
    """Return a folder with the modules of one extra archive; each package gets an empty ``__init__.py``."""
    folder = WORKSHOP / "parts" / archive
    shutil.rmtree(folder, ignore_errors=True)
    for name in OURS.get(archive, ()):
        (folder / "pycore" / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(PYCORE / name, folder / "pycore" / name)
    for package, modules in PARTS.get(archive, {}).items():
        (folder / package).mkdir(parents=True)
        (folder / package / "__init__.py").write_text("", encoding="utf-8")
        for name in modules:
            shutil.copyfile(package_folder(package) / name, folder / package / name)
    return folder
