"""The photographs in a PDF of scanned pages, found by the page's own script in files that other programs wrote."""

import base64
import io
import json
import subprocess
import zlib
from pathlib import Path

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
const found = await photographsIn(pdf);
const bytes = await Promise.all(found.map(async (one) => Buffer.from(await one.arrayBuffer()).toString("base64")));
console.log(JSON.stringify({ names: found.map(({ name }) => name), bytes }));
"""
READER = (ROOT / "site" / "js" / "pile-pdf.js").as_uri()


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


def found_in(data: bytes, folder: Path) -> list[Image.Image]:
    """The pictures that the script finds."""
    file = folder / "scan.pdf"
    file.write_bytes(data)
    command = ["node", "--input-type=module", "-e", FIND, READER, str(file)]
    done = subprocess.run(command, capture_output=True, text=True, check=True, timeout=120)
    reply = json.loads(done.stdout)
    assert [f"scan.pdf, page {number}" for number in range(1, len(reply["names"]) + 1)] == reply["names"]
    return [Image.open(io.BytesIO(base64.b64decode(one))) for one in reply["bytes"]]


@pytest.mark.parametrize("writer", [by_pillow, by_mupdf, packed_twice])
def test_every_scanned_page_is_found_in_its_order(writer, tmp_path: Path):
    found = found_in(writer(), tmp_path)
    assert [PAGE] * PAGES == [one.size for one in found]
    dark = [np.mean(np.asarray(one.convert("L")) < 100) for one in found]
    assert sorted(dark) == dark and dark[0] > 0.01


def protected() -> bytes:
    return by_mupdf(encryption=pymupdf.PDF_ENCRYPT_AES_256)


@pytest.mark.parametrize("writer", [fax, words_alone, protected, bytes])
def test_a_pdf_without_photographs_has_none(writer, tmp_path: Path):
    assert [] == found_in(writer(), tmp_path)
