"""Pages of blank paper as HTML, and the replies to their requests. One region, ``sheet``; no answer."""

from collections.abc import Mapping
from typing import Any

from pycore.drawing import Page
from pycore.forms import links
from pycore.geometry import Point
from pycore.pages.paper import PaperPage
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.form import FORM, fields_html, method_html
from pycore.words import furniture
from pycore.words import paper as words
from pycore.writers import svg

Reply = tuple[dict[str, Any], bytes | None]


def sheet_html(page: Page, page_key: str) -> Markup:
    """Return the sheet on its paper, its caption, and the words for a sheet that is out of date."""
    drawing = Markup.trusted(svg.write(page, prefix="sheet", role="sheet"))
    scroll: Marks = {"class": "paper-scroll", "tabindex": 0, "role": "group", "aria-label": words.CHOICES}
    old = h("p", {"class": "old-label when-old"}, h("strong", None, furniture.OLD_DRAWING), " ", page.title)
    paper = h("div", scroll, h("div", {"class": "paper", "data-page": page_key}, drawing), old)
    return join(paper, h("div", {"class": "under-sheet"}, h("p", {"class": "caption"}, page.title)))


def choices_html(page: PaperPage, form: Mapping[str, str]) -> Markup:
    """Return the form, completely visible: what is printed, then on which paper."""
    others = [field for field in page.fields if field.group != "method"]
    marks: Marks = {"id": FORM, "novalidate": True, "autocomplete": "off", "aria-label": words.CHOICES}
    rest = h("div", {"class": "fields"}, fields_html(others, form, {}))
    return h("form", marks, method_html(page.fields, form), rest)


def no_script_html() -> Markup:
    """Return the text for people without JavaScript."""
    return h("noscript", None, h("p", {"class": "notice"}, words.NO_SCRIPT))


def reminder_html() -> Markup:
    """Return the reminder above the buttons of how to print at exact size."""
    return h("p", {"class": "help"}, words.AT_FULL_SIZE)


def answer(page: PaperPage, form: Mapping[str, str]) -> Reply:
    """Return the sheet of a form, and the fragment that reproduces it; raises InputError."""
    sheet = page.make(form)
    return {
        "ok": True,
        "regions": {"sheet": str(sheet_html(sheet.page, sheet.page_key))},
        "fragment": links.fragment(sheet.link),
        "announce": words.announce(sheet.page.title),
        "page": sheet.page_key,
        "errors": [],
    }, None


def pdf(page: PaperPage, form: Mapping[str, str], correction: Point) -> Reply:
    """Return the sheet of a form as a PDF, stretched by a printer's correction; raises InputError."""
    from pycore.writers import pdf as writer  # only needed here; the page itself need not wait for its import

    data = writer.write(page.document(form), correction=correction)
    return {"ok": True, "filename": f"{page.slug}.pdf", "type": "application/pdf"}, data
