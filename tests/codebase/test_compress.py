"""Compressed copies: the same bytes once unpacked, never larger, sent to browsers that take them and to no others."""

import gzip
import http.client
import shutil
import urllib.parse
from pathlib import Path

import brotli
import pytest
from making.compress import SHRINKS, compress_site
from making.editions import files_of
from making.serve import serving


@pytest.fixture(scope="module")
def packed(dist: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site's pages, styles and scripts with their copies; the runtime takes minutes and is left out."""
    folder = tmp_path_factory.mktemp("packed") / "site"
    shutil.copytree(dist, folder, ignore=shutil.ignore_patterns("*.wasm", "*.zip", "*.asm.js"))
    compress_site(folder)
    return folder


def test_every_copy_unpacks_to_its_file_and_is_smaller(packed: Path):
    unpack = {".br": brotli.decompress, ".gz": gzip.decompress}
    copies = [path for path in packed.rglob("*") if path.suffix in unpack]
    assert len(copies) > 60
    for copy in copies:
        original = copy.with_suffix("").read_bytes()
        assert original == unpack[copy.suffix](copy.read_bytes()), copy
        assert copy.stat().st_size < len(original), copy


def test_every_page_and_script_has_its_copies(packed: Path):
    large = [path for path in packed.rglob("*") if path.suffix in SHRINKS and path.stat().st_size > 500]
    lacking = [path.name for path in large for ending in (".br", ".gz") if not Path(f"{path}{ending}").exists()]
    assert [] == lacking


def test_copies_are_no_part_of_the_edition(packed: Path):
    """A browser asks for the file and is given the copy: it never asks for the copy."""
    assert [] == [name for name in files_of(packed) if name.endswith((".br", ".gz"))]


@pytest.mark.parametrize(("taken", "sent"), [("gzip, br;q=1", "br"), ("gzip", "gzip"), ("identity", None)])
def test_the_server_sends_what_the_browser_takes(packed: Path, taken: str, sent: str | None):
    expected = (packed / "neutral-current" / "index.html").read_bytes()
    with serving(packed) as address:
        connection = http.client.HTTPConnection(urllib.parse.urlsplit(address).netloc)
        connection.request("GET", "/neutral-current/", headers={"Accept-Encoding": taken})
        response = connection.getresponse()
        body = response.read()
        connection.close()
    told = (response.headers["Content-Type"], response.headers["Content-Encoding"])
    assert ("text/html; charset=utf-8", sent) == told
    unpack = {"br": brotli.decompress, "gzip": gzip.decompress, None: bytes}
    assert expected == unpack[sent](body)
