"""Hosts that are not as they should be: types that they do not know, portals, old pages beside new scripts."""

import http.server
import shutil
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from browser.asking import SLUG, wait_until
from browser.kept import FRESH, READY, keeping
from making.editions import add_last
from playwright.sync_api import Browser, Page

from pycore.words import start

NOTICE = "document.querySelectorAll('[data-start-notice] p').length > 1"
LOGIN = b"<!doctype html><title>Log in</title><h1>Log in to the network</h1>"
FEW_TYPES = {".html": "text/html", ".js": "application/javascript", ".css": "text/css"}
NEW = "0123456789abcdef"
"""The folder of scripts and styles of a newer edition."""


class Host(http.server.SimpleHTTPRequestHandler):
    """Sends the files of a folder and no header that `_headers` asks for."""

    folder: Path
    nosniff = False

    def __init__(self, *arguments: object) -> None:
        super().__init__(*arguments, directory=str(self.folder))  # type: ignore[arg-type]

    def guess_type(self, path: str) -> str:  # type: ignore[override]
        return FEW_TYPES.get(Path(path).suffix, "application/octet-stream")

    def end_headers(self) -> None:
        if self.nosniff:
            self.send_header("X-Content-Type-Options", "nosniff")
        super().end_headers()

    def log_message(self, *_arguments: object) -> None:
        pass

    def give(self, body: bytes) -> None:
        self.send_response(200)
        self.send_header("Content-Type", "text/html")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)


@contextmanager
def hosted(kind: type[Host], place: Path, **more: object) -> Iterator[tuple[str, type[Host]]]:
    """The address of a host of this kind for a folder, and the host, which a test may change."""
    handler = type(kind.__name__, (kind,), {"folder": place, **more})
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}/", handler
    finally:
        server.shutdown()
        server.server_close()
        thread.join()


def runs(page: Page) -> None:
    """Python starts, and a typed value is answered."""
    wait_until(page, f"{READY} && {FRESH}", 60)
    page.fill("[name=i1]", "31.5")
    wait_until(page, f"{FRESH} && location.hash.includes('31.5')", 20)


class Latin(Host):
    """Says of every text that it is Latin-1, as some hosts are set up to do."""

    def guess_type(self, path: str) -> str:  # type: ignore[override]
        kind = super().guess_type(path)
        return f"{kind}; charset=iso-8859-1" if kind.startswith("text/") else kind


def test_signs_are_read_right_whatever_encoding_a_host_says(browser: Browser, dist: Path) -> None:
    """A degree sign was shown as two letters, and labels with a subscript as three."""
    with hosted(Latin, dist) as (address, _), keeping(browser, address, service_workers="block") as context:
        page = context.new_page()
        for name in (f"{SLUG}/", "practice/", ""):
            page.goto(address + name)
            assert "UTF-8" == page.evaluate("document.characterSet"), name
        page.goto(f"{address}{SLUG}/")
        runs(page)
        shown = page.inner_text("body")
        assert "°" in shown and "Â" not in shown and "â" not in shown


@pytest.mark.parametrize("nosniff", [False, True], ids=["guessing allowed", "guessing forbidden"])
def test_a_host_that_knows_three_types_of_files(browser: Browser, dist: Path, nosniff: bool) -> None:
    """WebAssembly, archives, fonts and the manifest are of no known type; nothing that runs ends in .mjs."""
    assert [] == list(dist.rglob("*.mjs"))
    with hosted(Host, dist, nosniff=nosniff) as (address, _), keeping(browser, address, faults=True) as context:
        page = context.new_page()
        page.goto(f"{address}{SLUG}/")
        runs(page)


class Portal(Host):
    """A network that asks to log in: until then each file but the page itself is the page to log in."""

    entered = False

    def do_GET(self) -> None:
        if self.entered or self.path.partition("?")[0].endswith("/"):
            super().do_GET()
        else:
            self.give(LOGIN)


def test_a_portal_is_left_by_loading_again(browser: Browser, dist: Path) -> None:
    with hosted(Portal, dist) as (address, portal), keeping(browser, address, faults=True) as context:
        page = context.new_page()
        page.goto(f"{address}{SLUG}/")
        wait_until(page, NOTICE, 20)
        assert start.RELOAD in page.inner_text("[data-start-notice]")
        portal.entered = True
        with page.expect_navigation():
            page.click("[data-start-again]")
        runs(page)


class OldPages(Host):
    """Something on the way keeps pages, and asks the host only if a browser insists."""

    old: Path

    def do_GET(self) -> None:
        insists = self.headers.get("Cache-Control", "") in ("no-cache", "max-age=0")
        if self.path.endswith("/") and not insists:
            self.give((self.old / self.path.lstrip("/") / "index.html").read_bytes())
        else:
            super().do_GET()


def newer(dist: Path, folder: Path) -> Path:
    """An edition of the site in which every address of a script and a style is another."""
    shutil.copytree(dist, folder)
    assets = next((folder / "a").iterdir())
    for path in [*folder.rglob("*.html"), folder / "service-worker.js"]:
        path.write_text(path.read_text("utf-8").replace(assets.name, NEW), encoding="utf-8")
    assets.rename(assets.with_name(NEW))
    return folder


def test_an_old_page_beside_new_scripts_says_so_and_loading_again_brings_the_new(
    browser: Browser, dist: Path, tmp_path: Path
) -> None:
    fresh = newer(dist, tmp_path / "fresh")
    with hosted(OldPages, fresh, old=dist) as (address, _), keeping(browser, address, faults=True) as context:
        page = context.new_page()
        page.goto(f"{address}{SLUG}/")
        wait_until(page, NOTICE, 20)
        with page.expect_navigation():
            page.click("[data-start-again]")
        runs(page)
        assert NEW in (page.get_attribute("html", "data-worker") or "")


def test_an_old_page_runs_where_the_last_editions_files_are_kept(browser: Browser, dist: Path, tmp_path: Path) -> None:
    fresh = newer(dist, tmp_path / "fresh")
    add_last(fresh, dist)
    with hosted(OldPages, fresh, old=dist) as (address, _), keeping(browser, address, faults=True) as context:
        page = context.new_page()
        page.goto(f"{address}{SLUG}/")
        runs(page)
        assert NEW not in (page.get_attribute("html", "data-worker") or "")
