"""The photographs in a PDF of scanned pages, found by the page's own script in files that other programs wrote."""

import base64
import io
import json
import subprocess
import zlib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import pikepdf
import pymupdf
import pytest
from making.paths import ROOT
from PIL import Image

PAGES, PAGE = 3, (1240, 1754)
FIND = """
import { readFileSync } from "node:fs";
const { photographsIn } = await import(process.argv[1]);
const pdf = new File([readFileSync(process.argv[2])], "scan.pdf");
const { found, unread } = await photographsIn(pdf);
const bytes = await Promise.all(found.map(async (one) => Buffer.from(await one.arrayBuffer()).toString("base64")));
console.log(JSON.stringify({ names: found.map(({ name }) => name), bytes, unread }));
"""
SCRIPTS = ROOT / "site" / "js"
CHOOSE = """
globalThis.reportError = () => {};
const { photographsOf } = await import(process.argv[1]);
const lost = new File(["%PDF-1.7"], "lost.pdf");
lost.arrayBuffer = () => Promise.reject(new Error("the file is gone"));
const all = await photographsOf([lost, new File(["a photograph"], "a.jpg")]);
console.log(JSON.stringify(all.map(({ file }) => file.name)));
"""
ROWS = """
const { rowOfFile } = await import(process.argv[1]);
const file = new File(["a new photograph"], "scan.pdf, page 1");
const named = { id: "named", file: file.name, state: "fault" };
const found = [[{ ...named, digest: "another" }], [{ ...named, digest: "another" }, named], []];
const ids = await Promise.all(found.map(async (rows) => (await rowOfFile(rows, file, false))?.id ?? ""));
console.log(JSON.stringify([...ids, (await rowOfFile([named], file, true))?.id ?? ""]));
"""


def page(number: int) -> Image.Image:
    """A page with as many squares as its number."""
    paper = np.full((*reversed(PAGE), 3), 235, np.uint8)
    for k in range(number):
        paper[200:400, 100 + 300 * k : 300 + 300 * k] = 30
    return Image.fromarray(paper)


def jpeg(picture: Image.Image) -> bytes:
    data = io.BytesIO()
    picture.save(data, "JPEG", quality=80)
    return data.getvalue()


def by_pillow() -> bytes:
    data = io.BytesIO()
    first, *others = map(page, range(1, PAGES + 1))
    first.save(data, "PDF", save_all=True, append_images=others)
    return data.getvalue()


def by_mupdf(**choices: object) -> bytes:
    """With a letterhead and words on each page, and objects in compressed streams."""
    document = pymupdf.open()
    for number in range(1, PAGES + 1):
        sheet = document.new_page(width=595, height=842)
        sheet.insert_image(sheet.rect, stream=jpeg(page(number)))
        sheet.insert_image(pymupdf.Rect(10, 10, 60, 60), stream=jpeg(page(0).resize((120, 120))))
        sheet.insert_text((50, 50), "endstream obj /Subtype /Image /DCTDecode")
    return document.tobytes(garbage=4, deflate=True, use_objstms=1, **choices)


def packed_twice() -> bytes:
    """JPEGs that are compressed once more, as some scanners do."""
    with pikepdf.open(io.BytesIO(by_pillow())) as document:
        for sheet in document.pages:
            (picture,) = sheet.get_images().values()
            picture.write(
                zlib.compress(picture.read_raw_bytes()),
                filter=pikepdf.Array([pikepdf.Name.FlateDecode, pikepdf.Name.DCTDecode]),
            )
        data = io.BytesIO()
        document.save(data, compress_streams=False)
        return data.getvalue()


def fax() -> bytes:
    data = io.BytesIO()
    page(2).convert("1").save(data, "PDF")
    return data.getvalue()


def words_alone() -> bytes:
    document = pymupdf.open()
    document.new_page().insert_text((50, 50), "only words")
    return document.tobytes()


def run(script: str, module: str, *arguments: str) -> Any:
    """What a script prints that imports one of the page's modules."""
    command = ["node", "--input-type=module", "-e", script, (SCRIPTS / module).as_uri(), *arguments]
    return json.loads(subprocess.run(command, capture_output=True, text=True, check=True, timeout=120).stdout)


def read_in(data: bytes, folder: Path) -> Any:
    """What the script finds: the names of the pictures, their bytes, and how many pages it does not read."""
    file = folder / "scan.pdf"
    file.write_bytes(data)
    return run(FIND, "pile-pdf.js", str(file))


