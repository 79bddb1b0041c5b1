"""A document as tagged PDF 1.7: exact size, searchable text, equal drawings in equal bytes.

One matrix at the start of each page turns mm into points, so all numbers after it are mm. Sources: ISO 32000-1 (PDF
1.7), sections 8 (graphics), 9 (text), 12.2 (viewer preferences); pdf_structure.py has the tags.
"""

from typing import TYPE_CHECKING

import pydyf

from pycore.drawing import Document, Page
from pycore.geometry import Point
from pycore.lettering.subset import subset
from pycore.writers import pdf_fonts
from pycore.writers.numbers import factor
from pycore.writers.parts import clean
from pycore.writers.pdf_content import FONT_NAMES, MITRE_LIMIT, Content, Shown, Used
from pycore.writers.pdf_file import FileBody, compressed
from pycore.writers.pdf_structure import Structure

if TYPE_CHECKING:
    from pycore.writers.pdf_letters import LetterFonts

POINTS_PER_MM = 72.0 / 25.4
UNCORRECTED = Point(1.0, 1.0)



class Writer:
    """A PDF file made page by page, so that the drawings of a long one are never all in memory.

    ``correction`` stretches every page about its centre, horizontally and vertically, against a printer that shrinks or
    stretches; 1 and 1 leave every length unchanged.
    """

    def __init__(self, *, correction: Point = UNCORRECTED) -> None:
        self._pdf = pydyf.PDF()
        self._used: Used = {}
        self._noted: dict[Shown, None] = {}
        self._letters: LetterFonts | None = None
        self._fonts = pydyf.Dictionary()
        self._pdf.add_object(self._fonts)  # filled at the end, when all resources but the usual ones are written
        self._resources = pydyf.Dictionary({"Font": self._fonts.reference})
        self._pdf.add_object(self._resources)
        self._pictures = pydyf.Dictionary()  # of the page that is written
        self._correction = correction
        self._structure = Structure(self._pdf)
        self._body = FileBody(self._pdf)
        self._parts: dict[int, list[tuple[bytes, int]]] = {}

    def add(self, page: Page, section: int = 0) -> None:
        """Write a page; in the file, pages of a lower ``section`` come before those of a higher one.

        Raises DrawingError for NaN and infinities, and ValueError for a character that a face lacks.
        """
        width, height = page.width * POINTS_PER_MM, page.height * POINTS_PER_MM
        across, up = self._correction
        self._pictures = pydyf.Dictionary()
        first = len(self._pdf.objects)
        content = Content(self._used, self._noted, self._letter_fonts, self._picture)
        content.set_matrix(
            factor(POINTS_PER_MM * across), factor(POINTS_PER_MM * up),
            factor((1.0 - across) * width / 2), factor((1.0 - up) * height / 2),
        )  # fmt: skip
        content.write(f"{MITRE_LIMIT} M")
        content.items(page.items)
        content.close()
        stream = compressed("\n".join(content.pieces).encode("ascii"))
        self._pdf.add_object(stream)
        resources = self._resources
        if self._pictures:
            resources = pydyf.Dictionary({"Font": self._fonts.reference, "XObject": self._pictures})
            self._pdf.add_object(resources)
        sheet = pydyf.Dictionary(
            {
                "Type": "/Page",
                "Parent": self._pdf.pages.reference,
                "MediaBox": pydyf.Array(["0", "0", factor(width), factor(height)]),
                "Resources": resources.reference,
                "Contents": stream.reference,
            }
        )
        self._pdf.add_object(sheet)
        tagged = self._structure.add(sheet, content.structure)
        self._parts.setdefault(section, []).append((sheet.reference, tagged))
        self._body.write(first)

    def _letter_fonts(self) -> "LetterFonts":
        """The letters of other fonts, which few files need."""
        if self._letters is None:
            from pycore.writers.pdf_letters import LetterFonts

            self._letters = LetterFonts()
        return self._letters

    def _picture(self, jpeg: bytes) -> str:
        """Take a JPEG file into the PDF as it is (ISO 32000-1, 7.4.8 and 8.9.5); its name among the resources."""
        from pycore.writers.jpeg import head_of  # Few files hold photographs.

        head = head_of(jpeg)
        held = pydyf.Stream([jpeg], {
            "Type": "/XObject", "Subtype": "/Image", "Width": head.width, "Height": head.height,
            "ColorSpace": "/DeviceRGB" if head.colours == 3 else "/DeviceGray", "BitsPerComponent": 8,
            "Filter": "/DCTDecode",
        })  # fmt: skip
        self._pdf.add_object(held)
        name = f"P{len(self._pictures) + 1}"
        self._pictures[name] = held.reference
        return name

    def pages_of(self, section: int) -> int:
        """Return how many pages of a section have been written so far."""
        return len(self._parts.get(section, ()))

    def take(self) -> bytes | None:
        """Return the next part of the file as bytes where one is ready; ``finish`` then returns only what follows."""
        return self._body.take()

    def finish(self, title: str, *, language: str = "en-GB", subject: str = "") -> bytes:
        """Return the file, or what ``take`` has left of it; nothing can be added after it."""
        pdf = self._pdf
        pages = [page for section in sorted(self._parts) for page in self._parts[section]]
        pdf.pages["Kids"] = pydyf.Array([reference for reference, _ in pages])
        pdf.pages["Count"] = len(pages)
        self._structure.finish([tagged for _, tagged in pages])
        for face in sorted(self._used):
            self._fonts[FONT_NAMES[face]] = _add_font(pdf, face, self._used[face])
        if self._letters is not None:
            self._fonts.update(self._letters.write(pdf))
        pdf.catalog.update(
            {
                "Lang": pdf_fonts.text_string(clean(language)),
                # Else viewers shrink the page to what the printer can reach, and no length is true.
                "ViewerPreferences": pydyf.Dictionary(
                    {"PrintScaling": "/None", "DisplayDocTitle": "true", "PickTrayByPDFSize": "true"}
                ),
            }
        )
        pdf.info["Title"] = pdf_fonts.text_string(clean(title))
        if subject:
            pdf.info["Subject"] = pdf_fonts.text_string(clean(subject))
        return self._body.finish()


