"""What strangers, hosts and short memory do to the pages, tried often: a table of what was tried and what went wrong.

`python -m bench.attacks [links|kills|hosts ...]` with tests/, site/ and the project on the path. The whole run of the
tests holds smaller numbers of the same (test_fuzz, test_faults, test_hosts).
"""

import http.server
import math
import random
import sys
import tempfile
import time
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from types import MappingProxyType
from typing import Any

from browser.asking import SLUG, neutral, result, wait_until
from browser.hostile import fragment
from browser.kept import FRESH, READY, SOON
from browser.test_faults import kill
from browser.test_fuzz import OPEN
from browser.test_hosts import Host, hosted, runs
from making.paths import DIST
from making.programs import CHROMIUM_OPTIONS, find_chromium
from making.serve import serving
from playwright.sync_api import Browser, Error, sync_playwright

from pycore.calculators.registry import CALCULATORS

LINKS, KILLS, BATCH = 2000, 60, 50
SEED = 20261130
ACTIONS = ("", "[data-action=pdf]", "[data-action=lesson]", "[data-action=share]")
"""What is pressed just before Python is ended; nothing: it is ended in mid calculation."""

Found = tuple[int, list[str]]
"""How many were tried, and what went wrong."""


def links(browser: Browser) -> Found:
    """Malformed links on the page of every calculator: each is answered, refused in words, or opens the example."""
    faults: list[str] = []
    each = math.ceil(LINKS / len(CALCULATORS))
    with serving(DIST) as site:
        for place, slug in enumerate(CALCULATORS):
            page = browser.new_page(service_workers="block")
            page.on("pageerror", lambda error: faults.append(f"uncaught: {error}"))
            page.goto(f"{site}{slug}/")
            wait_until(page, f"{READY} && {FRESH}", 90)
            for start in range(place * each, (place + 1) * each, BATCH):
                batch = [[number, fragment(number)] for number in range(start, min(start + BATCH, (place + 1) * each))]
                faults.extend(f"{slug} {number}: {what}" for number, what in page.evaluate(OPEN, batch))
            page.close()
    return each * len(CALCULATORS), faults


def kills(browser: Browser) -> Found:
    """Python ended at a random moment of a start, a calculation, a PDF, a lesson, a share: an edit is answered."""
    faults: list[str] = []
    rng = random.Random(SEED)
    with serving(DIST) as site:
        page = browser.new_page(service_workers="block")
        page.add_init_script(SOON)
        page.goto(f"{site}{SLUG}/")
        wait_until(page, f"{READY} && {FRESH}", 90)
        for death in range(KILLS):
            value = f"{20 + death}.5"
            try:
                if death % 10 == 9:
                    page.goto(f"{site}{SLUG}/?{death}", wait_until="commit")
                    time.sleep(0.5)
                else:
                    action = rng.choice(ACTIONS)
                    if action:
                        page.evaluate("(one) => document.querySelector(one).click()", action)
                    page.evaluate("(at) => new Promise((then) => setTimeout(then, at))", rng.randrange(400))
                if page.workers:
                    kill(page)
                page.evaluate("document.querySelectorAll('dialog[open]').forEach((one) => one.close())")
                wait_until(page, "!document.querySelector('[name=i1]').disabled", 30)
                page.evaluate(
                    "(text) => { const field = document.querySelector('[name=i1]'); field.value = text;"
                    "field.dispatchEvent(new Event('input', { bubbles: true })); }", value,
                )  # fmt: skip
                wait_until(page, f"{READY} && {FRESH} && location.hash.includes('{value}')", 90)
                if not math.isclose(neutral(float(value), 11.2, 24.6), result(page), rel_tol=1e-11):
                    faults.append(f"death {death}: {result(page)} for {value}")
                if page.input_value("[name=i1]") != value:
                    faults.append(f"death {death}: {value} was lost")
            except (AssertionError, Error) as error:
                faults.append(f"death {death}: {error}".splitlines()[0])
        page.close()
    return KILLS, faults


class Odd(Host):
    """A host that sends what `_headers` does not ask for, or leaves out what it should send."""

    headers_sent: Mapping[str, str] = MappingProxyType({})
    types: Mapping[str, str] = MappingProxyType({})
    gone: tuple[str, ...] = ()
    first_fails: tuple[str, ...] = ()
    failed: set[str]
    before_end = b""
    unsized = False
    slow = 0.0

    def guess_type(self, path: str) -> str:
        return self.types.get(Path(path).suffix) or http.server.SimpleHTTPRequestHandler.guess_type(self, path)

    def end_headers(self) -> None:
        for name, value in self.headers_sent.items():
            self.send_header(name, value)
        super().end_headers()

    def send_header(self, keyword: str, value: str) -> None:
        if not (self.unsized and keyword == "Content-Length"):
            super().send_header(keyword, value)

    def do_GET(self) -> None:
        name = self.path.partition("?")[0].rpartition("/")[2]
        if name in self.gone:
            self.send_error(404)
        elif name in self.first_fails and name not in self.failed:
            self.failed.add(name)
            self.send_error(503)
        elif self.before_end and self.path.endswith("/"):
            place = Path(self.translate_path(self.path)) / "index.html"
            self.give(place.read_bytes().replace(b"</body>", self.before_end + b"</body>"))
        else:
            time.sleep(self.slow)
            super().do_GET()


