"""Finding and running other programs: npm, a Chromium, ngspice, and apt where that is allowed."""

import os
import shutil
import subprocess
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path

from making.progress import BuildError, say, step

CHROMIUM_NAMES = (
    "chromium-headless-shell", "chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome",
    "msedge",
)  # fmt: skip
"""The one without windows first: the toolbar of a fresh window costs three to six times what its page does."""

CHROMIUM_PLACES = (
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "C:/Program Files/Google/Chrome/Application/chrome.exe",
    "C:/Program Files (x86)/Google/Chrome/Application/chrome.exe",
)
CHROMIUM_OPTIONS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
"""For a Chromium that measures and tests as root, and that asks nothing of other hosts by itself."""


def run(
    command: list[str],
    remedy: str,
    *,
    cwd: Path | None = None,
    env: Mapping[str, str] | None = None,
    timeout: float | None = None,
) -> str:
    """Run `command` and give back what it printed.

    Raises BuildError, with the end of the output and `remedy`, when it cannot be started or reports a failure.
    """
    try:
        done = subprocess.run(
            command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, cwd=cwd, env=env, timeout=timeout
        )
    except (OSError, subprocess.TimeoutExpired) as error:
        raise BuildError(f"{command[0]} did not run to its end ({error}).\n{remedy}") from error
    if done.returncode != 0:
        tail = "\n".join(line[:300] for line in done.stdout.splitlines()[-25:])
        raise BuildError(f"`{' '.join(command)}` failed with code {done.returncode}.\n{tail}\n{remedy}")
    return done.stdout


def root_on_debian() -> bool:
    """Whether Debian packages can be installed without asking anybody."""
    return hasattr(os, "geteuid") and os.geteuid() == 0 and shutil.which("apt-get") is not None


def apt_install(*packages: str) -> None:
    """Install Debian packages; only called as root on Debian."""
    remedy = f"Install by hand: apt-get install {' '.join(packages)}"
    environment = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    with step(f"installing {', '.join(packages)} with apt-get"):
        run(["apt-get", "update", "-qq"], remedy, env=environment)
        run(["apt-get", "install", "-y", "-qq", "--no-install-recommends", *packages], remedy, env=environment)


def find_chromium() -> Path | None:
    """A Chromium or Chrome that is there already: named in PHASOR_FOLIO_CHROMIUM, on PATH, or Playwright's own."""
    named = os.environ.get("PHASOR_FOLIO_CHROMIUM")
    if named:
        return Path(named)
    path = next(filter(None, map(shutil.which, CHROMIUM_NAMES)), None)
    if path is None:
        path = next((place for place in CHROMIUM_PLACES if Path(place).exists()), None)
    return Path(path) if path else _playwright_chromium()


def _playwright_chromium() -> Path | None:
    """The Chromium that Playwright has downloaded earlier, if it has and if it starts on this machine."""
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        return None
    with sync_playwright() as playwright:
        path = Path(playwright.chromium.executable_path)
    if not path.exists():
        return None
    starts = subprocess.run([str(path), "--version"], capture_output=True).returncode == 0
    return path if starts else None


def ensure_chromium(python: Path) -> Path:
    """A Chromium for the tests: one that is there, else Playwright's download, else Debian's package.

    Raises BuildError when none of the three gives one.
    """
    path = find_chromium()
    if path is None:
        say("… no Chromium or Chrome found: asking Playwright for its own")
        try:
            run([str(python), "-m", "playwright", "install", "chromium"], "", timeout=300)
        except BuildError:
            say("  Playwright could not download one")
        path = find_chromium()
    for package in ("chromium-headless-shell", "chromium"):  # the first is not in every Debian
        if path is None and root_on_debian():
            with suppress(BuildError):
                apt_install(package)
            path = find_chromium()
    if path is None:
        raise BuildError(
            "no Chromium or Chrome was found and none could be installed. Install one, or name one: "
            "PHASOR_FOLIO_CHROMIUM=/path/to/chromium python3 build.py test"
        )
    return path


def ensure_ngspice() -> Path | None:
    """The circuit simulator that re-derives stored values; on Debian it is installed when missing.

    Raises BuildError where CI is set and it is missing; elsewhere gives None after saying what is left out.
    """
    if shutil.which("ngspice") is None and root_on_debian():
        apt_install("ngspice")
    path = shutil.which("ngspice")
    if path is None and os.environ.get("CI"):
        raise BuildError("ngspice is missing and CI is set: install the Debian package ngspice.")
    if path is None:
        say("  left out: ngspice is not installed, so values stored from it are not re-derived")
    return Path(path) if path else None


def ensure_firefox() -> Path | None:
    """A second engine for the page's contracts; on Debian it is installed when missing.

    Raises BuildError where CI is set and it is missing; elsewhere gives None after saying what is left out.
    """
    names = ("firefox-esr", "firefox")
    if not any(map(shutil.which, names)) and root_on_debian():
        apt_install("firefox-esr")
    path = next(filter(None, map(shutil.which, names)), None)
    if path is None and os.environ.get("CI"):
        raise BuildError("Firefox is missing and CI is set: install the Debian package firefox-esr.")
    if path is None:
        say("  left out: Firefox is not installed, so the page is tried in Chromium alone")
    return Path(path) if path else None


def find_minibrowser() -> Path | None:
    """The small browser of WebKitGTK that its driver starts; it stands in a folder of the library's, not on PATH."""
    paths = (place for root in ("/usr/lib", "/usr/lib64", "/usr/libexec") for place in
             sorted(Path(root).glob("**/webkit2gtk-4.*/MiniBrowser")))  # fmt: skip
    return next(paths, None)


def ensure_webkit() -> Path | None:
    """A third engine, the nearest to a phone's WebKit; on Debian it is installed when missing, with a screen.

    Raises BuildError where CI is set and it is missing; elsewhere gives None after saying what is left out.
    """

    def browser() -> Path | None:
        return find_minibrowser() if shutil.which("WebKitWebDriver") and shutil.which("Xvfb") else None

    if browser() is None and root_on_debian():
        apt_install("webkit2gtk-driver", "xvfb")
    if browser() is None and os.environ.get("CI"):
        raise BuildError("WebKitGTK is missing and CI is set: install the Debian packages webkit2gtk-driver, xvfb.")
    if browser() is None:
        say("  left out: WebKitGTK is not installed, so the pages are not tried in it")
    return browser()


READERS = {
    "qpdf": "qpdf", "pdfinfo": "poppler-utils", "pdftotext": "poppler-utils", "rsvg-convert": "librsvg2-bin",
    "soffice": "libreoffice-calc-nogui",
}  # fmt: skip
"""Programs that read our files with other eyes, each with its Debian package."""


def ensure_readers() -> list[str]:
    """Programs that read our files beside those from the package index; on Debian they are installed when missing.

    Gives those that are missing all the same, after saying what is left out. Raises BuildError where CI is set.
    """
    absent = sorted({package for name, package in READERS.items() if shutil.which(name) is None})
    if absent and root_on_debian():
        apt_install(*absent)
    missing = [name for name in READERS if shutil.which(name) is None]
    if missing and os.environ.get("CI"):
        packages = ", ".join(sorted({READERS[name] for name in missing}))
        raise BuildError(f"{', '.join(missing)} missing and CI is set: install the Debian packages {packages}.")
    if missing:
        say(f"  left out: {', '.join(missing)} not installed, so files are not read by them")
    return missing
