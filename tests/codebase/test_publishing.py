"""What a host is given beside the pages: headers, the page for lost addresses, the last edition's files."""

import json
import re
import shutil
import urllib.error
import urllib.request
from pathlib import Path

import pytest
from making.editions import add_last, files_of
from making.policy import EMBEDDED, HASHED, headers_file
from making.progress import BuildError

SLUG = "neutral-current"


def rules(text: str) -> dict[str, dict[str, str]]:
    """The headers that `_headers` gives, by address."""
    found: dict[str, dict[str, str]] = {}
    for line in text.splitlines():
        if line.startswith("/"):
            headers = found.setdefault(line, {})
        else:
            name, _, value = line.strip().partition(": ")
            headers[name] = value
    return found


def test_every_file_is_asked_for_anew_or_has_a_name_of_its_contents(dist: Path) -> None:
    """One rule of life for each address, none for two: hosts join what fits."""
    found = rules((dist / "_headers").read_text("utf-8"))
    lives = {address: headers["Cache-Control"] for address, headers in found.items() if "Cache-Control" in headers}
    hashed = {f"/{folder}/*" for folder in HASHED}
    assert {"public, max-age=31536000, immutable"} == {lives.pop(address) for address in hashed}
    pages = {f"/{name}" for name in files_of(dist) if name == "" or name.endswith("/")}
    assert pages | {"/service-worker.js", "/manifest.webmanifest"} == set(lives)
    assert {"no-cache"} == set(lives.values())
    assert len(found) < 100, "some hosts read no more rules"


def test_what_browsers_lend_is_refused_and_no_address_is_passed_on(dist: Path) -> None:
    common = rules(headers_file([]))["/*"]
    assert "microphone=(), " in common["Permissions-Policy"]
    assert "no-referrer" == common["Referrer-Policy"]
    pages = {path: path.read_text("utf-8") for path in dist.rglob("*.html")}
    assert len(pages) > 20
    assert [] == [path for path, page in pages.items() if '<meta name="referrer" content="no-referrer">' not in page]


def test_one_page_may_ask_for_the_camera_and_none_that_is_framed(dist: Path, site: str) -> None:
    """Hosts join two rules for one address or take the second: either way all is said."""
    found = rules(headers_file(["", "photographs", SLUG, f"{EMBEDDED}{SLUG}"], "*"))
    common, every = (found[one]["Permissions-Policy"] for one in ("/*", "/"))
    assert "camera" not in common and every == f"camera=(), {common}"
    allowed = [one for one in found if one.endswith("/") and "camera=()" not in found[one]["Permissions-Policy"]]
    assert ["/photographs/"] == allowed
    assert common == found["/photographs/"]["Permissions-Policy"]
    assert {"/photographs/"} == {
        one for one, headers in rules((dist / "_headers").read_text("utf-8")).items()
        if one.endswith("/") and "camera=()" not in headers["Permissions-Policy"]
    }  # fmt: skip
    for address, wanted in (("photographs/", common), ("photographs/?a", common), ("", every), (f"{SLUG}/", every)):
        with urllib.request.urlopen(site + address) as response:
            assert [wanted] == response.headers.get_all("Permissions-Policy")


def test_an_address_without_a_page_gets_the_sites_own(site: str) -> None:
    for address in ("no-such-page/", "deep/below/nothing.html"):
        with pytest.raises(urllib.error.HTTPError) as caught:
            urllib.request.urlopen(site + address)
        text = caught.value.read().decode()
        assert (404, "text/html; charset=utf-8") == (caught.value.code, caught.value.headers["Content-Type"])
        assert "There is no page here" in text
        # It may stand where another site begins: nothing of that is started.
        assert "<script " not in text
        # From whatever depth, its links and files are found.
        addresses = re.findall(r'(?:href|src|data-edition)="([^"#]*)"', text)
        assert len(addresses) > 20
        assert [] == [one for one in addresses if not one.startswith("/")]
        for one in sorted(set(addresses)):
            with urllib.request.urlopen(site.rstrip("/") + one) as response:
                assert 200 == response.status


@pytest.fixture
def editions(dist: Path, tmp_path: Path) -> tuple[Path, Path]:
    """Two editions of the site: what was published last, with a file of the one before it, and a new one."""
    last, fresh = tmp_path / "last", tmp_path / "fresh"
    for folder in (last, fresh):
        shutil.copytree(dist, folder)
    assets = next((fresh / "a").iterdir())
    assets.rename(assets.with_name("0123456789abcdef"))
    (last / "a" / "fedcba9876543210").mkdir()
    (last / "a" / "fedcba9876543210" / "old.js").write_text("old", "utf-8")
    script = next(last.glob("a/*/js/sheet.js"))
    script.with_name("sheet.js.br").write_bytes(b"packed")
    return last, fresh


def test_the_last_editions_files_can_stay_beside_the_new(editions: tuple[Path, Path]) -> None:
    """All that its pages ask for, packed copies too; nothing of what it kept itself, and no page."""
    last, fresh = editions
    before = {path.relative_to(fresh).as_posix() for path in fresh.rglob("*") if path.is_file()}
    kept = add_last(fresh, last)
    added = {path.relative_to(fresh).as_posix() for path in fresh.rglob("*") if path.is_file()} - before
    head = (last / "service-worker.js").read_text("utf-8").split(";\n")[0]
    listed = json.loads(head.removeprefix("const EDITION = "))["files"]
    wanted = {name for name in listed if name.startswith("a/")}
    assert wanted | {f"{name}.br" for name in wanted if name.endswith("/js/sheet.js")} == added
    assert len(wanted) == kept > 20
    assert 0 == add_last(fresh, last)


def test_a_folder_without_an_edition_is_refused(tmp_path: Path, editions: tuple[Path, Path]) -> None:
    with pytest.raises(BuildError, match="as it was published last"):
        add_last(editions[1], tmp_path)
