"""What a pile takes beside photographs chosen at once: scans as PDF pages, and photographs taken one after another."""

import io
import zlib
from collections.abc import Callable

import pikepdf
import pytest
from browser.asking import wait_until
from browser.test_pile import PATIENCE, READ, pile, row
from PIL import Image
from piled import jpeg, learners, sheet
from playwright.sync_api import Page, expect

__all__ = ["pile"]
PHONE = {"width": 390, "height": 844}


def scan(pictures: list[Image.Image]) -> bytes:
    """Pages as a scanner's PDF has them: each one JPEG."""
    data = io.BytesIO()
    pictures[0].save(data, "PDF", save_all=True, append_images=pictures[1:], quality=90)
    return data.getvalue()


@pytest.fixture
def shots() -> list[Image.Image]:
    return [sheet(learner, number).picture for number, learner in enumerate(learners(0, 2), 1)]


def test_a_scan_becomes_its_pages_and_a_pdf_without_any_says_so(pile: Callable[..., Page], shots: list[Image.Image]):
    page = pile()
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    letter = io.BytesIO()
    Image.new("1", (1240, 1754), 1).save(letter, "PDF")
    page.set_input_files("#pile-choose", [
        {"name": "scan.pdf", "mimeType": "application/pdf", "buffer": scan(shots)},
        {"name": "fax.PDF", "mimeType": "", "buffer": letter.getvalue()},
    ])  # fmt: skip
    wait_until(page, READ.format(count=3), PATIENCE)
    assert "Learner 1" in row(page, 1) and "Learner 2" in row(page, 2)
    assert "No photograph was found in this PDF" in row(page, 3)
    names = page.evaluate("JSON.parse(localStorage.getItem('phasor-folio-pile')).rows.map(({ file }) => file)")
    assert ["scan.pdf, page 1", "scan.pdf, page 2", "fax.PDF"] == names
    assert [url for url in asked if "pile-pdf" in url]


def packed(data: bytes, changes: list[Callable[[bytes], bytes]]) -> bytes:
    """A scan whose JPEGs are compressed once more, and the compressed bytes of each page changed."""
    with pikepdf.open(io.BytesIO(data)) as document:
        for page, change in zip(document.pages, changes, strict=True):
            (picture,) = page.get_images().values()
            picture.write(
                change(zlib.compress(picture.read_raw_bytes())),
                filter=pikepdf.Array([pikepdf.Name.FlateDecode, pikepdf.Name.DCTDecode]),
            )
        saved = io.BytesIO()
        document.save(saved, compress_streams=False)
        return saved.getvalue()


def test_a_damaged_page_of_a_scan_costs_itself_alone(pile: Callable[..., Page], shots: list[Image.Image]):
    """A line's end behind a page's bytes is no damage."""
    page = pile()
    ended, cut = (lambda data: data + b"\r\n"), (lambda data: data[: len(data) // 2])
    page.set_input_files("#pile-choose", [
        {"name": "scan.pdf", "mimeType": "application/pdf", "buffer": packed(scan(shots), [ended, cut])},
        {"name": "cut.pdf", "mimeType": "application/pdf", "buffer": packed(scan(shots[:1]), [cut])},
        {"name": "b.jpg", "mimeType": "image/jpeg", "buffer": jpeg(shots[1])},
    ])  # fmt: skip
    wait_until(page, READ.format(count=4), PATIENCE)
    assert "Learner 1" in row(page, 1) and "Learner 2" in row(page, 4)
    assert "1 page of this PDF was not read" in row(page, 2)
    assert "No photograph was found in this PDF" in row(page, 3)


def test_another_scan_of_the_same_name_is_read_by_itself(
    pile: Callable[..., Page], shots: list[Image.Image], ready,
):  # fmt: skip
    """Scanners give their files the same name again; a row takes by its name only what it never opened."""
    page = pile()
    first, second = (
        {"name": "scan.pdf", "mimeType": "application/pdf", "buffer": scan([shot])} for shot in shots
    )  # fmt: skip
    page.set_input_files("#pile-choose", [first])
    wait_until(page, READ.format(count=1), PATIENCE)
    page.reload()
    ready(page)
    page.set_input_files("#pile-choose", [second])
    wait_until(page, READ.format(count=2), PATIENCE)
    assert "Learner 1" in row(page, 1) and "Learner 2" in row(page, 2)
    # The page was left before the first was opened, and in the middle of the second.
    page.evaluate("""() => {
        const pile = JSON.parse(localStorage.getItem("phasor-folio-pile"));
        const kept = (digest, at) => (at ? { digest } : {});
        pile.rows = pile.rows.map(({ id, file, digest }, at) => ({ id, file, state: "reading", ...kept(digest, at) }));
        localStorage.setItem("phasor-folio-pile", JSON.stringify(pile));
    }""")
    page.reload()
    ready(page)
    assert "could not be read" in row(page, 1) and "could not be read" in row(page, 2)
    page.set_input_files("#pile-choose", [second, first])
    expect(page.locator("table.pile tbody tr").nth(0)).to_contain_text("Learner 1", timeout=PATIENCE * 1000)
    wait_until(page, READ.format(count=2), PATIENCE)
    assert "Learner 2" in row(page, 2)


def test_photographs_are_taken_one_after_another_and_none_takes_the_row_of_another(
    pile: Callable[..., Page], shots: list[Image.Image], ready,
):  # fmt: skip
    """A phone may call each of them the same; what is chosen again is known by its content."""
    page = pile()
    page.set_viewport_size(PHONE)
    first, second = ({"name": "image.jpg", "mimeType": "image/jpeg", "buffer": jpeg(shot)} for shot in shots)
    expect(page.locator("label[for=pile-take]")).to_have_text("Take a photograph")
    page.set_input_files("#pile-take", [first])
    expect(page.locator("label[for=pile-take]")).to_have_text("Take the next photograph")
    wait_until(page, READ.format(count=1), PATIENCE)
    page.reload()
    ready(page)
    page.set_input_files("#pile-take", [second])
    wait_until(page, READ.format(count=2), PATIENCE)
    assert "Learner 1" in row(page, 1) and "Learner 2" in row(page, 2)
    page.set_input_files("#pile-choose", [{**first, "name": "renamed.jpg"}])
    page.locator("table.pile tbody tr").nth(0).locator("button").click()
    expect(page.locator("[data-picture]")).to_be_visible()
    expect(page.locator("table.pile tbody tr")).to_have_count(2)