def write(document: Document, *, correction: Point = UNCORRECTED) -> bytes:
    """Return the PDF file of a document. Raises the errors of ``Writer.add``."""
    writer = Writer(correction=correction)
    for page in document.pages:
        writer.add(page)
    return writer.finish(document.title, language=document.language, subject=document.subject)


def _add_font(pdf: pydyf.PDF, face: str, used: dict[int, str]) -> bytes:
    """Add a face with the glyphs in use; the reference that a page's resources need."""
    data = subset(face, sorted(used))
    name = pdf_fonts.name(face, data)
    file = compressed(data, {"Length1": len(data)})
    meanings = compressed(pdf_fonts.to_unicode(used).encode("ascii"))
    pdf.add_object(file)
    pdf.add_object(meanings)
    descriptor = pydyf.Dictionary(
        {
            "Type": "/FontDescriptor",
            "FontName": name,
            **pdf_fonts.description(face),
            "FontFile2": file.reference,
        }
    )
    pdf.add_object(descriptor)
    registry = {"Registry": "(Adobe)", "Ordering": "(Identity)", "Supplement": 0}
    descendant = pydyf.Dictionary(
        {
            "Type": "/Font",
            "Subtype": "/CIDFontType2",
            "BaseFont": name,
            "CIDSystemInfo": pydyf.Dictionary(registry),
            "FontDescriptor": descriptor.reference,
            "DW": 0,
            "W": pdf_fonts.widths(face, used),
            "CIDToGIDMap": "/Identity",
        }
    )
    pdf.add_object(descendant)
    font = pydyf.Dictionary(
        {
            "Type": "/Font",
            "Subtype": "/Type0",
            "BaseFont": name,
            "Encoding": "/Identity-H",
            "DescendantFonts": pydyf.Array([descendant.reference]),
            "ToUnicode": meanings.reference,
        }
    )
    pdf.add_object(font)
    reference: bytes = font.reference
    return reference
