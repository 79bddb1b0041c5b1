"""The whole build, in order: fonts, runtime, assets, pages; skipped when nothing that it reads has changed."""

import shutil
from pathlib import Path
from typing import TYPE_CHECKING, Any

from making import assets, stamps
from making.evidence import checks, files_of_cases
from making.paths import DIST, NODE_MODULES, PYCORE, ROOT, SITE, WORKSHOP
from making.policy import headers_file
from making.progress import step

if TYPE_CHECKING:
    from pycore.pages.study import Study

MADE = ("made.py", "made_fonts.py")
FONT_PACKAGES = NODE_MODULES / "@fontsource-variable"
LICENCES = {
    "Phasor Folio": SITE / "LICENSE.txt",
    "Ysabeau Office, the lettering": FONT_PACKAGES / "ysabeau-office" / "LICENSE",
    "STIX Two Text, the letters of quantities": FONT_PACKAGES / "stix-two-text" / "LICENSE",
    "Noto Sans Math, the signs of formulas": NODE_MODULES / "@fontsource" / "noto-sans-math" / "LICENSE",
    "morphdom, which changes a page where it stands": NODE_MODULES / "morphdom" / "LICENSE",
    "Pyodide, which runs Python in the browser": SITE / "licences" / "pyodide.txt",
    "Python and its standard library": SITE / "licences" / "python.txt",
    "pydyf, which writes PDF": SITE / "licences" / "pydyf.txt",
    "segno, which makes QR codes": SITE / "licences" / "segno.txt",
}


def build_site(base: str = "", folder: Path = DIST) -> Path:
    """Bring `folder` up to date and give its path; `base` is the address that the site will have, or ""."""
    ensure_lettering()
    stamp = stamps.hash_of_texts(_hash_of_sources(), base)
    mark = WORKSHOP / f"built-{stamps.hash_of_texts(str(folder))[:8]}"
    if stamps.read(mark) == stamp and (folder / "index.html").exists():
        return folder
    with step("building the site"):
        fresh = WORKSHOP / "site"
        shutil.rmtree(fresh, ignore_errors=True)
        _write_site(fresh, base)
        shutil.rmtree(folder, ignore_errors=True)
        shutil.move(fresh, folder)
    stamps.write(mark, stamp)
    return folder


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


def _write_site(folder: Path, base: str) -> None:
    """Write the whole site into the new folder `folder`."""
    from making.editions import memory_name, write_edition
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
    folders = (f"a/{loaded.name}/", f"py/{runtime.name}/", f"lib/{library.name}/")
    places = Places(*folders, site_address(base), memory, size, imports)
    pages = [*pages_of_pycore(), *_read_pages(numbers)]
    write_pages(folder, places, pages)
    (folder / "licences.txt").write_text(licences_text(), encoding="utf-8", newline="\n")
    (folder / "_headers").write_text(headers_file(), encoding="utf-8")
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


def _read_pages(numbers: "Study") -> list[Any]:
    """The pages that are read: the study's numbers in words, and every outside check."""
    from pycore.calculators.registry import CALCULATORS
    from pycore.pages.checks import checks_page
    from pycore.pages.lesson_plans import lesson_pages
    from pycore.pages.readings import reading_pages
    from pycore.pages.study import study_page
    from pycore.render.reading import reading_page

    read = (*lesson_pages(CALCULATORS), *reading_pages(), study_page(numbers), checks_page(checks()))
    return [reading_page(page) for page in read]


def licences_text() -> str:
    """The licence of the site and of everything that it carries, one after another."""
    texts = {title: source.read_text("utf-8").strip() for title, source in LICENCES.items()}
    return "\n\n\n".join(f"{title}\n{'=' * len(title)}\n\n{text}" for title, text in texts.items()) + "\n"