class Redirecting(Odd):
    """A host whose folders have a name."""

    def do_GET(self) -> None:
        if self.path.endswith("/"):
            self.send_response(301)
            self.send_header("Location", f"{self.path}index.html")
            self.send_header("Content-Length", "0")
            self.end_headers()
        else:
            super().do_GET()


YEAR = {"Cache-Control": "public, max-age=31536000, immutable"}
HOSTS: dict[str, dict[str, Any]] = {
    "no header that the site asks for": {},
    "everything kept for a year": {"headers_sent": YEAR},
    "nothing kept": {"headers_sent": {"Cache-Control": "no-store"}},
    "a sub-path": {"under": "college/tools/phasors"},
    "a sub-path with a space and an umlaut": {"under": "a b/ü"},
    "no length of any file": {"unsized": True},
    "slow with every file": {"slow": 0.15},
    "Latin-1 said of every page": {"types": {".html": "text/html; charset=iso-8859-1"}},
    "WebAssembly as bytes": {"types": {".wasm": "application/octet-stream"}},
    "archives as text": {"types": {".zip": "text/plain", ".wasm": "text/plain"}},
    "no type of fonts": {"types": {".woff2": "application/octet-stream"}},
    "pages of their own origin alone": {"headers_sent": {"Cross-Origin-Opener-Policy": "same-origin",
                                                         "Cross-Origin-Embedder-Policy": "require-corp"}},
    "no frames, no referrers": {"headers_sent": {"X-Frame-Options": "DENY", "Referrer-Policy": "no-referrer"}},
    "no camera, no sensors": {"headers_sent": {"Permissions-Policy": "camera=(), fullscreen=(), accelerometer=()"}},
    "a stricter policy that still allows WebAssembly": {"headers_sent": {
        "Content-Security-Policy": "default-src 'self' blob: data:; style-src 'self' 'unsafe-inline'; "
                                   "script-src 'self' 'wasm-unsafe-eval' 'unsafe-inline'"}},
    "a policy that only reports": {"headers_sent": {"Content-Security-Policy-Report-Only": "default-src 'none'"}},
    "cookies with every file": {"headers_sent": {"Set-Cookie": "portal=1; Path=/"}},
    "no service worker": {"gone": ("service-worker.js",)},
    "no icon and no list of materials": {"gone": ("bom.json", "favicon.ico", "manifest.webmanifest")},
    "no WebAssembly at the first request": {"first_fails": ("pyodide.asm.wasm",)},
    "no library at the first request": {"first_fails": ("library.zip",)},
    "no data at the first request": {"first_fails": ("pyodide.warm.wasm", "later.zip")},
    "a script put in by a proxy": {"before_end": b"<script>window.proxied = 1</script>"},
    "an advertisement put in by a proxy": {"before_end": b"<div style='position:fixed;bottom:0'>Wifi</div>"},
    "folders that lead to their page": {"kind": Redirecting},
}  # fmt: skip


@contextmanager
def _placed(under: str) -> Iterator[Path]:
    """A folder to serve, in which the site stands below a path."""
    if not under:
        yield DIST
        return
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder) / under
        place.parent.mkdir(parents=True)
        place.symlink_to(DIST, target_is_directory=True)
        yield Path(folder)


def hosts(browser: Browser) -> Found:
    """Hosts that are not as they should be: Python starts, and a typed value is answered, at two visits."""
    faults: list[str] = []
    for name, options in HOSTS.items():
        under, kind = options.get("under", ""), options.get("kind", Odd)
        more = {key: value for key, value in options.items() if key not in ("under", "kind")}
        with _placed(under) as place, hosted(kind, place, failed=set(), **more) as (address, _):
            context = browser.new_context()
            try:
                for _visit in range(2):
                    page = context.new_page()
                    page.goto(f"{address}{f'{under}/' if under else ''}{SLUG}/")
                    runs(page)
                    if "Â°" in page.inner_text("body"):
                        raise AssertionError("letters are misread")
                    page.close()
            except (AssertionError, Error) as error:
                faults.append(f"{name}: {error}".splitlines()[0])
            context.close()
    return len(HOSTS), faults


ATTACKS: dict[str, Callable[[Browser], Found]] = {"links": links, "kills": kills, "hosts": hosts}


def main(names: list[str]) -> int:
    """Try the named attacks, or all; gives 1 where anything went wrong."""
    path = find_chromium()
    wrong = 0
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=str(path), args=CHROMIUM_OPTIONS)
        for name in names or ATTACKS:
            tried, faults = ATTACKS[name](browser)
            print(f"{name}: {tried} tried, {len(faults)} faults", *faults, sep="\n  ", flush=True)
            wrong += len(faults)
        browser.close()
    return int(wrong > 0)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
