"""The whole build, in order: fonts, runtime, assets, pages; skipped when nothing that it reads has changed."""

import shutil
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from making import assets, stamps
from making.evidence import checks, files_of_cases
from making.paths import DIST, PYCORE, ROOT, SITE, WORKSHOP
from making.policy import CODES, LETTERS, NOT_FOUND, framers, headers_file
from making.progress import BuildError, say, step

if TYPE_CHECKING:
    from pycore.pages.study import Study

MADE = ("made.py", "made_fonts.py")


@dataclass(frozen=True)
class Choices:
    """What those who host the site say of it: the address that it will have; where faults of security are reported, and
    until which day that holds; which sites may frame the pages for embedding. "" for each that is not said."""

    base: str = ""
    contact: str = ""
    until: str = ""
    embed: str = ""


def build_site(choices: Choices = Choices(), folder: Path = DIST) -> Path:
    """Bring `folder` up to date and give its path."""
    ensure_lettering()
    stamp = stamps.hash_of_texts(_hash_of_sources(), repr(choices))
    mark = _mark_of(folder)
    if stamps.read(mark) == stamp and (folder / "index.html").exists():
        return folder
    with step("building the site"):
        fresh = WORKSHOP / "site"
        shutil.rmtree(fresh, ignore_errors=True)
        _write_site(fresh, choices)
        shutil.rmtree(folder, ignore_errors=True)
        shutil.move(fresh, folder)
    stamps.write(mark, stamp)
    return folder


def add_last_edition(folder: Path, last: Path) -> None:
    """Add to the built site what pages of the edition before it ask for (see `editions.add_last`).

    The next build begins anew, so that none takes these files for its own.
    """
    from making.editions import add_last

    if last.resolve() == folder.resolve():
        raise BuildError("--last: give a copy of what was published, not the folder that is built.")
    say(f"kept of the last edition: {add_last(folder, last)} files")
    _mark_of(folder).unlink(missing_ok=True)


def _mark_of(folder: Path) -> Path:
    """Where the stamp of the site in `folder` is kept."""
    return WORKSHOP / f"built-{stamps.hash_of_texts(str(folder))[:8]}"


def ensure_lettering() -> None:
    """Make the fonts and metrics of pycore.lettering and the web fonts, unless they are up to date."""
    lettering, web = PYCORE / "lettering", WORKSHOP / "fonts"
    sources = [SITE / "making" / "fonts.py", SITE / "making" / "webfonts.py", SITE / "package-lock.json"]
    stamp = stamps.hash_of_files(sources, SITE)
    files = [*(lettering / name for name in MADE), web / "fonts.css"]
    mark = WORKSHOP / "fonts-made-from"
    if stamps.read(mark) == stamp and all(path.exists() for path in files):
        return
    from making.fonts import write_lettering
    from making.webfonts import write_web_fonts

    with step("cutting the fonts"):
        write_lettering(lettering)
        write_web_fonts(web)
    stamps.write(mark, stamp)


def _hash_of_sources() -> str:
    """The hash of everything that the built site is made from."""
    files = [
        *stamps.files_under(PYCORE), *stamps.files_under(SITE), *files_of_cases(), ROOT / "pyproject.toml",
    ]  # fmt: skip
    return stamps.hash_of_files(files, ROOT)


def _write_site(folder: Path, choices: Choices) -> None:
    """Write the whole site into the new folder `folder`."""
    from making.codes import write_codes
    from making.contact import write_contact
    from making.editions import memory_name, write_edition
    from making.letters import write_letters
    from making.licences import licences_text
    from making.materials import BILL, bill_of_materials
    from making.pages import Places, pages_of_pycore, site_address, write_pages
    from making.runtime import write_library, write_runtime
    from making.study import study

    folder.mkdir(parents=True)
    prepared = WORKSHOP / "prepared"
    shutil.rmtree(prepared, ignore_errors=True)
    write_runtime(prepared / "py")
    runtime = assets.place_hashed(prepared / "py", folder / "py")
    write_library(prepared / "lib")
    library = assets.place_hashed(prepared / "lib", folder / "lib")
    numbers = study()
    loaded, imports = _write_assets(prepared / "a", folder / "a")
    scripts = [SITE / "js" / name for name in ("worker.js", "ahead.js", "memory.js", "part.js", "cold.js")]
    memory = memory_name(runtime, library, scripts)
    size = (runtime / "pyodide.asm.wasm").stat().st_size
    write_letters(prepared / LETTERS)
    letters = assets.place_hashed(prepared / LETTERS, folder / LETTERS)
    write_codes(prepared / CODES)
    codes = assets.place_hashed(prepared / CODES, folder / CODES)
    folders = (f"a/{loaded.name}/", f"py/{runtime.name}/", f"lib/{library.name}/", f"{LETTERS}/{letters.name}/")
    places = Places(*folders, site_address(choices.base), memory, size, imports, f"{CODES}/{codes.name}/")
    pages = [*pages_of_pycore(), *_read_pages(numbers, places.base)]
    framed = framers(choices.embed)
    slugs = write_pages(folder, places, pages, embedded=bool(framed))
    (folder / "licences.txt").write_text(licences_text(), encoding="utf-8", newline="\n")
    (folder / BILL).write_text(bill_of_materials(), encoding="utf-8", newline="\n")
    write_contact(folder, choices.contact, choices.until, places.base)
    (folder / "_headers").write_text(headers_file(slugs, framed), encoding="utf-8")
    write_edition(folder, places.assets, next(page for page in pages if not page.slug))


def _write_assets(prepared: Path, parent: Path) -> tuple[Path, dict[str, tuple[str, ...]]]:
    """Styles, scripts, fonts and icons, in a folder named for their contents; and what scripts import."""
    from making.bundles import write_bundles
    from making.icons import write_icons

    assets.copy_sources(WORKSHOP / "fonts", prepared / "fonts")
    imports = write_bundles(prepared)
    (prepared / "fonts" / "fonts.css").unlink()  # it stands in every style sheet now
    shutil.copyfile(SITE / "icon.svg", prepared / "icon.svg")
    write_icons(prepared / "icons")
    return assets.place_hashed(prepared, parent), imports


def _read_pages(numbers: "Study", base: str) -> list[Any]:
    """The pages that are read: the study's numbers in words, every outside check, and the one for lost addresses."""
    from pycore.calculators.registry import CALCULATORS
    from pycore.pages.checks import checks_page
    from pycore.pages.lesson_plans import lesson_pages
    from pycore.pages.readings import reading_pages
    from pycore.pages.study import study_page
    from pycore.render.reading import not_found_page, reading_page

    read = (*lesson_pages(CALCULATORS), *reading_pages(), study_page(numbers), checks_page(checks()))
    return [*(reading_page(page) for page in read), not_found_page(NOT_FOUND, base or "/")]