def found_in(data: bytes, folder: Path) -> list[Image.Image]:
    """The pictures that the script finds in a PDF of which it reads every page."""
    reply = read_in(data, folder)
    assert [f"scan.pdf, page {number}" for number in range(1, len(reply["names"]) + 1)] == reply["names"]
    assert 0 == reply["unread"]
    return [Image.open(io.BytesIO(base64.b64decode(one))) for one in reply["bytes"]]


def with_masks() -> bytes:
    """Photographs of which each has a mask as large as the page, and black letters upon it."""
    with pikepdf.open(io.BytesIO(by_pillow())) as document:
        size = {"Subtype": pikepdf.Name.Image, "Width": PAGE[0], "Height": PAGE[1]}
        for sheet in document.pages:
            (picture,) = sheet.get_images().values()
            white, black = b"\xff" * PAGE[0] * PAGE[1], bytes((PAGE[0] + 7) // 8 * PAGE[1])
            picture.SMask = document.make_stream(white, ColorSpace=pikepdf.Name.DeviceGray, BitsPerComponent=8, **size)
            letters = document.make_stream(black, ImageMask=True, BitsPerComponent=1, **size)
            sheet.Resources.XObject[pikepdf.Name.Letters] = letters
        data = io.BytesIO()
        document.save(data, object_stream_mode=pikepdf.ObjectStreamMode.disable)
        return data.getvalue()


@pytest.mark.parametrize("writer", [by_pillow, by_mupdf, packed_twice, with_masks])
def test_every_scanned_page_is_found_in_its_order(writer, tmp_path: Path):
    found = found_in(writer(), tmp_path)
    assert [PAGE] * PAGES == [one.size for one in found]
    dark = [np.mean(np.asarray(one.convert("L")) < 100) for one in found]
    assert sorted(dark) == dark and dark[0] > 0.01


def protected() -> bytes:
    return by_mupdf(encryption=pymupdf.PDF_ENCRYPT_AES_256)


@pytest.mark.parametrize(("writer", "unread"), [(fax, 1), (words_alone, 0), (protected, 0), (bytes, 0)])
def test_a_pdf_without_photographs_has_none(writer: Callable[[], bytes], unread: int, tmp_path: Path):
    reply = read_in(writer(), tmp_path)
    assert ([], unread) == (reply["names"], reply["unread"])


def changed_second(change: Callable[[pikepdf.Object], None], data: bytes) -> bytes:
    """A PDF in which the second page's picture is another."""
    with pikepdf.open(io.BytesIO(data)) as document:
        (picture,) = document.pages[1].get_images().values()
        change(picture)
        saved = io.BytesIO()
        document.save(saved, compress_streams=False, object_stream_mode=pikepdf.ObjectStreamMode.disable)
        return saved.getvalue()


def damage(picture: pikepdf.Object) -> None:
    raw = picture.read_raw_bytes()
    picture.write(raw[: len(raw) // 2], filter=picture.Filter)


def make_stencil(picture: pikepdf.Object) -> None:
    del picture.ColorSpace
    picture.ImageMask, picture.BitsPerComponent = True, 1
    picture.write(zlib.compress(bytes((PAGE[0] + 7) // 8 * PAGE[1])), filter=pikepdf.Name.FlateDecode)


def damaged_page() -> bytes:
    return changed_second(damage, packed_twice())


def stencil_page() -> bytes:
    return changed_second(make_stencil, by_pillow())


def black_and_white_page() -> bytes:
    data = io.BytesIO()
    first, second, third = map(page, range(1, PAGES + 1))
    first.save(data, "PDF", save_all=True, append_images=[second.convert("1"), third])
    return data.getvalue()


@pytest.mark.parametrize(("writer", "numbers"), [
    (black_and_white_page, (1, 3)), (damaged_page, (1, 3)), (stencil_page, (1, 2)),
])  # fmt: skip
def test_a_page_that_is_not_read_is_counted_and_costs_no_other(
    writer: Callable[[], bytes], numbers: tuple[int, ...], tmp_path: Path
):
    """A stencil may belong to any page: it takes no number."""
    reply = read_in(writer(), tmp_path)
    assert ([f"scan.pdf, page {number}" for number in numbers], 1) == (reply["names"], reply["unread"])


def test_a_pdf_that_cannot_be_opened_costs_no_other_file():
    assert ["lost.pdf", "a.jpg"] == run(CHOOSE, "pile-drop.js")


def test_a_file_takes_by_its_name_only_a_row_whose_photograph_was_never_opened():
    assert ["", "named", "", ""] == run(ROWS, "pile-drop.js")
